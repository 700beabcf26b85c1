// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/leaf_radiation.hpp"

namespace noonhouse {
namespace {

double radiated_w(double first_k, double second_k) {
  std::array<double, 1> q{};
  LeafRadiation{2.0}.flux(std::array{first_k, second_k}, q);
  return q[0];
}

// Black bodies at 300 and 400 K give off 459.3 and 1451.6 W/m2: Stefan and Boltzmann's law, computed here.
TEST(LeafRadiation, GoesFromTheWarmerSideByTheFourthPowers) {
  EXPECT_NEAR(radiated_w(400.0, 300.0), 2.0 * (1451.6 - 459.3), 0.2);
  EXPECT_EQ(radiated_w(300.0, 400.0), -radiated_w(400.0, 300.0));
  EXPECT_EQ(radiated_w(300.0, 300.0), 0.0);
  EXPECT_NEAR(radiated_w(310.0, 0.0), 2.0 * kStefanBoltzmann * 310.0 * 310.0 * 310.0 * 310.0, 1e-9);
}

}  // namespace
}  // namespace noonhouse
