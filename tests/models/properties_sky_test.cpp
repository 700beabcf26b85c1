// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/atmosphere.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "sim/core/dual.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

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

// At sea level the correction does nothing; at a given altitude thinner air radiates less, in proportion.
TEST(SkyEmissivity, OfAnAltitudeIsBrutsaertsAtSeaLevel) {
  EXPECT_NEAR(brutsaert_altitude_emissivity(kelvin(20.0), 1228.0, 0.0, kStandardPressure),
              brutsaert_emissivity(kelvin(20.0), 1228.0), 1e-12);
  const double thick = brutsaert_altitude_emissivity(kelvin(10.0), 600.0, 2000.0, 80000.0);
  EXPECT_NEAR(brutsaert_altitude_emissivity(kelvin(10.0), 600.0, 2000.0, 76000.0) / thick, 0.95, 1e-12);
}

// Marks & Dozier 1979, worked by hand with steam-table pressures (from memory): 10.5 degC and 50 % at 3000 m and 701.1
// hPa. T' = 303.15 K; e_s(283.65 K) = 12.70 hPa, e_s(303.15 K) = 42.46 hPa, so e = 6.35 and e' = 21.23 hPa;
// (21.23 / 303.15)^(1/7) = exp(-2.6588 / 7) = 0.68398; 1.24 * 0.68398 * 701.1 / 1013.25 = 0.5869. To 0.0005: e has four
// digits.
TEST(SkyEmissivity, OfAnAltitudeIsAsWorkedByHand) {
  EXPECT_NEAR(brutsaert_altitude_emissivity(kelvin(10.5), 635.0, 3000.0, 70110.0), 0.5869, 0.0005);
}

// Up a mountain in the standard atmosphere, at one relative humidity, the sky radiates less and less.
TEST(SkyEmissivity, FallsWithTheAltitudeOfTheStandardAtmosphere) {
  double last = 1.0;
  for (double z = 0.0; z <= 4000.0; z += 500.0) {
    const double t = standard_temperature_k(z), e = 0.5 * saturation_pressure_water_pa(t);
    const double here = brutsaert_altitude_emissivity(t, e, z, standard_pressure_pa(z));
    ASSERT_LT(here, last) << z;
    ASSERT_LE(here, brutsaert_emissivity(t, e) * (1.0 + 1e-12)) << z;
    last = here;
  }
}

// Allen et al. 1998, FAO-56, Example 11 and Example 18. Tolerance 0.1 and 0.02 MJ/m2.
TEST(NetLongwave, MatchesTheWorkedExamples) {
  EXPECT_NEAR(fao_net_longwave_daily(kelvin(19.1), kelvin(25.1), 2100.0, 14.5 / 18.8) / 1e6, 3.5, 0.1);
  EXPECT_NEAR(fao_net_longwave_daily(kelvin(12.3), kelvin(21.5), 1409.0, 22.07 / 30.90) / 1e6, 3.71, 0.02);
}

// Allen et al. 1998, FAO-56, Example 12: of 14.5 MJ/m2 an albedo of 0.23 leaves 11.1 MJ/m2, printed from rounded
// numbers, so 0.1; less the net longwave of Example 11, 3.5, the ground keeps 7.6 MJ/m2. A plane that faces down sees
// all that the ground sends up.
TEST(NetLongwave, LeavesTheNetRadiationOfTheWorkedExample) {
  const double shortwave = 14.5 - ground_reflected(14.5, 0.23, kPi);
  EXPECT_NEAR(shortwave, 11.1, 0.1);
  const double longwave = fao_net_longwave_daily(kelvin(19.1), kelvin(25.1), 2100.0, 14.5 / 18.8) / 1e6;
  EXPECT_NEAR(shortwave - longwave, 7.6, 0.1);
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

// Martin & Berdahl 1984 (from memory): what a cloud adds falls by e for every 8.2 km of its base; opaque cloud on the
// ground makes the sky black, and cirrus of emissivity 0.4 adds 0.4 of what opaque cloud would.
TEST(CloudCorrection, FallsByTheScaleHeightOfTheCloudBase) {
  EXPECT_NEAR(cloud_base_emissivity(0.7, 1.0, 0.0), 1.0, 1e-12);
  EXPECT_NEAR(cloud_base_emissivity(0.7, 1.0, 8200.0), 0.7 + 0.3 * 0.36788, 1e-5);
  EXPECT_NEAR(cloud_base_emissivity(0.7, 0.5, 8200.0, 0.4), 0.7 + 0.3 * 0.5 * 0.4 * 0.36788, 1e-5);
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
  check([](const auto& x) { return brutsaert_altitude_emissivity(x, 1000.0, 1500.0, 8.5e4); }, 290.0);
  check([](const auto& x) { return idso_jackson_emissivity(x); }, 295.0);
  check([](const auto& x) { return swinbank_sky_temperature_k(x); }, 295.0);
  check([](const auto& x) { return sky_temperature_k(x, cloudy_emissivity(swinbank_emissivity(x), 0.3)); }, 295.0);
  check([](const auto& x) { return blackbody_emission(x); }, 295.0);
  check([](const auto& x) { return radiative_coefficient(x); }, 295.0);
}

}  // namespace
}  // namespace noonhouse
