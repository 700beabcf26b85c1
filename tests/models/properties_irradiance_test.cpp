// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/sun.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

// Erbs, Klein & Duffie 1982, Solar Energy 28, 293 (values from memory, recomputed from the equation; 0.766 printed
// in Duffie & Beckman, Example 2.15.1). Tolerance 0.001.
TEST(ErbsFraction, MatchesTheCorrelation) {
  const double rows[][2] = {{0.10, 0.991}, {0.22, 0.980}, {0.40, 0.840}, {0.445, 0.766},
                            {0.60, 0.440}, {0.70, 0.244}, {0.80, 0.165}, {0.85, 0.165}};
  for (const auto& [kt, fraction] : rows) EXPECT_NEAR(erbs_diffuse_fraction(kt), fraction, 0.001) << kt;
}

TEST(ErbsFraction, IsContinuousAndNeverLeavesZeroToOne) {
  for (const double kt : {0.22, 0.80}) {
    EXPECT_NEAR(erbs_diffuse_fraction(kt - 1e-9), erbs_diffuse_fraction(kt + 1e-9), 0.002) << kt;
  }
  for (double kt = -0.1; kt < 1.5; kt += 0.01) {
    ASSERT_GE(erbs_diffuse_fraction(kt), 0.16) << kt;
    ASSERT_LE(erbs_diffuse_fraction(kt), 1.0) << kt;
  }
}

// Duffie & Beckman, 4th/5th ed., Example 2.15.1: 40 N, slope 60 to the south, 20 February 9 to 10 h,
// I 1.04 MJ/m2, albedo 0.60. Tolerance 0.005 MJ/m2 (I_o between the printed 2.33 and 2.34), 0.1 deg.
TEST(TiltedHour, IsotropicExample) {
  const double latitude = 40.0 * kDeg;
  const double slope = 60.0 * kDeg;
  const double outside = extraterrestrial_hourly(latitude, 51, -45.0 * kDeg, -30.0 * kDeg) / 1e6;
  EXPECT_NEAR(outside, 2.335, 0.01);
  const double diffuse = 1.04 * erbs_diffuse_fraction(0.445);
  EXPECT_NEAR(1.04 / outside, 0.445, 0.002);
  EXPECT_NEAR(diffuse, 0.796, 0.005);
  const SunPosition sun = sun_position_from_hour_angle(cooper_declination_rad(51), latitude, -37.5 * kDeg);
  const double incidence = incidence_cosine(sun, slope, 180.0 * kDeg);
  EXPECT_NEAR(90.0 - sun.elevation_rad / kDeg, 62.2, 0.1);
  EXPECT_NEAR(std::acos(incidence) / kDeg, 37.0, 0.1);
  const double ratio = incidence / std::sin(sun.elevation_rad);
  EXPECT_NEAR(ratio, 1.714, 0.005);
  const double beam = (1.04 - diffuse) * ratio;
  EXPECT_NEAR(beam, 0.418, 0.005);
  EXPECT_NEAR(isotropic_sky_diffuse(diffuse, slope), 0.597, 0.005);
  EXPECT_NEAR(ground_reflected(1.04, 0.60, slope), 0.156, 0.005);
  EXPECT_NEAR(beam + isotropic_sky_diffuse(diffuse, slope) + ground_reflected(1.04, 0.60, slope), 1.171, 0.005);
}

/// A measured sun over a plane of slope 40 deg that faces south.
struct MeasuredSun {
  double zenith_deg, azimuth_deg, beam, diffuse;
  SkyView view() const {
    const double zenith = zenith_deg * kDeg;
    const SunPosition sun{.elevation_rad = kPi / 2.0 - zenith, .azimuth_rad = azimuth_deg * kDeg};
    const double slope = 40.0 * kDeg;
    return {zenith, incidence_cosine(sun, slope, kPi), slope, 1321.1656};
  }
};
constexpr MeasuredSun kEarly{82.8546, 66.714, 316.195, 40.4615};
constexpr MeasuredSun kHigh{10.5641, 144.766, 939.955, 118.458};
constexpr MeasuredSun kLate{72.4169, 287.041, 646.229, 62.0338};

