// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/atmosphere.hpp"
#include "models/properties/psychrometrics.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

constexpr double kSeaLevel = 101325.0;

/// Humidity ratio of air by its temperature and relative humidity.
double humidity_of(double celsius, double relative_humidity, double pressure_pa = kSeaLevel) {
  return humidity_ratio(relative_humidity * saturation_pressure_pa(kelvin(celsius)), pressure_pa);
}

// ASHRAE Handbook of Fundamentals 2017, ch. 1, Table 2, 101325 Pa. Tolerance of an ideal gas: 1 %. The table
// holds real moist air; without its enhancement factor (1.004 to 1.005) every value must come out low.
TEST(SaturationHumidity, IsTheTableLessTheEnhancementFactor) {
  const double table[][2] = {
      {-20.0, 0.0006373}, {-5.0, 0.0024863}, {5.0, 0.005425}, {25.0, 0.020173}, {50.0, 0.086863}};
  for (const auto& [celsius, w] : table) {
    const double ratio = saturation_humidity_ratio(kelvin(celsius), kSeaLevel) / w;
    EXPECT_LT(ratio, 1.0 - 0.0035) << celsius;
    EXPECT_GT(ratio, 1.0 - 0.0075) << celsius;
  }
}

// Same Table 2: dry air at 25 degC. Tolerance 0.03 % and 0.1 %.
TEST(MoistAir, DryAirMatchesTheTable) {
  EXPECT_NEAR(moist_air_enthalpy(kelvin(25.0), 0.0), 25148.0, 3e-4 * 25148.0);
  EXPECT_NEAR(specific_volume(kelvin(25.0), 0.0, kSeaLevel), 0.8443, 1e-3 * 0.8443);
}

// Same chapter, Example 1 (chart reading): 40 degC, wet bulb 20 degC, 101325 Pa.
TEST(MoistAir, MatchesTheChartExample) {
  const double t = kelvin(40.0);
  const double w = humidity_ratio_from_wet_bulb(t, kelvin(20.0), kSeaLevel);
  EXPECT_NEAR(w, 0.0065, 1e-4);
  EXPECT_NEAR(w, 0.00640, 5e-6);  // what the equations give, by hand
  EXPECT_NEAR(dew_point_k(w, kSeaLevel), kelvin(7.0), 0.5);
  EXPECT_NEAR(relative_humidity(t, w, kSeaLevel), 0.14, 0.01);
  EXPECT_NEAR(moist_air_enthalpy(t, w), 56700.0, 100.0);
  EXPECT_NEAR(specific_volume(t, w, kSeaLevel), 0.896, 0.01 * 0.896);
}

// Same chapter, eqs. (33) and (35) at 95461 Pa, evaluated independently in a spreadsheet. Tolerance 0.03 %; and
// 0.001 K for the way back.
TEST(WetBulb, HumidityAndBackAtReducedPressure) {
  const double rows[][3] = {{30.0, 25.0, 0.0192281274}, {-1.0, -5.0, 0.00120399820}};
  for (const auto& [celsius, bulb, humidity] : rows) {
    const double w = humidity_ratio_from_wet_bulb(kelvin(celsius), kelvin(bulb), 95461.0);
    EXPECT_NEAR(w, humidity, 3e-4 * humidity) << celsius;
    EXPECT_NEAR(wet_bulb_k(kelvin(celsius), w, 95461.0), kelvin(bulb), 1e-3) << celsius;
  }
}

// Same chapter, eqs. (26)-(30) at 95461 Pa, evaluated independently. Tolerance 0.03 %.
TEST(MoistAir, MatchesTheEquationsAtReducedPressure) {
  EXPECT_NEAR(moist_air_enthalpy(kelvin(30.0), 0.02), 81316.0, 3e-4 * 81316.0);
  EXPECT_NEAR(specific_volume(kelvin(30.0), 0.02, 95461.0), 0.940855, 3e-4 * 0.940855);
  EXPECT_NEAR(moist_air_density(kelvin(30.0), 0.02, 95461.0), 1.08412, 3e-4 * 1.08412);
}

