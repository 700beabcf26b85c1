// SPDX-License-Identifier: Apache-2.0
// Fields of benches and plants.
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

std::vector<const char*> library_kinds() {
  std::vector<const char*> out;
  for (const PlantKind& kind : plant_kinds()) out.push_back(kind.name);
  return out;
}
}  // namespace

void fields(FieldVisitor& v, BenchSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "which bay it stands in"});
  v.flag("hangs", s.hangs,
         {.default_text = "false", .about = "a rail or hooks: plants hang in the air, nothing stands under them"});
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0, .about = "of its top above the floor; of a rail, of the pots that hang from it"});
  v.quantity("length", s.length_m, Dimension::length, {.minimum = 0.05, .about = "along the ridge"});
  v.quantity("width", s.width_m, Dimension::length, {.minimum = 0.05, .about = "across"});
  v.quantity("heat_capacity", s.heat_capacity_j_m2_k, Dimension::area_heat_capacity,
             {.minimum = 100,
              .maximum = 1e6,
              .default_text = s.hangs ? "0.5 kJ/m2/K" : "15 kJ/m2/K",
              .about = "of its top: boards about 15 kJ/m2/K (common practice, no source)"});
  v.quantity("absorptance", s.absorptance, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "60 %", .about = "sunlight absorbed by its faces"});
  v.quantity("lets_through", s.lets_through, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = s.hangs ? "98 %" : "0 %",
              .about = "light that passes between its slats, or past a rail"});
  v.quantity(
      "from_first_end", s.from_first_end_m, Dimension::length,
      {.minimum = 0, .about = "from the bay's border towards the first end to its nearer end; absent: in the middle"});
  v.quantity("from_front", s.from_front_m, Dimension::length,
             {.minimum = 0, .about = "from the front wall to its front edge; absent: benches spread evenly"});
}

void fields(FieldVisitor& v, PlantGroupSpec& s) {
  v.name_of("kind", s.kind, {.of = {"plant_kinds"}, .also = library_kinds(), .about = "what grows"});
  v.name_of("place", s.place,
            {.of = {"benches", "house.bays"}, .about = "the bench it stands on or under, or the bay on whose floor"});
  v.flag("under", s.under, {.default_text = "false", .about = "under that bench, on the floor"});
  v.flag("may_move", s.may_move,
         {.default_text = "true", .about = "may be given another place when a better one is looked for"});
  v.quantity("area", s.area_m2, Dimension::area,
             {.minimum = 0, .exclusive_minimum = true, .about = "bench or ground covered"});
  v.quantity("pot_water", s.pot_water_kg_m2, Dimension::area_density,
             {.minimum = 0.1,
              .maximum = 500,
              .default_text = "12 kg/m2",
              .about = "water the pots hold when full, over ground covered"});
  v.quantity("dry_at", s.dry_at, Dimension::share,
             {.minimum = 0,
              .maximum = 0.5,
              .default_text = "5 %",
              .about = "share of what the pots hold at which they count as dry (common practice, no source)"});
  v.quantity("pot_heat_capacity", s.pot_dry_heat_j_m2_k, Dimension::area_heat_capacity,
             {.minimum = 100,
              .maximum = 1e6,
              .default_text = "40 kJ/m2/K",
              .about = "of pots and dry soil, over ground covered (common practice, no source)"});
  v.quantity("pot_absorptance", s.pot_absorptance, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "75 %",
              .about = "sunlight taken up by the pots' walls: clay 65 %, black 95 % (common practice, no source)"});
  v.quantity("used_to_direct_sun", s.used_to_direct_w_m2, Dimension::irradiance,
             {.minimum = 0,
              .maximum = 600,
              .about = "mean over day and night of the direct sun it has stood in; absent: that of its place"});
}

}  // namespace noonhouse
