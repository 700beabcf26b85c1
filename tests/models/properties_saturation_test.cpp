// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/saturation.hpp"
#include "sim/core/dual.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

// ASHRAE Handbook of Fundamentals 2017, ch. 1, Table 3. Tolerance 0.03 %, and 0.01 Pa at -60 degC.
TEST(SaturationPressure, MatchesTheHandbookTable) {
  EXPECT_NEAR(saturation_pressure_pa(kelvin(-60.0)), 1.08, 0.01);
  const double table[][2] = {{-20.0, 103.24}, {-5.0, 401.74}, {5.0, 872.6}, {25.0, 3169.7}, {50.0, 12351.3}};
  for (const auto& [celsius, pascal] : table) {
    EXPECT_NEAR(saturation_pressure_pa(kelvin(celsius)), pascal, 3e-4 * pascal) << celsius;
  }
}

TEST(SaturationPressure, IsContinuousAtTheTriplePointAndKinked) {
  const double below = std::nextafter(kTriplePoint, 0.0);
  EXPECT_NEAR(saturation_pressure_pa(below) / saturation_pressure_pa(kTriplePoint), 1.0, 1e-5);
  // The slopes stand as the heats of sublimation and vaporisation (2.834e6 and 2.501e6 J/kg, from memory).
  EXPECT_NEAR(saturation_pressure_slope(below) / saturation_pressure_slope(kTriplePoint), 2.834 / 2.501, 0.005);
}

TEST(SaturationPressure, RisesAndLiesLowerOverIce) {
  for (double t = kelvin(-95.0); t < kelvin(120.0); t += 0.25) {
    ASSERT_GT(saturation_pressure_pa(t + 0.25), saturation_pressure_pa(t)) << t;
  }
  for (double t = kelvin(-40.0); t < kelvin(0.0); t += 0.5) {
    ASSERT_LT(saturation_pressure_ice_pa(t), saturation_pressure_water_pa(t)) << t;
  }
}

// Clausius-Clapeyron: slope = L e / (R_v T^2), with L within 1 % of its handbook form on 0 to 50 degC
// (vapour is not quite an ideal gas).
TEST(SaturationPressure, SlopeObeysClausiusAndClapeyron) {
  for (double t = kelvin(0.5); t < kelvin(50.0); t += 0.5) {
    const double latent = saturation_pressure_slope(t) * kGasConstantVapour * t * t / saturation_pressure_pa(t);
    ASSERT_NEAR(latent, kLatentHeatZero - 2326.0 * (t - kZeroCelsius), 0.01 * kLatentHeatZero) << t;
  }
}

template <class Law>
void expect_exact_derivative(Law law, double t, double relative) {
  const double h = 1e-3;
  const double difference = (law(t + h) - law(t - h)) / (2.0 * h);
  const Dual<1> dual = law(Dual<1>::input(t, 0));
  EXPECT_DOUBLE_EQ(dual.value, law(t)) << t;
  EXPECT_NEAR(dual.grad[0], difference, relative * std::fabs(difference)) << t;
}

TEST(SaturationPressure, DerivativesAgreeWithDifferencesAndWithTheSlope) {
  for (const double celsius : {-60.0, -20.0, -1.0, 1.0, 25.0, 50.0, 80.0}) {
    const double t = kelvin(celsius);
    expect_exact_derivative([](const auto& x) { return saturation_pressure_pa(x); }, t, 1e-7);
    expect_exact_derivative([](const auto& x) { return saturation_pressure_slope(x); }, t, 1e-7);
    expect_exact_derivative([](const auto& x) { return saturation_pressure_fast_pa(x); }, t, 1e-7);
    expect_exact_derivative([](const auto& x) { return tetens_pressure_pa(x); }, t, 1e-7);
    EXPECT_NEAR(saturation_pressure_pa(Dual<1>::input(t, 0)).grad[0] / saturation_pressure_slope(t), 1.0, 1e-12);
  }
}

