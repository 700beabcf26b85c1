// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "models/light/light_balance.hpp"
#include "models/light/radiant_room.hpp"
#include "models/properties/constants.hpp"
#include "tests/support/light_shells.hpp"

namespace noonhouse {
namespace {

struct Room {
  std::vector<double> areas;
  std::vector<RadiantPart> parts;
  RadiantRoom radiant;
};

/// The gable with two shelves; pieces of a film that lets thermal radiation through, inner parts of their own.
Room film_house(double film_emits, double film_passes) {
  const LightGeometry g(
      LightScene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.1}, {0.2, 2.8, 1.0, 1.4, 1.5, 0.0}}, {}));
  Room out;
  for (std::size_t s = 0; s < g.scene.surfaces().size(); ++s) {
    out.areas.push_back(g.scene.surfaces()[s].area_m2);
    if (s < g.scene.shell().pieces) {
      out.parts.push_back({static_cast<int>(s), 1.0, film_emits, film_passes});
    } else {
      out.parts.push_back({static_cast<int>(s), 0.3, 0.95, 0.0});
      out.parts.push_back({static_cast<int>(s), 0.7, 0.8, 0.0});
    }
  }
  out.radiant = radiant_room(g.exchange_m2, out.areas, out.parts);
  return out;
}

TEST(RadiantRoom, WhatAPartEmitsIsTakenUpOrGoesOutAndBothWaysAreAlike) {
  const Room room = film_house(0.15, 0.75);
  for (std::size_t p = 0; p < room.parts.size(); ++p) {
    double sum = 0.0;
    for (std::size_t q = 0; q < room.parts.size(); ++q) {
      EXPECT_EQ(room.radiant.between(p, q), room.radiant.between(q, p));
      sum += room.radiant.between(p, q) + room.radiant.through(p, q);
    }
    const RadiantPart& part = room.parts[p];
    EXPECT_NEAR(sum, part.emissivity * part.share * room.areas[static_cast<std::size_t>(part.surface)], 1e-12);
  }
}

/// Closed to 1e-12: with every part and the outdoors at one temperature no part gains or loses.
TEST(RadiantRoom, EqualTemperaturesExchangeNothing) {
  const Room room = film_house(0.15, 0.75);
  const double emission = kStefanBoltzmann * std::pow(295.0, 4);
  for (std::size_t p = 0; p < room.parts.size(); ++p) {
    double net = 0.0;
    for (std::size_t q = 0; q < room.parts.size(); ++q)
      net += (room.radiant.between(p, q) + room.radiant.through(p, q)) * (emission - emission);
    EXPECT_NEAR(net, 0.0, 1e-12);
  }
}

/// Two endless parallel plates exchange A sigma (T1^4 - T2^4) / (1/e1 + 1/e2 - 1)   [Incropera & DeWitt, eq. (13.24)].
TEST(RadiantRoom, ParallelPlates) {
  Grid exchange(2, 2);
  exchange(0, 1) = exchange(1, 0) = 1.0;
  const RadiantRoom room = radiant_room(exchange, {1.0, 1.0}, {{0, 1.0, 0.8, 0.0}, {1, 1.0, 0.5, 0.0}});
  EXPECT_NEAR(room.between(0, 1), 1.0 / (1.0 / 0.8 + 1.0 / 0.5 - 1.0), 1e-12);
}

/// A small body in a large room: e A; the room's own emissivity does not matter.   [Incropera & DeWitt, eq. (13.27)]
TEST(RadiantRoom, SmallBodyInALargeRoom) {
  Grid exchange(2, 2);
  exchange(0, 1) = exchange(1, 0) = 1e-4;
  exchange(1, 1) = 1.0 - 1e-4;
  const RadiantRoom room = radiant_room(exchange, {1e-4, 1.0}, {{0, 1.0, 0.6, 0.0}, {1, 1.0, 0.7, 0.0}});
  EXPECT_NEAR(room.between(0, 1) / 1e-4, 0.6, 1e-3);
}

TEST(RadiantRoom, AnOpenSideIsSeenThrough) {
  Grid exchange(2, 2);
  exchange(0, 1) = exchange(1, 0) = 1.0;
  const RadiantRoom room = radiant_room(exchange, {1.0, 1.0}, {{0, 1.0, 0.9, 0.0}, {1, 1.0, 0.0, 1.0}});
  EXPECT_NEAR(room.through(0, 1), 0.9, 1e-12);
  EXPECT_NEAR(room.between(0, 1), 0.0, 1e-12);
}

/// How far the thinned exchange is from all pairs: sum of the parts' errors over the sum of their net heat, with a cold
/// roof over parts inside that are warm to different degrees, and the centre at rest. The net heat of all stays zero.
double error_of_thinning(double least_share) {
  const Room room = film_house(0.88, 0.0);
  const std::size_t n = room.parts.size();
  const ThinnedExchange thin = thin_exchange(room.radiant.between, least_share);
  std::vector<double> emission(n), full(n, 0.0), thinned(n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    const int surface = room.parts[i].surface;
    const double kelvin =
        surface < 10 ? (surface % 4 == 1 || surface % 4 == 2 ? 284.0 : 288.0) : (surface % 3 == 0 ? 302.0 : 293.0);
    emission[i] = kStefanBoltzmann * std::pow(kelvin, 4);
  }
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) full[i] += room.radiant.between(i, j) * (emission[i] - emission[j]);
  for (const auto& pair : thin.pairs) {
    const double q = pair.area_m2 * (emission[pair.a] - emission[pair.b]);
    thinned[pair.a] += q;
    thinned[pair.b] -= q;
  }
  double weighed = 0.0, all = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    weighed += thin.to_centre_m2[i] * emission[i];
    all += thin.to_centre_m2[i];
  }
  double difference = 0.0, size = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    if (all > 0.0) thinned[i] += thin.to_centre_m2[i] * (emission[i] - weighed / all);
    difference += std::abs(full[i] - thinned[i]);
    size += std::abs(full[i]);
  }
  EXPECT_NEAR(std::accumulate(thinned.begin(), thinned.end(), 0.0), 0.0, 1e-9 * size);
  return difference / size;
}

TEST(ThinnedExchange, KeepsTheSumsAndNearlyTheParts) {
  EXPECT_LT(error_of_thinning(0.0), 1e-12);
  EXPECT_LT(error_of_thinning(0.05), 0.05);
  EXPECT_GT(error_of_thinning(2.0), 0.1) << "a centre alone is why pairs are kept";
}

TEST(ThinnedExchange, NothingDroppedIsAllPairs) {
  const Room room = film_house(0.88, 0.0);
  const ThinnedExchange thin = thin_exchange(room.radiant.between, 0.0);
  for (const double area : thin.to_centre_m2) EXPECT_EQ(area, 0.0);
}

}  // namespace
}  // namespace noonhouse
