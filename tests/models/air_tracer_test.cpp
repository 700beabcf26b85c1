// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "models/air/tracer.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;

// Decay method of Nederhoff et al. 1985, worked out: ln(1600 / 100) / 0.5 h = 5.545 /h, given as 5.55.
TEST(AirChange, FollowsFromADecay) {
  EXPECT_NEAR(3600.0 * air_change_from_decay_1_s(2000.0, 500.0, 400.0, 1800.0), 5.55, 0.005);
  EXPECT_NEAR(3600.0 * air_change_from_decay_1_s(2000.0, 500.0, 400.0, 1800.0), 2.0 * std::log(16.0), 1e-12);
}

TEST(AirChange, CountsAGasThatCropsTookUpAlike) {
  EXPECT_NEAR(air_change_from_decay_1_s(200.0, 300.0, 400.0, 100.0), std::log(2.0) / 100.0, 1e-15);
  EXPECT_EQ(air_change_from_decay_1_s(900.0, 900.0, 400.0, 100.0), 0.0);
  EXPECT_LT(air_change_from_decay_1_s(800.0, 900.0, 400.0, 100.0), 0.0);
}

TEST(AirChange, IsRefusedWhereADecayShowsNone) {
  EXPECT_THROW(air_change_from_decay_1_s(2000.0, 400.0, 400.0, 60.0), UserError);
  EXPECT_THROW(air_change_from_decay_1_s(2000.0, 300.0, 400.0, 60.0), UserError);
  EXPECT_THROW(air_change_from_decay_1_s(400.0, 400.0, 400.0, 60.0), UserError);
  EXPECT_THROW(air_change_from_decay_1_s(2000.0, 500.0, 400.0, 0.0), UserError);
}

TEST(FlushedZones, OfOneZoneDecayByTheirAirChange) {
  const FlushedZones one({{40.0, 0.1, 0.1}}, {});
  EXPECT_NEAR(one.local_mean_age_s()[0], 400.0, 1e-9);
  EXPECT_NEAR(one.nominal_time_s(), 400.0, 1e-12);
  EXPECT_NEAR(one.slowest_decay_1_s(), 1.0 / 400.0, 1e-15);
  EXPECT_NEAR(one.air_change_efficiency(), 0.5, 1e-12);
  EXPECT_NEAR(one.mean_decay_1_s(777.0), 1.0 / 400.0, 1e-12);
  EXPECT_NEAR(one.after(400.0, {2000.0}, 400.0)[0], 400.0 + 1600.0 / std::exp(1.0), 1e-9);
  EXPECT_NEAR(one.after(0.0, {2000.0}, 400.0)[0], 2000.0, 1e-9);
}

/// Outdoor air into zone 0, on through n equal zones, out of the last.
FlushedZones chain(std::size_t n, double volume_m3, double flow_m3_s) {
  std::vector<FlushedZone> zones(n, {volume_m3 / static_cast<double>(n)});
  std::vector<ZoneStream> streams;
  for (std::size_t k = 0; k + 1 < n; ++k) streams.push_back({k, k + 1, flow_m3_s});
  zones.front().from_outdoors_m3_s = flow_m3_s;
  zones.back().to_outdoors_m3_s = flow_m3_s;
  return {std::move(zones), std::move(streams)};
}

// Zones in a row, each of time T/n: ages T/n, 2T/n, ..., and the tracer in the k-th is the Poisson sum
// exp(-x) (1 + x + ... + x^k / k!), x = n t / T. All rates are equal there: the matrix has no full set of eigenvectors.
TEST(FlushedZones, InARowAgeFromOneToTheNext) {
  const FlushedZones row = chain(3, 60.0, 0.1);
  const std::vector<double> ages = row.local_mean_age_s();
  for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(ages[k], 200.0 * static_cast<double>(k + 1), 1e-9);
  const double x = 1.7;
  const std::vector<double> left = row.after(200.0 * x, {1.0, 1.0, 1.0}, 0.0);
  EXPECT_NEAR(left[0], std::exp(-x), 1e-12);
  EXPECT_NEAR(left[1], std::exp(-x) * (1.0 + x), 1e-12);
  EXPECT_NEAR(left[2], std::exp(-x) * (1.0 + x + 0.5 * x * x), 1e-12);
  EXPECT_NEAR(row.slowest_decay_1_s(), 1.0 / 200.0, 1e-6);  // a triple eigenvalue is known to the cube root of rounding
}

// A row of n zones goes from mixed (0.5) to a piston (1): n / (n + 1).
TEST(FlushedZones, InALongRowAreAPiston) {
  for (std::size_t n : {1U, 2U, 10U, 100U}) {
    const auto size = static_cast<double>(n);
    EXPECT_NEAR(chain(n, 60.0, 0.1).air_change_efficiency(), size / (size + 1.0), 1e-9) << n;
  }
}

/// A ventilated zone with a dead end beside it.
FlushedZones dead_end(double exchange_m3_s) {
  return {{{30.0, 0.05, 0.05}, {10.0}}, {{0, 1, exchange_m3_s}, {1, 0, exchange_m3_s}}};
}

