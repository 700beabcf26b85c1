// SPDX-License-Identifier: Apache-2.0
// Thermal radiation between all surfaces inside, and through covers that let it pass.
#include <algorithm>
#include <map>

#include "models/envelope/film_window.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/light/radiant_room.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
/// The centre of small exchanges holds next to no heat [J/K]: its time constant is a fraction of a second, so what goes
/// in comes out.
constexpr double kCentreHeat = 50.0;
/// Share of a part's exchange that a pair of its own must make up: at 0.12 parts' net heat is off by some 5 %, at twice
/// that by 20 %, and every pair kept fills the matrix that each step factors.
constexpr double kLeastShare = 0.12;
constexpr double kLeastThrough = 0.05;  ///< of what a part sends outdoors that a facet of its own must make up
}  // namespace

/// Nodes that take part in thermal exchange, and the effective areas between them and through the facets.
struct Assembler::LongwaveParts {
  std::vector<NodeId> nodes;
  std::vector<std::string> names;
  Grid between, through;  ///< [node][node], [node][facet]
};

NodeId Assembler::node_of(const SurfacePart& part) const {
  switch (part.of) {
    case SurfacePart::Of::facet:
      return cover_nodes_[at(part.index)];
    case SurfacePart::Of::floor:
      return out_.bays[at(part.index)].floor;
    case SurfacePart::Of::bench:
      return bench_nodes_.at(spec_.benches[at(part.index)].name);
    case SurfacePart::Of::sunlit:
      return out_.plants[at(part.index)].tissue;
    case SurfacePart::Of::shaded:
      return out_.plants[at(part.index)].shaded;
    case SurfacePart::Of::pots:
      return out_.plants[at(part.index)].wall;
  }
  return {};
}

/// The house's surfaces as the light's geometry has them, gathered by the node they belong to.
Assembler::LongwaveParts Assembler::longwave_parts() const {
  const LightGeometry& geometry = *table_->sun().instants().front().geometry;
  LongwaveParts out;
  std::vector<double> areas;
  for (const LightSurface& surface : geometry.scene.surfaces()) areas.push_back(surface.area_m2);
  std::vector<RadiantPart> parts;
  std::vector<std::size_t> member;  // of each part: index into nodes
  std::map<int, std::size_t> index_of;
  for (const SurfacePart& part : surface_parts(spec_, out_.shape, geometry.scene)) {
    if (part.share <= 0.0 || areas[at(part.surface)] <= 0.0) continue;
    const bool facet = part.of == SurfacePart::Of::facet;
    const double passes =
        facet ? sheet_of(out_.shape.facets[at(part.index)], out_.shape, spec_.house.cover).infrared_passes : 0.0;
    const NodeId node = node_of(part);
    const auto [place, fresh] = index_of.try_emplace(node.index, out.nodes.size());
    if (fresh) {
      out.nodes.push_back(node);
      out.names.push_back(graph_.name_of(node));
    }
    parts.push_back({part.surface, part.share, part.emissivity, passes});
    member.push_back(place->second);
  }
  const RadiantRoom room = radiant_room(geometry.exchange_m2, areas, parts);
  out.between = Grid(out.nodes.size(), out.nodes.size());
  out.through = Grid(out.nodes.size(), out_.shape.facets.size());
  for (std::size_t p = 0; p < parts.size(); ++p)
    for (std::size_t q = 0; q < parts.size(); ++q) {
      out.between(member[p], member[q]) += room.between(p, q);
      if (at(parts[q].surface) < out_.shape.facets.size())
        out.through(member[p], at(parts[q].surface)) += room.through(p, q);
    }
  return out;
}

void Assembler::add_longwave() {
  const LongwaveParts parts = longwave_parts();
  const bool screened = std::any_of(spec_.shades.begin(), spec_.shades.end(),
                                    [](const auto& s) { return s.value.hangs == ShadeSide::inside; });
  const ThinnedExchange thin = thin_exchange(parts.between, screened ? 0.0 : kLeastShare);
  std::map<std::pair<int, int>, double> to_cloth;  // area by node and cloth
  for (const auto& pair : thin.pairs)
    exchange_longwave(parts.nodes[pair.a], parts.nodes[pair.b], pair.area_m2, to_cloth);
  for (const auto& [ends, area] : to_cloth) {
    const NodeId node{ends.first}, cloth = cloth_nodes_[at(ends.second)];
    const double meets = spec_.shades[at(ends.second)].value.emissivity;  // what it reflects stays where it is
    graph_.exchange("longwave between " + graph_.name_of(node) + " and the " + spec_.shades[at(ends.second)].name,
                    "longwave inside", ScreenedRadiantExchange{area, 0.0, meets},
                    {node, cloth, cloth_drawn_[at(ends.second)]}, {{{node, cloth}}});
  }
  join_longwave_centre(thin.to_centre_m2, parts.nodes, parts.names);
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) add_longwave_of_water(f);
  for (std::size_t n = 0; n < parts.nodes.size(); ++n) add_longwave_through_covers(parts, n);
}

/// What one node sends outdoors through covers: by each facet that matters, the rest by the one that matters most.
void Assembler::add_longwave_through_covers(const LongwaveParts& parts, std::size_t n) {
  // A facet that reaches outdoors through itself, by reflection inside, is taken to do so through another one.
  const auto itself = [&](std::size_t f) { return cover_nodes_[f] == parts.nodes[n]; };
  double all = 0.0;
  std::size_t most = itself(0) ? 1 : 0;
  for (std::size_t f = 0; f < parts.through.columns; ++f) {
    all += parts.through(n, f);
    if (!itself(f) && parts.through(n, f) > parts.through(n, most)) most = f;
  }
  if (all <= 1e-9) return;
  double rest = all;
  for (std::size_t f = 0; f < parts.through.columns; ++f) {
    if (f == most || itself(f) || parts.through(n, f) < kLeastThrough * all) continue;
    longwave_to_outdoors(parts.nodes[n], parts.names[n], static_cast<int>(f), parts.through(n, f));
    rest -= parts.through(n, f);
  }
  longwave_to_outdoors(parts.nodes[n], parts.names[n], static_cast<int>(most), rest);
}

