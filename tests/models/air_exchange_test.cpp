// SPDX-License-Identifier: Apache-2.0
#include "models/air/air_exchange.hpp"

#include <gtest/gtest.h>

#include "models/air/moist_air.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

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
