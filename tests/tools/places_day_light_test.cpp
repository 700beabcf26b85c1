// SPDX-License-Identifier: Apache-2.0
// A day's light at places in a house: shadows at the minute that geometry says, and what a shaded, an opal and a
// symmetric house must show.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <string>

#include "models/properties/sun.hpp"
#include "sim/core/errors.hpp"
#include "tools/places/day_light.hpp"
#include "tools/places/place_summary.hpp"

namespace noonhouse {
namespace {

using namespace std::chrono_literals;

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr auto kMidsummer = 2025y / 6 / 21;

/// Everything that a test may change of a house of clear glass, 6 m x 3 m, that looks south, at longitude 0.
struct House {
  double latitude_deg = 35.0, longitude_deg = 0.0;
  std::string obstacles, cover, shades, benches;
};

Scenario scenario_of(const House& house) {
  return read_scenario_text(
      fmt::format("title: Light by place\nrun:\n  start: 2025-07-14\n  length: 2 d\n"
                  "site:\n  latitude: {} deg\n  longitude: {} deg\n  altitude: 0 m\n  utc_offset: \"+00:00\"\n"
                  "  deep_soil: 16 degC\n"
                  "weather:\n  kind: invented heatwave\n  peak_day: 2\n{}"
                  "house:\n  length: 6 m\n  width: 3 m\n  eaves: 2 m\n  ridge: 2.8 m\n  bays:\n    all:\n"
                  "      share: 100 %\n{}{}benches:\n{}"
                  "tank:\n  capacity: 300 L\n  starts_with: 250 L\n  low_mark: 20 L\n  restart_mark: 40 L\n"
                  "power:\n  panel_area: 1 m2\n  battery: 600 Wh\n",
                  house.latitude_deg, house.longitude_deg, house.obstacles, house.cover, house.shades, house.benches),
      "places.yaml");
}

DayLight day_of(const House& house, const DayQuestion& question) {
  const Scenario scenario = scenario_of(house);
  return light_of_day(scenario, scenario.plans.front(), question);
}

DayQuestion clear(std::chrono::year_month_day date, const std::string& drawn = "") {
  DayQuestion out;
  out.date = date;
  out.clear_sky = true;
  out.drawn = drawn;
  return out;
}

const PlaceLight& place(const DayLight& day, const std::string& name) {
  const auto at = std::find_if(day.places.begin(), day.places.end(), [&](const auto& p) { return p.name == name; });
  NOON_ASSERT(at != day.places.end());
  return *at;
}

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }
double light_of_place(const PlaceLight& p) { return sum(p.direct_w_m2) + sum(p.soft_w_m2); }
double most(const std::vector<double>& values) { return *std::max_element(values.begin(), values.end()); }
std::size_t at(double minute) { return static_cast<std::size_t>(minute); }

/// The sun at longitude 0 at a time of midsummer day, in minutes of universal time.
SunPosition sun_at(double minute, double latitude_deg) {
  return sun_position(julian_day(2025, 6, 21, minute * 60.0), latitude_deg * kDegree, 0.0);
}

/// When the afternoon sun sinks behind a wall that runs north to south [minutes of the day]. A ray from a point to the
/// sun reaches the wall's near face, `gap_m` to the west, `rise_m` higher where
///   tan(elevation) / sin(azimuth from north, westward) = rise / gap
/// for going west by 1 takes 1 / sin of level way. The left side falls all afternoon: it is halved down to the instant.
double sinks_behind_wall(double rise_m, double gap_m, double latitude_deg) {
  double up = 13.0 * 60.0, down = 19.0 * 60.0;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (up + down);
    const SunPosition sun = sun_at(middle, latitude_deg);
    const double steepness = std::tan(sun.elevation_rad) / -std::sin(sun.azimuth_rad);
    (steepness > rise_m / gap_m ? up : down) = middle;
  }
  return 0.5 * (up + down);
}

/// Two boards 10 cm along the house at 0.8 m, in its middle and 0.5 m from its west end; a wall of 5 m whose east face
/// stands 7.9 m west of the house's middle and runs far beyond the azimuths of the afternoon.
House walled() {
  House house;
  house.benches =
      "  middle board:\n    bay: all\n    height: 80 cm\n    length: 10 cm\n    width: 50 cm\n"
      "  west board:\n    bay: all\n    height: 80 cm\n    length: 10 cm\n    width: 50 cm\n"
      "    from_first_end: 50 cm\n    from_front: 1.25 m\n";
  house.obstacles =
      "obstacles:\n  wall:\n    kind: block\n    east: -8 m\n    north: 0 m\n    faces: 90 deg\n    length: 200 m\n"
      "    height: 5 m\n";
  return house;
}

