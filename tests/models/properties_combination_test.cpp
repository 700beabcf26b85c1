// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <type_traits>

#include "models/properties/combination.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/core/dual.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

/// A leaf of the given share at an air of the given relative humidity.
CombinationSurface<double> leaf_at(double celsius, double humidity, double available_w_m2, double share = 1.0) {
  const double air_k = kelvin(celsius);
  return {.available_w_m2 = available_w_m2,
          .air_k = air_k,
          .deficit_pa = (1.0 - humidity) * saturation_pressure_pa(air_k),
          .heat_conductance_m_s = 0.02,
          .vapour_share = share};
}

double leaf_of(const CombinationSurface<double>& at) {
  return leaf_temperature_k(at, combination_latent_heat_w_m2(at));
}

/// The temperature at which sensible and latent heat, each as the flux it is, add up to what is available: the balance
/// of which the combination equation is the straight line.
double balanced_leaf_k(const CombinationSurface<double>& at) {
  const double air_kg_m3 = at.pressure_pa / (kGasConstantDryAir * at.air_k);
  const double vapour_pa = saturation_pressure_pa(at.air_k) - at.deficit_pa;
  const auto excess = [&](double leaf_k) {
    const double sensible = air_kg_m3 * kDryAirHeat * at.heat_conductance_m_s * (leaf_k - at.air_k);
    const double vapour_kg_m2s = at.vapour_share * at.heat_conductance_m_s * air_kg_m3 * kMolarRatio *
                                 (saturation_pressure_pa(leaf_k) - vapour_pa) / at.pressure_pa;
    return sensible + latent_heat(at.air_k) * vapour_kg_m2s - at.available_w_m2;
  };
  std::uintmax_t rounds = 200;
  const boost::math::tools::eps_tolerance<double> close(52);
  const auto bracket = boost::math::tools::toms748_solve(excess, at.air_k - 60.0, at.air_k + 60.0, close, rounds);
  return 0.5 * (bracket.first + bracket.second);
}

double secant(double from_k, double to_k) {
  return (saturation_pressure_pa(to_k) - saturation_pressure_pa(from_k)) / (to_k - from_k);
}

// The core in round numbers, by hand: s 145, gamma 67, A 300, F 0.1, D 1000, r 1:
// (145 * 300 + 67 * 0.1 * 1000) / (145 + 67 * 2) = 50200 / 279 = 179.93.
TEST(Combination, ByHand) {
  const CombinationTerms<double> terms{.slope_pa_k = 145.0,
                                       .psychrometric_pa_k = 67.0,
                                       .available = 300.0,
                                       .aerodynamic_factor = 0.1,
                                       .deficit_pa = 1000.0,
                                       .vapour_share = 0.5};
  EXPECT_NEAR(combination(terms), 179.93, 0.005);
}

// Limits and signs, properties of the equation.
TEST(Combination, IsNothingWithoutEnergyAndDeficitOrWithStomataShut) {
  for (const double share : {0.0, 0.01, 0.3, 1.0}) {
    EXPECT_EQ(combination_latent_heat_w_m2(leaf_at(25.0, 1.0, 0.0, share)), 0.0);
  }
  EXPECT_EQ(combination_latent_heat_w_m2(leaf_at(30.0, 0.4, 500.0, vapour_share(0.0, 0.02))), 0.0);
  double last = 0.0;
  for (const double conductance : {1e-6, 1e-4, 1e-3, 1e-2, 1e-1, 1e2}) {
    const double now = combination_latent_heat_w_m2(leaf_at(30.0, 0.4, 500.0, vapour_share(conductance, 0.02)));
    EXPECT_GT(now, last) << conductance;
    last = now;
  }
  EXPECT_NEAR(last / combination_latent_heat_w_m2(leaf_at(30.0, 0.4, 500.0)), 1.0, 1e-3) << "open wide is wet";
  EXPECT_LT(combination_latent_heat_w_m2(leaf_at(15.0, 1.0, -60.0)), 0.0) << "dew falls on what the night sky cools";
}