// Stull 2011, J. Appl. Meteorol. Climatol. 50, 2267: 20 degC, 50 %, 1013 hPa gives 13.70 degC by the
// approximation; the thermodynamic value is 13.78 degC (solved independently). Tolerance 0.02 K.
TEST(WetBulb, ApproximateAndExact) {
  EXPECT_NEAR(stull_wet_bulb_k(kelvin(20.0), 0.5), kelvin(13.70), 0.02);
  EXPECT_NEAR(wet_bulb_k(kelvin(20.0), humidity_of(20.0, 0.5, 101300.0), 101300.0), kelvin(13.78), 0.02);
}

// Definition of pad efficiency, eta = (Ti - To) / (Ti - Twb) (ASABE EP406), at 0.80 and 101325 Pa; the wet
// bulbs were solved independently from ASHRAE eq. (33). Tolerance 0.1 K.
TEST(WetBulb, OfHotDryAirAndThePadOutlet) {
  const double rows[][4] = {
      {38.0, 0.20, 20.77, 24.2}, {35.0, 0.30, 21.52, 24.2}, {40.0, 0.15, 20.36, 24.3}, {32.0, 0.60, 25.55, 26.8}};
  for (const auto& [celsius, rh, bulb, outlet] : rows) {
    const double solved = wet_bulb_k(kelvin(celsius), humidity_of(celsius, rh), kSeaLevel);
    EXPECT_NEAR(solved, kelvin(bulb), 0.1) << celsius;
    EXPECT_NEAR(kelvin(celsius) - 0.8 * (kelvin(celsius) - solved), kelvin(outlet), 0.1) << celsius;
  }
}

// Energy balance of a closed parcel, 35 degC and 30 %, that evaporates water of 20 degC; values computed
// independently from the enthalpy form. Tolerance 0.05 K and 0.3 points.
TEST(MoistAir, MistInAClosedParcelCoolsIt) {
  const double w0 = humidity_of(35.0, 0.30);
  const double h0 = moist_air_enthalpy(kelvin(35.0), w0);
  const double rows[][3] = {{0.001, 32.58, 0.375}, {0.002, 30.18, 0.467}, {0.003, 27.78, 0.578}};
  for (const auto& [added, celsius, rh] : rows) {
    const double h = h0 + added * liquid_enthalpy(kelvin(20.0));
    const double t = temperature_from_enthalpy_k(h, w0 + added);
    EXPECT_NEAR(t, kelvin(celsius), 0.05) << added;
    EXPECT_NEAR(relative_humidity(t, w0 + added, kSeaLevel), rh, 0.003) << added;
  }
}

// Definition, with the saturation law of the handbook: 25 degC, 60 %; a leaf of 28 degC in the same air.
// Tolerance 0.005 kPa.
TEST(VapourPressureDeficit, OfAirAndOfALeafInIt) {
  const double w = humidity_of(25.0, 0.60);
  EXPECT_NEAR(vapour_pressure_deficit_pa(kelvin(25.0), w, kSeaLevel), 1267.0, 5.0);
  EXPECT_NEAR(vapour_pressure_deficit_pa(kelvin(28.0), w, kSeaLevel), 1879.0, 5.0);
}

// Allen et al. 1998, FAO-56, Examples 2 and 4. Tolerance 0.05 kPa and 0.0005 kPa/K.
TEST(PsychrometricConstant, ByAltitude) {
  EXPECT_NEAR(fao_pressure_pa(1800.0), 81800.0, 50.0);
  EXPECT_NEAR(psychrometric_constant_pa_per_k(fao_pressure_pa(1800.0)), 54.0, 0.5);
  EXPECT_NEAR(fao_pressure_pa(1200.0), 87900.0, 50.0);
}

// FAO-56 Annex 2, Tables 2.1 and 2.2, from memory. Tolerance half a unit of the last printed digit.
TEST(PsychrometricConstant, MatchesTheAnnexTables) {
  const double table[][3] = {{0.0, 101300.0, 67.0}, {1000.0, 90000.0, 60.0}, {2000.0, 79800.0, 53.0}};
  for (const auto& [altitude, pressure, gamma] : table) {
    EXPECT_NEAR(fao_pressure_pa(altitude), pressure, 50.0) << altitude;
    EXPECT_NEAR(psychrometric_constant_pa_per_k(fao_pressure_pa(altitude)), gamma, 0.5) << altitude;
  }
}

