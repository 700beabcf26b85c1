// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "sim/core/errors.hpp"
#include "sim/integrate/stepper.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Steps of one length, whatever their error.
StepControl fixed_steps(Tick length) {
  StepControl control;
  control.tolerance = 1e9;
  control.restart = length;
  control.longest = length;
  return control;
}

HouseState start_of(const House& house) {
  return {Tick{0}, house.initial_amounts, std::vector<double>(at(house.fluxes), 0.0)};
}

ChannelLine line_of(const House& house) {
  return {Tick{0}, house.initial_channels, std::vector<double>(at(house.channels), 0.0)};
}

void advance_to(SteppingMethod& stepper, HouseState& state, const ChannelLine& line, Tick end) {
  while (state.now < end) stepper.advance(state, line, end);
}

/// A hot lump that glows to surroundings whose temperature rises in a straight line: nonlinear, with time.
struct Glowing {
  House house;
  ChannelLine line;
  Glowing() {
    HouseGraph graph;
    const auto lump = graph.node("lump", ThermalMass{1000.0}, {600.0}, {0.01});
    const auto shell = graph.node("shell", ThermalMass{3000.0}, {300.0}, {0.01});
    const auto around = graph.channel("around", "K", 300.0);
    const auto out = graph.account("out", Quantity::energy);
    graph.exchange("glow", "x", toy::Radiation{4e-9}, {lump, shell}, {{{lump, shell}}});
    graph.exchange("shell glow", "x", toy::Radiation{9e-9}, {shell, around}, {{{shell, out}}});
    house = graph.compile();
    line = line_of(house);
    line.slope[0] = 0.5;
  }
  std::vector<double> amounts_after(Tick end, Tick step) const {
    Stepper stepper(house, fixed_steps(step));
    HouseState state = start_of(house);
    advance_to(stepper, state, line, end);
    EXPECT_EQ(stepper.steps(), end.ms / step.ms);
    return state.amounts;
  }
};

double distance(const std::vector<double>& a, const std::vector<double>& b, std::size_t n) {
  double sum = 0.0;
  for (std::size_t i = 0; i < n; ++i) sum += (a[i] - b[i]) * (a[i] - b[i]);
  return std::sqrt(sum);
}

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

TEST(Stepper, CutPutsTheStateOnTheDenseOutputAndGoesOnFromThere) {
  const Glowing problem;
  StepControl control;
  control.tolerance = 0.01;
  Stepper stepper(problem.house, control);
  HouseState state = start_of(problem.house);
  for (int i = 0; i < 5; ++i) stepper.advance(state, problem.line, 64_s);
  const Step last = stepper.last_step();
  const Tick when{(last.begin.ms + last.end.ms) / 2};
  std::vector<double> expected(2);
  last.amounts_at(when, expected.data());
  stepper.cut(state, when);
  EXPECT_EQ(state.now, when);
  EXPECT_EQ(state.amounts[0], expected[0]);
  EXPECT_EQ(state.amounts[1], expected[1]);
  advance_to(stepper, state, problem.line, 64_s);
  const auto exact = problem.amounts_after(64_s, Tick{50});
  EXPECT_LT(distance(state.amounts, exact, 2), 0.05 * problem.house.amount_tolerance[0]);
}