// Saturated air: the equilibrium rate s / (s + gamma) of the energy at hand [Slatyer & McIlroy 1961; from memory]. With
// s and gamma of FAO-56, Annex 2, Tables 2.4 and 2.2 (from memory): 10 degC 0.082 / 0.149, 20 degC 0.145 / 0.212, 30
// degC 0.243 / 0.310. To 0.01: s has three digits and table and definition of gamma differ by 2 %.
TEST(Combination, OfAWetSurfaceInSaturatedAirIsTheEquilibriumRate) {
  const double rows[][2] = {{10.0, 0.550}, {20.0, 0.684}, {30.0, 0.784}};
  for (const auto& [celsius, share] : rows) {
    EXPECT_NEAR(combination_latent_heat_w_m2(leaf_at(celsius, 1.0, 400.0)) / 400.0, share, 0.01) << celsius;
  }
}

// Allen et al. 1998, FAO-56: eq. (6) is eq. (3) for a surface resistance of 70 s/m and an aerodynamic one of
// 208 s/m / u_2. Example 18 (13.28 MJ/m2 a day, 16.9 degC, 0.589 kPa, 2.078 m/s, 100.1 kPa) prints 2.81 by radiation
// and 1.07 by dry air, 3.88 mm. Tolerance 2 %: eq. (6) takes 2.45 MJ/kg, 1013 J/(kg K) and air 1 % lighter for its
// vapour.
TEST(Combination, OfTheReferenceCropIsTheWorkedExample) {
  const double air_m_s = 2.078 / 208.0;
  CombinationSurface<double> crop{.available_w_m2 = 13.28e6 / 86400.0,
                                  .air_k = kelvin(16.9),
                                  .deficit_pa = 589.0,
                                  .heat_conductance_m_s = air_m_s,
                                  .vapour_share = vapour_share(1.0 / 70.0, air_m_s),
                                  .pressure_pa = 100100.0};
  const double mm_day = 86400.0 / latent_heat(crop.air_k);
  EXPECT_NEAR(combination_latent_heat_w_m2(crop) * mm_day, 3.88, 0.02 * 3.88);
  crop.deficit_pa = 0.0;
  EXPECT_NEAR(combination_latent_heat_w_m2(crop) * mm_day, 2.81, 0.02 * 2.81);
}

TEST(LeafTemperature, IsBelowTheAirWhereItTranspiresFreelyAndAboveWhereItCannot) {
  EXPECT_LT(leaf_of(leaf_at(30.0, 0.3, 150.0, 0.7)), kelvin(29.0)) << "dry air, open stomata";
  EXPECT_GT(leaf_of(leaf_at(30.0, 0.9, 500.0, 0.3)), kelvin(31.0)) << "damp air, sun";
  // Shut in the sun: all of 400 W/m2 as sensible heat. rho c_p at 30 degC: 1.164 kg/m3 * 1006 J/(kg K) (tables of dry
  // air, from memory), so 400 / (1171 * 0.02) = 17.1 K above the air.
  EXPECT_NEAR(leaf_of(leaf_at(30.0, 0.3, 400.0, 0.0)), kelvin(30.0 + 17.1), 0.05);
}

// A wet leaf without energy is a psychrometer's bulb. FAO-56, Example 4: air of 25.6 degC and 1.91 kPa at 87.9 kPa has
// its wet bulb at 19.5 degC. With the secant from air to bulb to 0.05 K (5 Pa of the printed 1.91 kPa move it by 0.03
// K); the tangent at the air's temperature falls short of the depression, by no more than a fifth.
TEST(LeafTemperature, OfAWetLeafWithoutEnergyIsTheWetBulb) {
  const double air_k = kelvin(25.6), bulb_k = kelvin(19.5);
  const CombinationSurface<double> wet{.available_w_m2 = 0.0,
                                       .air_k = air_k,
                                       .deficit_pa = saturation_pressure_pa(air_k) - 1910.0,
                                       .heat_conductance_m_s = 0.02,
                                       .pressure_pa = 87900.0};
  EXPECT_NEAR(leaf_temperature_k(wet, combination_latent_heat_w_m2(wet, secant(air_k, bulb_k))), bulb_k, 0.05);
  EXPECT_GT(leaf_of(wet), bulb_k + 0.05);
  EXPECT_LT(leaf_of(wet), bulb_k + 0.2 * (air_k - bulb_k));
  // Near saturation the tangent does: within 0.05 K of the thermodynamic wet bulb.
  const CombinationSurface<double> damp = leaf_at(25.0, 0.9, 0.0);
  const double w = humidity_ratio(0.9 * saturation_pressure_pa(damp.air_k), kStandardPressure);
  EXPECT_NEAR(leaf_of(damp), wet_bulb_k(damp.air_k, w, kStandardPressure), 0.05);
}

