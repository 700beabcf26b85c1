// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <string_view>

#include "models/power/cold_capacity.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Share of what can be used over which charging tapers off, and up to where a battery fills within a day.
inline constexpr double kTapersOver = 0.03, kFillsTo = 1.0 - kTapersOver;

struct BatteryKind;

/// Panel, battery and loads on one bus. Inputs: charge [J], panel power [W], load [W], temperature of the battery [K],
/// share of its cells that work (0 to 1), share of the panel that is uncovered (0 to 1).
/// Fluxes [W of charge]: panel -> loads, panel -> battery, battery -> loads, battery -> losses of charging and
/// discharging, battery -> self-discharge.
///   p = eta_c u P comes out of the charge controller. Surplus p - L charges the battery; a share 1 - eta_in of it is
///   lost. It tapers over the last 3 % of the capacity that is there (UsableCharge), and fades out over the kelvin
///   above the least temperature at which the kind may be charged. Deficit L - p comes from the battery, which loses (f
///   / eta_out - 1)(L - p) on top of it, with f = max(1, (L - p) / (n C / t))^(k - 1): the charge that a fast discharge
///   takes away beyond what it gives [Peukert 1897, t_run ~ I^-k, with power for current, from memory; corner rounded
///   over a tenth of the rated power]. Self-discharge: r Q 2^((T - 25 degC) / d).
/// Panel power that finds no taker is not drawn, and what the controller loses is not counted: the panel's two fluxes
/// are what arrives on the bus. The battery gives whatever is asked: to cut loads off in time is its guard's work.
/// Peukert's loss is kept for good, though rest gives part of it back: on the safe side, and nothing at slow rates.
/// What failed cells held is taken out on a way of its own (CellLoss). Not modelled: voltage, limits
/// of current, its own warming, wear.
struct BatteryBus {
  double capacity_j = 0.0;            ///< C, at 25 degC and the rated rate
  double charge_efficiency = 0.0;     ///< eta_in, share of what is taken, 0 to 1
  double discharge_efficiency = 0.0;  ///< eta_out, share of what is drawn, above 0 to 1
  // The rest stands for a battery that knows neither rate nor cold, until the kind says otherwise.
  double controller_efficiency = 1.0;  ///< eta_c
  double peukert_exponent = 1.0;       ///< k
  double rated_s = 72000.0;            ///< t, time to empty it at its rated rate
  ColdCapacity cold = ColdCapacity();
  double least_charge_k = 0.0;
  double self_discharge_per_s = 0.0;       ///< r, at 25 degC
  double self_discharge_doubles_k = 10.0;  ///< d
  static constexpr std::string_view kName = "battery";
  static constexpr int kInputs = 6, kFluxes = 5;
  static constexpr std::array<Quantity, 5> kCarries{Quantity::charge, Quantity::charge, Quantity::charge,
                                                    Quantity::charge, Quantity::charge};
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 5>& q) const {
    const auto& [charge, panel, load, temperature, cells, uncovered] = in;
    const S arrives = controller_efficiency * uncovered * panel;
    const S surplus = arrives - load;
    if (surplus > 0.0) {
      const S taken = surplus * acceptance(charge, temperature, cells);
      q[0] = load;
      q[1] = taken;
      q[2] = S(0.0);
      q[3] = (1.0 - charge_efficiency) * taken;
    } else {
      q[0] = arrives;
      q[1] = S(0.0);
      q[2] = -surplus;
      q[3] = (rate_factor(q[2], cells) / discharge_efficiency - 1.0) * q[2];
    }
    q[4] = self_discharge(charge, temperature);
  }

  /// Share of a surplus that the battery takes, 0 to 1. Without cells: nothing.
  template <class S>
  S acceptance(const S& charge_j, const S& temperature_k, const S& cells) const {
    if (cells <= 0.0) return S(0.0);
    const UsableCharge<S> usable = usable_charge(capacity_j, cold, temperature_k, cells);
    return ramp(S((usable.top_j - charge_j) / (kTapersOver * usable.span_j())), 1.0) *
           ramp(S(temperature_k - least_charge_k), 1.0);
  }
  /// f, by which a discharge [W] takes more charge than a slow one; 1 or more. Of cells at least a hundredth counts.
  template <class S>
  S rate_factor(const S& discharge_w, const S& cells) const {
    using std::exp;
    using std::log;
    constexpr double kLeastCells = 0.01, kRound = 0.1;
    const S rated_w = capacity_j / rated_s * (cells > kLeastCells ? cells : S(kLeastCells));
    const S ratio = discharge_w / rated_w;
    if (ratio <= 1.0 - kRound) return S(1.0);
    return exp((peukert_exponent - 1.0) * log(1.0 + rounded_positive(S(ratio - 1.0), kRound)));
  }
  /// [W], out of the store.
  template <class S>
  S self_discharge(const S& charge_j, const S& temperature_k) const {
    using std::exp;
    constexpr double kWarmK = 298.15, kLn2 = 0.6931471805599453;
    if (charge_j <= 0.0) return S(0.0);
    return self_discharge_per_s * charge_j * exp((kLn2 / self_discharge_doubles_k) * (temperature_k - kWarmK));
  }
};

/// The bus with a battery of a kind. `controller_efficiency`: see panel.hpp.
BatteryBus battery_bus(const BatteryKind& kind, double capacity_j, double controller_efficiency);

}  // namespace noonhouse
