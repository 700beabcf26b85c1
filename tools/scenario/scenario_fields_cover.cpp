// SPDX-License-Identifier: Apache-2.0
// Fields of the cover, the shade cloths, the floor, and what stands around the house.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <utility>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"
#include "models/ground/soil_material.hpp"
#include "models/hazard/hail.hpp"
#include "models/properties/constants.hpp"
#include "tools/scenario/cover_hail.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {
constexpr double kGapResistance = 0.17;  ///< of a still gap of air [m2 K/W]; EN ISO 6946, table 8; from memory

/// A default that comes from a library: 1000 times the SI value, and the unit that is a thousandth, keep it short.
std::string milli(double si, const char* unit) { return fmt::format("{:.6g} {}", 1000.0 * si, unit); }
std::string plain(double si, const char* unit) { return fmt::format("{:.6g} {}", si, unit); }
std::string percent(double share) { return fmt::format("{:.6g} %", 100.0 * share); }

template <class Material>
std::vector<Choice<std::string>> names_of_all(std::span<const Material> materials) {
  std::vector<Choice<std::string>> out;
  for (const Material& material : materials) out.push_back({material.name, material.name});
  return out;
}

/// A value that the material has unless it is given.
void of_material(FieldVisitor& v, const char* name, double& si, Dimension dimension, QuantityOptions options,
                 const std::string& default_text) {
  options.default_text = default_text.c_str();
  v.quantity(name, si, dimension, options);
}

const CoverMaterial& cover_material(const std::string& name) {
  const CoverMaterial* found = find_cover_material(name);
  return found != nullptr ? *found : cover_materials().front();  // none yet: the schema shows the default's values
}

const SoilMaterial& soil_material(const std::string& name) {
  const SoilMaterial* found = find_soil_material(name);
  return found != nullptr ? *found : soil_materials().front();
}

/// What the sheets themselves are: values of the material unless given.
void sheet_material_fields(FieldVisitor& v, SheetSpec& s) {
  const CoverMaterial& m = cover_material(s.material);
  const std::string sheets = std::to_string(m.sheets);
  v.integer(
      "sheets", s.sheets,
      {.minimum = 0, .maximum = 4, .default_text = sheets.c_str(), .about = "parallel sheets; none in an opaque wall"});
  of_material(v, "refractive_index", s.refractive_index, Dimension::none,
              {.minimum = 1, .maximum = 3, .about = "of the material (glass 1.526)"},
              fmt::format("{:.6g}", m.refractive_index.value));
  of_material(v, "optical_depth", s.optical_depth, Dimension::none,
              {.minimum = 0, .maximum = 20, .about = "extinction times thickness of one sheet"},
              fmt::format("{:.6g}", m.optical_depth.value));
  of_material(v, "haze", s.haze, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "share of the light let through that leaves scattered"},
              percent(m.haze.value));
  of_material(v, "thrown_back", s.thrown_back, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "share of light that the material scatters back (opal sheets)"},
              percent(m.thrown_back.value));
  const double gaps = m.sheets > 0 ? std::max(0, s.sheets - m.sheets) : 0;
  const double more = m.sheets > 0 && s.sheets > 0 ? static_cast<double>(s.sheets) / m.sheets : 1.0;
  of_material(v, "thickness", s.thickness_m, Dimension::length,
              {.minimum = 1e-5, .maximum = 1, .about = "of all that is solid in it"},
              milli(m.thickness_m.value * more, "mm"));
  of_material(v, "density", s.density_kg_m3, Dimension::density,
              {.minimum = 10, .maximum = 9000, .about = "of the material"}, plain(m.density_kg_m3.value, "kg/m3"));
  of_material(v, "specific_heat", s.specific_heat_j_kg_k, Dimension::specific_heat,
              {.minimum = 100, .maximum = 5000, .about = "of the material"},
              plain(m.specific_heat_j_kg_k.value, "J/kg/K"));
  of_material(v, "emissivity", s.emissivity, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "longwave, both faces"}, percent(m.emissivity.value));
  of_material(v, "infrared_passes", s.infrared_passes, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "thermal radiation let through when dry"},
              percent(m.infrared_transmittance.value));
  of_material(v, "resistance", s.resistance_m2_k_w, Dimension::thermal_resistance,
              {.minimum = 0, .maximum = 20, .about = "to heat, from one face of the cover to the other"},
              plain(m.resistance_m2_k_w.value + gaps * kGapResistance, "m2 K/W"));
  v.quantity("opaque_reflects", s.opaque_reflects, Dimension::share,
             {.minimum = 0, .maximum = 1, .about = "given: an opaque wall that reflects this share of sunlight"});
}

/// What a material bears of hail, as text; walls of boards or brick bear any.
std::string hail_text(const std::string& material) {
  const HailRating* rating = hail_rating_of(material);
  return rating == nullptr ? "200 J" : fmt::format("{:.6g} J", rating->bears_j.value);
}

}  // namespace

