// SPDX-License-Identifier: Apache-2.0
// Heat conduction into deep ground under a periodic surface, against the closed solution of Carslaw & Jaeger,
// Conduction of Heat in Solids, 2nd ed., section 2.6: T = A exp(-x/d) cos(w t - x/d), d = sqrt(2 a / w)
// (from memory; it solves dT/dt = a d2T/dx2 by substitution).
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "sim/integrate/stepper.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse {
namespace {

constexpr double kConductivity_w_mk = 1.2, kHeat_j_m3k = 2.0e6, kAmplitude_k = 10.0, kMean_k = 290.0;
constexpr double kOmega = 2.0 * std::numbers::pi / 86400.0;

double damping_depth_m() { return std::sqrt(2.0 * kConductivity_w_mk / kHeat_j_m3k / kOmega); }

/// Largest error [K] over the sixth day, at the layer centres down to one damping depth.
double slab_error_k(int layers, double depth_m) {
  HouseGraph graph;
  const double layer_m = depth_m / layers;
  const auto surface = graph.channel("surface", "K", kMean_k + kAmplitude_k);
  const auto ground = graph.account("ground", Quantity::energy);
  const auto exact = [&](double x, double t) {
    return kMean_k + kAmplitude_k * std::exp(-x / damping_depth_m()) * std::cos(kOmega * t - x / damping_depth_m());
  };
  std::vector<NodeId> nodes;
  for (int i = 0; i < layers; ++i)
    nodes.push_back(graph.node("layer " + std::to_string(i), ThermalMass{kHeat_j_m3k * layer_m},
                               {exact((i + 0.5) * layer_m, 0.0)}, {1e-4}));
  graph.exchange("surface", "x", toy::Conduction{2.0 * kConductivity_w_mk / layer_m}, {surface, nodes[0]},
                 {{{ground, nodes[0]}}});
  for (std::size_t i = 1; i < nodes.size(); ++i)
    graph.exchange("between " + std::to_string(i), "x", toy::Conduction{kConductivity_w_mk / layer_m},
                   {nodes[i - 1], nodes[i]}, {{{nodes[i - 1], nodes[i]}}});
  const House house = graph.compile();
  Stepper stepper(house, {});
  HouseState state{Tick{0}, house.initial_amounts, std::vector<double>(static_cast<std::size_t>(house.fluxes), 0.0)};
  double worst = 0.0;
  constexpr Tick kBreak = 5_min;
  while (state.now < kDay * 6) {
    const double t0 = seconds(state.now), t1 = t0 + seconds(kBreak);
    ChannelLine line{state.now, {exact(0.0, t0)}, {(exact(0.0, t1) - exact(0.0, t0)) / seconds(kBreak)}};
    const Tick end = state.now + kBreak;
    while (state.now < end) stepper.advance(state, line, end);
    if (state.now < kDay * 5) continue;
    for (int i = 0; (i + 0.5) * layer_m < damping_depth_m(); ++i) {
      const auto at = static_cast<std::size_t>(house.position(Input(nodes[static_cast<std::size_t>(i)])));
      const double temperature_k = state.amounts[at] / (kHeat_j_m3k * layer_m) + kEnergyZeroK;
      worst = std::max(worst, std::abs(temperature_k - exact((i + 0.5) * layer_m, t1)));
    }
  }
  return worst;
}

TEST(Slab, APeriodicSurfaceReachesEachDepthWithItsAmplitudeAndPhase) {
  const double depth = 8.0 * damping_depth_m();  // exp(-8) of the wave is left at the bottom, which is closed
  const double coarse = slab_error_k(32, depth), middle = slab_error_k(64, depth), fine = slab_error_k(128, depth);
  EXPECT_LT(fine, 0.005 * kAmplitude_k);
  EXPECT_GT(std::log2(coarse / middle), 1.0) << "first order in the grid or better";
  EXPECT_GT(std::log2(middle / fine), 1.0);
}

}  // namespace
}  // namespace noonhouse
