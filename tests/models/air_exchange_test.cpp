// SPDX-License-Identifier: Apache-2.0
#include "models/air/air_exchange.hpp"

#include <gtest/gtest.h>

#include "models/air/moist_air.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

double mixing_kg_s(const LayerMixing& law, const std::array<double, 5>& in) {
  Two q{};
  law.flux(in, q);
  return q[0] / (in[1] - in[3]);
}

TEST(LayerMixing, KeepsItsBackgroundWhereWarmAirLiesAbove) {
  const LayerMixing law{20.0, 1.2, 1.15, 0.002};
  for (double above_k : {0.1, 1.0, 10.0})
    EXPECT_NEAR(mixing_kg_s(law, {300.0, 0.0101, 300.0 + above_k, 0.0100, 0.0}), 1.15 * 20.0 * 0.002, 1e-9);
}

TEST(LayerMixing, OverturnsAtTheFreeFallVelocityWhereWarmAirLiesBelow) {
  const LayerMixing law{20.0, 1.2, 1.15, 0.0};
  const double virtual_k = 3.0 + 0.608 * (303.0 * 0.0101 - 300.0 * 0.0100);
  const double free_fall = std::sqrt(kGravity * 1.2 * virtual_k / (300.0 * (1.0 + 0.608 * 0.0100)));
  // The softened root is 1 % less at 3 K.
  EXPECT_NEAR(mixing_kg_s(law, {303.0, 0.0101, 300.0, 0.0100, 0.0}), 1.15 * 20.0 * free_fall, 0.011 * 1.15 * 20 * 2.0);
}

TEST(LayerMixing, IsLiftedByMoistureAloneAndStirredByFans) {
  const LayerMixing law{20.0, 1.2, 1.15, 0.002};
  const double still = mixing_kg_s(law, {300.0, 0.008, 300.0, 0.020, 0.0});
  EXPECT_NEAR(still, 1.15 * 20.0 * 0.002, 1e-9) << "drier air below is heavier";
  EXPECT_GT(mixing_kg_s(law, {300.0, 0.020, 300.0, 0.008, 0.0}), 10.0 * still) << "moist air below is lighter";
  EXPECT_NEAR(mixing_kg_s(law, {300.0, 0.008, 300.0, 0.020, 0.1}), 1.15 * 20.0 * 0.102, 1e-9);
}

TEST(FogSettling, TakesTheExcessWithItsTimeConstantAndLeavesTheLatentHeatInTheAir) {
  const MoistAir air{30.0};
  const FogSettling law{30.0, 101325.0, 60.0};
  const double saturated = saturation_humidity_ratio_fast(295.0, 101325.0);
  Two q{};
  law.flux(std::array{295.0, saturated}, q);
  EXPECT_EQ(q[0], 0.0);
  law.flux(std::array{295.0, saturated + 0.002}, q);
  EXPECT_NEAR(q[0], 30.0 * 0.002 / 60.0, 1e-12);
  Two amounts{}, after{};
  air.amounts({295.0, saturated + 0.002}, amounts);
  air.potentials(Two{amounts[0] - 10.0 * q[1], amounts[1] - 10.0 * q[0]}, after);
  const double condensed = 10.0 * q[0] / 30.0;
  const double heat = kDryAirHeat + kVapourHeat * after[1];
  EXPECT_NEAR(after[0] - 295.0, condensed * (vapour_enthalpy(295.0) - liquid_enthalpy(295.0)) / heat, 1e-9);
  EXPECT_GT(after[0], 295.0);
}

}  // namespace
}  // namespace noonhouse
