// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "tests/support/invented_day_light.hpp"
#include "tools/places/place_summary.hpp"

namespace noonhouse {
namespace {

// On paper: 0.45 of sunlight is photosynthetic (from memory), with 4.57 umol in each joule of that (McCree 1972, Agric.
// Meteorol. 10, 443), so 1 W/m2 is 2.0565 umol/(m2 s), and it is not dark above 2.43 W/m2.
constexpr double kParPerWatt = 0.45 * 4.57e-6;

void light(PlaceLight& place, int from, int to, double sunlit, double direct_w_m2, double soft_w_m2) {
  for (int m = from; m < to; ++m) {
    const auto i = static_cast<std::size_t>(m);
    place.sunlit[i] = sunlit, place.direct_w_m2[i] = direct_w_m2, place.soft_w_m2[i] = soft_w_m2;
  }
}

DayLight evenly_lit(double outdoors_w_m2) {
  DayLight day = invented::polar_night();
  day.outdoors_w_m2.assign(kMinutesOfDay, outdoors_w_m2);
  return day;
}

TEST(PlaceSummary, ADarkPlaceHasNothing) {
  const PlaceSummary dark = summary_of(invented::dark_place("cellar"));
  EXPECT_EQ(dark.direct_h, 0.0);
  EXPECT_EQ(dark.soft_h, 0.0);
  EXPECT_EQ(dark.fleck_share, 0.0);
  EXPECT_EQ(dark.diffuse_share, 0.0);
  EXPECT_EQ(dark.dli_mol_m2, 0.0);
  EXPECT_EQ(dark.most_w_m2, 0.0);
  EXPECT_FALSE(dark.first_direct_minute);
  EXPECT_FALSE(dark.last_direct_minute);
}

TEST(PlaceSummary, AddsUpTheDayAsOnPaper) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 360, 480, 0.0, 0.0, 50.0);     // 2 h soft
  light(place, 480, 720, 1.0, 300.0, 100.0);  // 4 h of full sun
  light(place, 720, 780, 0.25, 75.0, 100.0);  // 1 h with sun on a quarter
  const PlaceSummary summary = summary_of(place);
  EXPECT_DOUBLE_EQ(summary.direct_h, 4.25);
  EXPECT_DOUBLE_EQ(summary.soft_h, 3.0);  // the hour in which most of the place is in shade is soft, too
  EXPECT_DOUBLE_EQ(summary.fleck_share, 1.0 / 5.0);
  EXPECT_EQ(summary.first_direct_minute, 480);
  EXPECT_EQ(summary.last_direct_minute, 779);
  EXPECT_DOUBLE_EQ(summary.most_w_m2, 400.0);
  const double soft_j_m2 = 3600.0 * (2 * 50.0 + 4 * 100.0 + 100.0), direct_j_m2 = 3600.0 * (4 * 300.0 + 75.0);
  EXPECT_DOUBLE_EQ(summary.diffuse_share, soft_j_m2 / (soft_j_m2 + direct_j_m2));
  EXPECT_NEAR(summary.dli_mol_m2, kParPerWatt * (soft_j_m2 + direct_j_m2), 1e-12 * summary.dli_mol_m2);
}

TEST(PlaceSummary, AShareAtItsMarkCountsAsFlecksAndAnEdgeAsNoSun) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 600, 601, kSomeSun, 20.0, 0.0);
  light(place, 601, 602, kFullSun, 380.0, 0.0);
  light(place, 602, 603, 0.951, 380.0, 0.0);
  light(place, 603, 604, 0.049, 19.0, 0.0);
  const PlaceSummary summary = summary_of(place);
  EXPECT_DOUBLE_EQ(summary.fleck_share, 2.0 / 3.0);
  EXPECT_EQ(summary.first_direct_minute, 600);
  EXPECT_EQ(summary.last_direct_minute, 602);
}

