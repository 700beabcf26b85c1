// SPDX-License-Identifier: Apache-2.0
#include "models/air/pad.hpp"

#include <cmath>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/core/dual.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

double density(const AirTransport& air) { return air.dynamic_viscosity_pa_s / air.kinematic_viscosity_m2_s; }

/// Heat that is missing to saturate the air at a temperature [J/kg dry air]; rises with it.
struct Shortage {
  double temperature_k, w, pressure_pa, liquid;
  template <class S>
  S at(const S& saturated_k) const {
    const S saturated = saturation_humidity_ratio(saturated_k, pressure_pa);
    return moist_air_enthalpy(saturated_k, saturated) - moist_air_enthalpy(temperature_k, w) - (saturated - w) * liquid;
  }
};

}  // namespace

double pad_efficiency(const WetPad& pad, double face_speed_m_s, double temperature_k, double pressure_pa) {
  NOON_ASSERT(pad.thickness_m >= 0.0 && pad.surface_per_volume_m2_m3 > 0.0 && face_speed_m_s >= 0.0);
  if (pad.thickness_m == 0.0) return 0.0;
  if (face_speed_m_s == 0.0) return 1.0;
  const AirTransport air = dry_air_transport(temperature_k, pressure_pa);
  const double length = 1.0 / pad.surface_per_volume_m2_m3;
  const double reynolds = face_speed_m_s * length / air.kinematic_viscosity_m2_s;
  const double nusselt =
      0.10 * std::pow(length / pad.thickness_m, 0.12) * std::pow(reynolds, 0.8) * std::cbrt(air.prandtl);
  const double coefficient = nusselt * air.conductivity_w_m_k / length;
  const double surface_per_face = pad.surface_per_volume_m2_m3 * pad.thickness_m;
  return -std::expm1(-coefficient * surface_per_face / (density(air) * face_speed_m_s * kDryAirHeat));
}

double pad_pressure_drop_pa(const WetPad& pad, double face_speed_m_s, double temperature_k, double pressure_pa) {
  NOON_ASSERT(pad.thickness_m >= 0.0 && face_speed_m_s >= 0.0);
  const double head = 0.5 * density(dry_air_transport(temperature_k, pressure_pa)) * face_speed_m_s * face_speed_m_s;
  return pad.resistance_per_m * pad.thickness_m * head;
}

double saturated_by_water_k(double temperature_k, double w, double pressure_pa, double water_k) {
  if (w >= saturation_humidity_ratio(temperature_k, pressure_pa)) return temperature_k;
  const Shortage shortage{temperature_k, w, pressure_pa, liquid_enthalpy(water_k)};
  // At the dew point nothing can evaporate and the air is too warm; at its own temperature it lacks the latent heat.
  double low = dew_point_k(w, pressure_pa);
  double high = temperature_k;
  double guess = high;
  for (int iteration = 0; iteration < 100; ++iteration) {
    const Dual<1> at = shortage.at(Dual<1>::input(guess, 0));
    (at.value > 0.0 ? high : low) = guess;
    double next = guess - at.value / at.grad[0];
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    const double moved = std::fabs(next - guess);
    guess = next;
    if (moved < 1e-10 || high - low < 1e-10) break;
  }
  return guess;
}

PadOutlet pad_outlet(double temperature_k, double w, double pressure_pa, double efficiency, double water_k) {
  NOON_ASSERT(efficiency >= 0.0 && efficiency <= 1.0);
  const double end = saturated_by_water_k(temperature_k, w, pressure_pa, water_k);
  if (!(end < temperature_k) || efficiency == 0.0) return {temperature_k, w, 0.0};
  PadOutlet outlet{};
  outlet.temperature_k = temperature_k - efficiency * (temperature_k - end);
  const double given_up = moist_air_enthalpy(temperature_k, w) - moist_air_enthalpy(outlet.temperature_k, w);
  outlet.water_per_dry_air = given_up / (vapour_enthalpy(outlet.temperature_k) - liquid_enthalpy(water_k));
  outlet.humidity_ratio = w + outlet.water_per_dry_air;
  return outlet;
}

double pad_evaporation_kg_s(const PadOutlet& outlet, double air_flow_m3_s, double temperature_k, double w,
                            double pressure_pa) {
  return outlet.water_per_dry_air * air_flow_m3_s * dry_air_density(temperature_k, w, pressure_pa);
}

}  // namespace noonhouse