// Hay & Davies 1980, the published equation evaluated independently for three suns. Tolerance 1e-3 W/m2.
TEST(HayDavies, ThreeSuns) {
  const SkyDiffuse early = hay_davies_sky_diffuse(kEarly.diffuse, kEarly.beam, kEarly.view());
  EXPECT_NEAR(early.total(), 27.1775, 1e-3);
  EXPECT_EQ(early.circumsolar_w_m2, 0.0);
  const SkyDiffuse high = hay_davies_sky_diffuse(kHigh.diffuse, kHigh.beam, kHigh.view());
  EXPECT_NEAR(high.isotropic_w_m2, 30.182, 1e-3);
  EXPECT_NEAR(high.circumsolar_w_m2, 72.813, 1e-3);
  EXPECT_NEAR(high.total(), 102.9949, 1e-3);
  const SkyDiffuse late = hay_davies_sky_diffuse(kLate.diffuse, kLate.beam, kLate.view());
  EXPECT_NEAR(late.isotropic_w_m2, 27.984, 1e-3);
  EXPECT_NEAR(late.circumsolar_w_m2, 5.207, 1e-3);
  EXPECT_NEAR(late.total(), 33.1909, 1e-3);
}

// Perez et al. 1990, Solar Energy 44, 271, evaluated independently for two of the suns, with their air masses.
// Tolerance 0.01 W/m2.
TEST(Perez, TwoSuns) {
  const SkyDiffuse early = perez_1990_sky_diffuse(kEarly.diffuse, kEarly.beam, 7.5883, kEarly.view());
  EXPECT_NEAR(early.isotropic_w_m2, 26.841, 0.01);
  EXPECT_EQ(early.circumsolar_w_m2, 0.0);
  EXPECT_NEAR(early.horizon_w_m2, 4.622, 0.01);
  EXPECT_NEAR(early.total(), 31.4605, 0.01);
  const SkyDiffuse late = perez_1990_sky_diffuse(kLate.diffuse, kLate.beam, 3.2793, kLate.view());
  EXPECT_NEAR(late.isotropic_w_m2, 31.727, 0.01);
  EXPECT_NEAR(late.circumsolar_w_m2, 4.480, 0.01);
  EXPECT_NEAR(late.horizon_w_m2, 9.253, 0.01);
  EXPECT_NEAR(late.total(), 45.4554, 0.01);
}

// Both models on a level plane give the diffuse back; neither is ever negative.
TEST(SkyModels, LevelPlaneReturnsTheDiffuse) {
  for (double elevation = 8.0; elevation < 90.0; elevation += 4.0) {
    for (const double beam : {0.0, 50.0, 400.0, 900.0}) {
      const double zenith = (90.0 - elevation) * kDeg;
      const SkyView level{zenith, std::cos(zenith), 0.0, 1360.0};
      const double mass = air_mass(zenith);
      ASSERT_NEAR(hay_davies_sky_diffuse(100.0, beam, level).total(), 100.0, 1e-9);
      ASSERT_NEAR(perez_1990_sky_diffuse(100.0, beam, mass, level).total(), 100.0, 1e-9);
      for (double slope = 0.0; slope <= 180.0; slope += 15.0) {
        const SkyView away{zenith, -0.5, slope * kDeg, 1360.0};
        ASSERT_GE(perez_1990_sky_diffuse(100.0, beam, mass, away).total(), 0.0);
        ASSERT_GE(hay_davies_sky_diffuse(100.0, beam, away).total(), 0.0);
      }
    }
  }
}

TEST(SkyModels, WithoutBeamHayAndDaviesIsIsotropic) {
  const SkyView view{1.0, 0.7, 0.8, 1360.0};
  EXPECT_DOUBLE_EQ(hay_davies_sky_diffuse(80.0, 0.0, view).total(), isotropic_sky_diffuse(80.0, 0.8));
}

// Liu & Jordan 1963 view factors, slope 40 deg. Tolerance 0.001 W/m2.
TEST(ViewFactors, IsotropicSkyAndGround) {
  EXPECT_NEAR(isotropic_sky_diffuse(100.0, 40.0 * kDeg), 88.302, 0.001);
  EXPECT_NEAR(ground_reflected(900.0, 0.25, 40.0 * kDeg), 26.320, 0.001);
  EXPECT_NEAR(isotropic_sky_diffuse(1.0, 1.1) + ground_reflected(1.0, 1.0, 1.1), 1.0, 1e-15);
}

