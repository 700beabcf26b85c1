// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <string_view>

#include "sim/contract/law.hpp"

namespace noonhouse {

/// An instrument's law L that a failure can stop:  flux = f flux_L. The last input is f, 1 while it follows, 0 frozen.
template <class L>
struct MayFreeze {
  L law;
  static constexpr std::string_view kName = L::kName;
  static constexpr int kInputs = L::kInputs + 1, kFluxes = L::kFluxes;
  static constexpr auto kCarries = L::kCarries;
  template <class S>
  void flux(const std::array<S, static_cast<std::size_t>(kInputs)>& in,
            std::array<S, static_cast<std::size_t>(kFluxes)>& q) const {
    std::array<S, static_cast<std::size_t>(L::kInputs)> own;
    std::copy_n(in.begin(), own.size(), own.begin());
    law.flux(own, q);
    for (S& each : q) each = each * in.back();
  }
};

}  // namespace noonhouse
