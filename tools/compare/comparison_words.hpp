// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

// The words that the terminal table and the page share. Every function returns text for a grower in the
// unit system asked for; a value that did not happen or is not known reads "-".

/// An instant as the house's clock shows it: "day 4 14:20". Day 1 is the calendar day on which the run
/// starts; the minute is rounded down. Seconds since the start; "-" where it did not happen.
std::string clock_text(const RunRecord& record, double time_s);

/// Seconds from the midnight before the run's start to its start [s], in [0, 86400); 0 where the start
/// is not written as "YYYY-MM-DD HH:MM:SS".
double start_of_clock_s(const RunRecord& record);

std::string temperature_text(double temperature_k, UnitSystem units);
/// Metres with two decimals, "0.98 m"; feet or inches with three digits.
std::string height_text(double height_m, UnitSystem units);
std::string water_text(double water_kg, UnitSystem units);
/// Water used, "379 L, 301 L of it lost" where a leak or a cut line took some.
std::string water_use_text(const WaterOutcome& water, UnitSystem units);
std::string energy_text(double energy_j, UnitSystem units);
/// The lowest charge in percent of what could be used just then, "41 %"; "-" without a battery.
std::string lowest_charge_text(const EnergyOutcome& energy);
/// Hours with a tenth, "3.2 h".
std::string hours_text(double hours);

/// "bench A, 1.2 m, north bay": only what the record names.
std::string place_text(const PlantOutcome& plant, UnitSystem units);

/// "1.8 m, north bay": the middle of an air layer and its bay.
std::string level_label(const LevelOutcome& level, UnitSystem units);

/// How far the hottest tissue stayed below the limit above which it is harmed: "0.5 K to spare", "0.9 °F to spare";
/// above that limit "0.2 K too hot"; empty where limit or tissue is not known, and where it was cold
/// that it was beyond.
std::string spare_text(const PlantOutcome& plant, UnitSystem units);

/// The outcome with how long it was beyond its limits, "harmed, 3.2 h", or with how close it came: "kept, 0.5 K to
/// spare"; a plant kept although it was beyond for a while has both, "kept, 0.3 h beyond, 0.2 K too hot".
std::string outcome_text(const PlantOutcome& plant, UnitSystem units);

/// Words of the event log, whose temperatures are written as "34.0 degC", with them in the unit shown: "34.0 °C" or
/// "93.2 °F", with as many decimals as written. Other text stays.
std::string text_in_units(std::string_view text, UnitSystem units);

/// How often the house changes its air: "45.3 on the mean, 0.10 to 118, 96.7 when hottest".
std::string air_changes_text(const AiringOutcome& airing);

/// How far the water carries: "pump cut out on day 3 14:20", "lasts 5.2 days more", "not used".
std::string water_outlook(const RunRecord& record);
/// How far the charge carries: "cut off on day 5 03:10", "lasts 2.1 days without sun", "not used".
std::string charge_outlook(const RunRecord& record);

/// Days that a store lasts, on the mean and if all were like the heaviest: "12.3 days, 8.1 at worst"; "-" where nothing
/// leaves it.
std::string carry_text(double days_at_mean, double days_at_heaviest);

/// Money in the scenario's currency: "1240 EUR", below 10 with two decimals; "-" where it is not known.
std::string money_text(double amount, std::string_view currency);

/// What a plan costs a season, and what of it is this run's refills scaled to the season: "230 EUR, of it 90 EUR for
/// water, were all 120 days like the run's".
std::string season_cost_text(const CostOutcome& cost);

/// What WBGT is and what it is held against, with its source; to be shown wherever heat for people is shown.
std::string work_heat_caution(UnitSystem units);

/// The bay that is worst for people at work, by hours, then by its peak; null where no heat was reckoned.
const WorkHeatOutcome* worst_work_heat(const RunRecord& record);
/// "12.5 h above 28.0 °C WBGT, at most 31.2 °C, day 4 14:20": hours unwise for moderate work and the highest wet-bulb
/// globe temperature in the worst bay; "-" where no heat was reckoned.
std::string work_heat_text(const RunRecord& record, UnitSystem units);

/// The first failure, or harm, by time; null when nothing went wrong.
const FailureOutcome* first_failure(const RunRecord& record);

/// A failure with what led to it, newest first: "mist stopped, day 4 14:20 <- pump cut out <- no rain".
std::string failure_text(const RunRecord& record, const FailureOutcome& failure, std::string_view arrow,
                         UnitSystem units);

/// Why this plan does not keep every plant, one sentence a plant that is not kept; empty when all are.
std::vector<std::string> plant_reasons(const RunRecord& record, UnitSystem units);

/// "mist 42, fan 12": the devices in the record's order; "none" without devices.
std::string starts_text(const RunRecord& record);

}  // namespace noonhouse