/// Calls with many leaves: cold to hot air, dry to saturated, losing and gaining energy, nearly shut to wet.
template <class Check>
void for_many_leaves(const Check& check) {
  for (const double celsius : {5.0, 15.0, 25.0, 35.0, 45.0}) {
    for (const double humidity : {0.1, 0.3, 0.6, 0.9, 1.0}) {
      for (const double available : {-80.0, 50.0, 200.0, 600.0}) {
        for (const double share : {0.05, 0.2, 0.5, 1.0}) check(leaf_at(celsius, humidity, available, share));
      }
    }
  }
}

// Against the balance itself, solved for the leaf's temperature: with the secant it is the same.
TEST(Combination, WithTheSecantIsTheExactBalance) {
  for_many_leaves([](const CombinationSurface<double>& at) {
    const double leaf_k = balanced_leaf_k(at);
    const double sensible = air_heat_capacity_j_m3_k(at.air_k, at.pressure_pa) * 0.02 * (leaf_k - at.air_k);
    const double latent = combination_latent_heat_w_m2(at, secant(at.air_k, leaf_k));
    EXPECT_NEAR(latent, at.available_w_m2 - sensible, 1e-9 * (std::fabs(latent) + std::fabs(sensible)));
    EXPECT_NEAR(leaf_temperature_k(at, latent), leaf_k, 1e-9);
  });
}

// With the tangent, for leaves within 3 K of the air: within 5 % of what passes between leaf and air, latent and
// sensible (half of the slope's 6 %/K over 3 K, of which gamma and the share take half); and always on one side, since
// the saturation pressure bends upwards: too little vapour, so too warm a leaf.
TEST(Combination, WithTheTangentIsCloseNearTheAirsTemperature) {
  int near_the_air = 0;
  double worst = 0.0;
  for_many_leaves([&](const CombinationSurface<double>& at) {
    const double leaf_k = balanced_leaf_k(at);
    const double sensible = air_heat_capacity_j_m3_k(at.air_k, at.pressure_pa) * 0.02 * (leaf_k - at.air_k);
    const double exact = at.available_w_m2 - sensible, tangent = combination_latent_heat_w_m2(at);
    EXPECT_LT(tangent, exact + 1e-9);
    EXPECT_GT(leaf_of(at), leaf_k - 1e-9);
    if (std::fabs(leaf_k - at.air_k) > 3.0) return;
    ++near_the_air;
    worst = std::fmax(worst, (exact - tangent) / (std::fabs(exact) + std::fabs(sensible)));
  });
  EXPECT_GT(near_the_air, 60);
  EXPECT_LT(worst, 0.05);
  EXPECT_GT(worst, 0.005) << "it is the tangent that is tested";
}

// The gradient that a solver gets, against differences; with stomata shut it is finite, where r would be infinite.
TEST(Combination, HasExactDerivativesDownToShutStomata) {
  const auto latent = [](const auto& conductance, const auto& celsius) {
    using S = std::decay_t<decltype(conductance)>;
    const S air_k = celsius + kZeroCelsius;
    return combination_latent_heat_w_m2(CombinationSurface<S>{.available_w_m2 = S(300.0),
                                                              .air_k = air_k,
                                                              .deficit_pa = 0.5 * saturation_pressure_pa(air_k),
                                                              .heat_conductance_m_s = S(0.02),
                                                              .vapour_share = vapour_share(conductance, S(0.02))});
  };
  for (const double conductance : {0.0, 0.002, 0.01}) {
    const auto d = latent(Dual<2>::input(conductance, 0), Dual<2>::input(28.0, 1));
    const double h = 1e-7, k = 1e-4;
    const double by_conductance = (latent(conductance + h, 28.0) - latent(conductance - h, 28.0)) / (2.0 * h);
    const double by_warmth = (latent(conductance, 28.0 + k) - latent(conductance, 28.0 - k)) / (2.0 * k);
    EXPECT_NEAR(d.grad[0], by_conductance, 1e-5 * std::fabs(by_conductance)) << conductance;
    EXPECT_NEAR(d.grad[1], by_warmth, 1e-5 * std::fabs(by_warmth) + 1e-9) << conductance;
    EXPECT_GT(d.grad[0], 0.0);
  }
}

}  // namespace
}  // namespace noonhouse
