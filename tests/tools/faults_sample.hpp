// SPDX-License-Identifier: Apache-2.0
// A sheet of failures whose every number is INVENTED: for tests of what shows it.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "tools/faults/fault_sheet.hpp"

namespace noonhouse::invented {

inline constexpr double kFourthDay = 3 * 86400.0;

/// Harm `grace_s` after a failure in the hours [from, to) of the hottest day, none at the others.
inline FaultOutcome fault_of(std::string of, std::string words, int from, int to, double grace_s) {
  FaultOutcome fault;
  fault.of = std::move(of);
  fault.words = std::move(words);
  fault.grace_by_hour_s.fill(kNotHappened);
  for (int hour = from; hour < to; ++hour) fault.grace_by_hour_s[static_cast<std::size_t>(hour)] = grace_s + 600.0;
  fault.harms = true;
  fault.worst_s = kFourthDay + from * 3600.0 + 1200.0;
  fault.worst_grace_s = grace_s;
  return fault;
}

inline FaultOutcome harmless_fault(std::string of, std::string words) {
  FaultOutcome fault = fault_of(std::move(of), std::move(words), 0, 0, 0.0);
  fault.harms = false;
  fault.worst_s = fault.worst_grace_s = kNotHappened;
  return fault;
}

/// Five failures of a plan with mist and vents; the first three do harm.
inline FaultSheet fault_sheet() {
  FaultSheet sheet;
  sheet.scenario = "heatwave";
  sheet.plan = "vents, mist and shade";
  sheet.start = "2025-07-14 00:00:00";
  sheet.hottest_day_s = sheet.told_day_s = kFourthDay;
  sheet.runs = 412;
  sheet.lost_anyway = {"citrus"};
  FaultOutcome mist = fault_of("high mist", "is stuck off", 13, 16, 2759.0);
  mist.costs = {{"ferns", "lost", "too hot for too long", kFourthDay + 60000.0},
                {"salads", "harmed", "too hot", kFourthDay + 61000.0},
                {"mosses", "lost", "too dry", kFourthDay + 70000.0}};
  mist.chain = {"ferns harmed: 34.0 degC is too hot, day 4 14:05", "high mist is stuck off, day 4 13:20"};
  mist.additions = {{"a second thermostat", kNotHappened}, {"a heat alarm", 7845.0}, {"passive vent openers", 2800.0}};
  FaultOutcome vent = fault_of("ridge vent", "is stuck shut", 9, 12, 3 * 3600.0 + 3000.0);
  vent.costs = {{"salads", "harmed", "too hot", kFourthDay + 65000.0}};
  vent.chain = {"salads harmed: too hot, day 4 13:10"};
  vent.additions = {{"passive vent openers", 6 * 3600.0}, {"a heat alarm", 3 * 3600.0 + 3060.0}};
  FaultOutcome tank = fault_of("tank", "leaks 60 L an hour", 0, 0, 30 * 3600.0);
  tank.costs = {{"ferns", "harmed", "too dry", kFourthDay + 100000.0}};
  tank.chain = {"ferns harmed: too dry, day 5 07:00"};
  tank.additions = {{"a heat alarm", kNotHappened}};
  sheet.faults = {mist, vent, tank, harmless_fault("east sensor", "is no longer heard"),
                  harmless_fault("shade cloth", "is stuck off")};
  return sheet;
}

/// The same with hail: the first breaks a vent too, the last breaks a roof and harms nothing.
inline FaultSheet hail_sheet() {
  FaultSheet sheet = fault_sheet();
  sheet.house_in_danger = true;
  sheet.faults[0].breaks = {{"ridge vent", "torn open by the wind", kFourthDay + 50400.0, kFourthDay + 43200.0}};
  std::swap(sheet.faults[3], sheet.faults[4]);
  sheet.faults[3].breaks = {{"front roof", "66 % of it broken by hail", kFourthDay + 68220.0, kFourthDay + 57600.0},
                            {"back roof", "broken by hail", kFourthDay + 68220.0, kFourthDay + 57600.0}};
  return sheet;
}

}  // namespace noonhouse::invented
