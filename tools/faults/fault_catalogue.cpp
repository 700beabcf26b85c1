// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/fault_catalogue.hpp"

#include <algorithm>
#include <set>

namespace noonhouse {
namespace {

template <class T>
void readers(const std::vector<Named<T>>& controls, const PlanScenario& plan, std::set<std::string>& out) {
  for (const auto& control : controls)
    if (plan.uses(control.name)) out.insert(control.value.sensor);
}

}  // namespace

std::vector<FaultPoint> fault_catalogue(const PlanScenario& plan, const Assembly& assembly) {
  std::set<std::string> read;
  readers(plan.spec.thermostats, plan, read);
  readers(plan.spec.humidistats, plan, read);
  readers(plan.spec.deficit_controls, plan, read);
  readers(plan.spec.staged_controls, plan, read);
  readers(plan.spec.proportional_controls, plan, read);
  for (const auto& rule : plan.spec.rules) read.insert(rule.value.sensor);
  std::vector<FaultPoint> out;
  for (const FaultPoint& point : assembly.fault_points) {
    const bool sensor = std::any_of(assembly.sensors.begin(), assembly.sensors.end(),
                                    [&](const SensorParts& s) { return s.name == point.of; });
    if (sensor && !read.contains(point.of)) continue;
    if (point.what == FailureKind::stuck_as_it_stands) continue;  // open or shut, whichever is worse, stands for it
    out.push_back(point);
  }
  return out;
}

}  // namespace noonhouse
