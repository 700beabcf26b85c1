// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/properties/constants.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "tests/support/simple_film.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

Two surface_flux(const WetSurface& law, double surface_k, double film_kg, double air_k, double w) {
  Two q{};
  law.flux(std::array{surface_k, film_kg, air_k, w}, q);
  return q;
}

// Heat and mass transfer analogy: h / h_m = rho c_p Le^(2/3) with the vapour's densities as potential. Incropera &
// DeWitt, sec. 6.7. The law's humidity ratios stand for densities of vapour: at 30 degC they differ by 3 %, which is
// what the dry air that vapour displaces makes out.
TEST(WetSurface, EvaporatesByTheHeatAndMassAnalogy) {
  const double surface_k = 303.0, air_k = 301.0, w = 0.010;
  const WetSurface law{1.0, kStandardPressure, 1e-9, simple_film(1.31, 1.0)};
  const double h = law.film.at(surface_k - air_k);
  const double density = dry_air_density(302.0, 0.019, kStandardPressure);
  const double h_m = h / (density * kDryAirHeat * std::pow(0.85, 2.0 / 3.0));
  const double vapour_at_surface = saturation_pressure_pa(surface_k) / (kGasConstantVapour * surface_k);
  const double vapour_in_air = vapour_pressure_pa(w, kStandardPressure) / (kGasConstantVapour * air_k);
  EXPECT_NEAR(surface_flux(law, surface_k, 1.0, air_k, w)[0], h_m * (vapour_at_surface - vapour_in_air),
              0.03 * h_m * vapour_at_surface);
}

/// Temperature at which a wet surface takes from the air what its evaporation costs, by halving.
double balance_k(double air_k, double w) {
  const WetSurface law{1.0, kStandardPressure, 1e-9, simple_film(1.31, 1.0)};
  double low = 250.0, high = air_k;
  for (int i = 0; i < 60; ++i) {
    const double t = 0.5 * (low + high);
    const double h = law.film.at(t - air_k);
    const Two q = surface_flux(law, t, 1.0, air_k, w);
    (q[1] - q[0] * liquid_enthalpy(t) > h * (air_k - t) ? high : low) = t;
  }
  return 0.5 * (low + high);
}

// Without sun and sky a wet surface comes to rest a little under the thermodynamic wet bulb, because vapour diffuses
// faster than heat (Le < 1): its depression is up to 1/0.90 times as deep where saturation is a straight line.
TEST(WetSurface, CoolsToTheWetBulbByItself) {
  for (const auto& [celsius, share] : {std::pair{40.0, 0.14}, std::pair{35.0, 0.3}, std::pair{20.0, 0.5}}) {
    const double air_k = celsius + 273.15, w = humidity_ratio(share * saturation_pressure_pa(air_k), kStandardPressure);
    const double bulb = wet_bulb_k(air_k, w, kStandardPressure), rest = balance_k(air_k, w);
    EXPECT_LT(rest, bulb);
    EXPECT_GT(rest, air_k - (air_k - bulb) / 0.90);
  }
  const double saturated = saturation_humidity_ratio_fast(298.0, kStandardPressure);
  EXPECT_NEAR(balance_k(298.0, saturated), 298.0, 1e-6) << "saturated air cools nothing";
}

TEST(WetSurface, CondensesBelowTheDewPointOnlyAndWarmsTheSurfaceByIt) {
  const WetSurface law{4.0, kStandardPressure, 0.1, simple_film(1.31, 1.0)};
  const double w = 0.012, dew_k = dew_point_k(w, kStandardPressure);
  EXPECT_LT(surface_flux(law, dew_k - 0.1, 0.0, 300.0, w)[0], 0.0) << "dew falls on a dry surface too";
  EXPECT_LT(surface_flux(law, dew_k - 0.1, 0.0, 300.0, w)[1], 0.0);
  EXPECT_EQ(surface_flux(law, dew_k + 0.1, 0.0, 300.0, w)[0], 0.0) << "a dry surface has nothing to give";
  EXPECT_GT(surface_flux(law, dew_k + 0.1, 0.5, 300.0, w)[0], 0.0);
}

TEST(WetSurface, DriesAtHalfItsRateWhereItsFilmIsAtItsHalf) {
  const WetSurface law{4.0, kStandardPressure, 0.1, simple_film(1.31, 1.0)};
  const double half = surface_flux(law, 300.0, 0.1, 303.0, 0.008)[0],
               wet = surface_flux(law, 300.0, 1e9, 303.0, 0.008)[0];
  EXPECT_NEAR(half, 0.5 * wet, 1e-9 * wet);
}

TEST(Runoff, LetsGoWhatIsMoreThanHeldAndNothingElse) {
  Two q{};
  const Runoff law{2.0, 50.0};
  law.flux(Two{293.15, 2.0}, q);
  EXPECT_EQ(q[0], 0.0);
  law.flux(Two{293.15, 3.0}, q);
  EXPECT_NEAR(q[0], 1.0 / 50.0, 1e-15);
  EXPECT_NEAR(q[1], q[0] * kWaterHeat * 20.0, 1e-9);
}

TEST(WetMass, ComesBackFromItsAmounts) {
  const WetMass pot{5000.0};
  for (const Two& state : {Two{300.0, 12.0}, Two{280.0, 0.0}, Two{263.15, 1.0}}) {
    Two amounts{}, back{};
    pot.amounts(state, amounts);
    pot.potentials(amounts, back);
    EXPECT_NEAR(back[0], state[0], 1e-10);
    EXPECT_EQ(back[1], state[1]);
  }
}

TEST(WetMass, KeepsItsTemperatureWhenWaterOfItsOwnTemperatureComesOrGoes) {
  const WetMass tank{4000.0};
  Two amounts{}, after{};
  tank.amounts({295.0, 200.0}, amounts);
  tank.potentials(Two{amounts[0] - 150.0 * liquid_enthalpy(295.0), 50.0}, after);
  EXPECT_NEAR(after[0], 295.0, 1e-9);
  // Mixed with as much heat capacity of colder water: the mean.
  const double more_kg = 200.0 + 4000.0 / kWaterHeat;
  tank.potentials(Two{amounts[0] + more_kg * liquid_enthalpy(285.0), 200.0 + more_kg}, after);
  EXPECT_NEAR(after[0], 290.0, 1e-9);
}

}  // namespace
}  // namespace noonhouse
