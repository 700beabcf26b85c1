// SPDX-License-Identifier: Apache-2.0
// Fields of benches, plants, controls, water, power and people.
#include <numbers>

#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {
constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr const char* kDrivesAbout = "an opening, fan, mist line or shade";

/// What a kind of plant can take: the last part of its fields.
void limit_fields(FieldVisitor& v, PlantKindSpec& s) {
  v.quantity("harm_above", s.harm_above_k, Dimension::temperature,
             {.minimum = 273.15, .maximum = 353.15, .about = "tissue temperature above which it takes harm"});
  v.quantity("lethal_above", s.lethal_above_k, Dimension::temperature,
             {.minimum = 273.15, .maximum = 353.15, .about = "tissue temperature that kills"});
  v.quantity("harm_below", s.harm_below_k, Dimension::temperature,
             {.minimum = 233.15, .maximum = 303.15, .about = "tissue temperature below which it takes harm"});
  v.quantity("lethal_below", s.lethal_below_k, Dimension::temperature,
             {.minimum = 233.15, .maximum = 303.15, .about = "tissue temperature that kills by cold"});
  v.quantity("strained_after", s.strain_after_s, Dimension::time,
             {.minimum = 0, .default_text = "10 min", .about = "time beyond the harm limit, in all, that strains it"});
  v.quantity("harmed_after", s.harm_after_s, Dimension::time,
             {.minimum = 0, .default_text = "3 h", .about = "time beyond the harm limit, in all, that marks it"});
  v.quantity("lost_after", s.lost_after_s, Dimension::time,
             {.minimum = 0, .default_text = "30 min", .about = "time beyond the lethal limit, in all, that kills it"});
  v.quantity("thirst_harms_after", s.thirst_harms_after_s, Dimension::time,
             {.minimum = 0, .default_text = "2 d", .about = "time its pots are dry, in one spell, that marks it"});
  v.quantity("thirst_kills_after", s.thirst_kills_after_s, Dimension::time,
             {.minimum = 0, .default_text = "6 d", .about = "time its pots are dry, in one spell, that kills it"});
  v.quantity("dry_air_above", s.dry_air_above_pa, Dimension::pressure,
             {.minimum = 100,
              .maximum = 20000,
              .default_text = "3 kPa",
              .about = "vapour pressure deficit of the air counted as too dry"});
}

}  // namespace

void fields(FieldVisitor& v, BenchSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "which bay it stands in"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "of its top above the floor"});
  v.quantity("length", s.length_m, Dimension::length, {.minimum = 0.05, .about = "along the ridge"});
  v.quantity("width", s.width_m, Dimension::length, {.minimum = 0.05, .about = "across"});
  v.quantity("heat_capacity", s.heat_capacity_j_m2_k, Dimension::area_heat_capacity,
             {.minimum = 100,
              .maximum = 1e6,
              .default_text = "15 kJ/m2/K",
              .about = "of its top: boards about 15 kJ/m2/K (common practice, no source)"});
  v.quantity("absorptance", s.absorptance, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "60 %", .about = "sunlight absorbed by its faces"});
  v.quantity("lets_through", s.lets_through, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "light that passes between its slats"});
  v.quantity(
      "from_first_end", s.from_first_end_m, Dimension::length,
      {.minimum = 0, .about = "from the bay's border towards the first end to its nearer end; absent: in the middle"});
  v.quantity("from_front", s.from_front_m, Dimension::length,
             {.minimum = 0, .about = "from the front wall to its front edge; absent: benches spread evenly"});
}