TEST(PlaceSummary, ASunBehindCloudLightsNoPlace) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 600, 660, 1.0, 0.0, 80.0);
  const PlaceSummary summary = summary_of(place);
  EXPECT_EQ(summary.direct_h, 0.0);
  EXPECT_DOUBLE_EQ(summary.soft_h, 1.0);
  EXPECT_DOUBLE_EQ(summary.diffuse_share, 1.0);
  EXPECT_FALSE(summary.first_direct_minute);
}

TEST(PlaceSummary, LightBeginsAtItsMark) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 0, 60, 0.0, 0.0, 0.999 * kLightAbovePar_mol_m2_s / kParPerWatt);
  light(place, 60, 210, 0.0, 0.0, 1.001 * kLightAbovePar_mol_m2_s / kParPerWatt);
  EXPECT_DOUBLE_EQ(summary_of(place).soft_h, 2.5);
}

TEST(PlaceSummary, ADayThatIsNotADayIsRefused) {
  PlaceLight place = invented::dark_place("bench");
  place.soft_w_m2.pop_back();
  EXPECT_DEATH(summary_of(place), "");
}

TEST(LightState, GoesFromDarkToFullSun) {
  const DayLight day = evenly_lit(400.0);
  PlaceLight place = invented::dark_place("bench");
  light(place, 10, 20, 0.0, 0.0, 19.9);    // under 5 % of outdoors
  light(place, 20, 30, 0.0, 0.0, 20.1);    // above
  light(place, 30, 40, 0.5, 100.0, 20.0);  // part of the place
  light(place, 40, 50, 1.0, 200.0, 20.0);  // all of it
  light(place, 50, 60, 0.04, 8.0, 30.0);   // the edge of a shadow
  EXPECT_EQ(light_state(day, place, 0, 10), LightState::dark);
  EXPECT_EQ(light_state(day, place, 10, 20), LightState::dim);
  EXPECT_EQ(light_state(day, place, 20, 30), LightState::soft);
  EXPECT_EQ(light_state(day, place, 30, 40), LightState::flecked);
  EXPECT_EQ(light_state(day, place, 40, 50), LightState::direct);
  EXPECT_EQ(light_state(day, place, 50, 60), LightState::soft);
}

TEST(LightState, SunForPartOfAStretchIsFlecked) {
  const DayLight day = evenly_lit(400.0);
  PlaceLight place = invented::dark_place("bench");
  light(place, 60, 75, 1.0, 200.0, 20.0);
  EXPECT_EQ(light_state(day, place, 60, 75), LightState::direct);
  EXPECT_EQ(light_state(day, place, 60, 90), LightState::flecked);
  EXPECT_EQ(light_state(day, place, 75, 90), LightState::dark);
}

TEST(LightState, AFaintSunIsSunNotDarkness) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 300, 310, 1.0, 0.5, 0.1);
  EXPECT_EQ(light_state(evenly_lit(1.0), place, 300, 310), LightState::direct);
}

TEST(MeanPar, IsTheMeanOfTheStretch) {
  PlaceLight place = invented::dark_place("bench");
  light(place, 0, 30, 1.0, 300.0, 100.0);
  EXPECT_NEAR(mean_par_mol_m2_s(place, 0, 60), kParPerWatt * 200.0, 1e-18);
  EXPECT_NEAR(outdoor_par_mol_m2_s(evenly_lit(500.0), 0, 60), kParPerWatt * 500.0, 1e-18);
}

TEST(LitMinutes, RunFromTheFirstLightToTheLast) {
  EXPECT_FALSE(lit_minutes(invented::polar_night()));
  EXPECT_EQ(lit_minutes(evenly_lit(100.0)), std::pair(0, kMinutesOfDay));
  DayLight day = invented::polar_night();
  day.outdoors_w_m2[500] = 10.0, day.outdoors_w_m2[700] = 10.0;
  EXPECT_EQ(lit_minutes(day), std::pair(500, 701));
  light(day.places[0], 710, 711, 0.0, 0.0, 10.0);  // a place may be lit longer
  EXPECT_EQ(lit_minutes(day), std::pair(500, 711));
}

}  // namespace
}  // namespace noonhouse
