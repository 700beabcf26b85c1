// SPDX-License-Identifier: Apache-2.0
// Fields of a kind of plant; what is not given is that of the library's kind it is like.
#include <fmt/format.h>

#include <optional>
#include <string>

#include "tools/scenario/scenario_fields.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

const PlantKind& kind_like(const std::string& name) {
  const PlantKind* found = find_plant_kind(name);
  return found != nullptr ? *found : *find_plant_kind("leafy crop");  // none yet: the schema shows the default's values
}

std::vector<Choice<std::string>> names_of_kinds() {
  std::vector<Choice<std::string>> out;
  for (const PlantKind& kind : plant_kinds()) out.push_back({kind.name, kind.name});
  return out;
}

/// Visits fields whose defaults are figures of a library kind.
class KindFields {
 public:
  KindFields(FieldVisitor& v, const PlantKind& kind) : v_(v), kind_(kind) {}
  void value(const char* name, double& si, Dimension dimension, SourcedValue PlantKind::*of, QuantityOptions options) {
    const std::string text = exact_quantity((kind_.*of).value, dimension, UnitSystem::metric);
    options.default_text = text.c_str();
    v_.quantity(name, si, dimension, options);
  }
  /// A limit that not every kind has: where the library's kind has none, it is absent unless given.
  void limit(const char* name, std::optional<double>& si, Dimension dimension, SourcedValue PlantKind::*of,
             QuantityOptions options) {
    const double given = (kind_.*of).value;
    const std::string text = given == kNoLimit ? "" : exact_quantity(given, dimension, UnitSystem::metric);
    if (given != kNoLimit) options.default_text = text.c_str();
    v_.quantity(name, si, dimension, options);
  }
  /// A figure that only counts beside such a limit: anything where the kind has no limit.
  void beside(const char* name, double& si, Dimension dimension, SourcedValue PlantKind::*of, const char* otherwise,
              QuantityOptions options) {
    const double given = (kind_.*of).value;
    const std::string text = given == kNoLimit ? otherwise : exact_quantity(given, dimension, UnitSystem::metric);
    options.default_text = text.c_str();
    v_.quantity(name, si, dimension, options);
  }

 private:
  FieldVisitor& v_;
  const PlantKind& kind_;
};

using K = PlantKind;

void shape_fields(FieldVisitor& v, PlantKindSpec& s, const PlantKind& kind) {
  KindFields f(v, kind);
  const bool leaves = kind.body == PlantBody::leaves;
  v.choice("body", s.body, {{"leaves", PlantBody::leaves}, {"one body", PlantBody::one_body}},
           {.default_text = leaves ? "leaves" : "one body", .about = "one body: a thick stem, pad or rosette"});
  v.choice("stomata_open", s.rhythm, {{"by day", StomataRhythm::day}, {"by night", StomataRhythm::night}},
           {.default_text = kind.rhythm == StomataRhythm::day ? "by day" : "by night",
            .about = "by night: crassulacean kinds"});
  f.value("leaf_area_index", s.leaf_area_index, Dimension::none, &K::leaf_area_index,
          {.minimum = 0.05, .maximum = 12, .about = "leaf area, one side, over ground covered"});
  f.value("tissue", s.tissue_kg_m2, Dimension::area_density, &K::tissue_kg_m2,
          {.minimum = 0.05, .maximum = 200, .about = "fresh mass over ground covered"});
  f.value("leaf_size", s.leaf_size_m, Dimension::length, &K::leaf_size_m,
          {.minimum = 0.001, .maximum = 1, .about = "width of a leaf or stem"});
  f.value("thickness", s.thickness_m, Dimension::length, &K::thickness_m,
          {.minimum = 5e-5, .maximum = 1, .about = "of a leaf or stem"});
  f.value("height", s.height_m, Dimension::length, &K::height_m,
          {.minimum = 0.005, .maximum = 10, .about = "of the plants above their pots"});
  f.value("absorptance", s.absorptance, Dimension::share, &K::absorptance,
          {.minimum = 0, .maximum = 1, .about = "sunlight absorbed"});
  f.value("holds_film", s.holds_film_kg_m2, Dimension::area_density, &K::holds_film_kg_m2,
          {.minimum = 0.005, .maximum = 5, .about = "water its leaves hold before it drips, over ground covered"});
}

