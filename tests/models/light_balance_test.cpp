// SPDX-License-Identifier: Apache-2.0
#include "models/light/light_balance.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "tests/support/light_shells.hpp"

namespace noonhouse {
namespace {

/// What a piece lets through of the beam, and what it does with diffuse light.
constexpr double kPasses = 0.7;
constexpr LayerOptics kDiffuse{0.6, 0.25, 0.3};

struct Case {
  const char* name;
  double scatters, floor_reflects, elevation;
};

class Light : public testing::TestWithParam<Case> {};

/// Taken up by the shell from both sides, taken up inside, sent back out at the front, let out again from inside: all
/// that came. Within 1e-9 of it, as the balance must hold for any optics, obstacles and shelves.
TEST_P(Light, AbsorbedAndLetOutAndReflectedIsWhatCame) {
  const Case& c = GetParam();
  const LightGeometry g(LightScene(gable_shell(), {{0.2, 2.8, 0.4, 1.2, 0.5, 0.1}, {0.2, 2.8, 1.0, 1.4, 1.5, 0.0}},
                                   {LightBox{4.5, 0.0, 0.5, 10.0, 0.3, 0.0, 3.0, 0.2}}));
  const std::size_t n = g.scene.surfaces().size(), pieces = g.scene.shell().pieces;
  std::vector<double> reflects(n, c.floor_reflects);
  const LightBalance balance(g, std::vector<PieceOptics>(pieces, {kDiffuse, c.scatters}), reflects);
  const std::vector<PieceBeam> beams(pieces, {kPasses, c.scatters});
  const double e = c.elevation;
  const OutdoorLight light{850.0, {std::cos(e) * 0.6, std::cos(e) * 0.8, std::sin(e)}, 110.0, 60.0, 40.0};
  const LitHouse lit =
      balance.lit(light, beams, beam_shares(g.scene, light.to_sun), sunlit_shares(g.scene, light.to_sun));
  double came = 0.0, went = 0.0;
  for (std::size_t s = 0; s < n; ++s) {
    if (s >= pieces) {
      went += (1.0 - c.floor_reflects) * lit.arriving_w[s];
      continue;
    }
    came += lit.beam_w[s] + lit.diffuse_w[s];
    went += lit.beam_w[s] * (1.0 - kPasses) + lit.diffuse_w[s] * (1.0 - kDiffuse.transmittance);
    went += lit.arriving_w[s] * (1.0 - kDiffuse.reflectance_back);  // taken up, or let out again
  }
  EXPECT_GT(came, 1000.0);
  EXPECT_NEAR(went / came, 1.0, 1e-9);
  for (std::size_t s = 0; s < n; ++s) EXPECT_GE(lit.arriving_w[s], lit.beam_arriving_w[s] - 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Houses, Light,
                         testing::Values(Case{"clear", 0.0, 0.3, 0.7}, Case{"soft", 1.0, 0.3, 0.7},
                                         Case{"hazy", 0.4, 0.0, 1.2}, Case{"low sun", 0.2, 0.9, 0.05}),
                         [](const auto& one) {
                           std::string name = one.param.name;
                           name.erase(std::remove(name.begin(), name.end(), ' '), name.end());
                           return name;
                         });

/// A white room behind a soft skin that reflects nothing back: light arrives evenly, 1 / (1 - rho F) times over.
TEST(LightBalance, AllReflectionsOfAnIntegratingRoomAreCounted) {
  const LightGeometry g(LightScene(cube_shell(), {}, {}));
  const std::size_t n = g.scene.surfaces().size(), pieces = g.scene.shell().pieces;
  const double rho = 0.8;
  const LightBalance balance(g, std::vector<PieceOptics>(pieces, {{0.5, 0.0, rho}, 1.0}), std::vector<double>(n, rho));
  const LitHouse lit = balance.lit({0.0, {0.0, 0.0, 1.0}, 100.0, 100.0, 0.0}, std::vector<PieceBeam>(pieces), {}, {});
  double first = 0.0, arriving = 0.0;
  for (std::size_t s = 0; s < n; ++s) arriving += lit.arriving_w[s];
  for (std::size_t s = 0; s < pieces; ++s) first += 0.5 * lit.diffuse_w[s];
  EXPECT_NEAR(arriving, first / (1.0 - rho), 1e-9 * arriving);  // geometric series of a closed room
}

TEST(LightBalance, NoLightNothing) {
  const LightGeometry g(LightScene(cube_shell(), {}, {}));
  const std::size_t n = g.scene.surfaces().size(), pieces = g.scene.shell().pieces;
  const LightBalance balance(g, std::vector<PieceOptics>(pieces, {kDiffuse, 0.0}), std::vector<double>(n, 0.2));
  const LitHouse lit = balance.lit({}, std::vector<PieceBeam>(pieces), {}, {});
  EXPECT_EQ(std::accumulate(lit.arriving_w.begin(), lit.arriving_w.end(), 0.0), 0.0);
}

}  // namespace
}  // namespace noonhouse
