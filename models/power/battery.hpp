// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Panel, battery and loads on one bus. Inputs: charge [J], panel power [W], load [W].
/// Fluxes [W of charge]: panel -> loads, panel -> battery, battery -> loads, battery -> losses.
///   surplus: what the panel gives beyond the load charges the battery, tapering over the last 3 % of
///   capacity; a share 1 - eta_in of it is lost. Deficit: the battery gives the rest; eta_out likewise.
/// Panel power that finds no taker is not drawn. Not modelled: voltage, rate and temperature effects.
struct BatteryBus {
  double capacity_j = 0.0;
  double charge_efficiency = 0.0;     ///< eta_in, share of what is taken, 0 to 1
  double discharge_efficiency = 0.0;  ///< eta_out, share of what is drawn, above 0 to 1
  static constexpr std::string_view kName = "battery";
  static constexpr int kInputs = 3, kFluxes = 4;
  static constexpr std::array<Quantity, 4> kCarries{Quantity::charge, Quantity::charge, Quantity::charge,
                                                    Quantity::charge};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 4>& q) const {
    const S surplus = in[1] - in[2];
    if (surplus > 0.0) {
      const S taken = surplus * ramp(S(capacity_j - in[0]), 0.03 * capacity_j);
      q[0] = in[2];
      q[1] = taken;
      q[2] = S(0.0);
      q[3] = (1.0 - charge_efficiency) * taken;
    } else {
      q[0] = in[1];
      q[1] = S(0.0);
      q[2] = -surplus;
      q[3] = (1.0 / discharge_efficiency - 1.0) * q[2];
    }
  }
};

/// Power of a panel [W], never negative.
///   P = A eta G (1 + gamma (T_cell - 25 degC)), T_cell = T_air + G (NOCT - 20 K) / 800
/// [cell temperature: Ross 1976 / IEC 61215 NOCT; linear derate: IEC 61853]. G in the panel's plane [W/m2].
double panel_power_w(double area_m2, double efficiency, double derate_per_k, double noct_k, double plane_w_m2,
                     double air_k);

}  // namespace noonhouse
