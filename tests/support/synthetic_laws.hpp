// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <string_view>

#include "sim/contract/quantity.hpp"
#include "sim/contract/store.hpp"
#include "sim/core/smooth.hpp"

/// Stores and laws of the synthetic house: simple, smooth, of the right kind and stiffness, and independent of
/// the project's models. Their coefficients are INVENTED; they test numerics, never physics.
namespace noonhouse::synthetic {

inline constexpr double kDryHeat = 1006.0, kVapourHeat = 1860.0, kLatentHeat = 2.501e6;  // J/(kg K), J/kg
inline constexpr double kStefanBoltzmann = 5.670374419e-8;                               // W/(m2 K4), CODATA 2018

/// Enthalpy of moist air [J/kg dry air].
template <class S>
S enthalpy(const S& temperature_k, const S& humidity) {
  const S celsius = temperature_k - kEnergyZeroK;
  return kDryHeat * celsius + humidity * (kLatentHeat + kVapourHeat * celsius);
}

/// Moist air of constant dry mass: energy [J], water [kg] -> temperature [K], humidity ratio [kg/kg].
struct MoistAir {
  double dry_mass_kg = 1.0;
  static constexpr int kStates = 2;
  static constexpr std::array<Quantity, 2> kCounts{Quantity::energy, Quantity::water};
  template <class S>
  void potentials(const std::array<S, 2>& amount, std::array<S, 2>& p) const {
    p[1] = amount[1] / dry_mass_kg;
    p[0] = kEnergyZeroK + (amount[0] / dry_mass_kg - kLatentHeat * p[1]) / (kDryHeat + kVapourHeat * p[1]);
  }
  void amounts(const std::array<double, 2>& p, std::array<double, 2>& amount) const {
    amount[0] = dry_mass_kg * enthalpy(p[0], p[1]);
    amount[1] = dry_mass_kg * p[1];
  }
};

/// Q = UA (T1 - T2) [W].
struct Conduction {
  double conductance_w_k = 1.0;
  static constexpr std::string_view kName = "conduction";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = conductance_w_k * (in[0] - in[1]);
  }
};

/// Free convection, Q = k A (dT^2 + 0.01 K2)^(1/6) dT [W]: the cube-root law with its corner rounded.
struct FreeConvection {
  double factor = 1.0;
  static constexpr std::string_view kName = "free convection";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    using std::pow;
    const S difference = in[0] - in[1];
    q[0] = factor * pow(difference * difference + 0.01, 1.0 / 6.0) * difference;
  }
};

/// Wind-driven convection, Q = A (a + b v) (T1 - T2) [W]; inputs T1, T2, v.
struct WindConvection {
  double still_w_k = 1.0, by_wind_w_k_per_m_s = 1.0;
  static constexpr std::string_view kName = "wind convection";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    q[0] = (still_w_k + by_wind_w_k_per_m_s * in[2]) * (in[0] - in[1]);
  }
};

/// Q = sigma A_eff (T1^4 - T2^4) [W].
struct Radiation {
  double area_m2 = 1.0;
  static constexpr std::string_view kName = "radiation";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    const S a = in[0] * in[0], b = in[1] * in[1];
    q[0] = kStefanBoltzmann * area_m2 * (a * a - b * b);
  }
};

/// Q = A_eff G [W] from a channel G [W/m2].
struct SolarGain {
  double area_m2 = 1.0;
  static constexpr std::string_view kName = "solar gain";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = area_m2 * in[0];
  }
};

/// Air changing places, stronger where the lower air (first) is warmer; inputs T1, w1, T2, w2.
struct Mixing {
  double calm_kg_s = 0.01, overturning_kg_s_k = 0.0;
  static constexpr std::string_view kName = "mixing";
  static constexpr int kInputs = 4, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::water};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 2>& q) const {
    const S flow = calm_kg_s + overturning_kg_s_k * smooth_positive(in[0] - in[2], 0.3);
    q[0] = flow * (enthalpy(in[0], in[1]) - enthalpy(in[2], in[3]));
    q[1] = flow * (in[1] - in[3]);
  }
};

/// Air exchanged with outdoors by wind; inputs T, w inside, T, w outdoors, wind [m/s].
struct Ventilation {
  double still_kg_s = 0.01, by_wind_kg_m = 0.01;
  static constexpr std::string_view kName = "ventilation";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::water};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const S flow = still_kg_s + by_wind_kg_m * in[4];
    q[0] = flow * (enthalpy(in[0], in[1]) - enthalpy(in[2], in[3]));
    q[1] = flow * (in[1] - in[3]);
  }
};

/// Water leaving a wet body towards the air with the body's heat; inputs T body, water left [kg], T air, w air,
/// sun [W/m2]. Saturation by a Magnus form at 10^5 Pa (from memory; its accuracy does not matter here).
struct Evaporation {
  double conductance_kg_s = 1e-3, share_in_the_dark = 1.0, dry_below_kg = 0.5;
  static constexpr std::string_view kName = "evaporation";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::water};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    using std::exp;
    const S celsius = in[0] - kEnergyZeroK;
    const S saturated = 0.622 * 611.2 / 1e5 * exp(17.62 * celsius / (celsius + 243.12));
    const S open = share_in_the_dark + (1.0 - share_in_the_dark) * in[4] / (in[4] + 150.0);
    q[1] = conductance_kg_s * open * ramp(in[1], dry_below_kg) * smooth_positive(saturated - in[3], 1e-4);
    q[0] = q[1] * (kLatentHeat + kVapourHeat * celsius);
  }
};

/// A cooler's inside pumped out while its channel is on, Q = on k (T - 278 K) [W]; inputs T, on.
struct HeatPumped {
  double conductance_w_k = 1.0;
  static constexpr std::string_view kName = "heat pumped";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = in[1] * conductance_w_k * (in[0] - 278.0);
  }
};

/// An instrument that follows with a lag, (T - reading) / tau [K/s]; inputs T, reading.
struct Lag {
  double time_s = 60.0;
  static constexpr std::string_view kName = "lag";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = (in[0] - in[1]) / time_s;
  }
};

/// Charge moved in proportion to a channel, P = k c [W].
struct ChargeFlow {
  double power_w = 1.0;
  static constexpr std::string_view kName = "charge flow";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::charge};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = power_w * in[0];
  }
};

}  // namespace noonhouse::synthetic
