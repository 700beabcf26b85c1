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
  v.quantity("eaves", s.eaves_m, Dimension::length,
             {.minimum = 0.3, .maximum = 15, .about = "height of the long walls"});
  v.quantity("ridge", s.ridge_m, Dimension::length, {.minimum = 0.4, .maximum = 20, .about = "height of the ridge"});
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

void fields(FieldVisitor& v, CoverSpec& s) {
  v.group("roof", s.roof, {.about = "sheets of the roof"});
  v.group("walls", s.walls, {.about = "sheets of walls and ends"});
}

// Defaults: one sheet of 3 mm horticultural glass; values from memory.
void fields(FieldVisitor& v, SheetSpec& s) {
  v.integer("sheets", s.sheets, {.minimum = 1, .maximum = 4, .default_text = "1", .about = "parallel sheets"});
  v.number("refractive_index", s.refractive_index,
           {.minimum = 1, .maximum = 3, .default_text = "1.526", .about = "of the material (glass 1.526)"});
  v.number("optical_depth", s.optical_depth,
           {.minimum = 0, .maximum = 20, .default_text = "0.05", .about = "extinction times thickness of one sheet"});
  v.quantity("thickness", s.thickness_m, Dimension::length,
             {.minimum = 1e-5, .maximum = 0.1, .default_text = "3 mm", .about = "solid thickness of one sheet"});
  v.quantity("density", s.density_kg_m3, Dimension::density,
             {.minimum = 100, .maximum = 5000, .default_text = "2500 kg/m3", .about = "of the material"});
  v.quantity("specific_heat", s.specific_heat_j_kg_k, Dimension::specific_heat,
             {.minimum = 100, .maximum = 5000, .default_text = "840 J/kg/K", .about = "of the material"});
  v.quantity("emissivity", s.emissivity, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "88 %", .about = "longwave, both faces"});
}

// Defaults: gravelly loam, half wet; from memory, of the order of de Vries 1963.
void fields(FieldVisitor& v, FloorSpec& s) {
  v.quantity("conductivity", s.conductivity_w_m_k, Dimension::thermal_conductivity,
             {.minimum = 0.02, .maximum = 10, .default_text = "1.2 W/m/K", .about = "of the soil"});
  v.quantity("heat_capacity", s.heat_capacity_j_m3_k, Dimension::volume_heat_capacity,
             {.minimum = 1e4, .maximum = 1e7, .default_text = "2.0 MJ/m3/K", .about = "of the soil"});
  v.quantity("depth", s.depth_m, Dimension::length,
             {.minimum = 0.1, .maximum = 10, .default_text = "1.5 m", .about = "down to the deep soil temperature"});
  v.integer("layers", s.layers,
            {.minimum = 1, .maximum = 20, .default_text = "5", .about = "soil layers below the surface"});
  v.quantity("absorptance", s.absorptance, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "70 %", .about = "sunlight absorbed by the surface"});
  v.quantity("holds", s.holds_kg_m2, Dimension::area_density,
             {.minimum = 0.001, .maximum = 50, .default_text = "1 kg/m2", .about = "water held before it drains"});
}

void fields(FieldVisitor& v, OpeningSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "which bay it serves"});
  v.choice("side", s.side,
           {{"front wall", WallSide::front},
            {"back wall", WallSide::back},
            {"first end", WallSide::first_end},
            {"last end", WallSide::last_end},
            {"front roof", WallSide::roof_front},
            {"back roof", WallSide::roof_back}},
           {.about = "where it sits"});
  v.quantity("area", s.area_m2, Dimension::area,
             {.minimum = 0, .exclusive_minimum = true, .about = "clear opening when fully open"});
  v.quantity(
      "height", s.height_m, Dimension::length,
      {.minimum = 0.02, .maximum = 10, .about = "of the opening itself, top to bottom; along the slope in a roof"});
  v.quantity("centre", s.centre_m, Dimension::length, {.minimum = 0, .about = "its middle above the floor"});
  v.quantity("open_when_shut", s.shut_share, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "share that stays open (a door ajar)"});
}

void fields(FieldVisitor& v, FanSpec& s) {
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "where it blows out"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "above the floor"});
  v.name_of("inlet_bay", s.inlet_bay,
            {.of = {"house.bays"}, .about = "where its air comes in, a louvre that opens with it"});
  v.quantity("inlet_height", s.inlet_height_m, Dimension::length,
             {.minimum = 0, .about = "of the louvre above the floor"});
  v.quantity("flow", s.flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "air moved"});
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

void fields(FieldVisitor& v, ShadeSpec& s) {
  v.quantity("transmits", s.transmits, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "50 %", .about = "sunlight let through when drawn"});
  v.quantity("absorbs", s.absorbs, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "35 %", .about = "sunlight taken up by the cloth"});
  v.quantity("drive_power", s.drive_power_w, Dimension::power,
             {.minimum = 0, .default_text = "0 W", .about = "electric, to hold it drawn"});
}

}  // namespace noonhouse
