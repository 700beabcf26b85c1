// SPDX-License-Identifier: Apache-2.0
// The cover: facets with their film, heat to inside, outside and sky; shade cloths over or under it.
#include <cmath>

#include "models/envelope/heat_links.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kHeldOnCover = 0.05;  ///< condensate before it drips [kg/m2]; common practice, no source
constexpr double kHalfWet = 0.02;      ///< film at which half the surface still evaporates [kg/m2]; same
constexpr double kTwoFaces = 0.02;     ///< resistance from which inner and outer face are told apart [m2 K/W]
constexpr double kShadeHeat = 600.0;   ///< of cloth and its wires [J/(m2 K)]; common practice, no source

/// Height of an upright face, else a quarter of the root of its area: area over perimeter of a square [m].
double film_length_m(const Facet& facet) {
  return facet.slope_rad > kPi / 4.0 ? facet.top_m - facet.bottom_m : 0.25 * std::sqrt(facet.area_m2);
}

}  // namespace

void Assembler::add_covers() {
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) add_cover(f);
}

void Assembler::add_cover(std::size_t f) {
  const Facet& facet = out_.shape.facets[f];
  const SheetSpec& sheet = sheet_of(facet, out_.shape, spec_.house.cover);
  BayParts& bay = out_.bays[at(facet.bay)];
  const double heat = facet.area_m2 * sheet.thickness_m * sheet.density_kg_m3 * sheet.specific_heat_j_kg_k;
  const bool two_faces = sheet.resistance_m2_k_w > kTwoFaces;
  const NodeId node = film_node(facet.name, two_faces ? 0.5 * heat : heat, start_.air_k);
  bay.covers.push_back(node);
  cover_nodes_.push_back(node);
  const auto& layers = out_.shape.bays[at(facet.bay)].layers;
  const SurfaceFilm film = film_of(kPi - facet.slope_rad, film_length_m(facet), std::sqrt(facet.area_m2));
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double share = facet_share_in_layer(facet, layers, i);
    if (share <= 0.0) continue;
    touch_air({facet.name + " at layer " + std::to_string(i + 1), node, facet.area_m2 * share, film,
               kHalfWet * facet.area_m2},
              bay.air[i]);
  }
  run_off(facet.name, node, kHeldOnCover * facet.area_m2, End(bay.floor, 1), bay.floor);
  NodeId outer = node;
  if (two_faces) {
    outer = graph_.node("outer face of the " + facet.name, ThermalMass{0.5 * heat}, {start_.air_k}, {kTemperatureUnit});
    graph_.exchange("through the " + facet.name, "through the cover",
                    Conductance{facet.area_m2 / sheet.resistance_m2_k_w}, {node, outer}, {{{node, outer}}});
  }
  outer_nodes_.push_back(outer);
  receive_sun(facet.name, node, table_->row().facet(f));
  receive_sun("the outer face of the " + facet.name, outer, table_->row().outer_face(f));
  add_cover_outside(f, outer);
}

void Assembler::add_cover_outside(std::size_t f, NodeId node) {
  const Facet& facet = out_.shape.facets[f];
  const double emits = facet.area_m2 * sheet_of(facet, out_.shape, spec_.house.cover).emissivity;
  const bool iso = spec_.site.wind_film == WindFilm::iso;
  graph_.exchange("wind on the " + facet.name, "through the cover",
                  WindConvection{facet.area_m2, iso ? 4.0 : 2.8, iso ? 4.0 : 3.0},
                  {node, out_.site.outdoor, out_.site.wind}, {{{node, outdoor_heat_}}});
  const double sky = table_->sun().instants().front().geometry->outlooks[f].sky;
  const int cloth = shade_of(facet, spec_.shades);
  if (cloth >= 0 && spec_.shades[at(cloth)].value.hangs == ShadeSide::outside) {
    // The exchange with the cloth itself is added with the cloth.
    const double passes = spec_.shades[at(cloth)].value.infrared_passes;
    graph_.exchange("sky over the " + facet.name, "to the sky", ScreenedRadiantExchange{emits * sky, 1.0, passes},
                    {node, out_.site.sky, cloth_drawn_[at(cloth)]}, {{{node, sky_}}});
    graph_.exchange("surroundings of the " + facet.name, "through the cover",
                    ScreenedRadiantExchange{emits * (1.0 - sky), 1.0, passes},
                    {node, out_.site.outdoor, cloth_drawn_[at(cloth)]}, {{{node, outdoor_heat_}}});
    graph_.exchange("longwave between the " + spec_.shades[at(cloth)].name + " and the " + facet.name,
                    "through the cover",
                    ScreenedRadiantExchange{emits * spec_.shades[at(cloth)].value.emissivity, 0.0, 1.0},
                    {node, cloth_nodes_[at(cloth)], cloth_drawn_[at(cloth)]}, {{{node, cloth_nodes_[at(cloth)]}}});
  } else {
    graph_.exchange("sky over the " + facet.name, "to the sky", RadiantExchange{emits * sky}, {node, out_.site.sky},
                    {{{node, sky_}}});
    graph_.exchange("surroundings of the " + facet.name, "through the cover", RadiantExchange{emits * (1.0 - sky)},
                    {node, out_.site.outdoor}, {{{node, outdoor_heat_}}});
  }
}

