// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/air_tally.hpp"

#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {

AirTally::AirTally(const Assembly& assembly) : streams_(assembly) {
  for (const AirZone& zone : streams_.zones()) dry_air_kg_ += zone.dry_air_kg;
}

void AirTally::sample(double time_s, std::span<const double> potentials, double weight_s, double hottest_k) {
  const std::vector<AirFlow> now = through_the_cover(streams_, streams_.at(potentials));
  if (sums_.empty()) {
    sums_ = now;
    for (AirFlow& sum : sums_) sum.in_kg_s = sum.out_kg_s = 0.0;
  }
  NOON_ASSERT(sums_.size() == now.size());
  double drawn_in_kg_s = 0.0;
  for (std::size_t i = 0; i < now.size(); ++i) {
    sums_[i].in_kg_s += now[i].in_kg_s * weight_s;
    sums_[i].out_kg_s += now[i].out_kg_s * weight_s;
    drawn_in_kg_s += now[i].in_kg_s;
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