std::vector<Choice<WallSide>> side_choices() {
  return {{"front wall", WallSide::front},  {"back wall", WallSide::back},        {"first end", WallSide::first_end},
          {"last end", WallSide::last_end}, {"front roof", WallSide::roof_front}, {"back roof", WallSide::roof_back}};
}

void fields(FieldVisitor& v, CoverSpec& s) {
  v.group("roof", s.roof, {.about = "the roof"});
  v.group("walls", s.walls, {.about = "walls and ends"});
  v.named("parts", s.parts, {.about = "parts of the cover that differ, such as an opaque back wall"});
}

void fields(FieldVisitor& v, CoverPartSpec& s) {
  v.choice("side", s.side, side_choices(), {.about = "which side of the house"});
  v.names_of("bays", s.bays, {.of = {"house.bays"}, .about = "a bay"}, {.about = "only of these bays; all if absent"});
  fields(v, s.sheet);
}

void fields(FieldVisitor& v, SheetSpec& s) {
  v.choice("material", s.material, names_of_all(cover_materials()),
           {.default_text = "clear glass 3 mm", .about = "of the library; values below are its own unless given"});
  sheet_material_fields(v, s);
  v.quantity("dirt", s.dirt, Dimension::share,
             {.minimum = 0,
              .maximum = 0.9,
              .default_text = "4 %",
              .about = "light that dirt outside takes up (common practice, no source)"});
  v.quantity("whitewash_passes", s.whitewash_passes, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "100 %", .about = "light that whitewash lets through"});
  v.quantity("whitewash_reflects", s.whitewash_reflects, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "light that whitewash reflects"});
  v.quantity("wet_with_drops", s.wet_share, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "0 %",
              .about = "share of the inner face that drops cover by day, where they cost light"});
  v.quantity("frame", s.frame_share, Dimension::share,
             {.minimum = 0,
              .maximum = 0.9,
              .default_text = "10 %",
              .about = "share of the light that opaque bars take (common practice, no source)"});
  const std::string bears = hail_text(s.material);
  v.quantity("bears_hail", s.hail_rating_j, Dimension::energy,
             {.minimum = 0,
              .maximum = 1000,
              .default_text = bears.c_str(),
              .about = "blow of a stone that it bears when new; the maker's tested class should replace it"});
}

void fields(FieldVisitor& v, FloorSpec& s) {
  v.named("courses", s.courses, {.about = "what lies on the soil, from the top down: gravel, slabs, boards"});
  v.choice("soil", s.soil, names_of_all(soil_materials()),
           {.default_text = "moist loam", .about = "of the library; its values hold unless given"});
  const SoilMaterial& m = soil_material(s.soil);
  of_material(v, "conductivity", s.conductivity_w_m_k, Dimension::thermal_conductivity,
              {.minimum = 0.02, .maximum = 10, .about = "of the soil"}, plain(m.conductivity_w_m_k.value, "W/m/K"));
  of_material(v, "heat_capacity", s.heat_capacity_j_m3_k, Dimension::volume_heat_capacity,
              {.minimum = 1e4, .maximum = 1e7, .about = "of the soil"},
              plain(m.heat_capacity_j_m3_k.value / 1e6, "MJ/m3/K"));
  v.quantity("depth", s.depth_m, Dimension::length,
             {.minimum = 0.1, .maximum = 20, .default_text = "2 m", .about = "down to the undisturbed ground"});
  v.integer("layers", s.layers,
            {.minimum = 1, .maximum = 40, .default_text = "6", .about = "layers of the soil; thin ones on top"});
  v.quantity(
      "edge_loss", s.edge_loss_w_m_k, Dimension::linear_conductance,
      {.minimum = 0,
       .maximum = 5,
       .about = "heat from the ground beside the walls to outdoors, per length of wall; absent: by EN ISO 13370"});
  v.quantity("absorptance", s.absorptance, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "70 %", .about = "sunlight absorbed by the surface"});
  v.quantity("holds", s.holds_kg_m2, Dimension::area_density,
             {.minimum = 0.001, .maximum = 50, .default_text = "1 kg/m2", .about = "water held before it drains"});
}

void fields(FieldVisitor& v, CourseSpec& s) {
  v.choice("material", s.material, names_of_all(soil_materials()), {.about = "of the library"});
  v.quantity("thickness", s.thickness_m, Dimension::length, {.minimum = 0.005, .maximum = 2, .about = "of the course"});
  const SoilMaterial& m = soil_material(s.material);
  of_material(v, "conductivity", s.conductivity_w_m_k, Dimension::thermal_conductivity,
              {.minimum = 0.02, .maximum = 10, .about = "of the course"}, plain(m.conductivity_w_m_k.value, "W/m/K"));
  of_material(v, "heat_capacity", s.heat_capacity_j_m3_k, Dimension::volume_heat_capacity,
              {.minimum = 1e4, .maximum = 1e7, .about = "of the course"},
              plain(m.heat_capacity_j_m3_k.value / 1e6, "MJ/m3/K"));
}

