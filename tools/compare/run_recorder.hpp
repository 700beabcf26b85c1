// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "sim/contract/observer.hpp"
#include "tools/compare/air_tally.hpp"
#include "tools/compare/run_series.hpp"
#include "tools/compare/supply_tally.hpp"
#include "tools/compare/work_heat.hpp"
#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Watches a run and fills its record: series at the recording instants, outcomes from one-minute samples of the
/// dense output and from the event log, balances from what every flux carried. Const towards the run.
class RunRecorder final : public Observer {
 public:
  RunRecorder(const Assembly& assembly, const PlanScenario& plan);
  void see_start(const Stretch& stretch) override;
  void see_stretch(const Stretch& stretch) override;
  void see_event(const LogEntry& entry) override { log_.push_back(entry); }
  /// The whole record, once the run is over. Provenance and the file names are the caller's.
  RunRecord finish(const RunResult& result);

 private:
  /// What a plant went through, added up over the samples.
  struct PlantTally {
    double beyond_s = 0.0, degree_s = 0.0, spell_s = 0.0, longest_spell_s = 0.0, lethal_s = 0.0;
    double peak_k = 0.0, peak_s = 0.0, lowest_k = 1e9, peak_air_k = 0.0, dry_s = 0.0, wet_s = 0.0, light_j_m2 = 0.0;
    double burnt_s = 0.0, peak_wall_k = 0.0, lit_before_s = 0.0, lit_s = 0.0;
    int days = 0, right_days = 0;
  };
  struct LevelTally {
    double peak_k = 0.0, peak_s = 0.0, sum_k = 0.0;
  };
  void sample(Tick when, std::span<const double> p, double weight_s);
  void sample_plant(std::size_t i, double time_s, std::span<const double> p, double weight_s);
  void close_day(std::size_t i, std::span<const double> p);
  void record(Tick when, std::span<const double> p);
  void count_devices(const Stretch& stretch, std::span<const double> p);
  double at(std::span<const double> p, const Input& input) const {
    return p[static_cast<std::size_t>(assembly_.plan.house.position(input))];
  }
  void put_site(RunRecord& record) const;
  void put_plants(RunRecord& record, const RunResult& result) const;
  void put_levels(RunRecord& record) const;
  void put_events(RunRecord& record) const;
  void put_failures(RunRecord& record) const;

  const Assembly& assembly_;
  const PlanScenario& plan_;
  Tick every_, next_record_, next_sample_;
  std::vector<double> time_s_;
  std::vector<RecordSeries> series_;
  std::vector<std::vector<Input>> sources_;  ///< per series, what fills it, in the order of its axes
  std::vector<std::function<double(const ValueOf&)>>
      made_;  ///< per series, what makes its value where nothing fills it
  std::vector<PlantTally> plants_;
  std::vector<LevelTally> levels_;
  AirTally air_;
  SupplyTally supply_;
  WorkHeat work_heat_;
  std::vector<DeviceOutcome> devices_;
  std::vector<bool> device_on_;
  std::vector<LogEntry> log_;
  double samples_s_ = 0.0;
};

/// Balances of every node and the closure of the whole from a finished run.
void put_balances(RunRecord& record, const House& house, const RunResult& result);

}  // namespace noonhouse
