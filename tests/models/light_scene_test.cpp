// SPDX-License-Identifier: Apache-2.0
#include "models/light/light_scene.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "models/light/light_balance.hpp"
#include "models/light/sights.hpp"
#include "models/properties/constants.hpp"
#include "tests/support/light_shells.hpp"

namespace noonhouse {
namespace {

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

Vector3 towards(double elevation_deg, double x, double y) {
  const double e = elevation_deg * kRadiansPerDegree, level = std::hypot(x, y);
  return {std::cos(e) * x / level, std::cos(e) * y / level, std::sin(e)};
}

TEST(LightScene, AreasAreThoseOfTheGable) {
  const LightScene scene(gable_shell(), {}, {});
  const auto& surfaces = scene.surfaces();
  EXPECT_NEAR(surfaces[0].area_m2, 3.0 * 1.8, 1e-12);
  EXPECT_NEAR(surfaces[1].area_m2, 3.0 * std::hypot(1.5, 0.8), 1e-12);
  EXPECT_NEAR(surfaces[8].area_m2, 3.0 * 1.8 + 1.5 * 0.8, 1e-12);
  EXPECT_NEAR(surfaces[9].area_m2, surfaces[8].area_m2, 1e-12);
  EXPECT_NEAR(surfaces[static_cast<std::size_t>(scene.floor_surface(1))].area_m2, 9.0, 1e-12);
}

/// A shelf hung over another: the floor beneath both belongs to the lower one, and no floor is lost.
TEST(LightScene, FloorsAreSharedOutWholly) {
  const LightScene scene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.0}, {0.2, 2.8, 1.0, 1.4, 1.5, 0.0}}, {});
  const auto area = [&](int s) { return scene.surfaces()[static_cast<std::size_t>(s)].area_m2; };
  EXPECT_NEAR(area(scene.floor_beneath(0)), 2.6 * 0.8, 1e-12);
  EXPECT_NEAR(area(scene.floor_beneath(1)), 2.6 * 0.2, 1e-12);
  EXPECT_NEAR(area(scene.floor_surface(0)), 9.0 - 2.6 * 1.0, 1e-12);
  for (const LightSurface& surface : scene.surfaces()) {
    double shares = 0.0;
    for (const auto& point : surface.points) shares += point.share;
    EXPECT_NEAR(shares, 1.0, 1e-12);
  }
}

/// From a metre behind the front wall a sun at 45 degrees in front is seen a metre up the wall; from 2 m, over the
/// eaves.
TEST(LightScene, ARayLeavesByTheWallOrTheRoof) {
  const LightScene scene(gable_shell(), {}, {});
  const LightExit low = scene.leave({1.0, 0.5, 0.0}, towards(45.0, 0.0, 1.0));
  EXPECT_EQ(low.piece, 0);
  EXPECT_NEAR(low.at.z, 1.0, 1e-12);
  EXPECT_EQ(scene.leave({1.0, -0.5, 0.0}, towards(45.0, 0.0, 1.0)).piece, 1);
  EXPECT_EQ(scene.leave({-1.0, 0.5, 0.0}, towards(45.0, 0.0, 1.0)).piece, 4);  // the other bay
  EXPECT_EQ(scene.leave({-1.0, 0.5, 0.0}, towards(5.0, 1.0, 0.0)).piece, 8);   // the first end
}

TEST(LightScene, AShelfStopsWhatItsSlatsDoNotPass) {
  const LightScene scene(gable_shell(), {{0.5, 2.5, -0.5, 0.5, 1.0, 0.25}}, {});
  const Vector3 up{0.0, 0.0, 1.0};
  EXPECT_NEAR(scene.leave({1.5, 0.0, 0.2}, up).passed, 0.25, 1e-12);
  EXPECT_NEAR(scene.leave({1.5, 0.0, 1.2}, up).passed, 1.0, 1e-12);
  EXPECT_NEAR(scene.leave({1.5, 0.8, 0.2}, up).passed, 1.0, 1e-12);
  std::vector<LightMeeting> met;
  scene.follow({1.5, 0.0, 2.0}, {0.0, 0.0, -1.0}, met);
  ASSERT_EQ(met.size(), 2U);
  EXPECT_EQ(met[0].surface, scene.shelf_top(0));
  EXPECT_NEAR(met[0].share, 0.75, 1e-12);
  EXPECT_EQ(met[1].surface, scene.floor_beneath(0));
  EXPECT_NEAR(met[1].share, 0.25, 1e-12);
}