void Assembler::add_shades() {
  for (int s = 0; s < static_cast<int>(spec_.shades.size()); ++s) add_shade(s);
}

/// A cloth with its sun, and on both its sides the air it hangs in; outside it sees the sky over all of its slope.
void Assembler::add_shade(int s) {
  const auto& shade = spec_.shades[at(s)];
  double area = 0.0, sky_view = 0.0;
  const std::size_t layers = out_.shape.bays.front().layers.size();
  std::vector<std::vector<double>> beside(out_.bays.size(), std::vector<double>(layers, 0.0));  // area by bay and layer
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
    const Facet& facet = out_.shape.facets[f];
    if (shade_of(facet, spec_.shades) != s) continue;
    area += facet.area_m2;
    for (std::size_t i = 0; i < layers; ++i)
      beside[at(facet.bay)][i] += facet.area_m2 * facet_share_in_layer(facet, out_.shape.bays[at(facet.bay)].layers, i);
    sky_view += facet.area_m2 * table_->sun().instants().front().geometry->outlooks[f].sky;
  }
  const ChannelId drawn = position_channel(shade.name, "shade");
  const NodeId cloth = graph_.node("cloth of the " + shade.name, ThermalMass{kShadeHeat * std::max(area, 1e-3)},
                                   {start_.air_k}, {kTemperatureUnit});
  cloth_nodes_.push_back(cloth);
  out_.cloths.push_back(cloth);
  cloth_drawn_.push_back(drawn);
  out_.site.drawn.push_back(drawn);
  const ChannelId gain = graph_.channel("sun on the " + shade.name, "W", 0.0);
  out_.site.sunlight[table_->row().cloth(at(s))] = gain;
  graph_.exchange("sun on the " + shade.name, "sunlight absorbed", GivenPower{}, {gain}, {{{sun_, cloth}}});
  if (shade.value.hangs == ShadeSide::outside) {
    graph_.exchange("wind on the " + shade.name, "through the cover", WindConvection{2.0 * area},
                    {cloth, out_.site.outdoor, out_.site.wind}, {{{cloth, outdoor_heat_}}});
    // Rolled up it sees neither, and takes the air's temperature.
    const double emits = shade.value.emissivity;
    graph_.exchange("sky over the " + shade.name, "to the sky", ScreenedRadiantExchange{sky_view * emits, 0.0, 1.0},
                    {cloth, out_.site.sky, drawn}, {{{cloth, sky_}}});
    graph_.exchange("surroundings of the " + shade.name, "through the cover",
                    ScreenedRadiantExchange{(area - sky_view) * emits, 0.0, 1.0}, {cloth, out_.site.outdoor, drawn},
                    {{{cloth, outdoor_heat_}}});
    return;
  }
  const SurfaceFilm film = film_of(kPi / 2.0, 0.5, 1.0);
  for (std::size_t b = 0; b < out_.bays.size(); ++b)
    for (std::size_t i = 0; i < layers; ++i)
      if (beside[b][i] > 0.0)
        graph_.exchange("heat between the " + shade.name + " and the air of layer " + std::to_string(i + 1) +
                            " of the " + out_.bays[b].name + " bay",
                        "convection inside", InsideConvection{2.0 * beside[b][i], film}, {cloth, out_.bays[b].air[i]},
                        {{{cloth, out_.bays[b].air[i]}}});
}

}  // namespace noonhouse
