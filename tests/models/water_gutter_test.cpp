// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/water/gutter.hpp"
#include "models/water/gutter_size.hpp"

namespace noonhouse {
namespace {

using Six = std::array<double, 6>;
enum Way { kTank = 0, kTankHeat, kFlush, kFlushHeat, kLost, kLostHeat };
constexpr double kHour = 3600.0;

Six flows(const Gutter& law, double rain_kg_m2_s, double chamber_kg = 0.0, double air_k = 288.15) {
  Six q{};
  law.flux(std::array{rain_kg_m2_s, air_k, chamber_kg}, q);
  return q;
}

/// 24 m2 of tiles on a half-round gutter that carries 0.8 kg/s, with a chamber of 5 kg.
Gutter tiles() { return {24.0, 0.80, 0.90, 0.8, 5.0}; }

// A depth of 1 mm over 1 m2 is 1 L: definition.
TEST(Gutter, BringsALitreOfAMillimetreOverASquareMetre) {
  EXPECT_DOUBLE_EQ(kHour * flows({1.0, 1.0, 1.0, 1.0, 0.0}, 1.0 / kHour)[kTank], 1.0);
}

// 12 mm on 24 m2 with yield coefficient 0.80 and filter 0.90: 207.4 L, without filter 230.4 L. Method of BS EN 16941-1.
TEST(Gutter, YieldsAStormAsTheStandardReckons) {
  const double rain = 12.0 / kHour;
  Gutter law = tiles();
  law.first_flush_kg = 0.0;
  EXPECT_NEAR(kHour * flows(law, rain)[kTank], 207.4, 0.05);
  EXPECT_NEAR(kHour * flows(law, rain)[kLost], 230.4 - 207.4, 0.1);
  law.filter_efficiency = 1.0;
  EXPECT_NEAR(kHour * flows(law, rain)[kTank], 230.4, 0.05);
  EXPECT_EQ(flows(law, rain)[kLost], 0.0);
}

TEST(Gutter, LosesNothingOfWhatFalls) {
  const Gutter law = tiles();
  for (double rain : {0.0, 1e-6, 0.005, 0.039, 0.0417, 0.043, 0.2, 50.0})
    for (double chamber : {-1e-6, 0.0, 3.0, 4.5, 4.8, 5.0, 6.0}) {
      const Six q = flows(law, rain, chamber);
      const double fallen = 24.0 * 0.80 * rain;
      EXPECT_NEAR(q[kTank] + q[kFlush] + q[kLost], fallen, 1e-15 * (1.0 + fallen)) << rain << " " << chamber;
      for (Way way : {kTank, kFlush, kLost}) EXPECT_GE(q[way], 0.0) << rain << " " << chamber;
    }
}

TEST(Gutter, CarriesItsMostAndLetsTheRestOver) {
  Gutter law = tiles();
  law.first_flush_kg = 0.0;
  const auto at_share = [&](double share) { return flows(law, share * 0.8 / (24.0 * 0.80)); };
  const auto carried = [&](double share) { return at_share(share)[kTank] / 0.90; };
  EXPECT_DOUBLE_EQ(carried(0.5), 0.4);
  EXPECT_DOUBLE_EQ(carried(0.95), 0.76) << "untouched below the rounding";
  EXPECT_NEAR(carried(1.0), 0.8 * (1.0 - 0.05 / 4.0), 1e-12) << "lowest where the corner was";
  EXPECT_DOUBLE_EQ(carried(1.05), 0.8);
  EXPECT_DOUBLE_EQ(carried(20.0), 0.8);
  EXPECT_NEAR(at_share(2.0)[kLost], 0.8 + 0.1 * 0.8, 1e-12) << "over the brim, and what the filter turns away";
  for (double share = 0.9; share < 1.1; share += 0.01) EXPECT_GE(carried(share + 0.01), carried(share));
}

TEST(Gutter, CarriesNothingWhenBlocked) {
  Gutter law = tiles();
  law.most_flow_kg_s = 0.0;
  const Six q = flows(law, 0.01);
  EXPECT_EQ(q[kTank], 0.0);
  EXPECT_EQ(q[kFlush], 0.0);
  EXPECT_DOUBLE_EQ(q[kLost], 0.192);
}

TEST(Gutter, FlushesTheFirstOfTheRainPastTheTank) {
  const Gutter law = tiles();
  const double rain = 0.01, caught = 0.192;
  EXPECT_DOUBLE_EQ(flows(law, rain, 0.0)[kFlush], caught);
  EXPECT_EQ(flows(law, rain, 0.0)[kTank], 0.0);
  EXPECT_DOUBLE_EQ(flows(law, rain, 4.5)[kFlush], caught);
  EXPECT_NEAR(flows(law, rain, 4.75)[kFlush], 0.5 * caught, 1e-12) << "half of the ramp";
  EXPECT_EQ(flows(law, rain, 5.0)[kFlush], 0.0);
  EXPECT_NEAR(flows(law, rain, 5.0)[kTank], 0.90 * caught, 1e-15);
}

TEST(Gutter, BringsRainOfTheAirsTemperatureOnEveryWay) {
  const Six q = flows(tiles(), 0.06, 4.75, 291.15);
  for (Way way : {kTank, kFlush, kLost}) {
    EXPECT_GT(q[way], 0.0);
    EXPECT_NEAR(q[way + 1], q[way] * kWaterHeat * 18.0, 1e-9);
  }
}

/// Water on its way down the slope that comes to the tiles' gutter at a rate.
Six returns(const Gutter& gutter, double comes_kg_s, double rain_kg_m2_s = 0.0, double chamber_kg = 5.0,
            double share = 1.0) {
  GutterReturn law{gutter, share, 5.0};
  Six q{};
  law.flux(std::array{291.15, 5.0 * comes_kg_s / share, rain_kg_m2_s, chamber_kg}, q);
  return q;
}

TEST(GutterReturn, GoesThroughChamberAndFilterButForNoRunOffShare) {
  const Six filled = returns(tiles(), 0.02);
  EXPECT_NEAR(filled[kTank], 0.90 * 0.02, 1e-15) << "not 0.80 of it: it wets the roof as a film";
  EXPECT_EQ(filled[kFlush], 0.0);
  EXPECT_NEAR(filled[kLost], 0.10 * 0.02, 1e-15);
  EXPECT_NEAR(returns(tiles(), 0.02, 0.0, 0.0)[kFlush], 0.02, 1e-15);
  EXPECT_NEAR(returns(tiles(), 0.02, 0.0, 4.75)[kFlush], 0.01, 1e-15);
  for (Way way : {kTank, kLost}) EXPECT_NEAR(filled[way + 1], filled[way] * kWaterHeat * 18.0, 1e-9);
  EXPECT_NEAR(returns(tiles(), 0.02, 0.0, 5.0, 0.25)[kTank], filled[kTank], 1e-15) << "one of four gutters";
}

TEST(GutterReturn, IsLostWhereTheGutterIsBlocked) {
  Gutter blocked = tiles();
  blocked.most_flow_kg_s = 0.0;
  const Six q = returns(blocked, 0.02);
  EXPECT_EQ(q[kTank], 0.0);
  EXPECT_NEAR(q[kLost], 0.02, 1e-17);
}

TEST(GutterReturn, HasTheRoomThatRainLeaves) {
  const Gutter law = tiles();  // carries 0.8 kg/s in all, rain 19.2 m2 times its rate
  EXPECT_NEAR(returns(law, 0.02, 0.03)[kTank], 0.90 * 0.02, 1e-15) << "0.576 kg/s of rain leave room";
  EXPECT_EQ(returns(law, 0.02, 0.06)[kTank], 0.0) << "the gutter runs over with rain alone";
  for (const double rain : {0.0, 0.03, 0.039, 0.0417, 0.043})
    for (const double comes : {0.02, 0.3, 2.0}) {
      const double both = returns(law, comes, rain)[kTank] + flows(law, rain, 5.0)[kTank];
      const double as_rain = flows(law, rain + comes / 19.2, 5.0)[kTank];
      EXPECT_NEAR(both, as_rain, 1e-14) << "together they fill it as so much rain does: " << rain << " " << comes;
    }
}

TEST(FlushDrain, EmptiesInItsTime) {
  std::array<double, 1> q{};
  FlushDrain{7200.0}.flux(std::array{5.0}, q);
  EXPECT_DOUBLE_EQ(q[0], 5.0 / 7200.0);
  FlushDrain{}.flux(std::array{0.0}, q);
  EXPECT_EQ(q[0], 0.0);
}

// 75 mm/h on 20 m2: 0.417 L/s, rational formula.
TEST(RoofRunoff, IsThatOfACloudburst) { EXPECT_NEAR(roof_runoff_kg_s(75.0 / kHour, 20.0, 1.0), 0.417, 0.0005); }

// BS EN 16941-1, Table 2: yield coefficients and hydraulic efficiency of the filter.
TEST(RoofSurfaces, AreThoseOfTheStandard) {
  const std::pair<const char*, double> printed[]{{"smooth metal", 0.90},   {"pitched tile", 0.80},
                                                 {"concrete", 0.75},       {"flat with gravel", 0.60},
                                                 {"flat with felt", 0.50}, {"green roof", 0.40}};
  for (const auto& [name, coefficient] : printed) {
    const RoofSurface* surface = find_roof_surface(name);
    ASSERT_NE(surface, nullptr) << name;
    EXPECT_EQ(surface->runoff_coefficient.value, coefficient) << name;
  }
  EXPECT_EQ(kFilterEfficiency, 0.90);
  EXPECT_EQ(find_roof_surface("thatch of gold"), nullptr);
  for (const RoofSurface& surface : roof_surfaces()) EXPECT_NE(surface.runoff_coefficient.source, nullptr);
}

// Half-round gutters to a sharp-edged outlet: 75 mm 0.38 L/s, 100 mm 0.78, 125 mm 1.37, 150 mm 2.16 [Approved Document
// H (England), Table 2; from memory]. That table and the standard's formula differ by up to 1 %.
TEST(HalfRoundGutter, CarriesWhatTheTableSays) {
  const std::pair<double, double> printed[]{{0.075, 0.38}, {0.100, 0.78}, {0.125, 1.37}, {0.150, 2.16}};
  for (const auto& [diameter_m, kg_s] : printed)
    EXPECT_NEAR(half_round_gutter_kg_s(diameter_m), kg_s, 0.01 * kg_s) << diameter_m;
}

// Downpipes filled to 0.33: bore 50 mm 1.7 L/s, 75 mm 5.0, 100 mm 10.7 [EN 12056-3, table of downpipe capacities; from
// memory].
TEST(Downpipe, CarriesWhatTheTableSays) {
  const std::pair<double, double> printed[]{{0.050, 1.7}, {0.075, 5.0}, {0.100, 10.7}};
  for (const auto& [bore_m, kg_s] : printed) EXPECT_NEAR(downpipe_kg_s(bore_m), kg_s, 0.05) << bore_m;
}

}  // namespace
}  // namespace noonhouse
