// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include "models/air/droplet.hpp"
#include "models/air/droplet_sizes.hpp"
#include "models/properties/saturation.hpp"
#include "sim/core/dual.hpp"

/// What becomes of a spray's water on its way down, worked out once for a kind of nozzle.
namespace noonhouse {

/// Share of a spray's water that has evaporated, by how much drying it has met on its way:
///   X = Int (T - T_wet bulb) dz over the fall [K m]
/// A drop at its terminal velocity loses d(d^4) = -2 d^2 K / v dz, and its shrinkage K (drop_at_speed) goes nearly by
/// the wet-bulb depression alone. So one function reach(d), the X at which a drop is gone, holds for every drop and
/// every course of the air, and  d after X  is where  reach(d) = reach(d_0) - X. Worked out at one reference air, where
/// it is within 0.002 of the drops of droplet.hpp followed one by one. In other air of that pressure, and through
/// layers of different air, the share differs from theirs by less than 0.015 between 15 and 45 degC for a reference of
/// 30 degC and 40 % (the tests hold it to that): warm air conducts better and is more viscous. Does not model: what
/// droplet.hpp does not, drops that meet, and the throw of the jet before its drops fall at their own speed.
class SprayTable {
 public:
  /// Sizes of the nozzle, an air that is typical of the hours of spraying (not saturated), and the number of sizes by
  /// which the spray stands. 49 drops are worked out whatever that number; a table costs less than a millisecond.
  SprayTable(const DropSizes& sizes, const AirAroundDrop& reference, int classes = 100);

  /// How far on its way to nothing the spray is, a number that goes like the diameter of the drops just gone:
  ///   stage = (X / X_s + 1e-3)^(1/4) - 1e-3^(1/4),  X_s the reach of the mean drop
  /// 0 at the nozzle, no more than last_stage(). This is the stage after so much more drying [K m], zero or more.
  /// What follows spray in time should follow this, not X: fog is gone in the first thousandth of the drying of dry
  /// air.
  template <class S>
  S stage_after(const S& stage, const S& drying_k_m) const {
    using std::sqrt;
    const S place = stage + first_place_;
    const S squared = place * place;
    const S after = squared * squared + drying_k_m / scale_k_m_;
    if (after >= last_fourth_) return S(last_stage_);
    return sqrt(sqrt(after)) - first_place_;
  }
  double last_stage() const { return last_stage_; }

  /// Share evaporated [-] by stage: 0 at 0, never falling, 1 from last_stage() on. A cubic by piece, value and slope
  /// continuous; below 0 it goes on straight.
  template <class S>
  S share_at_stage(const S& stage) const {
    const Piece at = share_and_slope(value_of(stage));
    return from_value_and_slope(stage, at.value, at.slope);
  }

  /// Share evaporated [-] by X [K m], zero or more. Of a spray without smallest drop the slope at 0 is infinite; here
  /// it is finite.
  template <class S>
  S evaporated_share(const S& drying_k_m) const {
    return share_at_stage(stage_after(S(0.0), drying_k_m));
  }

  /// X at which the largest drop that stands for its class is gone [K m].
  double all_gone_k_m() const { return reach_k_m_.front(); }

  /// X at which a drop of this diameter [m] is gone [K m], up to the largest; 0 for 0.
  double reach_k_m(double diameter_m) const;

  /// Share [-] of the way from its first temperature to the wet bulb that the spray's water has gone after a fall [m],
  /// mean by volume: 0 at 0, towards 1.
  ///   dT/dz = -(T - T_wb) / l,  l = v rho_w c_w d^2 / (6 (Nu k + Sh rho D L dw_s/dT))
  /// with Nu = 2 f_h, Sh = 2 f_v as in drop_at_speed and the line of saturation taken straight at the wet bulb. For
  /// drops that keep their size: one warms or cools in a fiftieth of the fall in which it evaporates.
  double approach_to_wet_bulb(double fall_m) const;

 private:
  struct Piece {
    double value, slope;
  };
  Piece share_and_slope(double stage) const;
  void reckon_drops(const AirAroundDrop& reference);
  void reckon_shares();
  void set_slopes();
  double diameter_of_reach(double reach_k_m) const;

  static constexpr std::size_t kDrops = 49;
  static constexpr std::size_t kKnots = 65;
  std::vector<double> classes_m_;                 ///< rising
  std::array<double, kDrops> diameter_m_{};       ///< falling, by equal factors
  std::array<double, kDrops> reach_k_m_{};        ///< of each
  std::array<double, kDrops> settling_m_{};       ///< l of each
  double scale_k_m_ = 1.0;                        ///< X_s, the reach of the mean drop
  double first_place_ = 0.0;                      ///< 1e-3^(1/4)
  double last_stage_ = 1.0, last_fourth_ = 1.0;   ///< where all is gone; (stage + first place)^4 there
  double spacing_ = 1.0;                          ///< of the knots, by stage
  std::array<double, kKnots> share_{}, slope_{};  ///< at the knots; slope by stage
};

}  // namespace noonhouse
