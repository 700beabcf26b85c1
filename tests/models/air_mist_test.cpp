// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/air/mist.hpp"
#include "models/air/moist_air.hpp"
#include "tests/support/given_flow.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;
using Four = std::array<double, 4>;
constexpr double kPressure = 101325.0;

double humidity_at(double temperature_k, double share) {
  return humidity_ratio(share * saturation_pressure_pa(temperature_k), kPressure);
}

// Closed parcel of 35 degC, 30 %, liquid water of 20 degC added: +1, +2, +3 g/kg give 32.58, 30.18, 27.78 degC and
// 37.5, 46.7, 57.8 %. Energy balance, worked out apart from this program; printed digits.
TEST(Mist, CoolsAClosedParcelAsItsEnergyBalanceSays) {
  const MoistAir air{50.0};
  const double start_w = humidity_at(308.15, 0.30);
  struct Row {
    double added, celsius, share;
  };
  for (const Row& row : {Row{0.001, 32.58, 0.375}, Row{0.002, 30.18, 0.467}, Row{0.003, 27.78, 0.578}}) {
    Two amounts{}, after{};
    air.amounts({308.15, start_w}, amounts);
    const double water = row.added * 50.0;
    air.potentials(Two{amounts[0] + water * liquid_enthalpy(293.15), amounts[1] + water}, after);
    EXPECT_NEAR(after[0] - 273.15, row.celsius, 0.05);
    EXPECT_NEAR(relative_humidity(after[0], after[1], kPressure), row.share, 0.003);
  }
}

TEST(Mist, DividesItsFlowBetweenAirAndSurfaceAndKeepsItsHeat) {
  const MistPart law{0.5, 0.8, kPressure};
  Four q{};
  law.flux(Four{308.15, humidity_at(308.15, 0.3), 293.15, 0.02}, q);
  EXPECT_NEAR(q[0], 0.5 * 0.02 * 0.8, 1e-15) << "dry air takes the stated share";
  EXPECT_NEAR(q[0] + q[1], 0.5 * 0.02, 1e-15);
  EXPECT_NEAR(q[2] + q[3], 0.5 * 0.02 * liquid_enthalpy(293.15), 1e-9);
}

TEST(Mist, GivesSaturatedAirNothing) {
  const MistPart law{1.0, 0.8, kPressure};
  for (double share : {1.0, 1.02, 1.3}) {
    Four q{};
    // A hair above, for the inner loops' own fit of saturation (within 1e-5).
    law.flux(Four{300.0, humidity_at(300.0, share) * (1.0 + 2e-5), 290.0, 0.02}, q);
    EXPECT_EQ(q[0], 0.0);
    EXPECT_EQ(q[2], 0.0);
    EXPECT_EQ(q[1], 0.02);
  }
}

TEST(Mist, CannotPushAirBeyondSaturation) {
  const MistPart law{1.0, 1.0, kPressure};
  const MoistAir air{5.0};
  Two amounts{}, state{};
  air.amounts({305.0, 0.006}, amounts);
  double landed = 0.0;
  const double start_kg = amounts[1];
  for (int second = 0; second < 3600; ++second) {
    air.potentials(amounts, state);
    Four q{};
    law.flux(Four{state[0], state[1], 293.15, 0.005}, q);
    amounts[0] += q[2];
    amounts[1] += q[0];
    landed += q[1];
  }
  const double reached = state[1] / saturation_humidity_ratio_fast(state[0], kPressure);
  EXPECT_LE(reached, 1.0);
  EXPECT_GT(reached, 0.97);
  EXPECT_NEAR(amounts[1] - start_kg + landed, 18.0, 1e-9) << "water is conserved";
}

// 1 g/(m2 min) evaporated, ventilation 0.02 m3/(m2 s): 40.8 W/m2 latent, dW 0.72 g/kg, cooling 1.77 K; 2 %. Energy
// balance, worked out apart from this program (dry air, 1.157 kg/m3, with water of its own temperature).
TEST(Mist, CoolsVentilatedAirByItsLatentHeat) {
  const double dry_kg_s = 0.02 * 1.157, water_kg_s = 0.001 / 60.0, t_in = 298.15, w_in = 0.0;
  Four mist{};
  MistPart{1.0, 1.0, kPressure}.flux(Four{t_in, w_in, t_in, water_kg_s}, mist);
  EXPECT_NEAR(mist[0] * (vapour_enthalpy(t_in) - liquid_enthalpy(t_in)), 40.8, 0.02 * 40.8);
  Two in{};
  GivenFlow{dry_kg_s}.flux(std::array{t_in, w_in, 1.0}, in);
  Two out{};
  MoistAir{dry_kg_s}.potentials(Two{in[1] + mist[2], in[0] + mist[0]}, out);
  EXPECT_NEAR(out[1] - w_in, 0.72e-3, 0.02 * 0.72e-3);
  EXPECT_NEAR(t_in - out[0], 1.77, 0.02 * 1.77);
}

}  // namespace
}  // namespace noonhouse
