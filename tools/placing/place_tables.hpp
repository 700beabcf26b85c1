// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/placing/place_answer.hpp"
#include "tools/placing/place_sheet.hpp"

/// The tables of place_text.cpp.
namespace noonhouse {

/// What a group would feel on each place, and where it cannot stand and why.
void add_felt_table(PlaceSheet& sheet, const PlaceAnswer& answer, const GroupShown& group, UnitSystem units);
/// The peak of its tissue on each place, day by day or joined, with the band of each.
void add_day_table(PlaceSheet& sheet, const PlaceAnswer& answer, const GroupShown& group, UnitSystem units);
/// The air, its dryness and the light of the places by the hour, on the house's hottest day.
void add_hour_tables(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units);
/// The places themselves.
void add_place_table(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units);

}  // namespace noonhouse
