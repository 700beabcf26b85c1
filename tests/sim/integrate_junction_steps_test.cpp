// SPDX-License-Identifier: Apache-2.0
// A method with junctions in its house keeps its order, its dense output and its sums.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/toy_junctions.hpp"
#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::advance_to;
using toy::distance;
using toy::fixed_steps;
using toy::start_of;
using toy::TwoRooms;
using toy::TwoRoomsEliminated;

/// Temperatures of both rooms after a time in steps of one length.
template <class House>
std::vector<double> temperatures_after(const House& rooms, Tick end, Tick step) {
  Stepper stepper(rooms.house, fixed_steps(step));
  HouseState state = start_of(rooms.house);
  advance_to(stepper, state, rooms.line, end);
  return {rooms.kelvin(state.amounts, rooms.warm), rooms.kelvin(state.amounts, rooms.cool)};
}

TEST(JunctionStepping, KeepsItsThirdOrderAgainstTheEliminatedSystem) {
  const TwoRooms rooms;
  const auto exact = temperatures_after(TwoRoomsEliminated(), 128_s, Tick{50});
  EXPECT_LT(distance(temperatures_after(rooms, 128_s, Tick{50}), exact, 2), 1e-7);
  double before = 0.0;
  for (const std::int64_t ms : {16'000, 8'000, 4'000, 2'000}) {
    const double error = distance(temperatures_after(rooms, 128_s, Tick{ms}), exact, 2);
    if (before > 0.0) {
      EXPECT_NEAR(std::log2(before / error), 3.0, 0.25) << ms << " ms";
    }
    before = error;
  }
  EXPECT_LT(before, 1e-4);
}

TEST(JunctionStepping, ControlsItsErrorAsWithoutJunctions) {
  const TwoRooms with;
  const TwoRoomsEliminated without;
  const auto steps = [](const auto& rooms) {
    Stepper stepper(rooms.house, {});
    HouseState state = start_of(rooms.house);
    advance_to(stepper, state, rooms.line, 10_min);
    return std::pair{stepper.steps() + stepper.rejected(), rooms.kelvin(state.amounts, rooms.cool)};
  };
  const auto [own, own_k] = steps(with);
  const auto [other, other_k] = steps(without);
  EXPECT_LE(std::abs(own - other), 1) << "junctions take no part in the error";
  EXPECT_NEAR(own_k, other_k, 1e-3);
}

TEST(JunctionStepping, HasThePressuresOfTheStateAtTheEndOfEveryStep) {
  const TwoRooms rooms;
  Stepper stepper(rooms.house, {});
  HouseState state = start_of(rooms.house);
  while (state.now < 10_min) {
    stepper.advance(state, rooms.line, 10_min);
    const double outside = 290.0 - 0.05 * seconds(state.now);
    const auto hand = TwoRooms::pressures_at(rooms.kelvin(state.amounts, rooms.warm),
                                             rooms.kelvin(state.amounts, rooms.cool), outside);
    EXPECT_NEAR(rooms.pressure(state.amounts, rooms.first), hand[0], 1e-8);
    EXPECT_NEAR(rooms.pressure(state.amounts, rooms.second), hand[1], 1e-8);
  }
}

/// What all fluxes together carried into each junction [kg], the largest of them.
double gathered(const House& house, const std::vector<double>& carried) {
  double most = 0.0;
  for (const int state : house.junctions.states) {
    double sum = 0.0;
    for (std::size_t j = 0; j < carried.size(); ++j)
      sum += (house.flux_to[j] == state ? carried[j] : 0.0) - (house.flux_from[j] == state ? carried[j] : 0.0);
    most = std::max(most, std::abs(sum));
  }
  return most;
}

TEST(JunctionStepping, CarriesNoAirIntoAJunctionAtAnyTimeAlsoAfterACut) {
  const TwoRooms rooms;
  constexpr double kSumsTo = 1e-10;  // [kg/s]: a flow that counts as nothing
  Stepper stepper(rooms.house, {});
  HouseState state = start_of(rooms.house);
  std::vector<double> carried(at(rooms.house.fluxes));
  int cuts = 0;
  while (state.now < 10_min) {
    const Step& step = stepper.advance(state, rooms.line, 10_min);
    for (int part = 0; part <= 8; ++part) {
      const Tick when{step.begin.ms + (step.end - step.begin).ms * part / 8};
      step.carried_at(when, carried.data());
      EXPECT_LE(gathered(rooms.house, carried), kSumsTo * seconds(when)) << seconds(when);
    }
    if (stepper.steps() % 5 != 0) continue;
    stepper.cut(state, Tick{(step.begin.ms * 2 + step.end.ms) / 3});
    EXPECT_LE(gathered(rooms.house, state.carried), kSumsTo * seconds(state.now));
    ++cuts;
  }
  EXPECT_GT(cuts, 3);
  EXPECT_GT(*std::max_element(state.carried.begin(), state.carried.end()), 100.0) << "a lot of air went through";
}

TEST(JunctionStepping, InsideAStepPressuresGoStraightAndMissByTheSquareOfItsLength) {
  const TwoRooms rooms;
  std::vector<double> amounts(at(rooms.house.states));
  double before = 0.0;
  for (const Tick length : {8_s, 4_s, 2_s, 1_s}) {
    Stepper stepper(rooms.house, fixed_steps(length));
    HouseState state = start_of(rooms.house);
    advance_to(stepper, state, rooms.line, 32_s);
    const Step& step = stepper.advance(state, rooms.line, 1_h);
    const Tick middle{(step.begin.ms + step.end.ms) / 2};
    step.amounts_at(middle, amounts.data());
    const auto p0 = rooms.pressure(step.amounts0, rooms.first), p1 = rooms.pressure(step.amounts1, rooms.first);
    EXPECT_NEAR(rooms.pressure(amounts, rooms.first), 0.5 * (p0 + p1), 1e-12);
    const auto hand = TwoRooms::pressures_at(rooms.kelvin(amounts, rooms.warm), rooms.kelvin(amounts, rooms.cool),
                                             290.0 - 0.05 * seconds(middle));
    const double miss = std::abs(rooms.pressure(amounts, rooms.first) - hand[0]);
    if (before > 0.0) {
      EXPECT_NEAR(std::log2(before / miss), 2.0, 0.4) << seconds(length);
    }
    before = miss;
  }
}

}  // namespace
}  // namespace noonhouse
