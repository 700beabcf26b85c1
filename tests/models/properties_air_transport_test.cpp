// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"

namespace noonhouse {
namespace {

// U.S. Standard Atmosphere 1976, table of sea level, 288.15 K and 101325 Pa: mu 1.7894e-5 Pa s, nu 1.4607e-5 m2/s,
// k 2.5326e-2 W/(m K) (from memory). Half the last printed digit.
TEST(AirTransport, IsTheStandardAtmosphereAtSeaLevel) {
  const AirTransport air = dry_air_transport(288.15, kStandardPressure);
  EXPECT_NEAR(air.dynamic_viscosity_pa_s, 1.7894e-5, 0.5e-9);
  EXPECT_NEAR(air.kinematic_viscosity_m2_s, 1.4607e-5, 0.5e-9);
  EXPECT_NEAR(air.conductivity_w_m_k, 2.5326e-2, 0.5e-6);
}

// Incropera & DeWitt, Table A.4, air. Its densities (1.3947, 1.1614, 0.9950 kg/m3) are those of 1 bar, so the pressure
// is that. Conductivity to half the last printed digit; viscosity and what holds it to 2 %, the law's own uncertainty
// [White, Viscous Fluid Flow, table 1-2]: the two published sources differ from each other by 0.4 %.
TEST(AirTransport, AgreesWithAnIndependentTable) {
  struct Row {
    double temperature_k, viscosity, kinematic, conductivity, diffusivity, prandtl;
  };
  for (const Row& row : {Row{250.0, 159.6e-7, 11.44e-6, 22.3e-3, 15.9e-6, 0.720},
                         Row{300.0, 184.6e-7, 15.89e-6, 26.3e-3, 22.5e-6, 0.707},
                         Row{350.0, 208.2e-7, 20.92e-6, 30.0e-3, 29.9e-6, 0.700}}) {
    const AirTransport air = dry_air_transport(row.temperature_k, 1e5);
    EXPECT_NEAR(air.conductivity_w_m_k, row.conductivity, 0.05e-3) << row.temperature_k;
    EXPECT_NEAR(air.dynamic_viscosity_pa_s / row.viscosity, 1.0, 0.02) << row.temperature_k;
    EXPECT_NEAR(air.kinematic_viscosity_m2_s / row.kinematic, 1.0, 0.02) << row.temperature_k;
    EXPECT_NEAR(air.thermal_diffusivity_m2_s / row.diffusivity, 1.0, 0.02) << row.temperature_k;
    EXPECT_NEAR(air.prandtl / row.prandtl, 1.0, 0.02) << row.temperature_k;
  }
}

// Lewis number alpha / D of vapour in air, D of Massman 1998, Atmos. Environ. 32, 1111: the films of every law of
// evaporation take one value of its power 2/3, which is that of warm air, to 2 %, the law's own uncertainty.
TEST(AirTransport, SpreadsVapourMoreReadilyThanHeat) {
  for (const double temperature_k : {283.15, 300.0, 313.15}) {
    const double lewis =
        dry_air_transport(temperature_k, 1e5).thermal_diffusivity_m2_s / vapour_diffusivity_m2_s(temperature_k, 1e5);
    EXPECT_LT(lewis, 0.9);
    EXPECT_NEAR(std::pow(lewis, 2.0 / 3.0) / kLewisTwoThirds, 1.0, 0.02) << temperature_k;
  }
}

// Molecules of an ideal gas: mu and k do not know the pressure, nu and alpha go by its inverse.
TEST(AirTransport, SpreadsFasterInThinAir) {
  const AirTransport low = dry_air_transport(295.0, 1e5), high = dry_air_transport(295.0, 0.8e5);
  EXPECT_EQ(high.conductivity_w_m_k, low.conductivity_w_m_k);
  EXPECT_EQ(high.dynamic_viscosity_pa_s, low.dynamic_viscosity_pa_s);
  EXPECT_NEAR(high.kinematic_viscosity_m2_s / low.kinematic_viscosity_m2_s, 1.25, 1e-12);
  EXPECT_NEAR(high.thermal_diffusivity_m2_s / low.thermal_diffusivity_m2_s, 1.25, 1e-12);
  EXPECT_NEAR(high.prandtl, low.prandtl, 1e-12);
}

}  // namespace
}  // namespace noonhouse
