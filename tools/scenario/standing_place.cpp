// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/standing_place.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {
constexpr double kLeastBeneath = 0.15;  ///< a bench lower than this has no room for pots beneath [m]
/// How high above a bench the room is free: to the lowest bench over it, or to the roof over its lower edge.
double free_above(int bench, const std::vector<BenchShape>& benches, const HouseShape& shape) {
  const BenchShape& here = benches[static_cast<std::size_t>(bench)];
  double top = shape.top_m;
  while (top > here.z_m) {  // the roof over both edges
    const auto across = shape.across_at(top);
    if (across.front_m >= here.y_high_m - 1e-6 && across.back_m <= here.y_low_m + 1e-6) break;
    top -= 0.01;
  }
  for (const BenchShape& other : benches)
    if (other.z_m > here.z_m && other.overlaps(here)) top = std::min(top, other.z_m);
  return std::max(0.0, top - here.z_m);
}

}  // namespace

double headroom_m(const StandingPlace& place, const ScenarioSpec& spec, const HouseShape& shape) {
  if (place.of == StandingPlace::Of::floor) return shape.top_m;
  if (place.of == StandingPlace::Of::under) return spec.benches[static_cast<std::size_t>(place.bench)].value.height_m;
  return free_above(place.bench, bench_shapes(spec.benches, shape), shape);
}

std::vector<StandingPlace> standing_places(const ScenarioSpec& spec, const HouseShape& shape) {
  using Of = StandingPlace::Of;
  std::vector<StandingPlace> out;
  for (int i = 0; i < static_cast<int>(spec.benches.size()); ++i) {
    const auto& bench = spec.benches[static_cast<std::size_t>(i)];
    const BenchSpec& b = bench.value;
    const int bay = shape.bay_index(b.bay);
    out.push_back({Of::on, i, bay, b.height_m, b.hangs, (b.hangs ? "hanging from the " : "on the ") + bench.name});
    if (!b.hangs && b.height_m >= kLeastBeneath)
      out.push_back({Of::under, i, bay, 0.0, false, "under the " + bench.name});
  }
  for (int b = 0; b < static_cast<int>(shape.bays.size()); ++b)
    out.push_back(
        {Of::floor, -1, b, 0.0, false, "on the floor of the " + shape.bays[static_cast<std::size_t>(b)].name + " bay"});
  return out;
}

double canopy_height_m(const StandingPlace& place, const PlantKindSpec& kind) {
  return place.height_m + kPotHeight + 0.5 * kind.height_m;
}

int place_of(const PlantGroupSpec& group, const std::vector<StandingPlace>& places, const ScenarioSpec& spec) {
  using Of = StandingPlace::Of;
  const auto named = [&](const StandingPlace& p) {
    if (p.of == Of::floor) return spec.house.bays[static_cast<std::size_t>(p.bay)].name == group.place;
    return spec.benches[static_cast<std::size_t>(p.bench)].name == group.place && (p.of == Of::under) == group.under;
  };
  for (std::size_t p = 0; p < places.size(); ++p)
    if (named(places[p])) return static_cast<int>(p);
  NOON_ASSERT(false);
  return -1;
}

}  // namespace noonhouse
