// SPDX-License-Identifier: Apache-2.0
// Fields of the house, its openings and its cooling devices.
#include <numbers>

#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {
constexpr double kTurn = 2.0 * std::numbers::pi;
}  // namespace

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
      {.minimum = 0, .about = "of the open louvre; absent: for 2 m/s at the fan's flow (common practice, no source)"});
  v.quantity("flow", s.flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "air moved against no pressure"});
  v.quantity("shut_off", s.shut_off_pa, Dimension::pressure,
             {.minimum = 0.1,
              .maximum = 5000,
              .default_text = "60 Pa",
              .about = "pressure at which it moves none, in air of 1.2 kg/m3 (common practice, no source)"});
  v.quantity("width", s.width_m, Dimension::length,
             {.minimum = 0.02, .maximum = 5, .default_text = "0.35 m", .about = "across its blades"});
  v.quantity("power", s.power_w, Dimension::power, {.minimum = 0, .about = "electric, when running"});
}

void fields(FieldVisitor& v, MistSpec& s) {
  v.names_of("bays", s.bays, {.of = {"house.bays"}, .about = "a bay"},
             {.required = true, .minimum_count = 1, .about = "bays it sprays in, evenly"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "of the nozzles above the floor"});
  v.integer("nozzles", s.nozzles, {.minimum = 1, .maximum = 10000, .about = "on the line"});
  v.quantity("nozzle_flow", s.nozzle_flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "water of one nozzle at working pressure"});
  v.quantity("evaporated", s.evaporated_share, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "75 %",
              .about = "share that evaporates in dry air before it lands (common practice, no source)"});
  v.quantity("stirring", s.stirring_m_s, Dimension::speed,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "0.05 m/s",
              .about = "mixing of the layers below the nozzles while it sprays (common practice, no source)"});
  v.quantity("pump_power", s.pump_power_w, Dimension::power, {.minimum = 0, .about = "electric, when running"});
}

}  // namespace noonhouse
