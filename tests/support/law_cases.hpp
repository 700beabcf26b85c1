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
#include "models/air/air_network.hpp"
#include "models/air/mixing.hpp"
#include "models/air/pad_inlet.hpp"
#include "models/air/spray_law.hpp"
#include "models/air/updraught.hpp"
#include "models/control/may_freeze.hpp"
#include "models/control/sensor.hpp"
#include "models/envelope/film_window.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/plants/dose.hpp"
#include "models/plants/leaf_radiation.hpp"
#include "models/plants/tissue.hpp"
#include "models/power/battery.hpp"
#include "models/power/cell_loss.hpp"
#include "models/water/catchment.hpp"
#include "models/water/drip.hpp"
#include "models/water/gutter.hpp"
#include "models/water/leak.hpp"
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

/// A parameter of a part that the law holds.
template <class L, class P>
Field<L> part(std::string name, P L::*held, double P::*member) {
  return {std::move(name), [=](L& law, double value) { law.*held.*member = value; }};
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

/// The place in its layer of a law that has one.
template <class L>
std::vector<Field<L>> with_place(std::vector<Field<L>> fields) {
  fields.push_back(part("bottom_m", &L::place, &OpeningPlace::bottom_m));
  fields.push_back(part("layer_middle_m", &L::place, &OpeningPlace::layer_middle_m));
  fields.push_back(part("reference_kg_m3", &L::place, &OpeningPlace::reference_kg_m3));
  fields.push_back(part("pressure_pa", &L::place, &OpeningPlace::pressure_pa));
  return fields;
}

/// The film of tissue that a law holds: forced at 1 m/s, and one law of free convection for warm and cold alike.
template <class L>
std::vector<Field<L>> with_tissue_film(std::vector<Field<L>> fields) {
  fields.push_back({"forced_at_1_w_m2_k", [](L& law, double v) { law.film.forced_at_1_cubed = v * v * v; }});
  fields.push_back({"per_cube_root", [](L& law, double v) {
                      for (FreeFilm* side : {&law.film.free.warm, &law.film.free.cold}) {
                        side->turbulent_cubed = v * v * v;
                        side->laminar_cubed = 0.4 * v * v * v;
                      }
                    }});
  fields.push_back({"rest_m_s", [](L& law, double v) { law.film.rest_m_s = v; }});
  return fields;
}

/// How a dose is forgotten and where it ends.
template <class L>
std::vector<Field<L>> with_memory(std::vector<Field<L>> fields) {
  fields.push_back(part("half_life_s", &L::memory, &DoseMemory::half_life_s));
  fields.push_back(part("most_s", &L::memory, &DoseMemory::most_s));
  return fields;
}

template <class L>
std::vector<Field<L>> with_spell(std::vector<Field<L>> fields) {
  fields.push_back(part("limit", &L::spell, &SpellOf::limit));
  fields.push_back(part("width", &L::spell, &SpellOf::width));
  fields.push_back({"above", [](L& law, double v) { law.spell.above = v > 0.5; }});
  fields.push_back(part("half_life_s", &L::spell, &SpellOf::half_life_s));
  fields.push_back(part("most_s", &L::spell, &SpellOf::most_s));
  return fields;
}

/// The lag of an instrument and its body.
template <class L>
std::vector<Field<L>> as_instrument() {
  return {field("time_constant_s", &L::time_constant_s), part("pressure_pa", &L::body, &SensorBody::pressure_pa),
          part("light_taken", &L::body, &SensorBody::light_taken),
          part("film_w_m2_k", &L::body, &SensorBody::film_w_m2_k)};
}

inline const std::map<std::string, Maker>& all_laws() {
  using T = Transpiration;
  using E = LayerExchange;
  using O = OpeningPiece;
  using L = LayerLift;
  using W = WetSurface;
  using R = ScreenedRadiantExchange;
  using D = DraughtBy<LayerLift>;
  using F = MayFreeze<ThermometerLag>;
  static const Field<T> rhythm{"opens_by_night", [](T& law, double v) {
                                 law.stomata.rhythm = v > 0.5 ? StomataRhythm::night : StomataRhythm::day;
                               }};
  static const Field<ThermalDose> heat{"heat", [](ThermalDose& law, double v) { law.heat = v > 0.5; }};
  static const Field<FanPiece> way{"blows_out", [](FanPiece& law, double v) { law.blows_out = v > 0.5; }};
  static const std::map<std::string, Maker> table{
      {"BatteryBus",
       law_of<BatteryBus>(
           {field("capacity_j", &BatteryBus::capacity_j), field("charge_efficiency", &BatteryBus::charge_efficiency),
            field("discharge_efficiency", &BatteryBus::discharge_efficiency),
            field("controller_efficiency", &BatteryBus::controller_efficiency),
            field("peukert_exponent", &BatteryBus::peukert_exponent), field("rated_s", &BatteryBus::rated_s),
            part("at_0c", &BatteryBus::cold, &ColdCapacity::at_0c),
            part("at_minus_20c", &BatteryBus::cold, &ColdCapacity::at_minus_20c),
            field("least_charge_k", &BatteryBus::least_charge_k),
            field("self_discharge_per_s", &BatteryBus::self_discharge_per_s)})},
      {"ColumnIntake", law_of<ColumnIntake>({field("exchange_kg_s", &ColumnIntake::exchange_kg_s),
                                             part("top_area_m2", &ColumnIntake::top, &ColumnLevel::area_m2),
                                             part("top_rise_m", &ColumnIntake::top, &ColumnLevel::rise_m),
                                             part("bottom_area_m2", &ColumnIntake::bottom, &ColumnLevel::area_m2),
                                             part("bottom_rise_m", &ColumnIntake::bottom, &ColumnLevel::rise_m)})},
      {"ColumnRise", law_of<ColumnRise>({part("area_m2", &ColumnRise::level, &ColumnLevel::area_m2),
                                         part("rise_m", &ColumnRise::level, &ColumnLevel::rise_m)})},
      {"Conductance", law_of<Conductance>({field("ua_w_k", &Conductance::ua_w_k)})},
      {"DeficitLag", law_of<DeficitLag>(as_instrument<DeficitLag>())},
      {"DeficitSpell",
       law_of<DeficitSpell>(with_spell<DeficitSpell>({field("pressure_pa", &DeficitSpell::pressure_pa)}))},
      {"DraughtBy",
       law_of<D>({part("middle_to_middle_m", &D::way, &L::middle_to_middle_m),
                  part("level_above_lower_m", &D::way, &L::level_above_lower_m), part("area_m2", &D::way, &L::area_m2),
                  part("reference_kg_m3", &D::way, &L::reference_kg_m3), field("kg_s_of_1", &D::kg_s_of_1),
                  field("time_s", &D::time_s)})},
      {"DraughtFades", law_of<DraughtFades>({field("time_s", &DraughtFades::time_s)})},
      {"GivenWater", law_of<GivenWater>({})},
      {"Drip", law_of<Drip>({field("flow_kg_s", &Drip::flow_kg_s)})},
      {"FanPiece",
       law_of<FanPiece>(with_place<FanPiece>({part("free_flow_m3_s", &FanPiece::fan, &QuadraticFan::free_flow_m3_s),
                                              part("shut_off_pa", &FanPiece::fan, &QuadraticFan::shut_off_pa), way}))},
      {"FlushDrain", law_of<FlushDrain>({field("time_constant_s", &FlushDrain::time_constant_s)})},
      {"FogSettling", law_of<FogSettling>({field("dry_air_kg", &FogSettling::dry_air_kg),
                                           field("pressure_pa", &FogSettling::pressure_pa),
                                           field("time_constant_s", &FogSettling::time_constant_s)})},
      {"GivenPower", law_of<GivenPower>({})},
      {"Gutter",
       law_of<Gutter>(
           {field("plan_area_m2", &Gutter::plan_area_m2), field("runoff_coefficient", &Gutter::runoff_coefficient),
            field("filter_efficiency", &Gutter::filter_efficiency), field("most_flow_kg_s", &Gutter::most_flow_kg_s),
            field("first_flush_kg", &Gutter::first_flush_kg)})},
      {"GutterReturn",
       law_of<GutterReturn>({part("plan_area_m2", &GutterReturn::gutter, &Gutter::plan_area_m2),
                             part("runoff_coefficient", &GutterReturn::gutter, &Gutter::runoff_coefficient),
                             part("filter_efficiency", &GutterReturn::gutter, &Gutter::filter_efficiency),
                             part("most_flow_kg_s", &GutterReturn::gutter, &Gutter::most_flow_kg_s),
                             part("first_flush_kg", &GutterReturn::gutter, &Gutter::first_flush_kg),
                             field("share", &GutterReturn::share),
                             field("time_constant_s", &GutterReturn::time_constant_s)})},
      {"HandCarried", law_of<HandCarried>({})},
      {"HygrometerLag", law_of<HygrometerLag>(as_instrument<HygrometerLag>())},
      {"MayFreeze", law_of<F>({part("time_constant_s", &F::law, &ThermometerLag::time_constant_s)})},
      {"TankLeak", law_of<TankLeak>({})},
      {"InsideConvection",
       law_of<InsideConvection>(with_film<InsideConvection>({field("area_m2", &InsideConvection::area_m2)}))},
      {"LayerExchange",
       law_of<E>({field("area_m2", &E::area_m2), field("spacing_m", &E::spacing_m),
                  field("dry_air_density_kg_m3", &E::dry_air_density_kg_m3), field("length_m", &E::length_m),
                  field("still_m2_s", &E::still_m2_s), field("overturning", &E::overturning)})},
      {"LeafRadiation", law_of<LeafRadiation>({field("effective_area_m2", &LeafRadiation::effective_area_m2)})},
      {"LightHabit", law_of<LightHabit>({field("time_s", &LightHabit::time_s)})},
      {"LightSum", law_of<LightSum>({field("day_above_w_m2", &LightSum::day_above_w_m2)})},
      {"LostWithCells", law_of<LostWithCells>({})},
      {"LeakPiece", law_of<LeakPiece>(with_place<LeakPiece>(
                        {field("coefficient", &LeakPiece::coefficient), field("exponent", &LeakPiece::exponent),
                         field("counterflow_kg_s", &LeakPiece::counterflow_kg_s)}))},
      {"LayerLift", law_of<L>({field("middle_to_middle_m", &L::middle_to_middle_m),
                               field("level_above_lower_m", &L::level_above_lower_m), field("area_m2", &L::area_m2),
                               field("reference_kg_m3", &L::reference_kg_m3), field("pressure_pa", &L::pressure_pa)})},
      {"OpeningPiece",
       law_of<O>(with_place<O>({part("width_m", &O::opening, &TallOpening::width_m),
                                part("height_m", &O::opening, &TallOpening::height_m), field("unrest", &O::unrest)}))},
      {"PlumeConvection",
       law_of<PlumeConvection>(with_film<PlumeConvection>({field("area_m2", &PlumeConvection::area_m2)}))},
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
      {"SoilDrying",
       law_of<SoilDrying>({field("area_m2", &SoilDrying::area_m2), field("pressure_pa", &SoilDrying::pressure_pa),
                           field("capacity_kg", &SoilDrying::capacity_kg),
                           field("moist_share", &SoilDrying::moist_share),
                           field("film_w_m2_k", &SoilDrying::film_w_m2_k)})},
      {"SprayEvaporation",
       law_of<SprayEvaporation>({sprayed<SprayEvaporation>(), field("portion", &SprayEvaporation::portion),
                                 field("depth_m", &SprayEvaporation::depth_m)})},
      {"SprayHistory", law_of<SprayHistory>({sprayed<SprayHistory>(), field("depth_m", &SprayHistory::depth_m),
                                             field("time_constant_s", &SprayHistory::time_constant_s)})},
      {"SprayLanding",
       law_of<SprayLanding>({sprayed<SprayLanding>(), field("portion", &SprayLanding::portion),
                             field("depth_m", &SprayLanding::depth_m), field("approach", &SprayLanding::approach)})},
      {"SectionPiece", law_of<SectionPiece>(with_place<SectionPiece>(
                           {part("width_m", &SectionPiece::opening, &TallOpening::width_m),
                            part("height_m", &SectionPiece::opening, &TallOpening::height_m)}))},
      {"SensorWetness",
       law_of<SensorWetness>({field("wets_s", &SensorWetness::wets_s), field("dries_s", &SensorWetness::dries_s)})},
      {"SunburnDose",
       law_of<SunburnDose>(with_memory<SunburnDose>(
           {field("burns_above_k", &SunburnDose::burns_above_k), field("tenfold_k", &SunburnDose::tenfold_k),
            field("bears_w_m2", &SunburnDose::bears_w_m2), field("burns_w_m2", &SunburnDose::burns_w_m2)}))},
      {"ThermalDose",
       law_of<ThermalDose>(with_memory<ThermalDose>(
           {field("limit_k", &ThermalDose::limit_k), field("tenfold_k", &ThermalDose::tenfold_k), heat}))},
      {"TissueConvection",
       law_of<TissueConvection>(with_tissue_film<TissueConvection>({field("area_m2", &TissueConvection::area_m2)}))},
      {"ThermometerLag", law_of<ThermometerLag>(as_instrument<ThermometerLag>())},
      {"SwitchedPower", law_of<SwitchedPower>({field("power_w", &SwitchedPower::power_w)})},
      {"Transpiration",
       law_of<T>(with_tissue_film<T>(
           {field("leaf_area_m2", &T::leaf_area_m2), field("dry_air_density_kg_m3", &T::dry_air_density_kg_m3),
            field("pressure_pa", &T::pressure_pa), part("least_m_s", &T::stomata, &Stomata::least_m_s),
            part("most_m_s", &T::stomata, &Stomata::most_m_s),
            part("half_light_w_m2", &T::stomata, &Stomata::half_light_w_m2),
            part("half_deficit_pa", &T::stomata, &Stomata::half_deficit_pa),
            part("best_k", &T::stomata, &Stomata::best_k), part("spread_k", &T::stomata, &Stomata::spread_k),
            part("pot_capacity_kg", &T::stomata, &Stomata::pot_capacity_kg),
            part("pot_share", &T::stomata, &Stomata::pot_share), rhythm}))},
      {"ValueSpell", law_of<ValueSpell>(with_spell<ValueSpell>({}))},
      {"WetTissue", law_of<WetTissue>(with_tissue_film<WetTissue>({field("area_m2", &WetTissue::area_m2),
                                                                   field("pressure_pa", &WetTissue::pressure_pa),
                                                                   field("half_wet_kg", &WetTissue::half_wet_kg)}))},
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
