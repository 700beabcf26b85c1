// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <tuple>
#include <vector>

#include "sim/calendar/calendar.hpp"

namespace noonhouse {
namespace {

TEST(Calendar, OrderIsInstantThenPhaseThenBooking) {
  Calendar<int> calendar;
  calendar.book(Tick{5}, Phase::device, 4);
  calendar.book(Tick{5}, Phase::crossing, 2);
  calendar.book(Tick{5}, Phase::device, 5);
  calendar.book(Tick{5}, Phase::controller, 3);
  calendar.book(Tick{4}, Phase::device, 1);
  EXPECT_EQ(calendar.next_time(), Tick{4});
  for (int expected = 1; expected <= 5; ++expected) EXPECT_EQ(calendar.take_next().second, expected);
  EXPECT_TRUE(calendar.empty());
  EXPECT_EQ(calendar.next_time(), kNever);
}

TEST(Calendar, ACancelledEntryNeverComesAndASecondCancelSaysSo) {
  Calendar<int> calendar;
  const auto first = calendar.book(Tick{1}, Phase::device, 1);
  calendar.book(Tick{1}, Phase::device, 2);
  EXPECT_TRUE(calendar.cancel(first));
  EXPECT_FALSE(calendar.cancel(first));
  EXPECT_EQ(calendar.take_next().second, 2);
  EXPECT_TRUE(calendar.empty());
}

TEST(Calendar, RandomBookingsAndCancellationsComeOutSorted) {
  boost::random::mt19937_64 random(7);
  const auto draw = [&](int below) { return boost::random::uniform_int_distribution<int>(0, below - 1)(random); };
  for (int round = 0; round < 200; ++round) {
    Calendar<int> calendar;
    std::vector<std::tuple<std::int64_t, int, int>> oracle;  // instant, phase, order of booking
    std::vector<CalendarKey> keys;
    for (int i = 0; i < 60; ++i) {
      const auto phase = static_cast<Phase>(draw(3));
      const Tick when{draw(8)};
      keys.push_back(calendar.book(when, phase, i));
      oracle.emplace_back(when.ms, static_cast<int>(phase), i);
    }
    for (int i = 0; i < 20; ++i) {
      const int victim = draw(60);
      const auto same = [&](const auto& entry) { return std::get<2>(entry) == victim; };
      EXPECT_EQ(calendar.cancel(keys[static_cast<std::size_t>(victim)]), std::erase_if(oracle, same) == 1);
    }
    std::sort(oracle.begin(), oracle.end());
    for (const auto& entry : oracle) {
      ASSERT_FALSE(calendar.empty());
      ASSERT_EQ(calendar.take_next().second, std::get<2>(entry));
    }
    EXPECT_TRUE(calendar.empty());
  }
}

}  // namespace
}  // namespace noonhouse
