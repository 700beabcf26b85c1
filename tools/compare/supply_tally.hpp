// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "sim/contract/observer.hpp"
#include "sim/run/run.hpp"
#include "tools/compare/day_tally.hpp"
#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// How draws and rain of one moment meet in a run's tank, against the two rules by which tanks are sized by hand.
inline constexpr const char* kStorageRule =
    "water is drawn while rain comes in, moment by moment: between the rules of yield after spillage and of yield "
    "before spillage";

/// Follows tank and battery through a run and says what they gave and how long they carry.
class SupplyTally {
 public:
  /// Assembly and plan must outlive it.
  SupplyTally(const Assembly& assembly, const PlanScenario& plan);

  /// Takes in all potentials at an instant, which stand for a time before it.
  void sample(Tick when, std::span<const double> potentials, double weight_s);
  /// A calendar day ends: what each flux has carried since the run's start.
  void end_day(std::span<const double> carried);

  /// Water, energy and cost from the end of the run and its log.
  void put(RunRecord& record, const RunResult& result, const std::vector<LogEntry>& log);

  double strongest_gust_m_s() const { return strongest_gust_m_s_; }

 private:
  void put_water(WaterOutcome& out, const RunResult& result) const;
  void put_energy(EnergyOutcome& out, const RunResult& result) const;
  void put_cost(RunRecord& record, const RunResult& result) const;
  double at(std::span<const double> p, const Input& input) const {
    return p[static_cast<std::size_t>(assembly_.plan.house.position(input))];
  }
  double amount(NodeId node, int which, const std::vector<double>& amounts) const {
    return amounts[static_cast<std::size_t>(assembly_.plan.house.position(End(node, which)))];
  }

  const Assembly& assembly_;
  const PlanScenario& plan_;
  HeaviestDay water_, loads_;
  DailySwing charge_;
  double lowest_tank_kg_ = 1e18, lowest_charge_j_ = 1e18;
  double lowest_share_ = 1.0, lowest_share_s_ = 0.0;
  double battery_sum_k_s_ = 0.0, samples_s_ = 0.0, battery_peak_k_ = 0.0, battery_lowest_k_ = 1e9;
  double strongest_gust_m_s_ = 0.0;
};

}  // namespace noonhouse
