// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <string_view>

#include "models/air/air_network.hpp"
#include "models/air/opening_flow.hpp"
#include "models/air/pad.hpp"
#include "models/properties/wet_bulb_fast.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Air through a wet pad in a wall, in the network of pressures. Positive outwards; drawn in it is cooled and
/// moistened, blown out it passes unchanged. Inputs: P, T, w of the layer; T, w outdoors; wind's pressure on the facet
/// [Pa]; share of the pad that is wet (0 to 1); temperature of the tank that feeds it [K]. Fluxes: dry air [kg/s],
/// vapour [kg/s], enthalpy [W] layer -> outdoors; water [kg/s] and its heat as liquid [W] tank
/// -> air of the layer.
///   v from  dp = zeta L rho v |v| / 2,  rho the mean of both sides                        [pad_pressure_drop_pa]
///   eta = wet (1 - exp(-N v^-0.2)),  N = transfer units at 1 m/s                           [pad_efficiency]
///   T_in = T_out - eta (T_out - T_s),  taken up per dry air = (h(T_out, w) - h(T_in, w)) / (h_v(T_in) - h_l(T_tank))
/// with T_s = saturated_by_water_fast_k by water of the tank, which runs round as warm as the tank is [pad_outlet]. The
/// outdoor air enters as it is, and the water as liquid: together they are what leaves the pad. The pad's depression
/// T_out - T_s is taken by drying_difference_k: at most 0.02 K less.
/// While the pad is dry its shutter is shut and nothing passes. Open, both ways at once 0.5 mm/s of air creep through
/// at rest, which rounds the corner between in and out. Not modelled: what pad.hpp does not, the dry pad's lower
/// resistance, bleed-off, water that evaporates outwards.
struct PadInlet {
  static constexpr std::string_view kName = "air through a wet pad";
  OpeningPlace place;           ///< bottom_m: the pad's middle
  double area_m2 = 0.0;         ///< of the face
  double loss = 0.0;            ///< zeta L [-], above zero
  double units_at_1_m_s = 0.0;  ///< N
  static constexpr int kInputs = 8, kFluxes = 5;
  static constexpr std::array<Quantity, 5> kCarries{Quantity::air, Quantity::water, Quantity::energy, Quantity::water,
                                                    Quantity::energy};

  /// Saturation efficiency [-] by the speed of the air drawn in [m/s], above zero; towards the wet share in still air.
  template <class S>
  S efficiency(const S& speed_m_s, const S& wet) const {
    using std::exp;
    using std::pow;
    return wet * (1.0 - exp(-units_at_1_m_s * pow(speed_m_s, -0.2)));
  }

  template <class S>
  void flux(const std::array<S, 8>& in, std::array<S, 5>& q) const {
    const S &t_out = in[3], &w_out = in[4], &tank_k = in[7];
    const auto inside = air_densities(in[1], in[2], place.pressure_pa);
    const auto outside = air_densities(t_out, w_out, place.pressure_pa);
    const S dp = place.difference(in[0], inside.moist, outside.moist, in[5]);
    const S speed = resisted_speed(dp, S(0.0), S(0.25 * loss * (inside.moist + outside.moist)), kOrificeSoftness);
    constexpr double kCreep = 1e-3;  // [m/s]
    const S inwards = smooth_positive(S(-speed), kCreep);
    const S drawn = area_m2 * outside.dry * inwards;
    std::array<S, 3> carried;
    carry_both_ways(S(area_m2 * inside.dry * smooth_positive(speed, kCreep)), drawn, in[1], in[2], t_out, w_out,
                    carried);
    for (std::size_t j = 0; j < 3; ++j) q[j] = carried[j];
    const S end = saturated_by_water_fast_k(t_out, w_out, tank_k, place.pressure_pa);
    const S cooling = efficiency(inwards, in[6]) * drying_difference_k(S(t_out - end), 0.02);
    const S liquid = liquid_enthalpy(tank_k);
    q[3] = drawn * (kDryAirHeat + kVapourHeat * w_out) * cooling / (vapour_enthalpy(S(t_out - cooling)) - liquid);
    q[4] = q[3] * liquid;
    const S shutter = ramp(in[6], 0.1);
    for (S& each : q) each = shutter * each;
  }
};

/// The law of a pad of this face area [m2], its properties those at an outdoor temperature [K] typical of its use.
PadInlet pad_inlet(const WetPad& pad, double area_m2, const OpeningPlace& place, double temperature_k);

}  // namespace noonhouse
