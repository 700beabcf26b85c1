// SPDX-License-Identifier: Apache-2.0
// The grower's hand on a device: sets it, holds it off against what controls call, gives it back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/grower_response.hpp"
#include "tests/support/device_works.hpp"
#include "tests/support/row_name.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using Said = std::vector<std::string>;
using Moves = std::vector<std::pair<Tick, double>>;

/// A vent with a control, a hand and a mark that holds it off; the grower is there all day and shuts it 10 s after the
/// first sign, opens it 10 s after the second.
struct HandStage {
  DeviceWorks works;
  ChannelId hand = works.stage.channel("hand"), held_off = works.stage.channel("held off");
  ChannelId too_cold = works.stage.channel("too cold"), too_hot = works.stage.channel("too hot");
  HandStage() {
    works.p.hand = hand;
    works.p.forbids.push_back({held_off, "by hand"});
  }
  void response(const char* name, ChannelId sign, double to, bool undo) {
    GrowerResponse::Parameters p;
    p.name = name;
    p.sign = sign;
    p.limits = {0.5, 0.4};
    p.sees = "sees it";
    p.does = to > 0.5 ? "opens" : "shuts";
    p.undoes = "puts it back";
    p.moves = {{hand, to, 0.0}, {held_off, 1.0 - to, 0.0}};
    p.undo = undo;
    p.presence = {{}};
    p.reaction = 10_s;
    works.stage.agent<GrowerResponse>(std::move(p));
  }
};

struct HandRow {
  std::string what;
  Moves call, cold, hot;
  bool undo = true;
  Said says;
};
void PrintTo(const HandRow& row, std::ostream* out) { *out << row.what; }
class HandTable : public testing::TestWithParam<HandRow> {};

TEST_P(HandTable, IsStrongerThanWhatControlsCall) {
  const HandRow& row = GetParam();
  HandStage s;
  const std::array<std::pair<ChannelId, Moves>, 3> moved{
      {{s.works.call[0], row.call}, {s.too_cold, row.cold}, {s.too_hot, row.hot}}};
  for (const auto& [channel, moves] : moved)
    if (!moves.empty()) s.works.stage.hand(channel, moves);
  s.response("shutter", s.too_cold, 0.0, row.undo);
  s.response("opener", s.too_hot, 1.0, row.undo);
  EXPECT_EQ(s.works.run(), row.says);
}

const HandRow kHands[] = {
    {"shut while it is called and given back to a call that stands",
     {{10_s, 1.0}},
     {{100_s, 1.0}, {200_s, 0.0}},
     {},
     true,
     {"10 opens", "110 is held back: by hand", "210 opens"}},
    {"held shut against calls that come and go",
     {{10_s, 1.0}, {120_s, 0.0}, {130_s, 1.0}, {140_s, 0.0}},
     {{100_s, 1.0}, {200_s, 0.0}},
     {},
     true,
     {"10 opens", "110 is held back: by hand", "130 is held back: by hand"}},
    {"held shut before anything calls",
     {{150_s, 1.0}},
     {{100_s, 1.0}, {200_s, 0.0}},
     {},
     true,
     {"150 is held back: by hand", "210 opens"}},
    {"held shut for good when nobody puts it back",
     {{10_s, 1.0}, {300_s, 0.0}, {310_s, 1.0}},
     {{100_s, 1.0}, {200_s, 0.0}},
     {},
     false,
     {"10 opens", "110 is held back: by hand", "310 is held back: by hand"}},
    {"left alone when the sign is gone before the grower acts",
     {{10_s, 1.0}},
     {{100_s, 1.0}, {105_s, 0.0}},
     {},
     true,
     {"10 opens"}},
    {"held on when the sign comes back before it is put back",
     {{10_s, 1.0}},
     {{100_s, 1.0}, {200_s, 0.0}, {205_s, 1.0}, {300_s, 0.0}},
     {},
     true,
     {"10 opens", "110 is held back: by hand", "310 opens"}},
    {"opened though nothing calls and given back",
     {},
     {},
     {{100_s, 1.0}, {200_s, 0.0}},
     true,
     {"110 opens", "210 shuts"}},
    {"opened and left open when nobody puts it back",
     {{300_s, 1.0}, {310_s, 0.0}},
     {},
     {{100_s, 1.0}, {200_s, 0.0}},
     false,
     {"110 opens"}},
    {"opened by hand after it was held shut by hand", {}, {{100_s, 1.0}}, {{150_s, 1.0}}, false, {"160 opens"}},
    {"held shut by hand after it was opened by hand",
     {{10_s, 1.0}},
     {{150_s, 1.0}},
     {{100_s, 1.0}},
     false,
     {"10 opens", "160 is held back: by hand"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, HandTable, testing::ValuesIn(kHands), kRowName);

TEST(GrowersHand, StandsBehindWhatItHoldsBackAndGivesBack) {
  HandStage s;
  s.works.stage.hand(s.works.call[0], {{10_s, 1.0}});
  s.works.stage.hand(s.too_cold, {{100_s, 1.0}, {200_s, 0.0}});
  s.response("shutter", s.too_cold, 0.0, true);
  EXPECT_THAT(s.works.standing({150_s, 250_s}), ElementsAre("none", "none")) << "a hand is no failure";
  EXPECT_EQ(s.works.stage.chain_of("held back"),
            "vent is held back: by hand <- shutter shuts <- shutter sees it <- hand moves");
  EXPECT_EQ(s.works.moved, (Said{"10 1", "110 0", "210 1"}));
}

// What is stuck on stays on under the hand; what the hand holds off lacks nothing.
TEST(GrowersHand, IsWeakerThanWhatIsStuckAndExcusesWhatIsLacking) {
  HandStage s;
  s.works.stage.hand(s.works.call[0], {{10_s, 1.0}});
  s.works.stage.hand(s.held_off, {{100_s, 1.0}});
  s.works.stage.hand(s.works.power, {{110_s, 0.0}, {150_s, 1.0}});
  s.works.stage.hand(s.works.fault, {{200_s, number(DeviceFault::stuck_on)}});
  EXPECT_THAT(s.works.standing({120_s, 210_s}), ElementsAre("none", "is stuck on"));
  EXPECT_EQ(s.works.moved, (Said{"10 1", "100 0", "200 1"}));
}

}  // namespace
}  // namespace noonhouse
