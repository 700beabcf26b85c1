// SPDX-License-Identifier: Apache-2.0
// Thick stems and thin leaves in sun and clear nights, against what was measured.
//
// What the two lumps of a body can say: the mean of its half that looks to the sun and of its half that does not. What
// they cannot: an apex, which sees only sky and is the coldest place of a stem (Nobel 1980, Ecology 61, 1, abstract:
// the minimum of the apex under one night 7.7 degC for Carnegiea gigantea, 5.9 for Lemaireocereus thurberi, 3.9 for
// immature Lophocereus schottii; 10 mm of hair on it 2.4 K warmer); spines, ribs and hair, which those figures turn on;
// and the heat that comes up a stem from below. So only the order of the three, and that they lie apart by kelvins, is
// asked of stems of three widths.
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/sky.hpp"
#include "tests/support/plant_in_air.hpp"

namespace noonhouse {
namespace {

constexpr double kTissueDensity = 1000.0, kTissueHeat = 3800.0;  // mostly water: from memory

/// Upright round stems: by a square metre of half their surface a column of (pi d^2 / 4) / (pi d / 2) = d / 2 of
/// tissue.
PlantInAir stems(double width_m) {
  PlantInAir out;
  out.leaf_m2 = 1.0;
  out.leaf_size_m = width_m;
  out.heat_j_k = kTissueDensity * kTissueHeat * 0.5 * width_m;
  out.between_w_k = between_sides_w_m2_k(width_m);
  out.sides = {{0.5}, {0.5}};
  out.stomata.least_m_s = out.stomata.most_m_s = 0.0;
  return out;
}
double mean_k(const PlantInAir::Result& rest, std::size_t mark) {
  return 0.5 * (rest.at(mark, rest.tissue[0]) + rest.at(mark, rest.tissue[1]));
}

/// A kind of the library in full sun from above on level ground, air that hardly moves, surroundings as warm as the air
/// (warm ground below, cool sky above): how much warmer than the air its sunlit side gets by a noon of 4 hours [K].
double rise_in_full_sun(const char* kind_name) {
  const PlantKind& kind = *find_plant_kind(kind_name);
  PlantInAir plant = PlantInAir::of_kind(kind);
  plant.all_at(303.15);
  plant.humidity = 0.2;
  const double caught = 1.0 - std::exp(-kLeafExtinction * kind.leaf_area_index.value);
  plant.sides[0].absorbed_w = 1000.0 * caught * kind.absorptance.value;
  plant.sides[0].light_w_m2 = 1000.0;
  const auto rest = plant.run(4_h);
  testing::Test::RecordProperty(std::string(kind_name), std::to_string(rest(rest.tissue[0]) - plant.air_k));
  return rest(rest.tissue[0]) - plant.air_k;
}

// Gates, Alderfer & Taylor 1968, Science 159, 994, abstract: small leaves of desert plants within 3 K of the air,
// Opuntia in the same place 10 to 16 K above it. Massive stems 10 to 20 K (Nobel 1988, from memory).
TEST(Succulents, AreAsHotInFullSunAsWasMeasured) {
  const double thick = rise_in_full_sun("sun succulent");
  EXPECT_GT(thick, 10.0);
  EXPECT_LT(thick, 20.0);
  const double rosette = rise_in_full_sun("shade succulent");
  EXPECT_GT(rosette, 5.0);
  EXPECT_LT(rosette, 16.0);
}
TEST(Succulents, SmallLeavesStayWithinAFewKelvinOfTheAirInTheSameSun) {
  PlantInAir plant = PlantInAir::of_kind(*find_plant_kind("fruiting crop"));
  plant.all_at(303.15);
  plant.humidity = 0.2;
  plant.leaf_size_m = 0.01;  // leaflets of a desert shrub; from memory
  plant.leaf_m2 = 1.0;
  plant.sides = {{.absorbed_w = 1000.0 * 0.5 * (1.0 - std::exp(-kLeafExtinction)), .light_w_m2 = 1000.0}};
  plant.through_m_s = 1.0;  // a light wind of the open
  plant.stomata.most_m_s = 3e-3;
  const auto rest = plant.run(4_h);
  EXPECT_NEAR(rest(rest.tissue[0]), plant.air_k, 3.0);
}

// The sunlit side of a pad 20 mm thick that takes up 300 W/m2: 300 W go through the skin of either side, what gets to
// the shaded one by conduction. Worked out here from the same films, to 0.02 K.
TEST(Succulents, ConductHeatFromTheirSunlitSideToTheOther) {
  PlantInAir plant = stems(0.1);
  plant.all_at(303.15);
  plant.sides[0].absorbed_w = 300.0;
  const auto rest = plant.run(kDay * 4);
  const double sunlit = rest(rest.tissue[0]), shaded = rest(rest.tissue[1]);
  const auto loses = [&](double t) {  // a square metre of skin
    return plant.film().at(t - plant.air_k, 0.0, 0.0) * (t - plant.air_k) +
           0.95 * (blackbody_emission(t) - blackbody_emission(plant.walls_k));
  };
  EXPECT_NEAR(loses(sunlit) + loses(shaded), 300.0, 1e-3);
  EXPECT_NEAR(0.55 / 0.05 * (sunlit - shaded), loses(shaded), 1e-3) << "half the thickness of wet tissue, by hand";
  EXPECT_GT(sunlit, shaded + 3.0);
  EXPECT_GT(shaded, plant.air_k + 3.0);
}

/// A clear calm night of 13 hours after a mild day: air from 18 to 2 degC by dawn, what is seen of sky and ground 12 K
/// below that (half the sky at 20 K less, half the ground near the air: from memory).
PlantInAir clear_night(PlantInAir plant) {
  plant.all_at(291.15);
  plant.humidity = 0.3;
  for (int hour = 0; hour <= 13; ++hour) {
    const double air = 291.15 - 16.0 * std::sin(0.5 * kPi * hour / 13.0);
    plant.air_over_time.emplace_back(1_h * hour, air);
    plant.walls_over_time.emplace_back(1_h * hour, air - 12.0);
  }
  return plant;
}
double coldest_c(const PlantInAir& plant) {
  const auto rest = clear_night(plant).run(13_h);
  double out = 1e3;
  for (std::size_t mark = 0; mark < rest.marks.marks(); ++mark) out = std::min(out, mean_k(rest, mark));
  return out - kZeroCelsius;
}

// Nobel 1980 (above), abstract: the thicker the form the warmer its minimum, 7.7, 5.9 and 3.9 degC; and Nobel 1980
// (northern limits of Carnegiea gigantea), abstract: growing thicker raises it by more than 3 K. Widths 0.3, 0.15 and
// 0.06 m: from memory.
TEST(Succulents, ThickerStemsKeepWarmerThroughAClearNight) {
  const double giant = coldest_c(stems(0.3)), middle = coldest_c(stems(0.15)), slender = coldest_c(stems(0.06));
  RecordProperty("minima", std::to_string(giant) + " " + std::to_string(middle) + " " + std::to_string(slender));
  EXPECT_GT(giant, middle + 1.0);
  EXPECT_GT(middle, slender + 1.0);
  EXPECT_GT(giant - slender, 3.0);
  const auto leaf = [] {
    PlantInAir thin = stems(0.06);
    thin.heat_j_k = kTissueDensity * kTissueHeat * 0.3e-3;
    return coldest_c(thin);
  }();
  EXPECT_LT(leaf, slender);
  EXPECT_LT(leaf, 2.0) << "colder than the air: nothing stored";
  EXPECT_GT(leaf, 2.0 - 12.0);
}

/// The coldest skin of a long round stem in the same night, with conduction along the radius resolved: rings of finite
/// volume, implicit in time, apart from engine, stores and laws but for the film. Conductivity and heat as the library.
double coldest_skin_c(double width_m) {
  constexpr std::size_t kRings = 40;
  const PlantInAir plant = clear_night(stems(width_m));
  const TissueFilm film = plant.film();
  const double radius = 0.5 * width_m, ring = radius / kRings, step_s = 20.0;
  std::vector<double> t(kRings, plant.tissue_k), heat(kRings), out(kRings, 0.0);  // by metre of stem
  for (std::size_t i = 0; i < kRings; ++i) {
    const double mid = (static_cast<double>(i) + 0.5) * ring, outer = (static_cast<double>(i) + 1.0) * ring;
    heat[i] = kTissueDensity * kTissueHeat * 2.0 * kPi * mid * ring / step_s;
    out[i] =
        2.0 * kPi * outer * 0.55 / (i + 1 < kRings ? ring : 0.5 * ring);  // to the next ring; of the last to the skin
  }
  double coldest = 1e3, skin = t.back();
  for (double now = step_s; now <= 13.0 * 3600.0; now += step_s) {
    const double air = 291.15 - 16.0 * std::sin(0.5 * kPi * now / (13.0 * 3600.0)), seen = air - 12.0;
    for (int round = 0; round < 15; ++round) {
      const double h = film.at(skin - air, 0.0, 0.0);
      const double radiant = 0.95 * kStefanBoltzmann * (skin * skin + seen * seen) * (skin + seen);
      const double around = kPi * width_m;
      skin = (out.back() * t.back() + around * (h * air + radiant * seen)) / (out.back() + around * (h + radiant));
    }
    coldest = std::min(coldest, skin);
    std::vector<double> diagonal(kRings), right(kRings);
    for (std::size_t i = 0; i < kRings; ++i) {
      diagonal[i] = heat[i] + out[i] + (i > 0 ? out[i - 1] : 0.0);
      right[i] = heat[i] * t[i] + (i + 1 == kRings ? out[i] * skin : 0.0);
      if (i == 0) continue;
      const double share = out[i - 1] / diagonal[i - 1];
      diagonal[i] -= share * out[i - 1];
      right[i] += share * right[i - 1];
    }
    for (std::size_t i = kRings; i-- > 0;) t[i] = (right[i] + (i + 1 < kRings ? out[i] * t[i + 1] : 0.0)) / diagonal[i];
  }
  return coldest - kZeroCelsius;
}

// What the two lumps leave out of a thick stem, the fall of temperature to its skin, is within 1.5 K of the night's
// minimum: 4.6, -0.3 and -1.9 degC against 3.4, 0.3 and -1.9 of the resolved skin when this was written. Both lie
// further apart in this invented night (6 K) than the apices that were measured (3.8 K).
TEST(Succulents, AreByNightWithinAKelvinAndAHalfOfAStemWithItsConductionResolved) {
  std::string found;
  for (const double width : {0.3, 0.15, 0.06}) {
    const double skin = coldest_skin_c(width), lumps = coldest_c(stems(width));
    EXPECT_NEAR(lumps, skin, 1.5) << width;
    found += std::to_string(skin) + " ";
  }
  RecordProperty("skins", found);
}

// Ten millimetres of hair between skin and air keep the surface beneath warmer (2.4 K at an apex: Nobel 1980). The
// model has no hair; the nearest thing is a skin whose emission is cut, and it must work in that direction.
TEST(Succulents, LoseLessByNightTheLessTheyEmit) {
  PlantInAir bare = stems(0.3), covered = stems(0.3);
  covered.emissivity = 0.5;
  EXPECT_GT(coldest_c(covered), coldest_c(bare) + 0.5);
}

/// Held in a gale, a body follows its air with the time constant C / (2 A h); 5 m/s drown free convection, which the
/// third power leaves 1 % at most.
TEST(Succulents, LagByTheirMassOverTheirFilm) {
  struct Body {
    PlantInAir plant;
    double tau_s;
  };
  std::vector<Body> bodies;
  for (const double width : {0.3, 0.06, 0.0006}) {
    PlantInAir plant = stems(std::max(width, 0.06));
    plant.heat_j_k = kTissueDensity * kTissueHeat * 0.5 * width;
    plant.emissivity = 0.0;
    plant.through_m_s = 5.0;
    plant.all_at(293.15);
    plant.tissue_k = 303.15;
    const double density = plant.density();
    const double h = density * kDryAirHeat * 0.003 * std::sqrt(std::sqrt(25.0 + 0.01) / plant.leaf_size_m);
    bodies.push_back({plant, plant.heat_j_k / (2.0 * h)});
  }
  for (const Body& body : bodies) {
    const Tick tau{static_cast<std::int64_t>(std::lround(1000.0 * body.tau_s))};
    const auto rest = body.plant.run(tau);
    EXPECT_NEAR((rest(rest.tissue[0]) - 293.15) / 10.0, std::exp(-1.0), 0.01) << body.tau_s;
    EXPECT_NEAR(rest(rest.tissue[0]), rest(rest.tissue[1]), 1e-9);
  }
  EXPECT_GT(bodies[0].tau_s, 3.0 * 3600.0) << "hours";
  EXPECT_LT(bodies[2].tau_s, 60.0) << "a leaf: half a minute";
}

// In the air of a day, a sine of 24 hours, a thick stem is at its warmest hours after the air, a leaf with it. For a
// linear body atan(omega C / (2 A U)) / omega; U about 9 W/(m2 K) of film and radiation, so 4 to 5 h for 0.3 m.
TEST(Succulents, ThickStemsAreWarmestHoursAfterTheAir) {
  const auto warmest_h = [](double width_m, double thickness_m) {
    PlantInAir plant = stems(width_m);
    plant.heat_j_k = kTissueDensity * kTissueHeat * 0.5 * thickness_m;
    for (int hour = 0; hour <= 72; ++hour) {
      const double air = 293.15 + 8.0 * std::sin(2.0 * kPi * hour / 24.0);
      plant.air_over_time.emplace_back(1_h * hour, air);
      plant.walls_over_time.emplace_back(1_h * hour, air);
    }
    const auto rest = plant.run(kDay * 3, 10_min);
    std::size_t best = 48 * 6;
    for (std::size_t mark = best; mark < rest.marks.marks(); ++mark)
      if (mean_k(rest, mark) > mean_k(rest, best)) best = mark;
    return static_cast<double>(best) / 6.0 - 48.0 - 6.0;  // the air's own peak is at 6 h
  };
  const double u = 9.0, omega = 2.0 * kPi / 86400.0;
  const double linear = std::atan(omega * kTissueDensity * kTissueHeat * 0.15 / (2.0 * u)) / omega / 3600.0;
  EXPECT_NEAR(warmest_h(0.3, 0.3), linear, 0.7);
  EXPECT_GT(warmest_h(0.3, 0.3), warmest_h(0.06, 0.06) + 2.0);
  EXPECT_NEAR(warmest_h(0.06, 0.0006), 0.0, 0.2);
}

}  // namespace
}  // namespace noonhouse
