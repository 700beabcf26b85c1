// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// max(x, 0) with its corner a parabola from -width to width: exact outside it, slope continuous. Unit of x.
template <class S>
S rounded_positive(const S& x, double width) {
  if (x <= -width) return S(0.0);
  if (x >= width) return x;
  return (x + width) * (x + width) / (4.0 * width);
}

/// How much of a battery's charge a given temperature lets out, as a share of what 25 degC does: 1 from 25 degC up,
/// straight between 25, 0 and -20 degC, further down on the same line, held from -40 degC down. The corners are
/// rounded over 0.5 K. The straight form is common practice, no source. Does not model: the gain above 25 degC, nor
/// that cold takes more away the faster the battery is discharged.
struct ColdCapacity {
  double at_0c = 1.0, at_minus_20c = 1.0;  ///< shares, 0 to 1

  /// The share at a temperature [K], 0 to 1.
  template <class S>
  S share(const S& temperature_k) const {
    constexpr double kWarmK = 298.15, kFreezingK = 273.15, kHeldK = 233.15, kRoundK = 0.5;
    const double upper = (1.0 - at_0c) / 25.0, lower = (at_0c - at_minus_20c) / 20.0;
    return 1.0 - upper * rounded_positive(S(kWarmK - temperature_k), kRoundK) -
           (lower - upper) * rounded_positive(S(kFreezingK - temperature_k), kRoundK) +
           lower * rounded_positive(S(kHeldK - temperature_k), kRoundK);
  }
};

/// The part of a battery's charge that can be used just now [J]: from `floor_j` up to `top_j`.
///   top = n C,  floor = (1 - s) n C        n: share of cells that work, s: ColdCapacity::share
/// Cold locks up charge from below and gives it back when the battery warms: the cells reach their least voltage
/// earlier, but nothing has left them. To lower the top instead would leave a full battery all it holds in any cold.
/// This is the project's own form; it lets a cold battery be filled as full as a warm one. Cells are counted as
/// strings side by side: one lost in a row lowers the voltage, which is not modelled.
template <class S>
struct UsableCharge {
  S floor_j, top_j;
  S span_j() const { return top_j - floor_j; }
  /// The charge at a share of what can be used [J].
  S charge_at(double share) const { return floor_j + share * span_j(); }
  /// The share that a charge [J] is of what can be used, 0 to 1: 0 at the floor, below it and without working cells.
  S share_of(const S& charge_j) const {
    if (charge_j <= floor_j || span_j() <= 0.0) return S(0.0);
    return charge_j >= top_j ? S(1.0) : S((charge_j - floor_j) / span_j());
  }
};
template <class S>
UsableCharge<S> usable_charge(double capacity_j, const ColdCapacity& cold, const S& temperature_k,
                              const S& working_cells) {
  const S top_j = capacity_j * working_cells;
  return {top_j * (1.0 - cold.share(temperature_k)), top_j};
}

}  // namespace noonhouse
