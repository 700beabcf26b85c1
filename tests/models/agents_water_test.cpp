// SPDX-License-Identifier: Apache-2.0
// A tank's draw levels and its deliveries in the engine's own run.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "models/control/script.hpp"
#include "models/control/weather_diary.hpp"
#include "models/water/refill.hpp"
#include "models/water/tank_guard.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// A tank whose content the test moves, with two levels: mist is held back below 100 kg (until 150), the pump of the
/// drip line cuts out below 20 kg (until 40). Both are wanted all the time.
struct TwoLevels {
  AgentStage stage{6_h};
  ChannelId mist_permit = stage.channel("mist permit", 1.0), pump_permit = stage.channel("pump permit", 1.0);
  ChannelId raining = stage.channel("raining"), delivered = stage.channel("delivered"), call = stage.channel("call");
  ChannelId other = stage.channel("delivered by another");
  explicit TwoLevels(Points content, std::vector<WeatherDiary::Note> notes = {}) {
    const Input water = stage.moved("content", std::move(content));
    stage.agent<WeatherDiary>({"weather", raining, std::move(notes)});
    stage.agent<TankGuard>({"reserve",
                            water,
                            100.0,
                            150.0,
                            mist_permit,
                            raining,
                            reserve_words("hand watering", "the mist line is"),
                            {other, delivered}});
    stage.agent<TankGuard>({"tank", water, 20.0, 40.0, pump_permit, raining});
    stage.agent<Device>({"mist", "starts", "stops", {call}, {{mist_permit, "the reserve is kept"}}, {}});
    stage.agent<Device>({"drip", "starts", "stops", {call}, {{pump_permit, "no water"}}, {}});
    stage.hand(call, {{1_s, 1.0}});
  }
  EventKind kind_of(const std::string& what) const {
    for (const auto& entry : stage.log())
      if (entry.what.find(what) != std::string::npos) return entry.kind;
    ADD_FAILURE() << "nobody said: " << what;
    return EventKind::harm;
  }
};

TEST(TankGuard, HoldsEachLevelBackAtItsOwnMark) {
  TwoLevels t({{0_s, 200.0}, {2000_s, 0.0}, {4000_s, 200.0}});
  t.stage.run();
  EXPECT_THAT(t.stage.said_by("mist"), ElementsAre("1 starts", "1000 stops: the reserve is kept", "3500 starts"));
  EXPECT_THAT(t.stage.said_by("drip"), ElementsAre("1 starts", "1800 stops: no water", "2400 starts"));
  EXPECT_THAT(
      t.stage.said_by("reserve"),
      ElementsAre("1000 no rain and no delivery since the run began", "1000 is down to what is kept for hand watering",
                  "1000 keeps the rest for hand watering: the mist line is held back",
                  "3500 holds more again than is kept for hand watering: the mist line is no longer held back"));
}

TEST(TankGuard, WarnsOfAReserveAndFailsAtTheCutOut) {
  TwoLevels t({{0_s, 200.0}, {2000_s, 0.0}});
  t.stage.run();
  EXPECT_EQ(t.kind_of("keeps the rest"), EventKind::warning) << "kept on purpose";
  EXPECT_EQ(t.kind_of("cuts the pump out"), EventKind::failure);
  EXPECT_EQ(t.kind_of("stops: the reserve is kept"), EventKind::failure) << "the mist was wanted";
  EXPECT_EQ(
      t.stage.chain_of("stops: the reserve is kept"),
      "mist stops: the reserve is kept <- reserve keeps the rest for hand watering: the mist line is held back <- "
      "reserve is down to what is kept for hand watering <- reserve no rain and no delivery since the run began");
}

TEST(TankGuard, ThanksTheDeliveryThatCameAfterTheRain) {
  TwoLevels t({{0_s, 200.0}, {2000_s, 60.0}, {4000_s, 200.0}}, {{100_s, "rain begins", 1.0}});
  t.stage.hand(t.delivered, {{3000_s, 500.0}});
  t.stage.run();
  EXPECT_EQ(t.stage.chain_of("holds more again"),
            "reserve holds more again than is kept for hand watering: the mist line is no longer held back <- hand "
            "moves");
  EXPECT_THAT(t.stage.said_by("tank"), IsEmpty());
}

TEST(TankGuard, ThanksTheNewestDeliveryWhoeverBringsIt) {
  TwoLevels t({{0_s, 200.0}, {2000_s, 60.0}, {4000_s, 200.0}}, {{100_s, "rain begins", 1.0}});
  t.stage.hand(t.delivered, {{50_s, 500.0}});
  t.stage.agent<Script>({"tanker", {{3000_s, "brings 90 L", EventKind::people, {{t.other, 90.0}}}}});
  t.stage.run();
  EXPECT_EQ(t.stage.chain_of("holds more again"),
            "reserve holds more again than is kept for hand watering: the mist line is no longer held back <- tanker "
            "brings 90 L");
}

