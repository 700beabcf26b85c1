// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>

#include "models/power/panel.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/sky_light.hpp"
#include "tools/scenario/ground_plan.hpp"
#include "tools/scenario/site_forcing.hpp"
#include "tools/scenario/sunlight_account.hpp"
#include "tools/scenario/wind_plan.hpp"

namespace noonhouse {
namespace {

/// Days whose mean direct sun plants are taken to be used to at the start of a run.
constexpr std::size_t kHabitDays = 10;

std::size_t grid_instants(const RunSpec& run) {
  const Tick spacing = ticks(run.sun_every_s);
  return static_cast<std::size_t>((ticks(run.length_s).ms + spacing.ms - 1) / spacing.ms) + 1;
}

/// Mean rain over [from, to], sampled in the middle of each minute, or of each row where those are shorter: exact where
/// rows are whole minutes, or divide one.
double mean_rain(const WeatherSignal& weather, Tick from, Tick to) {
  const Tick step = std::min(1_min, ticks(weather.series().step_s));
  double sum = 0.0;
  int count = 0;
  for (Tick t = from + Tick{step.ms / 2}; t < to; t = t + step, ++count) sum += weather.at(t).rain_kg_m2_s;
  return count > 0 ? sum / count : 0.0;
}

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
      const Tick begin = kDay * (gusts->day - 1) + whole_minutes(gusts->at_s);
      if (when >= begin && when < begin + std::max(1_min, whole_minutes(gusts->lasts_s)))
        strongest = std::max(strongest, gusts->speed_m_s / spec.site.gust_factor);
    }
  return strongest;
}

SiteTable::Instant weather_instant(const ScenarioSpec& spec, const WeatherSignal& weather, double pressure_pa, Tick t,
                                   double direct_left) {
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
  now.rain_kg_m2_s = mean_rain(weather, t, t + ticks(spec.run.sun_every_s));
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
  const Tick spacing = ticks(spec.run.sun_every_s);
  for (std::size_t k = 0; k < grid_instants(spec.run); ++k) {
    const Tick t = spacing * static_cast<std::int64_t>(k);
    const SunPosition sun = weather.sun(t);
    const int day = 1 + static_cast<int>(std::fmod(day_of_run_year(spec.run, t), 365.25));
    out->add(sun.azimuth_rad, sun.elevation_rad, day);
  }
  return out;
}

SiteTable::SiteTable(const ScenarioSpec& spec, const HouseShape& shape, const WeatherSignal& weather,
                     double pressure_pa, std::shared_ptr<const SunlitHouse> sun)
    : spacing_(ticks(spec.run.sun_every_s)),
      gust_factor_(spec.site.gust_factor),
      row_(sun_row(spec, shape)),
      sun_(std::move(sun)) {
  const std::size_t count = grid_instants(spec.run);
  sunlight_.assign(count * (row_.cloths + 1) * row_.size(), 0.0);
  SunlightAccount account(spec, shape, row_);
  for (std::size_t k = 0; k < count; ++k) {
    const Tick t = spacing_ * static_cast<std::int64_t>(k);
    instants_.push_back(
        weather_instant(spec, weather, pressure_pa, t, past_obstacles(spec, shape, sun_->instants()[k])));
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
    const double gusts_m_s = gusts_at_m_s(spec, spacing_ * static_cast<std::int64_t>(k));
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

double usual_direct(const SiteTable& table, int place) {
  const auto a_day = static_cast<std::size_t>(kDay.ms / table.spacing().ms);
  const std::size_t days = std::clamp<std::size_t>(table.instants() / a_day, 1, kHabitDays);
  const std::size_t count = std::min(table.instants(), days * a_day);
  double sum = 0.0;
  for (std::size_t k = 0; k < count; ++k)
    sum += table.sunlight(k, 0)[table.row().direct(static_cast<std::size_t>(place))];
  return count > 0 ? sum / static_cast<double>(count) : 0.0;
}

double SiteTable::mean_outdoor_k() const {
  double sum = 0.0;
  for (const Instant& instant : instants_) sum += instant.outdoor_k;
  return sum / static_cast<double>(instants_.size());
}

}  // namespace noonhouse
