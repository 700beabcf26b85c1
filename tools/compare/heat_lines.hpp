// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "tools/ledger/hourly_ledger.hpp"
#include "tools/record/run_record.hpp"

namespace noonhouse {

/// A line of the book of heat: where the record keeps it and what a grower calls it.
struct HeatLineWords {
  HeatLine line;
  double LedgerHour::*hour;
  const char* key;    ///< in JSON and as a style's name
  const char* words;  ///< after "the sun's heat went"
};

/// In the order in which they are shown.
inline constexpr std::array<HeatLineWords, kHeatLines> kHeatLineWords{{
    {HeatLine::vents, &LedgerHour::vents_j, "vents", "out by the vents, fans and gaps"},
    {HeatLine::mist, &LedgerHour::mist_j, "mist", "to evaporating mist in the air"},
    {HeatLine::surfaces, &LedgerHour::surfaces_j, "surfaces", "to drying surfaces, less dew"},
    {HeatLine::transpiration, &LedgerHour::transpiration_j, "transpiration", "through leaves (transpiration)"},
    {HeatLine::cover, &LedgerHour::cover_j, "cover", "through the cover to the air"},
    {HeatLine::sky, &LedgerHour::sky_j, "sky", "through the cover to the sky"},
    {HeatLine::ground, &LedgerHour::ground_j, "ground", "into the ground"},
    {HeatLine::water, &LedgerHour::water_j, "water", "with water (tank, rain, drains)"},
    {HeatLine::kept, &LedgerHour::kept_j, "kept", "kept in the house"},
}};

/// What the sun's line counts; to be shown with it.
inline constexpr std::string_view kSunNote =
    "Taken up from the sun: by all of the house, its cover and its drawn cloths with it, so a cloth can raise it "
    "though "
    "it takes sun off the plants.";

/// Writes the hours of a run into its record.
void put_ledger(RunRecord& record, const std::vector<LedgerSpan>& hours);

/// The sum of a record's hours [J]; all zero where it has none.
HeatSum ledger_total(const RunRecord& record);

/// The time its hours cover [s].
double ledger_length_s(const RunRecord& record);

/// What the house took up from the sun on the mean day, "84.2 kWh"; "-" where the record has no hours.
std::string sun_text(const RunRecord& record);

/// A line on the mean day and its share of the sun, "12.3 kWh, 15 %"; the share is left out where no sun was taken up.
std::string heat_text(const RunRecord& record, HeatLine line);

/// True where a line of the record is not nothing: a house without mist has nothing to say on it.
bool has_heat(const RunRecord& record, HeatLine line);

}  // namespace noonhouse