/// A wall 3 m high whose face stands 4 m to the side shades a point at its foot's level below atan(3/4).
TEST(LightScene, AWallShadesUpToItsTopAsSeen) {
  const LightScene scene(gable_shell(), {}, {LightBox{4.5, 0.0, 0.5, 10.0, 0.0, 0.0, 3.0, 0.0}});
  const double edge = std::atan2(3.0, 4.0) / kRadiansPerDegree;
  EXPECT_EQ(scene.past_obstacles({0.0, 0.0, 0.0}, towards(edge - 0.01, 1.0, 0.0)), 0.0);
  EXPECT_EQ(scene.past_obstacles({0.0, 0.0, 0.0}, towards(edge + 0.01, 1.0, 0.0)), 1.0);
  EXPECT_EQ(scene.past_obstacles({0.0, 0.0, 0.0}, towards(edge - 0.01, -1.0, 0.0)), 1.0);
  EXPECT_EQ(scene.past_obstacles({0.0, 0.0, 1.0}, towards(std::atan2(2.0, 4.0) / kRadiansPerDegree + 0.01, 1.0, 0.0)),
            1.0);
}

TEST(LightScene, ATurnedFenceAndACrownPassTheirShare) {
  const double quarter = kPi / 2.0;
  const LightScene scene(
      gable_shell(), {},
      {LightBox{5.0, 0.0, 10.0, 0.1, quarter, 0.0, 2.0, 0.4}, LightCrown{-6.0, 0.0, 2.0, 2.0, 6.0, 0.3}});
  EXPECT_NEAR(scene.past_obstacles({0.0, 0.0, 0.0}, towards(10.0, 1.0, 0.0)), 0.4, 1e-12);
  EXPECT_NEAR(scene.past_obstacles({0.0, 0.0, 0.0}, towards(std::atan2(4.0, 6.0) / kRadiansPerDegree, -1.0, 0.0)), 0.3,
              1e-12);
  EXPECT_EQ(scene.past_obstacles({0.0, 0.0, 0.0}, towards(5.0, -1.0, 0.0)), 1.0);  // beneath the crown
}

/// Two equal parallel squares as far apart as they are wide see 0.1998 of each other, and neighbours at a right angle
/// 0.2000.   [Incropera & DeWitt, figs. 13.4 and 13.6; Howell's catalogue C-11, C-14: 0.199825, 0.200044; from memory]
TEST(Sights, ViewFactorsOfACube) {
  const LightScene scene(cube_shell(), {}, {});
  const auto floor = static_cast<std::size_t>(scene.floor_surface(0));
  const Sights seen = look_around(scene, scene.surfaces()[floor].points, scene.surfaces()[floor].normal);
  EXPECT_NEAR(seen.view[1], 0.199825, 0.002);
  for (std::size_t wall : {0U, 2U, 3U, 4U}) EXPECT_NEAR(seen.view[wall], 0.200044, 0.002);
  EXPECT_EQ(seen.view[floor], 0.0);
  EXPECT_NEAR(sum(seen.view), 1.0, 1e-12);
}

TEST(Sights, WhatIsSeenThroughThePiecesIsWhatIsSeenOfThem) {
  const LightScene scene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.1}},
                         {LightBox{4.5, 0.0, 0.5, 10.0, 0.0, 0.0, 3.0, 0.2}});
  for (const LightSurface& surface : scene.surfaces()) {
    const Sights seen = look_around(scene, surface.points, surface.normal);
    EXPECT_NEAR(sum(seen.view), 1.0, 1e-12);
    for (std::size_t piece = 0; piece < scene.shell().pieces; ++piece)
      EXPECT_NEAR(seen.sky[piece] + seen.ground[piece] + seen.obstacle[piece], seen.view[piece], 1e-12);
  }
}

/// Exact: a wall sees half sky and half ground; a slope (1 + cos s) / 2 of the sky [Liu & Jordan 1963].
TEST(Sights, OutlookOfPlanesInTheOpen) {
  const LightScene scene(gable_shell(), {}, {});
  const Outlook wall = look_out(scene, 0), roof = look_out(scene, 1);
  EXPECT_NEAR(wall.sky, 0.5, 1e-9);
  EXPECT_NEAR(wall.ground, 0.5, 1e-9);
  EXPECT_NEAR(roof.sky, 0.5 * (1.0 + std::cos(std::atan2(0.8, 1.5))), 0.005);
  EXPECT_NEAR(roof.sky + roof.ground + roof.obstacle, 1.0, 1e-12);
}

/// An endless wall half a metre off, its top level with the cube's: at a height z the sky takes
/// (1 - sin(angle of its top)) / 2 and the strip of ground before it (1 - z / hypot(z, 0.5)) / 2 of the half-space.
TEST(Sights, AnObstacleTakesItsShareOfTheOutlook) {
  const LightScene scene(cube_shell(), {}, {LightBox{0.0, 1.5, 1000.0, 0.5, 0.0, -1000.0, 1.0, 0.0}});
  const Outlook front = look_out(scene, 0);  // the cube's front stands at y = 0.5, the wall at y = 1
  double sky = 0.0, ground = 0.0;
  for (int j = 0; j < 6; ++j) {
    const double z = (j + 0.5) / 6.0;
    sky += (1.0 - std::sin(std::atan2(1.0 - z, 0.5))) / 2.0 / 6.0;
    ground += (1.0 - z / std::hypot(z, 0.5)) / 2.0 / 6.0;
  }
  EXPECT_NEAR(front.sky, sky, 0.01);
  EXPECT_NEAR(front.ground, ground, 0.01);
  EXPECT_NEAR(front.sky + front.ground + front.obstacle, 1.0, 1e-12);
}

