// SPDX-License-Identifier: Apache-2.0
// Why groups cannot be housed: the groups named are at fault, all of them and no others, and the words say it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "tests/tools/placing_sample.hpp"
#include "tools/placing/standing_plan.hpp"

namespace noonhouse {
namespace {

using namespace placing_sample;
using testing::HasSubstr;

bool housed(const StandingProblem& problem, const std::vector<int>& groups, bool with_stayers, int most_moves) {
  std::vector<bool> in(problem.groups.size(), false);
  for (std::size_t i = 0; i < in.size(); ++i) in[i] = with_stayers && problem.groups[i].stays;
  for (const int i : groups) in[at(i)] = true;
  return EveryStanding(problem, in, most_moves).any();
}

/// The set cannot be housed, every proper subset can, tried out one by one.
void expect_minimal(const StandingProblem& problem, const Unhoused& unhoused) {
  const bool beside = unhoused.why != UnhousedWhy::stay_overfull;
  const int most_moves = unhoused.why == UnhousedWhy::more_moves_needed ? problem.most_moves : -1;
  const auto& set = unhoused.groups;
  ASSERT_FALSE(set.empty());
  for (unsigned chosen = 0; chosen < 1u << set.size(); ++chosen) {
    std::vector<int> part;
    for (std::size_t k = 0; k < set.size(); ++k)
      if (chosen >> k & 1u) part.push_back(set[k]);
    ASSERT_EQ(housed(problem, part, beside, most_moves), part.size() < set.size());
  }
  double need_m2 = 0.0;
  for (const int i : set) {
    ASSERT_EQ(problem.groups[at(i)].stays, !beside);
    need_m2 += problem.groups[at(i)].area_m2;
  }
  ASSERT_NEAR(unhoused.need_m2, need_m2, 1e-9);
}

double left_m2(const StandingProblem& problem, int place, int beside) {
  double left = problem.places[at(place)].room_m2;
  for (int i = 0; i < static_cast<int>(problem.groups.size()); ++i)
    if (i != beside && problem.groups[at(i)].stays && problem.groups[at(i)].stands_on == place)
      left -= problem.groups[at(i)].area_m2;
  return left;
}

/// Each place has a reason, and the reason holds.
void expect_refused(const StandingProblem& problem, const Unhoused& unhoused) {
  ASSERT_EQ(unhoused.groups.size(), 1u);
  const int i = unhoused.groups.front();
  const PlantGroup& group = problem.groups[at(i)];
  ASSERT_EQ(unhoused.refusals.size(), problem.places.size());
  for (int p = 0; p < static_cast<int>(problem.places.size()); ++p) {
    const PlaceRefusal& refused = unhoused.refusals[at(p)];
    ASSERT_EQ(refused.place, p);
    const bool named =
        group.may_use.empty() || std::find(group.may_use.begin(), group.may_use.end(), p) != group.may_use.end();
    const bool may = named && (!group.stays || group.stands_on == p);
    const bool cannot = problem.harm[at(i)][at(p)].harm == kInfinity;
    ASSERT_EQ(refused.why == PlaceRefusal::Why::may_not_use, !may);
    ASSERT_EQ(refused.why == PlaceRefusal::Why::cannot_stand, may && cannot);
    if (group.stays) continue;
    ASSERT_NEAR(refused.left_m2, left_m2(problem, p, i), 1e-9);
    ASSERT_EQ(refused.beside_what_stays, left_m2(problem, p, i) < problem.places[at(p)].room_m2 - 1e-9);
    ASSERT_TRUE(refused.why != PlaceRefusal::Why::too_small || refused.left_m2 < group.area_m2 - 0.5e-4);
  }
}

TEST(Unhoused, NamesGroupsThatTogetherCannotAndOneFewerCan) {
  Random random(3);
  std::array<int, 4> seen{};
  for (int round = 0; round < 40'000; ++round) {
    const StandingProblem problem = random_problem(random, whole(random, 1, 5), whole(random, 1, 4));
    const auto answer = plan_standing(problem);
    const Unhoused* unhoused = std::get_if<Unhoused>(&answer);
    ASSERT_EQ(unhoused == nullptr, EveryStanding(problem).any());
    if (unhoused == nullptr) continue;
    ++seen[static_cast<std::size_t>(unhoused->why)];
    if (unhoused->why == UnhousedWhy::no_place)
      expect_refused(problem, *unhoused);
    else
      expect_minimal(problem, *unhoused);
    if (unhoused->why == UnhousedWhy::more_moves_needed) {
      std::vector<bool> in;
      for (const auto& group : problem.groups) in.push_back(group.stays);
      for (const int i : unhoused->groups) in[at(i)] = true;
      ASSERT_EQ(unhoused->moves_needed, EveryStanding(problem, in, -1).fewest_moves());
    }
    ASSERT_FALSE(unhoused_text(problem, *unhoused).empty());
    if (HasFatalFailure()) FAIL() << "round " << round;
  }
  for (const int times : seen) EXPECT_GT(times, 100) << "each reason is met often";
}

/// Citrus and a fig; two benches and a floor.
StandingProblem house() {
  StandingProblem problem;
  problem.groups = {{"citrus", 1.6, 2, false, {0, 1}}, {"figs", 1.0, 0, true, {}}};
  problem.places = {{"east middle bench", 1.8}, {"west bench", 1.2}, {"floor", 4.0}};
  problem.harm.assign(2, std::vector<StandingHarm>(3));
  return problem;
}

std::string why(const StandingProblem& problem, UnitSystem system = UnitSystem::metric) {
  const auto answer = plan_standing(problem);
  const Unhoused* unhoused = std::get_if<Unhoused>(&answer);
  return unhoused == nullptr ? "housed" : unhoused_text(problem, *unhoused, system);
}

TEST(Unhoused, SaysOfEachPlaceWhyItDoesNotDo) {
  EXPECT_EQ(why(house()),
            "the citrus need 1.6 m²: the east middle bench has 0.8 m² left beside what must stay there; "
            "the west bench has 1.2 m²; they may use no other place");
  StandingProblem dark = house();
  dark.groups[0].may_use.clear();
  dark.harm[0][2] = {kInfinity, "the floor is too dark for them"};
  EXPECT_EQ(why(dark),
            "the citrus need 1.6 m²: the east middle bench has 0.8 m² left beside what must stay there; "
            "the west bench has 1.2 m²; the floor is too dark for them");
  dark.groups[1].stays = false;
  EXPECT_EQ(why(dark), "housed");
}

TEST(Unhoused, SaysWhatMustStayAndCannot) {
  StandingProblem problem = house();
  problem.groups[1].stands_on = kNowhere;
  EXPECT_EQ(why(problem), "the figs must stay where they are, but stand nowhere yet");
  problem = house();
  problem.groups[1].area_m2 = 2.0;
  EXPECT_EQ(why(problem),
            "the figs must stay on the east middle bench and need 2 m²: the east middle bench has 1.8 m²");
  problem = house();
  problem.groups[0] = {"citrus", 1.6, 0, true, {}};
  EXPECT_EQ(why(problem),
            "the citrus and the figs must stay together on the east middle bench and need 2.6 m²: it has 1.8 m²");
  problem.groups[1].may_use = {2};
  EXPECT_EQ(why(problem), "the figs must stay on the east middle bench, but they may not use that place");
}

TEST(Unhoused, SaysHowMuchRoomThereIsTogether) {
  StandingProblem problem = house();
  problem.groups = {{"citrus", 1.0, 0, false, {}}, {"herbs", 0.1, 0, false, {}}, {"figs", 1.0, 0, false, {}}};
  problem.places = {{"east bench", 1.5}, {"west bench", 0.5}};
  problem.harm.assign(3, std::vector<StandingHarm>(2));
  EXPECT_EQ(why(problem),
            "the citrus and the figs cannot be housed together: they need 2 m², the east bench has 1.5 m²");
  problem.places[1].room_m2 = 0.9999;
  EXPECT_EQ(why(problem),
            "the citrus and the figs cannot be housed together: they need 2 m², the east bench has 1.5 m²");
  problem.places = {{"east bench", 1.8}, {"west bench", 1.3}};
  problem.groups = {{"citrus", 1.0, 0, false, {}}, {"herbs", 1.0, 0, false, {}}, {"figs", 1.0, 0, false, {}}};
  EXPECT_THAT(why(problem), HasSubstr("they need 3 m²; the east bench and the west bench have 3.1 m², but no way to "
                                      "share the places out keeps every group whole"));
}

TEST(Unhoused, SaysThatMoreMustMove) {
  StandingProblem problem = house();
  problem.groups[0].may_use = {};
  problem.harm[0][2] = {kInfinity, "the floor is too dark for them"};
  problem.groups[1].stays = false;
  problem.most_moves = 1;
  EXPECT_EQ(why(problem),
            "the citrus and the figs cannot be housed together unless 2 groups change place, and at most 1 may");
  problem.most_moves = 0;
  EXPECT_EQ(why(problem), "the citrus cannot be housed unless 1 group changes place, and none may");
  problem.most_moves = 2;
  EXPECT_EQ(why(problem), "housed");
}

TEST(Unhoused, AreasThatReadAlikeAreTakenToSquareCentimetres) {
  StandingProblem problem = house();
  problem.places[0].room_m2 = 2.5999;
  problem.places[1].room_m2 = 1.2;
  EXPECT_THAT(why(problem), HasSubstr("15999 cm²"));
  EXPECT_THAT(why(problem), HasSubstr("16000 cm²"));
  problem.places[0].room_m2 = 2.6;
  EXPECT_EQ(why(problem), "housed") << "1.6 m² fit in what 1 m² leaves of 2.6 m², whatever doubles say";
  EXPECT_THAT(why(house(), UnitSystem::us), HasSubstr("ft²"));
}

}  // namespace
}  // namespace noonhouse
