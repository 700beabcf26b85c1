// SPDX-License-Identifier: Apache-2.0
// Other ways to cool by water: pads that a fan draws air through, and sprinklers over the roof.
#include <algorithm>
#include <cmath>

#include "models/air/pad_inlet.hpp"
#include "models/air/spray_law.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/water/gutter.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wind_evaporation.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kPadAirK = 308.15;     ///< at which a pad's properties are taken
constexpr double kHeldOnRoof = 0.15;    ///< before it runs to the gutter [kg/m2]; common practice, no source
constexpr double kHalfWetRoof = 0.03;   ///< film at which half of the roof still evaporates [kg/m2]; likewise
constexpr double kFilmHeat = 200.0;     ///< of what the film stands for when dry [J/(m2 K)]; likewise
constexpr double kGutterHeat = 1000.0;  ///< of a slope's gutters when dry [J/K]; likewise
constexpr double kFilmToCover = 300.0;  ///< heat between a film of water and its cover [W/(m2 K)]; likewise
}  // namespace

/// A pad's face, one piece in each layer that it touches. It is wet while its pump runs.
void Assembler::add_pads() {
  for (const auto& item : spec_.pads) {
    const PadSpec& p = item.value;
    if (!plan_.uses(item.name)) continue;  // its shutter is shut
    const ChannelId wet = position_channel(item.name, "pad");
    const int bay = out_.shape.bay_index(p.bay);
    const int facet = facet_of(bay, p.side, p.centre_m);
    const double rise = std::min(p.height_m, out_.shape.top_m);
    const double bottom = std::clamp(p.centre_m - 0.5 * rise, 0.0, out_.shape.top_m - rise);
    WetPad pad;
    pad.thickness_m = p.thickness_m;
    const auto& layers = out_.shape.bays[at(bay)].layers;
    for (std::size_t i = 0; i < layers.size(); ++i) {
      const double part = overlap_share(bottom, bottom + rise, layers[i]);
      if (part <= 0.0) continue;
      const double middle = 0.5 * (std::max(bottom, layers[i].bottom_m) + std::min(bottom + rise, layers[i].top_m));
      const NodeId pressure = out_.bays[at(bay)].pressure[i], air = out_.bays[at(bay)].air[i];
      graph_.exchange(item.name + " at layer " + std::to_string(i + 1), "wet pad",
                      pad_inlet(pad, p.area_m2 * part, place_in_layer(bay, i, middle), kPadAirK),
                      {pressure, air, Input(air, 1), out_.site.outdoor, out_.site.humidity,
                       out_.site.wind_pa[at(facet)], wet, out_.tank},
                      {{{pressure, outdoor_air_},
                        {End(air, 1), outdoor_vapour_},
                        {air, outdoor_heat_},
                        {End(out_.tank, 1), End(air, 1)},
                        {out_.tank, air}}});
    }
  }
}

/// What is more than the roof holds: through the gutters of its slope, as rain goes; past the house where it has none.
void Assembler::run_off_roof(const Facet& facet, NodeId film) {
  const double held_kg = kHeldOnRoof * facet.area_m2;
  const auto slope = facet.side == WallSide::roof_front ? GutterSpec::Slope::front : GutterSpec::Slope::back;
  if (!gutters_.contains(slope))
    return run_off(facet.name + ", outside,", film, held_kg, drained_water_, drained_heat_);
  const NodeId off = water_off_slope(slope);
  run_off(facet.name + ", outside,", film, held_kg, End(off, 1), off);
}

/// Water that has left the roof of a slope, from all its sprinkled facets, on its way by the gutters to the tank.
NodeId Assembler::water_off_slope(GutterSpec::Slope slope) {
  NodeId& off = off_slopes_[slope];
  if (off.valid()) return off;
  const auto& gutters = gutters_.at(slope);
  off = film_node(std::string("water off the ") + (slope == GutterSpec::Slope::front ? "front" : "back") + " roof",
                  kGutterHeat, start_.air_k);
  for (const GutterParts& gutter : gutters)
    graph_.exchange("sprinkled water by the " + gutter.name, "back to the tank",
                    GutterReturn{gutter.law, 1.0 / static_cast<double>(gutters.size())},
                    {off, Input(off, 1), out_.site.rain, gutter.first_flush},
                    {{{End(off, 1), End(out_.tank, 1)},
                      {off, out_.tank},
                      {End(off, 1), gutter.first_flush},
                      {off, drained_heat_},
                      {End(off, 1), drained_water_},
                      {off, drained_heat_}}});
  return off;
}

/// Water that a line lets run over the roof of a bay: a film that cools the cover, dries in the wind, and runs off.
void Assembler::sprinkle_roof(const Named<MistSpec>& line, int bay, const std::shared_ptr<const SprayTable>& table) {
  if (!nothing_dried_.valid()) nothing_dried_ = graph_.channel("stage of spray at the nozzles", "1", 0.0);
  const bool iso = spec_.site.wind_film == WindFilm::iso;
  double roof_m2 = 0.0;
  for (const Facet& facet : out_.shape.facets)
    if (facet.bay == bay && facet.roof()) roof_m2 += facet.area_m2;
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
    const Facet& facet = out_.shape.facets[f];
    if (facet.bay != bay || !facet.roof()) continue;
    const double area = facet.area_m2;
    NodeId& film = roof_films_[static_cast<int>(f)];
    if (!film.valid()) {
      const std::string name = "water on the " + facet.name;
      film = film_node(name, kFilmHeat * area, start_.air_k);
      graph_.exchange("heat between " + name + " and the cover", "film to cover", Conductance{kFilmToCover * area},
                      {film, outer_nodes_[f]}, {{{film, outer_nodes_[f]}}});
      graph_.exchange(name + " that dries", "evaporation and condensation",
                      WindEvaporation{area, out_.pressure_pa, kHalfWetRoof * area, iso ? 4.0 : 2.8, iso ? 4.0 : 3.0},
                      {film, Input(film, 1), out_.site.humidity, out_.site.wind},
                      {{{End(film, 1), outdoor_vapour_}, {film, outdoor_heat_}}});
      run_off_roof(facet, film);
    }
    const double share = area / roof_m2 / static_cast<double>(line.value.bays.size());
    graph_.exchange(line.name + " over the " + facet.name, "mist that lands",
                    SprayLanding{table, share, 0.0, 0.0, out_.pressure_pa},
                    {nothing_dried_, out_.site.outdoor, out_.site.humidity, out_.tank, mist_flow_.at(line.name)},
                    {{{End(out_.tank, 1), End(film, 1)}, {out_.tank, film}, {out_.tank, outdoor_heat_}}});
  }
}

}  // namespace noonhouse
