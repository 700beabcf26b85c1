// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/material_tree.hpp"

#include <fmt/format.h>

#include <vector>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"
#include "models/ground/soil_material.hpp"
#include "models/plants/plant_kind.hpp"
#include "sim/core/errors.hpp"
#include "tools/scenario/cover_hail.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

/// A figure of a kind of plants, as it is shown.
struct KindFigure {
  const char* words;
  SourcedValue PlantKind::*of;
  Dimension dimension;
};

/// Shape, optics and stomata of a kind.
const std::vector<KindFigure>& kind_shape() {
  using K = PlantKind;
  using enum Dimension;
  static const std::vector<KindFigure> all{
      {"leaf area index", &K::leaf_area_index, none},
      {"tissue", &K::tissue_kg_m2, area_density},
      {"leaf size", &K::leaf_size_m, length},
      {"thickness", &K::thickness_m, length},
      {"height", &K::height_m, length},
      {"takes up of sunlight", &K::absorptance, share},
      {"holds water before it drips", &K::holds_film_kg_m2, area_density},
      {"stomata wide open", &K::most_conductance_m_s, conductance},
      {"stomata shut", &K::least_conductance_m_s, conductance},
      {"faces of a leaf with stomata", &K::faces_with_stomata, none},
      {"half open at light of", &K::half_light_w_m2, irradiance},
      {"half open at a deficit of", &K::half_deficit_pa, pressure},
      {"opens best at", &K::best_stomata_k, temperature},
      {"opens half within", &K::stomata_spread_k, temperature_difference},
      {"drinks freely above", &K::pot_share_unhindered, share},
  };
  return all;
}

/// What a kind bears.
const std::vector<KindFigure>& kind_limits() {
  using K = PlantKind;
  using enum Dimension;
  static const std::vector<KindFigure> all{
      {"harmed above", &K::harm_above_k, temperature},
      {"killed above", &K::lethal_above_k, temperature},
      {"bears a tenth of the time when hotter by", &K::heat_tenfold_k, temperature_difference},
      {"harmed below", &K::harm_below_k, temperature},
      {"killed below", &K::lethal_below_k, temperature},
      {"bears a tenth of the time when colder by", &K::cold_tenfold_k, temperature_difference},
      {"strained after", &K::strained_after_s, time},
      {"harmed after", &K::harmed_after_s, time},
      {"strained by cold after", &K::cold_strained_after_s, time},
      {"harmed by cold after", &K::cold_harmed_after_s, time},
      {"killed after", &K::lost_after_s, time},
      {"forgets half in", &K::recovers_in_s, time},
      {"harmed by air above", &K::air_harm_above_k, temperature},
      {"harmed by air below", &K::air_harm_below_k, temperature},
      {"harmed by such air after", &K::air_harms_after_s, time},
      {"burns above", &K::burns_above_k, temperature},
      {"bears direct sun of", &K::bears_direct_w_m2, irradiance},
      {"burnt by so much more", &K::burn_light_w_m2, irradiance},
      {"burnt after", &K::burn_after_s, time},
      {"harmed by dry pots after", &K::thirst_harms_after_s, time},
      {"killed by dry pots after", &K::thirst_kills_after_s, time},
      {"dry air above", &K::dry_air_above_pa, pressure},
      {"harmed by dry air after", &K::dry_air_harms_after_s, time},
      {"damp air below", &K::damp_air_below_pa, pressure},
      {"harmed by damp air after", &K::damp_air_harms_after_s, time},
      {"harmed by water on it after", &K::wet_harms_after_s, time},
      {"least light of a day", &K::least_light_mol_m2, daily_light},
      {"most light of a day", &K::most_light_mol_m2, daily_light},
      {"harmed by such light after", &K::light_harms_after_s, time},
      {"shortest day", &K::shortest_day_s, time},
      {"longest day", &K::longest_day_s, time},
      {"roots harmed above", &K::roots_harm_above_k, temperature}};
  return all;
}

/// Writes figures as lines of a branch.
class Figures {
 public:
  Figures(Branch& branch, UnitSystem system) : branch_(branch), system_(system) {}
  void quantity(const char* words, const SourcedValue& value, Dimension dimension) const {
    line(words, format_quantity(value.value, dimension, system_), value);
  }
  void share(const char* words, const SourcedValue& value) const { quantity(words, value, Dimension::share); }
  void number(const char* words, const SourcedValue& value) const {
    line(words, fmt::format("{:.4g}", value.value), value);
  }