void fields(FieldVisitor& v, ShadeSpec& s) {
  v.choice("material", s.material, names_of_all(shade_materials()),
           {.default_text = "green knitted net 50 %", .about = "of the library; its values hold unless given"});
  const ShadeMaterial* found = find_shade_material(s.material);
  const ShadeMaterial& m = found != nullptr ? *found : shade_materials().front();
  v.choice("hangs", s.hangs, {{"outside", ShadeSide::outside}, {"inside", ShadeSide::inside}},
           {.default_text = "outside", .about = "over the cover, or beneath it"});
  v.choice("over", s.over, {{"roof", ShadeOver::roof}, {"walls", ShadeOver::walls}, {"all", ShadeOver::all}},
           {.default_text = "roof", .about = "which part of the cover it shades"});
  of_material(v, "transmits", s.transmits, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "sunlight let through when drawn"}, percent(m.transmits.value));
  of_material(v, "absorbs", s.absorbs, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "sunlight taken up by the cloth"}, percent(m.absorbs.value));
  of_material(v, "straight", s.straight, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "sunlight that passes its holes without being scattered"},
              percent(m.open_share.value / m.transmits.value * s.transmits));
  of_material(v, "infrared_passes", s.infrared_passes, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "thermal radiation let through, mostly by its holes"},
              percent(m.infrared_transmittance.value));
  of_material(v, "emissivity", s.emissivity, Dimension::share,
              {.minimum = 0, .maximum = 1, .about = "longwave, both faces"}, percent(m.emissivity.value));
  v.quantity("drive_power", s.drive_power_w, Dimension::power,
             {.minimum = 0, .default_text = "0 W", .about = "electric, to hold it drawn"});
  v.quantity("stops_hail", s.stops_hail_j, Dimension::energy,
             {.minimum = 0, .maximum = 1000, .default_text = "0 J", .about = "of a stone's blow that it takes up"});
  v.quantity("loose_weight", s.loose_kg_m2, Dimension::area_density,
             {.minimum = 0.01, .maximum = 100, .about = "of a cover that lies loose; absent: fixed to the frame"});
  v.quantity("ballast", s.ballast_kg, Dimension::mass,
             {.minimum = 0, .maximum = 1e5, .default_text = "0 kg", .about = "that holds a loose cover down, in all"});
  v.number("uplift", s.uplift,
           {.minimum = 0,
            .maximum = 4,
            .default_text = "0.6",
            .about = "net pressure coefficient that lifts it (common practice, no source)"});
  switching_fields(v, s.switching, "to draw it");
  power_draw_fields(v, s.draw);
}

void fields(FieldVisitor& v, ObstacleSpec& s) {
  v.alternatives("kind", s.what, {"block", "tree crown"},
                 {.about = "a block is a building, a wall or a fence: upright, with a level top"});
}

namespace {
void position_fields(FieldVisitor& v, double& east_m, double& north_m) {
  v.quantity("east", east_m, Dimension::length,
             {.minimum = -1000, .maximum = 1000, .about = "of its middle from the house's middle; west is negative"});
  v.quantity("north", north_m, Dimension::length,
             {.minimum = -1000, .maximum = 1000, .about = "of its middle from the house's middle; south is negative"});
}
}  // namespace

void fields(FieldVisitor& v, BlockSpec& s) {
  position_fields(v, s.east_m, s.north_m);
  v.quantity("faces", s.faces_rad, Dimension::angle,
             {.minimum = 0, .maximum = kTurn, .about = "direction its long face looks to, clockwise from north"});
  v.quantity("length", s.length_m, Dimension::length, {.minimum = 0.01, .maximum = 2000, .about = "of its long face"});
  v.quantity("thickness", s.thickness_m, Dimension::length,
             {.minimum = 0.001, .maximum = 2000, .default_text = "0.2 m", .about = "from long face to long face"});
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0.01, .maximum = 200, .about = "of its top above the house's floor"});
  v.quantity("lets_through", s.lets_through, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "light that passes (an open fence)"});
}

void fields(FieldVisitor& v, CrownSpec& s) {
  position_fields(v, s.east_m, s.north_m);
  v.quantity("width", s.width_m, Dimension::length, {.minimum = 0.1, .maximum = 50, .about = "of the crown"});
  v.quantity("bottom", s.bottom_m, Dimension::length,
             {.minimum = 0, .maximum = 50, .default_text = "1.5 m", .about = "of the crown above the house's floor"});
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0.1, .maximum = 80, .about = "of its top above the house's floor"});
  v.quantity("lets_through_in_leaf", s.lets_through_in_leaf, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "15 %",
              .about = "light that passes the crown in leaf (from memory: 10 to 30 %)"});
  v.quantity("lets_through_bare", s.lets_through_bare, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "60 %",
              .about = "light that passes bare branches (from memory: 50 to 80 %); an evergreen: as in leaf"});
  v.integer("in_leaf_from_day", s.leaf_out_day,
            {.minimum = 1, .maximum = 366, .default_text = "110", .about = "day of the year when leaves are out"});
  v.integer("in_leaf_until_day", s.leaf_fall_day,
            {.minimum = 1, .maximum = 366, .default_text = "310", .about = "day of the year when they have fallen"});
}

}  // namespace noonhouse
