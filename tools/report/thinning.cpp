// SPDX-License-Identifier: Apache-2.0
#include "tools/report/thinning.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

void keep_extremes(std::span<const double> values, std::size_t from, std::size_t to, std::vector<std::size_t>& kept) {
  std::size_t lowest = to;
  std::size_t highest = to;
  for (std::size_t i = from; i < to; ++i) {
    if (!std::isfinite(values[i])) continue;
    if (lowest == to || values[i] < values[lowest]) lowest = i;
    if (highest == to || values[i] > values[highest]) highest = i;
  }
  if (lowest == to) return;
  kept.push_back(lowest);
  kept.push_back(highest);
}

}  // namespace

std::vector<std::size_t> thin_samples(const std::vector<std::span<const double>>& lines, std::size_t count,
                                      std::size_t most) {
  std::vector<std::size_t> kept;
  if (count <= most) {
    kept.resize(count);
    std::iota(kept.begin(), kept.end(), std::size_t{0});
    return kept;
  }
  const std::size_t groups = std::max<std::size_t>(1, most / (2 * std::max<std::size_t>(1, lines.size())));
  kept = {0, count - 1};
  for (std::size_t g = 0; g < groups; ++g) {
    for (const std::span<const double> line : lines) {
      NOON_ASSERT(line.size() == count);
      keep_extremes(line, count * g / groups, count * (g + 1) / groups, kept);
    }
  }
  std::sort(kept.begin(), kept.end());
  kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
  return kept;
}

std::vector<double> group_highest(std::span<const double> values, std::size_t group) {
  NOON_ASSERT(group > 0);
  std::vector<double> out;
  for (std::size_t from = 0; from < values.size(); from += group) {
    double highest = kNone;
    for (std::size_t i = from; i < std::min(values.size(), from + group); ++i) {
      if (std::isfinite(values[i]) && !(highest >= values[i])) highest = values[i];
    }
    out.push_back(highest);
  }
  return out;
}

}  // namespace noonhouse
