// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/control/clock.hpp"
#include "models/properties/figure_text.hpp"

namespace noonhouse {
namespace {

TEST(DailyWindow, HoldsFromItsBeginningUpToItsEnd) {
  const DailyWindow day{9_h, 17_h};
  EXPECT_FALSE(day.holds(Tick{(9_h).ms - 1}));
  EXPECT_TRUE(day.holds(9_h));
  EXPECT_TRUE(day.holds(Tick{(17_h).ms - 1}));
  EXPECT_FALSE(day.holds(17_h));
  EXPECT_TRUE(day.holds(kDay * 3 + 12_h));
}

TEST(DailyWindow, GoesOverMidnight) {
  const DailyWindow night{22_h, 6_h};
  EXPECT_TRUE(night.holds(Tick{0}));
  EXPECT_FALSE(night.holds(6_h));
  EXPECT_FALSE(night.holds(21_h));
  EXPECT_TRUE(night.holds(kDay + 23_h));
  EXPECT_EQ(night.next_edge(Tick{0}), 6_h);
  EXPECT_EQ(night.next_edge(6_h), 22_h);
  EXPECT_EQ(night.next_edge(22_h), kDay + 6_h);
}

TEST(DailyWindow, EndsAtMidnightWhenItSaysTwentyFour) {
  const DailyWindow evening{18_h, kDay};
  EXPECT_TRUE(evening.holds(Tick{kDay.ms - 1}));
  EXPECT_FALSE(evening.holds(kDay));
  EXPECT_EQ(evening.next_edge(20_h), kDay);
  EXPECT_EQ(evening.next_edge(kDay), kDay + 18_h);
}

TEST(DailyWindow, IsTheWholeDayWhereItsEndsMeet) {
  for (const DailyWindow& all : {DailyWindow{}, DailyWindow{8_h, 8_h}, DailyWindow{Tick{0}, kDay}}) {
    EXPECT_TRUE(all.holds(8_h));
    EXPECT_TRUE(all.holds(Tick{(8_h).ms - 1}));
    EXPECT_EQ(all.next_edge(8_h), kNever);
  }
}

TEST(DailyWindow, NamesEveryEdgeOnceAndAlwaysLater) {
  for (const DailyWindow& window : {DailyWindow{9_h, 17_h}, DailyWindow{22_h, 6_h}, DailyWindow{Tick{0}, 5_h}}) {
    Tick now{0};
    for (int i = 0; i < 10; ++i) {
      const Tick next = window.next_edge(now);
      ASSERT_GT(next, now);
      EXPECT_NE(window.holds(next), window.holds(Tick{next.ms - 1})) << next.ms;
      EXPECT_EQ(window.holds(Tick{next.ms - 1}), window.holds(now)) << "nothing in between";
      now = next;
    }
  }
}

TEST(Words, ShowKelvinsAsCelsiusWithOneDecimal) {
  EXPECT_EQ(celsius_text(307.15), "34.0 degC");
  EXPECT_EQ(celsius_text(272.65), "-0.5 degC");
  EXPECT_EQ(number_text(12.345, 1), "12.3");
}

TEST(Words, ShowSharesInPercentAndPressuresInKilopascals) {
  EXPECT_EQ(percent_text(0.854), "85 %");
  EXPECT_EQ(percent_text(1.0), "100 %");
  EXPECT_EQ(kilopascal_text(1204.0), "1.20 kPa");
  EXPECT_EQ(kilopascal_text(0.0), "0.00 kPa");
}

}  // namespace
}  // namespace noonhouse
