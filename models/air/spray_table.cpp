// SPDX-License-Identifier: Apache-2.0
#include "models/air/spray_table.hpp"

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/water.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

constexpr double kSmallest = 1.0 / 64.0;  // the smallest drop worked out, in units of the largest
constexpr double kStart = 1e-3;           // keeps the slope at no drying finite

double fourth_power(double x) { return x * x * x * x; }

/// l: the fall [m] in which a drop's own temperature comes nearer to the wet bulb by a factor e.
double settling_fall_m(double diameter_m, double speed_m_s, double bulb_k, const AirAroundDrop& air) {
  const AirTransport transport = dry_air_transport(bulb_k, air.pressure_pa);
  const double diffusivity = vapour_diffusivity_m2_s(bulb_k, air.pressure_pa);
  const double reynolds = speed_m_s * diameter_m / transport.kinematic_viscosity_m2_s;
  const double sherwood = 2.0 * ventilation_factor(reynolds, transport.kinematic_viscosity_m2_s / diffusivity);
  const double nusselt = 2.0 * ventilation_factor(reynolds, transport.prandtl);
  const Dual<1> saturated = saturation_humidity_ratio_fast(Dual<1>::input(bulb_k, 0), air.pressure_pa);
  const double density = dry_air_density(bulb_k, saturated.value, air.pressure_pa);
  const double exchange = nusselt * transport.conductivity_w_m_k +
                          sherwood * density * diffusivity * latent_heat(bulb_k) * saturated.grad[0];
  return speed_m_s * water_density_kg_m3(bulb_k) * kWaterHeat * diameter_m * diameter_m / (6.0 * exchange);
}

}  // namespace

SprayTable::SprayTable(const DropSizes& sizes, const AirAroundDrop& reference, int classes)
    : classes_m_(equal_volume_classes(sizes, classes)) {
  reckon_drops(reference);
  scale_k_m_ = reach_k_m(std::min(sizes.mean_m, classes_m_.back()));
  reckon_shares();
  set_slopes();
}

void SprayTable::reckon_drops(const AirAroundDrop& reference) {
  const double bulb_k = wet_bulb_k(reference.temperature_k, reference.humidity_ratio, reference.pressure_pa);
  const double depression_k = reference.temperature_k - bulb_k;
  NOON_ASSERT(depression_k > 0.1);
  const double factor = std::pow(kSmallest, 1.0 / (kDrops - 1));
  std::array<double, kDrops> per_fourth_power{};  // d reach / d(d^4)
  for (std::size_t i = 0; i < kDrops; ++i) {
    const double d = classes_m_.back() * std::pow(factor, static_cast<double>(i));
    const DropMotion motion = falling_drop(d, reference);
    diameter_m_[i] = d;
    per_fourth_power[i] = depression_k * motion.speed_m_s / (2.0 * d * d * motion.shrinkage_m2_s);
    settling_m_[i] = settling_fall_m(d, motion.speed_m_s, bulb_k, reference);
  }
  // Below the smallest, Stokes's law and no ventilation: a constant. Above, a power of d^4 between neighbours.
  reach_k_m_.back() = per_fourth_power.back() * fourth_power(diameter_m_.back());
  for (std::size_t i = kDrops - 1; i-- > 0;) {
    const double power = std::log(per_fourth_power[i] / per_fourth_power[i + 1]) / (-4.0 * std::log(factor));
    const double rise =
        per_fourth_power[i] * fourth_power(diameter_m_[i]) - per_fourth_power[i + 1] * fourth_power(diameter_m_[i + 1]);
    reach_k_m_[i] = reach_k_m_[i + 1] + rise / (1.0 + power);
  }
}

double SprayTable::reach_k_m(double diameter_m) const {
  NOON_ASSERT(diameter_m >= 0.0 && diameter_m <= diameter_m_.front() * (1.0 + 1e-12));
  if (diameter_m <= diameter_m_.back()) return reach_k_m_.back() * fourth_power(diameter_m / diameter_m_.back());
  const double step = std::log(diameter_m_[0] / diameter_m_[1]);
  const double along = std::max(0.0, std::log(diameter_m_[0] / diameter_m) / step);
  const std::size_t i = std::min(static_cast<std::size_t>(along), kDrops - 2);
  return reach_k_m_[i] * std::pow(reach_k_m_[i + 1] / reach_k_m_[i], along - static_cast<double>(i));
}