void stomata_fields(FieldVisitor& v, PlantKindSpec& s, const PlantKind& kind) {
  KindFields f(v, kind);
  f.value("most_conductance", s.most_conductance_m_s, Dimension::conductance, &K::most_conductance_m_s,
          {.minimum = 0, .maximum = 0.1, .about = "of its stomata wide open, over leaf area"});
  f.value("least_conductance", s.least_conductance_m_s, Dimension::conductance, &K::least_conductance_m_s,
          {.minimum = 0, .maximum = 0.1, .about = "of its skin with stomata shut"});
  const std::string faces = fmt::format("{:.0f}", kind.faces_with_stomata.value);
  v.integer("faces_with_stomata", s.faces_with_stomata,
            {.minimum = 1, .maximum = 2, .default_text = faces.c_str(), .about = "of a leaf: one or both"});
  f.value("half_deficit", s.half_deficit_pa, Dimension::pressure, &K::half_deficit_pa,
          {.minimum = 10, .maximum = 1e5, .about = "vapour pressure deficit that halves the stomata's opening"});
  f.value("half_light", s.half_light_w_m2, Dimension::irradiance, &K::half_light_w_m2,
          {.minimum = 1, .maximum = 2000, .about = "light at which stomata are half open"});
  f.value("opens_best_at", s.best_stomata_k, Dimension::temperature, &K::best_stomata_k,
          {.minimum = 263.15, .maximum = 333.15, .about = "tissue temperature at which stomata open widest"});
  f.value("opens_half_within", s.stomata_spread_k, Dimension::temperature_difference, &K::stomata_spread_k,
          {.minimum = 1, .maximum = 100, .about = "so far from it they open half as wide"});
  f.value("drinks_freely_above", s.pot_share_unhindered, Dimension::share, &K::pot_share_unhindered,
          {.minimum = 0.01, .maximum = 1, .about = "share of the pots' water below which stomata begin to shut"});
}

/// Limits of the tissue's temperature.
void tissue_limit_fields(FieldVisitor& v, PlantKindSpec& s, const PlantKind& kind) {
  KindFields f(v, kind);
  f.value("harm_above", s.harm_above_k, Dimension::temperature, &K::harm_above_k,
          {.minimum = 273.15, .maximum = 353.15, .about = "tissue temperature above which it takes harm in hours"});
  f.value("lethal_above", s.lethal_above_k, Dimension::temperature, &K::lethal_above_k,
          {.minimum = 273.15, .maximum = 353.15, .about = "tissue temperature that kills in minutes"});
  f.value("heat_tenfold", s.heat_tenfold_k, Dimension::temperature_difference, &K::heat_tenfold_k,
          {.minimum = 0.5, .maximum = 50, .about = "hotter by this, it bears a tenth of the time"});
  f.value("harm_below", s.harm_below_k, Dimension::temperature, &K::harm_below_k,
          {.minimum = 233.15, .maximum = 303.15, .about = "tissue temperature below which it takes harm in hours"});
  f.value("lethal_below", s.lethal_below_k, Dimension::temperature, &K::lethal_below_k,
          {.minimum = 233.15, .maximum = 303.15, .about = "tissue temperature that kills by cold"});
  f.value("cold_tenfold", s.cold_tenfold_k, Dimension::temperature_difference, &K::cold_tenfold_k,
          {.minimum = 0.5, .maximum = 50, .about = "colder by this, it bears a tenth of the time"});
  f.value("strained_after", s.strain_after_s, Dimension::time, &K::strained_after_s,
          {.minimum = 1, .about = "dose of heat that strains it, as time at the harm limit"});
  f.value("harmed_after", s.harm_after_s, Dimension::time, &K::harmed_after_s,
          {.minimum = 1, .about = "dose of heat that marks it, as time at the harm limit"});
  f.value("cold_strained_after", s.cold_strain_after_s, Dimension::time, &K::cold_strained_after_s,
          {.minimum = 1, .about = "dose of cold that strains it, as time at the harm limit"});
  f.value("cold_harmed_after", s.cold_harm_after_s, Dimension::time, &K::cold_harmed_after_s,
          {.minimum = 1, .about = "dose of cold that marks it, as time at the harm limit"});
  f.value("lost_after", s.lost_after_s, Dimension::time, &K::lost_after_s,
          {.minimum = 1, .about = "dose that kills it, as time at a lethal limit"});
  f.value("recovers_in", s.recovers_in_s, Dimension::time, &K::recovers_in_s,
          {.minimum = 60, .about = "in which half of a dose is forgotten"});
  f.value("roots_harm_above", s.roots_harm_above_k, Dimension::temperature, &K::roots_harm_above_k,
          {.minimum = 273.15,
           .maximum = 353.15,
           .about = "temperature of the roots, between that of the pots' walls and of the soil, that harms"});
}

