// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "tools/airing/air_streams.hpp"
#include "tools/airing/airing.hpp"
#include "tools/record/run_record.hpp"

namespace noonhouse {

/// Adds up from samples how often a house changes its air, in all and through each way. What flows both ways at once
/// does not show in what a flux carried on the whole, so the streams are read at instants.
class AirTally {
 public:
  /// The assembly must outlive it.
  explicit AirTally(const Assembly& assembly);

  /// Takes in all potentials at an instant, which stand for a time before it (0: seen, but no part of the means), with
  /// the temperature of the hottest air.
  void sample(double time_s, std::span<const double> potentials, double weight_s, double hottest_k);

  void put(RunRecord& record) const;

 private:
  AirStreams streams_;
  double dry_air_kg_ = 0.0, time_s_ = 0.0, hottest_k_ = 0.0;
  std::vector<AirFlow> sums_;              ///< per way through the cover [kg]
  std::vector<std::size_t> sum_of_piece_;  ///< per way of the streams: its sum, or none for one inside
  AiringOutcome seen_;
};

}  // namespace noonhouse
