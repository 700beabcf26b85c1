// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

#include "models/power/battery_kind.hpp"

namespace noonhouse {
namespace {

const BatteryKind& kind(std::string_view name) {
  const BatteryKind* found = find_battery_kind(name);
  if (found == nullptr) throw std::runtime_error("no kind " + std::string(name));
  return *found;
}

TEST(BatteryKinds, AreFoundByNameOnly) {
  std::set<std::string> names;
  for (const BatteryKind& k : battery_kinds()) {
    EXPECT_TRUE(names.insert(k.name).second) << k.name;
    EXPECT_EQ(find_battery_kind(k.name), &k);
    EXPECT_GT(std::string_view(k.about).size(), 10U);
  }
  EXPECT_EQ(names, (std::set<std::string>{"lithium iron phosphate", "absorbent lead", "flooded lead"}));
  EXPECT_EQ(find_battery_kind("lead"), nullptr);
}

// Exponents of Peukert: 1.1 to 1.3 of lead and acid, 1.02 to 1.05 of lithium iron phosphate (from memory).
TEST(BatteryKinds, HaveThePublishedExponents) {
  for (const BatteryKind& k : battery_kinds()) {
    const bool lead = std::string_view(k.name).find("lead") != std::string_view::npos;
    EXPECT_GE(k.peukert_exponent.value, lead ? 1.1 : 1.02) << k.name;
    EXPECT_LE(k.peukert_exponent.value, lead ? 1.3 : 1.05) << k.name;
    EXPECT_EQ(k.rated_hours.value, lead ? 20.0 : 5.0) << k.name;
  }
}

TEST(BatteryKinds, AreSourcedAndPlausible) {
  for (const BatteryKind& k : battery_kinds()) {
    for (const SourcedValue& share : {k.charge_efficiency, k.discharge_efficiency, k.depth, k.share_at_0c,
                                      k.share_at_minus_20c, k.self_discharge_a_month, k.cycle_depth}) {
      EXPECT_GT(share.value, 0.0) << k.name;
      EXPECT_LT(share.value, 1.0) << k.name;
    }
    for (const SourcedValue& figure :
         {k.charge_efficiency, k.discharge_efficiency, k.peukert_exponent, k.rated_hours, k.depth, k.share_at_0c,
          k.share_at_minus_20c, k.least_charge_k, k.self_discharge_a_month, k.self_discharge_doubles_k, k.cycles,
          k.cycle_depth, k.shelf_years, k.life_halves_k})
      EXPECT_GT(std::string_view(figure.source).size(), 20U) << k.name;
    EXPECT_LT(k.share_at_minus_20c.value, k.share_at_0c.value) << k.name;
    EXPECT_NEAR(k.cut_off_share() + k.depth.value, 1.0, 1e-15);
  }
  EXPECT_EQ(kind("lithium iron phosphate").least_charge_k.value, 273.15) << "no charging in frost";
}

// The points of the table lie on the rounded line to a thousandth; between them it is straight.
TEST(BatteryKinds, HoldLessInTheCold) {
  for (const BatteryKind& k : battery_kinds()) {
    const double at_0c = k.share_at_0c.value, at_minus_20c = k.share_at_minus_20c.value;
    EXPECT_NEAR(capacity_share(k, 298.15), 1.0, 0.002) << k.name;
    EXPECT_NEAR(capacity_share(k, 273.15), at_0c, 0.002) << k.name;
    EXPECT_NEAR(capacity_share(k, 253.15), at_minus_20c, 1e-12) << k.name;
    EXPECT_NEAR(capacity_share(k, 285.65), 0.5 * (1.0 + at_0c), 1e-12) << k.name;
    EXPECT_NEAR(capacity_share(k, 263.15), 0.5 * (at_0c + at_minus_20c), 1e-12) << k.name;
    EXPECT_EQ(capacity_share(k, 320.0), 1.0) << k.name;
    EXPECT_NEAR(capacity_share(k, 200.0), 2.0 * at_minus_20c - at_0c, 1e-12) << "held from -40 degC down";
    for (double t = 200.0; t < 320.0; t += 0.05) {
      EXPECT_LE(capacity_share(k, t), capacity_share(k, t + 0.05) + 1e-15) << k.name << " at " << t;
      EXPECT_GT(capacity_share(k, t), 0.1) << k.name;
    }
  }
}

// A battery of 100 Ah: what cold locks up is the lowest part, and comes back.
TEST(UsableCharge, IsLockedUpFromBelow) {
  const ColdCapacity cold{0.8, 0.6};
  const auto now = usable_charge(100.0, cold, 263.15, 1.0);
  EXPECT_NEAR(now.floor_j, 30.0, 1e-12);
  EXPECT_EQ(now.top_j, 100.0);
  EXPECT_NEAR(now.span_j(), 70.0, 1e-12);
  const auto half = usable_charge(100.0, cold, 263.15, 0.5);
  EXPECT_NEAR(half.floor_j, 15.0, 1e-12);
  EXPECT_NEAR(half.span_j(), 35.0, 1e-12);
  const auto warm = usable_charge(100.0, cold, 300.0, 1.0);
  EXPECT_EQ(warm.floor_j, 0.0);
}

// 60 full cycles in a quarter, 20 degC: 600 cycles to 0.5 are 300 full ones, at 240 a year 1.25 years.
TEST(BatteryLife, IsUsedUpByCyclesOrByAge) {
  const BatteryKind& lead = kind("absorbent lead");
  const BatteryLife hard = battery_life(lead, {60.0, 91.3125, 0.5, 293.15, 300.0});
  EXPECT_NEAR(hard.by_cycles_years, 1.25, 1e-12);
  EXPECT_EQ(hard.years(), hard.by_cycles_years);
  EXPECT_EQ(hard.heat_factor, 1.0) << "cool is not counted as a gain";
  const BatteryLife idle = battery_life(lead, {0.0, 90.0, 0.0, 293.15, 300.0});
  EXPECT_TRUE(std::isinf(idle.by_cycles_years));
  EXPECT_EQ(idle.years(), 7.0);
}

// Life halves for each 10 K above 25 degC (common practice): a quarter at 45 degC.
TEST(BatteryLife, IsShortenedByHeat) {
  const BatteryKind& lead = kind("flooded lead");
  const BatteryLife cool = battery_life(lead, {30.0, 90.0, 0.3, 298.15, 298.15});
  const BatteryLife hot = battery_life(lead, {30.0, 90.0, 0.3, 318.15, 330.0});
  EXPECT_NEAR(hot.years() / cool.years(), 0.25, 1e-12);
  EXPECT_NEAR(hot.by_age_years / cool.by_age_years, 0.25, 1e-12);
}

TEST(AgeingNote, SaysWhatEndsTheBatteryAndWhatHeatDoes) {
  EXPECT_EQ(ageing_note(kind("absorbent lead"), {60.0, 91.3125, 0.6, 308.15, 318.15}),
            "A new absorbent lead battery used like this all year (60.0 full cycles in 91 days, to a mean depth of 60 "
            "%) lives about 0.6 years, ended by its cycles; its 35 degC in the mean (45 degC at most) leave it 50 % of "
            "its life at 25 degC, which each 10 K more halve; cycles deeper than 50 % wear it faster than is reckoned "
            "here.");
  EXPECT_EQ(
      ageing_note(kind("lithium iron phosphate"), {10.0, 90.0, 0.3, 293.15, 304.15}),
      "A new lithium iron phosphate battery used like this all year (10.0 full cycles in 90 days, to a mean depth "
      "of 30 %) lives about 12 years, ended by age rather than cycles; its 20 degC in the mean (31 degC at most) "
      "shorten nothing.");
}

}  // namespace
}  // namespace noonhouse
