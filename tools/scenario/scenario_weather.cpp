// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/weather/hazard_weather.hpp"
#include "models/weather/weather_signal.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/scenario_fields.hpp"
#include "tools/weather_file/heatwave_generator.hpp"
#include "tools/weather_file/plain_weather.hpp"
#include "tools/weather_file/typical_year_reader.hpp"
#include "tools/weather_file/weather_cover.hpp"
#include "tools/weather_file/year_generator.hpp"

namespace noonhouse {
namespace {

/// What every generator is told of the scenario; its own settings follow.
template <class Settings>
Settings settings_at(const ScenarioSpec& s) {
  Settings out;
  out.start = s.run.start;
  out.days = static_cast<int>(std::ceil(s.run.length_s / 86400.0));
  out.latitude_deg = s.site.latitude_rad / kRadiansPerDegree;
  out.longitude_deg = s.site.longitude_rad / kRadiansPerDegree;
  out.altitude_m = s.site.altitude_m;
  out.utc_offset_s = s.site.utc_offset_s;
  out.albedo = s.site.albedo;
  out.seed = static_cast<std::uint32_t>(s.run.seed);
  return out;
}

HeatwaveSettings heatwave_settings(const ScenarioSpec& s, const InventedHeatwave& w) {
  auto out = settings_at<HeatwaveSettings>(s);
  out.first_day_high_k = w.first_day_high_k;
  out.peak_high_k = w.peak_high_k;
  out.last_day_high_k = w.last_day_high_k;
  out.peak_day = w.peak_day;
  out.first_night_low_k = w.first_night_low_k;
  out.peak_night_low_k = w.peak_night_low_k;
  out.dew_point_k = w.dew_point_k;
  out.wind_day_m_s = w.wind_day_m_s;
  out.wind_night_m_s = w.wind_night_m_s;
  out.linke_turbidity = w.turbidity;
  out.dust_day = w.dust_day;
  out.dust_strength = w.dust_strength;
  out.storm_day = w.storm_day;
  out.storm_start_h = w.storm_start_s / 3600.0;
  out.storm_minutes = w.storm_length_s / 60.0;
  out.storm_rain_mm = w.storm_rain_m * 1000.0;
  out.storm_gust_m_s = w.storm_gust_m_s;
  return out;
}

YearSettings year_settings(const ScenarioSpec& s, const InventedYear& w) {
  auto out = settings_at<YearSettings>(s);
  out.warmest_month_mean_k = w.warmest_month_mean_k;
  out.coldest_month_mean_k = w.coldest_month_mean_k;
  out.summer_daily_swing_k = w.summer_daily_swing_k;
  out.winter_daily_swing_k = w.winter_daily_swing_k;
  out.weather_swing_k = w.weather_swing_k;
  out.summer_dew_gap_k = w.summer_dew_gap_k;
  out.winter_dew_gap_k = w.winter_dew_gap_k;
  out.rain_a_year_mm = w.rain_a_year_m * 1000.0;
  out.rain_days_a_year = w.rain_days_a_year;
  out.wetter_season = w.wetter_season;
  out.wetter_share = w.wetter_share;
  out.cloudy_days = w.cloudy_days;
  out.clear_cover = w.clear_cover;
  out.cloudy_cover = w.cloudy_cover;
  out.wind_day_m_s = w.wind_day_m_s;
  out.wind_night_m_s = w.wind_night_m_s;
  out.wind_from_deg = w.wind_from_rad / kRadiansPerDegree;
  out.linke_turbidity = w.turbidity;
  return out;
}

/// Fails at the key that a generator's refusal begins with, such as "heatwave: peak_day: read 40; allowed is 1 to 7",
/// where the scenario has it; else at the weather's kind.
[[noreturn]] void fail_at_its_key(const Places& places, const UserError& error) {
  const std::string text = error.what();
  const std::size_t key = text.find(": ") + 2, end = text.find(": ", key);
  if (end != std::string::npos)
    for (const char* section : {"weather.", "site."})
      if (const std::string path = section + text.substr(key, end - key); places.at(path) != nullptr) {
        std::string rest = text.substr(end + 2);  // what was read the place tells itself, as it was written
        if (const std::size_t stop = rest.find_first_of(";,"); rest.starts_with("read ") && stop != std::string::npos)
          rest.erase(0, stop + 2);
        places.fail(error.kind(), path, rest);
      }
  places.fail(error.kind(), "weather.kind", text);
}

/// Weather that is made rather than read; refusals name the scenario's place.
template <class Make>
WeatherSeries made_weather(const PlanScenario& plan, const Make& make) {
  try {
    return make();
  } catch (const UserError& error) {
    fail_at_its_key(plan.places, error);
  }
}

std::filesystem::path beside(const Scenario& scenario, const std::string& file) {
  const std::filesystem::path path(file);
  return path.is_absolute() ? path : scenario.file.parent_path() / path;
}

/// A typical year has no year of its own: its first row is put at 1 January of the run's.
void move_to_year(WeatherSeries& series, std::chrono::year year) {
  using namespace std::chrono;
  series.start = sys_days(year / January / 1) + (series.start - floor<days>(series.start));
}

std::chrono::sys_seconds run_start(const ScenarioSpec& s) { return std::chrono::sys_days(s.run.start); }

/// Puts the scenario's bad weather into a series; hail strikes the cover and leaves the weather alone.
class BadWeather {
 public:
  BadWeather(const ScenarioSpec& s, WeatherSeries& series) : s_(s), series_(series) {}
  void operator()(const HailSpec&) const {}
  void operator()(const GustsSpec&) const { series_.invented = true; }  // they blow at the house: see SiteTable
  void operator()(const CloudburstSpec& h) const {
    series_.invented = true;
    series_.cloudbursts.push_back({at(h.day, h.at_s), h.lasts_s, 1000.0 * h.rain_m});
  }
  void operator()(const FrostNightSpec& h) const {
    series_ = with_frost_night(std::move(series_), {date(h.day), h.lowest_k});
  }
  void operator()(const HazeSpec& h) const {
    series_ = with_dust(std::move(series_), {date(h.day), h.days, h.strength});
  }

