// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <string_view>

#include "models/air/air_network.hpp"

/// What rises over warm surfaces: one column of rising air a bay, cut at the same levels as the bay's layers. Its air
/// is a store of its own beside each layer; it takes in the layer's air while it grows and gives up its own where it is
/// no warmer than the layer, or under the roof. So a bay's heat is carried up past the air it stands in.
///
/// The plume of Morton, Taylor & Turner 1956, Proc. R. Soc. A 234, 1, in the form of its top-hat profile: with
/// half-width b = 6 alpha z / 5 and speed w, buoyancy g' = g (T_p - T_a) / T_a (virtual temperatures), the similarity
/// solution
///   w = (5 / 6 alpha) (9 alpha B / 10 pi)^(1/3) z^(-1/3),  Q = pi b^2 w,  B = g' Q
/// is the same as  w^2 = (3/4) g' z  at every height, which needs the local excess alone. Over a source as wide as the
/// bay the column's area is that of the source and at most half of the bay, since what rises must sink beside it.
namespace noonhouse {

/// The column at the level that ends one layer and begins the next.
struct ColumnLevel {
  double area_m2 = 0.0;  ///< of the column; 0: nothing passes (floor and roof)
  double rise_m = 0.0;   ///< z, from where the column begins
};

/// Dry air that rises in the column through a level [kg/s], never negative.
///   M = rho A sqrt((3/4) g' z),  g' from the column and layer below the level; smooth as g' passes zero: sqrt(x) is
///   taken as x^2 / (x^2 + e^2)^(3/4) with e of 0.05 K.
template <class S>
S column_rise(const ColumnLevel& level, const S& t_p, const S& w_p, const S& t_a, const S& w_a, double pressure_pa) {
  using std::pow;
  using std::sqrt;
  if (level.area_m2 <= 0.0) return S(0.0);
  const S air = t_a * (1.0 + 0.608 * w_a);
  const S excess = t_p * (1.0 + 0.608 * w_p) - air;
  if (excess <= 0.0) return S(0.0);
  constexpr double kSoft = 0.05;  // [K]
  const S spread = sqrt(excess * excess + kSoft * kSoft);
  const S root = excess * excess / (spread * sqrt(spread));
  return dry_air_density(t_p, w_p, pressure_pa) * level.area_m2 * root * sqrt((0.75 * kGravity * level.rise_m) / air);
}

/// The column's own air through a level, from the store below to the store above. Inputs: T, w of the column below the
/// level; T, w of the layer below it. The dry air moves from the lower layer's junction to the upper's.
struct ColumnRise {
  ColumnLevel level;
  double pressure_pa = 101325.0;
  static constexpr std::string_view kName = "air that rises in a column";
  static constexpr int kInputs = 4, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 3>& q) const {
    q[0] = column_rise(level, in[0], in[1], in[2], in[3], pressure_pa);
    q[1] = q[0] * in[1];
    q[2] = q[0] * moist_air_enthalpy(in[0], in[1]);
  }
};

/// What the column takes in from the layer beside it, the rise out of this layer less that into it; where that is
/// negative the column gives up its own air. Positive from layer to column.
/// Inputs: T, w of the column and of the layer; T, w of the column and of the layer below (the same again at the
/// floor).
struct ColumnIntake {
  ColumnLevel top, bottom;
  double pressure_pa = 101325.0;
  double exchange_kg_s = 0.0;  ///< both ways at all times, which keeps a column that does not rise at its layer's state
  static constexpr std::string_view kName = "air that a column takes in";
  static constexpr int kInputs = 8, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 8>& in, std::array<S, 2>& q) const {
    const S taken = column_rise(top, in[0], in[1], in[2], in[3], pressure_pa) -
                    column_rise(bottom, in[4], in[5], in[6], in[7], pressure_pa);
    const double round = 5e-4 * std::max(top.area_m2, bottom.area_m2);  // the corner between in and out [kg/s]
    const S in_flow = exchange_kg_s + smooth_positive(taken, round);
    const S out_flow = exchange_kg_s + smooth_positive(S(-taken), round);
    q[0] = in_flow * in[3] - out_flow * in[1];
    q[1] = in_flow * moist_air_enthalpy(in[2], in[3]) - out_flow * moist_air_enthalpy(in[0], in[1]);
  }
};

}  // namespace noonhouse
