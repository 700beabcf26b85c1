// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/run/run.hpp"
#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Gust for which ballast is told beside the run's own strongest: one that a season may bring [m/s]; common practice,
/// no source.
inline constexpr double kGustToPlanFor_m_s = 20.0;

/// How a season like the run ages a new battery. The run's energy outcome must be there.
std::string battery_note(const EnergyOutcome& energy, const PowerSpec& power, double run_s);

/// Ballast that each loose cover in service calls for, with the caution that belongs to such figures; empty where no
/// cover is loose.
std::vector<std::string> ballast_notes(const PlanScenario& plan, const HouseShape& shape, double strongest_gust_m_s);

/// Vents in service that do not bear the run's strongest gust.
std::vector<std::string> vent_notes(const PlanScenario& plan, double strongest_gust_m_s);

/// Gutters that could not take all the rain, with what went past them. What a filter turned away is not counted.
std::vector<std::string> gutter_notes(const PlanScenario& plan, const House& house, const RunResult& result);

/// What bad weather broke: roof slopes by hail, covers blown off, vents torn open; what broke at one minute for one
/// cause in one sentence, parts by name only where they are few. The repair is in no price.
std::vector<std::string> damage_notes(const std::vector<LogEntry>& log);

/// All of the run's own, in this order.
std::vector<std::string> run_notes(const Assembly& assembly, const PlanScenario& plan, const RunResult& result,
                                   const EnergyOutcome& energy, double strongest_gust_m_s);

}  // namespace noonhouse