 private:
  void line(const char* words, const std::string& value, const SourcedValue& of) const {
    branch_.children.push_back({fmt::format("{} {} ({})", words, unbroken(value), of.source)});
  }
  Branch& branch_;
  UnitSystem system_;
};

Branch branch_of(const CoverMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  if (m.opaque_reflects.value >= 0.0) {
    figures.share("opaque, reflects", m.opaque_reflects);
  } else {
    figures.share("lets through, straight on,", m.transmittance);
    figures.number("refractive index", m.refractive_index);
    figures.number("optical depth of a sheet", m.optical_depth);
    figures.share("scatters of what it lets through", m.haze);
    figures.share("throws back of what would pass", m.thrown_back);
    figures.share("drops on it send back", m.drops_return);
    figures.share("lets through of thermal radiation, dry,", m.infrared_transmittance);
  }
  figures.share("emissivity", m.emissivity);
  figures.quantity("solid thickness", m.thickness_m, Dimension::length);
  figures.quantity("density", m.density_kg_m3, Dimension::density);
  figures.quantity("specific heat", m.specific_heat_j_kg_k, Dimension::specific_heat);
  figures.quantity("resistance from face to face", m.resistance_m2_k_w, Dimension::thermal_resistance);
  if (const HailRating* rating = hail_rating_of(m.name); rating != nullptr)
    out.children.push_back({fmt::format("bears a hailstone's blow of {} (as {}: {})",
                                        unbroken(format_quantity(rating->bears_j.value, Dimension::energy, system)),
                                        rating->name, rating->bears_j.source)});
  return out;
}

Branch branch_of(const ShadeMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  figures.share("lets through", m.transmits);
  figures.share("of all light, straight through its holes", m.open_share);
  figures.share("takes up", m.absorbs);
  figures.share("lets through of thermal radiation", m.infrared_transmittance);
  figures.share("emissivity", m.emissivity);
  return out;
}

Branch branch_of(const SoilMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  figures.quantity("conductivity", m.conductivity_w_m_k, Dimension::thermal_conductivity);
  figures.quantity("heat capacity", m.heat_capacity_j_m3_k, Dimension::volume_heat_capacity);
  return out;
}

Branch branch_of(const PlantKind& k, UnitSystem system) {
  Branch out{fmt::format("{}: {}; {}, stomata open {}", k.name, k.about,
                         k.body == PlantBody::leaves ? "leaves" : "one thick body",
                         k.rhythm == StomataRhythm::day ? "by day" : "by night"),
             {}};
  const Figures figures(out, system);
  for (const auto* list : {&kind_shape(), &kind_limits()})
    for (const KindFigure& figure : *list)
      if ((k.*figure.of).value != kNoLimit) figures.quantity(figure.words, k.*figure.of, figure.dimension);
  return out;
}

template <class Material>
Branch library(const char* words, std::span<const Material> materials, const std::string& wanted, UnitSystem system) {
  Branch out{words, {}};
  for (const Material& material : materials)
    if (std::string(material.name).find(wanted) != std::string::npos)
      out.children.push_back(branch_of(material, system));
  return out;
}

}  // namespace

std::string material_tree(const std::string& wanted, UnitSystem system) {
  std::vector<Branch> branches;
  for (Branch& branch : std::vector<Branch>{library("covers and walls", cover_materials(), wanted, system),
                                            library("shade cloths and screens", shade_materials(), wanted, system),
                                            library("soils and floors", soil_materials(), wanted, system),
                                            library("plants", plant_kinds(), wanted, system)})
    if (!branch.children.empty()) branches.push_back(std::move(branch));
  if (!branches.empty()) return tree_text(branches, kTextWidth);
  std::vector<std::string> names;
  for (const auto& m : cover_materials()) names.emplace_back(m.name);
  for (const auto& m : shade_materials()) names.emplace_back(m.name);
  for (const auto& m : soil_materials()) names.emplace_back(m.name);
  for (const auto& k : plant_kinds()) names.emplace_back(k.name);
  throw UserError(ErrorKind::unknown_name,
                  fmt::format("the name of no material and of no kind of plants holds \"{}\"{}", wanted,
                              did_you_mean(wanted, names)));
}

}  // namespace noonhouse
