// SPDX-License-Identifier: Apache-2.0
#include "models/air/droplet.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/water.hpp"
#include "sim/core/dual.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

/// C_D Re^2, which unlike C_D is zero at rest; rises with Re, and faster the higher Re is.
double drag_number(double reynolds) {
  if (reynolds <= 0.0) return 0.0;
  const double viscous = 24.0 * reynolds * (1.0 + 0.15 * std::pow(reynolds, 0.687));
  return viscous + 0.42 * reynolds * reynolds / (1.0 + 42500.0 * std::pow(reynolds, -1.16));
}

/// The Reynolds number of a given C_D Re^2. The secant in logarithms, where the law is nearly straight.
double reynolds_of_drag_number(double target) {
  double before = target / 24.0;  // Stokes, never too low
  double error_before = std::log(drag_number(before) / target);
  if (error_before < 1e-14) return before;
  double now = before * std::exp(-error_before);
  for (int iteration = 0; iteration < 60; ++iteration) {
    const double error = std::log(drag_number(now) / target);
    if (std::fabs(error) < 1e-13 || error == error_before) break;
    const double slope = (error - error_before) / std::log(now / before);
    before = now;
    error_before = error;
    now *= std::exp(-error / slope);
  }
  return now;
}

/// Transport around a drop, at a third of the way from its surface to the air.
struct Film {
  double ventilation_vapour;
  double ventilation_heat;
  double vapour_kg_m_s;  ///< rho D
  double heat_kg_m_s;    ///< k / c_pv
};

Film film_around(double diameter_m, double speed_m_s, double drop_k, const AirAroundDrop& air) {
  const double w_drop = humidity_ratio(saturation_pressure_water_pa(drop_k), air.pressure_pa);
  const double temperature = drop_k + (air.temperature_k - drop_k) / 3.0;
  const double w = w_drop + (air.humidity_ratio - w_drop) / 3.0;
  const AirTransport transport = dry_air_transport(temperature, air.pressure_pa);
  const double diffusivity = vapour_diffusivity_m2_s(temperature, air.pressure_pa);
  const double reynolds = speed_m_s * diameter_m / transport.kinematic_viscosity_m2_s;
  Film film{};
  film.ventilation_vapour = ventilation_factor(reynolds, transport.kinematic_viscosity_m2_s / diffusivity);
  film.ventilation_heat = ventilation_factor(reynolds, transport.prandtl);
  film.vapour_kg_m_s = moist_air_density(temperature, w, air.pressure_pa) * diffusivity;
  film.heat_kg_m_s = transport.conductivity_w_m_k / kVapourHeat;
  return film;
}

/// ln(1 + B_m): how strongly vapour is driven from a drop of this temperature.
template <class S>
S vapour_drive(const S& drop_k, const AirAroundDrop& air) {
  using std::log;
  const S saturated = humidity_ratio(saturation_pressure_water_pa(drop_k), air.pressure_pa);
  return log((1.0 + saturated) / (1.0 + air.humidity_ratio));
}

/// ln(1 + B_t): how strongly heat is driven to it, as the vapour that it could make.
template <class S>
S heat_drive(const S& drop_k, const AirAroundDrop& air) {
  using std::log;
  return log(1.0 + kVapourHeat * (air.temperature_k - drop_k) / latent_heat(drop_k));
}

/// Where vapour and heat agree. Newton from the air's temperature, where vapour has the upper hand: the difference is
/// convex, so every step stays on that side. The film is held within a step; it changes far more slowly.
double settled_temperature_k(double diameter_m, double speed_m_s, const AirAroundDrop& air) {
  double drop_k = air.temperature_k;
  for (int iteration = 0; iteration < 50; ++iteration) {
    const Film film = film_around(diameter_m, speed_m_s, drop_k, air);
    const Dual<1> at = Dual<1>::input(drop_k, 0);
    const Dual<1> excess = film.ventilation_vapour * film.vapour_kg_m_s * vapour_drive(at, air) -
                           film.ventilation_heat * film.heat_kg_m_s * heat_drive(at, air);
    const double step = excess.value / excess.grad[0];
    drop_k -= step;
    if (std::fabs(step) < 1e-9) break;
  }
  return drop_k;
}

bool saturated(const AirAroundDrop& air) { return !(vapour_drive(air.temperature_k, air) > 0.0); }

struct QuadraturePoint {
  double place, weight;
};

/// Gauss and Legendre's 8 points on -1 to 1, the half right of zero. [Abramowitz & Stegun, table 25.4]
constexpr std::array<QuadraturePoint, 4> kGauss{{{0.183434642495650, 0.362683783378362},
                                                 {0.525532409916329, 0.313706645877887},
                                                 {0.796666477413627, 0.222381034453374},
                                                 {0.960289856497536, 0.101228536290376}}};

/// -d(d^4)/dz of a falling drop [m3]: constant where Stokes's law holds, so that steps in height can be long.
double fourth_power_loss_m3(double diameter_m, const AirAroundDrop& air) {
  const DropMotion motion = falling_drop(diameter_m, air);
  return 2.0 * diameter_m * diameter_m * motion.shrinkage_m2_s / motion.speed_m_s;
}

}  // namespace

