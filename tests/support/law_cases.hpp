// SPDX-License-Identifier: Apache-2.0
// Long because it holds one entry for every law of the models.
#pragma once
#include <functional>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "models/air/air_exchange.hpp"
#include "models/air/mist.hpp"
#include "models/air/mixing.hpp"
#include "models/air/pad_inlet.hpp"
#include "models/air/spray_law.hpp"
#include "models/control/sensor.hpp"
#include "models/envelope/film_window.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/envelope/openings.hpp"
#include "models/plants/tissue.hpp"
#include "models/power/battery.hpp"
#include "models/water/catchment.hpp"
#include "models/water/wet_surface.hpp"
#include "models/water/wind_evaporation.hpp"
#include "sim/core/errors.hpp"

/// Every law of the models by its name, with its parameters by theirs. A new law: one line in all_laws()
/// and one entry in tests/conservation/cases.yaml; the identities there then hold for it or fail by name.
namespace noonhouse::law_cases {

using Values = std::vector<double>;
using Settings = std::map<std::string, double>;

/// A law with its parameters, whatever its type: inputs and fluxes as plain lists.
class AnyLaw {
 public:
  struct Sloped {
    Values flux;
    std::vector<Values> slope;  ///< [flux][input]
  };
  virtual ~AnyLaw() = default;
  virtual std::size_t inputs() const = 0;
  virtual std::size_t fluxes() const = 0;
  virtual Values flux(std::span<const double> in) const = 0;
  virtual Sloped sloped(std::span<const double> in) const = 0;
};

template <ExchangeLaw L>
class LawOf final : public AnyLaw {
 public:
  explicit LawOf(const L& law) : law_(law) {}
  std::size_t inputs() const override { return static_cast<std::size_t>(L::kInputs); }
  std::size_t fluxes() const override { return static_cast<std::size_t>(L::kFluxes); }
  Values flux(std::span<const double> in) const override {
    LawInputs<L, double> x{};
    LawFluxes<L, double> q{};
    std::copy(in.begin(), in.end(), x.begin());
    law_.flux(x, q);
    return {q.begin(), q.end()};
  }
  Sloped sloped(std::span<const double> in) const override {
    LawInputs<L, Dual<L::kInputs>> x{};
    LawFluxes<L, Dual<L::kInputs>> q{};
    for (std::size_t k = 0; k < x.size(); ++k) x[k] = Dual<L::kInputs>::input(in[k], static_cast<int>(k));
    law_.flux(x, q);
    Sloped out;
    for (const auto& one : q) {
      out.flux.push_back(one.value);
      out.slope.emplace_back(one.grad.begin(), one.grad.end());
    }
    return out;
  }

 private:
  L law_;
};

template <class L>
using Field = std::pair<std::string, std::function<void(L&, double)>>;
template <class L>
Field<L> field(std::string name, double L::*member) {
  return {std::move(name), [member](L& law, double value) { law.*member = value; }};
}

using Maker = std::function<std::unique_ptr<AnyLaw>(const Settings&)>;

/// Makes the law from settings; a setting that is no parameter of it is a mistake in the data file.
template <ExchangeLaw L>
Maker law_of(std::vector<Field<L>> fields) {
  return [fields = std::move(fields)](const Settings& settings) -> std::unique_ptr<AnyLaw> {
    L law{};
    for (const auto& [name, value] : settings) {
      const auto it = std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.first == name; });
      if (it == fields.end()) throw UserError(ErrorKind::unknown_key, "no parameter '" + name + "' in this law");
      it->second(law, value);
    }
    return std::make_unique<LawOf<L>>(law);
  };
}

/// The parameters of the film that a law holds: a draught, and one turbulent law for warm and cold alike.
template <class L>
std::vector<Field<L>> with_film(std::vector<Field<L>> fields) {
  fields.push_back({"per_cube_root", [](L& law, double value) {
                      for (FreeFilm* side : {&law.film.warm, &law.film.cold}) {
                        side->turbulent_cubed = value * value * value;
                        side->laminar_cubed = 0.4 * value * value * value;
                      }
                    }});
  fields.push_back({"draught_w_m2_k", [](L& law, double value) { law.film.forced_cubed = value * value * value; }});
  return fields;
}

