// SPDX-License-Identifier: Apache-2.0
#include "models/properties/heat_stress.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/convection.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/water.hpp"

namespace noonhouse {
namespace {

constexpr double kGlobeDiameter_m = 0.15, kGlobeBlackness = 0.95;
constexpr double kWickDiameter_m = 0.007, kWickAbsorbs = 0.6, kWickEmits = 0.95;
constexpr double kSearch_k = 150.0;  // on either side of the air
constexpr int kHalvings = 60;        // 300 K down to rounding

/// The temperature in balance: gain falls as the temperature rises.
template <class Gain>
double balanced_k(double air_k, const Gain& gain_w_m2) {
  double low = std::max(air_k - kSearch_k, 180.0), high = air_k + kSearch_k;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (gain_w_m2(middle) > 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double air_speed_m_s(const HeatSurroundings& around) { return std::max(around.speed_m_s, kLeastAirSpeed_m_s); }

struct Reference {
  double still_c, moving_c;
};
constexpr std::array<Reference, 5> kAcclimatised = {{{33, 33}, {30, 30}, {28, 28}, {25, 26}, {23, 25}}};
constexpr std::array<Reference, 5> kNotAcclimatised = {{{32, 32}, {29, 29}, {26, 26}, {22, 23}, {18, 20}}};

}  // namespace

double wbgt_in_sun_k(double natural_wet_bulb_k, double globe_k, double air_k) {
  return 0.7 * natural_wet_bulb_k + 0.2 * globe_k + 0.1 * air_k;
}

double wbgt_without_sun_k(double natural_wet_bulb_k, double globe_k) {
  return 0.7 * natural_wet_bulb_k + 0.3 * globe_k;
}

WorkRate work_rate(double metabolic_w_m2) {
  if (metabolic_w_m2 <= 65.0) return WorkRate::resting;
  if (metabolic_w_m2 <= 130.0) return WorkRate::low;
  if (metabolic_w_m2 <= 200.0) return WorkRate::moderate;
  if (metabolic_w_m2 <= 260.0) return WorkRate::high;
  return WorkRate::very_high;
}

double wbgt_reference_k(const Worker& worker) {
  const auto& table = worker.acclimatised ? kAcclimatised : kNotAcclimatised;
  const Reference& reference = table[static_cast<std::size_t>(worker.rate)];
  return kZeroCelsius + (worker.moving_air ? reference.moving_c : reference.still_c);
}

bool unwise_to_work(double wbgt_k, const Worker& worker) { return wbgt_k > wbgt_reference_k(worker); }

double sphere_sunlight_w_m2(const HeatSurroundings& around) {
  return 0.25 * around.beam_normal_w_m2 + 0.5 * around.diffuse_level_w_m2 + 0.5 * around.reflected_level_w_m2;
}

double globe_temperature_k(const HeatSurroundings& around) {
  const double falls = sphere_sunlight_w_m2(around) + blackbody_emission(around.radiant_k);
  const double forced = 6.3 * std::pow(air_speed_m_s(around), 0.6) / std::pow(kGlobeDiameter_m, 0.4);
  return balanced_k(around.air_k, [&](double globe_k) {
    const double over = globe_k - around.air_k;
    const double film = std::max(1.4 * std::pow(std::abs(over) / kGlobeDiameter_m, 0.25), forced);
    return kGlobeBlackness * (falls - blackbody_emission(globe_k)) - film * over;
  });
}

double natural_wet_bulb_k(const HeatSurroundings& around) {
  const AirTransport air = dry_air_transport(around.air_k, around.pressure_pa);
  const double reynolds = reynolds_number(air_speed_m_s(around), kWickDiameter_m, around.air_k, around.pressure_pa);
  const double nusselt = 0.281 * std::pow(reynolds, 0.6) * std::pow(air.prandtl, 0.44);
  const double film = coefficient_from_nusselt(nusselt, kWickDiameter_m, around.air_k);
  const double schmidt = air.kinematic_viscosity_m2_s / vapour_diffusivity_m2_s(around.air_k, around.pressure_pa);
  const double vapour_film = film / kDryAirHeat * kMolarRatio * std::pow(air.prandtl / schmidt, 0.56);
  const double vapour_pa = vapour_pressure_pa(around.humidity_ratio, around.pressure_pa);
  const double absorbed =
      kWickAbsorbs * sphere_sunlight_w_m2(around) + kWickEmits * blackbody_emission(around.radiant_k);
  return balanced_k(around.air_k, [&](double wick_k) {
    const double wet_pa = saturation_pressure_water_pa(wick_k);
    if (wet_pa >= 0.99 * around.pressure_pa) return -1.0;  // it would boil: warmer than the balance
    const double evaporates = vapour_film * latent_heat(wick_k) * (wet_pa - vapour_pa) / (around.pressure_pa - wet_pa);
    return film * (around.air_k - wick_k) + absorbed - kWickEmits * blackbody_emission(wick_k) - evaporates;
  });
}

double wbgt_k(const HeatSurroundings& around) {
  const double bulb_k = natural_wet_bulb_k(around), globe_k = globe_temperature_k(around);
  if (sphere_sunlight_w_m2(around) <= 0.0) return wbgt_without_sun_k(bulb_k, globe_k);
  return wbgt_in_sun_k(bulb_k, globe_k, around.air_k);
}

}  // namespace noonhouse
