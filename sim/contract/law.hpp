// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstddef>
#include <string_view>

#include "sim/contract/quantity.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {

template <class L, class S>
using LawInputs = std::array<S, static_cast<std::size_t>(L::kInputs)>;
template <class L, class S>
using LawFluxes = std::array<S, static_cast<std::size_t>(L::kFluxes)>;

/// A law of which several may join the same places, told apart by their parameters, says `kMayRepeat = true`. Of all
/// others a second one is taken for a mistake.
template <class L>
inline constexpr bool kMayRepeat = requires {
  L::kMayRepeat;
};

/// An exchange law: a small struct of parameters that turns potentials into fluxes.
///
///   static constexpr std::string_view kName;   // of the phenomenon, such as "conduction"
///   static constexpr int kInputs, kFluxes;
///   static constexpr std::array<Quantity, kFluxes> kCarries;
///   template <class S> void flux(const std::array<S, kInputs>& in, std::array<S, kFluxes>& q) const;
///
/// Inputs are potentials of nodes or channels (outdoor weather, sun, device positions): the law cannot
/// tell which, so one law serves inside and boundary alike. Each flux [W, kg/s] is positive from the
/// end named "from" to the end named "to"; it is evaluated once and the engine subtracts it at one end
/// and adds it at the other, so no law can lose energy or water.
/// flux() is written once, for any scalar: the engine runs it on double and on Dual<kInputs>.
template <class L>
concept ExchangeLaw = requires(const L law, const LawInputs<L, double>& in, LawFluxes<L, double>& q,
                               const LawInputs<L, Dual<L::kInputs>>& dual_in, LawFluxes<L, Dual<L::kInputs>>& dual_q) {
  { L::kName } -> std::convertible_to<std::string_view>;
  { L::kCarries[0] } -> std::convertible_to<Quantity>;
  law.flux(in, q);
  law.flux(dual_in, dual_q);
};

}  // namespace noonhouse
