// SPDX-License-Identifier: Apache-2.0
// Fields of benches, plants, controls, water, power and people.
#include <numbers>

#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {
constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr const char* kDrivesAbout = "an opening, fan, mist line, pad, drip line or shade";

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
  v.names_of("drives", s.drives,
             {.of = {"openings", "fans", "mist_lines", "pads", "drip_lines", "shades"}, .about = kDrivesAbout},
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
  v.names_of("drives", s.drives,
             {.of = {"openings", "fans", "mist_lines", "pads", "drip_lines", "shades"}, .about = kDrivesAbout},
             {.required = true, .minimum_count = 1, .about = "what it switches"});
}

void fields(FieldVisitor& v, DripSpec& s) {
  v.names_of("waters", s.waters, {.of = {"plants"}, .about = "a group of plants"},
             {.required = true, .minimum_count = 1, .about = "whose pots it waters, by the ground they cover"});
  v.quantity("flow", s.flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "of all its drippers together"});
  v.quantity("pump_power", s.pump_power_w, Dimension::power,
             {.minimum = 0, .default_text = "0 W", .about = "0 W: by gravity from the tank"});
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
