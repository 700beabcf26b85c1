// SPDX-License-Identifier: Apache-2.0
// The cover: facets with their film, heat to inside, outside and sky; shade cloths over the roof.
#include <cmath>

#include "models/envelope/heat_links.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kHeldOnCover = 0.05;  ///< condensate before it drips [kg/m2]; common practice, no source
constexpr double kHalfWet = 0.02;      ///< film at which half the surface still evaporates [kg/m2]; same
constexpr double kShadeHeat = 600.0;   ///< of cloth and its wires [J/(m2 K)]; common practice, no source
constexpr double kShadeEmissivity = 0.9;
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

void Assembler::add_covers() {
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) add_cover(f);
}

void Assembler::add_cover(std::size_t f) {
  const Facet& facet = out_.shape.facets[f];
  const SheetSpec& sheet = facet.roof() ? spec_.house.cover.roof : spec_.house.cover.walls;
  BayParts& bay = out_.bays[at(facet.bay)];
  const double heat =
      facet.area_m2 * sheet.sheets * sheet.thickness_m * sheet.density_kg_m3 * sheet.specific_heat_j_kg_k;
  const NodeId node = film_node(facet.name, heat, start_.air_k);
  bay.covers.push_back(node);
  const auto& layers = out_.shape.bays[at(facet.bay)].layers;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double area = facet.area_m2 * overlap_share(facet.bottom_m, facet.top_m, layers[i]);
    if (area <= 0.0) continue;
    touch_air({facet.name + " at layer " + std::to_string(i + 1), node, area, {1.31, 1.0}, kHalfWet * facet.area_m2},
              bay.air[i]);
  }
  graph_.exchange("longwave inside of the " + facet.name, "longwave inside",
                  RadiantExchange{facet.area_m2 * sheet.emissivity}, {node, bay.surroundings},
                  {{{node, bay.surroundings}}});
  // Several sheets resist: the outer heat passes their gaps (0.17 m2 K/W each; ISO 6946 annex, from memory).
  const double through = 1.0 / (1.0 + 0.17 * (sheet.sheets - 1) * 10.0);
  graph_.exchange("wind on the " + facet.name, "through the cover", WindConvection{facet.area_m2 * through},
                  {node, out_.site.outdoor, out_.site.wind}, {{{node, outdoor_heat_}}});
  const double sky_view = 0.5 * (1.0 + std::cos(facet.slope_rad));
  const double outside = facet.area_m2 * sheet.emissivity * through;
  if (facet.roof() && !spec_.shades.empty()) {
    // The cloths' positions weigh the sky; the exchange with each cloth is added with the cloth.
    const ChannelId drawn = position_channel(spec_.shades.front().name, "shade");
    graph_.exchange("sky over the " + facet.name, "to the sky", ScreenedRadiantExchange{outside * sky_view, 1.0, 0.0},
                    {node, out_.site.sky, drawn}, {{{node, sky_}}});
  } else {
    graph_.exchange("sky over the " + facet.name, "to the sky", RadiantExchange{outside * sky_view},
                    {node, out_.site.sky}, {{{node, sky_}}});
  }
  if (sky_view < 0.999)
    graph_.exchange("surroundings of the " + facet.name, "through the cover",
                    RadiantExchange{outside * (1.0 - sky_view)}, {node, out_.site.outdoor}, {{{node, outdoor_heat_}}});
  const ChannelId gain = graph_.channel("sun in the " + facet.name, "W", 0.0);
  out_.site.facet_gain.push_back(gain);
  graph_.exchange("sun in the " + facet.name, "sunlight absorbed", GivenPower{}, {gain}, {{{sun_, node}}});
  run_off(facet.name, node, kHeldOnCover * facet.area_m2, End(bay.floor, 1), bay.floor);
}

void Assembler::add_shades() {
  for (const auto& shade : spec_.shades) {
    double area = 0.0;
    for (const Facet& facet : out_.shape.facets) area += facet.roof() ? facet.area_m2 : 0.0;
    const ChannelId drawn = position_channel(shade.name, "shade");
    const NodeId cloth =
        graph_.node("cloth of the " + shade.name, ThermalMass{kShadeHeat * area}, {start_.air_k}, {kTemperatureUnit});
    const ChannelId gain = graph_.channel("sun on the " + shade.name, "W", 0.0);
    out_.site.shades.push_back({drawn, gain, shade.value.transmits, shade.value.absorbs});
    graph_.exchange("sun on the " + shade.name, "sunlight absorbed", GivenPower{}, {gain}, {{{sun_, cloth}}});
    graph_.exchange("wind on the " + shade.name, "through the cover", WindConvection{2.0 * area},
                    {cloth, out_.site.outdoor, out_.site.wind}, {{{cloth, outdoor_heat_}}});
    graph_.exchange("sky over the " + shade.name, "to the sky", RadiantExchange{area * kShadeEmissivity},
                    {cloth, out_.site.sky}, {{{cloth, sky_}}});
    for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
      const Facet& facet = out_.shape.facets[f];
      if (!facet.roof()) continue;
      const NodeId roof =
          *std::next(out_.bays[at(facet.bay)].covers.begin(), facet.side == WallSide::roof_front ? 2 : 3);
      graph_.exchange(
          "longwave between the " + shade.name + " and the " + facet.name, "through the cover",
          ScreenedRadiantExchange{facet.area_m2 * kShadeEmissivity * spec_.house.cover.roof.emissivity, 0.0, 1.0},
          {roof, cloth, drawn}, {{{roof, cloth}}});
    }
  }
}

}  // namespace noonhouse