// Haurwitz 1945: 1098 cos z exp(-0.059 / cos z). Tolerance 0.01 W/m2.
TEST(ClearSky, Haurwitz) {
  const double rows[][2] = {{5.0, 48.63}, {10.0, 135.74}, {30.0, 487.89}, {50.0, 778.77}, {90.0, 1035.09}};
  for (const auto& [elevation, global] : rows) EXPECT_NEAR(haurwitz_ghi(elevation * kDeg), global, 0.01) << elevation;
  EXPECT_EQ(haurwitz_ghi(0.0), 0.0);
  EXPECT_EQ(haurwitz_ghi(-0.3), 0.0);
}

// Rigollier, Bauer & Wald 2000, by hand from the printed coefficients: turbidity 3 at sea level, 60 deg (beam 956,
// diffuse 108) and 15 deg (beam 592, diffuse 59.4), extraterrestrial 1361 W/m2. Tolerance of the hand 0.5 %.
TEST(ClearSky, TurbidityFormByHand) {
  const SolarSplit high = clear_sky(60.0 * kDeg, kStandardPressure, 3.0, 1361.0);
  EXPECT_NEAR(high.beam_normal_w_m2, 956.0, 4.8);
  EXPECT_NEAR(high.diffuse_w_m2, 108.4, 0.5);
  const SolarSplit low = clear_sky(15.0 * kDeg, kStandardPressure, 3.0, 1361.0);
  EXPECT_NEAR(low.beam_normal_w_m2, 592.0, 3.0);
  EXPECT_NEAR(low.diffuse_w_m2, 59.4, 0.3);
}

// Kasten 1980, Arch. Meteorol. B 28, 45: clean dry air has the optical thickness 1 / (9.4 + 0.9 m) (from memory), on
// which the turbidity of Linke is defined; the factor 0.8662 makes the newer thickness agree with it at air mass 2.
// Tolerance 0.2 % a unit of turbidity: refraction moves the air mass by 0.01.
TEST(ClearSky, TurbidityMeansTheOlderThicknessAtAirMassTwo) {
  for (const double turbidity : {1.0, 2.0, 3.5, 5.0}) {
    const double beam = clear_sky(29.88 * kDeg, kStandardPressure, turbidity, 1000.0).beam_normal_w_m2;
    EXPECT_NEAR(beam / (1000.0 * std::exp(-turbidity * 2.0 / (9.4 + 0.9 * 2.0))), 1.0, 0.002 * turbidity) << turbidity;
  }
}

// Against the independent Haurwitz form at sea level: turbidity 3, within 8 % from 10 deg up (at 5 deg 15 %).
TEST(ClearSky, TurbidityFormAgreesWithHaurwitz) {
  for (double elevation = 10.0; elevation <= 90.0; elevation += 5.0) {
    const SolarSplit sky = clear_sky(elevation * kDeg, kStandardPressure, 3.0, kSolarConstant);
    ASSERT_NEAR(sky.global_w_m2 / haurwitz_ghi(elevation * kDeg), 1.0, 0.08) << elevation;
  }
}

TEST(ClearSky, HazeTurnsBeamToDiffuseAndAltitudeAddsLight) {
  for (double elevation = 5.0; elevation <= 90.0; elevation += 5.0) {
    SolarSplit clearer = clear_sky(elevation * kDeg, kStandardPressure, 2.0, kSolarConstant);
    const SolarSplit higher = clear_sky(elevation * kDeg, standard_pressure_pa(1500.0), 2.0, kSolarConstant);
    ASSERT_GT(higher.global_w_m2, clearer.global_w_m2);
    for (double turbidity = 2.5; turbidity < 7.0; turbidity += 0.5) {
      const SolarSplit sky = clear_sky(elevation * kDeg, kStandardPressure, turbidity, kSolarConstant);
      ASSERT_LT(sky.beam_normal_w_m2, clearer.beam_normal_w_m2) << elevation << ' ' << turbidity;
      if (elevation >= 10.0) {  // lower, the fitted diffuse gains 2 % more than the beam loses past turbidity 6
        ASSERT_LT(sky.global_w_m2, clearer.global_w_m2) << elevation << ' ' << turbidity;
      }
      ASSERT_GT(sky.diffuse_w_m2 / sky.global_w_m2, clearer.diffuse_w_m2 / clearer.global_w_m2);
      clearer = sky;
    }
  }
}

