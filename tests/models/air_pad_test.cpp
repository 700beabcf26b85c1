// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/pad.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/wet_bulb_fast.hpp"
#include "tests/support/moist_air.hpp"

namespace noonhouse {
namespace {

WetPad pad_of(double thickness_m) {
  WetPad pad;
  pad.thickness_m = thickness_m;
  return pad;
}

// ASABE EP406's definition of efficiency (from memory), 0.80, at 101325 Pa; wet bulbs and outlets worked out apart from
// this program. Tolerance 0.1 K.
TEST(PadOutlet, IsTheDefinitionOfItsEfficiency) {
  struct Row {
    double celsius, share, wet_bulb, outlet;
  };
  for (const Row& row : {Row{38, 0.20, 20.77, 24.2}, Row{35, 0.30, 21.52, 24.2}, Row{40, 0.15, 20.36, 24.3},
                         Row{32, 0.60, 25.55, 26.8}}) {
    const double t = row.celsius + kZeroCelsius, w = humidity_at(t, row.share);
    const double bulb = wet_bulb_k(t, w, kStandardPressure);
    EXPECT_NEAR(bulb - kZeroCelsius, row.wet_bulb, 0.1);
    EXPECT_NEAR(pad_outlet(t, w, kStandardPressure, 0.80, bulb).temperature_k - kZeroCelsius, row.outlet, 0.1)
        << row.celsius;
  }
}

// The search knows ice, the form for inner loops does not: compared wherever the search ends above freezing. 0.001 K is
// what the header of the latter states.
TEST(PadOutlet, IsTheSameInTheFormForInnerLoops) {
  int compared = 0;
  for (const double pressure : {101325.0, 83000.0}) {
    for (double celsius = 0.0; celsius < 60.5; celsius += 2.0) {
      for (double share = 0.0; share < 1.001; share += 0.05) {
        const double t = celsius + kZeroCelsius;
        const double w = humidity_ratio(share * saturation_pressure_pa(t), pressure);
        const double end = saturated_by_water_k(t, w, pressure, 288.15);
        if (end < 273.2) continue;
        EXPECT_NEAR(saturated_by_water_fast_k(t, w, 288.15, pressure), end, 0.001) << celsius << " " << share;
        ++compared;
      }
    }
  }
  EXPECT_GT(compared, 900);
}

TEST(PadOutlet, EndsAtTheThermodynamicWetBulbForWaterOfThatTemperature) {
  for (const double celsius : {5.0, 20.0, 45.0}) {
    const double t = celsius + kZeroCelsius, w = humidity_at(t, 0.6), bulb = wet_bulb_k(t, w, kStandardPressure);
    EXPECT_NEAR(saturated_by_water_k(t, w, kStandardPressure, bulb), bulb, 1e-8);
  }
  const double t = 311.15, w = humidity_at(t, 0.2), bulb = wet_bulb_k(t, w, kStandardPressure);
  EXPECT_NEAR(saturated_by_water_k(t, w, kStandardPressure, bulb + 20.0) - bulb, 0.2, 0.05) << "as documented";
}

TEST(PadOutlet, KeepsEnergyAndWater) {
  for (const double water_k : {283.15, 298.15, 318.15}) {
    for (const double efficiency : {0.0, 0.3, 0.8, 1.0}) {
      const double t = 311.15, w = humidity_at(t, 0.25);
      const PadOutlet out = pad_outlet(t, w, kStandardPressure, efficiency, water_k);
      EXPECT_NEAR(out.humidity_ratio - w, out.water_per_dry_air, 1e-15);
      EXPECT_NEAR(moist_air_enthalpy(out.temperature_k, out.humidity_ratio),
                  moist_air_enthalpy(t, w) + out.water_per_dry_air * liquid_enthalpy(water_k), 1e-7);
    }
  }
}

// Full efficiency saturates the air, less never does, and every bit more of it cools and moistens.
TEST(PadOutlet, ComesToSaturationButNeverBeyond) {
  for (const double celsius : {2.0, 15.0, 30.0, 45.0}) {
    for (const double share : {0.02, 0.5, 0.95, 0.9999}) {
      for (const double water_k : {275.15, 300.15, 350.15}) {
        const double t = celsius + kZeroCelsius, w = humidity_at(t, share);
        double before = share;
        for (double efficiency = 0.1; efficiency < 1.05; efficiency += 0.1) {
          const PadOutlet out = pad_outlet(t, w, kStandardPressure, std::fmin(efficiency, 1.0), water_k);
          const double reached = relative_humidity(out.temperature_k, out.humidity_ratio, kStandardPressure);
          EXPECT_GT(reached, before);
          EXPECT_LE(reached, 1.0 + 1e-9) << celsius << " " << share << " " << water_k << " " << efficiency;
          EXPECT_GT(out.water_per_dry_air, 0.0);
          before = reached;
        }
        EXPECT_NEAR(before, 1.0, 1e-9);
      }
    }
  }
}

TEST(PadOutlet, LeavesSaturatedAirAsItIs) {
  for (const double share : {1.0, 1.05}) {
    const double t = 298.15, w = humidity_at(t, share) * (1.0 + 1e-12);
    const PadOutlet out = pad_outlet(t, w, kStandardPressure, 0.9, 290.0);
    EXPECT_EQ(out.temperature_k, t);
    EXPECT_EQ(saturated_by_water_k(t, w, kStandardPressure, 290.0), t);
    EXPECT_EQ(out.humidity_ratio, w);
    EXPECT_EQ(out.water_per_dry_air, 0.0);
  }
  const PadOutlet idle = pad_outlet(308.15, 0.01, kStandardPressure, 0.0, 290.0);
  EXPECT_EQ(idle.temperature_k, 308.15);
  EXPECT_EQ(idle.water_per_dry_air, 0.0);
}

// Franco, Valera, Madueno & Pena 2010, Trans. ASABE 53, 565, abstract: cellulose pads at 1 to 1.5 m/s have efficiencies
// of 0.64 to 0.70, lose 3.9 to 11.25 Pa and evaporate 1.8 to 2.62 kg/(h m2) for every K by which they cool the air. Of
// several makes and flows of water, so in the middle of the speeds no tolerance is due. Efficiency is not fitted to it.
TEST(WetPad, IsWithinTheBandsThatPadsMeasured) {
  const WetPad pad = pad_of(0.1);
  const double t = 303.15, w = humidity_at(t, 0.4), speed = 1.25;
  const double efficiency = pad_efficiency(pad, speed, t, kStandardPressure);
  EXPECT_GE(efficiency, 0.64);
  EXPECT_LE(efficiency, 0.70);
  for (const double v : {1.0, 1.25, 1.5}) {
    EXPECT_GE(pad_pressure_drop_pa(pad, v, t, kStandardPressure), 3.9);
    EXPECT_LE(pad_pressure_drop_pa(pad, v, t, kStandardPressure), 11.25);
  }
  const PadOutlet out = pad_outlet(t, w, kStandardPressure, efficiency, wet_bulb_k(t, w, kStandardPressure));
  const double per_k = 3600.0 * pad_evaporation_kg_s(out, speed, t, w, kStandardPressure) / (t - out.temperature_k);
  EXPECT_GE(per_k, 1.8);
  EXPECT_LE(per_k, 2.62);
}

// On paper, dry air of 1.2041 kg/m3 and 1.506e-5 m2/s at 20 degC: 2 m/s, 0.1 m, 370 m2/m3. l = 2.703 mm, Re 358.9, Nu =
// 0.1 * 0.6484 * 110.6 * 0.893 = 6.41; k 0.02568: h = 60.9; NTU = 60.9 * 37 / (1.2041 * 2 * 1006) = 0.930; eta 0.605.
TEST(WetPad, IsTheLawWorkedOnPaper) {
  EXPECT_NEAR(pad_efficiency(pad_of(0.1), 2.0, 293.15, kStandardPressure), 0.605, 0.003);
}

// NTU goes by v^-0.2 and L^0.88.
TEST(WetPad, FollowsThePowersOfTheLaw) {
  const auto units = [](double v, double l) {
    return -std::log(1.0 - pad_efficiency(pad_of(l), v, 303.15, kStandardPressure));
  };
  EXPECT_NEAR(units(3.2, 0.1) / units(0.1, 0.1), 0.5, 1e-9);
  EXPECT_NEAR(units(1.0, 0.2) / units(1.0, 0.1), std::exp2(0.88), 1e-9);
}

TEST(WetPad, IsPerfectInStillAirAndNothingWithoutThickness) {
  EXPECT_EQ(pad_efficiency(pad_of(0.1), 0.0, 303.15, kStandardPressure), 1.0);
  EXPECT_EQ(pad_efficiency(pad_of(0.0), 1.0, 303.15, kStandardPressure), 0.0);
  EXPECT_NEAR(pad_efficiency(pad_of(1e-9), 1.0, 303.15, kStandardPressure), 0.0, 1e-6);
  EXPECT_NEAR(pad_efficiency(pad_of(10.0), 1.0, 303.15, kStandardPressure), 1.0, 1e-9);
  double before = 1.0;
  for (double v = 0.01; v < 5.0; v *= 1.4) {
    const double now = pad_efficiency(pad_of(0.15), v, 303.15, kStandardPressure);
    EXPECT_LT(now, before);
    EXPECT_GT(now, 0.0);
    before = now;
  }
}

// On paper: 75 /m * 0.1 m * 0.5 * 1.2041 kg/m3 * (2 m/s)^2 = 18.06 Pa.
TEST(WetPad, LosesPressureByTheSquareOfTheSpeed) {
  EXPECT_NEAR(pad_pressure_drop_pa(pad_of(0.1), 2.0, 293.15, kStandardPressure), 18.06, 0.01);
  EXPECT_EQ(pad_pressure_drop_pa(pad_of(0.1), 0.0, 293.15, kStandardPressure), 0.0);
  EXPECT_NEAR(pad_pressure_drop_pa(pad_of(0.2), 3.0, 293.15, kStandardPressure) /
                  pad_pressure_drop_pa(pad_of(0.1), 1.0, 293.15, kStandardPressure),
              18.0, 1e-12);
}

// On paper: air of 30 degC without vapour, 1.1644 kg/m3; 2 m3/s taking up 5 g/kg need 11.64 g/s.
TEST(WetPad, EvaporatesWhatItsAirTakesUp) {
  EXPECT_NEAR(pad_evaporation_kg_s({298.15, 0.005, 0.005}, 2.0, 303.15, 0.0, kStandardPressure), 11.644e-3, 0.0005e-3);
  EXPECT_EQ(pad_evaporation_kg_s({298.15, 0.005, 0.005}, 0.0, 303.15, 0.0, kStandardPressure), 0.0);
}

}  // namespace
}  // namespace noonhouse
