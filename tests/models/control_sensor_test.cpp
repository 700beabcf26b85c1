// SPDX-License-Identifier: Apache-2.0
// What instruments show for ever where they hang, and how they come to it.
#include <gtest/gtest.h>

#include <cmath>

#include "models/control/sensor.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/convection.hpp"

namespace noonhouse {
namespace {

/// Where an instrument hangs, and how much too high it reads.
struct SensorPlace {
  double air_k = 305.0, share = 0.35, light_w_m2 = 0.0, wetness = 0.0, bias = 0.0;
  double w() const { return humidity_ratio(share * saturation_pressure_fast_pa(air_k), kStandardPressure); }
};

/// What it shows once it has settled: its law is a straight line in the reading, so one flux tells.
template <class L>
double shown(const L& law, const SensorPlace& p) {
  std::array<double, 1> q{};
  law.flux(std::array{0.0, p.air_k, p.w(), p.light_w_m2, p.wetness, p.bias}, q);
  return q[0] * law.time_constant_s;
}

const ThermometerLag kShielded{90.0, {kStandardPressure, 0.0, 25.0}}, kBare{90.0, {kStandardPressure, 0.1, 25.0}};
const HygrometerLag kHygrometer{90.0, {kStandardPressure, 0.1, 25.0}};
const DeficitLag kDeficit{90.0, {kStandardPressure, 0.1, 25.0}};

TEST(Thermometer, FollowsTheAirWithItsLagWhereNothingDisturbsIt) {
  std::array<double, 1> q{};
  for (const ThermometerLag& law : {ThermometerLag{90.0, {}}, kShielded, kBare}) {
    law.flux(std::array{295.0, 301.0, 0.010, 0.0, 0.0, 0.0}, q);
    EXPECT_DOUBLE_EQ(q[0], 6.0 / 90.0);
    law.flux(std::array{301.0, 301.0, 0.010, 0.0, 0.0, 0.0}, q);
    EXPECT_EQ(q[0], 0.0);
  }
}

TEST(Thermometer, ErrsByItsBias) {
  EXPECT_NEAR(shown(kBare, {.bias = 0.7}) - shown(kBare, {}), 0.7, 1e-9);
  EXPECT_NEAR(shown(kBare, {.bias = -0.7}) - shown(kBare, {}), -0.7, 1e-9);
}

// a G / h on paper: 0.1 * 500 / 25 = 2 K.
TEST(Thermometer, IsTooWarmInTheSunInProportion) {
  EXPECT_NEAR(shown(kBare, {.light_w_m2 = 500.0}) - 305.0, 2.0, 1e-9);
  EXPECT_NEAR(shown(kBare, {.light_w_m2 = 1000.0}) - 305.0, 4.0, 1e-9);
  EXPECT_NEAR(shown(kBare, {.air_k = 280.0, .light_w_m2 = 500.0}) - 280.0, 2.0, 1e-9) << "however warm the air is";
  EXPECT_EQ(shown(kShielded, {.light_w_m2 = 1000.0}), shown(kShielded, {})) << "a shield that draws air";
  // WMO-No. 8, vol. I, ch. 2 (from memory): without a shield up to 25 K. A black body, light from above half, in calm.
  const ThermometerLag black{90.0, {kStandardPressure, 0.25, 11.0}};
  EXPECT_NEAR(shown(black, {.light_w_m2 = 1000.0}) - 305.0, 25.0, 5.0);
}

// The header's film: a sphere of 10 mm in 0.3 m/s at 300 K; half a unit of its last digit.
TEST(Thermometer, HasTheFilmOfASmallSphereInAGentleDraught) {
  const double length = 0.010, prandtl = 0.707;  // Incropera & DeWitt, 5th ed., table A.4, 300 K
  const double nusselt = sphere_nusselt(reynolds_number(0.3, length, 300.0, kStandardPressure), prandtl);
  EXPECT_NEAR(coefficient_from_nusselt(nusselt, length, 300.0), SensorBody{}.film_w_m2_k, 0.5);
}

TEST(Thermometer, IsAWetBulbInTheSpray) {
  for (const double air_k : {285.0, 305.0, 318.0}) {
    for (const double share : {0.1, 0.35, 0.8}) {
      const SensorPlace dry{.air_k = air_k, .share = share}, wet{.air_k = air_k, .share = share, .wetness = 1.0};
      const double bulb = wet_bulb_k(air_k, dry.w(), kStandardPressure);
      EXPECT_NEAR(shown(kShielded, wet), bulb, 0.002) << air_k << " " << share;
      SensorPlace half = wet;
      half.wetness = 0.5;
      EXPECT_NEAR(shown(kShielded, dry) - shown(kShielded, half), 0.5 * (air_k - bulb), 0.002);
    }
  }
  // The other way by Stull 2011, eq. (1), which errs by 0.65 K at most here.
  EXPECT_NEAR(shown(kShielded, {.air_k = 305.15, .wetness = 1.0}), stull_wet_bulb_k(305.15, 0.35), 0.65);
  EXPECT_NEAR(shown(kShielded, {.share = 1.0, .wetness = 1.0}), 305.0, 1e-6) << "nothing dries in saturated air";
}

TEST(Hygrometer, ShowsTheAirWhereNothingDisturbsIt) {
  EXPECT_NEAR(shown(kHygrometer, {.share = 0.4}), 0.4, 1e-12);
  EXPECT_NEAR(shown(kHygrometer, {.share = 0.4, .bias = 0.05}), 0.45, 1e-12);
  std::array<double, 1> q{};
  HygrometerLag{90.0, {}}.flux(std::array{0.4, 305.0, SensorPlace{.share = 0.4}.w(), 0.0, 0.0, 0.0}, q);
  EXPECT_NEAR(q[0], 0.0, 1e-15);
}

// At 305 K saturation rises by some 5.7 % a kelvin (2.0 K: 11.8 %), so 0.40 shows as 0.40 / 1.118.
TEST(Hygrometer, IsTooDryInTheSunAndSaturatedInTheSpray) {
  EXPECT_NEAR(shown(kHygrometer, {.share = 0.4, .light_w_m2 = 500.0}), 0.4 / 1.118, 0.002);
  for (const double share : {0.1, 0.4, 0.9}) {
    EXPECT_NEAR(shown(kHygrometer, {.share = share, .wetness = 1.0}), 1.0, 1e-12);
    const double half = shown(kHygrometer, {.share = share, .wetness = 0.5});
    EXPECT_GT(half, 0.5 * (1.0 + share)) << "it is colder besides";
    EXPECT_LT(half, 1.0);
  }
  EXPECT_NEAR(shown(kHygrometer, {.share = 1.0}), 1.0, 1e-12);
}

// 30 degC and 50 %: e_s = 4.243 kPa [Allen et al. 1998, FAO-56, annex 2, table 2.3], deficit 2.12 kPa.
TEST(DeficitInstrument, ShowsTheDeficitOfTheAir) {
  EXPECT_NEAR(shown(kDeficit, {.air_k = 303.15, .share = 0.5}), 2121.5, 5.0);
  EXPECT_NEAR(shown(kDeficit, {.air_k = 303.15, .share = 0.5, .bias = -100.0}), 2021.5, 5.0);
  EXPECT_NEAR(shown(kDeficit, {.share = 1.0}), 0.0, 1e-9);
}

TEST(DeficitInstrument, AgreesWithWhatThermometerAndHygrometerShowInItsPlace) {
  for (const SensorPlace& p :
       {SensorPlace{}, SensorPlace{.light_w_m2 = 600.0}, SensorPlace{.share = 0.7, .wetness = 0.3},
        SensorPlace{.air_k = 290.0, .light_w_m2 = 300.0, .wetness = 0.6}}) {
    const double expected = saturation_pressure_fast_pa(shown(kBare, p)) * (1.0 - shown(kHygrometer, p));
    EXPECT_NEAR(shown(kDeficit, p), expected, 1e-6);
  }
  EXPECT_GT(shown(kDeficit, {.light_w_m2 = 500.0}), shown(kDeficit, {}));
  EXPECT_NEAR(shown(kDeficit, {.wetness = 1.0}), 0.0, 1e-9);
}

double wetting(double reading, double share) {
  std::array<double, 1> q{};
  SensorWetness{20.0, 240.0}.flux(std::array{reading, share}, q);
  return q[0];
}

TEST(SensorWetness, RisesInTheSprayAndFallsWithoutItEachAtItsPace) {
  EXPECT_DOUBLE_EQ(wetting(0.0, 1.0), 1.0 / 20.0);
  EXPECT_DOUBLE_EQ(wetting(0.5, 1.0), 0.5 / 20.0);
  EXPECT_DOUBLE_EQ(wetting(1.0, 0.0), -1.0 / 240.0);
  EXPECT_DOUBLE_EQ(wetting(0.5, 0.0), -0.5 / 240.0);
}

TEST(SensorWetness, RestsDryOrWetAndNeverLeavesItsRange) {
  EXPECT_EQ(wetting(0.0, 0.0), 0.0);
  EXPECT_EQ(wetting(1.0, 1.0), 0.0);
  for (const double share : {0.0, 0.2, 0.7, 1.0}) {
    EXPECT_GE(wetting(0.0, share), 0.0);
    EXPECT_LE(wetting(1.0, share), 0.0);
  }
  // Half the spray: 0.5 / 20 against 0.5 / 240, at rest with 12 parts of 13 wet.
  EXPECT_NEAR(wetting(12.0 / 13.0, 0.5), 0.0, 1e-15);
}

}  // namespace
}  // namespace noonhouse
