// SPDX-License-Identifier: Apache-2.0
// Plant groups in the house, the ways water takes into their pots, and who watches over them.
#include <algorithm>

#include "models/plants/pot_watch.hpp"
#include "models/water/catchment.hpp"
#include "models/water/drip.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/plant_builder.hpp"

namespace noonhouse {

void Assembler::add_plants() {
  for (std::size_t i = 0; i < spec_.plants.size(); ++i) add_plant_group(i);
}

NodeId Assembler::ground_of(const StandingPlace& place) const {
  if (place.of == StandingPlace::Of::on) return bench_nodes_.at(spec_.benches[at(place.bench)].name);
  return out_.bays[at(place.bay)].floor;
}

/// What surrounds whatever stands on a place; its own share of the sun is the group's.
PlantSurroundings Assembler::surroundings_of(int place_index, const PlantKindSpec& kind) const {
  const StandingPlace& place = out_.places[at(place_index)];
  const BayParts& bay = out_.bays[at(place.bay)];
  const int layer = out_.shape.layer_at(canopy_height_m(place, kind));
  const NodeId air = bay.air[at(layer)], ground = ground_of(place);
  PlantSurroundings s;
  s.air = air;
  s.vapour = Input(air, 1);
  s.draught = bay.draught[at(layer)];
  s.stirring = stirring_[at(place.bay)];
  s.air_heat = air;
  s.air_vapour = End(air, 1);
  s.column_heat = bay.column[at(layer)];
  s.ground = ground;
  s.ground_heat = ground;
  s.ground_water = End(ground, 1);
  s.hangs = place.hangs;
  const PlaceChannels& light = out_.light[at(place_index)];
  s.light = light.all;
  s.direct = light.direct;
  s.soft = light.soft;
  s.sun = sun_;
  s.instruments = instruments_;
  s.start_k = start_.air_k;
  s.air_density_kg_m3 = air_density_;
  s.pressure_pa = out_.pressure_pa;
  s.mean_air_k = table_->mean_outdoor_k();
  s.used_to_w_m2 = usual_direct(*table_, place_index);
  return s;
}

void Assembler::add_plant_group(std::size_t index) {
  const PlantGroupSpec& g = spec_.plants[index].value;
  const int place_index = place_of(g, out_.places, spec_);
  const StandingPlace& place = out_.places[at(place_index)];
  PlantParts plant;
  plant.name = spec_.plants[index].name;
  plant.kind = g.kind;
  plant.place = place.name;
  plant.bay = out_.shape.bays[at(place.bay)].name;
  plant.bay_index = place.bay;
  plant.place_index = place_index;
  plant.height_m = place.height_m;
  plant.limits = kind_of(g, spec_);
  plant.layer = out_.shape.layer_at(canopy_height_m(place, plant.limits));
  plant.light = out_.light[at(place_index)].all;

  PlantSurroundings s = surroundings_of(place_index, plant.limits);
  const auto gain = [&](const std::string& of, std::size_t row) {
    const ChannelId channel = graph_.channel("sun on " + of + plant.name, "W", 0.0);
    out_.site.sunlight[row] = channel;
    return channel;
  };
  s.sunlit_gain = gain("", table_->row().sunlit(index));
  s.shaded_gain = gain("the shaded side of ", table_->row().shaded(index));
  s.pots_gain = gain("the pots of ", table_->row().pots(index));
  PlantBuilder(graph_, s, out_.not_warmed_up).build(g, plant);
  watering_[plant.name] = graph_.exchange("watering of " + plant.name, "hand watering", HandCarried{}, {out_.tank},
                                          {{{End(out_.tank, 1), End(plant.pot, 1)}, {out_.tank, plant.pot}}});
  for (auto& agent : plant_agents(plant, s.air, coolers_in_use())) out_.plan.agents.push_back(std::move(agent));
  add_pot_watch(plant, g);
  out_.plants.push_back(std::move(plant));
}

/// Names of what cools or shades in this plan's service.
std::vector<std::string> Assembler::coolers_in_use() const {
  std::vector<std::string> out;
  const auto add = [&](const auto& devices) {
    for (const auto& device : devices)
      if (plan_.uses(device.name)) out.push_back(device.name);
  };
  add(spec_.openings);
  add(spec_.fans);
  add(spec_.mist_lines);
  add(spec_.pads);
  add(spec_.shades);
  if (out.empty()) return out;
  // Instruments and controls fail in their place; what lacks water or power says so itself.
  const auto add_controls = [&](const auto& controls) {
    for (const auto& control : controls) {
      if (!plan_.uses(control.name)) continue;
      out.push_back(control.name);
      out.push_back(control.value.sensor);
    }
  };
  add_controls(spec_.thermostats);
  add_controls(spec_.humidistats);
  add_controls(spec_.deficit_controls);
  add_controls(spec_.staged_controls);
  add_controls(spec_.proportional_controls);
  for (const auto& rule : spec_.rules)
    if (std::any_of(rule.value.forbids.begin(), rule.value.forbids.end(),
                    [&](const auto& name) { return plan_.uses(name); }))
      out.push_back(rule.value.sensor);
  for (const auto& [name, fault] : spec_.faults)
    if (std::find(out.begin(), out.end(), fault.of) != out.end()) out.push_back(name);
  return out;
}

void Assembler::add_pot_watch(const PlantParts& plant, const PlantGroupSpec& group) {
  PotWatch::Parameters p = pot_watch_of(plant, group);
  for (const auto& visit : spec_.grower.visits)
    if (std::find(visit.value.waters.begin(), visit.value.waters.end(), plant.name) != visit.value.waters.end())
      p.watered_by.push_back("grower, " + visit.name);
  for (const auto& line : spec_.drip_lines)
    if (plan_.uses(line.name) && waters(line.value, plant.name)) p.watered_by.push_back(line.name);
  out_.plan.agents.push_back(std::make_unique<PlanOf<PotWatch>>(std::move(p)));
}

/// A line's water goes to its groups by the ground they cover.
void Assembler::add_drips() {
  for (const auto& line : spec_.drip_lines) {
    const ChannelId running = position_channel(line.name, "drip line");
    double all = 0.0;
    for (std::size_t i = 0; i < out_.plants.size(); ++i)
      if (waters(line.value, out_.plants[i].name)) all += spec_.plants[i].value.area_m2;
    for (std::size_t i = 0; i < out_.plants.size(); ++i) {
      if (!waters(line.value, out_.plants[i].name)) continue;
      const double share = spec_.plants[i].value.area_m2 / all;
      const NodeId pot = out_.plants[i].pot;
      graph_.exchange(line.name + " into the pots of " + out_.plants[i].name, "drip",
                      Drip{share * kWaterKgPerM3 * line.value.flow_m3_s}, {out_.tank, running},
                      {{{End(out_.tank, 1), End(pot, 1)}, {out_.tank, pot}}});
    }
  }
}

bool Assembler::waters(const DripSpec& line, const std::string& group) {
  return std::find(line.waters.begin(), line.waters.end(), group) != line.waters.end();
}

}  // namespace noonhouse
