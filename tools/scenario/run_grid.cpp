// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/run_grid.hpp"

#include <algorithm>
#include <variant>

#include "models/weather/cloudburst.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

void add_bends(const GustsSpec& gusts, std::vector<Tick>& out) {
  out.insert(out.end(), {begin_of(gusts), end_of(gusts)});
}
void add_bends(const CloudburstSpec& spec, std::vector<Tick>& out) {
  Cloudburst burst;
  burst.duration_s = spec.lasts_s;
  for (const double bend_s : burst.bends_s()) out.push_back(begin_of(spec) + ticks(bend_s));
}
/// Other weather is longer than the spacing, or none of the grid's.
template <class Other>
void add_bends(const Other&, std::vector<Tick>&) {}

}  // namespace

RunGrid::RunGrid(const ScenarioSpec& spec) : spacing_(ticks(spec.run.sun_every_s)) {
  NOON_ASSERT(spacing_.ms > 0);
  const Tick length = ticks(spec.run.length_s);
  for (const auto& item : spec.hazards)
    std::visit([&](const auto& hazard) { add_bends(hazard, instants_); }, item.value.what);
  std::erase_if(instants_, [&](Tick t) { return t >= length; });
  Tick next{0};
  instants_.push_back(next);
  while (next < length) instants_.push_back(next = next + spacing_);
  std::sort(instants_.begin(), instants_.end());
  instants_.erase(std::unique(instants_.begin(), instants_.end()), instants_.end());
}

std::size_t RunGrid::interval_at(Tick t) const {
  const auto later = std::upper_bound(instants_.begin(), instants_.end(), t);
  const auto first = static_cast<std::size_t>(later - instants_.begin());
  return std::min(std::max<std::size_t>(first, 1) - 1, instants_.size() - 2);
}

}  // namespace noonhouse
