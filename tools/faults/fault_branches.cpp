// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/fault_branches.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr Tick kNearEnough = 15_min;  ///< by which a harm may come earlier and count as the run's own
constexpr Tick kReboot = 5_min;       ///< how long a control is dead that reboots; common practice, no source

void refuse_when_stopped(const std::atomic<bool>* stop) {
  if (stop != nullptr && stop->load(std::memory_order_relaxed))
    throw UserError(ErrorKind::interrupted, "interrupted; nothing was kept");
}

/// "heat" of "lost: heat, in all as harmful as 1.0 h at 46 degC; ...".
std::string hazard_of(const LogEntry& entry) {
  const std::size_t from = std::min(entry.what.find(": "), entry.what.size());
  return entry.what.substr(from, entry.what.find(',', from) - from);
}

}  // namespace

int harm_gravity(const LogEntry& entry) {
  if (entry.kind != EventKind::harm) return 0;
  if (entry.what.rfind("lost", 0) == 0) return 3;
  return entry.what.rfind("harmed", 0) == 0 ? 2 : 0;
}

/// Notes each change of each device's position. Positions hold between events, so the ends of stretches tell them all.
class FaultBranches::CourseWatch final : public Observer {
 public:
  CourseWatch(const Assembly& assembly, std::map<std::string, Course>& courses)
      : assembly_(assembly), courses_(courses) {}
  void see_start(const Stretch& stretch) override { see_stretch(stretch); }
  void see_stretch(const Stretch& stretch) override {
    const auto p = stretch.potentials_at(stretch.end());
    for (const DeviceParts& device : assembly_.devices) {
      Course& course = courses_[device.name];
      const double now = p[static_cast<std::size_t>(assembly_.plan.house.position(device.running))];
      if (course.empty() || course.back().second != now) course.emplace_back(stretch.begin(), now);
    }
  }

 private:
  const Assembly& assembly_;
  std::map<std::string, Course>& courses_;
};

FaultBranches::FaultBranches(const Assembly& assembly, const std::atomic<bool>* stop, double coarser)
    : assembly_(&assembly), stop_(stop), coarser_(coarser) {
  CourseWatch watch(assembly, courses_);
  Run run(assembly.plan);
  run.add_observer(watch);
  for (Tick t{0}; t < assembly.plan.length; t = t + 1_h) {
    refuse_when_stopped(stop_);
    run.run_to(t);
    hours_.push_back(run.branch(coarser_));
  }
  run.run_to(assembly.plan.length);
  log_ = run.log();
  for (const LogEntry& entry : log_)
    if (const int gravity = harm_gravity(entry); gravity > 0)
      for (int g = 2; g <= gravity; ++g) harm_.try_emplace({entry.subject, g, hazard_of(entry)}, entry.when);
}

bool FaultBranches::is_new_harm(const LogEntry& entry) const {
  const int gravity = harm_gravity(entry);
  if (gravity == 0) return false;
  const auto own = harm_.find({entry.subject, gravity, hazard_of(entry)});
  return own == harm_.end() || own->second > entry.when + kNearEnough;
}

const FaultBranches::Course* FaultBranches::course_of(const std::string& device) const {
  const auto found = courses_.find(device);
  return found == courses_.end() ? nullptr : &found->second;
}

/// The position of a device that is off.
double FaultBranches::at_rest(const std::string& name) const {
  for (const DeviceParts& device : assembly_->devices)
    if (device.name == name) return device.at_rest;
  return 0.0;
}

/// The first instant from `from` on at which the position is above (below) a value.
Tick FaultBranches::first_beyond(const Course& course, Tick from, bool above, double value) {
  for (std::size_t i = 0; i < course.size(); ++i) {
    const Tick end = i + 1 < course.size() ? course[i + 1].first : kNever;
    if (end <= from || !(above ? course[i].second > value : course[i].second < value)) continue;
    return std::max(from, course[i].first);
  }
  return kNever;
}

Tick FaultBranches::bites_at(const FaultPoint& fault, Tick when) const {
  const Course* course = course_of(fault.of);
  switch (fault.what) {
    case FailureKind::stuck_off:
    case FailureKind::line_cut:
      return course != nullptr ? first_beyond(*course, when, true, at_rest(fault.of)) : when;
    case FailureKind::stuck_on:
      return course != nullptr ? first_beyond(*course, when, false, 1.0) : when;
    case FailureKind::in_the_spray: {
      Tick first = kNever;
      for (const DeviceParts& device : assembly_->devices)
        if (const Course* spray = course_of(device.name); spray != nullptr && device.sort == "mist line")
          first = std::min(first, first_beyond(*spray, when, true, 0.0));
      return first;
    }
    default:
      return when;
  }
}

std::unique_ptr<Run> FaultBranches::branch_at(Tick when) const {
  refuse_when_stopped(stop_);
  const auto hour = std::min(static_cast<std::size_t>(when.ms / (1_h).ms), hours_.size() - 1);
  auto out = hours_[hour]->branch(coarser_);
  out->run_to(when);
  ++runs_;
  return out;
}

FirstHarm FaultBranches::first_harm(const FaultPoint& fault, Tick when, Tick until, const SpareParts* fitted) const {
  FirstHarm out;
  if (when >= length()) return out;
  const auto run = branch_at(when);
  if (fitted != nullptr) run->impose(fitted->channel, fitted->fitted, EventKind::action, fitted->name, "is fitted");
  std::size_t seen = run->log().size();
  run->impose(fault.channel, fault.value, EventKind::failure, fault.of, fault.words);
  const auto harmed = [&] {
    for (; seen < run->log().size(); ++seen)
      if (is_new_harm(run->log()[seen])) {
        out = {run->log()[seen].when, run->log()[seen].id};
        return true;
      }
    refuse_when_stopped(stop_);
    return false;
  };
  if (fault.what == FailureKind::reboots) {
    run->run_to(std::min(when + kReboot, until), harmed);
    if (out.when == kNever) run->impose(fault.channel, fault.healthy, EventKind::action, fault.of, "is back");
  }
  if (out.when == kNever) run->run_to(until, harmed);
  return out;
}

std::vector<LogEntry> FaultBranches::log_of(const FaultPoint& fault, Tick when, Tick until) const {
  const auto run = branch_at(when);
  run->impose(fault.channel, fault.value, EventKind::failure, fault.of, fault.words);
  const auto stopped = [&] {
    refuse_when_stopped(stop_);
    return false;
  };
  if (fault.what == FailureKind::reboots) {
    run->run_to(when + kReboot, stopped);
    run->impose(fault.channel, fault.healthy, EventKind::action, fault.of, "is back");
  }
  run->run_to(until, stopped);
  return run->log();
}

}  // namespace noonhouse
