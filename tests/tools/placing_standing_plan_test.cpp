// SPDX-License-Identifier: Apache-2.0
// The best standing beside every standing there is. A bound that is too high cuts off the best one: EqualsEveryStanding
// fails. A bound that is too low only costs nodes: NeedsFewNodes fails where moves, prices of room or whole groups are
// left out of it, placing_flow_test.cpp for each cost that is too low.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "tests/tools/placing_sample.hpp"
#include "tools/placing/standing_plan.hpp"

namespace noonhouse {
namespace {

using namespace placing_sample;

const StandingPlan* plan_of(const std::variant<StandingPlan, Unhoused>& answer) {
  return std::get_if<StandingPlan>(&answer);
}

void expect_best(const StandingProblem& problem, int round) {
  const EveryStanding every(problem);
  const auto answer = plan_standing(problem);
  const StandingPlan* plan = plan_of(answer);
  ASSERT_EQ(plan != nullptr, every.any()) << "round " << round;
  if (plan == nullptr) return;
  const Standing best = every.best();
  ASSERT_EQ(plan->place, best.place) << "round " << round;
  ASSERT_EQ(plan->moves, best.moves) << "round " << round;
  ASSERT_EQ(plan->harm_after, best.harm) << "round " << round;
}

TEST(StandingPlan, EqualsEveryStandingTriedOut) {
  Random random(1);
  int housed = 0;
  for (int round = 0; round < 20'000; ++round) {
    const StandingProblem problem = random_problem(random, whole(random, 1, 5), whole(random, 1, 5));
    expect_best(problem, round);
    if (HasFatalFailure()) return;
    if (EveryStanding(problem).any()) ++housed;
  }
  EXPECT_GT(housed, 5'000) << "of both kinds there are many";
  EXPECT_LT(housed, 15'000);
}

/// The same where the number of moves is what decides: everyone stands somewhere, and all could gain.
TEST(StandingPlan, EqualsEveryStandingWhereMovesAreFew) {
  Random random(2);
  int bound = 0;
  for (int round = 0; round < 4000; ++round) {
    StandingProblem problem = random_problem(random, 5, 4);
    for (PlantGroup& group : problem.groups) group.stands_on = whole(random, 0, 3);
    problem.most_moves = whole(random, 0, 4);
    expect_best(problem, round);
    if (HasFatalFailure()) return;
    const auto limited = plan_standing(problem);
    problem.most_moves = -1;
    const auto free = plan_standing(problem);
    if (plan_of(limited) && plan_of(free) && plan_of(free)->moves > plan_of(limited)->moves) ++bound;
  }
  EXPECT_GT(bound, 200) << "in many of them the limit changes the answer";
}

/// Two groups, two places of one harm: nothing to gain, so who stands stays, and who stands nowhere takes the first.
StandingProblem two_by_two() {
  StandingProblem problem;
  problem.groups = {{"citrus", 1.0, 1, false, {}}, {"herbs", 1.0, kNowhere, false, {}}};
  problem.places = {{"west bench", 2.0}, {"east bench", 2.0}};
  problem.harm.assign(2, std::vector<StandingHarm>(2, {3.0, ""}));
  return problem;
}

TEST(StandingPlan, MovesNobodyForNothing) {
  const auto answer = plan_standing(two_by_two());
  ASSERT_NE(plan_of(answer), nullptr);
  EXPECT_EQ(plan_of(answer)->place, (std::vector<int>{1, 0}));
  EXPECT_EQ(plan_of(answer)->moves, 0) << "to be housed is no move";
}

TEST(StandingPlan, EqualIsWithinABillionth) {
  StandingProblem problem = two_by_two();
  problem.harm[0][0].harm = 3.0 - 0.8e-9;
  EXPECT_EQ(plan_of(plan_standing(problem))->place[0], 1) << "as good as equal: it stays";
  problem.harm[0][0].harm = 3.0 - 1.2e-9;
  EXPECT_EQ(plan_of(plan_standing(problem))->place[0], 0) << "better: it moves";
}

TEST(StandingPlan, TellsWhatChangesAndWhatItBrings) {
  StandingProblem problem = two_by_two();
  problem.harm[0] = {{1.0, ""}, {5.0, ""}};
  problem.harm[1] = {{4.0, ""}, {2.5, ""}};
  const auto answer = plan_standing(problem);
  ASSERT_NE(plan_of(answer), nullptr);
  const StandingPlan& plan = *plan_of(answer);
  ASSERT_EQ(plan.changes.size(), 2u);
  EXPECT_EQ(plan.changes[0].group, 0);
  EXPECT_EQ(plan.changes[0].from, 1);
  EXPECT_EQ(plan.changes[0].to, 0);
  EXPECT_EQ(plan.changes[0].harm_before, 5.0);
  EXPECT_EQ(plan.changes[0].harm_after, 1.0);
  EXPECT_EQ(plan.changes[1].from, kNowhere);
  EXPECT_FALSE(plan.changes[1].harm_before.has_value());
  EXPECT_EQ(plan.moves, 1);
  EXPECT_EQ(plan.harm_before, 5.0) << "of the citrus alone: the herbs stand nowhere";
  EXPECT_EQ(plan.harm_after, 3.5);
}

TEST(StandingPlan, NoGroupsNeedNothing) {
  const auto answer = plan_standing({});
  ASSERT_NE(plan_of(answer), nullptr);
  EXPECT_TRUE(plan_of(answer)->place.empty());
}

TEST(StandingPlan, APlaceMoreNeverHarms) {
  Random random(6);
  int better = 0;
  for (int round = 0; round < 500; ++round) {
    StandingProblem problem = random_problem(random, 6, 5);
    for (PlantGroup& group : problem.groups) group.may_use.clear();
    const auto before = plan_standing(problem);
    problem.places.push_back({"one more", whole(random, 0, 8000) / 1e4});
    for (auto& row : problem.harm) row.push_back({real(random, 0.0, 5.0), ""});
    const auto after = plan_standing(problem);
    if (plan_of(before) == nullptr) continue;
    ASSERT_NE(plan_of(after), nullptr);
    ASSERT_LE(plan_of(after)->harm_after, plan_of(before)->harm_after + 1.1e-9);
    if (plan_of(after)->harm_after < plan_of(before)->harm_after - 1e-6) ++better;
  }
  EXPECT_GT(better, 50);
}

TEST(StandingPlan, AMoveMoreNeverHarms) {
  Random random(7);
  int better = 0;
  for (int round = 0; round < 200; ++round) {
    StandingProblem problem = random_problem(random, 6, 6);
    double last = kInfinity;
    for (problem.most_moves = 0; problem.most_moves <= 6; ++problem.most_moves) {
      const auto answer = plan_standing(problem);
      if (plan_of(answer) == nullptr) {
        ASSERT_EQ(last, kInfinity) << "more moves never take a standing away";
        continue;
      }
      ASSERT_LE(plan_of(answer)->moves, problem.most_moves);
      ASSERT_LE(plan_of(answer)->harm_after, last + 1.1e-9);
      if (last < kInfinity && plan_of(answer)->harm_after < last - 1e-6) ++better;
      last = plan_of(answer)->harm_after;
    }
  }
  EXPECT_GT(better, 50);
}

/// Whether the harms are of a kind that ties: some finite one is whole tenths.
bool may_tie(const StandingProblem& problem) {
  for (const auto& row : problem.harm)
    for (const StandingHarm& one : row)
      if (one.harm < kInfinity) return std::abs(one.harm * 10.0 - std::round(one.harm * 10.0)) < 1e-6;
  return true;
}

/// Harm and moves do not depend on the order of the groups; nor do the places where no two standings tie.
TEST(StandingPlan, TheOrderOfTheGroupsDoesNotMatter) {
  Random random(8);
  int compared = 0;
  for (int round = 0; round < 2000; ++round) {
    const StandingProblem problem = random_problem(random, 6, 5);
    StandingProblem turned = problem;
    std::vector<std::size_t> from(problem.groups.size());
    std::iota(from.begin(), from.end(), std::size_t{0});
    for (std::size_t k = from.size() - 1; k > 0; --k)
      std::swap(from[k], from[at(whole(random, 0, static_cast<int>(k)))]);
    for (std::size_t k = 0; k < from.size(); ++k) {
      turned.groups[k] = problem.groups[from[k]];
      turned.harm[k] = problem.harm[from[k]];
    }
    const auto one = plan_standing(problem), two = plan_standing(turned);
    ASSERT_EQ(plan_of(one) == nullptr, plan_of(two) == nullptr);
    if (plan_of(one) == nullptr) continue;
    ASSERT_NEAR(plan_of(one)->harm_after, plan_of(two)->harm_after, 1.1e-9);
    ASSERT_EQ(plan_of(one)->moves, plan_of(two)->moves);
    if (may_tie(problem)) continue;
    for (std::size_t k = 0; k < from.size(); ++k) ASSERT_EQ(plan_of(two)->place[k], plan_of(one)->place[from[k]]);
    ++compared;
  }
  EXPECT_GT(compared, 30);
}

/// A bench house: ten groups of 0.4 to 1.6 m2 on fifteen places of 0.6 to 2.4 m2, with a seventh of the pairs ruled
/// out. All groups like the same places best, so that they compete for them, unless the harms are few values.
StandingProblem bench_house(Random& random, int most_moves, bool few_harms) {
  StandingProblem problem;
  std::vector<double> harm_of_place;
  for (int p = 0; p < 15; ++p) {
    problem.places.push_back({"bench", whole(random, 6, 24) / 10.0});
    harm_of_place.push_back(real(random, 0.0, 100.0));
  }
  for (int i = 0; i < 10; ++i) {
    problem.groups.push_back({"group", whole(random, 4, 16) / 10.0, whole(random, 0, 14), false, {}});
    problem.harm.emplace_back();
    for (int p = 0; p < 15; ++p) {
      const double harm = few_harms ? 0.1 * whole(random, 0, 2) : harm_of_place[at(p)] + real(random, 0.0, 20.0);
      problem.harm.back().push_back({whole(random, 0, 6) == 0 ? kInfinity : harm, "too dark"});
    }
  }
  problem.most_moves = most_moves;
  return problem;
}

TEST(StandingPlan, NeedsFewNodesForTenGroupsOnFifteenPlaces) {
  Random random(9);
  long most = 0, all = 0;
  int solved = 0;
  for (int round = 0; round < 100; ++round) {
    const auto answer = plan_standing(bench_house(random, round % 5 == 0 ? -1 : 2 * (round % 5), round % 3 == 0));
    if (plan_of(answer) == nullptr) continue;
    ++solved;
    all += plan_of(answer)->branch_nodes;
    most = std::max(most, plan_of(answer)->branch_nodes);
  }
  EXPECT_GT(solved, 50);
  EXPECT_LT(all / solved, 120);
  EXPECT_LT(most, 2000) << "there are 6e11 ways to put ten groups on fifteen places";
}

/// Where all harms are equal, harm guides nothing and all is ties; where nine places hold one group each, the areas
/// say that ten fit, and only whole groups show that they do not.
TEST(StandingPlan, NeedsFewNodesWhereEverythingTiesOrNearlyFits) {
  StandingProblem problem;
  for (int p = 0; p < 10; ++p) problem.places.push_back({"bench", 1.0});
  for (int i = 0; i < 10; ++i) {
    problem.groups.push_back({"group", 0.6 + 0.001 * i, 9 - i, false, {}});
    problem.harm.emplace_back(10, StandingHarm{0.1, ""});
  }
  const auto stay = plan_standing(problem);
  ASSERT_NE(plan_of(stay), nullptr);
  EXPECT_EQ(plan_of(stay)->moves, 0);
  EXPECT_LT(plan_of(stay)->branch_nodes, 50);
  for (PlantGroup& group : problem.groups) group.stands_on = kNowhere;
  const auto first = plan_standing(problem);
  ASSERT_NE(plan_of(first), nullptr);
  EXPECT_EQ(plan_of(first)->place, (std::vector<int>{0, 1, 2, 3, 4, 5, 6, 7, 8, 9})) << "the first of 10! ties";
  EXPECT_LT(plan_of(first)->branch_nodes, 200);

  problem.places.pop_back();
  for (auto& row : problem.harm) row.pop_back();
  long nodes = 0;
  EXPECT_FALSE(search_standing(standing_table(problem), {}, Seek::least_harm, nodes).has_value());
  EXPECT_LT(nodes, 5) << "9 m2 for 6.05 m2, yet each place holds one of them";
}

}  // namespace
}  // namespace noonhouse
