// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "models/power/panel.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/sky_light.hpp"
#include "sim/core/errors.hpp"
#include "tools/scenario/ground_plan.hpp"
#include "tools/scenario/site_forcing.hpp"
#include "tools/scenario/sunlight_account.hpp"
#include "tools/scenario/wind_plan.hpp"

namespace noonhouse {
namespace {

/// Days whose mean direct sun plants are taken to be used to at the start of a run.
constexpr std::int64_t kHabitDays = 10;

/// Power of the panel [W]: of the light past obstacles and dirt. What of the direct light obstacles leave is told.
double panel_now_w(const ScenarioSpec& spec, const WeatherRow& w, const SunPosition& sun, double direct_left) {
  const PowerSpec& p = spec.power;
  SkyLight light = sky_light(w, sun);
  light.beam_w_m2 *= direct_left;
  const double on_panel =
      (1.0 - p.panel_soiling) * plane_irradiance(light, sun, p.panel_slope_rad, p.panel_faces_rad, spec.site.albedo);
  return panel_power_w(p.panel_area_m2, p.panel_efficiency, p.panel_derate_per_k, p.panel_noct_k, on_panel,
                       w.temperature_k);
}

/// Share of the direct light that obstacles leave to the panel.
double past_obstacles(const ScenarioSpec& spec, const HouseShape& shape, const SunlitHouse::Instant& now) {
  if (now.elevation_rad <= 0.0 || spec.obstacles.empty()) return 1.0;
  const PowerSpec& p = spec.power;
  Vector3 place = house_place(p.panel_east_m, p.panel_north_m, shape.faces_rad);
  place.z = p.panel_height_m.value_or(shape.top_m);
  return now.geometry->scene.past_obstacles(place, now.to_sun);
}

/// Mean wind at the house that the scenario's gusts bring at an instant of the grid [m/s]; 0 while none blow.
double gusts_at_m_s(const ScenarioSpec& spec, Tick when) {
  double strongest = 0.0;
  for (const auto& item : spec.hazards)
    if (const auto* gusts = std::get_if<GustsSpec>(&item.value.what)) {
      if (when >= begin_of(*gusts) && when < end_of(*gusts))
        strongest = std::max(strongest, gusts->speed_m_s / spec.site.gust_factor);
    }
  return strongest;
}

/// All but the wind of gusts, which add_wind adds. The rain is that up to the next instant.
SiteTable::Instant weather_instant(const ScenarioSpec& spec, const WeatherSignal& weather, double pressure_pa, Tick t,
                                   Tick next, double direct_left) {
  const WeatherRow w = weather.at(t);
  const SunPosition sun = weather.sun(t);
  SiteTable::Instant now;
  now.outdoor_k = w.temperature_k;
  now.humidity_ratio = w.humidity_ratio;
  now.wind_m_s = w.wind_m_s * spec.site.wind_share;
  now.wind_from_rad = w.wind_from_rad;
  now.sky_k =
      sky_temperature_of(w, spec.site.sky, 12.0 + sun.hour_angle_rad * 12.0 / kPi, pressure_pa, spec.site.altitude_m);
  now.global_w_m2 = w.global_horizontal_w_m2;
  now.rain_kg_m2_s = weather.mean_rain(t, next);
  now.panel_w = panel_now_w(spec, w, sun, direct_left);
  now.deep_soil_k = deep_ground_k(spec, day_of_run_year(spec.run, t), ground_depth_m(ground_layers(spec.house.floor)));
  return now;
}

}  // namespace

SunRow sun_row(const ScenarioSpec& spec, const HouseShape& shape) {
  return {shape.facets.size(), spec.shades.size(), shape.bays.size(),
          spec.benches.size(), spec.plants.size(), standing_places(spec, shape).size()};
}

std::shared_ptr<const SunlitHouse> sunlit_house(const ScenarioSpec& spec, const HouseShape& shape,
                                                const WeatherSignal& weather) {
  auto out = std::make_shared<SunlitHouse>(spec, shape);
  const RunGrid grid(spec);
  for (std::size_t k = 0; k < grid.size(); ++k) {
    const Tick t = grid.when(k);
    const SunPosition sun = weather.sun(t);
    const int day = 1 + static_cast<int>(std::fmod(day_of_run_year(spec.run, t), 365.25));
    out->add(sun.azimuth_rad, sun.elevation_rad, day);
  }
  return out;
}

SiteTable::SiteTable(const ScenarioSpec& spec, const HouseShape& shape, const WeatherSignal& weather,
                     double pressure_pa, std::shared_ptr<const SunlitHouse> sun)
    : grid_(spec), gust_factor_(spec.site.gust_factor), row_(sun_row(spec, shape)), sun_(std::move(sun)) {
  const std::size_t count = grid_.size();
  NOON_ASSERT(sun_->instants().size() == count);
  sunlight_.assign(count * (row_.cloths + 1) * row_.size(), 0.0);
  SunlightAccount account(spec, shape, row_);
  for (std::size_t k = 0; k < count; ++k) {
    const Tick t = grid_.when(k), next = k + 1 < count ? grid_.when(k + 1) : t;
    instants_.push_back(
        weather_instant(spec, weather, pressure_pa, t, next, past_obstacles(spec, shape, sun_->instants()[k])));
    const SunlitHouse::Instant& now = sun_->instants()[k];
    if (now.elevation_rad <= 0.0) continue;
    const SkyLight light = sky_light(weather.at(t), weather.sun(t));
    for (std::size_t state = 0; state <= row_.cloths; ++state)
      account.write(light, now, state, sunlight_.data() + (k * (row_.cloths + 1) + state) * row_.size());
  }
  add_wind(spec, shape, pressure_pa);
}

/// Wind of each interval's ends, with the gusts that blow in it, and what it presses on the facets.
void SiteTable::add_wind(const ScenarioSpec& spec, const HouseShape& shape, double pressure_pa) {
  for (std::size_t k = 0; k < instants_.size(); ++k) {
    Instant& now = instants_[k];
    const Instant& next = instants_[std::min(k + 1, instants_.size() - 1)];
    const double gusts_m_s = gusts_at_m_s(spec, grid_.when(k));
    now.wind_at_end_m_s = std::max(next.wind_m_s, gusts_m_s);  // the next instant's is the weather's own still
    now.wind_m_s = std::max(now.wind_m_s, gusts_m_s);
    const auto press = [&](const Instant& air, double wind_m_s) {
      const double head =
          velocity_pressure_pa(moist_air_density(air.outdoor_k, air.humidity_ratio, pressure_pa), wind_m_s);
      for (const Facet& facet : shape.facets)
        wind_pa_.push_back(head * wind_coefficient(shape, facet, spec.site.surroundings, air.wind_from_rad));
    };
    press(now, now.wind_m_s);
    press(next, now.wind_at_end_m_s);
  }
}

SiteTable::MeanWind SiteTable::mean_wind(Tick from, Tick until) const {
  NOON_ASSERT(from < until);
  double run_m = 0.0, north_m = 0.0, east_m = 0.0;
  for (std::size_t k = grid_.interval_at(from); k + 1 < grid_.size() && grid_.when(k) < until; ++k) {
    const Tick begin = std::max(from, grid_.when(k)), end = std::min(until, grid_.when(k + 1));
    const Tick middle{begin.ms + (end.ms - begin.ms) / 2};
    const double share = seconds(middle - grid_.when(k)) / seconds(grid_.when(k + 1) - grid_.when(k));
    const Instant& now = instants_[k];
    const double blown_m = seconds(end - begin) * (now.wind_m_s + share * (now.wind_at_end_m_s - now.wind_m_s));
    run_m += blown_m;
    north_m += blown_m * std::cos(now.wind_from_rad);
    east_m += blown_m * std::sin(now.wind_from_rad);
  }
  return {run_m / seconds(until - from), std::atan2(east_m, north_m)};
}

double usual_direct(const SiteTable& table, int place) {
  const RunGrid& grid = table.grid();
  const std::int64_t a_day = kDay.ms / grid.spacing().ms;
  const auto regular = static_cast<std::int64_t>(grid.when(grid.size() - 1).ms / grid.spacing().ms) + 1;
  const Tick end = grid.spacing() * std::min(regular, a_day * std::clamp<std::int64_t>(regular / a_day, 1, kHabitDays));
  double sum = 0.0;
  int count = 0;
  for (std::size_t k = 0; k < grid.size() && grid.when(k) < end; ++k) {
    if (!grid.is_regular(k)) continue;
    sum += table.sunlight(k, 0)[table.row().direct(static_cast<std::size_t>(place))];
    ++count;
  }
  return count > 0 ? sum / count : 0.0;
}

double SiteTable::mean_outdoor_k() const {
  double sum = 0.0;
  int count = 0;
  for (std::size_t k = 0; k < instants_.size(); ++k) {
    if (!grid_.is_regular(k)) continue;
    sum += instants_[k].outdoor_k;
    ++count;
  }
  return sum / count;
}

}  // namespace noonhouse