/// The sizes of a spray by their median [m], tabulated for air of 30 degC and 10.6 g/kg.
template <class L>
Field<L> sprayed() {
  return {"median_m", [](L& law, double median_m) {
            law.table = std::make_shared<SprayTable>(drop_sizes_of_median(median_m, 2.5),
                                                     AirAroundDrop{303.15, 0.0106, 101325.0});
          }};
}

inline const std::map<std::string, Maker>& all_laws() {
  using T = Transpiration;
  using E = LayerExchange;
  using M = LayerMixing;
  using B = BayExchange;
  using O = OpeningExchange;
  using W = WetSurface;
  using R = ScreenedRadiantExchange;
  static const Field<T> rhythm{
      "opens_by_night", [](T& law, double v) { law.rhythm = v > 0.5 ? StomataRhythm::night : StomataRhythm::day; }};
  static const std::map<std::string, Maker> table{
      {"BatteryBus", law_of<BatteryBus>({field("capacity_j", &BatteryBus::capacity_j),
                                         field("charge_efficiency", &BatteryBus::charge_efficiency),
                                         field("discharge_efficiency", &BatteryBus::discharge_efficiency)})},
      {"BayExchange", law_of<B>({field("area_m2", &B::area_m2), field("height_m", &B::height_m),
                                 field("dry_air_density_kg_m3", &B::dry_air_density_kg_m3),
                                 field("background_m_s", &B::background_m_s), field("discharge", &B::discharge)})},
      {"Conductance", law_of<Conductance>({field("ua_w_k", &Conductance::ua_w_k)})},
      {"DrivenFlow", law_of<DrivenFlow>({field("dry_air_kg_s", &DrivenFlow::dry_air_kg_s)})},
      {"FogSettling", law_of<FogSettling>({field("dry_air_kg", &FogSettling::dry_air_kg),
                                           field("pressure_pa", &FogSettling::pressure_pa),
                                           field("time_constant_s", &FogSettling::time_constant_s)})},
      {"GivenPower", law_of<GivenPower>({})},
      {"HandCarried", law_of<HandCarried>({})},
      {"HygrometerLag", law_of<HygrometerLag>({field("time_constant_s", &HygrometerLag::time_constant_s),
                                               field("pressure_pa", &HygrometerLag::pressure_pa)})},
      {"InsideConvection",
       law_of<InsideConvection>(with_film<InsideConvection>({field("area_m2", &InsideConvection::area_m2)}))},
      {"LayerExchange",
       law_of<E>({field("area_m2", &E::area_m2), field("spacing_m", &E::spacing_m),
                  field("dry_air_density_kg_m3", &E::dry_air_density_kg_m3), field("length_m", &E::length_m),
                  field("still_m2_s", &E::still_m2_s), field("overturning", &E::overturning)})},
      {"LayerMixing", law_of<M>({field("area_m2", &M::area_m2), field("spacing_m", &M::spacing_m),
                                 field("dry_air_density_kg_m3", &M::dry_air_density_kg_m3),
                                 field("background_m_s", &M::background_m_s), field("overturning", &M::overturning)})},
      {"Leakage", law_of<Leakage>({field("dry_air_at_4_m_s_kg_s", &Leakage::dry_air_at_4_m_s_kg_s)})},
      {"MistPart",
       law_of<MistPart>({field("portion", &MistPart::portion), field("evaporated_share", &MistPart::evaporated_share),
                         field("pressure_pa", &MistPart::pressure_pa)})},
      {"OpeningExchange", law_of<O>({field("area_m2", &O::area_m2), field("height_m", &O::height_m),
                                     field("dry_air_density_kg_m3", &O::dry_air_density_kg_m3),
                                     field("discharge", &O::discharge), field("wind_effect", &O::wind_effect)})},
      {"PlumeConvection",
       law_of<PlumeConvection>(with_film<PlumeConvection>(
           {field("area_m2", &PlumeConvection::area_m2), field("share_to_top", &PlumeConvection::share_to_top)}))},
      {"RadiantExchange", law_of<RadiantExchange>({field("effective_area_m2", &RadiantExchange::effective_area_m2)})},
      {"RadiationThroughCover",
       law_of<RadiationThroughCover>({field("effective_area_m2", &RadiationThroughCover::effective_area_m2),
                                      field("cover_area_m2", &RadiationThroughCover::cover_area_m2),
                                      field("cloth_passes", &RadiationThroughCover::cloth_passes)})},
      {"WaterRadiationThroughCover",
       law_of<WaterRadiationThroughCover>({field("passing_area_m2", &WaterRadiationThroughCover::passing_area_m2),
                                           field("cover_area_m2", &WaterRadiationThroughCover::cover_area_m2),
                                           field("cloth_passes", &WaterRadiationThroughCover::cloth_passes)})},
      {"RoofCatchment", law_of<RoofCatchment>({field("plan_area_m2", &RoofCatchment::plan_area_m2),
                                               field("runoff_coefficient", &RoofCatchment::runoff_coefficient)})},
      {"Runoff",
       law_of<Runoff>({field("held_kg", &Runoff::held_kg), field("time_constant_s", &Runoff::time_constant_s)})},
      {"ScreenedRadiantExchange", law_of<R>({field("effective_area_m2", &R::effective_area_m2),
                                             field("when_away", &R::when_away), field("when_drawn", &R::when_drawn)})},
      {"PadInlet", law_of<PadInlet>({field("area_m2", &PadInlet::area_m2), field("loss", &PadInlet::loss),
                                     field("units_at_1_m_s", &PadInlet::units_at_1_m_s)})},
      {"SprayEvaporation",
       law_of<SprayEvaporation>({sprayed<SprayEvaporation>(), field("portion", &SprayEvaporation::portion),
                                 field("depth_m", &SprayEvaporation::depth_m)})},
      {"SprayHistory", law_of<SprayHistory>({sprayed<SprayHistory>(), field("depth_m", &SprayHistory::depth_m),
                                             field("time_constant_s", &SprayHistory::time_constant_s)})},
      {"SprayLanding",
       law_of<SprayLanding>({sprayed<SprayLanding>(), field("portion", &SprayLanding::portion),
                             field("depth_m", &SprayLanding::depth_m), field("approach", &SprayLanding::approach)})},
      {"ThermometerLag", law_of<ThermometerLag>({field("time_constant_s", &ThermometerLag::time_constant_s)})},
      {"Transpiration",
       law_of<T>({field("leaf_area_m2", &T::leaf_area_m2), field("dry_air_density_kg_m3", &T::dry_air_density_kg_m3),
                  field("pressure_pa", &T::pressure_pa),
                  field("boundary_conductance_m_s", &T::boundary_conductance_m_s),
                  field("least_conductance_m_s", &T::least_conductance_m_s),
                  field("most_conductance_m_s", &T::most_conductance_m_s),
                  field("half_light_w_m2", &T::half_light_w_m2), field("half_deficit_pa", &T::half_deficit_pa),
                  field("pot_capacity_kg", &T::pot_capacity_kg), field("dry_share", &T::dry_share), rhythm})},
      {"WetSurface", law_of<W>(with_film<W>({field("area_m2", &W::area_m2), field("pressure_pa", &W::pressure_pa),
                                             field("half_wet_kg", &W::half_wet_kg)}))},
      {"WindConvection", law_of<WindConvection>({field("area_m2", &WindConvection::area_m2)})},
      {"WindEvaporation", law_of<WindEvaporation>({field("area_m2", &WindEvaporation::area_m2),
                                                   field("pressure_pa", &WindEvaporation::pressure_pa),
                                                   field("half_wet_kg", &WindEvaporation::half_wet_kg)})},
  };
  return table;
}

}  // namespace noonhouse::law_cases