 private:
  std::chrono::sys_days date(int day) const { return std::chrono::sys_days(s_.run.start) + std::chrono::days{day - 1}; }
  std::chrono::sys_seconds at(int day, double clock_s) const {
    return date(day) + std::chrono::seconds{static_cast<std::int64_t>(clock_s)};
  }
  const ScenarioSpec& s_;
  WeatherSeries& series_;
};

}  // namespace

std::string weather_key(const PlanScenario& plan) {
  ScenarioSpec shared;
  shared.run = plan.spec.run;
  shared.site = plan.spec.site;
  shared.weather = plan.spec.weather;
  shared.hazards = plan.spec.hazards;
  return save_fields(shared);
}

WeatherSeries weather_of(const Scenario& scenario, const PlanScenario& plan) {
  const ScenarioSpec& s = plan.spec;
  WeatherSeries series;
  if (const auto* made = std::get_if<InventedHeatwave>(&s.weather.source)) {
    series = made_weather(plan, [&] { return make_heatwave(heatwave_settings(s, *made)); });
  } else if (const auto* invented = std::get_if<InventedYear>(&s.weather.source)) {
    series = made_weather(plan, [&] { return make_year(year_settings(s, *invented)); });
  } else if (const auto* year = std::get_if<TypicalYearFile>(&s.weather.source)) {
    series = read_typical_year(beside(scenario, year->file));
    move_to_year(series, s.run.start.year());
  } else {
    series = read_plain_weather(beside(scenario, std::get<PlainWeatherFile>(s.weather.source).file));
  }
  require_cover(series, run_start(s), s.run.length_s);
  for (const auto& [name, hazard] : s.hazards) {
    const auto* frost = std::get_if<FrostNightSpec>(&hazard.what);
    const auto evening = std::chrono::sys_days(s.run.start) + std::chrono::days{frost != nullptr ? frost->day - 1 : 0};
    if (frost != nullptr && !night_after(series, evening))
      plan.places.fail(ErrorKind::does_not_fit, "hazards." + name + ".day",
                       "the weather has no night that begins on the evening of that day");
    std::visit(BadWeather(s, series), hazard.what);
  }
  return series;
}

std::shared_ptr<const SunlitHouse> sunlit_house(const PlanScenario& plan, const WeatherSeries& weather) {
  const WeatherSignal signal(weather, run_start(plan.spec), plan.spec.run.length_s);
  return sunlit_house(plan.spec, shape_of(plan.spec.house), signal);
}

std::string sun_key(const PlanScenario& plan) {
  ScenarioSpec shared;
  shared.run = plan.spec.run;
  shared.site = plan.spec.site;
  shared.house = plan.spec.house;
  shared.house.cover = {};
  shared.benches = plan.spec.benches;
  shared.plant_kinds = plan.spec.plant_kinds;
  shared.plants = plan.spec.plants;  // leaves hide a bench's gaps
  shared.obstacles = plan.spec.obstacles;
  shared.hazards = plan.spec.hazards;  // some have instants of their own: see RunGrid
  return save_fields(shared);
}

std::shared_ptr<const SiteTable> site_table(const PlanScenario& plan, const WeatherSeries& weather,
                                            std::shared_ptr<const SunlitHouse> sun) {
  const HouseShape shape = shape_of(plan.spec.house);
  const WeatherSignal signal(weather, run_start(plan.spec), plan.spec.run.length_s);
  if (!sun) sun = sunlit_house(plan.spec, shape, signal);
  return std::make_shared<SiteTable>(plan.spec, shape, signal, standard_pressure_pa(plan.spec.site.altitude_m),
                                     std::move(sun));
}

}  // namespace noonhouse
