// SPDX-License-Identifier: Apache-2.0
// Dense output: inside a step, across a cut, and for parts much faster than the step.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::advance_to;
using toy::distance;
using toy::fixed_steps;
using toy::Glowing;
using toy::line_of;
using toy::start_of;

TEST(DenseOutput, CutPutsTheStateOnTheDenseOutputAndGoesOnFromThere) {
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

TEST(DenseOutput, InsideAStepConvergesWithTheFourthPower) {
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

TEST(DenseOutput, AThinFilmDoesNotForceShortSteps) {
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

TEST(DenseOutput, OfAThinFilmStaysAtItsRest) {
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

TEST(DenseOutput, AJumpInAChannelIsFollowedWithoutOvershoot) {
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

}  // namespace
}  // namespace noonhouse
