// SPDX-License-Identifier: Apache-2.0
// Heat in the ground by the models' own laws in the engine: a chain of lumps joined by conductances.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <memory>

#include "models/envelope/heat_links.hpp"
#include "models/properties/constants.hpp"
#include "sim/graph/house_graph.hpp"
#include "sim/integrate/stepper.hpp"

namespace noonhouse {
namespace {

/// Equal layers of ground under a surface whose temperature is given; closed at the bottom. One square metre.
class Ground {
 public:
  Ground(double diffusivity_m2_s, double layer_m, int layers, const std::function<double(double)>& start_k)
      : conductivity_w_m_k_(diffusivity_m2_s * kHeat), layer_m_(layer_m) {
    HouseGraph graph;
    const ChannelId surface = graph.channel("surface", "K", 0.0);
    const AccountId outside = graph.account("outside", Quantity::energy);
    for (int i = 0; i < layers; ++i)
      nodes_.push_back(graph.node("layer " + std::to_string(i), ThermalMass{kHeat * layer_m},
                                  {start_k((i + 0.5) * layer_m)}, {1e-4}));
    graph.exchange("surface", "ground", Conductance{2.0 * conductivity_w_m_k_ / layer_m}, {surface, nodes_[0]},
                   {{{outside, nodes_[0]}}});
    for (std::size_t i = 1; i < nodes_.size(); ++i)
      graph.exchange("from " + std::to_string(i), "ground", Conductance{conductivity_w_m_k_ / layer_m},
                     {nodes_[i - 1], nodes_[i]}, {{{nodes_[i - 1], nodes_[i]}}});
    house_ = graph.compile();
    state_ = {Tick{0}, house_.initial_amounts, std::vector<double>(static_cast<std::size_t>(house_.fluxes), 0.0)};
    stepper_ = std::make_unique<Stepper>(house_, StepControl{});
  }
  /// Carries on to an instant under a surface temperature that runs straight from now to then.
  void go(Tick until, double from_k, double to_k) {
    const ChannelLine line{state_.now, {from_k}, {(to_k - from_k) / seconds(until - state_.now)}};
    while (state_.now < until) stepper_->advance(state_, line, until);
  }
  /// Temperature at a depth [K], straight between the layers' middles.
  double at(double depth_m) const {
    const double place = depth_m / layer_m_ - 0.5;
    const auto i = static_cast<std::size_t>(place);
    const double share = place - static_cast<double>(i);
    return (1.0 - share) * layer_k(i) + share * layer_k(i + 1);
  }

 private:
  static constexpr double kHeat = 2.0e6;  ///< [J/(m3 K)]
  double layer_k(std::size_t i) const {
    const auto state = static_cast<std::size_t>(house_.position(Input(nodes_[i])));
    return state_.amounts[state] / (kHeat * layer_m_) + kEnergyZeroK;
  }
  double conductivity_w_m_k_, layer_m_;
  House house_;
  std::vector<NodeId> nodes_;
  HouseState state_;
  std::unique_ptr<Stepper> stepper_;
};

// A step of the surface: fraction erfc(x / (2 sqrt(a t))), Carslaw & Jaeger 1959, sec. 2.4. For a 0.5e-6 m2/s:
// (0.05 m, 1 h) 0.4047; (0.10 m, 6 h) 0.4962; (0.30 m, 24 h) 0.3074; to 0.005 (worked out apart from this program).
TEST(Ground, AnswersAStepAsPublishedAndBetterOnAFinerGrid) {
  struct Row {
    double depth_m;
    Tick when;
    double fraction;
  };
  const auto worst = [](double layer_m) {
    double out = 0.0;
    for (const Row& row : {Row{0.05, 1_h, 0.4047}, Row{0.10, 6_h, 0.4962}, Row{0.30, 24_h, 0.3074}}) {
      Ground ground(0.5e-6, layer_m, static_cast<int>(2.0 / layer_m), [](double) { return 290.0; });
      ground.go(row.when, 300.0, 300.0);
      const double exact = std::erfc(row.depth_m / (2.0 * std::sqrt(0.5e-6 * seconds(row.when))));
      EXPECT_NEAR(exact, row.fraction, 0.0001);
      out = std::max(out, std::abs((ground.at(row.depth_m) - 290.0) / 10.0 - exact));
    }
    return out;
  };
  const double coarse = worst(0.025), fine = worst(0.0125);
  EXPECT_LT(fine, 0.005);
  EXPECT_GT(coarse / fine, 2.0) << "first order in the grid or better";
}

// Damping depth of a day's wave: 0.072; 0.165; 0.052; 0.111; 0.057 m in dry sand, moist sand, dry clay, wet clay, wet
// peat; d = sqrt(a P / pi) with the diffusivities of de Vries 1963, 1 %. At d the wave is 1/e of the surface's and
// 1 rad late.
TEST(Ground, DampsADaysWaveByItsDampingDepth) {
  struct Soil {
    double diffusivity_m2_s, depth_m;
  };
  for (const Soil& soil :
       {Soil{0.19e-6, 0.072}, Soil{0.99e-6, 0.165}, Soil{0.10e-6, 0.052}, Soil{0.45e-6, 0.111}, Soil{0.12e-6, 0.057}}) {
    EXPECT_NEAR(std::sqrt(soil.diffusivity_m2_s * 86400.0 / kPi), soil.depth_m, 0.01 * soil.depth_m);
    const double omega = 2.0 * kPi / 86400.0, d = soil.depth_m;
    const auto wave = [&](double t) { return 290.0 + 10.0 * std::cos(omega * t); };
    Ground ground(soil.diffusivity_m2_s, d / 20.0, 160,
                  [&](double x) { return 290.0 + 10.0 * std::exp(-x / d) * std::cos(-x / d); });
    double in_phase = 0.0, behind = 0.0;
    for (Tick t{0}; t < kDay * 2; t = t + 10_min) {
      ground.go(t + 10_min, wave(seconds(t)), wave(seconds(t + 10_min)));
      if (t < kDay) continue;
      const double now = seconds(t + 10_min), value = ground.at(d) - 290.0;
      in_phase += value * std::cos(omega * now) * 2.0 / 144.0;
      behind += value * std::sin(omega * now) * 2.0 / 144.0;
    }
    EXPECT_NEAR(std::hypot(in_phase, behind), 10.0 * std::exp(-1.0), 0.01 * 3.68) << soil.depth_m;
    EXPECT_NEAR(std::atan2(behind, in_phase), 1.0, 0.01) << soil.depth_m;
  }
}

}  // namespace
}  // namespace noonhouse
