// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/constants.hpp"
#include "models/properties/counterflow.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Air exchanged through one opening by stack and wind, both ways at once, positive from inside to outside.
/// Inputs: T, w inside, T, w outside, wind [m/s], share open (0 to 1).
/// Fluxes: vapour [kg/s], enthalpy [W].
///   Q = s (A/2) C_d sqrt(2 g (|dT| / T) (H/4) + C_w V^2)
/// [Boulard & Baille 1995, J. Agric. Eng. Res. 61, 145, eq. (15)], with C_d = 0.644 and C_w = 0.09 there (coefficients
/// from memory). H is the opening's height.
/// Not modelled: flow in at one opening and out at another, insect screens, gusts.
struct OpeningExchange {
  double area_m2 = 0.0;
  double height_m = 0.0;
  double dry_air_density_kg_m3 = 1.0;
  double discharge = 0.644;
  double wind_effect = 0.09;
  static constexpr std::string_view kName = "exchange through an opening";
  static constexpr int kInputs = 6, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};

  /// Volume flow each way [m3/s].
  template <class S>
  S volume_flow(const S& inside_k, const S& outside_k, const S& wind, const S& share) const {
    using std::sqrt;
    const S stack = (kGravity * height_m / 2.0) * smooth_abs(S(inside_k - outside_k), 0.05) / outside_k;
    return share * (0.5 * area_m2 * discharge) * sqrt(stack + wind_effect * wind * wind);
  }

  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 2>& q) const {
    counterflow(S(dry_air_density_kg_m3 * volume_flow(in[0], in[2], in[4], in[5])), in[0], in[1], in[2], in[3], q);
  }
};

/// Air that leaks through laps and gaps [kg dry air/s at 4 m/s wind], both ways at once.
///   m = m_4 (0.25 + 0.75 V / 4): a quarter by stack, the rest by wind (common practice, no source).
/// Inputs: T, w inside, T, w outside, wind [m/s]. Fluxes as above.
struct Leakage {
  double dry_air_at_4_m_s_kg_s = 0.0;
  static constexpr std::string_view kName = "leakage";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    counterflow(S(dry_air_at_4_m_s_kg_s * (0.25 + 0.1875 * in[4])), in[0], in[1], in[2], in[3], q);
  }
};

}  // namespace noonhouse
