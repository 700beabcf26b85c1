// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "sim/run/run.hpp"

namespace noonhouse {

/// Potentials of all nodes at even marks of a run, read from the dense output, and its switching instants.
class RunMarks final : public Observer {
 public:
  RunMarks(const House& house, Tick interval) : states_(static_cast<std::size_t>(house.states)), interval_(interval) {}

  void see_start(const Stretch& stretch) override { read(stretch); }
  void see_stretch(const Stretch& stretch) override { read(stretch); }
  void see_event(const LogEntry& entry) override {
    events_.push_back(entry.when);
    labels_.push_back(entry.subject + ": " + entry.what);
  }

  std::size_t marks() const { return rows_.size(); }
  double value(std::size_t mark, int state) const { return rows_[mark][static_cast<std::size_t>(state)]; }
  const std::vector<Tick>& events() const { return events_; }
  const std::vector<std::string>& labels() const { return labels_; }
  /// Mean of one potential over the marks in [first, last).
  double mean(int state, std::size_t first, std::size_t last) const {
    double sum = 0.0;
    for (std::size_t i = first; i < last; ++i) sum += value(i, state);
    return sum / static_cast<double>(last - first);
  }

 private:
  void read(const Stretch& stretch) {
    for (Tick when = interval_ * static_cast<std::int64_t>(rows_.size()); when <= stretch.end();
         when = when + interval_)
      rows_.emplace_back(stretch.potentials_at(when).begin(),
                         stretch.potentials_at(when).begin() + static_cast<std::ptrdiff_t>(states_));
  }

  std::size_t states_;
  Tick interval_;
  std::vector<std::vector<double>> rows_;
  std::vector<Tick> events_;
  std::vector<std::string> labels_;
};

/// One run of a plan with its marks.
struct MarkedRun {
  RunMarks marks;
  RunResult result;
};
inline MarkedRun run_with_marks(const RunPlan& plan, Tick interval) {
  MarkedRun out{RunMarks(plan.house, interval), {}};
  Run run(plan);
  run.add_observer(out.marks);
  out.result = run.go();
  return out;
}

/// Positions of the potentials that are temperatures [K]: the first of every node that counts energy.
inline std::vector<int> temperature_states(const House& house) {
  std::vector<int> out;
  for (const auto& node : house.nodes)
    if (node.counts[0] == Quantity::energy) out.push_back(node.first_state);
  return out;
}

/// All absolute differences of node temperatures [K] between two runs at their common marks, ascending.
inline std::vector<double> temperature_differences(const House& house, const RunMarks& a, const RunMarks& b) {
  std::vector<double> out;
  for (std::size_t mark = 0; mark < std::min(a.marks(), b.marks()); ++mark)
    for (int state : temperature_states(house)) out.push_back(std::abs(a.value(mark, state) - b.value(mark, state)));
  std::sort(out.begin(), out.end());
  return out;
}

/// The smallest value that at least this share of the ascending values does not exceed.
inline double percentile(const std::vector<double>& ascending, double share) {
  const auto rank = static_cast<std::size_t>(std::ceil(share * static_cast<double>(ascending.size())));
  return ascending.at(rank > 0 ? rank - 1 : 0);
}

}  // namespace noonhouse