void fields(FieldVisitor& v, PlantKindSpec& s) {
  v.text("about", s.about, {.default_text = "", .about = "what grows like this, and where its figures come from"});
  v.choice("stomata_open", s.rhythm, {{"by day", StomataRhythm::day}, {"by night", StomataRhythm::night}},
           {.default_text = "by day", .about = "by night: crassulacean kinds"});
  v.number("leaf_area_index", s.leaf_area_index,
           {.minimum = 0.05, .maximum = 12, .about = "leaf area, one side, over ground covered"});
  v.quantity("tissue", s.tissue_kg_m2, Dimension::area_density,
             {.minimum = 0.05, .maximum = 200, .about = "fresh mass over ground covered"});
  v.quantity("leaf_size", s.leaf_size_m, Dimension::length,
             {.minimum = 0.001, .maximum = 1, .default_text = "50 mm", .about = "width of a leaf or stem"});
  v.quantity("absorptance", s.absorptance, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "60 %", .about = "sunlight absorbed"});
  v.quantity("holds_film", s.holds_film_kg_m2, Dimension::area_density,
             {.minimum = 0.005,
              .maximum = 5,
              .default_text = "0.15 kg/m2",
              .about = "water its leaves hold before it drips, over ground covered"});
  v.quantity(
      "most_conductance", s.most_conductance_m_s, Dimension::conductance,
      {.minimum = 0, .maximum = 0.1, .default_text = "5 mm/s", .about = "of its stomata wide open, over leaf area"});
  v.quantity("least_conductance", s.least_conductance_m_s, Dimension::conductance,
             {.minimum = 0, .maximum = 0.1, .default_text = "0.1 mm/s", .about = "of its skin with stomata shut"});
  v.quantity("half_deficit", s.half_deficit_pa, Dimension::pressure,
             {.minimum = 10,
              .maximum = 1e5,
              .default_text = "1.5 kPa",
              .about = "vapour pressure deficit that halves the stomata's opening"});
  v.quantity(
      "half_light", s.half_light_w_m2, Dimension::irradiance,
      {.minimum = 1, .maximum = 2000, .default_text = "100 W/m2", .about = "light at which stomata are half open"});
  limit_fields(v, s);
}

void fields(FieldVisitor& v, PlantGroupSpec& s) {
  v.name_of("kind", s.kind, {.of = {"plant_kinds"}, .about = "what grows"});
  v.name_of("place", s.place, {.of = {"benches"}, .about = "the bench it stands on or under"});
  v.flag("under", s.under, {.default_text = "false", .about = "under that bench, on the floor"});
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
}

void fields(FieldVisitor& v, SensorSpec& s) {
  v.choice("measures", s.measures, {{"temperature", Measures::temperature}, {"humidity", Measures::humidity}},
           {.default_text = "temperature", .about = "of the air where it hangs"});
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "where it hangs"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "above the floor"});
  v.quantity("time_constant", s.time_constant_s, Dimension::time,
             {.minimum = 1, .maximum = 7200, .default_text = "90 s", .about = "lag of the instrument"});
}

void fields(FieldVisitor& v, ThermostatSpec& s) {
  v.name_of("sensor", s.sensor, {.of = {"sensors"}, .about = "a temperature sensor"});
  v.quantity("starts_at", s.starts_at_k, Dimension::temperature,
             {.minimum = 253.15, .maximum = 343.15, .about = "reading at which it switches on"});
  v.quantity("stops_at", s.stops_at_k, Dimension::temperature,
             {.minimum = 253.15, .maximum = 343.15, .about = "reading at which it switches off, below starts_at"});
  v.quantity("least_on", s.least_on_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "1 min", .about = "stays on at least this long"});
  v.quantity("least_off", s.least_off_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "1 min", .about = "stays off at least this long"});
  v.time_of_day("from", s.from_s, {.default_text = "00:00", .about = "works from this time of day"});
  v.time_of_day("until", s.until_s, {.default_text = "24:00", .about = "to this time of day"});
  v.names_of("drives", s.drives, {.of = {"openings", "fans", "mist_lines", "pads", "shades"}, .about = kDrivesAbout},
             {.required = true, .minimum_count = 1, .about = "what it switches"});
}

void fields(FieldVisitor& v, TimerSpec& s) {
  v.time_of_day("from", s.from_s, {.about = "works from this time of day"});
  v.time_of_day("until", s.until_s, {.about = "to this time of day"});
  v.quantity("on_for", s.on_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "24 h", .about = "length of one pulse"});
  v.quantity(
      "every", s.every_s, Dimension::time,
      {.minimum = 1, .maximum = 86400, .default_text = "24 h", .about = "from the start of one pulse to the next"});
  v.names_of("drives", s.drives, {.of = {"openings", "fans", "mist_lines", "pads", "shades"}, .about = kDrivesAbout},
             {.required = true, .minimum_count = 1, .about = "what it switches"});
}

