// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "sim/run/crossings.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
constexpr Tick kWidth{10};

/// One tank (potential 0) and one channel (potential 1), with a step whose dense output the test writes.
class Crossings : public testing::Test {
 protected:
  Crossings() {
    HouseGraph graph;
    tank = graph.node("tank", WaterBucket{}, {0.0}, {0.01});
    valve = graph.channel("valve", "kg/s", 0.0);
    const auto out = graph.account("drain", Quantity::water);
    graph.exchange("drain", "x", toy::Supply<Quantity::water>{}, {valve}, {{{tank, out}}});
    house = graph.compile();
    line = {Tick{0}, {0.0}, {0.0}};
  }
  /// A cubic between (begin, y0, slope r0) and (end, y1, slope r1).
  void step_is(Tick begin, Tick end, double y0, double r0, double y1, double r1) {
    step.begin = begin;
    step.end = end;
    step.amounts0 = {y0};
    step.rates0 = {r0};
    step.amounts1 = {y1};
    step.rates1 = {r1};
  }
  void watch(const Input& what, double threshold, Watch::Direction direction, bool armed = true) {
    watches.push_back({AgentId{0}, 0, armed, {what, threshold, direction}, house.position(what)});
  }
  Tick find() {
    std::vector<double> at_end(2);
    at_end[0] = step.amounts1[0];
    line.at(step.end, at_end.data() + 1);
    return CrossingFinder(house, kWidth).find(watches, step, line, at_end, fired);
  }
  double level(Tick when) const {
    double y = 0.0;
    step.amounts_at(when, &y);
    return y;
  }
  static constexpr auto kRising = Watch::Direction::rising, kFalling = Watch::Direction::falling;

  House house;
  NodeId tank;
  ChannelId valve;
  ChannelLine line;
  Step step;
  std::vector<ArmedWatch> watches;
  std::vector<std::size_t> fired;
};

void expect_within(Tick when, double exact_s, Tick width) {
  EXPECT_GE(seconds(when), exact_s - 1e-9) << "on the passed side";
  EXPECT_LE(seconds(when), exact_s + seconds(width) + 0.001);
}

TEST_F(Crossings, ALineIsCrossedWhereItIs) {
  for (const double threshold : {0.0013, 1.0, 33.3333, 59.9999, 60.0}) {
    watches.clear();
    step_is(100_s, 160_s, 0.0, 1.0, 60.0, 1.0);
    watch(tank, threshold, kRising);
    expect_within(find(), 100.0 + threshold, kWidth);
    EXPECT_THAT(fired, ElementsAre(0U));
    watches.clear();
    step_is(100_s, 160_s, 0.0, -1.0, -60.0, -1.0);
    watch(tank, -threshold, kFalling);
    expect_within(find(), 100.0 + threshold, kWidth);
  }
}

TEST_F(Crossings, AnExponentialIsCrossedWhereItsDenseOutputIs) {
  const double rate = 1.0 / 40.0, h = 20.0;
  const double y1 = 100.0 * std::exp(-rate * h);
  step_is(Tick{0}, 20_s, 100.0, -rate * 100.0, y1, -rate * y1);
  for (double threshold = y1 + 0.5; threshold < 100.0; threshold += 3.7) {
    watches.clear();
    watch(tank, threshold, kFalling);
    const Tick when = find();
    EXPECT_LE(level(when), threshold);
    EXPECT_GT(level(when - kWidth - Tick{1}), threshold);
    // the cubic itself is good to h^4 y''''/384
    EXPECT_NEAR(seconds(when), -std::log(threshold / 100.0) / rate, 0.012 + std::pow(rate * h, 4) / 384 / rate);
  }
}

TEST_F(Crossings, TheWrongDirectionAndDisarmedWatchesStaySilent) {
  step_is(Tick{0}, 60_s, 0.0, 1.0, 60.0, 1.0);
  watch(tank, -5.0, kFalling);
  watch(tank, 70.0, kRising);
  watch(tank, 30.0, kRising, false);
  EXPECT_EQ(find(), kNever);
  EXPECT_TRUE(fired.empty());
}