TEST(TankGuard, BlamesTheRainThatCameAfterTheDelivery) {
  TwoLevels t({{0_s, 200.0}, {2000_s, 60.0}}, {{500_s, "rain ends: 1 mm", 1.0}});
  t.stage.hand(t.delivered, {{100_s, 500.0}});
  t.stage.run();
  EXPECT_EQ(t.stage.chain_of("is down to"),
            "reserve is down to what is kept for hand watering <- weather rain ends: 1 "
            "mm");
}

/// The stage's own tank (brim 300 kg), filled along its inlet, called for at 50 kg, 200 kg an hour after.
struct RefillStage {
  AgentStage stage;
  ChannelId sum = stage.channel("delivered"), journeys = stage.channel("journeys"), raining = stage.channel("raining");
  Refill::Parameters refill;
  RefillStage(Tick length, double tank_kg) : stage(length, tank_kg) {
    refill.name = "tanker";
    refill.tank_water = Input(stage.tank, 1);
    refill.brim_kg = 300.0;
    refill.called_at_kg = 50.0;
    refill.comes_after = 1_h;
    refill.brings_kg = 200.0;
    refill.water_temperature_k = 283.15;
    refill.path = stage.inlet;
    refill.delivered_kg = sum;
    refill.deliveries = journeys;
    refill.raining = raining;
  }
  void run() {
    stage.agent<Refill>(refill);
    stage.run();
  }
};

TEST(Refill, ComesAfterItIsCalledAndWaitsForTheNextCall) {
  RefillStage r(6_h, 100.0);
  r.stage.pour(1000_s, -60.0);
  r.stage.pour(3_h, -195.0);
  r.run();
  // A watch sees what was taken out at one instant in the step that follows, hence the millisecond.
  EXPECT_THAT(r.stage.said_by("tanker"), ElementsAre("1000001ms is called for: 40 L left", "4600001ms brings 200 L",
                                                     "10800001ms is called for: 45 L left", "14400001ms brings 200 L"));
  EXPECT_EQ(r.stage.last(r.sum), 400.0);
  EXPECT_EQ(r.stage.last(r.journeys), 2.0);
  EXPECT_NEAR(r.stage.water(r.stage.tank), 245.0, 1e-9);
}

TEST(Refill, FillsNoFurtherThanTheBrim) {
  RefillStage r(6_h, 40.0);
  r.stage.pour(30_min, 160.0);
  r.refill.comes_at = {5_h};
  r.run();
  EXPECT_THAT(r.stage.said_by("tanker"),
              ElementsAre("0 is called for: 40 L left", "3600 brings 100 L; the tank is full, 100 L go back",
                          "18000 brings 0 L; the tank is full, 200 L go back"));
  EXPECT_EQ(r.stage.last(r.sum), 100.0);
  EXPECT_EQ(r.stage.last(r.journeys), 2.0) << "a journey in vain is a journey";
  EXPECT_NEAR(r.stage.water(r.stage.tank), 300.0, 1e-9);
}

TEST(Refill, ComesAtFixedTimesWithoutACall) {
  RefillStage r(6_h, 60.0);
  r.refill.called_at_kg = 0.0;
  r.refill.brings_kg = 70.0;
  r.refill.comes_at = {1_h, 2_h};
  r.run();
  EXPECT_THAT(r.stage.said_by("tanker"), ElementsAre("3600 brings 70 L", "7200 brings 70 L"));
  EXPECT_NEAR(r.stage.water(r.stage.tank), 200.0, 1e-9);
}

TEST(Refill, CallsAgainWhenItBroughtTooLittle) {
  RefillStage r(150_min, 10.0);
  r.refill.brings_kg = 30.0;
  r.run();
  EXPECT_THAT(r.stage.said_by("tanker"), ElementsAre("0 is called for: 10 L left", "3600 brings 30 L",
                                                     "3600 is called for: 40 L left", "7200 brings 30 L"));
}

TEST(Refill, BringsItsHeat) {
  RefillStage r(2_h, 40.0);
  r.run();
  // 200 kg at 10 degC beside the tank's own 1e5 J/K and 40 kg at 290 K, water of 4186 J/(kg K) [ASHRAE 2017, ch. 1, eq.
  // (33)], all counted from 0 degC.
  EXPECT_NEAR(r.stage.energy(r.stage.tank), (1e5 + 40.0 * 4186.0) * 16.85 + 200.0 * 4186.0 * 10.0, 1.0);
}

TEST(Refill, TellsWhatLedToIt) {
  RefillStage r(6_h, 100.0);
  r.stage.agent<WeatherDiary>({"weather", r.raining, {{100_s, "rain ends: 2 mm", 1.0}}});
  r.stage.pour(1000_s, -60.0);
  r.run();
  EXPECT_EQ(r.stage.chain_of("brings"),
            "tanker brings 200 L <- tanker is called for: 40 L left <- weather rain ends: 2 mm");
}

}  // namespace
}  // namespace noonhouse
