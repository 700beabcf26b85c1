// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <atomic>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "sim/run/run.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// The first harm that a run without the failure does not have by then.
struct FirstHarm {
  Tick when = kNever;
  EventId event = kNoEvent;
};

/// One plan's run with places to branch from at every full hour, and what a failure at some instant does.
/// A branch is run at a coarser tolerance than the run itself: instants of harm move by seconds, by two or three
/// minutes where a control that switches to and fro near its limits falls out of step.
class FaultBranches {
 public:
  static constexpr double kCoarser = 10.0;
  /// Runs the whole plan once. Throws UserError(interrupted) once `stop` is set.
  FaultBranches(const Assembly& assembly, const std::atomic<bool>* stop, double coarser = kCoarser);

  Tick length() const { return assembly_->plan.length; }
  /// The instant from which a failure at `when` makes any difference: before it the device is as the failure would have
  /// it. Failures with one such instant have one outcome.
  Tick bites_at(const FaultPoint& fault, Tick when) const;
  /// First harm of a failure at `when`, looked for until `until`; with an addition fitted before. Safe on any thread.
  FirstHarm first_harm(const FaultPoint& fault, Tick when, Tick until, const SpareParts* fitted = nullptr) const;
  /// The whole log of a failure at `when`, until an instant or the run's end. Safe on any thread.
  std::vector<LogEntry> log_of(const FaultPoint& fault, Tick when, Tick until) const;
  /// Whether an entry is harm that the run without failure does not come to by the same hazard, or comes to much later.
  bool is_new_harm(const LogEntry& entry) const;
  const std::vector<LogEntry>& log() const { return log_; }
  int runs() const { return runs_; }

 private:
  /// A device's position over the run: instants of change and the value from there.
  using Course = std::vector<std::pair<Tick, double>>;
  class CourseWatch;
  std::unique_ptr<Run> branch_at(Tick when) const;
  const Course* course_of(const std::string& device) const;
  double at_rest(const std::string& device) const;
  static Tick first_beyond(const Course& course, Tick from, bool above, double value);

  const Assembly* assembly_;
  const std::atomic<bool>* stop_;
  double coarser_;
  std::vector<std::unique_ptr<Run>> hours_;  ///< the run as it stands at each full hour
  std::map<std::string, Course> courses_;
  std::vector<LogEntry> log_;
  /// By group, gravity and what harms: when the run itself comes to it.
  std::map<std::tuple<std::string, int, std::string>, Tick> harm_;
  mutable std::atomic<int> runs_{0};
};

/// How grave a harm is: 2 harmed, 3 lost, 0 anything less.
int harm_gravity(const LogEntry& entry);

}  // namespace noonhouse
