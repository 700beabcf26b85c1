// SPDX-License-Identifier: Apache-2.0
// Mist lines: what their water does in each layer on its way down, and where the rest lands.
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

#include "models/air/spray_law.hpp"
#include "models/water/drip.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kTypicalK = 303.15, kTypicalHumidity = 0.4;  ///< air in hours of spraying, for the tables of drops
constexpr double kStageUnit = 1e-3;
}  // namespace

void Assembler::add_mist() {
  for (const auto& item : spec_.mist_lines) {
    position_channel(item.name, "mist line");
    mist_flow_[item.name] = graph_.channel("water flow of " + item.name, "kg s-1", 0.0);
    mist_spill_[item.name] = graph_.channel("water lost at the cut of " + item.name, "kg s-1", 0.0);
    const NodeId wetted = out_.bays[at(out_.shape.bay_index(item.value.bays.front()))].floor;
    graph_.exchange("spill of " + item.name, "spilt from a line", Drip{1.0}, {out_.tank, mist_spill_[item.name]},
                    {{{End(out_.tank, 1), End(wetted, 1)}, {out_.tank, wetted}}});
    const double w = kTypicalHumidity * saturation_humidity_ratio(kTypicalK, out_.pressure_pa);
    const auto table =
        std::make_shared<const SprayTable>(drop_sizes_of_median(item.value.median_drop_m, item.value.drop_spread),
                                           AirAroundDrop{kTypicalK, w, out_.pressure_pa});
    for (const std::string& name : item.value.bays) {
      const int bay = out_.shape.bay_index(name);
      if (item.value.wets == MistWets::roof) {
        sprinkle_roof(item, bay, table);
      } else {
        spray_bay(item, bay, table);
      }
    }
  }
}

/// The surfaces below a line in a bay, by the ground they cover; of shelves over one another the upper one takes all.
std::vector<Assembler::Landing> Assembler::landings(const MistSpec& m, int bay) const {
  const BayParts& parts = out_.bays[at(bay)];
  std::vector<Landing> out;
  double left = 1.0;
  const auto land = [&](const std::string& where, NodeId node, int place, double area_m2) {
    const double floor_m2 = out_.shape.bays[at(bay)].floor_m2, share = std::min(area_m2 / floor_m2, left);
    left -= share;
    if (share > 0.0) out.push_back({where, node, out_.places[at(place)].height_m, share, place, share * floor_m2});
  };
  // Leaves catch what falls on the ground that they hide; the rest falls on the soil in the pots.
  const auto land_on_plants = [&](std::size_t i) {
    const PlantParts& plant = out_.plants[i];
    const PlantGroupSpec& group = spec_.plants[i].value;
    const double leaves_m2 = leaf_cover_m2(group, plant.limits), sunlit = sides_of(plant.limits).sunlit_area;
    land(plant.name, plant.tissue, plant.place_index, sunlit * leaves_m2);
    land("the shaded side of " + plant.name, plant.shaded, plant.place_index, (1.0 - sunlit) * leaves_m2);
    land("the pots of " + plant.name, plant.pot, plant.place_index, group.area_m2 - leaves_m2);
  };
  if (m.wets == MistWets::air) {
    for (std::size_t i = 0; i < out_.plants.size(); ++i) {
      const PlantParts& plant = out_.plants[i];
      const StandingPlace& place = out_.places[at(plant.place_index)];
      if (place.bay != bay || place.of != StandingPlace::Of::on || place.height_m >= m.height_m) continue;
      land_on_plants(i);
    }
    for (int p = 0; p < static_cast<int>(out_.places.size()); ++p) {
      const StandingPlace& place = out_.places[at(p)];
      if (place.of != StandingPlace::Of::on || place.bay != bay || place.height_m >= m.height_m || place.hangs)
        continue;
      const auto& b = spec_.benches[at(place.bench)];
      land(b.name, bench_nodes_.at(b.name), p, b.value.length_m * b.value.width_m * (1.0 - bench_cover_share(b.name)));
    }
  }
  const int floor = floor_place(bay);
  for (std::size_t i = 0; i < out_.plants.size(); ++i)
    if (out_.plants[i].place_index == floor) land_on_plants(i);
  land("the floor of the " + parts.name + " bay", parts.floor, floor, out_.shape.bays[at(bay)].floor_m2);
  return out;
}

