// SPDX-License-Identifier: Apache-2.0
// Thermal radiation between all surfaces inside, and through covers that let it pass.
#include <algorithm>
#include <map>

#include "models/envelope/film_window.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/light/radiant_room.hpp"
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
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

/// The house's surfaces as the light's geometry has them, each with the node it belongs to.
void Assembler::add_longwave() {
  using Of = SurfacePart::Of;
  const LightGeometry& geometry = *table_->sun().instants().front().geometry;
  std::vector<double> areas;
  for (const LightSurface& surface : geometry.scene.surfaces()) areas.push_back(surface.area_m2);
  std::vector<RadiantPart> parts;
  std::vector<std::size_t> member;  // of each part: index into nodes
  std::vector<NodeId> nodes;
  std::vector<std::string> names;
  std::map<int, std::size_t> index_of;
  for (const SurfacePart& part : surface_parts(spec_, out_.shape, geometry.scene)) {
    if (part.share <= 0.0 || areas[at(part.surface)] <= 0.0) continue;
    const bool facet = part.of == Of::facet;
    const double passes =
        facet ? sheet_of(out_.shape.facets[at(part.index)], out_.shape, spec_.house.cover).infrared_passes : 0.0;
    const NodeId node = facet                  ? cover_nodes_[at(part.index)]
                        : part.of == Of::floor ? out_.bays[at(part.index)].floor
                        : part.of == Of::bench ? bench_nodes_.at(spec_.benches[at(part.index)].name)
                                               : out_.plants[at(part.index)].tissue;
    const auto [place, fresh] = index_of.try_emplace(node.index, nodes.size());
    if (fresh) {
      nodes.push_back(node);
      names.push_back(graph_.name_of(node));
    }
    parts.push_back({part.surface, part.share, part.emissivity, passes});
    member.push_back(place->second);
  }
  const RadiantRoom room = radiant_room(geometry.exchange_m2, areas, parts);
  Grid between(nodes.size(), nodes.size()), through(nodes.size(), out_.shape.facets.size());
  for (std::size_t p = 0; p < parts.size(); ++p)
    for (std::size_t q = 0; q < parts.size(); ++q) {
      between(member[p], member[q]) += room.between(p, q);
      if (at(parts[q].surface) < out_.shape.facets.size())
        through(member[p], at(parts[q].surface)) += room.through(p, q);
    }
  const bool screened = std::any_of(spec_.shades.begin(), spec_.shades.end(),
                                    [](const auto& s) { return s.value.hangs == ShadeSide::inside; });
  const ThinnedExchange thin = thin_exchange(between, screened ? 0.0 : kLeastShare);
  for (const auto& pair : thin.pairs)
    exchange_longwave(nodes[pair.a], nodes[pair.b], pair.area_m2, names[pair.a], names[pair.b]);
  join_longwave_centre(thin.to_centre_m2, nodes, names);
  for (std::size_t n = 0; n < nodes.size(); ++n) {
    double all = 0.0;
    std::size_t most = 0;
    for (std::size_t f = 0; f < through.columns; ++f) {
      all += through(n, f);
      if (through(n, f) > through(n, most)) most = f;
    }
    if (all <= 1e-9) continue;
    double rest = all;
    for (std::size_t f = 0; f < through.columns; ++f)
      if (f != most && through(n, f) >= kLeastThrough * all) {
        longwave_to_outdoors(nodes[n], names[n], static_cast<int>(f), through(n, f));
        rest -= through(n, f);
      }
    longwave_to_outdoors(nodes[n], names[n], static_cast<int>(most), rest);
  }
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

/// Between two parts; a cloth under one of them, where drawn, takes that one's place.
void Assembler::exchange_longwave(NodeId a, NodeId b, double area_m2, const std::string& a_name,
                                  const std::string& b_name) {
  const std::string name = "longwave between " + a_name + " and " + b_name;
  const auto inner_cloth = [&](NodeId node) {
    const auto found = std::find(cover_nodes_.begin(), cover_nodes_.end(), node);
    if (found == cover_nodes_.end()) return -1;
    const int cloth = shade_of(out_.shape.facets[static_cast<std::size_t>(found - cover_nodes_.begin())], spec_.shades);
    return cloth >= 0 && spec_.shades[at(cloth)].value.hangs == ShadeSide::inside ? cloth : -1;
  };
  const int under_a = inner_cloth(a), under_b = inner_cloth(b);
  if (under_a == under_b) {  // none, or both above the same cloth
    graph_.exchange(name, "longwave inside", RadiantExchange{area_m2}, {a, b}, {{{a, b}}});
    return;
  }
  const NodeId seer = under_a >= 0 ? b : a;
  const NodeId cover = under_a >= 0 ? a : b;
  const std::size_t cloth = at(under_a >= 0 ? under_a : under_b);
  graph_.exchange(name, "longwave inside", ScreenedRadiantExchange{area_m2, 1.0, 0.0},
                  {seer, cover, cloth_drawn_[cloth]}, {{{seer, cover}}});
  graph_.exchange(name + ", to the cloth", "longwave inside", ScreenedRadiantExchange{area_m2, 0.0, 1.0},
                  {seer, cloth_nodes_[cloth], cloth_drawn_[cloth]}, {{{seer, cloth_nodes_[cloth]}}});
  graph_.exchange(name + ", beyond the cloth", "longwave inside", ScreenedRadiantExchange{area_m2, 0.0, 1.0},
                  {cover, cloth_nodes_[cloth], cloth_drawn_[cloth]}, {{{cover, cloth_nodes_[cloth]}}});
}

/// Through a cover that lets thermal radiation pass: part of what is seen beyond it is sky, the rest stands at the
/// temperature of the outdoor air.
void Assembler::longwave_to_outdoors(NodeId from, const std::string& name, int facet, double area_m2) {
  const Facet& shape = out_.shape.facets[at(facet)];
  const double sky = table_->sun().instants().front().geometry->outlooks[at(facet)].sky;
  const int cloth = shade_of(shape, spec_.shades);
  const ChannelId drawn = cloth >= 0 ? cloth_drawn_[at(cloth)] : nothing_drawn_;
  const NodeId cover = cover_nodes_[at(facet)];
  const auto add = [&](const std::string& what, const char* category, double share, ChannelId seen, AccountId account) {
    if (share > 0.0)
      graph_.exchange("longwave of " + name + " through the " + shape.name + what, category,
                      RadiationThroughCover{area_m2 * share, shape.area_m2},
                      {from, seen, cover, Input(cover, 1), drawn}, {{{from, account}, {from, cover}}});
  };
  add(" to the sky", "to the sky", sky, out_.site.sky, sky_);
  add(" to the surroundings", "through the cover", 1.0 - sky, out_.site.outdoor, outdoor_heat_);
}

}  // namespace noonhouse