// By hand: q (tau_2 - tau_1) = V_2 and Q tau_1 = V_1 + V_2.
TEST(FlushedZones, WithADeadEndAgeThere) {
  const FlushedZones zones = dead_end(0.02);
  const std::vector<double> ages = zones.local_mean_age_s();
  EXPECT_NEAR(ages[0], 800.0, 1e-9);
  EXPECT_NEAR(ages[1], 800.0 + 500.0, 1e-9);
  EXPECT_LT(zones.air_change_efficiency(), 0.5);
  EXPECT_LT(zones.slowest_decay_1_s(), 1.0 / zones.nominal_time_s());
  // Well connected, the two are one zone.
  EXPECT_NEAR(dead_end(1e4).air_change_efficiency(), 0.5, 1e-5);
  EXPECT_NEAR(dead_end(1e4).slowest_decay_1_s(), 1.0 / 800.0, 1e-8);
}

TEST(FlushedZones, DecayFromTheirMeanToTheirSlowestRate) {
  const FlushedZones zones = dead_end(0.02);
  // At first what leaves is Q times one; between two late times the slowest rate alone is left.
  EXPECT_NEAR(zones.mean_decay_1_s(0.01), 1.0 / 800.0, 1e-7);
  const double late = (2e4 * zones.mean_decay_1_s(2e4) - 1e4 * zones.mean_decay_1_s(1e4)) / 1e4;
  EXPECT_NEAR(late / zones.slowest_decay_1_s(), 1.0, 1e-9);
}

/// Four zones with streams in circles and two ways out.
FlushedZones tangle() {
  return {{{10.0, 0.30, 0.0}, {25.0, 0.1, 0.15}, {5.0, 0.0, 0.0}, {40.0, 0.0, 0.25}},
          {{0, 1, 0.2}, {0, 2, 0.3}, {2, 0, 0.2}, {2, 3, 0.15}, {1, 3, 0.25}, {3, 1, 0.1}, {3, 2, 0.05}}};
}

// Sandberg 1981: the air that leaves is as old as volume over flow, whatever happens inside (0.15 and 0.25 m3/s here).
TEST(FlushedZones, GiveAirThatIsAsOldAsTheNominalTime) {
  const std::vector<double> ages = tangle().local_mean_age_s();
  EXPECT_NEAR((0.15 * ages[1] + 0.25 * ages[3]) / 0.4, tangle().nominal_time_s(), 1e-9);
}

// The definition of the age as the area under the decay, by Simpson's rule over 40 nominal times.
TEST(FlushedZones, HaveAgesThatAreTheAreasUnderTheirDecays) {
  const FlushedZones zones = tangle();
  const double step = 2.0;
  const int count = 4000;
  std::vector<double> area(4), now(4, 1.0);
  for (int k = 0; k <= count; ++k) {
    const double weight = k == 0 || k == count ? 1.0 : (k % 2 == 1 ? 4.0 : 2.0);
    for (std::size_t z = 0; z < 4; ++z) area[z] += weight * step / 3.0 * now[z];
    now = zones.after(step, now, 0.0);
  }
  const std::vector<double> ages = zones.local_mean_age_s();
  for (std::size_t z = 0; z < 4; ++z) EXPECT_NEAR(area[z] / ages[z], 1.0, 1e-4) << z;
}

TEST(FlushedZones, KeepWhatIsAsOutdoors) {
  for (double c : tangle().after(300.0, std::vector<double>(4, 420.0), 420.0)) EXPECT_NEAR(c, 420.0, 1e-10);
}

std::string refused(std::vector<FlushedZone> zones, std::vector<ZoneStream> streams) {
  try {
    const FlushedZones made(std::move(zones), std::move(streams));
  } catch (const UserError& error) {
    return error.what();
  }
  return "taken";
}

TEST(FlushedZones, RefuseFlowsThatCannotBe) {
  EXPECT_THAT(refused({}, {}), HasSubstr("no zone"));
  EXPECT_THAT(refused({{10.0, 0.1, 0.1}, {10.0, 0.1, 0.2}}, {}), HasSubstr("zone 1 gets 0.1 m3/s and gives 0.2"));
  EXPECT_THAT(refused({{0.0, 0.1, 0.1}}, {}), HasSubstr("zone 0 has volume 0"));
  EXPECT_THAT(refused({{10.0, -0.1, -0.1}}, {}), HasSubstr("flows of 0 or more"));
  EXPECT_THAT(refused({{10.0, 0.1, 0.1}}, {{0, 1, 0.1}}), HasSubstr("to zone 1"));
  EXPECT_THAT(refused({{10.0, 0.1, 0.1}, {10.0}, {10.0}}, {{1, 2, 0.1}, {2, 1, 0.1}}),
              HasSubstr("no outdoor air reaches zone 1"));
  EXPECT_EQ(refused({{10.0, 0.1, 0.1}, {10.0}}, {{0, 1, 0.1}, {1, 0, 0.1}}), "taken");
}

}  // namespace
}  // namespace noonhouse