/// Index of a bay's open floor among the places.
int Assembler::floor_place(int bay) const {
  for (int p = 0; p < static_cast<int>(out_.places.size()); ++p)
    if (out_.places[at(p)].of == StandingPlace::Of::floor && out_.places[at(p)].bay == bay) return p;
  NOON_ASSERT(false);
  return -1;
}

/// The stage that a line's spray has come to at the top of each layer, from the nozzles' layer down: none at first.
std::vector<Input> Assembler::spray_history(const Named<MistSpec>& line, int bay,
                                            const std::shared_ptr<const SprayTable>& table) {
  if (!nothing_dried_.valid()) nothing_dried_ = graph_.channel("stage of spray at the nozzles", "1", 0.0);
  std::vector<Input> out{nothing_dried_};
  if (line.value.wets == MistWets::floor) return out;
  const auto& layers = out_.shape.bays[at(bay)].layers;
  double from = line.value.height_m;
  for (int i = out_.shape.layer_at(from); i >= 1; --i) {
    const double depth = std::max(0.0, from - layers[at(i)].bottom_m);
    from = layers[at(i)].bottom_m;
    const std::string name = "stage of " + line.name + " below layer " + std::to_string(i + 1) + " of the " +
                             out_.bays[at(bay)].name + " bay";
    const NodeId reading = graph_.node(name, Reading{}, {0.0}, {kStageUnit});
    const NodeId air = out_.bays[at(bay)].air[at(i)];
    SprayHistory law;
    law.table = table;
    law.depth_m = depth;
    law.pressure_pa = out_.pressure_pa;
    graph_.exchange(name, "instruments", law, {reading, out.back(), air, Input(air, 1)}, {{{instruments_, reading}}});
    out.emplace_back(reading);
  }
  return out;
}

void Assembler::spray_bay(const Named<MistSpec>& line, int bay, const std::shared_ptr<const SprayTable>& table) {
  const MistSpec& m = line.value;
  const bool onto_floor = m.wets == MistWets::floor;
  const auto stage = spray_history(line, bay, table);
  const auto& layers = out_.shape.bays[at(bay)].layers;
  const int top = out_.shape.layer_at(m.height_m);
  const double of_line = 1.0 / static_cast<double>(m.bays.size());
  const ChannelId flow = mist_flow_.at(line.name);
  const auto falls = landings(m, bay);
  for (int i = top; i >= 0; --i) {
    const double above = i == top ? m.height_m : layers[at(i)].top_m;
    std::map<double, double, std::greater<>> stretches;  // portion by depth of fall through this layer
    for (const Landing& fall : falls) {
      if (i > 0 && fall.height_m < layers[at(i)].bottom_m) {
        stretches[above - layers[at(i)].bottom_m] += of_line * fall.share;
        continue;
      }
      if (fall.height_m >= above) continue;  // it has landed in a layer above
      const double depth = onto_floor ? 0.0 : above - fall.height_m;
      const NodeId air = out_.bays[at(bay)].air[at(i)];
      if (depth > 0.0) stretches[depth] += of_line * fall.share;
      const double approach = onto_floor ? 0.0 : table->approach_to_wet_bulb(m.height_m - fall.height_m);
      const ExchangeId lands =
          graph_.exchange(line.name + " onto " + fall.where, "mist that lands",
                          SprayLanding{table, of_line * fall.share, depth, approach, out_.pressure_pa},
                          {onto_floor ? stage.front() : stage[at(top - i)], air, Input(air, 1), out_.tank, flow},
                          {{{End(out_.tank, 1), End(fall.node, 1)}, {out_.tank, fall.node}, {out_.tank, air}}});
      out_.landings.push_back({fall.place, lands, fall.area_m2});
    }
    if (onto_floor) continue;
    for (const auto& [depth, portion] : stretches) {
      const NodeId air = out_.bays[at(bay)].air[at(i)];
      graph_.exchange(fmt::format("{} through {:.4g} m of layer {} of the {} bay", line.name, depth, i + 1,
                                  out_.bays[at(bay)].name),
                      "mist", SprayEvaporation{table, portion, depth, out_.pressure_pa},
                      {stage[at(top - i)], air, Input(air, 1), out_.tank, flow},
                      {{{End(out_.tank, 1), End(air, 1)}, {out_.tank, air}}});
    }
  }
}

}  // namespace noonhouse
