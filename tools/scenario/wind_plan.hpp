// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/air/wind_pressure.hpp"
#include "tools/scenario/house_shape.hpp"

namespace noonhouse {

/// Wind's mean pressure coefficient on a facet of the house [-], positive inwards, by the bearing the wind comes from:
/// walls and roof slopes by the tables of low_rise_coefficient(), whose long walls are the house's longer sides. A
/// facet less than 60 degrees from the level counts as roof.
double wind_coefficient(const HouseShape& shape, const Facet& facet, Surroundings around, double wind_from_rad);

/// How leaky a square metre of cover is [m3/(s Pa^n m2)], n that of LeakPiece, so that the shut house changes its air
/// at the stated rate [1/s] in a wind of 4 m/s, the same inside as outside, on the mean of eight bearings. The cracks
/// are spread evenly over the cover, and all bays share one pressure.
double leakiness_m_s(const HouseShape& shape, Surroundings around, double exponent, double air_changes_per_s,
                     double density_kg_m3);

}  // namespace noonhouse
