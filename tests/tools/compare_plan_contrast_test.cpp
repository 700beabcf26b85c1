// SPDX-License-Identifier: Apache-2.0
// What sets plans apart in words: supplies that end, failures of one plan alone, what all of them share.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/invented_record.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_text.hpp"
#include "tools/compare/plan_contrast.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

RunRecord named(const std::string& plan) {
  RunRecord record;
  record.plan = plan;
  record.start = "2026-07-10 00:00:00";
  return record;
}

FailureOutcome failure(double time_s, const std::string& subject, const std::string& what,
                       std::vector<std::string> causes = {}) {
  return {time_s, "failure", subject, subject + " " + what, std::move(causes)};
}

/// Of "everything": the battery is cut off on the third evening, mist is called in vain on the next days.
RunRecord cut_off() {
  RunRecord record = named("everything");
  record.energy.first_cut_off_s = 2.0 * 86400.0 + 21.0 * 3600.0 + 32.0 * 60.0;
  record.failures = {failure(250000.0, "fan one", "stops: the battery is cut off", {"battery is down"}),
                     failure(290000.0, "mist", "is called but stays off: the battery is cut off", {"battery is down"}),
                     failure(340000.0, "mist", "is called but stays off: the battery is cut off", {"battery is down"})};
  return record;
}

TEST(PlainDifference, IsASupplyThatEndedInOnePlanAlone) {
  EXPECT_EQ(plain_difference(named("a"), cut_off()),
            "In \"everything\" the battery was cut off on day 3 21:32, so that fan one and mist stood still.");
  EXPECT_THAT(plain_difference(cut_off(), named("a")), IsEmpty()) << "it is ahead in spite of that";
  RunRecord both = cut_off();
  both.plan = "both";
  EXPECT_THAT(plain_difference(both, cut_off()), IsEmpty());
  RunRecord dry = named("dry");
  dry.water.first_dry_s = 86400.0;
  EXPECT_EQ(plain_difference(named("a"), dry), "In \"dry\" the pump was cut out for a low tank on day 2 00:00.");
}

TEST(PlainDifference, IsElseAFailureThatOnePlanAloneHas) {
  RunRecord worse = named("net");
  worse.failures = {failure(3600.0, "roof", "breaks", {"hail"}), failure(7200.0, "net", "is stuck off", {"gust"})};
  RunRecord better = named("vents");
  better.failures = {failure(3700.0, "roof", "breaks", {"net is stuck off"})};
  EXPECT_EQ(plain_difference(better, worse), "In \"net\" net is stuck off on day 1 02:00.")
      << "the roof breaks in both, if for another cause";
  better.failures.push_back(
      failure(300.0, "net", "stays where it stands: the battery is cut off", {"battery is down"}));
  EXPECT_EQ(plain_difference(better, worse), "In \"net\" net is stuck off on day 1 02:00.")
      << "that it lacked power in the other is no failure of its own";
  EXPECT_THAT(plain_difference(worse, better), IsEmpty());
}

TEST(PlainDifference, StandsInTheAnswerForEachPairOfNeighbours) {
  std::vector<RunRecord> records{named("a"), cut_off(), named("c")};
  records[1].plants.resize(1), records[2].plants.resize(1), records[0].plants.resize(1);
  records[0].plants[0].outcome = "kept", records[1].plants[0].outcome = "harmed", records[2].plants[0].outcome = "lost";
  std::string text = compare_text(records, UnitSystem::metric, kWidestTable);
  std::replace(text.begin(), text.end(), '\n', ' ');
  EXPECT_THAT(text,
              HasSubstr("because it keeps more plants. In \"everything\" the battery was cut off on day 3 21:32"));
  EXPECT_THAT(text, HasSubstr("\"everything\" is ahead of \"c\" because it loses fewer plants."));
}

/// A harm that comes at another minute and another temperature is the same; from another cause it is not.
TEST(SharedFirst, IsToldOnce) {
  std::vector<RunRecord> records{named("a"), named("b")};
  const auto harm = [](double time_s, const char* celsius, const char* cause) {
    const std::string what = fmt::format("herbs strained: heat; tissue {} degC", celsius);
    return FailureOutcome{time_s, "harm", "herbs", what, {what, cause}};
  };
  records[0].failures = {harm(3660.0, "42.3", "nothing cools"), failure(9000.0, "net", "is stuck off")};
  records[1].failures = {harm(3600.0, "42.2", "nothing cools")};
  const auto shared = shared_first(records);
  ASSERT_TRUE(shared.has_value());
  EXPECT_EQ(shared_first_text(*shared, "<-", UnitSystem::metric),
            "herbs strained: heat; tissue " + unbroken("42.2 °C") + ", " + unbroken("day 1 01:00") +
                " <- nothing cools; at the latest day 1 01:01");
  EXPECT_EQ(first_of_its_own(records[0], records)->subject, "net");
  EXPECT_EQ(first_of_its_own(records[1], records), nullptr);
  const std::string text = compare_text(records, UnitSystem::metric, 100);
  EXPECT_EQ(text.find("herbs strained"), text.rfind("herbs strained"));
  EXPECT_THAT(text, HasSubstr("every plan\n    herbs strained"));
  EXPECT_THAT(text, HasSubstr("a, then\n    net is stuck off, day 1 02:30"));
  records[1].failures = {harm(3600.0, "42.2", "fan stuck")};
  EXPECT_FALSE(shared_first(records).has_value());
  EXPECT_FALSE(shared_first({records[0]}).has_value());
}

TEST(SharedNotes, StandOnce) {
  std::vector<RunRecord> records{named("a"), named("b")};
  records[0].notes = {"Of both.", "Of a."};
  records[1].notes = {"Of both."};
  EXPECT_THAT(shared_notes(records), ElementsAre("Of both."));
  EXPECT_THAT(shared_notes({records[0]}), IsEmpty());
  EXPECT_THAT(compare_text(records, UnitSystem::metric, 100), HasSubstr("every plan\n    Of both.\na\n    Of a.\n"));
}

TEST(FigureNotes, SayWhatHoursAndFailuresCount) {
  std::string text = compare_text(invented::three_plans(), UnitSystem::metric, kWidestTable);
  std::replace(text.begin(), text.end(), '\n', ' ');
  EXPECT_THAT(text, HasSubstr("hours too hot or cold"));
  EXPECT_THAT(text, HasSubstr("leaves or roots were beyond their limits of heat or cold"));
  EXPECT_THAT(text, HasSubstr("sunburn and light"));
  EXPECT_THAT(text, HasSubstr("harm to plants is not among them"));
  EXPECT_THAT(text, HasSubstr("its cover and its drawn cloths with it"));
}

}  // namespace
}  // namespace noonhouse