TEST(Stepper, DenseOutputInsideAStepConvergesWithTheFourthPower) {
  const Glowing problem;
  const auto error_of = [&](Tick length) {
    Stepper coarse(problem.house, fixed_steps(length));
    HouseState state = start_of(problem.house);
    coarse.advance(state, problem.line, length);
    double worst = 0.0;
    for (int part = 1; part <= 3; ++part) {
      const Tick when{length.ms * part / 4};
      Stepper fine(problem.house, fixed_steps(Tick{length.ms / 128}));
      HouseState exact = start_of(problem.house);
      advance_to(fine, exact, problem.line, when);
      std::vector<double> amounts(2), carried(2);
      coarse.last_step().amounts_at(when, amounts.data());
      coarse.last_step().carried_at(when, carried.data());
      worst = std::max({worst, distance(amounts, exact.amounts, 2), distance(carried, exact.carried, 2)});
    }
    return worst;
  };
  const double e1 = error_of(Tick{5'120}), e2 = error_of(Tick{2'560}), e3 = error_of(Tick{1'280});
  EXPECT_GT(std::log2(e1 / e2), 3.5);
  EXPECT_GT(std::log2(e2 / e3), 3.5);
}

/// A body of one hour's inertia under a thin film of a tenth of a second, in air that warms in a straight line.
struct Filmed {
  House house;
  NodeId body, film;
  ChannelLine line;
  explicit Filmed(double film_start_k) {
    HouseGraph graph;
    body = graph.node("body", ThermalMass{36'000.0}, {290.0}, {0.01});
    film = graph.node("film", ThermalMass{1.1}, {film_start_k}, {0.01});
    const auto air = graph.channel("air", "K", 300.0);
    const auto out = graph.account("out", Quantity::energy);
    graph.exchange("air to film", "x", toy::Conduction{1.0}, {film, air}, {{{film, out}}});
    graph.exchange("film to body", "x", toy::Conduction{10.0}, {film, body}, {{{film, body}}});
    house = graph.compile();
    line = line_of(house);
  }
  double film_k(const double* amounts) const { return amounts[house.position(Input(film))] / 1.1 + kEnergyZeroK; }
  double body_k(const double* amounts) const { return amounts[house.position(Input(body))] / 36'000.0 + kEnergyZeroK; }
};

TEST(Stepper, AThinFilmDoesNotForceShortSteps) {
  const Filmed problem(290.0);
  Stepper stepper(problem.house, {});
  HouseState state = start_of(problem.house);
  advance_to(stepper, state, problem.line, 10_h);
  EXPECT_LT(stepper.steps(), 60);
  // Body and air exchange through both conductances in series; the film holds next to nothing.
  const double through = 1.0 / (1.0 + 0.1);
  EXPECT_NEAR(problem.body_k(state.amounts.data()), 300.0 - 10.0 * std::exp(-through * 36'000.0 / 36'000.0), 0.02);
}

/// The same film glowing strongly to its surroundings, so that its rest moves along a curve.
struct GlowingFilm : Filmed {
  GlowingFilm() : Filmed(290.0) {
    HouseGraph graph;
    body = graph.node("body", ThermalMass{36'000.0}, {340.0}, {0.01});
    film = graph.node("film", ThermalMass{1.1}, {337.0}, {0.01});
    const auto air = graph.channel("air", "K", 300.0);
    const auto out = graph.account("out", Quantity::energy);
    graph.exchange("film glows", "x", toy::Radiation{5e-8}, {film, air}, {{{film, out}}});
    graph.exchange("film to body", "x", toy::Conduction{10.0}, {film, body}, {{{film, body}}});
    house = graph.compile();
    line = line_of(house);
  }
  /// Where the film rests over this body: 10 (T - body) + 5e-8 (T^4 - 300^4) = 0, by Newton's method.
  static double rest_k(double body) {
    double t = body;
    for (int i = 0; i < 20; ++i)
      t -= (10.0 * (t - body) + 5e-8 * (std::pow(t, 4) - std::pow(300.0, 4))) / (10.0 + 2e-7 * t * t * t);
    return t;
  }
};

TEST(Stepper, DenseOutputOfAThinFilmStaysAtItsRest) {
  // The film relaxes within a fraction of any step: its own slope at a step's ends says nothing about the middle.
  const GlowingFilm problem;
  Stepper stepper(problem.house, {});
  HouseState state = start_of(problem.house);
  std::vector<double> amounts(2);
  Tick longest{0};
  stepper.advance(state, problem.line, 10_h);
  while (state.now < 10_h) {
    const Step& step = stepper.advance(state, problem.line, 10_h);
    if (step.begin < 60_s) continue;  // the film comes to rest
    longest = std::max(longest, step.end - step.begin);
    for (int part = 0; part <= 20; ++part) {
      step.amounts_at(Tick{step.begin.ms + (step.end.ms - step.begin.ms) * part / 20}, amounts.data());
      const double expected = GlowingFilm::rest_k(problem.body_k(amounts.data()));
      EXPECT_NEAR(problem.film_k(amounts.data()), expected, 0.02)
          << part << " at " << seconds(step.begin) << " to " << seconds(step.end);
    }
  }
  EXPECT_GT(longest, 10_min);
}

TEST(Stepper, AJumpInAChannelIsFollowedWithoutOvershoot) {
  Filmed problem(290.9);
  Stepper stepper(problem.house, {});
  HouseState state = start_of(problem.house);
  advance_to(stepper, state, problem.line, 1_h);
  problem.line.begin = 1_h;
  problem.line.value[0] = 320.0;
  const Step& step = stepper.advance(state, problem.line, 5_h);
  EXPECT_LE(step.end - step.begin, 6_s) << "a jump begins with a short step";
  advance_to(stepper, state, problem.line, 2_h);
  const double body = problem.body_k(state.amounts.data());
  EXPECT_NEAR(problem.film_k(state.amounts.data()), (320.0 + 10.0 * body) / 11.0, 0.01);
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
