// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/film_evaporation.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Evaporation from a surface outdoors that is wet by rain or a roof sprinkler, or dew on it.
/// Inputs: surface temperature [K], water on it [kg], humidity ratio outdoors [kg/kg], wind [m/s].
/// Fluxes: water [kg/s] and energy [W], positive surface -> outdoor air.
///   m of evaporation_kg_s, d = w_s(T_s) - w_out, h = a + b V; energy m h_v(T_s)
/// a + b V is the coefficient by wind of the same surface, without longwave: 2.8 and 3.0 [Watmuff, Charters & Proctor
/// 1977, COMPLES 2; V to about 7 m/s]. Not modelled: what WetSurface does not, frost, drops that the wind tears off.
struct WindEvaporation {
  double area_m2 = 0.0;
  double pressure_pa = 101325.0;
  double half_wet_kg = 0.0;         ///< water at which half of the surface still evaporates, above zero
  double still_w_m2_k = 2.8;        ///< a
  double per_speed_w_s_m3_k = 3.0;  ///< b
  static constexpr std::string_view kName = "evaporation outside";
  static constexpr int kInputs = 4, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 2>& q) const {
    const S drive = saturation_humidity_ratio_fast(in[0], pressure_pa) - in[2];
    q[0] = evaporation_kg_s(area_m2, S(still_w_m2_k + per_speed_w_s_m3_k * in[3]), drive, in[1], half_wet_kg);
    q[1] = q[0] * vapour_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
