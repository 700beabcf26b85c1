// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/properties/sourced_value.hpp"

/// What roofs yield and what gutters and downpipes carry.
namespace noonhouse {

/// A kind of roof by the share of the rain that it yields over a year.
struct RoofSurface {
  const char* name;                 ///< in lower case, as a scenario says it
  SourcedValue runoff_coefficient;  ///< C, 0 to 1
};

/// The kinds, in the order to show them.
std::span<const RoofSurface> roof_surfaces();

/// The kind of that name, or null: the caller knows whom to ask again.
const RoofSurface* find_roof_surface(std::string_view name);

/// Share of the water that a filter which is looked after lets through.   [BS EN 16941-1]
inline constexpr double kFilterEfficiency = 0.90;

/// Water off a roof [kg/s]:  m = i A C, by intensity [kg/(m2 s)], plan area [m2], run-off coefficient.
/// The rational formula; for roofs small enough to run off within the burst.
constexpr double roof_runoff_kg_s(double rain_kg_m2_s, double plan_area_m2, double runoff_coefficient) {
  return rain_kg_m2_s * plan_area_m2 * runoff_coefficient;
}

/// Most that a level half-round eaves gutter carries to a free outlet at one end [kg/s], by its diameter.
///   Q = 0.9 2.78e-5 A^1.25 L/s, A its cross-section [mm2], full     [EN 12056-3, 5.1; from memory]
/// For lengths up to 50 times its depth. Does not model: bends, leaves, a fall along it (which helps).
double half_round_gutter_kg_s(double diameter_m);

/// Most that a round downpipe carries [kg/s], by its bore.
///   Q = 2.5e-4 k^(-1/6) d^(8/3) f^(5/3) L/s, d bore and k roughness 0.25 mm in mm, f filling 0.33
///   [Wyly & Eaton, as EN 12056-3, 6.1; k and f from memory]
/// Does not model: an outlet narrower than the pipe, offsets flatter than 10 degrees.
double downpipe_kg_s(double bore_m);

}  // namespace noonhouse
