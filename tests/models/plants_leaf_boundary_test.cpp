// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/leaf_boundary.hpp"

namespace noonhouse {
namespace {

// Leuning et al. 1995, Plant Cell Environ. 18, 1183: 0.003 sqrt(u / w) is 0.019926 m/s for one side of a leaf of
// 0.068 m in 3 m/s.
TEST(LeafBoundary, IsAsPublished) { EXPECT_NEAR(leaf_conductance_m_s(3.0, 0.068), 0.019926, 1e-5); }

TEST(LeafBoundary, DoublesInFourfoldWindAndHalvesOnAFourfoldLeaf) {
  const double g = leaf_conductance_m_s(kAirSpeedPastLeaves, 0.05);
  EXPECT_NEAR(leaf_conductance_m_s(4.0 * kAirSpeedPastLeaves, 0.05), 2.0 * g, 1e-15);
  EXPECT_NEAR(leaf_conductance_m_s(kAirSpeedPastLeaves, 0.2), 0.5 * g, 1e-15);
  EXPECT_EQ(leaf_conductance_m_s(0.0, 0.05), 0.0);
}

}  // namespace
}  // namespace noonhouse