/// Limits of the air, of light and of water.
void surroundings_limit_fields(FieldVisitor& v, PlantKindSpec& s, const PlantKind& kind) {
  KindFields f(v, kind);
  f.limit("air_harm_above", s.air_harm_above_k, Dimension::temperature, &K::air_harm_above_k,
          {.minimum = 273.15, .maximum = 353.15, .about = "air temperature above which it takes harm in time"});
  f.limit("air_harm_below", s.air_harm_below_k, Dimension::temperature, &K::air_harm_below_k,
          {.minimum = 233.15, .maximum = 303.15, .about = "air temperature below which it takes harm in time"});
  f.beside("air_harms_after", s.air_harms_after_s, Dimension::time, &K::air_harms_after_s, "2 d",
           {.minimum = 60, .about = "time in such air, in all, that marks it"});
  f.value("burns_above", s.burns_above_k, Dimension::temperature, &K::burns_above_k,
          {.minimum = 273.15, .maximum = 353.15, .about = "tissue temperature at which strong sun burns it"});
  f.value("bears_direct_sun", s.bears_direct_w_m2, Dimension::irradiance, &K::bears_direct_w_m2,
          {.minimum = 0, .maximum = 1500, .about = "direct sun that it bears when it is used to none"});
  f.value("burning_sun", s.burn_light_w_m2, Dimension::irradiance, &K::burn_light_w_m2,
          {.minimum = 1, .maximum = 1500, .about = "direct sun beyond what it bears that burns in burns_after"});
  f.value("burns_after", s.burn_after_s, Dimension::time, &K::burn_after_s,
          {.minimum = 60, .about = "dose of burning sun that marks it"});
  f.value("thirst_harms_after", s.thirst_harms_after_s, Dimension::time, &K::thirst_harms_after_s,
          {.minimum = 0, .about = "time its pots are dry, in one spell, that marks it"});
  f.value("thirst_kills_after", s.thirst_kills_after_s, Dimension::time, &K::thirst_kills_after_s,
          {.minimum = 0, .about = "time its pots are dry, in one spell, that kills it"});
  f.limit("dry_air_above", s.dry_air_above_pa, Dimension::pressure, &K::dry_air_above_pa,
          {.minimum = 100, .maximum = 20000, .about = "vapour pressure deficit of the air counted as too dry"});
  f.beside("dry_air_harms_after", s.dry_air_harms_after_s, Dimension::time, &K::dry_air_harms_after_s, "3 d",
           {.minimum = 60, .about = "spell of dry air that marks it"});
  f.limit("damp_air_below", s.damp_air_below_pa, Dimension::pressure, &K::damp_air_below_pa,
          {.minimum = 1, .maximum = 20000, .about = "vapour pressure deficit of the air counted as too damp"});
  f.beside("damp_air_harms_after", s.damp_air_harms_after_s, Dimension::time, &K::damp_air_harms_after_s, "30 d",
           {.minimum = 60, .about = "spell of damp air that marks it"});
  f.limit("wet_harms_after", s.wet_harms_after_s, Dimension::time, &K::wet_harms_after_s,
          {.minimum = 60, .about = "spell of free water on it that lets rot and spots begin"});
  f.value("least_light", s.least_light_mol_m2, Dimension::daily_light, &K::least_light_mol_m2,
          {.minimum = 0, .maximum = 70, .about = "photosynthetic light of a day that it needs"});
  f.limit("most_light", s.most_light_mol_m2, Dimension::daily_light, &K::most_light_mol_m2,
          {.minimum = 0, .maximum = 100, .about = "photosynthetic light of a day that it bears"});
  f.value("light_harms_after", s.light_harms_after_s, Dimension::time, &K::light_harms_after_s,
          {.minimum = 86400, .about = "days in a row with too little or too much light that mark it"});
  f.limit("shortest_day", s.shortest_day_s, Dimension::time, &K::shortest_day_s,
          {.minimum = 0, .maximum = 86400, .about = "day length it wants at the least"});
  f.limit("longest_day", s.longest_day_s, Dimension::time, &K::longest_day_s,
          {.minimum = 0, .maximum = 86400, .about = "day length it wants at the most"});
}

}  // namespace

void fields(FieldVisitor& v, PlantKindSpec& s) {
  v.choice("like", s.like, names_of_kinds(),
           {.default_text = "leafy crop", .about = "kind of the library; values below are its own unless given"});
  const PlantKind& kind = kind_like(s.like);
  v.text("about", s.about, {.default_text = "", .about = "what grows like this, and where its figures come from"});
  shape_fields(v, s, kind);
  stomata_fields(v, s, kind);
  tissue_limit_fields(v, s, kind);
  surroundings_limit_fields(v, s, kind);
}

}  // namespace noonhouse
