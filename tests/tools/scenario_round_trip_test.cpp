// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <filesystem>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/located_yaml.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

/// Every value as text that reads back bit for bit, so equal texts are equal values.
std::string text_of(const ScenarioSpec& spec, UnitSystem system = UnitSystem::metric) {
  return save_fields(spec, system);
}

/// What was saved in either unit system is complete, and reads back as the same values.
void expect_round_trip(const PlanScenario& plan) {
  for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
    const std::string saved = text_of(plan.spec, system);
    const Loaded<ScenarioSpec> again = load_fields<ScenarioSpec>(read_yaml_text(saved, "saved.yaml"));
    again.places.check_names();
    EXPECT_TRUE(again.places.defaulted().empty()) << again.places.defaulted().front();
    EXPECT_EQ(text_of(again.value), text_of(plan.spec)) << plan.name;
    EXPECT_EQ(text_of(again.value, system), saved) << plan.name;
  }
}

TEST(ScenarioRoundTrip, SmallScenario) {
  for (const PlanScenario& plan : small_scenario::read().plans) expect_round_trip(plan);
}

TEST(ScenarioRoundTrip, EveryScenarioOfTheProject) {
  int count = 0;
  for (const auto& folder : std::filesystem::directory_iterator(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios")) {
    if (!folder.is_directory()) continue;
    for (const auto& file : std::filesystem::directory_iterator(folder)) {
      if (file.path().extension() != ".yaml") continue;
      for (const PlanScenario& plan : read_scenario(file.path()).plans) expect_round_trip(plan);
      ++count;
    }
  }
  EXPECT_GE(count, 1);
}

TEST(ScenarioPlans, LayTheirChangesOverTheBase) {
  const Scenario scenario = small_scenario::read();
  EXPECT_EQ(scenario.name, "small");
  ASSERT_EQ(scenario.plans.size(), 2U);
  const PlanScenario& still = scenario.plan("nothing runs");
  const PlanScenario& cooled = scenario.plan("vent and mist");
  EXPECT_DOUBLE_EQ(still.spec.thermostats.front().value.starts_at, 305.15);
  EXPECT_DOUBLE_EQ(cooled.spec.thermostats.front().value.starts_at, 304.15);
  EXPECT_DOUBLE_EQ(cooled.spec.thermostats.front().value.stops_at, 302.15);
  EXPECT_EQ(cooled.about, "cooled by one thermostat");
  EXPECT_TRUE(cooled.uses("high mist"));
  EXPECT_FALSE(still.uses("high mist"));
}

TEST(ScenarioPlans, WithoutPlansEverythingIsInService) {
  const std::string whole = small_scenario::kText;
  const Scenario scenario = small_scenario::read(whole.substr(0, whole.find("plans:")));
  ASSERT_EQ(scenario.plans.size(), 1U);
  EXPECT_EQ(scenario.plans.front().name, "base");
  EXPECT_EQ(scenario.plans.front().in_service, (std::vector<std::string>{"ridge vent", "high mist", "heat watch"}));
}

}  // namespace
}  // namespace noonhouse