// The stated errors of the fit, at steps of 0.01 K.
TEST(FastSaturationPressure, StaysWithinItsStatedError) {
  for (double celsius = -60.0; celsius <= 100.0; celsius += 0.01) {
    const double t = kelvin(celsius);
    const double full = saturation_pressure_water_pa(t);
    const double allowed = celsius >= -40.0 && celsius <= 80.0 ? 1e-5 : 7e-4;
    ASSERT_NEAR(saturation_pressure_fast_pa(t), full, allowed * full) << celsius;
    if (celsius < -20.0 || celsius > 70.0) continue;
    const double slope = saturation_pressure_water_pa(Dual<1>::input(t, 0)).grad[0];
    ASSERT_NEAR(saturation_pressure_fast_pa(Dual<1>::input(t, 0)).grad[0], slope, 3e-5 * slope) << celsius;
  }
}

TEST(FastSaturationPressure, RisesFarBeyondItsRange) {
  for (double t = kelvin(-90.0); t < kelvin(160.0); t += 0.5) {
    ASSERT_GT(saturation_pressure_fast_pa(t + 0.5), saturation_pressure_fast_pa(t)) << t;
    ASSERT_GT(saturation_pressure_fast_pa(t), 0.0);
  }
}

TEST(FastSaturationPressure, LiesAboveIceByTheStatedShares) {
  const auto above = [](double celsius) {
    return saturation_pressure_fast_pa(kelvin(celsius)) / saturation_pressure_ice_pa(kelvin(celsius)) - 1.0;
  };
  EXPECT_NEAR(above(-5.0), 0.05, 0.005);
  EXPECT_NEAR(above(-20.0), 0.21, 0.01);
}

// Allen et al. 1998, FAO-56, Example 3. Tolerance 0.005 kPa.
TEST(Tetens, MatchesTheWorkedExample) {
  const double warm = tetens_pressure_pa(kelvin(24.5));
  const double cold = tetens_pressure_pa(kelvin(15.0));
  EXPECT_NEAR(warm, 3075.0, 5.0);
  EXPECT_NEAR(cold, 1705.0, 5.0);
  EXPECT_NEAR(0.5 * (warm + cold), 2390.0, 5.0);
  EXPECT_NEAR(tetens_pressure_pa(kelvin(19.75)), 2300.0, 5.0);
}

// ASCE-EWRI 2005, standardized reference evapotranspiration, Appendix C, hourly data. Tolerance 0.002 kPa.
TEST(Tetens, MatchesTheHourlyList) {
  const double list[][2] = {{30.9, 4467.0}, {26.0, 3361.0}, {20.1, 2353.0},
                            {13.2, 1517.0}, {22.9, 2792.0}, {32.9, 5002.0}};
  for (const auto& [celsius, pascal] : list) EXPECT_NEAR(tetens_pressure_pa(kelvin(celsius)), pascal, 2.0) << celsius;
}

// FAO-56 Annex 2, Tables 2.3 and 2.4, from memory. Tolerance half a unit of the last printed digit.
TEST(Tetens, MatchesTheAnnexTables) {
  const double table[][3] = {{10.0, 1228.0, 82.0}, {20.0, 2338.0, 145.0}, {30.0, 4243.0, 243.0}, {40.0, 7376.0, 393.0}};
  for (const auto& [celsius, pascal, slope] : table) {
    EXPECT_NEAR(tetens_pressure_pa(kelvin(celsius)), pascal, 0.5) << celsius;
    EXPECT_NEAR(tetens_slope_pa_per_k(kelvin(celsius)), slope, 0.5) << celsius;
  }
}

// The two laws are of independent origin: within 0.6 % of each other on 0 to 50 degC.
TEST(Tetens, AgreesWithTheFullLaw) {
  for (double t = kelvin(0.5); t <= kelvin(50.0); t += 0.5) {
    ASSERT_NEAR(tetens_pressure_pa(t) / saturation_pressure_pa(t), 1.0, 0.006) << t;
  }
}

}  // namespace
}  // namespace noonhouse
