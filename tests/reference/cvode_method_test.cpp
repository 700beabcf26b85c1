// SPDX-License-Identifier: Apache-2.0
// The independent method must itself be right before it judges another: one lump behind a conductance, whose
// boundary ramps, has a closed form.
#include "tests/support/cvode_method.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>

#include "sim/core/errors.hpp"
#include "sim/graph/house_graph.hpp"
#include "tests/support/synthetic_laws.hpp"

namespace noonhouse {
namespace {

constexpr double kHeatCapacity = 2.0e5, kConductance = 100.0, kTau = kHeatCapacity / kConductance;
constexpr double kStartK = 300.0, kBoundaryK = 290.0, kSlopeKS = 2e-3, kToleranceK = 1e-3;

/// C dT/dt = UA (b + s t - T), solved by T = b + s (t - tau) + (T0 - b + s tau) exp(-t / tau).
double closed_form_k(double t) {
  return kBoundaryK + kSlopeKS * (t - kTau) + (kStartK - kBoundaryK + kSlopeKS * kTau) * std::exp(-t / kTau);
}

template <class Law>
House lump(const Law& law) {
  HouseGraph graph;
  const NodeId node = graph.node("lump", ThermalMass{kHeatCapacity}, {kStartK}, {kToleranceK});
  const AccountId outside = graph.account("outside", Quantity::energy);
  const ChannelId boundary = graph.channel("boundary", "K", kBoundaryK);
  graph.exchange("wall", "conduction", law, {node, boundary}, {Ends{node, outside}});
  return graph.compile();
}

struct Lump {
  House house = lump(synthetic::Conduction{kConductance});
  ChannelLine line{Tick{0}, {kBoundaryK}, {kSlopeKS}};
  HouseState state{Tick{0}, house.initial_amounts, {0.0}};
  double temperature_k() const { return state.amounts[0] / kHeatCapacity + kEnergyZeroK; }
  /// Steps until `limit`; `look` sees every step.
  template <class Look>
  void go(CvodeMethod& method, Tick limit, Look&& look) {
    while (state.now < limit) look(method.advance(state, line, limit));
  }
  void go(CvodeMethod& method, Tick limit) {
    go(method, limit, [](const Step&) {});
  }
};

TEST(CvodeMethod, TheReferenceSettingsReachTheClosedForm) {
  Lump lump;
  CvodeMethod method(lump.house, CvodeSettings::reference());
  for (Tick hour = 1_h; hour <= 6_h; hour = hour + 1_h) {
    lump.go(method, hour);
    EXPECT_EQ(lump.state.now, hour);
    EXPECT_NEAR(lump.temperature_k(), closed_form_k(seconds(hour)), 1e-6);
  }
}

TEST(CvodeMethod, StepsJoinOnWholeTicksAndTheDenseOutputFollowsTheClosedForm) {
  Lump lump;
  CvodeMethod method(lump.house, {.carry = false});
  Tick last{0};
  double worst = 0.0;
  lump.go(method, 3_h, [&](const Step& step) {
    EXPECT_EQ(step.begin, last);
    EXPECT_GT(step.end, step.begin);
    EXPECT_EQ(step.end, lump.state.now);
    last = step.end;
    for (int i = 0; i <= 8; ++i) {
      const Tick when{step.begin.ms + (step.end - step.begin).ms * i / 8};
      double amount = 0.0;
      step.amounts_at(when, &amount);
      worst = std::max(worst, std::abs(amount / kHeatCapacity + kEnergyZeroK - closed_form_k(seconds(when))));
    }
  });
  EXPECT_EQ(last, 3_h);
  // Local errors of one tolerance a step add up over the lump's memory: a handful of them.
  EXPECT_LT(worst, 10.0 * kToleranceK);
}

TEST(CvodeMethod, ATighterToleranceCostsStepsAndGainsAccuracy) {
  const auto error_and_steps = [](double factor) {
    Lump lump;
    CvodeMethod method(lump.house, {.absolute_factor = factor});
    lump.go(method, 2_h);
    return std::pair(std::abs(lump.temperature_k() - closed_form_k(7200.0)), method.steps());
  };
  const auto [loose_error, loose_steps] = error_and_steps(1.0);
  const auto [tight_error, tight_steps] = error_and_steps(1e-4);
  EXPECT_LT(tight_error, 0.01 * loose_error);
  EXPECT_GT(tight_steps, 2 * loose_steps);
}

TEST(CvodeMethod, WhatTheFluxCarriesClosesTheBalanceOfNodeAndAccount) {
  Lump lump;
  const double at_start = lump.state.amounts[0];
  CvodeMethod method(lump.house, CvodeSettings::reference());
  lump.go(method, 5_h);
  EXPECT_NEAR(at_start - lump.state.carried[0], lump.state.amounts[0], 1e-6 * kHeatCapacity);
  EXPECT_DOUBLE_EQ(lump.state.amounts[1], lump.state.carried[0]);
}

TEST(CvodeMethod, ACutPutsStateAndAccountBackOntoTheDenseOutputAndTheRunGoesOnFromThere) {
  Lump lump;
  CvodeMethod method(lump.house, CvodeSettings::reference());
  lump.go(method, 1_h);
  const Step step = method.advance(lump.state, lump.line, 2_h);
  const Tick when{step.begin.ms + (step.end - step.begin).ms / 3};
  method.cut(lump.state, when);
  EXPECT_EQ(lump.state.now, when);
  EXPECT_NEAR(lump.temperature_k(), closed_form_k(seconds(when)), 1e-6);
  EXPECT_NEAR(lump.state.amounts[1], lump.house.initial_amounts[0] - lump.state.amounts[0], 1e-6 * kHeatCapacity);
  lump.go(method, 2_h);
  EXPECT_NEAR(lump.temperature_k(), closed_form_k(7200.0), 1e-6);
}

TEST(CvodeMethod, AJumpForgetsTheHistoryAndABendDoesSoOnlyWhenAsked) {
  for (bool at_breaks : {false, true}) {
    Lump lump;
    CvodeMethod method(lump.house, {.new_start_at_breaks = at_breaks});
    lump.go(method, 1_h);
    EXPECT_EQ(method.new_starts(), 1);
    lump.line = {1_h, {kBoundaryK + kSlopeKS * 3600.0}, {-kSlopeKS}};  // a bend
    lump.go(method, 2_h);
    EXPECT_EQ(method.new_starts(), at_breaks ? 2 : 1);
    lump.line = {2_h, {kBoundaryK + 5.0}, {-kSlopeKS}};  // a jump
    lump.go(method, 3_h);
    EXPECT_EQ(method.new_starts(), at_breaks ? 3 : 2);
  }
}

TEST(CvodeMethod, AStateChangedFromOutsideCountsAfterRestart) {
  Lump lump;
  CvodeMethod method(lump.house, CvodeSettings::reference());
  lump.go(method, 1_h);
  // Back to the start at once: with the ramp's value then, the closed form begins again.
  lump.state.amounts[0] = lump.house.initial_amounts[0];
  lump.line = {1_h, {kBoundaryK}, {kSlopeKS}};
  method.restart();
  lump.go(method, 2_h);
  EXPECT_NEAR(lump.temperature_k(), closed_form_k(3600.0), 1e-6);
}

/// Conduction that has no value above its limit.
struct Breaking {
  static constexpr std::string_view kName = "breaking";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    using std::sqrt;
    q[0] = -1e4 * sqrt(kStartK + 1.0 - in[0]);
  }
};

TEST(CvodeMethod, AStateThatCannotGoOnIsNamed) {
  const House house = lump(Breaking{});
  CvodeMethod method(house, {});
  HouseState state{Tick{0}, house.initial_amounts, {0.0}};
  state.amounts[0] += 2.0 * kHeatCapacity;  // beyond the law's reach from the beginning
  const ChannelLine line{Tick{0}, {kBoundaryK}, {0.0}};
  try {
    while (state.now < 1_h) method.advance(state, line, 1_h);
    FAIL() << "went on with a flux that has no value";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::step_collapse);
    EXPECT_NE(std::string(error.what()).find("lump, energy"), std::string::npos) << error.what();
  }
}

}  // namespace
}  // namespace noonhouse
