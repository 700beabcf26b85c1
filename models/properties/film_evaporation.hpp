// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "models/properties/constants.hpp"

namespace noonhouse {

/// Evaporation through a film of air [kg/s], of water that may lie in patches; negative where it condenses.
///   m = A g f d,  g = h / (c_p Le^(2/3))                   [Lewis relation; Incropera & DeWitt, sec. 6.7]
///   f = water / (water + half) when drying, 1 when condensing
/// h: coefficient of the film for heat [W/(m2 K)]; d = w_s(T_s) - w [kg/kg]; half: water at which half of the surface
/// still evaporates, above zero. An amount a rounding below zero refills itself.
template <class S>
S evaporation_kg_s(double area_m2, const S& film_w_m2_k, const S& drive, const S& water_kg, double half_wet_kg) {
  using std::abs;
  const S rate = (area_m2 / (kDryAirHeat * kLewisTwoThirds)) * film_w_m2_k * drive;
  return drive > 0.0 ? S(rate * water_kg / (abs(water_kg) + half_wet_kg)) : rate;
}

}  // namespace noonhouse
