// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/water/wind_evaporation.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

Two flux(const WindEvaporation& law, double surface_k, double water_kg, double w, double wind_m_s) {
  Two q{};
  law.flux(std::array{surface_k, water_kg, w, wind_m_s}, q);
  return q;
}

// On paper: h = 2.8 + 3.0 * 3 = 11.8 W/(m2 K), g = 11.8 / (1006 * 0.90) = 0.013033 kg/(m2 s). Air at saturation at 30
// degC holds 0.027329 kg/kg [ASHRAE HoF 2017, ch. 1, table 2], 0.5 % more than the ideal gas here; less 0.010. So 2 m2
// give 4.52e-4 kg/s, 0.7 % for the real gas: 0.8 % of the difference.
TEST(WindEvaporation, IsTheLewisRelationOnPaper) {
  const WindEvaporation law{2.0, kStandardPressure, 1e-9};
  EXPECT_NEAR(flux(law, 303.15, 1.0, 0.010, 3.0)[0], 4.517e-4, 0.011 * 4.517e-4);
  EXPECT_NEAR(flux(law, 303.15, 1.0, 0.010, 3.0)[1], 4.517e-4 * (2.501e6 + 1860.0 * 30.0), 0.011 * 1155.0);
}

// A wet roof without sun and sky rests a little under the wet bulb (Le < 1), and the wind, which brings heat as it
// takes vapour, does not matter.
TEST(WindEvaporation, CoolsToTheWetBulbInAnyWind) {
  const double air_k = 308.15, w = humidity_ratio(0.3 * saturation_pressure_pa(air_k), kStandardPressure);
  const double bulb = wet_bulb_k(air_k, w, kStandardPressure);
  double first = 0.0;
  for (const double wind : {0.0, 2.0, 7.0}) {
    const WindEvaporation law{1.0, kStandardPressure, 1e-9};
    double low = 250.0, high = air_k;
    for (int i = 0; i < 60; ++i) {
      const double t = 0.5 * (low + high);
      const Two q = flux(law, t, 1.0, w, wind);
      const double warmed = (law.still_w_m2_k + law.per_speed_w_s_m3_k * wind) * (air_k - t);
      (q[1] - q[0] * liquid_enthalpy(t) > warmed ? high : low) = t;
    }
    EXPECT_LT(low, bulb);
    EXPECT_GT(low, air_k - (air_k - bulb) / 0.90);
    if (first == 0.0) first = low;
    EXPECT_NEAR(low, first, 1e-6) << wind;
  }
}

TEST(WindEvaporation, TakesFromAWetRoofAndGivesDewToAColdOne) {
  const WindEvaporation law{10.0, kStandardPressure, 0.5};
  const double w = 0.012, dew_k = dew_point_k(w, kStandardPressure);
  EXPECT_GT(flux(law, dew_k + 1.0, 2.0, w, 2.0)[0], 0.0);
  EXPECT_EQ(flux(law, dew_k + 1.0, 0.0, w, 2.0)[0], 0.0) << "a dry roof has nothing to give";
  EXPECT_LT(flux(law, dew_k - 1.0, 0.0, w, 2.0)[0], 0.0) << "dew falls on a dry roof too";
  EXPECT_LT(flux(law, dew_k - 1.0, 0.0, w, 2.0)[1], 0.0);
  const double calm = flux(law, 310.0, 2.0, w, 0.0)[0], windy = flux(law, 310.0, 2.0, w, 5.0)[0];
  EXPECT_NEAR(windy / calm, (2.8 + 15.0) / 2.8, 1e-12);
  EXPECT_NEAR(flux(law, 310.0, 0.5, w, 0.0)[0], 0.5 * flux(law, 310.0, 1e12, w, 0.0)[0], 1e-9) << "half wet";
}

}  // namespace
}  // namespace noonhouse
