// SPDX-License-Identifier: Apache-2.0
// One day of a small hot house as its scenario says it: rules whose reading is lost, the grower's hand, whom cut-offs
// blame, a tank that leaks dry.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/small_day.hpp"
#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_faults::SmallDay;
using small_scenario::with;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

Scenario read(const std::string& text) { return read_scenario_text(text, "small_faults.yaml"); }

/// The small house with a second thermometer by radio, on which rules hang.
std::string with_radio(const std::string& more) {
  return with(small_faults::kText, "  thermometer: { bay: house, height: 1 m }\n",
              "  thermometer: { bay: house, height: 1 m }\n"
              "  by radio: { bay: house, height: 1 m, polled_every: 1 min, lost_after: 5 min }\n") +
         more;
}
constexpr const char* kHotRule =
    "rules:\n  hot: { sensor: by radio, warmer_than: 26 degC, least: 12 h, forbids: [mist], calls: [vent] }\n";

TEST(SmallDay, ARuleLetsGoOfWhatItHoldsWhenItsReadingIsLost) {
  // Heard last at 12:59 or 13:00, by how the fault and the poll of 13:00 fall together: lost five minutes later.
  SmallDay day(read(with_radio(std::string(kHotRule) +
                               "faults:\n  radio: { what: radio lost, of: by radio, day: 1, at: \"12:59:30\", "
                               "lasts: 1 h }\n")));
  day.run();
  const auto hot = day.said_by("hot");
  ASSERT_GE(hot.size(), 3U);
  EXPECT_THAT(hot[0], HasSubstr(" holds"));
  EXPECT_EQ(hot[1], "13:04 holds no longer") << "though it would hold for twelve hours at least";
  EXPECT_EQ(hot[2], "14:00 holds");
  EXPECT_THAT(day.said_by("mist"), Contains("13:04 starts"));
  EXPECT_THAT(day.said_by("mist"), Contains("14:00 is held back: hot"));
  EXPECT_THAT(day.chain_of("holds no longer"), HasSubstr("by radio is lost: not heard for 5 min <- radio by radio"));
}

TEST(SmallDay, ARuleOfColdDoesNotHoldBeforeItsSensorHasToldAnything) {
  // What stands there before the first poll is no temperature, and colder than any.
  SmallDay day(read(with_radio("rules:\n  cold: { sensor: by radio, colder_than: 5 degC, forbids: [vent] }\n")));
  day.run();
  EXPECT_THAT(day.said_by("cold"), IsEmpty());
  EXPECT_THAT(day.said_by("vent"), Not(Contains(HasSubstr("held back"))));
}

TEST(SmallDay, ACallingRuleWhoseReadingIsLostHasNoSayWhereAllMustCall) {
  const std::string all =
      with(small_faults::kText, "height: 0.5 m, centre: 2.1 m", "heeds: all, height: 0.5 m, centre: 2.1 m");
  SmallDay day(read(with(all, "  thermometer: { bay: house, height: 1 m }\n",
                         "  thermometer: { bay: house, height: 1 m }\n"
                         "  by radio: { bay: house, height: 1 m, polled_every: 1 min, lost_after: 5 min }\n") +
                    "rules:\n  torrid: { sensor: by radio, warmer_than: 70 degC, calls: [vent] }\n"
                    "faults:\n  radio: { what: radio lost, of: by radio, day: 1, at: \"12:59:30\", lasts: 1 h }\n"));
  day.run();
  // The opener calls all day long; the rule, which does not, keeps the vent shut but while its reading is lost.
  const auto vent = day.said_by("vent");
  ASSERT_EQ(vent.size(), 2U);
  EXPECT_THAT(vent[0], AllOf(HasSubstr("13:04 "), HasSubstr("opens")));
  EXPECT_THAT(vent[1], AllOf(HasSubstr("14:00 "), HasSubstr("shuts")));
}

constexpr const char* kHandOff =
    "rules:\n  sandstorm: { from: \"12:00\", until: \"13:00\" }\n"
    "grower:\n  reaction: 10 min\n  present: [{ from: \"00:00\", until: \"24:00\" }]\n";

TEST(SmallDay, AGrowerWhoShutsHoldsTheVentShutAgainstItsControlAndPutsItBack) {
  SmallDay day(read(std::string(small_faults::kText) + kHandOff +
                    "  responses:\n    shutter: { sign: sandstorm, undo: true, shuts: [vent] }\n"));
  day.run();
  const auto vent = day.said_by("vent");
  ASSERT_THAT(vent, Contains("12:10 is held back: by hand"));
  const auto held = std::find(vent.begin(), vent.end(), "12:10 is held back: by hand");
  ASSERT_NE(held + 1, vent.end());
  EXPECT_EQ(*(held + 1), "13:10 opens") << "the control calls all the while";
  EXPECT_THAT(day.said_by("grower, shutter"),
              ElementsAre("12:10 sees: sandstorm", "12:10 shuts or stops vent", "13:10 puts it back"));
  EXPECT_THAT(day.chain_of("by hand"), HasSubstr("grower, shutter shuts or stops vent <- grower, shutter sees"));
}