/// Almost all gaps, a shelf changes nothing: what arrives on the floor is what arrives without it.
TEST(Sights, AShelfOfGapsIsNoShelf) {
  const auto view_of_floor = [](const std::vector<LightShelf>& shelves) {
    const LightGeometry g(LightScene(cube_shell(), shelves, {}));
    const std::size_t pieces = g.scene.shell().pieces;
    const LightBalance balance(g, std::vector<PieceOptics>(pieces, {{0.9, 0.0, 0.0}, 0.0}),
                               std::vector<double>(g.scene.surfaces().size(), 0.0));
    const Vector3 up{0.0, 0.0, 1.0};
    const LitHouse lit = balance.lit({100.0, up, 50.0, 0.0, 0.0}, std::vector<PieceBeam>(pieces, {0.9, 0.0}),
                                     beam_shares(g.scene, up), sunlit_shares(g.scene, up));
    double floor = 0.0;
    for (std::size_t s = pieces; s < g.scene.surfaces().size(); ++s)
      if (g.scene.surfaces()[s].normal.z > 0.0 && g.scene.surfaces()[s].points.front().at.z < 0.01)
        floor += lit.arriving_w[s];
    return floor;
  };
  const double bare = view_of_floor({});
  EXPECT_NEAR(view_of_floor({{-0.3, 0.3, -0.3, 0.3, 0.5, 0.9999}}) / bare, 1.0, 0.01);
  EXPECT_NEAR(view_of_floor({{-0.3, 0.3, -0.3, 0.3, 0.5, 0.5}}) / bare, 1.0 - 0.5 * 0.36, 0.05);
}

TEST(Sights, ExchangeIsReciprocalAndClosed) {
  const LightScene scene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.1}, {0.2, 2.8, 1.0, 1.4, 1.5, 0.0}}, {});
  std::vector<Sights> sights;
  for (const LightSurface& s : scene.surfaces()) sights.push_back(look_around(scene, s.points, s.normal));
  const Grid exchange = exchange_areas(scene, sights);
  for (std::size_t i = 0; i < exchange.rows; ++i) {
    double row = 0.0;
    for (std::size_t j = 0; j < exchange.columns; ++j) {
      EXPECT_NEAR(exchange(i, j), exchange(j, i), 1e-14);
      EXPECT_GE(exchange(i, j), -1e-12);
      row += exchange(i, j);
    }
    EXPECT_NEAR(row, scene.surfaces()[i].area_m2, 1e-12);
  }
}

/// Every point of an empty house sees the sun through one piece; the shares of a floor are as drawn by hand: the sun
/// due front at 45 degrees lights the front 1.8 m of 3 m through the wall.
TEST(BeamShares, SunFromTheFront) {
  const LightScene scene(gable_shell(), {}, {});
  const auto floor = static_cast<std::size_t>(scene.floor_surface(0));
  const auto& surface = scene.surfaces()[floor];
  const auto shares = beam_by_piece(scene, surface.points, surface.normal, towards(45.0, 0.0, 1.0));
  EXPECT_NEAR(shares[0], 0.6, 1e-9);
  EXPECT_NEAR(shares[1], 0.4, 1e-9);
  EXPECT_TRUE(beam_shares(scene, {0.0, 1.0, -0.1}).empty());
}

/// What the sun sends through the shell is what lands inside: sampled shares agree with projected areas.
TEST(BeamShares, LandedIsWhatEntered) {
  const LightScene scene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.0}}, {});
  for (const double elevation : {10.0, 30.0, 60.0, 85.0}) {
    const Vector3 sun = towards(elevation, 0.4, 0.9);
    std::vector<double> landed(scene.shell().pieces, 0.0);
    for (const BeamShare& s : beam_shares(scene, sun)) {
      const LightSurface& surface = scene.surfaces()[static_cast<std::size_t>(s.surface)];
      landed[static_cast<std::size_t>(s.piece)] += surface.area_m2 * dot(surface.normal, sun) * s.share;
    }
    double entered_all = 0.0, landed_all = 0.0;
    for (std::size_t piece = 0; piece < landed.size(); ++piece) {
      entered_all += scene.surfaces()[piece].area_m2 * std::max(0.0, -dot(scene.surfaces()[piece].normal, sun));
      landed_all += landed[piece];
    }
    EXPECT_NEAR(landed_all / entered_all, 1.0, 0.03) << elevation;
  }
}

}  // namespace
}  // namespace noonhouse
