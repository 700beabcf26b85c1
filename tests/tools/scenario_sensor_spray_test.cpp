// SPDX-License-Identifier: Apache-2.0
// Where a thermometer hangs decides what its control does: in the spray it reads a wet bulb, stops the mist early and
// lets the plants overheat; shielded in the middle of the house it does not.
#include <gtest/gtest.h>

#include "tests/support/small_faults.hpp"
#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

const std::vector<RunRecord>& both() {
  static const std::vector<RunRecord> records = [] {
    const Scenario scenario = small_faults::read(R"(plans:
  shielded in the middle:
    in_service: [vent, mist, vent opener, mist control]
  in the spray:
    in_service: [vent, mist, vent opener, mist control]
    change: { sensors: { thermometer: { in_spray_of: [mist] } } }
  bare in the sun:
    in_service: [vent, mist, vent opener, mist control]
    change: { sensors: { thermometer: { takes_sun: 15 % } } }
)");
    std::vector<const PlanScenario*> plans;
    for (const PlanScenario& p : scenario.plans) plans.push_back(&p);
    return run_plans(scenario, plans, 2);
  }();
  return records;
}

double hours_on(const RunRecord& record, const std::string& device) {
  for (const DeviceOutcome& d : record.devices)
    if (d.name == device) return d.hours_on;
  return -1.0;
}

TEST(SensorPlace, InTheSprayItStopsTheMistEarlyAndThePlantsOverheat) {
  const RunRecord &shielded = both()[0], &sprayed = both()[1];
  RecordProperty("mist_h_shielded", std::to_string(hours_on(shielded, "mist")));
  RecordProperty("mist_h_sprayed", std::to_string(hours_on(sprayed, "mist")));
  RecordProperty("peak_k_shielded", std::to_string(shielded.plants[0].peak_tissue_k));
  RecordProperty("peak_k_sprayed", std::to_string(sprayed.plants[0].peak_tissue_k));
  EXPECT_LT(hours_on(sprayed, "mist"), 0.5 * hours_on(shielded, "mist"));
  EXPECT_GT(sprayed.plants[0].peak_tissue_k, shielded.plants[0].peak_tissue_k + 1.5);
  EXPECT_GT(sprayed.plants[0].hours_beyond, shielded.plants[0].hours_beyond);
}

TEST(SensorPlace, InTheSunItRunsTheMistLonger) {
  EXPECT_GT(hours_on(both()[2], "mist"), hours_on(both()[0], "mist"));
  EXPECT_GT(both()[2].water.misted_kg, both()[0].water.misted_kg);
}

}  // namespace
}  // namespace noonhouse