void Assembler::join_longwave_centre(const std::vector<double>& areas_m2, const std::vector<NodeId>& nodes,
                                     const std::vector<std::string>& names) {
  if (std::none_of(areas_m2.begin(), areas_m2.end(), [](double area) { return area > 0.0; })) return;
  const NodeId centre =
      graph_.node("centre of thermal radiation", ThermalMass{kCentreHeat}, {start_.air_k}, {kTemperatureUnit * 5.0});
  for (std::size_t n = 0; n < nodes.size(); ++n)
    if (areas_m2[n] > 0.0)
      graph_.exchange("longwave of " + names[n], "longwave inside", RadiantExchange{areas_m2[n]}, {nodes[n], centre},
                      {{{nodes[n], centre}}});
}

/// Index of the cloth that hangs under a cover's node; -1 for none and for every other node.
int Assembler::cloth_under(NodeId node) const {
  const auto found = std::find(cover_nodes_.begin(), cover_nodes_.end(), node);
  if (found == cover_nodes_.end()) return -1;
  const int cloth = shade_of(out_.shape.facets[static_cast<std::size_t>(found - cover_nodes_.begin())], spec_.shades);
  return cloth >= 0 && spec_.shades[at(cloth)].value.hangs == ShadeSide::inside ? cloth : -1;
}

/// Between two parts; a cloth that hangs under one of them takes that one's place where it is drawn, and exchanges with
/// it in turn. Both are gathered by node and cloth, since many pairs share them.
void Assembler::exchange_longwave(NodeId a, NodeId b, double area_m2, std::map<std::pair<int, int>, double>& to_cloth) {
  const std::string name = "longwave between " + graph_.name_of(a) + " and " + graph_.name_of(b);
  const int under_a = cloth_under(a), under_b = cloth_under(b);
  if (under_a == under_b) {  // none, or both above the same cloth
    graph_.exchange(name, "longwave inside", RadiantExchange{area_m2}, {a, b}, {{{a, b}}});
    return;
  }
  const int cloth = under_a >= 0 ? under_a : under_b;
  const ChannelId drawn = cloth_drawn_[at(cloth)];
  graph_.exchange(name, "longwave inside",
                  ScreenedRadiantExchange{area_m2, 1.0, spec_.shades[at(cloth)].value.infrared_passes}, {a, b, drawn},
                  {{{a, b}}});
  to_cloth[{a.index, cloth}] += area_m2;
  to_cloth[{b.index, cloth}] += area_m2;
}

/// The water on a facet that lets thermal radiation pass sends it out through the facet.
void Assembler::add_longwave_of_water(std::size_t f) {
  const Facet& facet = out_.shape.facets[f];
  const double passes = sheet_of(facet, out_.shape, spec_.house.cover).infrared_passes;
  if (passes <= 0.0) return;
  const double sky = table_->sun().instants().front().geometry->outlooks[f].sky;
  const int cloth = shade_of(facet, spec_.shades);
  const bool outside = cloth >= 0 && spec_.shades[at(cloth)].value.hangs == ShadeSide::outside;
  const ChannelId drawn = outside ? cloth_drawn_[at(cloth)] : nothing_drawn_;
  const double cloth_passes = outside ? spec_.shades[at(cloth)].value.infrared_passes : 1.0;
  const NodeId cover = cover_nodes_[f];
  const auto add = [&](const char* to, const char* category, double share, ChannelId seen, AccountId account) {
    if (share > 0.0)
      graph_.exchange("longwave of the water on the " + facet.name + to, category,
                      WaterRadiationThroughCover{facet.area_m2 * passes * share, facet.area_m2, cloth_passes},
                      {cover, seen, Input(cover, 1), drawn}, {{{cover, account}}});
  };
  add(" to the sky", "to the sky", sky, out_.site.sky, sky_);
  add(" to the surroundings", "through the cover", 1.0 - sky, out_.site.outdoor, outdoor_heat_);
}

/// Through a cover that lets thermal radiation pass: part of what is seen beyond it is sky, the rest stands at the
/// temperature of the outdoor air.
void Assembler::longwave_to_outdoors(NodeId from, const std::string& name, int facet, double area_m2) {
  const Facet& shape = out_.shape.facets[at(facet)];
  const double sky = table_->sun().instants().front().geometry->outlooks[at(facet)].sky;
  const int cloth = shade_of(shape, spec_.shades);
  const ChannelId drawn = cloth >= 0 ? cloth_drawn_[at(cloth)] : nothing_drawn_;
  const double passes = cloth >= 0 ? spec_.shades[at(cloth)].value.infrared_passes : 1.0;
  const NodeId cover = cover_nodes_[at(facet)];
  const auto add = [&](const std::string& what, const char* category, double share, ChannelId seen, AccountId account) {
    if (share > 0.0)
      graph_.exchange("longwave of " + name + " through the " + shape.name + what, category,
                      RadiationThroughCover{area_m2 * share, shape.area_m2, passes},
                      {from, seen, cover, Input(cover, 1), drawn}, {{{from, account}, {from, cover}}});
  };
  add(" to the sky", "to the sky", sky, out_.site.sky, sky_);
  add(" to the surroundings", "through the cover", 1.0 - sky, out_.site.outdoor, outdoor_heat_);
}

}  // namespace noonhouse
