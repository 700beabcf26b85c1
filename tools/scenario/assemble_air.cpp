// SPDX-License-Identifier: Apache-2.0
// The air of the bays: layers, their mixing, exchange between bays, leakage.
#include "models/air/air_exchange.hpp"
#include "models/air/moist_air.hpp"
#include "models/envelope/openings.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kHumidityTolerance = 2e-5;  ///< [kg/kg]
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

void Assembler::add_air() {
  for (std::size_t b = 0; b < out_.shape.bays.size(); ++b) {
    const BayShape& bay = out_.shape.bays[b];
    BayParts parts;
    parts.name = bay.name;
    for (std::size_t i = 0; i < bay.layers.size(); ++i)
      parts.air.push_back(graph_.node("air of the " + bay.name + " bay, layer " + std::to_string(i + 1),
                                      MoistAir{bay.layers[i].volume_m3 * air_density_},
                                      {start_.air_k, start_.humidity_ratio}, {kTemperatureUnit, kHumidityTolerance}));
    out_.bays.push_back(std::move(parts));
    stirring_.push_back(graph_.channel("stirring in the " + bay.name + " bay", "m s-1", 0.0));
  }
  for (int b = 0; b < static_cast<int>(out_.bays.size()); ++b) join_layers(b);
  join_bays();
  add_leakage();
}

void Assembler::join_layers(int b) {
  const BayShape& bay = out_.shape.bays[at(b)];
  const auto& air = out_.bays[at(b)].air;
  for (std::size_t i = 0; i + 1 < air.size(); ++i) {
    LayerMixing law;
    law.area_m2 = bay.layers[i].top_area_m2;
    law.spacing_m = bay.layers[i + 1].middle_m() - bay.layers[i].middle_m();
    law.dry_air_density_kg_m3 = air_density_;
    const NodeId low = air[i], high = air[i + 1];
    graph_.exchange(
        "mixing of layers " + std::to_string(i + 1) + " and " + std::to_string(i + 2) + " of the " + bay.name + " bay",
        "mixing", law, {low, Input(low, 1), high, Input(high, 1), stirring_[at(b)]},
        {{{End(low, 1), End(high, 1)}, {low, high}}});
  }
}

void Assembler::join_bays() {
  for (std::size_t b = 0; b + 1 < out_.bays.size(); ++b) {
    const BayShape& bay = out_.shape.bays[b];
    for (std::size_t i = 0; i < bay.layers.size(); ++i) {
      BayExchange law;
      law.area_m2 = bay.layers[i].section_area_m2;
      law.height_m = bay.layers[i].top_m - bay.layers[i].bottom_m;
      law.dry_air_density_kg_m3 = air_density_;
      const NodeId here = out_.bays[b].air[i], next = out_.bays[b + 1].air[i];
      graph_.exchange(
          "layer " + std::to_string(i + 1) + " between the " + bay.name + " and " + out_.bays[b + 1].name + " bays",
          "mixing", law, {here, Input(here, 1), next, Input(next, 1)}, {{{End(here, 1), End(next, 1)}, {here, next}}});
    }
  }
}

void Assembler::add_leakage() {
  for (std::size_t b = 0; b < out_.bays.size(); ++b) {
    const BayShape& bay = out_.shape.bays[b];
    for (std::size_t i = 0; i < bay.layers.size(); ++i) {
      const NodeId air = out_.bays[b].air[i];
      const double kg_s = bay.layers[i].volume_m3 * spec_.house.leakage_per_s * air_density_;
      graph_.exchange("leakage of layer " + std::to_string(i + 1) + " of the " + bay.name + " bay", "leakage",
                      Leakage{kg_s}, {air, Input(air, 1), out_.site.outdoor, out_.site.humidity, out_.site.wind},
                      {{{End(air, 1), outdoor_vapour_}, {air, outdoor_heat_}}});
    }
  }
}

}  // namespace noonhouse
