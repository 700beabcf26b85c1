// SPDX-License-Identifier: Apache-2.0
// Where the demonstration's plants should stand, and the seasons of the house without heating: whole runs.
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "tools/placing/place_answer.hpp"
#include "tools/placing/season.hpp"

namespace noonhouse {
namespace {

Scenario scenario_of(const std::string& name) {
  return read_scenario(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios/" + name + "/" + name + ".yaml");
}

const PlaceAnswer& fanned() {
  static const Scenario scenario = scenario_of("heatwave");
  static const PlaceAnswer answer = answer_place(scenario, scenario.plan("vents and fan"), {{}, -1, 2, {}});
  return answer;
}

std::size_t place(const PlaceAnswer& answer, const std::string& name) {
  for (std::size_t p = 0; p < answer.places.size(); ++p)
    if (answer.places[p].name == name) return p;
  ADD_FAILURE() << name;
  return 0;
}

int gravity(const std::string& outcome) {
  return outcome == "lost" ? 3 : outcome == "harmed" ? 2 : outcome == "strained" ? 1 : 0;
}

TEST(DemoPlaces, ATrialFeelsWhatTheGroupFeltInTheHouse) {
  for (const GroupShown& group : fanned().groups) {
    const PlaceFelt& tried = group.felt[static_cast<std::size_t>(group.stands_on)];
    EXPECT_NEAR(tried.peak_k, group.before.peak_tissue_k, 1.0) << group.name;
    EXPECT_NEAR(tried.lowest_k, group.before.lowest_tissue_k, 1.0) << group.name;
    EXPECT_EQ(gravity(tried.outcome), gravity(group.before.outcome)) << group.name << ": " << tried.reason;
  }
}

/// No other standing that fits harms less: all of them, one by one.
TEST(DemoPlaces, NoOtherStandingHarmsLess) {
  const StandingProblem& problem = fanned().problem;
  const auto& plan = std::get<StandingPlan>(fanned().standing);
  const std::size_t places = problem.places.size(), groups = problem.groups.size();
  ASSERT_LE(std::pow(places, groups), 1e5);
  double least = 1e300;
  for (std::size_t code = 0; code < static_cast<std::size_t>(std::pow(places, groups)); ++code) {
    std::vector<double> room;
    for (const auto& p : problem.places) room.push_back(p.room_m2 + 1e-4);
    double harm = 0.0;
    std::size_t rest = code;
    bool fits = true;
    for (std::size_t g = 0; g < groups; ++g, rest /= places) {
      const std::size_t p = rest % places;
      room[p] -= problem.groups[g].area_m2;
      fits = fits && room[p] >= 0.0;
      harm += problem.harm[g][p].harm;
    }
    if (fits) least = std::min(least, harm);
  }
  EXPECT_NEAR(plan.harm_after, least, 1e-6);
  EXPECT_LT(plan.harm_after, plan.harm_before - 50.0);
}

TEST(DemoPlaces, MovingGainsInTheHouseItself) {
  int before = 0, after = 0;
  for (const GroupShown& group : fanned().groups) {
    before += gravity(group.before.outcome);
    after += gravity(group.after.outcome);
    EXPECT_FALSE(group.why.empty());
  }
  EXPECT_LT(after, before);
}

TEST(DemoPlaces, ItIsCoolerAndDimmerUnderTheBench) {
  const std::size_t on = place(fanned(), "on the east middle bench"),
                    under = place(fanned(), "under the east middle bench");
  EXPECT_LT(fanned().places[under].light_mol_m2, 0.6 * fanned().places[on].light_mol_m2);
  EXPECT_LT(fanned().places[under].direct_h, fanned().places[on].direct_h);
  for (const GroupShown& group : fanned().groups)
    EXPECT_LT(group.felt[under].peak_k, group.felt[on].peak_k - 3.0) << group.name;
}

TEST(DemoPlaces, TheAnswerIsTheSameOnAnyNumberOfThreads) {
  const Scenario scenario = scenario_of("heatwave");
  const PlaceAnswer one = answer_place(scenario, scenario.plan("vents and fan"), {{}, -1, 1, {}});
  for (std::size_t g = 0; g < one.groups.size(); ++g) {
    EXPECT_EQ(one.groups[g].why, fanned().groups[g].why);
    for (std::size_t p = 0; p < one.places.size(); ++p)
      EXPECT_EQ(one.groups[g].felt[p].tissue_k, fanned().groups[g].felt[p].tissue_k);
  }
}

TEST(DemoPlaces, KeepsWhatIsToStayAndMovesNoMoreThanAllowed) {
  const Scenario scenario = scenario_of("heatwave");
  const PlaceAnswer kept = answer_place(scenario, scenario.plan("vents and fan"), {{"salads"}, 1, 2, {}});
  const auto& plan = std::get<StandingPlan>(kept.standing);
  EXPECT_LE(plan.moves, 1);
  EXPECT_EQ(kept.groups[1].name, "salads");
  EXPECT_EQ(kept.groups[1].should_stand_on, kept.groups[1].stands_on);
  EXPECT_GE(plan.harm_after, std::get<StandingPlan>(fanned().standing).harm_after - 1e-9);
  try {
    static_cast<void>(answer_place(scenario, scenario.plan("vents and fan"), {{"sallads"}, -1, 2, {}}));
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_NE(std::string(error.what()).find("salads"), std::string::npos) << error.what();
  }
}

/// Hardy kinds stand longer than tender ones; no stretch reaches into the months of hard frost; the trade's order.
TEST(DemoSeason, TenderKindsHaveTheShorterSeason) {
  const Scenario scenario = scenario_of("season");
  const SeasonAnswer answer =
      answer_season(scenario, scenario.plans.front(), {{"citrus in a tub", "leafy crop", "fern", "orchid"}, 2, {}});
  ASSERT_EQ(answer.kinds.size(), 4U);
  std::vector<int> days;
  for (const KindSeason& kind : answer.kinds) days.push_back(kind.places[kind.best].safe.days);
  EXPECT_GT(days[0], days[2]) << "citrus bears a light frost, ferns do not";
  EXPECT_GT(days[1], days[2]);
  EXPECT_GT(days[2], days[3]) << "orchids want it warmer than ferns";
  for (const KindSeason& kind : answer.kinds) {
    const PlaceSeason& best = kind.places[kind.best];
    EXPECT_FALSE(best.safe.all_year) << kind.kind;
    EXPECT_GT(best.safe.first_day, 59) << kind.kind << " before March";
    EXPECT_LT(best.safe.first_day + best.safe.days, 334) << kind.kind << " into December";
    EXPECT_LT(best.coldest_k, kZeroCelsius) << "the house freezes in winter";
  }
}

}  // namespace
}  // namespace noonhouse
