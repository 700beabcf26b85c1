// SPDX-License-Identifier: Apache-2.0
// Dense output of a part that becomes fast within the step, so that the matrix of the step's beginning does not know
// it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::fixed_steps;
using toy::line_of;
using toy::start_of;

/// q = G (a - b) with G [W/K] told by a channel.
struct ToldConduction {
  static constexpr std::string_view kName = "told conduction";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    q[0] = in[2] * (in[0] - in[1]);
  }
};

/// A thing of 1000 J/K in air of 300 K, held by 0.1 W/K at first and by 40 W/K at the end of 100 s; beside it a
/// slow body that it warms.
struct Gripped {
  static constexpr double kUnit = 0.01;  ///< [K]
  House house;
  NodeId thing, body;
  ChannelLine line;
  Gripped() {
    HouseGraph graph;
    thing = graph.node("thing", ThermalMass{1000.0}, {290.0}, {kUnit});
    body = graph.node("body", ThermalMass{1e6}, {280.0}, {kUnit});
    const auto air = graph.channel("air", "K", 300.0), grip = graph.channel("grip", "W/K", 0.1);
    const auto out = graph.account("out", Quantity::energy);
    graph.exchange("thing to air", "x", ToldConduction{}, {thing, air, grip}, {{{thing, out}}});
    graph.exchange("thing to body", "x", toy::Conduction{5.0}, {thing, body}, {{{thing, body}}});
    house = graph.compile();
    line = line_of(house);
    line.slope[1] = 0.4;
  }
};

// In truth the thing goes to the air's temperature without turning. What is read inside the step may bulge beyond both
// ends by half of what the step changes, or by five units of error; energy stays what the fluxes carried.
TEST(DenseOutput, DoesNotBulgeWhereAPartBecomesFast) {
  const Gripped problem;
  Stepper stepper(problem.house, fixed_steps(100_s));
  HouseState state = start_of(problem.house);
  const std::vector<double> begin(state.amounts.begin(), state.amounts.begin() + 2);
  stepper.advance(state, problem.line, 100_s);
  const Step& step = stepper.last_step();
  const auto thing = static_cast<std::size_t>(problem.house.position(End(problem.thing)));
  const std::size_t body = 1 - thing;
  const auto to_air = static_cast<std::size_t>(problem.house.exchanges[0].first_flux);
  const auto to_body = static_cast<std::size_t>(problem.house.exchanges[1].first_flux);
  const auto [low, high] = std::minmax(step.amounts0[thing], step.amounts1[thing]);
  const double room = 0.5 * (high - low) + 5.0 * problem.house.amount_tolerance[thing];
  for (int part = 1; part < 20; ++part) {
    const Tick when{step.end.ms * part / 20};
    std::vector<double> amounts(2), carried(2);
    step.amounts_at(when, amounts.data());
    step.carried_at(when, carried.data());
    EXPECT_GT(amounts[thing], low - room) << part;
    EXPECT_LT(amounts[thing], high + room) << part;
    const double rounding = 1e-9 * (std::abs(begin[0]) + std::abs(begin[1]));
    EXPECT_NEAR(amounts[thing] - begin[thing], -carried[to_air] - carried[to_body], rounding) << part;
    EXPECT_NEAR(amounts[body] - begin[body], carried[to_body], rounding) << part;
  }
}

}  // namespace
}  // namespace noonhouse
