// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>

#include "models/power/panel.hpp"

namespace noonhouse {
namespace {

constexpr double kZeroC = 273.15;

// Cell temperature from NOCT 50 degC at (air, sun): (30 degC, 1000 W/m2) 67.5; (20, 800) 50; (30, 700) 56.25;
// (40, 600) 62.5 degC, to 0.01 K. Ross 1976 / IEC 61215.
TEST(PanelPower, HasThePublishedCellTemperatures) {
  const std::array air{30.0, 20.0, 30.0, 40.0}, sun{1000.0, 800.0, 700.0, 600.0}, cell{67.5, 50.0, 56.25, 62.5};
  for (std::size_t i = 0; i < air.size(); ++i) {
    EXPECT_NEAR(noct_cell_k(50.0 + kZeroC, sun[i], air[i] + kZeroC) - kZeroC, cell[i], 0.01);
    // Read back from the derate too: 1 % of power to the kelvin.
    const double power = panel_power_w(1.0, 1.0, 0.01, 50.0 + kZeroC, sun[i], air[i] + kZeroC);
    EXPECT_NEAR(25.0 + (power / sun[i] - 1.0) / 0.01, cell[i], 0.01);
  }
}

// 900 W/m2, 20 degC, 5 m/s with u0 25 W/(m2 K) and u1 6.84 J/(m3 K): 35.203 degC, to 0.001 K. Faiman 2008.
TEST(PanelPower, HasThePublishedTemperatureInWind) {
  const PanelHeatLoss loss{25.0, 6.84};
  EXPECT_NEAR(wind_cell_k(loss, 900.0, 20.0 + kZeroC, 5.0) - kZeroC, 35.203, 0.001);
  EXPECT_NEAR(wind_cell_k(loss, 900.0, 20.0 + kZeroC, 0.0) - kZeroC, 20.0 + 900.0 / 25.0, 1e-9) << "still air";
  EXPECT_EQ(wind_cell_k(loss, 0.0, 293.0, 5.0), 293.0) << "in the dark it is as warm as the air";
  EXPECT_LT(wind_cell_k(loss, 900.0, 293.0, 10.0), wind_cell_k(loss, 900.0, 293.0, 1.0));
}

// The two forms agree on an open rack in the wind of 1 m/s for which NOCT is stated: NOCT 45 degC is 31.25 K at 1000
// W/m2, the heat loss 31.4 K. Within 1 K.
TEST(PanelPower, IsAsWarmByBothForms) {
  EXPECT_NEAR(noct_cell_k(45.0 + kZeroC, 1000.0, 300.0), wind_cell_k({}, 1000.0, 300.0, 1.0), 1.0);
}

// gamma -0.40 %/K, NOCT 45 degC: at (30 degC, 1000 W/m2) cells of 61.25 degC and factor 0.855; at (40 degC, 1000 W/m2)
// 71.25 degC and 0.815, to 0.002. IEC 61853's definition.
TEST(PanelPower, IsDeratedAsPublished) {
  EXPECT_NEAR(noct_cell_k(318.15, 1000.0, 303.15) - kZeroC, 61.25, 0.01);
  EXPECT_NEAR(noct_cell_k(318.15, 1000.0, 313.15) - kZeroC, 71.25, 0.01);
  EXPECT_NEAR(panel_power_w(1.0, 0.2, -0.004, 318.15, 1000.0, 303.15) / 200.0, 0.855, 0.002);
  EXPECT_NEAR(panel_power_w(1.0, 0.2, -0.004, 318.15, 1000.0, 313.15) / 200.0, 0.815, 0.002);
  EXPECT_EQ(derated_power_w(1.0, 0.2, -0.004, 1000.0, 298.15), 200.0) << "rated at 25 degC";
}

TEST(PanelPower, IsNothingInTheDarkAndNeverNegative) {
  EXPECT_EQ(panel_power_w(2.0, 0.2, -0.004, 318.15, 0.0, 273.15), 0.0);
  EXPECT_EQ(panel_power_w(2.0, 0.2, -0.03, 318.15, 1000.0, 333.15), 0.0);
}

TEST(PanelPower, LosesDirectLightToObstaclesAndAllLightToDirt) {
  EXPECT_EQ(usable_light_w_m2(700.0, 200.0, 1.0, 0.0), 900.0);
  EXPECT_EQ(usable_light_w_m2(700.0, 200.0, 0.0, 0.0), 200.0);
  EXPECT_NEAR(usable_light_w_m2(700.0, 200.0, 0.5, 0.1), 0.9 * 550.0, 1e-9);
  EXPECT_EQ(usable_light_w_m2(700.0, 200.0, 1.0, 1.0), 0.0);
}

// A controller that keeps the best voltage: 0.95 to 0.98 (from memory). One that only switches a panel with its best at
// 17.5 V onto a battery of 12.6 V hands on 72 %.
TEST(PanelPower, PassesItsController) {
  EXPECT_GE(kTrackingControllerEfficiency, 0.95);
  EXPECT_LE(kTrackingControllerEfficiency, 0.98);
  EXPECT_NEAR(switching_controller_efficiency(12.6, 17.5), 0.72, 1e-12);
  EXPECT_EQ(switching_controller_efficiency(20.0, 17.5), 1.0);
}

}  // namespace
}  // namespace noonhouse