TEST(SmallDay, WhatIsHeldShutStaysShutUntilAVisitOpensIt) {
  SmallDay day(read(std::string(small_faults::kText) + kHandOff +
                    "  responses:\n    shutter: { sign: sandstorm, shuts: [vent] }\n"
                    "  visits:\n    afternoon: { at: \"15:00\", opens: [vent] }\n"));
  day.run();
  const auto vent = day.said_by("vent");
  const auto held = std::find(vent.begin(), vent.end(), "12:10 is held back: by hand");
  ASSERT_NE(held, vent.end());
  EXPECT_THAT(std::vector(held + 1, vent.end()), ElementsAre("15:00 opens")) << "and stays open by hand";
}

/// A battery that the standing loads empty in the evening unless the panel filled it.
std::string with_battery(const std::string& more) {
  return with(small_faults::kText, "power: { panel_area: 0.5 m2, battery: 500 Wh }",
              "power: { panel_area: 0.3 m2, battery: 60 Wh, standby: 6 W }") +
         more;
}

TEST(SmallDay, ACutOffBlamesThePanelOnlyWhileItIsCovered) {
  SmallDay covered(
      read(with_battery("faults:\n  snow: { what: panel covered, of: panel, day: 1, at: \"01:00\", lasts: 22 h }\n")));
  covered.run();
  EXPECT_THAT(covered.chain_of("cuts all loads off"), HasSubstr("<- snow panel is covered"));
  SmallDay uncovered(read(
      with_battery("faults:\n  snow: { what: panel covered, of: panel, day: 1, at: \"01:00\", lasts: 10 min }\n")));
  uncovered.run();
  EXPECT_THAT(uncovered.chain_of("cuts all loads off"), Not(HasSubstr("snow")));
  EXPECT_THAT(uncovered.chain_of("cuts all loads off"), HasSubstr("drew more than the panel gave"));
}

TEST(SmallDay, ACutOffBlamesADeadCell) {
  SmallDay day(
      read(with_battery("faults:\n  cell: { what: cell dead, of: battery, day: 1, at: \"01:00\", share: 20 % }\n")));
  day.run();
  EXPECT_THAT(day.chain_of("cuts all loads off"), HasSubstr("<- cell battery loses cells"));
}

/// The least that the tank holds.
class LeastWater final : public Observer {
 public:
  explicit LeastWater(const Assembly& assembly)
      : at_(static_cast<std::size_t>(assembly.plan.house.position(End(assembly.tank, 1)))) {}
  void see_start(const Stretch& stretch) override { kg = stretch.potentials_at(stretch.begin())[at_]; }
  void see_stretch(const Stretch& stretch) override {
    constexpr int kParts = 16;
    for (int i = 1; i <= kParts; ++i)
      kg = std::min(
          kg, stretch.potentials_at(stretch.begin() + Tick{(stretch.end() - stretch.begin()).ms * i / kParts})[at_]);
  }
  double kg = 0.0;

 private:
  std::size_t at_;
};

TEST(SmallDay, ATankLeaksNoFurtherThanEmptyAndIsBlamedOnlyWhileItLeaks) {
  for (const char* rate : {"100 L/h", "2000 L/h"}) {
    SmallDay day(read(std::string(small_faults::kText) +
                      "faults:\n  seam: { what: tank leaks, of: tank, day: 1, at: \"02:00\", leak: " + rate + " }\n"));
    LeastWater least(day.assembly());
    day.run(&least);
    EXPECT_GE(least.kg, -1e-6) << rate;
    EXPECT_LT(least.kg, 1.0) << rate;
    EXPECT_THAT(day.chain_of("cuts the pump out"), HasSubstr("<- seam tank leaks")) << rate;
  }
  SmallDay mended(
      read(with(small_faults::kText, "starts_with: 380 L", "starts_with: 40 L") +
           "faults:\n  seam: { what: tank leaks, of: tank, day: 1, at: \"02:00\", lasts: 1 h, leak: 2 L/h }\n"));
  mended.run();
  EXPECT_THAT(mended.chain_of("cuts the pump out"), HasSubstr("no rain since the run began"));
  EXPECT_THAT(mended.chain_of("cuts the pump out"), Not(HasSubstr("leaks")));
}

}  // namespace
}  // namespace noonhouse
