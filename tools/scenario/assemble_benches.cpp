// SPDX-License-Identifier: Apache-2.0
// Benches, shelves and rails, and the places for plants.
#include <algorithm>

#include "models/envelope/heat_links.hpp"
#include "models/properties/constants.hpp"
#include "models/water/wet_mass.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kHeldOnBench = 0.3;  ///< [kg/m2]; common practice, no source
constexpr double kBelowBench = 0.05;  ///< where the air beneath a bench is looked for [m]
constexpr double kRailShare = 0.02;   ///< of a rail's room that is rail; common practice, no source
}  // namespace

const BenchSpec& Assembler::bench(const std::string& name) const {
  const auto it =
      std::find_if(spec_.benches.begin(), spec_.benches.end(), [&](const auto& b) { return b.name == name; });
  NOON_ASSERT(it != spec_.benches.end());
  return it->value;
}

/// Share of a bench's top that plants on it cover.
double Assembler::bench_cover_share(const std::string& name) const {
  double covered = 0.0;
  for (const auto& group : spec_.plants)
    if (group.value.place == name && !group.value.under) covered += group.value.area_m2;
  return std::min(1.0, covered / (bench(name).length_m * bench(name).width_m));
}

void Assembler::add_benches() {
  for (std::size_t i = 0; i < spec_.benches.size(); ++i) {
    const auto& item = spec_.benches[i];
    const BenchSpec& b = item.value;
    const int bay = out_.shape.bay_index(b.bay);
    const BayParts& parts = out_.bays[at(bay)];
    const double area = b.length_m * b.width_m * (b.hangs ? kRailShare : 1.0);
    const NodeId node = film_node(item.name, b.length_m * b.width_m * b.heat_capacity_j_m2_k, start_.air_k);
    bench_nodes_[item.name] = node;
    out_.benches.push_back(node);
    const double length = b.length_m * b.width_m / (2.0 * (b.length_m + b.width_m));
    touch_air({item.name, node, area, film_of(0.0, length, b.width_m), 0.2 * kHeldOnBench * area, bay},
              air_at(bay, b.height_m));
    touch_air({"underside of the " + item.name, node, area, film_of(kPi, length, b.width_m), 1.0, -1, false},
              air_at(bay, std::max(0.0, b.height_m - kBelowBench)));
    receive_sun(item.name, node, table_->row().bench(i));
    run_off(item.name, node, kHeldOnBench * area, End(parts.floor, 1), parts.floor);
  }
}

/// The light of every place, and the air that passes there.
void Assembler::add_places() {
  out_.places = standing_places(spec_, out_.shape);
  const SunRow& row = table_->row();
  for (std::size_t p = 0; p < out_.places.size(); ++p) {
    const std::string& name = out_.places[p].name;
    PlaceChannels light{graph_.channel("light " + name, "W m-2", 0.0),
                        graph_.channel("direct sun " + name, "W m-2", 0.0),
                        graph_.channel("soft light " + name, "W m-2", 0.0)};
    out_.site.sunlight[row.light(p)] = light.all;
    out_.site.sunlight[row.direct(p)] = light.direct;
    out_.site.sunlight[row.soft(p)] = light.soft;
    out_.light.push_back(light);
  }
}

}  // namespace noonhouse
