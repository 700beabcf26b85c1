// SPDX-License-Identifier: Apache-2.0
// Levels of charge in a house: a rule warns before the cut-off in any cold, and nobody is told of loads that are not
// there.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_day.hpp"
#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_scenario::with;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// The small house with a lead battery of 100 Wh outdoors in frost that 3 W draw down.
std::string frosty(const std::string& rule) {
  std::string text = with(small_faults::kText, "2025-07-14, length: 1 d", "2025-01-14, length: 10 h");
  text = with(text, "first_day_high: 39 degC, peak_high: 39 degC, peak_day: 1, last_day_high: 39 degC,",
              "first_day_high: -8 degC, peak_high: -8 degC, peak_day: 1, last_day_high: -8 degC,\n"
              "           first_night_low: -12 degC, peak_night_low: -12 degC,");
  text = with(text, "dew_point: 8 degC", "dew_point: -15 degC");
  text = with(text, "panel_area: 0.5 m2, battery: 500 Wh",
              "panel_area: 0.01 m2, battery: 100 Wh, battery_kind: absorbent lead, standby: 3 W");
  return text + "rules:\n  low: { " + rule + ", calls: [vent] }\n";
}

TEST(ChargeLevels, OfARuleAreMetBeforeTheCutOffInFrost) {
  for (const char* rule : {"charge_below: 60 %", "charge_below: 55 %"}) {
    small_faults::SmallDay day(read_scenario_text(frosty(rule), "frost.yaml"));
    day.run();
    EXPECT_THAT(day.said_by("low"), ElementsAre(HasSubstr("holds"))) << rule;
    EXPECT_THAT(day.said_by("battery"), ElementsAre(HasSubstr("is down to"), HasSubstr("is down to its cut-off"),
                                                    HasSubstr("cuts all loads off")));
    EXPECT_THAT(day.chain_of("holds"), HasSubstr("the cold locks up")) << "it goes back to the battery and says why";
  }
}

std::string said_of_levels(const std::string& in_service) {
  std::string text =
      with(small_faults::kText, "pump_power: 40 W", "pump_power: 40 W, keeps_back: 379.9 L, sheds_at: 85 %");
  text = with(text, "length: 1 d", "length: 6 h");
  text = with(text, "starts_with: 380 L", "starts_with: 380 L, open: 100 %");
  text = with(text, "battery: 500 Wh", "battery: 100 Wh, standby: 5 W");
  text += "plans:\n  p: { in_service: [" + in_service + "] }\n";
  small_faults::SmallDay day(read_scenario_text(text, "levels.yaml"));
  day.run();
  std::string out;
  for (const LogEntry& entry : day.log()) out += entry.subject + " " + entry.what + "\n";
  return out;
}

TEST(DrawLevels, AreNotMadeForWhatIsNotInService) {
  EXPECT_THAT(said_of_levels("mist, mist control"), HasSubstr("sheds what is shed at 85 %"));
  EXPECT_THAT(said_of_levels("mist, mist control"), HasSubstr("reserve of 379.9 L"));
  EXPECT_THAT(said_of_levels("vent, vent opener"), Not(HasSubstr("85 %")));
  EXPECT_THAT(said_of_levels("vent, vent opener"), Not(HasSubstr("reserve of")));
}

}  // namespace
}  // namespace noonhouse
