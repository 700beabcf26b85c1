// SPDX-License-Identifier: Apache-2.0
// An answer to where plants should stand whose every number is INVENTED: for tests of what shows it.
#pragma once
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "tools/placing/place_answer.hpp"

namespace noonhouse::invented {

inline constexpr double kIce = 273.15;

/// A place whose tissue peaks at `peak_c` on day 1 and 0.5 K higher each day of a week, then begins anew.
inline PlaceFelt felt_place(int days, double peak_c, const GroupShown& group) {
  PlaceFelt felt;
  for (int i = 0; i < days; ++i) {
    DayFelt day;
    day.peak_k = kIce + peak_c + 0.5 * (i % 7);
    day.peak_at_s = 14.0 * 3600.0;
    day.lowest_k = day.peak_k - 15.0;
    day.peak_air_k = day.peak_k - 2.0;
    day.light_mol_m2 = 12.5;
    day.lit_s = 14.0 * 3600.0;
    if (day.peak_k > group.harm_above_k) day.hot_s = 1.5 * 3600.0;
    if (day.lowest_k < group.harm_below_k) day.cold_s = 2.0 * 3600.0;
    day.dry_s = 0.5 * 3600.0;
    day.wet_s = 900.0;
    felt.peak_k = std::max(felt.peak_k, day.peak_k);
    felt.days.push_back(day);
  }
  return felt;
}

inline PlantOutcome outcome(std::string word, double peak_c, double hours_beyond) {
  PlantOutcome out;
  out.outcome = std::move(word);
  out.harm_above_k = kIce + 34.0;
  out.peak_tissue_k = kIce + peak_c;
  out.peak_tissue_time_s = 2 * 86400.0 + 14.0 * 3600.0 + 1200.0;
  out.hours_beyond = hours_beyond;
  return out;
}

inline PlaceShown shown_place(std::string name, double peak_c, double room_m2) {
  PlaceShown place;
  place.name = std::move(name);
  place.bay = "west";
  place.height_m = 0.8;
  place.room_m2 = room_m2;
  place.peak_air_k = kIce + peak_c;
  place.mean_air_k = kIce + 24.0;
  place.light_mol_m2 = 18.3;
  place.direct_h = 5.5;
  for (int hour = 0; hour < 24; ++hour) {
    place.hour_air_k.push_back(kIce + peak_c - 0.5 * std::abs(hour - 14));
    place.hour_deficit_pa.push_back(1000.0 + 10.0 * hour);
    place.hour_par_mol_m2_s.push_back(1e-6 * 20.0 * hour);
  }
  return place;
}

/// Lettuce should move from the high bench beneath the low one, basil stays; basil cannot hang from the rail.
inline PlaceAnswer sample_answer(int days = 10) {
  const double never = std::numeric_limits<double>::infinity();
  PlaceAnswer answer;
  answer.house = "The long house";
  answer.plan = "as built";
  answer.start = "2025-07-14 00:00:00";
  answer.length_s = 86400.0 * days;
  answer.every_s = 300.0;
  answer.places = {shown_place("on the high bench", 41.2, 4.0), shown_place("under the low bench", 30.1, 2.5),
                   shown_place("hanging from the rail", 39.0, 1.0)};
  GroupShown lettuce;
  lettuce.name = "lettuce";
  lettuce.kind = "crisp lettuce";
  lettuce.harm_above_k = kIce + 34.0;
  lettuce.harm_below_k = kIce + 0.0;
  lettuce.stands_on = 0;
  lettuce.should_stand_on = 1;
  lettuce.felt = {felt_place(days, 33.0, lettuce), felt_place(days, 24.0, lettuce), felt_place(days, 31.5, lettuce)};
  lettuce.felt[0].outcome = "harmed";
  lettuce.felt[0].reason = "heat";
  lettuce.felt[0].hazards = {{"heat", 3.2, 3.0, 8.0}, {"dry air", 0.2, 3.0, never}};
  lettuce.felt[1].hazards = {{"heat", 0.05, 3.0, 8.0}, {"too little light", 0.4, 3.0, never}};
  lettuce.felt[2].outcome = "strained";
  lettuce.felt[2].hazards = {{"heat", 1.5, 3.0, 8.0}};
  lettuce.cannot = {"", "", ""};
  lettuce.why = "on the high bench its leaves reach 36.0 degC";
  lettuce.before = outcome("harmed", 36.0, 9.5);
  lettuce.after = outcome("kept", 27.5, 0.0);
  GroupShown basil;
  basil.name = "basil";
  basil.kind = "basil";
  basil.harm_above_k = kIce + 40.0;
  basil.harm_below_k = kIce + 20.0;
  basil.stands_on = basil.should_stand_on = 0;
  basil.felt = {felt_place(days, 35.5, basil), felt_place(days, 22.0, basil), PlaceFelt{}};
  basil.felt[0].hazards = {{"heat", 0.3, 3.0, 8.0}};
  basil.felt[1].outcome = "lost";
  basil.felt[1].hazards = {{"cold", 9.0, 3.0, 8.0}};
  basil.cannot = {"", "", "the rail bears no pots"};
  basil.why = "nowhere is it harmed less";
  basil.before = basil.after = outcome("kept", 33.0, 0.0);
  answer.groups = {lettuce, basil};
  answer.problem.groups = {{"lettuce", 1.6, 0, false, {}}, {"basil", 1.0, 0, false, {}}};
  answer.problem.places = {{"high bench", 4.0}, {"space under the low bench", 2.5}, {"rail", 1.0}};
  answer.problem.harm = {{{112.0, ""}, {0.4, ""}, {12.5, ""}}, {{0.3, ""}, {1000.0, ""}, {never, "no room to hang"}}};
  StandingPlan plan;
  plan.place = {1, 0};
  plan.changes = {{0, 0, 1, 112.0, 0.4}};
  plan.moves = 1;
  answer.standing = plan;
  answer.water_before.misted_kg = 100.0;
  answer.water_before.hand_watered_kg = 23.0;
  answer.water_after.misted_kg = 90.0;
  answer.water_after.hand_watered_kg = 20.0;
  return answer;
}

/// The same where all stand as they should.
inline PlaceAnswer settled_answer() {
  PlaceAnswer answer = sample_answer();
  answer.groups[0].stands_on = 1;
  answer.groups[0].before = answer.groups[0].after;
  answer.problem.groups[0].stands_on = 1;
  StandingPlan plan;
  plan.place = {1, 0};
  answer.standing = plan;
  return answer;
}

/// The same where the lettuce has no place large enough.
inline PlaceAnswer unhoused_answer() {
  PlaceAnswer answer = sample_answer();
  answer.problem.groups[0].area_m2 = 6.0;
  Unhoused unhoused;
  unhoused.groups = {0};
  unhoused.need_m2 = 6.0;
  unhoused.refusals = {{PlaceRefusal::Why::too_small, 0, 4.0, false},
                       {PlaceRefusal::Why::too_small, 1, 2.5, false},
                       {PlaceRefusal::Why::too_small, 2, 1.0, false}};
  answer.standing = unhoused;
  for (GroupShown& group : answer.groups) {
    group.should_stand_on = kNowhere;
    group.after = {};
  }
  answer.water_after = {};
  return answer;
}

}  // namespace noonhouse::invented
