// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/tissue.hpp"

namespace noonhouse {
namespace {

/// A watered plant in light; each test changes what it is about.
struct Plant {
  Transpiration law{.leaf_area_m2 = 5.0,
                    .dry_air_density_kg_m3 = 1.15,
                    .boundary_conductance_m_s = 0.006,
                    .least_conductance_m_s = 0.0001,
                    .most_conductance_m_s = 0.005,
                    .half_light_w_m2 = 100.0,
                    .half_deficit_pa = 1500.0,
                    .pot_capacity_kg = 20.0};
  double leaf_k = 300.0, pot_kg = 20.0, pot_k = 296.0, air_k = 301.0, w = 0.010, light = 500.0;
  std::array<double, 3> fluxes() const {
    std::array<double, 3> q{};
    law.flux(std::array{leaf_k, pot_kg, pot_k, air_k, w, light}, q);
    return q;
  }
  double water() const { return fluxes()[0]; }
  /// Conductance from the stomata's inside to the air [m/s], from what flows.
  double conductance() const {
    return water() / (5.0 * 1.15 * (saturation_humidity_ratio_fast(leaf_k, law.pressure_pa) - w));
  }
};

TEST(Transpiration, IsTheSkinsAloneInTheDark) {
  Plant plant;
  plant.light = 0.0;
  EXPECT_NEAR(plant.conductance(), 1.0 / (1.0 / 0.0001 + 1.0 / 0.006), 1e-12);
}

TEST(Transpiration, NeverPassesTheStillAirAtTheLeaf) {
  Plant plant;
  plant.law.boundary_conductance_m_s = 1e-9;
  EXPECT_LT(plant.conductance(), 1e-9);
  plant.law.boundary_conductance_m_s = 1e3;
  EXPECT_LE(plant.conductance(), 0.005);
}

TEST(Transpiration, StopsWithADryPotAndInSaturatedAir) {
  Plant plant;
  plant.pot_kg = 0.0;
  EXPECT_EQ(plant.water(), 0.0);
  plant.pot_kg = -1e-9;
  EXPECT_EQ(plant.water(), 0.0);
  Plant damp;
  damp.w = saturation_humidity_ratio_fast(damp.leaf_k, damp.law.pressure_pa);
  EXPECT_EQ(damp.water(), 0.0);
  damp.leaf_k = 290.0;  // colder than the dew point: dew is another law's
  EXPECT_EQ(damp.water(), 0.0);
}

TEST(Transpiration, IsUnhinderedWhileThePotIsMoreThanItsDryShare) {
  Plant full, enough, dry;
  enough.pot_kg = 0.3 * 20.0;
  dry.pot_kg = 0.15 * 20.0;
  EXPECT_EQ(full.water(), enough.water());
  EXPECT_LT(dry.water(), 0.6 * full.water());
}

// Vapour-deficit form: the opening halves where D = D0. Leuning 1995, Plant Cell Environ. 18, 339. D from the
// published meaning: saturation pressure at the leaf less the air's vapour pressure.
TEST(Transpiration, HalvesItsOpeningAtTheDeficitThatIsNamedForIt) {
  Plant plant;
  plant.law.least_conductance_m_s = 0.0;
  plant.law.boundary_conductance_m_s = 1e6;
  plant.law.half_deficit_pa = 1e12;
  const double open = plant.conductance();
  plant.law.half_deficit_pa = saturation_pressure_pa(plant.leaf_k) - vapour_pressure_pa(plant.w, 101325.0);
  EXPECT_NEAR(plant.conductance(), 0.5 * open, 1e-4 * open);
}

TEST(Transpiration, IsHalfOpenAtHalfLightByDayAndAsMuchShutByNightOpeners) {
  Plant plant;
  plant.law.least_conductance_m_s = 0.0;
  plant.law.boundary_conductance_m_s = 1e6;
  plant.law.half_deficit_pa = 1e12;
  plant.light = 100.0;
  EXPECT_NEAR(plant.conductance(), 0.5 * 0.005, 1e-8);
  plant.law.rhythm = StomataRhythm::night;
  EXPECT_NEAR(plant.conductance(), 0.5 * 0.005, 1e-8);
  plant.light = 0.0;
  EXPECT_NEAR(plant.conductance(), 0.005, 1e-8);
}

TEST(Transpiration, TakesItsLatentHeatFromTheTissue) {
  const Plant plant;
  const auto q = plant.fluxes();
  ASSERT_GT(q[0], 0.0);
  EXPECT_NEAR(q[1], q[0] * liquid_enthalpy(296.0), 1e-9);
  EXPECT_NEAR(q[2] - q[1], q[0] * (vapour_enthalpy(300.0) - liquid_enthalpy(296.0)), 1e-6);
  EXPECT_GT(q[2] - q[1], q[0] * 2.4e6) << "about the latent heat of vaporisation";
}

}  // namespace
}  // namespace noonhouse