TEST(ClearSky, AirMassBranchesMeet) {
  // The optical thickness changes its form at air mass 20, near 1.9 deg: no jump beyond 1 % of the beam.
  double before = clear_sky(1.0 * kDeg, kStandardPressure, 3.0, kSolarConstant).beam_normal_w_m2;
  for (double elevation = 1.01; elevation < 3.0; elevation += 0.01) {
    const double beam = clear_sky(elevation * kDeg, kStandardPressure, 3.0, kSolarConstant).beam_normal_w_m2;
    ASSERT_GT(beam, before) << elevation;
    ASSERT_LT(beam, 1.03 * before) << elevation;
    before = beam;
  }
}

// Allen et al. 1998, FAO-56, Examples 18 and 10. Tolerance 0.02 and 0.05 MJ/m2.
TEST(ClearSky, DailyTotalsAndSunshineHours) {
  EXPECT_NEAR(fao_clear_sky(100.0, 41.09), 30.90, 0.02);
  EXPECT_NEAR(angstrom_radiation(7.1, 10.9, 25.1), 14.475, 0.05);
}

// Spencer 1971; published formulas spread by 10 W/m2: day 300, 1383.6 W/m2.
TEST(Extraterrestrial, NormalByDayAndByDistance) {
  EXPECT_NEAR(extraterrestrial_normal(300), 1383.6, 10.0);
  for (int day = 1; day <= 365; day += 7) {
    const double distance = sun_position(julian_day(2026, 1, 1, 43200.0) + day - 1, 0.0, 0.0).distance_au;
    ASSERT_NEAR(extraterrestrial_normal_at_distance(distance), extraterrestrial_normal(day), 1.5) << day;
  }
}

// Duffie & Beckman, Examples 1.10.1 and 1.10.2 (the second from memory): 43 N, 15 April, the day, and 10 to 11 h solar.
TEST(Extraterrestrial, DayAndHourOfTheTextbook) {
  const double normal = 1367.0 * (1.0 + 0.033 * std::cos(2.0 * kPi * 105 / 365)), tilt = cooper_declination_rad(105);
  EXPECT_NEAR(level_energy(normal, 43.0 * kDeg, tilt, -kPi, kPi) / 1e6, 33.8, 0.1);
  EXPECT_NEAR(level_energy(normal, 43.0 * kDeg, tilt, -30.0 * kDeg, -15.0 * kDeg) / 1e6, 3.79, 0.01);
}

// Allen et al. 1998, FAO-56, Example 8: 20 S, day 246, inverse relative distance 0.985 and sunset at 1.527 rad: what is
// left of its eq. (21), 24 (60) / pi 0.0820 dr [...], with the printed 0.120 rad. Tolerance as the day's: 0.05 MJ/m2.
TEST(Extraterrestrial, DistanceOfTheWorkedExample) {
  const double bracket =
      1.527 * std::sin(-20.0 * kDeg) * std::sin(0.120) + std::cos(-20.0 * kDeg) * std::cos(0.120) * std::sin(1.527);
  EXPECT_NEAR(extraterrestrial_daily(-20.0 * kDeg, 246) / 1e6, 24.0 * 60.0 / kPi * 0.0820 * 0.985 * bracket, 0.05);
}

// Allen et al. 1998, FAO-56, Example 8 (20 S, day 246) and Examples 17, 18, 20. Tolerance 0.05; 0.02 MJ/m2.
TEST(Extraterrestrial, DaysOfTheWorkedExamples) {
  EXPECT_NEAR(extraterrestrial_daily(-20.0 * kDeg, 246) / 1e6, 32.2, 0.05);
  EXPECT_NEAR(extraterrestrial_daily(13.73 * kDeg, 105) / 1e6, 38.06, 0.02);
  EXPECT_NEAR(extraterrestrial_daily(50.80 * kDeg, 187) / 1e6, 41.09, 0.02);
  EXPECT_NEAR(extraterrestrial_daily(45.72 * kDeg, 196) / 1e6, 40.55, 0.02);
}

