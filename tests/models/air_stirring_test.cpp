// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/air/droplet_sizes.hpp"
#include "models/air/stirring.hpp"

namespace noonhouse {
namespace {

// On paper: 4 bar drive water at sqrt(2 * 4e5 / 1000) = 28.28 m/s; 0.02 kg/s of it carry 8 W.
TEST(Stirring, TakesFromASprayWhatItsPumpPutIn) {
  const double speed = nozzle_jet_speed_m_s(4e5, 1000.0, 1.0);
  EXPECT_NEAR(speed, 28.28, 0.005);
  EXPECT_NEAR(jet_power_w(0.02, speed), 8.0, 1e-12);
  EXPECT_NEAR(jet_power_w(0.02, speed), hydraulic_power_w(4e5, 0.02 / 1000.0), 1e-12) << "without friction all of it";
  EXPECT_NEAR(jet_power_w(0.02, nozzle_jet_speed_m_s(4e5, 1000.0, 0.9)), 0.81 * 8.0, 1e-12);
  EXPECT_EQ(nozzle_jet_speed_m_s(0.0, 1000.0, 0.9), 0.0);
  EXPECT_EQ(nozzle_jet_speed_m_s(-1e5, 1000.0, 0.9), 0.0);
  EXPECT_EQ(jet_power_w(0.0, 30.0), 0.0);
  EXPECT_EQ(jet_power_w(0.5, 0.0), 0.0);
}

// A circulation fan on paper: 0.3 kg/s of air at 4 m/s, 2.4 W; in 72 kg of air with eddies of 0.6 m: (0.02)^(1/3) =
// 0.271 m/s.
TEST(Stirring, IsThatOfAFanOnPaper) {
  EXPECT_NEAR(jet_power_w(0.3, 4.0), 2.4, 1e-12);
  EXPECT_NEAR(turbulent_velocity_m_s(2.4, 0.6, 72.0), 0.271, 0.0005);
}

// What is put in is what the eddies of that size lose: M u^3 / L.
TEST(Stirring, DissipatesThePower) {
  for (const double power : {1e-6, 0.1, 8.0, 400.0}) {
    const double u = turbulent_velocity_m_s(power, 0.5, 60.0);
    EXPECT_NEAR(60.0 * u * u * u / 0.5, power, 1e-12 * power);
  }
  EXPECT_EQ(turbulent_velocity_m_s(0.0, 0.5, 60.0), 0.0);
}

TEST(Stirring, GoesByTheThirdRoot) {
  const double once = turbulent_velocity_m_s(5.0, 0.5, 60.0);
  EXPECT_NEAR(turbulent_velocity_m_s(40.0, 0.5, 60.0), 2.0 * once, 1e-12);
  EXPECT_NEAR(turbulent_velocity_m_s(5.0, 4.0, 60.0), 2.0 * once, 1e-12);
  EXPECT_NEAR(turbulent_velocity_m_s(5.0, 0.5, 480.0), 0.5 * once, 1e-12);
}

}  // namespace
}  // namespace noonhouse
