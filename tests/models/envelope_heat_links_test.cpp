// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/envelope/heat_links.hpp"
#include "tests/support/simple_film.hpp"

namespace noonhouse {
namespace {

using One = std::array<double, 1>;

template <class L, std::size_t N>
double heat(const L& law, const std::array<double, N>& in) {
  One q{};
  law.flux(in, q);
  return q[0];
}

// Watmuff, Charters & Proctor 1977: 2.8; 5.8; 11.8; 17.8 W/(m2 K) at 0; 1; 3; 5 m/s (from memory).
TEST(WindConvection, IsWatmuffs) {
  const std::array wind{0.0, 1.0, 3.0, 5.0}, expected{2.8, 5.8, 11.8, 17.8};
  for (std::size_t i = 0; i < wind.size(); ++i)
    EXPECT_NEAR(heat(WindConvection{1.0}, std::array{301.0, 300.0, wind[i]}), expected[i], 1e-9);
}

// 4 sigma T^3 at mean temperatures of 0 to 40 degC: 4.62; 5.15; 5.71; 6.32; 6.96 W/(m2 K) (worked out apart from this
// program; ISO 6946 prints 4.6, 5.1, 5.7, 6.3). Blackbody at 0 degC: 315.66 W/m2.
TEST(RadiantExchange, HasThePublishedCoefficientAndEmission) {
  const std::array mean_c{0.0, 10.0, 20.0, 30.0, 40.0}, expected{4.62, 5.15, 5.71, 6.32, 6.96};
  for (std::size_t i = 0; i < mean_c.size(); ++i) {
    const double t = mean_c[i] + 273.15;
    EXPECT_NEAR(heat(RadiantExchange{1.0}, std::array{t + 0.5, t - 0.5}), expected[i], 0.02);
  }
  EXPECT_NEAR(heat(RadiantExchange{1.0}, std::array{273.15, 0.0}), 315.66, 0.01);
}

TEST(RadiantExchange, IsTheScreenedOneWithTheScreenAwayAndWeighedWithItDrawn) {
  const double open = heat(RadiantExchange{3.0}, std::array{310.0, 280.0});
  const ScreenedRadiantExchange screened{3.0, 1.0, 0.2};
  EXPECT_NEAR(heat(screened, std::array{310.0, 280.0, 0.0}), open, 1e-9);
  EXPECT_NEAR(heat(screened, std::array{310.0, 280.0, 1.0}), 0.2 * open, 1e-9);
  EXPECT_NEAR(heat(screened, std::array{310.0, 280.0, 0.5}), 0.6 * open, 1e-9);
}

TEST(PlumeConvection, SendsAllIntoTheColumnFromAWarmSurfaceAndNothingFromAColdOne) {
  const PlumeConvection law{5.0, simple_film(1.52, 1.0)};
  const auto flux = [&](double surface_k) {
    std::array<double, 2> q{};
    law.flux(std::array{surface_k, 300.0}, q);
    EXPECT_NEAR(q[0] + q[1], heat(InsideConvection{5.0, simple_film(1.52, 1.0)}, std::array{surface_k, 300.0}), 1e-9);
    return q;
  };
  for (const double warm_k : {300.5, 303.0, 330.0}) {
    EXPECT_EQ(flux(warm_k)[0], 0.0) << warm_k;
    EXPECT_GT(flux(warm_k)[1], 0.0) << warm_k;
  }
  EXPECT_DOUBLE_EQ(flux(300.25)[0], flux(300.25)[1]) << "half way through the ramp";
  for (const double cold_k : {300.0, 299.9, 280.0}) EXPECT_EQ(flux(cold_k)[1], 0.0) << cold_k;
  EXPECT_LT(flux(290.0)[0], 0.0);
}

}  // namespace
}  // namespace noonhouse
