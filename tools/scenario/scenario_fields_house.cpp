// SPDX-License-Identifier: Apache-2.0
// Fields of the house, its openings and its cooling devices.
#include <fmt/format.h>

#include <string>

#include "models/properties/constants.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {

void fields(FieldVisitor& v, HouseSpec& s) {
  v.quantity("length", s.length_m, Dimension::length,
             {.minimum = 0.5, .maximum = 200, .about = "along the ridge, inside"});
  v.quantity("width", s.width_m, Dimension::length, {.minimum = 0.5, .maximum = 50, .about = "across, inside"});
  v.choice("form", s.form,
           {{"gable", HouseForm::gable},
            {"lean-to", HouseForm::lean_to},
            {"hoop", HouseForm::hoop},
            {"flat roof", HouseForm::flat_roof}},
           {.default_text = "gable", .about = "cross-section; a lean-to rises from the front to a high back wall"});
  v.quantity("eaves", s.eaves_m, Dimension::length,
             {.minimum = 0, .maximum = 15, .about = "height of the long walls; of a lean-to's front; 0 m for a hoop"});
  v.quantity("ridge", s.ridge_m, Dimension::length,
             {.minimum = 0.4, .maximum = 20, .about = "height of the top; of a flat roof the same as the eaves"});
  v.integer("arch_parts", s.arch_parts,
            {.minimum = 1, .maximum = 12, .default_text = "3", .about = "plane parts of each half of a hoop's arch"});
  v.quantity("faces", s.faces_rad, Dimension::angle,
             {.minimum = 0,
              .maximum = kTurn,
              .default_text = "180 deg",
              .about = "direction the front long wall looks to, clockwise from north"});
  v.integer("layers", s.layers,
            {.minimum = 2, .maximum = 64, .default_text = "4", .about = "air layers from floor to ridge in each bay"});
  v.quantity("leakage", s.leakage_per_s, Dimension::per_time,
             {.minimum = 0,
              .maximum = 0.01,
              .default_text = "0.8 /h",
              .about = "air changes through laps and gaps at 4 m/s wind, all shut (common practice, no source)"});
  v.named("bays", s.bays, {.required = true, .minimum_count = 1, .about = "parts along the ridge, in order"});
  v.group("cover", s.cover, {.about = "the glazing"});
  v.group("floor", s.floor, {.about = "floor and soil"});
}

void fields(FieldVisitor& v, BaySpec& s) {
  v.quantity("share", s.share, Dimension::share,
             {.minimum = 0, .exclusive_minimum = true, .maximum = 1, .about = "of the house's length"});
}

void fields(FieldVisitor& v, OpeningSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "which bay it serves"});
  v.choice("side", s.side, side_choices(), {.about = "where it sits"});
  v.quantity("area", s.area_m2, Dimension::area,
             {.minimum = 0, .exclusive_minimum = true, .about = "clear opening when fully open"});
  v.quantity(
      "height", s.height_m, Dimension::length,
      {.minimum = 0.02, .maximum = 10, .about = "of the opening itself, top to bottom; along the slope in a roof"});
  v.quantity("centre", s.centre_m, Dimension::length, {.minimum = 0, .about = "its middle above the floor"});
  v.quantity("open_when_shut", s.shut_share, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "share that stays open (a door ajar)"});
  v.quantity("discharge", s.discharge, Dimension::share,
             {.minimum = 0.05,
              .maximum = 1,
              .default_text = "60 %",
              .about = "discharge coefficient of the clear opening (common practice, no source: 60 to 65 %)"});
  v.quantity("screen_discharge", s.screen_discharge, Dimension::share,
             {.minimum = 0.02,
              .maximum = 1,
              .about = "discharge coefficient of an insect screen in the opening; absent: no screen"});
  v.quantity("withstands", s.withstands_m_s, Dimension::speed,
             {.minimum = 1, .maximum = 80, .about = "gust that its flap bears while open; absent: any"});
  v.flag(
      "needs_power", s.needs_power,
      {.default_text = "false", .about = "a motor moves it, which stays where it stands when the battery is cut off"});
  switching_fields(v, s.switching, "from shut to open");
}

void fields(FieldVisitor& v, FanSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "where it stands"});
  v.choice("moves", s.moves,
           {{"air out", FanMoves::air_out}, {"air in", FanMoves::air_in}, {"air around", FanMoves::air_around}},
           {.default_text = "air out", .about = "through the cover, or around the house to mix its air"});
  v.choice("side", s.side, side_choices(),
           {.default_text = "last end", .about = "where it sits; where the bay has no such side, in another wall"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "above the floor"});
  v.name_of("inlet_bay", s.inlet_bay,
            {.of = {"house.bays"}, .about = "of a louvre that opens with it and lets air in (or out)"});
  v.choice("inlet_side", s.inlet_side, side_choices(),
           {.default_text = "first end", .about = "where the louvre sits; likewise"});
  v.quantity("inlet_height", s.inlet_height_m, Dimension::length,
             {.minimum = 0, .about = "of the louvre above the floor"});
  v.quantity(
      "inlet_area", s.inlet_area_m2, Dimension::area,
      {.minimum = 0,
       .about = "of the open louvre; absent: for 2 m/s at the fan's flow (common practice, no source), none where a "
                "pad is in service"});
  v.quantity("flow", s.flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "air moved against no pressure", .unit = "m3/h"});
  v.quantity("shut_off", s.shut_off_pa, Dimension::pressure,
             {.minimum = 0.1,
              .maximum = 5000,
              .default_text = "60 Pa",
              .about = "pressure at which it moves none, in air of 1.2 kg/m3 (common practice, no source)"});
  v.quantity("width", s.width_m, Dimension::length,
             {.minimum = 0.02, .maximum = 5, .default_text = "0.35 m", .about = "across its blades"});
  v.quantity("power", s.power_w, Dimension::power, {.minimum = 0, .about = "electric, when running"});
  switching_fields(v, s.switching, "from rest to full speed");
  power_draw_fields(v, s.draw);
}

