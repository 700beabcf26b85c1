// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/faults/fault_sheet.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

// The words that the terminal table and the page share. Times that are left are rounded down, so that nobody is
// promised a minute that there is not.

/// "45 min", "2 h 10 min"; from 3 h on to ten minutes, from a day on to the hour, from three days on "3 days 4 h";
/// below a minute "under 1 min". "-" where there is none.
std::string grace_text(double grace_s);
/// The same in at most three characters for a narrow cell: "<1m", "45m", "2½h", "14h", "4d"; "." where there is none.
std::string short_grace_text(double grace_s);
/// "24 h": how far failures were followed; to the end of the run where that comes first.
std::string horizon_text(const FaultSheet& sheet);
/// An instant by the house's clock, "day 4 13:20"; "-" where it did not happen.
std::string fault_clock(const FaultSheet& sheet, double time_s);

/// "high mist is stuck off"
std::string fault_name(const FaultOutcome& fault);
/// Who pays for a failure at its worst moment, and what of the house: "lost: ferns; harmed: salads; broken: front
/// roof".
std::string fault_cost_text(const FaultOutcome& fault);

/// How short a time is, for shading a cell: 5 under 15 min, 4 under 1 h, 3 under 3 h, 2 under 8 h, 1 longer, 0 none.
int grace_step(double grace_s);
/// What each of those steps is called.
const char* grace_step_text(int step);

/// How many failures do harm; they are the first of the sheet.
std::size_t harmful_faults(const FaultSheet& sheet);
/// "day 4, the hottest outdoors", or "day 2, as asked; the hottest outdoors is day 4": the day whose hours are told.
std::string told_day_text(const FaultSheet& sheet);
/// The answer in a few sentences: the failure that leaves least time, what gains most, what is lost without any.
std::vector<std::string> fault_answer(const FaultSheet& sheet);
/// The failures that harm and break nothing, in one sentence; empty where there are none.
std::string harmless_text(const FaultSheet& sheet);
/// How it was searched, and what such a search does not see.
std::string fault_search_text(const FaultSheet& sheet);
/// How the first harm of a failure came about, newest first, quantities in the units asked for; the middle of a chain
/// of more than a dozen links is left out, its ends never; of links alike one after another, one is shown.
std::vector<std::string> shown_chain(const FaultOutcome& fault, UnitSystem units);

}  // namespace noonhouse
