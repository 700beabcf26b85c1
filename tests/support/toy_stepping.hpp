// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "sim/core/index.hpp"
#include "sim/integrate/stepper.hpp"
#include "tests/support/toy_house.hpp"

/// What tests of the stepper share: fixed steps, and a problem that is nonlinear and driven in time.
namespace noonhouse::toy {

/// Steps of one length, whatever their error.
inline StepControl fixed_steps(Tick length) {
  StepControl control;
  control.tolerance = 1e9;
  control.restart = length;
  control.longest = length;
  return control;
}

inline HouseState start_of(const House& house) {
  return {Tick{0}, house.initial_amounts, std::vector<double>(at(house.fluxes), 0.0)};
}

inline ChannelLine line_of(const House& house) {
  return {Tick{0}, house.initial_channels, std::vector<double>(at(house.channels), 0.0)};
}

inline void advance_to(SteppingMethod& stepper, HouseState& state, const ChannelLine& line, Tick end) {
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
    graph.exchange("glow", "x", Radiation{4e-9}, {lump, shell}, {{{lump, shell}}});
    graph.exchange("shell glow", "x", Radiation{9e-9}, {shell, around}, {{{shell, out}}});
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

inline double distance(const std::vector<double>& a, const std::vector<double>& b, std::size_t n) {
  double sum = 0.0;
  for (std::size_t i = 0; i < n; ++i) sum += (a[i] - b[i]) * (a[i] - b[i]);
  return std::sqrt(sum);
}

}  // namespace noonhouse::toy