void fields(FieldVisitor& v, MistSpec& s) {
  v.names_of("bays", s.bays, {.of = {"house.bays"}, .about = "a bay"},
             {.required = true, .minimum_count = 1, .about = "bays it sprays in, evenly"});
  v.choice(
      "nozzle_kind", s.kind,
      {{"fog", NozzleKind::high_pressure_fog},
       {"mist", NozzleKind::low_pressure_mist},
       {"sprinkler", NozzleKind::coarse_sprinkler}},
      {.default_text = "mist", .about = "how fine its drops are; the values below hold for the kind unless given"});
  const NozzlePreset& preset = nozzle_preset(s.kind);
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0, .about = "of the nozzles above the floor; above the ridge only where they wet the roof"});
  v.integer("nozzles", s.nozzles, {.minimum = 1, .maximum = 10000, .about = "on the line"});
  const std::string pressure = fmt::format("{:.6g} kPa", preset.pressure_pa.value / 1e3);
  v.quantity("pressure", s.pressure_pa, Dimension::pressure,
             {.minimum = 1e3, .maximum = 2e7, .default_text = pressure.c_str(), .about = "at the nozzles"});
  const std::string rated = fmt::format("{:.6g} kPa", s.pressure_pa / 1e3);
  v.quantity("rated_pressure", s.rated_pressure_pa, Dimension::pressure,
             {.minimum = 1e3,
              .maximum = 2e7,
              .default_text = rated.c_str(),
              .about = "at which the nozzle's flow is stated; the flow goes with the root of the pressure"});
  v.quantity(
      "nozzle_flow", s.nozzle_flow_m3_s, Dimension::volume_flow,
      {.minimum = 0, .exclusive_minimum = true, .about = "water of one nozzle at its rated pressure", .unit = "L/h"});
  const std::string median = fmt::format("{:.6g} um", 1e6 * preset.volume_median_m.value);
  v.quantity("median_drop", s.median_drop_m, Dimension::length,
             {.minimum = 2e-6,
              .maximum = 5e-3,
              .default_text = median.c_str(),
              .about = "half of the water is in smaller drops"});
  const std::string spread = fmt::format("{:.6g}", preset.spread.value);
  v.quantity("drop_spread", s.drop_spread, Dimension::none,
             {.minimum = 1.2,
              .maximum = 10,
              .default_text = spread.c_str(),
              .about = "spread parameter of Rosin and Rammler; the larger, the more alike the drops"});
  v.choice("wets", s.wets, {{"air", MistWets::air}, {"floor", MistWets::floor}, {"roof", MistWets::roof}},
           {.default_text = "air", .about = "air and what stands below; the floor alone; or the roof from outside"});
  v.name_of("pump", s.pump,
            {.of = {"pumps"},
             .also = {kOwnPump},
             .default_text = kOwnPump,
             .about = "its own holds the pressure; one of the pumps gives what pump, pipe and nozzles settle on"});
  v.quantity("pump_power", s.pump_power_w, Dimension::power,
             {.minimum = 0, .about = "electric, when running; of a line on one of the pumps it may be left out"});
  switching_fields(v, s.switching, "from shut to full flow");
  power_draw_fields(v, s.draw);
  water_draw_fields(v, s.draw);
}

void fields(FieldVisitor& v, PadSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "which bay it lets air into"});
  v.choice("side", s.side, side_choices(),
           {.default_text = "first end", .about = "where it sits; where the bay has no such side, in another wall"});
  v.quantity("area", s.area_m2, Dimension::area,
             {.minimum = 0, .exclusive_minimum = true, .maximum = 500, .about = "of its face"});
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0.05, .maximum = 10, .default_text = "1 m", .about = "of its face, top to bottom"});
  v.quantity("centre", s.centre_m, Dimension::length, {.minimum = 0, .about = "its middle above the floor"});
  v.quantity("thickness", s.thickness_m, Dimension::length,
             {.minimum = 0.03, .maximum = 0.4, .default_text = "100 mm", .about = "along the air"});
  v.quantity("pump_power", s.pump_power_w, Dimension::power, {.minimum = 0, .about = "electric, when running"});
  switching_fields(v, s.switching, "from dry to wet");
  power_draw_fields(v, s.draw);
  water_draw_fields(v, s.draw);
}

}  // namespace noonhouse