void fields(FieldVisitor& v, TankSpec& s) {
  v.quantity("capacity", s.capacity_m3, Dimension::volume, {.minimum = 0.001, .maximum = 1000, .about = "brim full"});
  v.quantity("starts_with", s.start_m3, Dimension::volume, {.minimum = 0, .about = "water in it when the run starts"});
  v.quantity("low_mark", s.low_m3, Dimension::volume, {.minimum = 0, .about = "pump cuts out here"});
  v.quantity("restart_mark", s.restart_m3, Dimension::volume, {.minimum = 0, .about = "pump may start again here"});
  v.quantity("runoff", s.runoff_coefficient, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "90 %",
              .about = "rain on the roof that reaches the tank (smooth roof, BS EN 16941-1 table 2)"});
  v.quantity("wall_area", s.wall_area_m2, Dimension::area,
             {.minimum = 0.01,
              .maximum = 1000,
              .default_text = "2.5 m2",
              .about = "of the tank, losing and gaining heat outdoors in shade"});
  v.quantity("wall_u", s.wall_u_w_m2_k, Dimension::heat_transfer,
             {.minimum = 0, .maximum = 50, .default_text = "6 W/m2/K", .about = "of the tank's wall"});
}

void fields(FieldVisitor& v, PowerSpec& s) {
  v.quantity("panel_area", s.panel_area_m2, Dimension::area, {.minimum = 0, .maximum = 1000, .about = "of the cells"});
  v.quantity("panel_efficiency", s.panel_efficiency, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "19 %", .about = "at 25 degC cell temperature, with wiring"});
  v.quantity("panel_slope", s.panel_slope_rad, Dimension::angle,
             {.minimum = 0, .maximum = kTurn / 4, .default_text = "30 deg", .about = "from level"});
  v.quantity("panel_faces", s.panel_faces_rad, Dimension::angle,
             {.minimum = 0, .maximum = kTurn, .default_text = "180 deg", .about = "clockwise from north"});
  v.quantity("panel_derate", s.panel_derate_per_k, Dimension::per_temperature,
             {.minimum = -0.02, .maximum = 0, .default_text = "-0.4 %/K", .about = "power lost with cell temperature"});
  v.quantity(
      "panel_noct", s.panel_noct_k, Dimension::temperature,
      {.minimum = 293.15, .maximum = 353.15, .default_text = "45 degC", .about = "nominal operating cell temperature"});
  v.quantity("battery", s.battery_j, Dimension::energy, {.minimum = 1, .about = "usable when full"});
  v.quantity("battery_starts_at", s.battery_start, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "90 %", .about = "charge when the run starts"});
  v.quantity("cut_off_at", s.cut_off, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "20 %", .about = "loads are cut off here"});
  v.quantity("reconnect_at", s.reconnect, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "35 %", .about = "loads come back here"});
  v.quantity("charge_efficiency", s.charge_efficiency, Dimension::share,
             {.minimum = 0.1,
              .maximum = 1,
              .default_text = "96 %",
              .about = "of charging (from memory, lithium iron phosphate)"});
  v.quantity("discharge_efficiency", s.discharge_efficiency, Dimension::share,
             {.minimum = 0.1, .maximum = 1, .default_text = "97 %", .about = "of discharging (from memory)"});
  v.quantity("standby", s.standby_w, Dimension::power,
             {.minimum = 0, .default_text = "2 W", .about = "controls and sensors, always"});
}

void fields(FieldVisitor& v, GrowerSpec& s) {
  v.quantity("pours_to", s.pours_to, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "95 %",
              .about = "pots are watered up to this share of what they hold"});
  v.named("visits", s.visits, {.about = "daily visits"});
}

void fields(FieldVisitor& v, VisitSpec& s) {
  v.time_of_day("at", s.at_s, {.about = "time of day"});
  v.names_of("waters", s.waters, {.of = {"plants"}, .about = "a group of plants"},
             {.about = "pots filled from the tank by hand"});
  v.names_of("opens", s.opens, {.of = {"openings", "shades"}, .about = "an opening or shade"},
             {.about = "opened or drawn by hand, if in service"});
  v.names_of("shuts", s.shuts, {.of = {"openings", "shades"}, .about = "an opening or shade"},
             {.about = "shut or drawn back by hand, if in service"});
}

}  // namespace noonhouse
