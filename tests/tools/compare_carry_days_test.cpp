// SPDX-License-Identifier: Apache-2.0
// How long tank and battery carry by themselves, from numbers made by hand.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "models/power/battery_kind.hpp"
#include "sim/core/tick.hpp"
#include "tools/compare/carry_days.hpp"
#include "tools/compare/day_tally.hpp"

namespace noonhouse {
namespace {

TankSpec tank() {
  TankSpec t;
  t.capacity_m3 = 0.3;
  t.low_m3 = 0.02;
  return t;
}

TEST(TankDays, CountFromTheLevelToTheLowMark) {
  const CarryDays full = tank_days(300.0, tank(), {28.0, 56.0});
  EXPECT_DOUBLE_EQ(full.at_mean, 10.0);
  EXPECT_DOUBLE_EQ(full.at_heaviest, 5.0);
  EXPECT_DOUBLE_EQ(tank_days(15.0, tank(), {28.0, 56.0}).at_mean, 0.0) << "below the mark";
}

TEST(TankDays, ARunThatDoesNotFillADayHasItsMeanAsHeaviest) {
  EXPECT_DOUBLE_EQ(tank_days(300.0, tank(), {28.0, 7.0}).at_heaviest, 10.0);
}

TEST(TankDays, AreNoNumberWhereNothingIsUsed) {
  EXPECT_TRUE(std::isnan(tank_days(300.0, tank(), {}).at_mean));
  EXPECT_TRUE(std::isnan(tank_days(300.0, tank(), {}).at_heaviest));
}

PowerSpec power() {
  PowerSpec p;
  p.battery_kind = battery_kinds().front().name;
  p.battery_j = 3.6e6;
  p.cut_off = 0.2;
  p.discharge_efficiency = 0.96;
  p.standby_w = 2.0;
  p.inverter_standby_w = 1.0;
  return p;
}

/// What steady loads and self-discharge leave after a time, by Euler steps of a minute: dQ/dt = -L / eta - r Q.
double days_by_steps(double charge_j, double cut_off_j, double load_w, double efficiency, double rate_1_s) {
  double t = 0.0;
  for (; charge_j > cut_off_j; t += 60.0) charge_j -= 60.0 * (load_w / efficiency + rate_1_s * charge_j);
  return t / kSecondsPerDay;
}

/// 10 W on the mean and 20 W on the heaviest day, warm: 0.8 of 1 kWh through 96 %, less self-discharge.
TEST(BatteryDays, CountFromTheChargeToTheCutOff) {
  BatteryDay day;
  day.loads = {10.0 * kSecondsPerDay, 20.0 * kSecondsPerDay};
  day.coldest_k = 303.15;
  day.mean_k = 298.15;
  const double rate = battery_kinds().front().self_discharge_per_s();
  const CarryDays full = battery_days(3.6e6, power(), day);
  EXPECT_NEAR(full.at_mean, days_by_steps(3.6e6, 0.72e6, 10.0, 0.96, rate), 0.002);
  EXPECT_NEAR(full.at_heaviest, days_by_steps(3.6e6, 0.72e6, 20.0, 0.96, rate), 0.002);
  EXPECT_LT(full.at_mean, 0.8 * 0.96 * 1000.0 / 10.0 / 24.0) << "no more than without self-discharge";
}

/// Cold takes charge away from below: the cut-off lies a share 0.2 of what is left above it. A mean temperature 10 K
/// above 25 degC doubles the self-discharge of a kind whose own is said to double so.
TEST(BatteryDays, ColdBringsTheCutOffNearer) {
  BatteryDay day;
  day.loads = {10.0 * kSecondsPerDay, 10.0 * kSecondsPerDay};
  day.mean_k = 308.15;
  day.coldest_k = 273.15;
  const BatteryKind& kind = battery_kinds().front();
  const double share = capacity_share(kind, day.coldest_k), cut_off = 3.6e6 * (1.0 - share + 0.2 * share);
  EXPECT_LT(share, 0.99);
  ASSERT_EQ(kind.self_discharge_doubles_k.value, 10.0);
  EXPECT_NEAR(battery_days(3.6e6, power(), day).at_mean,
              days_by_steps(3.6e6, cut_off, 10.0, 0.96, 2.0 * kind.self_discharge_per_s()), 0.002);
}

/// With half of its cells a battery holds half, and the cut-off lies at a share of that.
TEST(BatteryDays, CountTheCellsThatWork) {
  BatteryDay day;
  day.loads = {10.0 * kSecondsPerDay, 10.0 * kSecondsPerDay};
  day.coldest_k = 303.15;
  day.mean_k = 298.15;
  day.cells = 0.5;
  const double rate = battery_kinds().front().self_discharge_per_s();
  EXPECT_NEAR(battery_days(1.8e6, power(), day).at_mean, days_by_steps(1.8e6, 0.36e6, 10.0, 0.96, rate), 0.002);
}

/// A run whose loads were cut off for most of it drew little; what is always on counts all day long.
TEST(BatteryDays, StandbyCountsAllDay) {
  BatteryDay day;
  day.loads = {0.5 * kSecondsPerDay, 0.5 * kSecondsPerDay};
  day.coldest_k = 303.15;
  const double rate = battery_kinds().front().self_discharge_per_s();
  EXPECT_NEAR(battery_days(3.6e6, power(), day).at_mean, days_by_steps(3.6e6, 0.72e6, 3.0, 0.96, rate), 0.002);
}

TEST(HeaviestDay, IsTheMostThatADayBrings) {
  House house;
  house.exchanges = {{"a", "drip", "", 0, 2}, {"b", "drip", "", 2, 1}, {"c", "leak", "", 3, 1}};
  FluxSum sum;
  sum.add(house, "drip", 0).add(house, "leak", 0, -1.0);
  HeaviestDay heaviest(sum);
  heaviest.end_day(std::array{3.0, 100.0, 2.0, 1.0});   // 4
  heaviest.end_day(std::array{9.0, 200.0, 3.0, 1.0});   // 11: 7 more
  heaviest.end_day(std::array{10.0, 300.0, 3.0, 1.0});  // 12: 1 more
  EXPECT_DOUBLE_EQ(heaviest.heaviest(), 7.0);
  EXPECT_DOUBLE_EQ(heaviest.total(), 12.0);
}

TEST(DailySwing, IsTheMeanOverWholeDays) {
  DailySwing swing;
  swing.look(5.0), swing.look(9.0);
  EXPECT_DOUBLE_EQ(swing.mean(), 4.0) << "before a day is over";
  swing.end_day();
  swing.look(9.0), swing.look(3.0), swing.look(4.0);
  swing.end_day();
  EXPECT_DOUBLE_EQ(swing.mean(), 5.0);
  swing.look(4.0);
  EXPECT_DOUBLE_EQ(swing.mean(), 5.0) << "a day that has begun does not count";
}

}  // namespace
}  // namespace noonhouse
