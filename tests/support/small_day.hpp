// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tests/support/small_faults.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse::small_faults {

/// The small house's first plan on its day, as its scenario's text says.
class SmallDay {
 public:
  explicit SmallDay(const Scenario& scenario) : assembly_(assembled(scenario)) {}
  static Assembly assembled(const Scenario& scenario) {
    const PlanScenario& plan = scenario.plans.front();
    const WeatherSeries weather = weather_of(scenario, plan);
    return assemble(plan, site_table(plan, weather), weather);
  }
  void run(Observer* observer = nullptr) {
    Run run(assembly_.plan);
    if (observer != nullptr) run.add_observer(*observer);
    result_ = run.go();
    log_ = run.log();
  }
  const Assembly& assembly() const { return assembly_; }
  const RunResult& result() const { return result_; }
  const std::vector<LogEntry>& log() const { return log_; }
  /// What one agent logged: "14:05 text", in order.
  std::vector<std::string> said_by(const std::string& subject) const {
    std::vector<std::string> out;
    for (const LogEntry& entry : log_)
      if (entry.subject == subject) out.push_back(format_time_of_day(seconds(entry.when)) + " " + entry.what);
    return out;
  }
  /// The chain of causes of the first entry whose text holds this, newest first: "vent opens <- hot holds".
  std::string chain_of(const std::string& text) const {
    std::string out;
    for (const LogEntry& entry : log_) {
      if (entry.what.find(text) == std::string::npos) continue;
      for (EventId id = entry.id; id != kNoEvent; id = log_[static_cast<std::size_t>(id)].cause) {
        const LogEntry& link = log_[static_cast<std::size_t>(id)];
        out += (out.empty() ? "" : " <- ") + link.subject + " " + link.what;
      }
      return out;
    }
    return out;
  }

 private:
  Assembly assembly_;
  RunResult result_;
  std::vector<LogEntry> log_;
};

}  // namespace noonhouse::small_faults
