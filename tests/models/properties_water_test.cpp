// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/psychrometrics.hpp"
#include "models/properties/water.hpp"
#include "sim/core/dual.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

// Density of air-free water at 1 atm, CRC Handbook of Chemistry and Physics (from memory). Tolerance 0.01 kg/m3.
TEST(WaterDensity, MatchesTheHandbook) {
  const double table[][2] = {{0.0, 999.84},  {4.0, 999.97},  {10.0, 999.70},
                             {20.0, 998.21}, {30.0, 995.65}, {40.0, 992.22}};
  for (const auto& [celsius, density] : table)
    EXPECT_NEAR(water_density_kg_m3(kelvin(celsius)), density, 0.01) << celsius;
}

TEST(WaterDensity, IsLargestNearFourDegrees) {
  EXPECT_GT(water_density_kg_m3(kelvin(4.0)), water_density_kg_m3(kelvin(3.0)));
  EXPECT_GT(water_density_kg_m3(kelvin(4.0)), water_density_kg_m3(kelvin(5.0)));
}

// Steam tables (from memory): 2500.9, 2441.7, 2382.0 kJ/kg at 0.01, 25, 50 degC. Tolerance of the linear form 0.2 %.
TEST(LatentHeat, NearTheSteamTables) {
  EXPECT_NEAR(latent_heat(kelvin(0.01)), 2500.9e3, 0.002 * 2500.9e3);
  EXPECT_NEAR(latent_heat(kelvin(25.0)), 2441.7e3, 0.002 * 2441.7e3);
  EXPECT_NEAR(latent_heat(kelvin(50.0)), 2382.0e3, 0.002 * 2382.0e3);
}

TEST(LatentHeat, ClosesTheEnthalpyOfEvaporation) {
  for (double t = kelvin(0.0); t < kelvin(70.0); t += 1.0) {
    ASSERT_NEAR(latent_heat(t), vapour_enthalpy(t) - liquid_enthalpy(t), 1e-6);
  }
}

// Incropera & DeWitt, Table A.8: water vapour in air at 298 K, 0.26e-4 m2/s (from memory). Tolerance 3 %.
TEST(VapourDiffusivity, NearTheTable) {
  EXPECT_NEAR(vapour_diffusivity_m2_s(298.0, kStandardPressure), 0.26e-4, 0.03 * 0.26e-4);
}

TEST(VapourDiffusivity, GrowsAsTheAirThins) {
  EXPECT_NEAR(vapour_diffusivity_m2_s(300.0, 0.5 * kStandardPressure),
              2.0 * vapour_diffusivity_m2_s(300.0, kStandardPressure), 1e-12);
}

TEST(Water, DerivativesAgreeWithDifferences) {
  const auto check = [](auto law) {
    const double difference = (law(300.01) - law(299.99)) / 0.02;
    EXPECT_NEAR(law(Dual<1>::input(300.0, 0)).grad[0], difference, 1e-6 * std::fabs(difference));
  };
  check([](const auto& t) { return water_density_kg_m3(t); });
  check([](const auto& t) { return latent_heat(t); });
  check([](const auto& t) { return vapour_diffusivity_m2_s(t, 9e4); });
}

}  // namespace
}  // namespace noonhouse
