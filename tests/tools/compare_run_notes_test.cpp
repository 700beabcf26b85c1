// SPDX-License-Identifier: Apache-2.0
// What a run tells beside its outcomes: ballast, vents, gutters, the battery's life.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/hazard/wind_load.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/run_notes.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

HouseShape two_facets() {
  HouseShape shape;
  Facet roof, wall;
  roof.side = WallSide::roof_front, roof.area_m2 = 10.0;
  wall.side = WallSide::front, wall.area_m2 = 7.0;
  shape.facets = {roof, wall};
  return shape;
}

PlanScenario with_cloth(ShadeOver over) {
  PlanScenario plan;
  plan.in_service = {"awning"};
  plan.spec.shades = {{"awning", {}}};
  ShadeSpec& cloth = plan.spec.shades[0].value;
  cloth.over = over;
  cloth.uplift = 0.6;
  cloth.loose_kg_m2 = 0.2;
  cloth.ballast_kg = 40.0;
  return plan;
}

/// By hand: 1.5 x 0.6 x 0.613 x V^2 / 9.80665 - 0.2 on each square metre; 5.426 kg at 10 m/s and 22.303 kg at 20 m/s.
TEST(BallastNote, TellsTheRunsGustAndOneToPlanFor) {
  EXPECT_THAT(ballast_notes(with_cloth(ShadeOver::roof), two_facets(), 10.0),
              ElementsAre("\"awning\" lies loose: gusts of 10.0 m/s, the run's strongest, call for 54 kg of ballast on "
                          "it, gusts of 20 m/s for 223 kg, to hold 1.5 times the wind's lift; it has 40 kg. The gust "
                          "at which it lifts in "
                          "a run has no such factor.",
                          std::string(kWindCaution)));
  EXPECT_THAT(ballast_notes(with_cloth(ShadeOver::all), two_facets(), 10.0)[0], HasSubstr("for 92 kg of ballast"));
}

TEST(BallastNote, IsForLooseCoversInServiceAlone) {
  PlanScenario plan = with_cloth(ShadeOver::roof);
  plan.in_service.clear();
  EXPECT_THAT(ballast_notes(plan, two_facets(), 10.0), IsEmpty());
  plan = with_cloth(ShadeOver::roof);
  plan.spec.shades[0].value.loose_kg_m2.reset();
  EXPECT_THAT(ballast_notes(plan, two_facets(), 10.0), IsEmpty());
}

TEST(VentNote, IsForVentsInServiceThatDoNotBearTheGust) {
  PlanScenario plan;
  plan.in_service = {"ridge vent", "side vent"};
  plan.spec.openings = {{"ridge vent", {}}, {"side vent", {}}, {"door", {}}};
  plan.spec.openings[0].value.withstands_m_s = 15.0;
  plan.spec.openings[1].value.withstands_m_s = 25.0;
  plan.spec.openings[2].value.withstands_m_s = 10.0;
  EXPECT_THAT(vent_notes(plan, 18.26),
              ElementsAre("\"ridge vent\" bears gusts of 15.0 m/s when open; the run's strongest had 18.3 m/s."));
}

/// Of 100 kg that came down to a filter that passes 90 %, 10 kg it turned away: the other 12 kg overshot.
TEST(GutterNote, CountsWhatOvershotWithoutTheFiltersPart) {
  PlanScenario plan;
  plan.spec.gutters = {{"front gutter", {}}, {"back gutter", {}}};
  for (auto& gutter : plan.spec.gutters) gutter.value.filter_passes = 0.9;
  House house;
  house.exchanges = {{"rain by the front gutter", "rain", "", 0, 6}, {"rain by the back gutter", "rain", "", 6, 6}};
  RunResult result;
  result.state.carried = {90.0, 0.0, 4.0, 0.0, 22.0, 0.0, 90.0, 0.0, 4.0, 0.0, 10.0, 0.0};
  EXPECT_THAT(gutter_notes(plan, house, result),
              ElementsAre("The front gutter could not take all the rain: 12 L went past it."));
}

TEST(BatteryNote, IsOfTheRunsCyclesAndDays) {
  EnergyOutcome energy;
  energy.full_cycles = 6.5;
  energy.daily_depth = 0.4;
  energy.mean_k = 298.15, energy.peak_k = 308.15;
  PowerSpec power;
  power.battery_kind = "lithium iron phosphate";
  const std::string note = battery_note(energy, power, 7.0 * 86400.0);
  EXPECT_THAT(note, HasSubstr("6.5 full cycles in 7 days, to a mean depth of 40 %"));
  EXPECT_THAT(note, HasSubstr("25 degC in the mean (35 degC at most)"));
}

TEST(DamageNotes, TellWhatBadWeatherBroke) {
  const std::vector<LogEntry> log{
      {0, kNoEvent, Tick{0}, EventKind::weather, "front roof", "held the hail: stones of 0.5 J"},
      {1, kNoEvent, kDay * 3 + 19_h, EventKind::weather, "front roof", "hail is over: 63 % of it is broken"},
      {2, kNoEvent, kDay * 4, EventKind::failure, "net", "is blown off: it lifts at gusts of 8.6 m/s"}};
  EXPECT_THAT(damage_notes(log),
              ElementsAre("Broken on day 4 at 19:00: front roof, hail is over: 63 % of it is broken.",
                          "Broken on day 5 at 00:00: net is blown off: it lifts at gusts of 8.6 m/s.",
                          "Air changes told of the whole run mix the time before the hail with that after it.",
                          "The repair of what broke is in no price here."));
  EXPECT_THAT(damage_notes({log[0]}), IsEmpty());
}

/// Four parts that hail broke at one minute are one sentence; two vents torn open at one minute stand by name.
TEST(DamageNotes, GroupWhatBrokeAtOnceForOneCause) {
  std::vector<LogEntry> log;
  for (const auto& [part, share] : {std::pair{"roof 1", "87"}, {"roof 2", "52"}, {"roof 3", "100"}, {"roof 4", "99"}})
    log.push_back({static_cast<EventId>(log.size()), kNoEvent, kDay * 4 + 17_h, EventKind::weather, part,
                   std::string("hail is over: ") + share + " % of it is broken"});
  for (const char* vent : {"back roll-up", "front roll-up"})
    log.push_back(
        {static_cast<EventId>(log.size()), kNoEvent, kDay * 5, EventKind::failure, vent, "is torn open by the wind"});
  const auto notes = damage_notes(log);
  ASSERT_EQ(notes.size(), 4U);
  EXPECT_EQ(notes[0], "Broken on day 5 at 17:00: hail is over: 52 to 100 % of each of 4 parts of the cover is broken.");
  EXPECT_EQ(notes[1],
            "Broken on day 6 at 00:00: back roll-up is torn open by the wind; front roll-up is torn open by the wind.");
}

TEST(WaterUse, SaysWhatOfItWasLost) {
  WaterOutcome water;
  water.misted_kg = 70.0;
  water.dripped_kg = 8.0;
  EXPECT_EQ(water_use_text(water, UnitSystem::metric), "78 L");
  water.leaked_kg = 300.0;
  water.spilt_kg = 1.0;
  EXPECT_EQ(water_use_text(water, UnitSystem::metric), "379 L, 301 L of it lost");
}

}  // namespace
}  // namespace noonhouse
