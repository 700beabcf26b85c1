// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <stdexcept>

#include "sim/core/errors.hpp"
#include "sim/integrate/stepper.hpp"
#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::advance_to;
using toy::distance;
using toy::fixed_steps;
using toy::Glowing;
using toy::line_of;
using toy::start_of;

TEST(Stepper, ConvergesWithThirdOrderOnANonlinearProblemDrivenInTime) {
  const Glowing problem;
  const Tick end = 64_s;
  const auto exact = problem.amounts_after(end, Tick{50});
  double before = 0.0;
  for (const std::int64_t ms : {8'000, 4'000, 2'000, 1'000}) {
    const double error = distance(problem.amounts_after(end, Tick{ms}), exact, 2);
    if (before > 0.0) {
      EXPECT_NEAR(std::log2(before / error), 3.0, 0.25) << ms << " ms";
    }
    before = error;
  }
}

TEST(Stepper, AccountsAndCarriedFluxesConvergeWithThirdOrderToo) {
  const Glowing problem;
  const auto exact = problem.amounts_after(64_s, Tick{50});
  const auto out = at(problem.house.states);
  const double coarse = std::abs(problem.amounts_after(64_s, Tick{4'000})[out] - exact[out]);
  const double fine = std::abs(problem.amounts_after(64_s, Tick{2'000})[out] - exact[out]);
  EXPECT_LT(exact[out], -500.0) << "the surroundings end warmer than the shell";
  EXPECT_NEAR(std::log2(coarse / fine), 3.0, 0.25);
}

TEST(Stepper, TheErrorEstimateShrinksAsTheCubeOfTheStep) {
  // The estimate decides the length of an unlimited first step: tolerance / 8 halves the accepted length.
  const Glowing problem;
  const auto accepted_s = [&](double tolerance) {
    StepControl control;
    control.tolerance = tolerance;
    control.restart = 1_h;
    Stepper stepper(problem.house, control);
    HouseState state = start_of(problem.house);
    for (int i = 0; i < 4; ++i) stepper.advance(state, problem.line, kDay);
    return seconds(stepper.last_step().end - stepper.last_step().begin);
  };
  EXPECT_NEAR(std::log2(accepted_s(0.08) / accepted_s(0.01)), 1.0, 0.2);
  EXPECT_NEAR(std::log2(accepted_s(0.01) / accepted_s(0.00125)), 1.0, 0.2);
}

TEST(Stepper, TighterToleranceGivesSmallerErrorInProportion) {
  const Glowing problem;
  const auto exact = problem.amounts_after(64_s, Tick{50});
  const auto error_at = [&](double tolerance) {
    StepControl control;
    control.tolerance = tolerance;
    Stepper stepper(problem.house, control);
    HouseState state = start_of(problem.house);
    advance_to(stepper, state, problem.line, 64_s);
    return distance(state.amounts, exact, 2) / problem.house.amount_tolerance[0];
  };
  EXPECT_LT(error_at(1.0), 1.0);
  EXPECT_LT(error_at(0.1), 0.2);
  EXPECT_LT(error_at(0.01), 0.03);
}

TEST(Stepper, ExponentialDecayEndsWhereTheFormulaSays) {
  HouseGraph graph;
  const auto tank = graph.node("tank", WaterBucket{}, {100.0}, {1e-4});
  const auto out = graph.account("drain", Quantity::water);
  graph.exchange("leak", "x", toy::Decay<Quantity::water>{1e-3}, {tank}, {{{tank, out}}});
  const House house = graph.compile();
  Stepper stepper(house, {});
  HouseState state = start_of(house);
  advance_to(stepper, state, line_of(house), 1_h);
  EXPECT_NEAR(state.amounts[0], 100.0 * std::exp(-3.6), 2e-4);
  EXPECT_NEAR(state.carried[0], 100.0 * (1.0 - std::exp(-3.6)), 2e-4) << "positive from the tank to the drain";
  EXPECT_NEAR(state.amounts[0] + state.amounts[1], 100.0, 1e-12);
}

TEST(Stepper, TwoTanksExchangingHeatMeetAtTheirMeanByTheirCommonTimeConstant) {
  HouseGraph graph;
  const auto a = graph.node("a", ThermalMass{2e4}, {330.0}, {1e-4}),
             b = graph.node("b", ThermalMass{6e4}, {290.0}, {1e-4});
  const auto out = graph.account("out", Quantity::energy);
  graph.exchange("wall", "x", toy::Conduction{25.0}, {a, b}, {{{a, b}}});
  graph.exchange("shut", "x", toy::Decay<Quantity::energy>{0.0}, {a}, {{{a, out}}});
  const House house = graph.compile();
  Stepper stepper(house, {});
  HouseState state = start_of(house);
  advance_to(stepper, state, line_of(house), 20_min);
  const double rate = 25.0 * (1.0 / 2e4 + 1.0 / 6e4);
  const double difference = 40.0 * std::exp(-rate * 1200.0), mean = (330.0 * 2e4 + 290.0 * 6e4) / 8e4;
  Evaluation evaluation(house);
  std::vector<double> rates(2);
  evaluation.rates(state.amounts.data(), nullptr, rates.data());
  EXPECT_NEAR(evaluation.potentials()[at(house.position(Input(a)))], mean + 0.75 * difference, 5e-4);
  EXPECT_NEAR(evaluation.potentials()[at(house.position(Input(b)))], mean - 0.25 * difference, 5e-4);
}

TEST(Stepper, WhatTheFluxesCarriedIsWhatTheAmountsChangedAlsoAcrossACut) {
  toy::Ids id;
  const House house = toy::build(id);
  auto line = line_of(house);
  line.slope[at(id.sun_w.index)] = 0.8;
  line.slope[at(id.outdoor_k.index)] = 1e-3;
  Stepper stepper(house, {});
  HouseState state = start_of(house);
  const auto balance = [&](const char* when) {
    auto expected = house.initial_amounts;
    std::vector<double> throughput(expected.size(), 0.0);
    for (std::size_t j = 0; j < state.carried.size(); ++j) {
      for (const int end : {house.flux_from[j], house.flux_to[j]}) throughput[at(end)] += std::abs(state.carried[j]);
      expected[at(house.flux_from[j])] -= state.carried[j];
      expected[at(house.flux_to[j])] += state.carried[j];
    }
    for (std::size_t i = 0; i < expected.size(); ++i)
      ASSERT_NEAR(state.amounts[i], expected[i], 1e-13 * (throughput[i] + std::abs(expected[i]))) << when << ' ' << i;
  };
  for (int step = 0; step < 60 && state.now < 3_h; ++step) {
    stepper.advance(state, line, 3_h);
    balance("after a step");
    if (step % 4 == 3) {
      const Step& last = stepper.last_step();
      stepper.cut(state, Tick{(last.begin.ms * 2 + last.end.ms) / 3});
      balance("after a cut");
    }
  }
  EXPECT_GT(state.now, 10_min);
}

/// Has no value below 400 K.
struct Broken {
  static constexpr std::string_view kName = "broken";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    using std::sqrt;
    q[0] = sqrt(in[0] - 400.0);
  }
};

TEST(Stepper, ACollapsingStepEndsAndNamesTheStateThatResists) {
  HouseGraph graph;
  const auto lump = graph.node("cracked pot", ThermalMass{1000.0}, {300.0}, {0.01});
  const auto out = graph.account("out", Quantity::energy);
  graph.exchange("loss", "x", Broken{}, {lump}, {{{lump, out}}});
  const House house = graph.compile();
  Stepper stepper(house, {});
  HouseState state = start_of(house);
  try {
    stepper.advance(state, line_of(house), 1_h);
    FAIL() << "a flux that is no number was stepped over";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::step_collapse);
    EXPECT_NE(std::string(error.what()).find("'cracked pot, energy'"), std::string::npos) << error.what();
  }
}

/// As Radiation, and throws std::logic_error when it is asked more often than any sound step needs.
struct CountedGlow {
  double strength_w_k4 = 1e-6;
  int* asked = nullptr;
  static constexpr std::string_view kName = "counted glow";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    if (++*asked > 10'000) throw std::logic_error("a step is tried without end");
    toy::Radiation{strength_w_k4}.flux(in, q);
  }
};

TEST(Stepper, ARetryIsShorterThanWhatWasRejectedInEveryNarrowRoom) {
  // A wish of about 0.9 of the room is within a sliver of all of it, so that the whole room could be tried again.
  int asked = 0;
  HouseGraph graph;
  const auto lump = graph.node("lump", ThermalMass{1000.0}, {600.0}, {0.01});
  const auto around = graph.channel("around", "K", 300.0);
  const auto out = graph.account("out", Quantity::energy);
  graph.exchange("glow", "x", CountedGlow{1e-6, &asked}, {lump, around}, {{{lump, out}}});
  const House house = graph.compile();
  for (std::int64_t room = 2; room <= 100; ++room) {
    const auto rejections = [&](double tolerance) {
      asked = 0;
      StepControl control;
      control.tolerance = tolerance;
      control.restart = Tick{room};
      Stepper stepper(house, control);
      HouseState state = start_of(house);
      stepper.advance(state, line_of(house), Tick{room});
      return stepper.rejected();
    };
    // The error counts in units of the tolerance: the largest that rejects the whole room puts it just above 1.
    double rejects = 1.0, accepts = 1.0;
    while (rejections(rejects) == 0) rejects /= 1.2;
    while (rejections(accepts) > 0) accepts *= 1.2;
    while (accepts / rejects > 1.0 + 1e-9) {
      const double middle = std::sqrt(rejects * accepts);
      (rejections(middle) > 0 ? rejects : accepts) = middle;
    }
    EXPECT_EQ(rejections(rejects), 1) << room << " ms";
  }
}

TEST(Stepper, ARejectedStepAlwaysGetsShorter) {
  // Errors just above the tolerance at lengths of a few ticks, where rounding to ticks could give the same length back.
  HouseGraph graph;
  const auto lump = graph.node("lump", ThermalMass{1000.0}, {600.0}, {0.01});
  const auto around = graph.channel("around", "K", 300.0);
  const auto out = graph.account("out", Quantity::energy);
  graph.exchange("glow", "x", toy::Radiation{1e-6}, {lump, around}, {{{lump, out}}});
  const House house = graph.compile();
  for (int k = 0; k < 60; ++k) {
    StepControl control;
    control.tolerance = 1e-11 * std::pow(1.3, k);
    Stepper stepper(house, control);
    HouseState state = start_of(house);
    try {
      for (int i = 0; i < 20; ++i) stepper.advance(state, line_of(house), 1_s);
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::step_collapse);
    }
    ASSERT_LT(stepper.rejected(), 400);
  }
}

}  // namespace
}  // namespace noonhouse