// Allen et al. 1998, FAO-56, Example 18 (12.3 to 21.5 degC, 63 to 84 %, 100 m) and Example 19 (38 degC, 52 %):
// the printed intermediate values. Tolerance half a unit of the last printed digit and 0.001 kPa.
TEST(PsychrometricConstant, IntermediatesOfTheEvapotranspirationExamples) {
  EXPECT_NEAR(fao_pressure_pa(100.0), 100100.0, 50.0);
  EXPECT_NEAR(psychrometric_constant_pa_per_k(fao_pressure_pa(100.0)), 66.6, 0.05);
  EXPECT_NEAR(tetens_slope_pa_per_k(kelvin(16.9)), 122.0, 0.5);
  const double cold = tetens_pressure_pa(kelvin(12.3));
  const double warm = tetens_pressure_pa(kelvin(21.5));
  EXPECT_NEAR(0.5 * (cold + warm), 1997.0, 1.0);
  EXPECT_NEAR(0.5 * (cold * 0.84 + warm * 0.63), 1409.0, 1.0);
  EXPECT_NEAR(tetens_slope_pa_per_k(kelvin(38.0)), 358.0, 0.5);
  EXPECT_NEAR(tetens_pressure_pa(kelvin(38.0)), 6625.0, 1.0);
  EXPECT_NEAR(0.52 * tetens_pressure_pa(kelvin(38.0)), 3445.0, 1.0);
}

// ASHRAE Handbook of Fundamentals 2017, ch. 1, Table 1. Tolerance 1 Pa and the printed 0.1 K.
TEST(StandardAtmosphere, MatchesTheTable) {
  const double table[][3] = {{-500.0, 107478.0, 18.2},
                             {0.0, 101325.0, 15.0},
                             {500.0, 95461.0, 11.8},
                             {1000.0, 89875.0, 8.5},
                             {4000.0, 61640.0, -11.0}};
  for (const auto& [altitude, pressure, celsius] : table) {
    EXPECT_NEAR(standard_pressure_pa(altitude), pressure, 1.0) << altitude;
    EXPECT_NEAR(standard_temperature_k(altitude), kelvin(celsius), 0.1) << altitude;
  }
}

TEST(MoistAir, InversePairs) {
  for (const double pressure : {61640.0, 84000.0, kSeaLevel}) {
    for (double celsius = -30.0; celsius <= 60.0; celsius += 2.5) {
      for (const double rh : {0.02, 0.3, 0.7, 0.98}) {
        const double t = kelvin(celsius);
        const double w = humidity_of(celsius, rh, pressure);
        const double e = vapour_pressure_pa(w, pressure);
        ASSERT_NEAR(e / (rh * saturation_pressure_pa(t)), 1.0, 1e-12);
        ASSERT_NEAR(relative_humidity(t, w, pressure), rh, 1e-12);
        ASSERT_NEAR(temperature_from_enthalpy_k(moist_air_enthalpy(t, w), w), t, 1e-10);
        ASSERT_NEAR(saturation_pressure_pa(dew_point_k(w, pressure)) / e, 1.0, 1e-9) << celsius << ' ' << rh;
        ASSERT_NEAR(dry_air_density(t, w, pressure) * (1.0 + w), moist_air_density(t, w, pressure), 1e-12);
        const double bulb = wet_bulb_k(t, w, pressure);
        ASSERT_NEAR(humidity_ratio_from_wet_bulb(t, bulb, pressure), w, 1e-9) << celsius << ' ' << rh;
        ASSERT_LE(dew_point_k(w, pressure), bulb);
        ASSERT_LE(bulb, t);
      }
    }
  }
}

