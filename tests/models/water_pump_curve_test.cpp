// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"
#include "models/water/pump_curve.hpp"

namespace noonhouse {
namespace {

// 0.5 L/s over 10 m (1000 kg/m3, 9.81 m/s2) is 49.05 W; 7.5 mL/s at 70 bar is 52.5 W: P = Q dp.
TEST(HydraulicPower, IsFlowTimesPressure) {
  EXPECT_NEAR(hydraulic_power_w(0.5e-3, 1000.0 * 9.81 * 10.0), 49.05, 0.005);
  EXPECT_NEAR(hydraulic_power_w(7.5e-6, 70e5), 52.5, 0.05);
  EXPECT_DOUBLE_EQ(pump_electric_power_w(52.5, 0.5), 105.0);
}

// Dynamic viscosity of water at 1 atm: 10 degC 1.3059, 20 degC 1.0016, 30 degC 0.7972, 40 degC 0.6527 mPa s [IAPWS
// 2008, Release on the viscosity of ordinary water substance; from memory]; 2.5 % is the fit's.
TEST(WaterViscosity, IsThatOfTheTables) {
  const std::pair<double, double> printed[]{{10.0, 1.3059e-3}, {20.0, 1.0016e-3}, {30.0, 0.7972e-3}, {40.0, 0.6527e-3}};
  for (const auto& [celsius, pa_s] : printed)
    EXPECT_NEAR(water_viscosity_pa_s(kZeroCelsius + celsius), pa_s, 0.025 * pa_s) << celsius;
}

// Laminar: 64/Re [Hagen-Poiseuille].
TEST(DarcyFriction, IsLaminarBelow) {
  for (double reynolds : {1e-6, 0.5, 1.0, 10.0, 500.0, 1500.0})
    EXPECT_NEAR(darcy_friction_factor(reynolds, 1e-4), 64.0 / reynolds, 1e-3 * 64.0 / reynolds) << reynolds;
}

/// 1/sqrt(f) = -2 log10(e/(3.7 d) + 2.51 / (Re sqrt(f)))      [Colebrook 1939, J. Inst. Civ. Eng. 11, 133; from memory]
double colebrook(double reynolds, double roughness) {
  double root = 7.0;  // 1 / sqrt(f)
  for (int i = 0; i < 60; ++i) root = -2.0 * std::log10(roughness / 3.7 + 2.51 * root / reynolds);
  return 1.0 / (root * root);
}

TEST(DarcyFriction, IsColebrooksAbove) {
  for (double reynolds : {1e4, 3e4, 1e5, 1e6, 1e7})
    for (double roughness : {0.0, 1e-4, 1e-3, 0.01, 0.05}) {
      const double expected = colebrook(reynolds, roughness);
      EXPECT_NEAR(darcy_friction_factor(reynolds, roughness), expected, 0.03 * expected)
          << reynolds << " " << roughness;
    }
}

// dp = 128 mu L Q / (pi d^4) [Hagen-Poiseuille], a drip tube of 1 mm.
TEST(LineLoss, IsPoiseuillesInAThinTube) {
  const WaterLine tube{2.0, 1e-3, 0.0, 0.0};
  const double flow = 5e-7, viscosity = water_viscosity_pa_s(293.15);
  const double expected = 128.0 * viscosity * 2.0 * flow / (kPi * 1e-12);
  EXPECT_NEAR(line_loss_pa(tube, flow, 293.15), expected, 1e-3 * expected);
}

TEST(LineLoss, AddsFittingsAndKeepsTheFlowsSign) {
  const WaterLine bare{10.0, 0.013, 1.5e-6, 0.0}, fitted{10.0, 0.013, 1.5e-6, 4.0};
  const double flow = 2e-4, speed = flow / (0.25 * kPi * 0.013 * 0.013);
  const double added = line_loss_pa(fitted, flow, 293.15) - line_loss_pa(bare, flow, 293.15);
  EXPECT_NEAR(added, 4.0 * 0.5 * water_density_kg_m3(293.15) * speed * speed, 1e-6);
  EXPECT_EQ(line_loss_pa(fitted, -flow, 293.15), -line_loss_pa(fitted, flow, 293.15));
  EXPECT_EQ(line_loss_pa(fitted, 0.0, 293.15), 0.0);
  EXPECT_GT(line_loss_pa(bare, flow, 278.15), line_loss_pa(bare, flow, 308.15)) << "cold water is thicker";
}

TEST(LineLoss, RisesWithTheFlowThroughEveryRegime) {
  const WaterLine hose{10.0, 0.013, 1.5e-6, 2.0};
  for (double flow = 1e-9; flow < 1e-2; flow *= 1.05)
    EXPECT_LT(line_loss_pa(hose, flow, 293.15), line_loss_pa(hose, 1.05 * flow, 293.15)) << flow;
}

/// A small diaphragm pump: 10 bar shut off, 8 L/min free.
const PumpCurve kPump{10e5, 8e-3 / 60.0};
/// A mist nozzle of 80 mL/min at 4 bar.
double mist_nozzle() { return nozzle_constant(80e-6 / 60.0, 4e5); }
const WaterLine kHose{12.0, 0.006, 1.5e-6, 5.0};

TEST(PumpCurve, RunsFromShutOffToFreeFlow) {
  EXPECT_EQ(kPump.pressure_pa(0.0), 10e5);
  EXPECT_EQ(kPump.pressure_pa(kPump.free_flow_m3_s), 0.0);
  EXPECT_DOUBLE_EQ(kPump.pressure_pa(0.5 * kPump.free_flow_m3_s), 7.5e5);
}

TEST(NozzleConstant, FollowsTheSquareRoot) {
  EXPECT_NEAR(mist_nozzle() * std::sqrt(16e5), 160e-6 / 60.0, 1e-15) << "four times the pressure, twice the flow";
}

// Without line and lift: p0 (1 - (Q/Qmax)^2) = (Q/(N k))^2, so Q = sqrt(p0 / (p0/Qmax^2 + 1/(N k)^2)).
TEST(OperatingPoint, MeetsTheClosedFormWithoutALine) {
  const WaterLine none{0.0, 0.01, 0.0, 0.0};
  const double opening = 20 * mist_nozzle(), q_max = kPump.free_flow_m3_s;
  const double expected = std::sqrt(10e5 / (10e5 / (q_max * q_max) + 1.0 / (opening * opening)));
  const PumpedFlow point = operating_point(kPump, none, 0.0, mist_nozzle(), 20);
  EXPECT_NEAR(point.flow_m3_s, expected, 1e-12 * expected);
  EXPECT_NEAR(point.nozzle_pressure_pa, kPump.pressure_pa(expected), 1e-4);
  EXPECT_NEAR(point.hydraulic_power_w, expected * kPump.pressure_pa(expected), 1e-9);
}

TEST(OperatingPoint, UsesThePumpsPressureUp) {
  const double lift = 2.5;
  const PumpedFlow point = operating_point(kPump, kHose, lift, mist_nozzle(), 20, 293.15);
  ASSERT_GT(point.flow_m3_s, 0.0);
  const double lost = line_loss_pa(kHose, point.flow_m3_s, 293.15) + water_density_kg_m3(293.15) * kGravity * lift;
  EXPECT_GT(line_loss_pa(kHose, point.flow_m3_s, 293.15), 1e3) << "a line that matters";
  EXPECT_NEAR(kPump.pressure_pa(point.flow_m3_s), lost + point.nozzle_pressure_pa, 1e-3);
  EXPECT_NEAR(point.flow_m3_s, 20 * mist_nozzle() * std::sqrt(point.nozzle_pressure_pa), 1e-12);
}

TEST(OperatingPoint, GivesMoreFlowAndLessPressureToMoreNozzles) {
  PumpedFlow last = operating_point(kPump, kHose, 2.0, mist_nozzle(), 1);
  for (int nozzles = 2; nozzles < 80; ++nozzles) {
    const PumpedFlow point = operating_point(kPump, kHose, 2.0, mist_nozzle(), nozzles);
    EXPECT_GT(point.flow_m3_s, last.flow_m3_s) << nozzles;
    EXPECT_LT(point.nozzle_pressure_pa, last.nozzle_pressure_pa) << nozzles;
    last = point;
  }
  EXPECT_LT(last.flow_m3_s, kPump.free_flow_m3_s);
}

TEST(OperatingPoint, IsStillWhereTheLiftBeatsThePump) {
  for (const auto& point : {operating_point(kPump, kHose, 103.0, mist_nozzle(), 20),
                            operating_point(kPump, kHose, 1.0, mist_nozzle(), 0)}) {
    EXPECT_EQ(point.flow_m3_s, 0.0);
    EXPECT_EQ(point.nozzle_pressure_pa, 0.0);
    EXPECT_EQ(point.hydraulic_power_w, 0.0);
  }
  EXPECT_GT(operating_point(kPump, kHose, 101.0, mist_nozzle(), 20).flow_m3_s, 0.0) << "10 bar lift 102 m";
}

TEST(OperatingPoint, RunsByWeightFromAHighTank) {
  const PumpCurve none{0.0, 1.0};
  const WaterLine short_way{0.0, 0.01, 0.0, 0.0};
  const PumpedFlow point = operating_point(none, short_way, -1.0, mist_nozzle(), 4);
  EXPECT_NEAR(point.nozzle_pressure_pa, water_density_kg_m3(293.15) * kGravity, 1e-6);
  EXPECT_EQ(point.hydraulic_power_w, 0.0);
}

}  // namespace
}  // namespace noonhouse