double sphere_drag_coefficient(double reynolds) {
  NOON_ASSERT(reynolds > 0.0);
  return drag_number(reynolds) / (reynolds * reynolds);
}

double terminal_velocity_m_s(double diameter_m, double air_temperature_k, double pressure_pa) {
  NOON_ASSERT(diameter_m >= 0.0);
  if (diameter_m == 0.0) return 0.0;
  const AirTransport air = dry_air_transport(air_temperature_k, pressure_pa);
  const double density = air.dynamic_viscosity_pa_s / air.kinematic_viscosity_m2_s;
  const double ratio = water_density_kg_m3(air_temperature_k) / density - 1.0;
  const double nu = air.kinematic_viscosity_m2_s;
  const double cubed = diameter_m * diameter_m * diameter_m;
  const double target = 4.0 / 3.0 * ratio * kGravity * cubed / (nu * nu);
  return reynolds_of_drag_number(target) * nu / diameter_m;
}

double ventilation_factor(double reynolds, double schmidt) {
  const double x = std::cbrt(schmidt) * std::sqrt(reynolds);
  return x < 1.4 ? 1.0 + 0.108 * x * x : 0.78 + 0.308 * x;
}

DropMotion drop_at_speed(double diameter_m, double speed_m_s, const AirAroundDrop& air) {
  NOON_ASSERT(diameter_m >= 0.0 && speed_m_s >= 0.0 && air.humidity_ratio >= 0.0);
  if (saturated(air)) return {speed_m_s, air.temperature_k, 0.0, 0.0};
  DropMotion motion{};
  motion.speed_m_s = speed_m_s;
  motion.temperature_k = settled_temperature_k(diameter_m, speed_m_s, air);
  const Film film = film_around(diameter_m, speed_m_s, motion.temperature_k, air);
  const double drive = film.ventilation_vapour * film.vapour_kg_m_s * vapour_drive(motion.temperature_k, air);
  motion.evaporation_kg_s = 2.0 * kPi * diameter_m * drive;
  motion.shrinkage_m2_s = 8.0 * drive / water_density_kg_m3(motion.temperature_k);
  return motion;
}

DropMotion falling_drop(double diameter_m, const AirAroundDrop& air) {
  return drop_at_speed(diameter_m, terminal_velocity_m_s(diameter_m, air.temperature_k, air.pressure_pa), air);
}

double resting_lifetime_s(double diameter_m, const AirAroundDrop& air) {
  const double shrinkage = drop_at_speed(diameter_m, 0.0, air).shrinkage_m2_s;
  return shrinkage > 0.0 ? diameter_m * diameter_m / shrinkage : kInfinity;
}

DropFate fate_of_falling_drop(double diameter_m, const AirAroundDrop& air) {
  NOON_ASSERT(diameter_m >= 0.0);
  if (saturated(air)) return {kInfinity, kInfinity};
  constexpr int kPanels = 2;
  const double half = diameter_m / (2 * kPanels);
  DropFate fate{0.0, 0.0};
  for (int panel = 0; panel < kPanels; ++panel) {
    const double centre = (2 * panel + 1) * half;
    for (const QuadraturePoint& point : kGauss) {
      for (const double side : {-1.0, 1.0}) {
        const double x = centre + side * point.place * half;
        const DropMotion motion = falling_drop(x, air);
        const double time = point.weight * half * 2.0 * x / motion.shrinkage_m2_s;
        fate.lifetime_s += time;
        fate.fall_m += time * motion.speed_m_s;
      }
    }
  }
  return fate;
}

double diameter_after_fall_m(double diameter_m, double height_m, const AirAroundDrop& air) {
  NOON_ASSERT(diameter_m >= 0.0 && height_m >= 0.0);
  if (diameter_m == 0.0 || height_m == 0.0 || saturated(air)) return diameter_m;
  constexpr int kSteps = 12;
  const double full = diameter_m * diameter_m * diameter_m * diameter_m;
  // d^4 by the classical fourth-order method over height. Its loss goes to a constant as the drop goes to nothing, and
  // is held there, so that a step may pass the end.
  const auto loss = [&air, full](double fourth_power) {
    return fourth_power_loss_m3(std::sqrt(std::sqrt(std::max(fourth_power, 1e-12 * full))), air);
  };
  const double step = height_m / kSteps;
  double power = full;
  for (int i = 0; i < kSteps && power > 0.0; ++i) {
    const double a = loss(power);
    const double b = loss(power - 0.5 * step * a);
    const double c = loss(power - 0.5 * step * b);
    const double d = loss(power - step * c);
    power -= step * (a + 2.0 * b + 2.0 * c + d) / 6.0;
  }
  return std::sqrt(std::sqrt(std::max(power, 0.0)));
}

double evaporated_share_in_fall(double diameter_m, double height_m, const AirAroundDrop& air) {
  if (saturated(air)) return 0.0;
  if (diameter_m == 0.0) return 1.0;
  const double left = diameter_after_fall_m(diameter_m, height_m, air) / diameter_m;
  return 1.0 - left * left * left;
}

}  // namespace noonhouse
