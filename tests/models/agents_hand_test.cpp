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

/// A vent with a control, a hand and a mark that holds it off; the grower is there all day and shuts it 10 s after the
/// first sign, opens it 10 s after the second.
struct HandStage {
  DeviceWorks works;
  ChannelId hand = works.stage.channel("hand"), held_off = works.stage.channel("held off");
  ChannelId hand_lasting = works.stage.channel("hand, lasting"), held_lasting = works.stage.channel("held, lasting");
  ChannelId hand_pending = works.stage.channel("hand, pending"), held_pending = works.stage.channel("held, pending");
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
    p.moves = {{hand, to, hand_lasting, hand_pending}, {held_off, 1.0 - to, held_lasting, held_pending}};
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
     {"10 opens", "110 is held back: by hand"}},
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
     {"10 opens", "110 is held back: by hand"}},
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

/// Two responses that are put back hold the vent at once; whichever is put back first, the other's hand stays, and in
/// the end the vent is as it was found.
struct TwoHandsRow {
  std::string what;
  double first, second;  ///< what each sets the vent to
  Moves first_sign, second_sign;
  std::vector<std::string> moved;
  double found = 0.0;  ///< by the hand, for good
};
void PrintTo(const TwoHandsRow& row, std::ostream* out) { *out << row.what; }
class TwoHands : public testing::TestWithParam<TwoHandsRow> {};

TEST_P(TwoHands, LeaveTheVentAsItWasFound) {
  const TwoHandsRow& row = GetParam();
  HandStage s;
  if (row.found > 0.0) {
    s.works.stage.hand(s.hand, {{50_s, row.found}});
    s.works.stage.hand(s.hand_lasting, {{50_s, row.found}});
  }
  s.works.stage.hand(s.too_cold, row.first_sign);
  s.works.stage.hand(s.too_hot, row.second_sign);
  s.response("first", s.too_cold, row.first, true);
  s.response("second", s.too_hot, row.second, true);
  s.works.run();
  EXPECT_EQ(s.works.moved, row.moved);
  EXPECT_EQ(s.works.stage.last(s.hand), row.found);
  EXPECT_EQ(s.works.stage.last(s.held_off), 0.0);
  EXPECT_EQ(s.works.stage.last(s.hand_pending), 0.0);
}

const TwoHandsRow kTwoHands[] = {
    {"shut, and shut again, the later put back first",
     0.0,
     0.0,
     {{100_s, 1.0}, {400_s, 0.0}},
     {{200_s, 1.0}, {300_s, 0.0}},
     {"50 1", "110 0", "410 1"},
     1.0},
    {"shut, and shut again, the earlier put back first",
     0.0,
     0.0,
     {{100_s, 1.0}, {300_s, 0.0}},
     {{200_s, 1.0}, {400_s, 0.0}},
     {"50 1", "110 0", "410 1"},
     1.0},
    {"opened, then shut, the later put back first",
     1.0,
     0.0,
     {{100_s, 1.0}, {400_s, 0.0}},
     {{200_s, 1.0}, {300_s, 0.0}},
     {"110 1", "210 0", "310 1", "410 0"}},
    {"opened, then shut, the earlier put back first",
     1.0,
     0.0,
     {{100_s, 1.0}, {300_s, 0.0}},
     {{200_s, 1.0}, {400_s, 0.0}},
     {"110 1", "210 0"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, TwoHands, testing::ValuesIn(kTwoHands), kRowName);

TEST(GrowersHand, DoesNotPutBackWhatWasSetForGoodMeanwhile) {
  HandStage s;
  s.works.stage.hand(s.too_cold, {{100_s, 1.0}, {300_s, 0.0}});
  s.works.stage.hand(s.too_hot, {{200_s, 1.0}});
  s.response("shutter", s.too_cold, 0.0, true);
  s.response("opener", s.too_hot, 1.0, false);
  s.works.run();
  EXPECT_EQ(s.works.moved, (Said{"210 1"})) << "and stays open when the shutter puts back";
  EXPECT_EQ(s.works.stage.last(s.hand), 1.0);
}

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