TEST(DayLightPlaces, AWallToTheWestTakesTheSunAtTheMinuteOfItsGeometry) {
  // From the middle board's middle the wall's top is 4.2 m up and 7.9 m away: 28 deg due west. The west board's middle
  // lies 2.45 m west of the house's middle: 4.2 m up and 5.45 m away, 37.6 deg. A board's half is dark when its middle
  // is; its last sun goes 5 cm further east (a third of a minute).
  const DayLight day = day_of(walled(), clear(kMidsummer));
  const struct {
    const char* name;
    double gap_m;
  } boards[] = {{"on the middle board", 7.9}, {"on the west board", 5.45}};
  for (const auto& board : boards) {
    const double dark = sinks_behind_wall(4.2, board.gap_m, 35.0);
    EXPECT_GT(dark, 15.0 * 60.0);
    const PlaceLight& p = place(day, board.name);
    for (double minute = 12.0 * 60.0; minute < dark - 1.5; ++minute)
      ASSERT_GT(p.sunlit[at(minute)], 0.5) << board.name << " at minute " << minute << ", dark at " << dark;
    for (double minute = std::ceil(dark + 0.5); minute < 1440.0; ++minute)
      ASSERT_LT(p.sunlit[at(minute)], 0.5) << board.name << " at minute " << minute << ", dark at " << dark;
    const double last = sinks_behind_wall(4.2, board.gap_m + 0.05, 35.0);
    const auto said = summary_of(p).last_direct_minute;
    ASSERT_TRUE(said);
    EXPECT_NEAR(*said + 0.5, last, 1.0) << board.name;
  }
}

TEST(DayLightPlaces, TheMorningDoesNotKnowOfTheWallToTheWest) {
  const DayLight shaded = day_of(walled(), clear(kMidsummer));
  House free = walled();
  free.obstacles.clear();
  const DayLight open = day_of(free, clear(kMidsummer));
  for (const char* name : {"on the middle board", "on the west board"}) {
    const PlaceLight &a = place(shaded, name), &b = place(open, name);
    for (std::size_t minute = 0; minute < 720; ++minute) {
      ASSERT_EQ(a.sunlit[minute], b.sunlit[minute]) << name << minute;
      ASSERT_EQ(a.direct_w_m2[minute], b.direct_w_m2[minute]) << name << minute;
    }
    EXPECT_GT(sum(b.direct_w_m2), sum(a.direct_w_m2));
    EXPECT_LT(sum(a.soft_w_m2), sum(b.soft_w_m2)) << "the wall hides some sky";
    EXPECT_EQ(a.sunlit[at(17.0 * 60.0 + 30.0)], 0.0);
    EXPECT_GT(b.sunlit[at(17.0 * 60.0 + 30.0)], 0.9);
  }
}

/// Share of the floor under a shelf of 3 m x 0.9 m at 0.8 m that the sun reaches past it: its shadow moves by
/// 0.8 m / tan(elevation) away from the sun, east by the sine and north by the cosine of the azimuth.
double lit_beneath(const SunPosition& sun) {
  const double level = 0.8 / std::tan(sun.elevation_rad);
  const double along = std::max(0.0, 1.0 - std::abs(level * std::sin(sun.azimuth_rad)) / 3.0);
  const double across = std::max(0.0, 1.0 - std::abs(level * std::cos(sun.azimuth_rad)) / 0.9);
  return 1.0 - along * across;
}

TEST(DayLightPlaces, UnderABenchTheSunComesEarlyAndLateOnly) {
  // Midsummer at the tropic: the sun stands overhead at noon, so the bench shades all the floor beneath it; by hand as
  // above for the rest. Points of the floor stand at most 0.3 m apart, so the share is good to a row of three of them
  // across: 0.33.
  House house;
  house.latitude_deg = 23.44;
  house.benches = "  bench:\n    bay: all\n    height: 80 cm\n    length: 3 m\n    width: 90 cm\n";
  const DayLight day = day_of(house, clear(kMidsummer));
  const PlaceLight &on = place(day, "on the bench"), &under = place(day, "under the bench");
  EXPECT_LT(light_of_place(under), 0.6 * light_of_place(on));
  EXPECT_GT(light_of_place(under), 0.0);
  double error = 0.0;
  int minutes = 0;
  for (std::size_t minute = 0; minute < 1440; ++minute) {
    const SunPosition sun = sun_at(static_cast<double>(minute) + 0.5, house.latitude_deg);
    if (sun.elevation_rad < 10.0 * kDegree) continue;
    ASSERT_NEAR(under.sunlit[minute], lit_beneath(sun), 0.34) << minute;
    ASSERT_GE(on.sunlit[minute], 0.99) << minute;
    error += under.sunlit[minute] - lit_beneath(sun);
    ++minutes;
    if (sun.elevation_rad > 85.0 * kDegree) {
      ASSERT_LT(under.sunlit[minute], kSomeSun) << minute;
    }
    if (sun.elevation_rad < 15.0 * kDegree) {
      ASSERT_GT(under.sunlit[minute], 0.9) << minute;
    }
  }
  EXPECT_NEAR(error / minutes, 0.0, 0.05) << "over the day the points' coarseness evens out";
}

