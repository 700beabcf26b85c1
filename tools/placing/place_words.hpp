// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tools/placing/place_answer.hpp"

/// What the text and the picture of where plants should stand have in common: words, bands, days joined.
namespace noonhouse {

/// How near tissue came to a harm limit in a day, the mildest first.
enum class DayBand { below, near_limit, hot, cold };
/// Within this of a harm limit counts as near it [K].
inline constexpr double kNearLimitK = 2.0;

/// The band of a day, or of joined days, against the group's limits. A day beyond both limits goes by the larger dose,
/// hot where they are equal. A limit that is no number is none.
DayBand band_of(const GroupShown& group, const DayFelt& day);

/// Days [from, to) of a run that are shown as one.
struct DaySpan {
  std::size_t from = 0, to = 0;
};
/// The days one by one if there are at most `most`, else joined by the fewest whole weeks of which there are no more.
std::vector<DaySpan> day_spans(std::size_t days, std::size_t most);
/// The worst of days: the highest peaks, the lowest lows; light, hours and doses added up. The span must not be empty;
/// what reaches beyond the days is cut off.
DayFelt worst_of(const std::vector<DayFelt>& days, DaySpan span);
/// Days that the answer's groups felt on any place.
std::size_t days_felt(const PlaceAnswer& answer);
/// "07-14", or "day 3" where the start of the run is no date; `day` counts from 0.
std::string day_label(const PlaceAnswer& answer, std::size_t day);

/// Its dose as a share of the next mark, rounded down: "heat 0.4 of strain", "heat 0.2 of loss"; past the last mark in
/// multiples of that, "too little light 1.5 of strain", "heat over 15 times loss". "none" without a hazard.
std::string worst_hazard_text(const PlaceFelt& felt);

/// The answer in one sentence or two: who should move, or that all stand well, or why they cannot be housed.
std::string placing_headline(const PlaceAnswer& answer, UnitSystem units);
/// Where a group stands and where it should, one sentence: "should move: now on the low bench, better under it.".
std::string standing_words(const PlaceAnswer& answer, const GroupShown& group);
/// "10 days from 2025-07-14 00:00"
std::string run_words(const PlaceAnswer& answer);

/// Groups by their outcome.
struct OutcomeCounts {
  int kept = 0, strained = 0, harmed = 0, lost = 0;
};
/// Of whole runs as the groups stand (`GroupShown::before`) or should stand (`GroupShown::after`); a group without an
/// outcome counts nowhere.
OutcomeCounts count_outcomes(const PlaceAnswer& answer, PlantOutcome GroupShown::*when);
/// Whether any group stands elsewhere in the answer than now.
bool any_change(const PlaceAnswer& answer);
/// Text that ends with a full stop and begins with a capital letter; empty stays empty.
std::string sentence(std::string text);

}  // namespace noonhouse
