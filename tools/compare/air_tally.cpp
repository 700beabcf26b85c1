// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/air_tally.hpp"

#include <algorithm>
#include <limits>

namespace noonhouse {
namespace {
constexpr std::size_t kInside = std::numeric_limits<std::size_t>::max();
}  // namespace

AirTally::AirTally(const Assembly& assembly) : streams_(assembly) {
  for (const AirZone& zone : streams_.zones()) dry_air_kg_ += zone.dry_air_kg;
  sums_ = through_the_cover(streams_, std::vector<TwoWayAir>(streams_.ways().size()));
  for (const AirWay& way : streams_.ways()) {
    const auto sum = std::find_if(sums_.begin(), sums_.end(),
                                  [&](const AirFlow& s) { return s.name == way.name && s.kind == way.kind; });
    sum_of_piece_.push_back(sum == sums_.end() ? kInside : static_cast<std::size_t>(sum - sums_.begin()));
  }
}

void AirTally::sample(double time_s, std::span<const double> potentials, double weight_s, double hottest_k) {
  const std::vector<TwoWayAir>& now = streams_.flowing(potentials);
  double drawn_in_kg_s = 0.0;
  for (std::size_t i = 0; i < now.size(); ++i) {
    if (sum_of_piece_[i] == kInside) continue;
    AirFlow& sum = sums_[sum_of_piece_[i]];
    sum.in_kg_s += now[i].b_to_a_kg_s * weight_s;
    sum.out_kg_s += now[i].a_to_b_kg_s * weight_s;
    drawn_in_kg_s += now[i].b_to_a_kg_s;
  }
  time_s_ += weight_s;
  const double changes_1_s = drawn_in_kg_s / dry_air_kg_;
  if (!(seen_.least_1_s <= changes_1_s)) {
    seen_.least_1_s = changes_1_s;
    seen_.least_time_s = time_s;
  }
  if (!(seen_.most_1_s >= changes_1_s)) {
    seen_.most_1_s = changes_1_s;
    seen_.most_time_s = time_s;
  }
  if (hottest_k > hottest_k_) {
    hottest_k_ = hottest_k;
    seen_.hottest_1_s = changes_1_s;
  }
}

void AirTally::put(RunRecord& record) const {
  record.airing = seen_;
  if (time_s_ <= 0.0) return;
  double drawn_in_kg = 0.0;
  for (const AirFlow& sum : sums_) {
    drawn_in_kg += sum.in_kg_s;
    record.ways.push_back({sum.name, sum.in_kg_s / (time_s_ * dry_air_kg_), sum.out_kg_s / (time_s_ * dry_air_kg_)});
  }
  record.airing.mean_1_s = drawn_in_kg / (time_s_ * dry_air_kg_);
}

}  // namespace noonhouse
