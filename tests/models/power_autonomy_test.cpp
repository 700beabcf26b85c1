// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/power/autonomy.hpp"

namespace noonhouse {
namespace {

constexpr double kWh = 3600.0, kDayS = 86400.0;  // a watt-hour [J]

// 156 Wh a day, 3 days, depth 0.8, efficiency 0.9: a battery of 650 Wh; 4.5 hours of full sun, system 0.75: an array of
// 46.2 W, to 0.5 %. Method of IEEE 1013 and IEEE 1562.
TEST(Sizing, IsAsTheStandardsReckon) {
  EXPECT_NEAR(battery_size_j(156.0 * kWh, 3.0, 0.8, 0.9) / kWh, 650.0, 0.005 * 650.0);
  EXPECT_NEAR(array_size_w(156.0 * kWh, 4.5, 0.75), 46.2, 0.005 * 46.2);
}

// The battery so sized carries its loads as long as it was sized for.
TEST(DaysWithoutSun, AreThoseThatTheBatteryWasSizedFor) {
  const double size_j = battery_size_j(156.0 * kWh, 3.0, 0.8, 0.9);
  EXPECT_NEAR(days_without_sun(size_j, 0.2 * size_j, {156.0 * kWh, 0.0, 0.9, 0.0}), 3.0, 1e-12);
  EXPECT_NEAR(days_without_sun(size_j, 0.2 * size_j, {0.0, 156.0 / 24.0, 0.9, 0.0}), 3.0, 1e-12) << "all standby";
  EXPECT_NEAR(days_without_sun(size_j, 0.2 * size_j, {108.0 * kWh, 2.0, 0.9, 0.0}), 3.0, 1e-12) << "some of each";
}

// Against small steps of dQ/dt = -q - r Q.
TEST(DaysWithoutSun, CountsSelfDischarge) {
  const SunlessUse use{50e3, 0.5, 0.9, 4e-7};
  double charge_j = 2.3e6, s = 0.0;
  for (; charge_j > 0.5e6; s += 10.0) {
    const double middle_j = charge_j - 5.0 * ((50e3 / kDayS + 0.5) / 0.9 + 4e-7 * charge_j);
    charge_j -= 10.0 * ((50e3 / kDayS + 0.5) / 0.9 + 4e-7 * middle_j);
  }
  EXPECT_NEAR(days_without_sun(2.3e6, 0.5e6, use), s / kDayS, 10.0 / kDayS);
}

TEST(DaysWithoutSun, HasItsLimits) {
  EXPECT_EQ(days_without_sun(1e6, 1e6, {1e5, 1.0, 0.9, 0.0}), 0.0);
  EXPECT_EQ(days_without_sun(0.5e6, 1e6, {1e5, 1.0, 0.9, 0.0}), 0.0) << "below already";
  EXPECT_TRUE(std::isinf(days_without_sun(1e6, 0.0, {})));
  // Nothing but self-discharge: half is gone after ln 2 / r.
  EXPECT_NEAR(days_without_sun(1e6, 0.5e6, {0.0, 0.0, 1.0, 1e-7}), std::log(2.0) / 1e-7 / kDayS, 1e-9);
  const double none = days_without_sun(2e6, 1e6, {1e5, 1.0, 0.9, 0.0});
  for (double rate : {1e-30, 1e-20, 1e-14}) EXPECT_NEAR(days_without_sun(2e6, 1e6, {1e5, 1.0, 0.9, rate}), none, 1e-6);
}

}  // namespace
}  // namespace noonhouse
