// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/water/line_flows.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

/// Two lines on one pump that share it: alone 3 and 4 kg/s, together 2 and 2.5.
struct TwoLines {
  AgentStage stage{1_h};
  ChannelId open_a = stage.channel("a is open"), open_b = stage.channel("b is open");
  ChannelId cut_a = stage.channel("a is cut"), cut_b = stage.channel("b is cut");
  ChannelId spray_a = stage.channel("spray of a"), spray_b = stage.channel("spray of b");
  ChannelId spill_a = stage.channel("spill of a"), spill_b = stage.channel("spill of b");
  ChannelId runs = stage.channel("pump runs");
  TwoLines() {
    stage.agent<LineFlows>({"pump",
                            {{open_a, cut_a, spray_a, spill_a}, {open_b, cut_b, spray_b, spill_b}},
                            {{0.0, 0.0}, {3.0, 0.0}, {0.0, 4.0}, {2.0, 2.5}},
                            runs});
  }
  std::array<double, 5> end(std::initializer_list<std::pair<ChannelId, double>> set) {
    Tick when = 1_min;
    for (const auto& [channel, value] : set) stage.hand(channel, {{when, value}});
    stage.run();
    return {stage.last(spray_a), stage.last(spray_b), stage.last(spill_a), stage.last(spill_b), stage.last(runs)};
  }
};
using Ends = std::array<double, 5>;

TEST(LineFlows, NothingOpenNothingFlows) { EXPECT_EQ(TwoLines().end({}), (Ends{0, 0, 0, 0, 0})); }

TEST(LineFlows, ALineAloneHasThePumpForItself) {
  TwoLines a, b;
  EXPECT_EQ(a.end({{a.open_a, 1.0}}), (Ends{3, 0, 0, 0, 1}));
  EXPECT_EQ(b.end({{b.open_b, 1.0}}), (Ends{0, 4, 0, 0, 1}));
}

TEST(LineFlows, TwoLinesShareThePumpsCurve) {
  TwoLines it;
  EXPECT_EQ(it.end({{it.open_a, 1.0}, {it.open_b, 1.0}}), (Ends{2, 2.5, 0, 0, 1}));
}

TEST(LineFlows, ALinePartlyOpenTakesItsShare) {
  TwoLines it;
  EXPECT_EQ(it.end({{it.open_a, 0.5}}), (Ends{1.5, 0, 0, 0, 1}));
}

TEST(LineFlows, ACutLineLosesWhatItWouldSpray) {
  TwoLines it;
  EXPECT_EQ(it.end({{it.open_a, 1.0}, {it.open_b, 1.0}, {it.cut_a, 1.0}}), (Ends{0, 2.5, 2, 0, 1}));
}

TEST(LineFlows, ACutLineThatIsShutLosesNothing) {
  TwoLines it;
  EXPECT_EQ(it.end({{it.cut_a, 1.0}}), (Ends{0, 0, 0, 0, 0}));
}

}  // namespace
}  // namespace noonhouse
