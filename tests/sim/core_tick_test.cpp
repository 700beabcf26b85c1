// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

TEST(Tick, LiteralsCountMilliseconds) {
  EXPECT_EQ((3_s).ms, 3'000);
  EXPECT_EQ((2_min).ms, 120'000);
  EXPECT_EQ((1_h).ms, 3'600'000);
  EXPECT_EQ(kDay.ms, 86'400'000);
  EXPECT_EQ((1_h + 5_s - 2_min * 3).ms, 3'245'000);
}

TEST(Tick, SecondsAndBackIsTheSameTickByBothRoundings) {
  for (std::int64_t ms = 0; ms < 2'000'000; ms += 7) {
    ASSERT_EQ(ticks(seconds(Tick{ms})).ms, ms);
    ASSERT_EQ(ticks_up(seconds(Tick{ms})).ms, ms);
  }
  for (std::int64_t day = 0; day < 20'000; day += 13) {
    const std::int64_t ms = day * 86'400'000 + 86'399'999;
    ASSERT_EQ(ticks(seconds(Tick{ms})).ms, ms);
    ASSERT_EQ(ticks_up(seconds(Tick{ms})).ms, ms);
  }
}

TEST(Tick, RoundingGoesToTheNearestAndUpward) {
  EXPECT_EQ(ticks(0.0014).ms, 1);
  EXPECT_EQ(ticks(0.0016).ms, 2);
  EXPECT_EQ(ticks(-0.0016).ms, -2);
  EXPECT_EQ(ticks_up(0.0011).ms, 2);
  EXPECT_EQ(ticks_up(-0.0019).ms, -1);
}

}  // namespace
}  // namespace noonhouse
