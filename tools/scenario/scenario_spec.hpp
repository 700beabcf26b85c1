// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "models/air/wind_pressure.hpp"
#include "models/weather/sky_light.hpp"
#include "tools/scenario/field_options.hpp"
#include "tools/scenario/house_spec.hpp"
#include "tools/scenario/plant_spec.hpp"
#include "tools/units/clock_text.hpp"
#include "tools/weather_file/year_generator.hpp"

/// The parameters of a scenario as plain structs: SI inside, every default in the field lists beside them
/// (scenario_fields_*.cpp) and nowhere else.
namespace noonhouse {

struct RunSpec {
  std::chrono::year_month_day start;
  double length_s = 0.0, record_every_s = 0.0, sun_every_s = 0.0, tolerance_k = 0.0, warm_up_s = 0.0;
  std::int64_t seed = 1;
};

enum class WindFilm { watmuff, iso };
struct SiteSpec {
  double latitude_rad = 0.0, longitude_rad = 0.0, altitude_m = 0.0, utc_offset_s = 0.0, albedo = 0.0;
  double wind_share = 0.0, deep_soil_k = 0.0, soil_swing_k = 0.0;
  int coldest_day = 0;
  SkyForm sky = SkyForm::dew_point;
  WindFilm wind_film = WindFilm::watmuff;
  Surroundings surroundings = Surroundings::half_height;
};

/// Weather that the project invents.
struct InventedHeatwave {
  double first_day_high_k = 0.0, peak_high_k = 0.0, last_day_high_k = 0.0;
  double first_night_low_k = 0.0, peak_night_low_k = 0.0, dew_point_k = 0.0;
  double wind_day_m_s = 0.0, wind_night_m_s = 0.0;
  double turbidity = 0.0, dust_strength = 0.0;
  double storm_start_s = 0.0, storm_length_s = 0.0, storm_rain_m = 0.0, storm_gust_m_s = 0.0;
  int peak_day = 0, dust_day = 0, storm_day = 0;
};
struct InventedYear {
  double warmest_month_mean_k = 0.0, coldest_month_mean_k = 0.0;
  double summer_daily_swing_k = 0.0, winter_daily_swing_k = 0.0, weather_swing_k = 0.0;
  double summer_dew_gap_k = 0.0, winter_dew_gap_k = 0.0;
  double rain_a_year_m = 0.0, wetter_share = 0.0;
  double cloudy_days = 0.0, clear_cover = 0.0, cloudy_cover = 0.0;
  double wind_day_m_s = 0.0, wind_night_m_s = 0.0, wind_from_rad = 0.0;
  double turbidity = 0.0;
  int rain_days_a_year = 0;
  Season wetter_season = Season::summer;
};
struct TypicalYearFile {
  std::string file;
};
struct PlainWeatherFile {
  std::string file;
};
struct WeatherSpec {
  std::variant<InventedHeatwave, InventedYear, TypicalYearFile, PlainWeatherFile> source;
};

enum class Measures { temperature, humidity };
struct SensorSpec {
  Measures measures = Measures::temperature;
  std::string bay;
  double height_m = 0.0, time_constant_s = 0.0;
};
struct ThermostatSpec {
  std::string sensor;
  double starts_at_k = 0.0, stops_at_k = 0.0, least_on_s = 0.0, least_off_s = 0.0, from_s = 0.0, until_s = 0.0;
  std::vector<std::string> drives;
};
struct TimerSpec {
  double from_s = 0.0, until_s = 0.0, on_s = 0.0, every_s = 0.0;
  std::vector<std::string> drives;
};

/// A line of drippers from the tank into pots.
struct DripSpec {
  std::vector<std::string> waters;
  double flow_m3_s = 0.0, pump_power_w = 0.0;
};

struct TankSpec {
  double capacity_m3 = 0.0, start_m3 = 0.0, low_m3 = 0.0, restart_m3 = 0.0, runoff_coefficient = 0.0;
  double wall_area_m2 = 0.0, wall_u_w_m2_k = 0.0;
};
struct PowerSpec {
  double panel_area_m2 = 0.0, panel_efficiency = 0.0, panel_slope_rad = 0.0, panel_faces_rad = 0.0;
  double panel_derate_per_k = 0.0, panel_noct_k = 0.0;
  double battery_j = 0.0, battery_start = 0.0, cut_off = 0.0, reconnect = 0.0;
  double charge_efficiency = 0.0, discharge_efficiency = 0.0, standby_w = 0.0;
};

struct VisitSpec {
  double at_s = 0.0;
  std::vector<std::string> waters;
  std::vector<std::string> opens, shuts;
};
struct GrowerSpec {
  double pours_to = 0.0;
  std::vector<Named<VisitSpec>> visits;
};

struct ScenarioSpec {
  std::string title, about;
  RunSpec run;
  SiteSpec site;
  WeatherSpec weather;
  std::vector<Named<ObstacleSpec>> obstacles;
  HouseSpec house;
  std::vector<Named<OpeningSpec>> openings;
  std::vector<Named<FanSpec>> fans;
  std::vector<Named<MistSpec>> mist_lines;
  std::vector<Named<PadSpec>> pads;
  std::vector<Named<ShadeSpec>> shades;
  std::vector<Named<BenchSpec>> benches;
  std::vector<Named<DripSpec>> drip_lines;
  std::vector<Named<PlantKindSpec>> plant_kinds;
  std::vector<Named<PlantGroupSpec>> plants;
  std::vector<Named<SensorSpec>> sensors;
  std::vector<Named<ThermostatSpec>> thermostats;
  std::vector<Named<TimerSpec>> timers;
  TankSpec tank;
  PowerSpec power;
  GrowerSpec grower;
};

/// What a plan says beside the changes it makes to the base.
struct PlanSpec {
  std::string about;
  std::vector<std::string> in_service;
};

}  // namespace noonhouse
