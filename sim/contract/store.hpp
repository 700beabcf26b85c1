// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <concepts>
#include <cstddef>

#include "sim/contract/quantity.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {

/// A node kind. The engine integrates amounts (energy [J], water [kg], charge [J]), so that every
/// balance is a sum of states; laws read potentials (temperature [K], humidity ratio [kg/kg], ...),
/// which the store derives from its amounts. A store has one potential per state, at most two.
///
///   static constexpr int kStates;
///   static constexpr std::array<Quantity, kStates> kCounts;
///   template <class S> void potentials(const std::array<S, kStates>& amount, std::array<S, kStates>& p) const;
///   void amounts(const std::array<double, kStates>& p, std::array<double, kStates>& amount) const;
template <class T>
concept StoreKind = requires(const T store, const std::array<double, static_cast<std::size_t>(T::kStates)>& in,
                             std::array<double, static_cast<std::size_t>(T::kStates)>& out,
                             const std::array<Dual<T::kStates>, static_cast<std::size_t>(T::kStates)>& dual_in,
                             std::array<Dual<T::kStates>, static_cast<std::size_t>(T::kStates)>& dual_out) {
  requires T::kStates == 1 || T::kStates == 2;
  { T::kCounts[0] } -> std::convertible_to<Quantity>;
  store.potentials(in, out);
  store.potentials(dual_in, dual_out);
  store.amounts(in, out);
};

/// The temperature at which a store holds no energy [K]: 0 degC, where liquid water's enthalpy is zero too.
inline constexpr double kEnergyZeroK = 273.15;

/// A solid lump: energy [J] -> temperature [K], E = C (T - 273.15 K).
struct ThermalMass {
  double heat_capacity_j_k = 0.0;
  static constexpr int kStates = 1;
  static constexpr std::array<Quantity, 1> kCounts{Quantity::energy};
  template <class S>
  void potentials(const std::array<S, 1>& amount, std::array<S, 1>& p) const {
    p[0] = amount[0] / heat_capacity_j_k + kEnergyZeroK;
  }
  void amounts(const std::array<double, 1>& p, std::array<double, 1>& amount) const {
    amount[0] = heat_capacity_j_k * (p[0] - kEnergyZeroK);
  }
};

/// Where flows of dry air meet and nothing is stored: its potential is a pressure [Pa], and at every instant it has the
/// value at which the flows [kg/s] add up to nothing. Every flow must rise with the pressure difference that drives it
/// (never fall), and from every junction some way must lead to a given pressure; then that value exists and is the only
/// one. The engine solves for it within each evaluation: a junction is no differential state.
struct Junction {
  static constexpr bool kStoresNothing = true;
  static constexpr int kStates = 1;
  static constexpr std::array<Quantity, 1> kCounts{Quantity::air};
  template <class S>
  void potentials(const std::array<S, 1>& amount, std::array<S, 1>& p) const {
    p[0] = amount[0];
  }
  void amounts(const std::array<double, 1>& p, std::array<double, 1>& amount) const { amount[0] = p[0]; }
};
template <class T>
inline constexpr bool kStoresNothing = requires {
  T::kStoresNothing;
};

/// A battery or other store of charge: charge [J] -> charge [J].
struct ChargeStore {
  static constexpr int kStates = 1;
  static constexpr std::array<Quantity, 1> kCounts{Quantity::charge};
  template <class S>
  void potentials(const std::array<S, 1>& amount, std::array<S, 1>& p) const {
    p[0] = amount[0];
  }
  void amounts(const std::array<double, 1>& p, std::array<double, 1>& amount) const { amount[0] = p[0]; }
};

/// A bucket of water whose temperature nobody asks for: water [kg] -> water [kg].
struct WaterBucket {
  static constexpr int kStates = 1;
  static constexpr std::array<Quantity, 1> kCounts{Quantity::water};
  template <class S>
  void potentials(const std::array<S, 1>& amount, std::array<S, 1>& p) const {
    p[0] = amount[0];
  }
  void amounts(const std::array<double, 1>& p, std::array<double, 1>& amount) const { amount[0] = p[0]; }
};

/// An instrument's own value, which follows what it measures with a lag; conserved by nobody.
struct Reading {
  static constexpr int kStates = 1;
  static constexpr std::array<Quantity, 1> kCounts{Quantity::reading};
  template <class S>
  void potentials(const std::array<S, 1>& amount, std::array<S, 1>& p) const {
    p[0] = amount[0];
  }
  void amounts(const std::array<double, 1>& p, std::array<double, 1>& amount) const { amount[0] = p[0]; }
};

}  // namespace noonhouse
