// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "models/air/wind_pressure.hpp"
#include "models/weather/sky_light.hpp"
#include "tools/scenario/control_spec.hpp"
#include "tools/scenario/field_options.hpp"
#include "tools/scenario/hazard_spec.hpp"
#include "tools/scenario/house_spec.hpp"
#include "tools/scenario/plant_spec.hpp"
#include "tools/scenario/supply_spec.hpp"
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
  double wind_share = 0.0, gust_factor = 1.0, deep_soil_k = 0.0, soil_swing_k = 0.0;
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
  std::vector<Named<HumidistatSpec>> humidistats;
  std::vector<Named<DeficitControlSpec>> deficit_controls;
  std::vector<Named<StagedSpec>> staged_controls;
  std::vector<Named<ProportionalSpec>> proportional_controls;
  std::vector<Named<TimerSpec>> timers;
  std::vector<Named<RuleSpec>> rules;
  std::vector<Named<GutterSpec>> gutters;
  TankSpec tank;
  std::vector<Named<RefillSpec>> refills;
  std::vector<Named<PumpSpec>> pumps;
  PowerSpec power;
  GrowerSpec grower;
  std::vector<Named<WeatherHazardSpec>> hazards;
  std::vector<Named<FaultSpec>> faults;
  PricesSpec prices;
};

/// What a plan says beside the changes it makes to the base.
struct PlanSpec {
  std::string about;
  std::vector<std::string> in_service;
  std::vector<std::string> rules_at_rest;
};

}  // namespace noonhouse