TEST_F(Crossings, ALimitTouchedAndLeftWithinOneStepIsFound) {
  step_is(Tick{0}, 100_s, 0.0, 1.0, 0.0, -1.0);  // a parabola, 25 at its top
  watch(tank, 24.0, kRising);
  expect_within(find(), 40.0, kWidth);  // t (1 - t/100) = 24
  watches.clear();
  watch(tank, 25.1, kRising);
  EXPECT_EQ(find(), kNever);
  watches.clear();
  step_is(Tick{0}, 100_s, 0.0, -1.0, 0.0, 1.0);
  watch(tank, -24.0, kFalling);
  expect_within(find(), 40.0, kWidth);
}

TEST_F(Crossings, ALimitTouchedByAWaveWithinOneStepIsFound) {
  // Rising at both ends, with a hump and a hollow between: both slopes have one sign.
  step_is(Tick{0}, 100_s, 0.0, 1.0, 0.0, 1.0);  // 100 (2 s^3 - 3 s^2 + s): +-9.6225 at s = 0.2113 and 0.7887
  watch(tank, 9.0, kRising);
  const Tick up = find();
  EXPECT_GE(level(up), 9.0);
  EXPECT_LT(up, Tick{21'140});
  watches.clear();
  watch(tank, -9.0, kFalling);
  const Tick down = find();
  EXPECT_LE(level(down), -9.0);
  EXPECT_GT(down, 60_s);
}

TEST_F(Crossings, AChannelsStraightLineIsWatchedToo) {
  step_is(10_s, 70_s, 0.0, 0.0, 0.0, 0.0);
  line = {10_s, {5.0}, {-0.1}};
  watch(valve, 2.0, kFalling);
  expect_within(find(), 40.0, kWidth);
}

TEST_F(Crossings, WatchesThatPassAtTheSameInstantFireTogetherAndLaterOnesDoNot) {
  step_is(Tick{0}, 60_s, 0.0, 1.0, 60.0, 1.0);
  watch(tank, 45.0, kRising);
  watch(tank, 20.0, kRising);
  watch(tank, 20.0, kRising);
  expect_within(find(), 20.0, kWidth);
  EXPECT_THAT(fired, ElementsAre(1U, 2U));
}

TEST_F(Crossings, AWatchThatIsBeyondItsLimitAtTheBeginningFiresAtOnce) {
  step_is(Tick{0}, 60_s, 30.0, 1.0, 90.0, 1.0);
  watch(tank, 20.0, kRising);
  EXPECT_EQ(find(), Tick{1});
}

TEST_F(Crossings, AWatchThatIsBeyondItsLimitAtTheBeginningOnlyFiresAtOnceToo) {
  step_is(Tick{0}, 60_s, 30.0, -1.0, -30.0, -1.0);
  watch(tank, 20.0, kRising);
  EXPECT_EQ(find(), Tick{1}) << "water poured in lifted it over; it drains before the step ends";
  watches.clear();
  line = {Tick{0}, {5.0}, {-0.1}};
  watch(valve, 4.0, kRising);
  EXPECT_EQ(find(), Tick{1}) << "a break lifted the channel over; it falls before the step ends";
}

TEST_F(Crossings, EveryReturnedInstantIsPassedAndTheWidthBeforeItIsNot) {
  for (int k = 1; k < 400; ++k) {
    watches.clear();
    const double bend = std::sin(k);
    step_is(Tick{7 * k}, Tick{7 * k + 1 + 97 * k}, -1.0 - 0.01 * k, 0.3 + bend, 2.0 + bend, 0.5 - bend);
    watch(tank, 0.0, kRising);
    const Tick when = find();
    ASSERT_GT(when, step.begin);
    ASSERT_LE(when, step.end);
    ASSERT_GE(level(when), 0.0);
    if (when - kWidth - Tick{1} >= step.begin) {
      ASSERT_LT(level(when - kWidth - Tick{1}), 0.0) << k;
    }
  }
}

}  // namespace
}  // namespace noonhouse