TEST(MoistAir, DensityIsThatOfTwoIdealGases) {
  const double t = kelvin(33.0);
  const double w = 0.018;
  const double e = vapour_pressure_pa(w, 85000.0);
  const double two_gases = (85000.0 - e) / (kGasConstantDryAir * t) + e / (kGasConstantVapour * t);
  EXPECT_NEAR(moist_air_density(t, w, 85000.0), two_gases, 1e-5 * two_gases);  // molar ratio has six digits
  EXPECT_LT(moist_air_density(t, w, 85000.0), moist_air_density(t, 0.0, 85000.0));
}

TEST(WetBulb, SaturatedAirIsItsOwnBulb) {
  const double t = kelvin(24.0);
  const double full = saturation_humidity_ratio(t, kSeaLevel);
  EXPECT_EQ(wet_bulb_k(t, full, kSeaLevel), t);
  EXPECT_EQ(wet_bulb_k(t, 1.2 * full, kSeaLevel), t);
}

TEST(WetBulb, PrefersTheLiquidBulbNearFreezing) {
  // Just wet enough that a bulb of exactly 0 degC satisfies eq. (33): drier air freezes it.
  const double t = kelvin(5.0);
  const double limit = humidity_ratio_from_wet_bulb(t, kZeroCelsius, kSeaLevel);
  EXPECT_GE(wet_bulb_k(t, limit + 1e-6, kSeaLevel), kZeroCelsius);
  EXPECT_LT(wet_bulb_k(t, limit - 1e-6, kSeaLevel), kZeroCelsius);
}

TEST(DewPoint, StopsAtTheColdEndOfTheLaw) {
  EXPECT_EQ(dew_point_k(0.0, kSeaLevel), kelvin(-100.0));
  EXPECT_EQ(saturation_temperature_k(-1.0), kelvin(-100.0));
}

TEST(MoistAir, HotterAirHoldsMoreAtAltitude) {
  for (double celsius = -20.0; celsius < 60.0; celsius += 1.0) {
    const double t = kelvin(celsius);
    ASSERT_GT(saturation_humidity_ratio(t + 1.0, kSeaLevel), saturation_humidity_ratio(t, kSeaLevel));
    ASSERT_GT(saturation_humidity_ratio(t, 80000.0), saturation_humidity_ratio(t, kSeaLevel));
    if (celsius >= 0.02) {
      ASSERT_NEAR(saturation_humidity_ratio_fast(t, kSeaLevel) / saturation_humidity_ratio(t, kSeaLevel), 1.0, 2e-5);
    }
  }
}

/// Compares the derivatives of a law of temperature and humidity with central differences.
template <class Law>
void expect_exact_gradient(Law law, double t, double w) {
  const Dual<2> dual = law(Dual<2>::input(t, 0), Dual<2>::input(w, 1));
  const double by_t = (law(t + 1e-3, w) - law(t - 1e-3, w)) / 2e-3;
  const double by_w = (law(t, w + 1e-6) - law(t, w - 1e-6)) / 2e-6;
  EXPECT_NEAR(dual.value, law(t, w), 1e-9 * std::fabs(law(t, w)));
  EXPECT_NEAR(dual.grad[0], by_t, 1e-5 * std::fabs(by_t) + 1e-9) << t << ' ' << w;
  EXPECT_NEAR(dual.grad[1], by_w, 1e-5 * std::fabs(by_w) + 1e-6) << t << ' ' << w;
}

TEST(MoistAir, DerivativesAgreeWithDifferences) {
  const double p = 88000.0;
  const double states[][2] = {{308.15, 0.010}, {293.15, 0.013}, {278.15, 0.002}, {263.15, 0.001}};
  for (const auto& [t, w] : states) {
    expect_exact_gradient([&](const auto& x, const auto& y) { return relative_humidity(x, y, p); }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return vapour_pressure_deficit_pa(x, y, p); }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return moist_air_enthalpy(x, y); }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return moist_air_density(x, y, p); }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return wet_bulb_k(x, y, p); }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return saturation_humidity_ratio(x, p) - y; }, t, w);
    expect_exact_gradient([&](const auto& x, const auto& y) { return dew_point_k(y, p) + 0.0 * x; }, t, w);
  }
}

}  // namespace
}  // namespace noonhouse