TEST(DayLightPlaces, AnOpalRoofGivesLightWithoutSun) {
  House house = walled();
  house.obstacles.clear();
  house.cover =
      "  cover:\n    roof:\n      material: opal twin-wall polycarbonate 10 mm\n    walls:\n"
      "      material: opal twin-wall polycarbonate 10 mm\n";
  const DayLight day = day_of(house, clear(kMidsummer));
  for (const PlaceLight& p : day.places) {
    EXPECT_EQ(most(p.sunlit), 0.0) << p.name;
    EXPECT_EQ(most(p.direct_w_m2), 0.0) << p.name;
    EXPECT_GT(p.soft_w_m2[720], 0.1 * day.outdoors_w_m2[720]) << p.name;
    EXPECT_LT(p.soft_w_m2[720], 0.7 * day.outdoors_w_m2[720]) << p.name;
  }
}

TEST(DayLightPlaces, ADrawnClothTakesTheSunInProportion) {
  // A cloth outside over all, that lets 40 % through, 20 % of all straight: the direct light falls to that fifth. What
  // cloth and glass send to and fro is scattered, and soft.
  House house = walled();
  house.obstacles.clear();
  house.shades = "shades:\n  net:\n    over: all\n    transmits: 40 %\n    absorbs: 50 %\n    straight: 20 %\n";
  const DayLight away = day_of(house, clear(kMidsummer)), drawn = day_of(house, clear(kMidsummer, "net"));
  const PlaceLight &a = place(away, "on the middle board"), &d = place(drawn, "on the middle board");
  EXPECT_NEAR(d.direct_w_m2[720], 0.2 * a.direct_w_m2[720], 1e-9 * a.direct_w_m2[720]);
  EXPECT_EQ(d.sunlit[720], a.sunlit[720]) << "a fifth of the sun still is direct";
}

TEST(DayLightPlaces, ASymmetricHouseHasASymmetricClearDay) {
  // The longitude is chosen so that the sun crosses the meridian at 12:00 of the clock; over midsummer day declination
  // and the equation of time stay within 0.001 deg and 10 s of noon's. So minute 720 + k mirrors 719 - k.
  House house;
  house.longitude_deg = -equation_of_time_s(julian_day(2025, 6, 21, 43200.0)) / 240.0;
  house.benches = "  bench:\n    bay: all\n    height: 80 cm\n    length: 3 m\n    width: 90 cm\n";
  const DayLight day = day_of(house, clear(kMidsummer));
  EXPECT_NEAR(day.sunset_minute.value_or(0) - 720, 720 - day.sunrise_minute.value_or(0), 1);
  for (const PlaceLight& p : day.places) {
    double morning = 0.0, evening = 0.0;
    for (std::size_t k = 0; k < 720; ++k) {
      const double before = p.direct_w_m2[719 - k] + p.soft_w_m2[719 - k];
      const double after = p.direct_w_m2[720 + k] + p.soft_w_m2[720 + k];
      morning += before;
      evening += after;
    }
    EXPECT_NEAR(morning, evening, 0.005 * morning) << p.name;
  }
  const PlaceLight& bench = place(day, "on the bench");
  for (std::size_t k = 0; k < 300; k += 10)
    EXPECT_NEAR(bench.direct_w_m2[720 + k], bench.direct_w_m2[719 - k], 0.005 * bench.direct_w_m2[719 - k]) << k;
}

TEST(DayLightPlaces, NoPlaceIsBrighterOverTheDayThanTheOpenGround) {
  for (const auto date : {kMidsummer, 2025y / 12 / 21}) {
    const DayLight day = day_of(walled(), clear(date));
    for (const PlaceLight& p : day.places) {
      EXPECT_LT(light_of_place(p), sum(day.outdoors_w_m2)) << p.name;
      EXPECT_EQ(p.direct_w_m2[30], 0.0) << "by night";
      EXPECT_EQ(p.soft_w_m2[30], 0.0) << "by night";
    }
  }
}

TEST(DayLightPlaces, OutsideTheRunTheSkyIsClear) {
  // The run covers 14 and 15 July 2025.
  const House house = walled();
  const auto asked = [&house](std::chrono::year_month_day date, bool clear_sky) {
    DayQuestion question;
    question.date = date;
    question.clear_sky = clear_sky;
    return day_of(house, question);
  };
  EXPECT_TRUE(asked(2025y / 7 / 13, false).clear_sky);
  EXPECT_FALSE(asked(2025y / 7 / 14, false).clear_sky);
  EXPECT_FALSE(asked(2025y / 7 / 15, false).clear_sky);
  EXPECT_TRUE(asked(2025y / 7 / 16, false).clear_sky);
  EXPECT_TRUE(asked(2025y / 7 / 14, true).clear_sky);
  EXPECT_EQ(asked(2025y / 7 / 16, false).outdoors_w_m2, asked(2025y / 7 / 16, true).outdoors_w_m2);
}

TEST(DayLightPlaces, RefusesAClothThatIsNotThere) {
  House house = walled();
  house.shades = "shades:\n  green net: {}\n";
  try {
    day_of(house, clear(kMidsummer, "green nett"));
    FAIL() << "nothing was thrown";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_EQ(error.exit_status(), 21);
    EXPECT_NE(std::string(error.what()).find("did you mean \"green net\"?"), std::string::npos) << error.what();
  }
}

}  // namespace
}  // namespace noonhouse
