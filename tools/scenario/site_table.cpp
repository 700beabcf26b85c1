// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>

#include "models/envelope/facet_sun.hpp"
#include "models/power/battery.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "tools/scenario/light_shares.hpp"
#include "tools/scenario/site_forcing.hpp"

namespace noonhouse {
namespace {

/// Beam, sky and ground light on a plane: Hay & Davies 1980 sky, isotropic ground.
PlaneSun on_plane(const WeatherRow& w, const SunPosition& sun, double slope, double azimuth, double albedo) {
  PlaneSun out;
  const double cosine = std::max(0.0, incidence_cosine(sun, slope, azimuth));
  const double horizontal = std::sin(sun.elevation_rad);
  if (horizontal <= 0.0) return out;
  out.beam_w_m2 = w.beam_normal_w_m2 * cosine;
  out.incidence_rad = std::acos(std::min(cosine, 1.0));
  const SkyView view{kPi / 2.0 - sun.elevation_rad, incidence_cosine(sun, slope, azimuth), slope,
                     extraterrestrial_normal_at_distance(sun.distance_au)};
  out.diffuse_w_m2 = hay_davies_sky_diffuse(w.diffuse_horizontal_w_m2, w.beam_normal_w_m2, view).total() +
                     ground_reflected(w.global_horizontal_w_m2, albedo, slope);
  return out;
}

double sky_kelvin(const WeatherRow& w, double solar_hour, double pressure_pa) {
  if (std::isfinite(w.longwave_down_w_m2)) return std::sqrt(std::sqrt(w.longwave_down_w_m2 / kStefanBoltzmann));
  const double clear = berdahl_martin_emissivity(dew_point_k(w.humidity_ratio, pressure_pa), solar_hour, pressure_pa);
  const double cloud = std::isfinite(w.cloud_share) ? w.cloud_share : 0.0;
  return sky_temperature_k(w.temperature_k, std::min(1.0, cloudy_emissivity(clear, cloud)));
}

/// Mean rain over [from, to], sampled each minute: exact where rows are whole minutes.
double mean_rain(const WeatherSignal& weather, Tick from, Tick to) {
  double sum = 0.0;
  int count = 0;
  for (Tick t = from + 30_s; t < to; t = t + 1_min, ++count) sum += weather.at(t).rain_kg_m2_s;
  return count > 0 ? sum / count : 0.0;
}

}  // namespace

SiteTable::SiteTable(const ScenarioSpec& spec, const HouseShape& shape, const WeatherSignal& weather,
                     double pressure_pa)
    : spacing_(ticks(spec.run.sun_every_s)), facets_(shape.facets.size()), bays_(shape.bays.size()) {
  const auto pane_of = [](const SheetSpec& s) { return Pane(s.sheets, {s.refractive_index, s.optical_depth}); };
  const Pane roof = pane_of(spec.house.cover.roof), walls = pane_of(spec.house.cover.walls);
  const LightShares shares(shape, spec.house.faces_rad);
  const auto count = static_cast<std::size_t>((ticks(spec.run.length_s).ms + spacing_.ms - 1) / spacing_.ms) + 1;
  for (std::size_t k = 0; k < count; ++k) {
    const Tick t = spacing_ * static_cast<std::int64_t>(k);
    const WeatherRow w = weather.at(t);
    const SunPosition sun = weather.sun(t);
    const double hour = 12.0 + sun.hour_angle_rad * 12.0 / kPi;
    Instant now;
    now.outdoor_k = w.temperature_k;
    now.humidity_ratio = w.humidity_ratio;
    now.wind_m_s = w.wind_m_s * spec.site.wind_share;
    now.sky_k = sky_kelvin(w, hour, pressure_pa);
    now.global_w_m2 = w.global_horizontal_w_m2;
    now.rain_kg_m2_s = mean_rain(weather, t, t + spacing_);
    const PowerSpec& p = spec.power;
    const PlaneSun panel = on_plane(w, sun, p.panel_slope_rad, p.panel_faces_rad, spec.site.albedo);
    now.panel_w = panel_power_w(p.panel_area_m2, p.panel_efficiency, p.panel_derate_per_k, p.panel_noct_k,
                                panel.beam_w_m2 + panel.diffuse_w_m2, w.temperature_k);
    instants_.push_back(now);
    const std::vector<double> beam_shares = shares.beam(sun);
    const double level_beam = w.beam_normal_w_m2 * std::max(0.0, std::sin(sun.elevation_rad));
    std::vector<double> passes;
    for (const Facet& facet : shape.facets) {
      const Pane& pane = facet.roof() ? roof : walls;
      const PlaneSun plane = on_plane(w, sun, facet.slope_rad, facet.azimuth_rad, spec.site.albedo);
      sun_.push_back(
          {facet.area_m2 * pane.absorbed_w_m2(plane), facet.area_m2 * (plane.beam_w_m2 + plane.diffuse_w_m2)});
      passes.push_back(plane.beam_w_m2 > 0.0 ? pane.beam_transmittance(plane.incidence_rad) : 0.0);
    }
    for (std::size_t bay = 0; bay < bays_; ++bay)
      for (std::size_t f = 0; f < facets_; ++f) {
        const double floor = shape.bays[bay].floor_m2;
        const double through = (shape.facets[f].roof() ? roof : walls).diffuse_transmittance();
        landed_.push_back({level_beam * floor * beam_shares[bay * facets_ + f] * passes[f],
                           w.diffuse_horizontal_w_m2 * floor * shares.diffuse()[bay * facets_ + f] * through});
      }
  }
}

double SiteTable::mean_outdoor_k() const {
  double sum = 0.0;
  for (const Instant& instant : instants_) sum += instant.outdoor_k;
  return sum / static_cast<double>(instants_.size());
}

}  // namespace noonhouse
