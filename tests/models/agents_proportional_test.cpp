// SPDX-License-Identifier: Apache-2.0
// Proportional control at its edges.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/proportional_control.hpp"
#include "tests/support/control_stage.hpp"
#include "tests/support/row_name.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

/// Looks every minute; from 30 to 34 unless a row says otherwise.
struct ShareRow {
  std::string what;
  Points reading;
  ChannelChanges demands;
  double dead_step = 0.0;
  double from = 30.0, to = 34.0;
  DailyWindow hours{};
  WhenLost when_lost = WhenLost::holds;
  ChannelChanges good{}, fault{};
};
void PrintTo(const ShareRow& row, std::ostream* out) { *out << row.what; }

class ShareTable : public testing::TestWithParam<ShareRow> {};

TEST_P(ShareTable, MovesToTheseSharesAtTheseInstants) {
  const auto& row = GetParam();
  ControlStage s(30_min, row.reading, row.good, row.fault);
  const ChannelChanges demands = s.run<ProportionalControl>({"control", "sensor", s.reading, s.demand, row.from, row.to,
                                                             1_min, row.dead_step, s.terms(row.hours, row.when_lost)});
  ASSERT_EQ(demands.size(), row.demands.size());
  for (std::size_t i = 0; i < demands.size(); ++i) {
    EXPECT_EQ(demands[i].first.ms, row.demands[i].first.ms);
    EXPECT_NEAR(demands[i].second, row.demands[i].second, 1e-9);
  }
}

const Points kRise{{0_s, 28}, {800_s, 36}};  ///< share 0 up to 200 s, then 0.15 a minute, 1 from 600 s on
const Points kFall{{0_s, 36}, {800_s, 28}};  ///< share 1 down to 200 s, then less by 0.15 a minute, 0 from 600 s on

const ShareRow kShares[] = {
    {"follows its reading between its ends",
     kRise,
     {{240_s, 0.1}, {300_s, 0.25}, {360_s, 0.4}, {420_s, 0.55}, {480_s, 0.7}, {540_s, 0.85}, {600_s, 1.0}}},
    {"leaves out steps that are too small but reaches its upper end",
     kRise,
     {{300_s, 0.25}, {420_s, 0.55}, {540_s, 0.85}, {600_s, 1.0}},
     0.2},
    {"takes a step of just its least size",
     kRise,
     {{240_s, 0.1}, {300_s, 0.25}, {360_s, 0.4}, {420_s, 0.55}, {480_s, 0.7}, {540_s, 0.85}, {600_s, 1.0}},
     0.1},
    {"reaches its lower end", kFall, {{0_s, 1.0}, {300_s, 0.75}, {420_s, 0.45}, {540_s, 0.15}, {600_s, 0.0}}, 0.2},
    {"acts on a falling reading when its second end is the lower",
     kRise,
     {{0_s, 1.0}, {240_s, 0.9}, {300_s, 0.75}, {360_s, 0.6}, {420_s, 0.45}, {480_s, 0.3}, {540_s, 0.15}, {600_s, 0.0}},
     0.0,
     34.0,
     30.0},
    {"looks as its hours open and shuts as they end",
     kRise,
     {{310_s, 0.275}, {370_s, 0.425}, {380_s, 0.0}},
     0.0,
     30.0,
     34.0,
     {310_s, 380_s}},
    {"stays where it is without a reading and looks when it is back",
     kRise,
     {{240_s, 0.1}, {510_s, 0.775}, {570_s, 0.925}, {630_s, 1.0}},
     0.0,
     30.0,
     34.0,
     {},
     WhenLost::holds,
     {{250_s, 0}, {510_s, 1}}},
    {"stops without a reading",
     kRise,
     {{240_s, 0.1}, {250_s, 0.0}, {510_s, 0.775}, {570_s, 0.925}, {630_s, 1.0}},
     0.0,
     30.0,
     34.0,
     {},
     WhenLost::stops,
     {{250_s, 0}, {510_s, 1}}},
    {"calls fully without a reading, within its hours",
     kRise,
     {{260_s, 1.0}, {510_s, 0.775}, {520_s, 1.0}, {550_s, 0.0}},
     0.0,
     30.0,
     34.0,
     {260_s, 550_s},
     WhenLost::runs,
     {{250_s, 0}, {510_s, 1}, {520_s, 0}}},
    {"dies and starts anew with its own clock",
     kRise,
     {{240_s, 0.1}, {250_s, 0.0}, {510_s, 0.775}, {570_s, 0.925}, {630_s, 1.0}},
     0.0,
     30.0,
     34.0,
     {},
     WhenLost::runs,
     {{300_s, 0}, {400_s, 1}},
     {{250_s, 1}, {510_s, 0}}},
};
INSTANTIATE_TEST_SUITE_P(Rows, ShareTable, testing::ValuesIn(kShares), kRowName);

TEST(ProportionalControl, SaysItsShareAndWhy) {
  AgentStage stage(30_min);
  const ChannelId reading = stage.moved("reading", {{0_s, 305.15}, {50_s, 305.15}, {55_s, 300.15}});
  const ChannelId fault = stage.channel("fault");
  stage.hand(fault, {{150_s, 1.0}});
  stage.agent<ProportionalControl>(
      {"vent control", "sensor", reading, stage.channel("demand"), 303.15, 307.15, 1_min, 0.0, {{}, {}, {}, fault}});
  stage.run();
  EXPECT_THAT(stage.said_by("vent control"),
              ElementsAre("0 calls for 50 % of cooling: 32.0 degC at the sensor",
                          "60 calls no longer: 27.0 degC at the sensor", "150 fails: it calls nothing"));
}

}  // namespace
}  // namespace noonhouse
