// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/air/moist_air.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

TEST(MoistAir, ComesBackFromItsAmounts) {
  const MoistAir air{42.0};
  for (const Two& state : {Two{293.15, 0.008}, Two{263.15, 0.001}, Two{318.15, 0.050}, Two{273.15, 0.0}}) {
    Two amounts{}, back{};
    air.amounts(state, amounts);
    air.potentials(amounts, back);
    EXPECT_NEAR(back[0], state[0], 1e-10);
    EXPECT_NEAR(back[1], state[1], 1e-16);
  }
}

// Dry air: ASHRAE Handbook of Fundamentals 2017, ch. 1, Table 2: h = 25.148 kJ/kg at 25 degC, to 0.03 % (the
// handbook's equation (30) for the table's real gas).
// Moist air: same chapter, Example 1, t = 40 degC with wet bulb 20 degC: h = 56.7 kJ/kg, to its chart reading of 0.1.
TEST(MoistAir, HoldsThePublishedEnthalpy) {
  Two amounts{};
  MoistAir{10.0}.amounts({298.15, 0.0}, amounts);
  EXPECT_NEAR(amounts[0] / 10.0, 25148.0, 3e-4 * 25148.0);
  const double w = humidity_ratio_from_wet_bulb(313.15, 293.15, 101325.0);
  MoistAir{10.0}.amounts({313.15, w}, amounts);
  EXPECT_NEAR(amounts[0] / 10.0, 56.7e3, 100.0);
  EXPECT_NEAR(amounts[1] / 10.0, w, 1e-15);
}

TEST(MoistAir, CarriesTheSlopesOfItsPotentials) {
  const MoistAir air{42.0};
  Two amounts{};
  air.amounts({303.15, 0.012}, amounts);
  std::array<Dual<2>, 2> in{Dual<2>::input(amounts[0], 0), Dual<2>::input(amounts[1], 1)}, out;
  air.potentials(in, out);
  for (std::size_t k : {std::size_t{0}, std::size_t{1}}) {
    const double h = 1e-5 * amounts[k];
    Two up = amounts, down = amounts, high{}, low{};
    up[k] += h;
    down[k] -= h;
    air.potentials(up, high);
    air.potentials(down, low);
    for (std::size_t j : {std::size_t{0}, std::size_t{1}})
      EXPECT_NEAR(out[j].grad[k], (high[j] - low[j]) / (2.0 * h), 1e-7 * std::abs(out[j].grad[k]) + 1e-15);
  }
}

}  // namespace
}  // namespace noonhouse
