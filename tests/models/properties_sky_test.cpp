// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

double kelvin(double celsius) { return celsius + kZeroCelsius; }

// Swinbank 1963: 0.0552 T^1.5. Tolerance 0.02 K.
TEST(SkyTemperature, Swinbank) {
  EXPECT_NEAR(swinbank_sky_temperature_k(293.15), 277.06, 0.02);
  EXPECT_NEAR(swinbank_sky_temperature_k(300.0), 286.83, 0.02);
  EXPECT_NEAR(swinbank_sky_temperature_k(308.15), 298.59, 0.02);
}

// Berdahl & Martin 1984, Solar Energy 32, 663, at the hour and pressure where its extra terms vanish. 0.001.
TEST(SkyEmissivity, BerdahlAndMartin) {
  const double rows[][2] = {{-10.0, 0.662}, {0.0, 0.711}, {10.0, 0.774}, {20.0, 0.852}};
  for (const auto& [dew, emissivity] : rows) {
    EXPECT_NEAR(berdahl_martin_emissivity(kelvin(dew), 6.0, 1e5), emissivity, 0.001) << dew;
  }
  EXPECT_NEAR(berdahl_martin_emissivity(kelvin(0.0), 0.0, 1e5) - 0.711, 0.013, 1e-9);
  EXPECT_NEAR(berdahl_martin_emissivity(kelvin(0.0), 12.0, 1e5) - 0.711, -0.013, 1e-9);
  EXPECT_NEAR(berdahl_martin_emissivity(kelvin(0.0), 6.0, 0.85e5) - 0.711, -0.018, 1e-9);
}

// Five published forms at 20 degC and 12.28 hPa (Brunt 1932, Brutsaert 1975, Idso & Jackson 1969, Berdahl & Martin
// 1984 with its dew point of 10 degC, Swinbank 1963); values from memory, recomputed from the equations. 0.002.
TEST(SkyEmissivity, FormsSpreadAroundTheSameState) {
  EXPECT_NEAR(brunt_emissivity(1228.0), 0.748, 0.002);
  EXPECT_NEAR(brutsaert_emissivity(kelvin(20.0), 1228.0), 0.788, 0.002);
  EXPECT_NEAR(idso_jackson_emissivity(kelvin(20.0)), 0.809, 0.002);
  EXPECT_NEAR(swinbank_emissivity(kelvin(20.0)), 0.798, 0.002);
  const double dew = saturation_temperature_k(1228.0);
  EXPECT_NEAR(dew, kelvin(10.0), 0.05);
  EXPECT_NEAR(berdahl_martin_emissivity(dew, 6.0, 1e5), 0.774, 0.002);
}

// Allen et al. 1998, FAO-56, Example 11 and Example 18. Tolerance 0.1 and 0.02 MJ/m2.
TEST(NetLongwave, MatchesTheWorkedExamples) {
  EXPECT_NEAR(fao_net_longwave_daily(kelvin(19.1), kelvin(25.1), 2100.0, 14.5 / 18.8) / 1e6, 3.5, 0.1);
  EXPECT_NEAR(fao_net_longwave_daily(kelvin(12.3), kelvin(21.5), 1409.0, 22.07 / 30.90) / 1e6, 3.71, 0.02);
}

// Stefan-Boltzmann at 0 degC. Tolerance 0.01 W/m2: the printed 315.66 is of the 2014 constant.
TEST(Blackbody, EmissionAtFreezing) { EXPECT_NEAR(blackbody_emission(273.15), 315.66, 0.01); }

// 4 sigma T^3 (ISO 6946 annex prints 4.6, 5.1, 5.7, 6.3). Tolerance 0.02 W/(m2 K).
TEST(Blackbody, RadiativeCoefficient) {
  const double rows[][2] = {{0.0, 4.62}, {10.0, 5.15}, {20.0, 5.71}, {30.0, 6.32}, {40.0, 6.96}};
  for (const auto& [celsius, coefficient] : rows) {
    EXPECT_NEAR(radiative_coefficient(kelvin(celsius)), coefficient, 0.02) << celsius;
  }
}

TEST(CloudCorrection, GrowsFromClearToOvercast) {
  for (const double clear : {0.66, 0.75, 0.85}) {
    EXPECT_EQ(cloudy_emissivity(clear, 0.0), clear);
    EXPECT_EQ(cloud_base_emissivity(clear, 0.0, 1000.0), clear);
    EXPECT_NEAR(cloudy_emissivity(clear, 1.0), 0.84 + 0.16 * clear, 1e-12);
    for (double c = 0.1; c <= 1.0; c += 0.1) {
      ASSERT_GT(cloudy_emissivity(clear, c), cloudy_emissivity(clear, c - 0.1));
      ASSERT_LE(cloudy_emissivity(clear, c), 1.0);
      ASSERT_LT(cloud_base_emissivity(clear, c, 8000.0), cloud_base_emissivity(clear, c, 500.0));
      ASSERT_LT(cloud_base_emissivity(clear, c, 500.0), 1.0);
    }
  }
  EXPECT_NEAR(cloud_fraction_from_clearness(1.0), 0.0, 1e-12);
  EXPECT_NEAR(cloud_fraction_from_clearness(0.3), 0.945, 1e-12);
  EXPECT_EQ(cloud_fraction_from_clearness(0.0), cloud_fraction_from_clearness(0.3));
}

TEST(SkyTemperature, RadiatesWhatTheEmissivitySays) {
  const double sky = sky_temperature_k(300.0, 0.8);
  EXPECT_NEAR(blackbody_emission(sky), 0.8 * blackbody_emission(300.0), 1e-9);
  EXPECT_NEAR(sky_temperature_k(300.0, swinbank_emissivity(300.0)), swinbank_sky_temperature_k(300.0), 1e-9);
}

TEST(SkyEmissivity, DerivativesAgreeWithDifferences) {
  const auto check = [](auto law, double x) {
    const double h = 1e-4 * x;
    const double difference = (law(x + h) - law(x - h)) / (2.0 * h);
    EXPECT_NEAR(law(Dual<1>::input(x, 0)).grad[0], difference, 1e-6 * std::fabs(difference));
  };
  check([](const auto& x) { return berdahl_martin_emissivity(x, 3.0, 9e4); }, 285.0);
  check([](const auto& x) { return brunt_emissivity(x); }, 1400.0);
  check([](const auto& x) { return brutsaert_emissivity(x, 1400.0); }, 295.0);
  check([](const auto& x) { return idso_jackson_emissivity(x); }, 295.0);
  check([](const auto& x) { return swinbank_sky_temperature_k(x); }, 295.0);
  check([](const auto& x) { return sky_temperature_k(x, cloudy_emissivity(swinbank_emissivity(x), 0.3)); }, 295.0);
  check([](const auto& x) { return blackbody_emission(x); }, 295.0);
  check([](const auto& x) { return radiative_coefficient(x); }, 295.0);
}

}  // namespace
}  // namespace noonhouse