double SprayTable::diameter_of_reach(double reach_k_m) const {
  if (reach_k_m <= 0.0) return 0.0;
  if (reach_k_m <= reach_k_m_.back()) return diameter_m_.back() * std::sqrt(std::sqrt(reach_k_m / reach_k_m_.back()));
  const auto below = std::lower_bound(reach_k_m_.begin(), reach_k_m_.end(), reach_k_m, std::greater<>());
  const auto i = static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, below - reach_k_m_.begin()));
  const double share = std::log(reach_k_m / reach_k_m_[i]) / std::log(reach_k_m_[i - 1] / reach_k_m_[i]);
  return diameter_m_[i] * std::pow(diameter_m_[i - 1] / diameter_m_[i], share);
}

void SprayTable::reckon_shares() {
  std::vector<double> reach;
  for (const double d : classes_m_) reach.push_back(reach_k_m(d));
  first_place_ = std::sqrt(std::sqrt(kStart));
  last_fourth_ = all_gone_k_m() / scale_k_m_ + kStart;
  last_stage_ = std::sqrt(std::sqrt(last_fourth_)) - first_place_;
  spacing_ = last_stage_ / (kKnots - 1);
  for (std::size_t k = 0; k < kKnots; ++k) {
    const double drying = scale_k_m_ * (fourth_power(first_place_ + static_cast<double>(k) * spacing_) - kStart);
    double left = 0.0;
    for (std::size_t c = 0; c < reach.size(); ++c) {
      const double ratio = diameter_of_reach(reach[c] - drying) / classes_m_[c];
      left += ratio * ratio * ratio;
    }
    share_[k] = std::clamp(1.0 - left / static_cast<double>(reach.size()), 0.0, 1.0);
  }
  share_.front() = 0.0;
  share_.back() = 1.0;
}

/// Slopes that keep a cubic monotone: the harmonic mean of the neighbours' [Fritsch & Butland 1984, SIAM J. Sci. Stat.
/// Comput. 5, 300, for equal spacing].
void SprayTable::set_slopes() {
  const auto rise = [this](std::size_t k) { return (share_[k + 1] - share_[k]) / spacing_; };
  slope_.front() = rise(0);
  slope_.back() = 0.0;
  for (std::size_t k = 1; k + 1 < kKnots; ++k) {
    const double before = rise(k - 1), after = rise(k);
    slope_[k] = before > 0.0 && after > 0.0 ? 2.0 * before * after / (before + after) : 0.0;
  }
}

SprayTable::Piece SprayTable::share_and_slope(double stage) const {
  if (stage >= last_stage_) return {1.0, 0.0};
  if (stage < 0.0) return {slope_.front() * stage, slope_.front()};
  const double along = stage / spacing_;
  const std::size_t k = std::min(static_cast<std::size_t>(along), kKnots - 2);
  const double s = along - static_cast<double>(k), r = 1.0 - s;
  const double rise = share_[k + 1] - share_[k];
  const double a = slope_[k] * spacing_, b = slope_[k + 1] * spacing_;
  const double value = share_[k] + s * s * (3.0 - 2.0 * s) * rise + s * r * (r * a - s * b);
  const double slope = 6.0 * s * r * rise + r * (1.0 - 3.0 * s) * a + s * (3.0 * s - 2.0) * b;
  return {value, slope / spacing_};
}

double SprayTable::approach_to_wet_bulb(double fall_m) const {
  NOON_ASSERT(fall_m >= 0.0);
  const double step = std::log(diameter_m_[0] / diameter_m_[1]);
  double sum = 0.0;
  for (const double d : classes_m_) {
    const double along = std::max(0.0, std::log(diameter_m_[0] / d) / step);
    const std::size_t i = std::min(static_cast<std::size_t>(along), kDrops - 2);
    const double settling =
        settling_m_[i] * std::pow(settling_m_[i + 1] / settling_m_[i], along - static_cast<double>(i));
    sum += -std::expm1(-fall_m / settling);
  }
  return sum / static_cast<double>(classes_m_.size());
}

}  // namespace noonhouse
