// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/properties/film_coefficient.hpp"

namespace noonhouse {
namespace {

// Simplified equations of Holman, Heat Transfer, table 7-2, at a difference of 8 K, whose cube root is 2 (from memory).
TEST(FilmCoefficient, IsTheCubeRootLawAboveItsFloor) {
  EXPECT_NEAR((FilmCoefficient{1.31, 0.0}.at(8.0)), 2.62, 1e-4);
  EXPECT_NEAR((FilmCoefficient{1.52, 0.0}.at(-8.0)), 3.04, 1e-4);
  EXPECT_NEAR((FilmCoefficient{1.52, 1.0}.at(8.0)), 4.04, 1e-4);
  EXPECT_GT((FilmCoefficient{1.31, 1.0}.at(0.0)), 1.0);
}

}  // namespace
}  // namespace noonhouse
