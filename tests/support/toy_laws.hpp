// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <string_view>

#include "sim/contract/law.hpp"
#include "sim/contract/store.hpp"

/// Invented stores and laws: enough physics to exercise the engine (nonlinear, two-state nodes, channel
/// inputs, every conserved quantity), and none that a model room would want.
namespace noonhouse::toy {

inline constexpr double kLatentJKg = 2.5e6, kDryHeat = 1006.0, kVapourHeat = 1860.0;

/// Moist air at constant dry mass: energy [J] and water [kg] -> temperature [K] and humidity ratio [kg/kg].
struct Air {
  double dry_mass_kg = 1.0;
  static constexpr int kStates = 2;
  static constexpr std::array<Quantity, 2> kCounts{Quantity::energy, Quantity::water};
  template <class S>
  void potentials(const std::array<S, 2>& amount, std::array<S, 2>& p) const {
    p[1] = amount[1] / dry_mass_kg;
    p[0] = (amount[0] / dry_mass_kg - p[1] * kLatentJKg) / (kDryHeat + p[1] * kVapourHeat) + kEnergyZeroK;
  }
  void amounts(const std::array<double, 2>& p, std::array<double, 2>& amount) const {
    amount[1] = dry_mass_kg * p[1];
    amount[0] = dry_mass_kg * ((p[0] - kEnergyZeroK) * (kDryHeat + p[1] * kVapourHeat) + p[1] * kLatentJKg);
  }
};

/// q = G (a - b)
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

/// q = s (a^4 - b^4)
struct Radiation {
  double strength_w_k4 = 5.67e-8;
  static constexpr std::string_view kName = "radiation";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    const S a2 = in[0] * in[0], b2 = in[1] * in[1];
    q[0] = strength_w_k4 * (a2 * a2 - b2 * b2);
  }
};

/// What a channel says, times a factor; carries Q.
template <Quantity Q>
struct Supply {
  double factor = 1.0;
  static constexpr std::string_view kName = "supply";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Q};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = factor * in[0];
  }
};

/// q = k a: what leaves in proportion to what is there; carries Q.
template <Quantity Q>
struct Decay {
  double rate_per_s = 1.0;
  static constexpr std::string_view kName = "decay";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Q};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = rate_per_s * in[0];
  }
};

/// An instrument: q = (what it sees - what it says) / time constant, from nowhere into the reading.
struct Lag {
  double time_constant_s = 60.0;
  static constexpr std::string_view kName = "lag";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = (in[0] - in[1]) / time_constant_s;
  }
};

/// Air changed at a mass flow [kg/s] in0 between (in1 K, in2 kg/kg) and (in3, in4): energy, water.
struct Exchange {
  static constexpr std::string_view kName = "air exchange";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::water};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const auto enthalpy = [](const S& t, const S& w) -> S {
      return (t - kEnergyZeroK) * (kDryHeat + w * kVapourHeat) + w * kLatentJKg;
    };
    q[0] = in[0] * (enthalpy(in[1], in[2]) - enthalpy(in[3], in[4]));
    q[1] = in[0] * (in[2] - in[4]);
  }
};

/// Evaporation from a bucket (in0 kg) at a surface (in1 K) into air (in2 kg/kg): water and its enthalpy.
/// Inputs 0: water, 1: surface temperature, 2: humidity ratio. Fluxes: water out of the bucket, energy out of
/// the surface.
struct Evaporation {
  double strength = 1e-2;
  static constexpr std::string_view kName = "evaporation";
  static constexpr int kInputs = 3, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 2>& q) const {
    using std::exp;
    const S saturated = 0.0038 * exp(0.065 * (in[1] - kEnergyZeroK));
    const S wet = in[0] / (in[0] + 0.5);
    q[0] = strength * wet * (saturated - in[2]);
    q[1] = q[0] * kLatentJKg;
  }
};

}  // namespace noonhouse::toy