// A property of the formula.
TEST(Extraterrestrial, NothingInPolarNightAndHoursSumToTheDay) {
  EXPECT_EQ(extraterrestrial_daily(80.0 * kDeg, 355), 0.0);
  EXPECT_EQ(extraterrestrial_hourly(43.0 * kDeg, 105, -kPi, -0.9 * kPi), 0.0);
  for (const double latitude : {-60.0, -20.0, 0.0, 43.0, 80.0}) {
    double sum = 0.0;
    for (int hour = -12; hour < 12; ++hour) {
      sum += extraterrestrial_hourly(latitude * kDeg, 172, hour * kPi / 12.0, (hour + 1) * kPi / 12.0);
    }
    EXPECT_NEAR(sum, extraterrestrial_daily(latitude * kDeg, 172), 1e-3) << latitude;
  }
}

// Kasten & Young 1989, Appl. Opt. 28, 4735 (values from memory, recomputed from the equation); beside them Bemporad
// 1904, integrated through a measured atmosphere (from memory): z, mass, tolerance, Bemporad within 1 %.
TEST(AirMass, MatchesTheTables) {
  const double rows[][4] = {{0.0, 1.000, 0.002, 1.000},  {60.0, 1.994, 0.002, 1.995}, {70.0, 2.904, 0.005, 2.904},
                            {75.0, 3.813, 0.005, 3.816}, {80.0, 5.586, 0.005, 5.60},  {85.0, 10.31, 0.02, 10.39}};
  for (const auto& [zenith, mass, tolerance, measured] : rows) {
    EXPECT_NEAR(air_mass(zenith * kDeg), mass, tolerance) << zenith;
    EXPECT_NEAR(air_mass(zenith * kDeg) / measured, 1.0, 0.01) << zenith;
  }
  EXPECT_NEAR(air_mass(90.0 * kDeg), 38.0, 0.5);
  EXPECT_EQ(air_mass(95.0 * kDeg), air_mass(90.0 * kDeg));
}

// Closure by definition, to 1e-6 W/m2; nothing negative; no beam with the sun down.
TEST(SplitGlobal, ClosesForAnyInput) {
  for (double elevation = -10.0; elevation <= 90.0; elevation += 1.0) {
    for (double global = -2.0; global < 1600.0; global += 37.0) {
      const SolarSplit split = split_global(global, elevation * kDeg, 1360.0);
      const double sine = std::sin(elevation * kDeg);
      ASSERT_NEAR(split.beam_normal_w_m2 * sine + split.diffuse_w_m2, std::fmax(global, 0.0), 1e-6);
      ASSERT_GE(split.beam_normal_w_m2, 0.0);
      ASSERT_LE(split.beam_normal_w_m2, 1360.0);
      ASSERT_GE(split.diffuse_w_m2, 0.0);
      if (elevation <= 0.0) {
        ASSERT_EQ(split.beam_normal_w_m2, 0.0);
      }
    }
    const SolarSplit clear = clear_sky(elevation * kDeg, 97000.0, 4.0, 1360.0);
    const double sine = std::fmax(std::sin(elevation * kDeg), 0.0);
    ASSERT_NEAR(clear.beam_normal_w_m2 * sine + clear.diffuse_w_m2, clear.global_w_m2, 1e-6);
    ASSERT_GE(clear.diffuse_w_m2, 0.0);
    ASSERT_GE(clear.beam_normal_w_m2, 0.0);
  }
}

// McCree 1972 (4.57 umol a joule of photosynthetic light), share 0.45: products. Tolerance 0.5 %.
TEST(Par, FromGlobal) {
  EXPECT_NEAR(kParPerJoule * 1e6, 4.57, 0.005);
  EXPECT_NEAR(par_from_global(1.0) * 1e6, 2.057, 0.005 * 2.057);
  EXPECT_NEAR(par_from_global(20e6), 41.1, 0.005 * 41.1);  // a day of 20 MJ/m2, in mol/m2
}

// The light of a day by definition: 500 umol/(m2 s) for twelve hours is 21.6 mol/m2; sunlight has it at 243 W/m2.
// Tolerance 0.5 %.
TEST(Par, OfTwelveHoursOfEvenLight) {
  EXPECT_NEAR(par_from_global(243.0) * 1e6, 500.0, 0.005 * 500.0);
  EXPECT_NEAR(par_from_global(243.0 * 12.0 * 3600.0), 21.6, 0.005 * 21.6);
}

}  // namespace
}  // namespace noonhouse
