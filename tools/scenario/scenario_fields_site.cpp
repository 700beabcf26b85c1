// SPDX-License-Identifier: Apache-2.0
// Fields of the run, the site and its weather.

#include "models/properties/constants.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

/// Temperature and humidity of an invented year.
void air_fields(FieldVisitor& v, InventedYear& s) {
  const auto temperature = [&v](const char* name, double& value, const char* text, const char* about) {
    v.quantity(name, value, Dimension::temperature,
               {.minimum = 223.15, .maximum = 318.15, .default_text = text, .about = about});
  };
  const auto difference = [&v](const char* name, double& value, double maximum, const char* text, const char* about) {
    v.quantity(name, value, Dimension::temperature_difference,
               {.minimum = 0, .maximum = maximum, .default_text = text, .about = about});
  };
  temperature("warmest_month_mean", s.warmest_month_mean_k, "19 degC",
              "mean temperature of July (January in the south)");
  temperature("coldest_month_mean", s.coldest_month_mean_k, "0.5 degC",
              "mean temperature of January (July in the south)");
  difference("summer_daily_swing", s.summer_daily_swing_k, 30, "13 K",
             "highest less lowest temperature of a clear day at midsummer");
  difference("winter_daily_swing", s.winter_daily_swing_k, 30, "7 K",
             "highest less lowest temperature of a clear day at midwinter");
  difference("weather_swing", s.weather_swing_k, 10, "3.5 K",
             "standard deviation of a day's mean temperature from its season's; such spells last about three days");
  difference("summer_dew_gap", s.summer_dew_gap_k, 20, "2.5 K",
             "dew point below the temperature at dawn in summer, mean of days without rain");
  difference("winter_dew_gap", s.winter_dew_gap_k, 20, "1 K",
             "dew point below the temperature at dawn in winter, mean of days without rain");
}
}  // namespace

void fields(FieldVisitor& v, ScenarioSpec& s) {
  v.text("title", s.title, {.about = "one line that names the scenario"});
  v.text("about", s.about, {.default_text = "", .about = "what it is for and where its data come from"});
  v.group("run", s.run, {.about = "what is run and how finely", .example = "run: { start: 2025-07-14 }"});
  v.group("site", s.site,
          {.about = "where the house stands",
           .example = "site: { latitude: 41 deg, longitude: 16 deg, altitude: 120 m, utc_offset: \"+01:00\", "
                      "deep_soil: 17 degC }"});
  v.group("weather", s.weather,
          {.about = "where the weather comes from", .example = "weather: { kind: invented heatwave }"});
  v.named("obstacles", s.obstacles, {.about = "what stands around the house and shades it"});
  v.group(
      "house", s.house,
      {.about = "the shell, its bays and its floor",
       .example = "house: { length: 6 m, width: 3 m, eaves: 1.8 m, ridge: 2.6 m, bays: { whole: { share: 100 % } } }"});
  v.named("openings", s.openings, {.about = "vents, louvres and doors"});
  v.named("fans", s.fans, {.about = "exhaust fans with their inlets"});
  v.named("mist_lines", s.mist_lines, {.about = "nozzle lines, each with its pump"});
  v.named("pads", s.pads, {.about = "wet pads that fans draw outdoor air through, each with its pump"});
  v.named("shades", s.shades, {.about = "shade cloths, outside or inside"});
  v.named("benches", s.benches, {.about = "benches, by bay and height"});
  v.named("plant_kinds", s.plant_kinds, {.about = "kinds of plants with their limits"});
  v.named("plants", s.plants, {.about = "groups of plants and where they stand"});
  v.named("drip_lines", s.drip_lines, {.about = "lines of drippers from the tank into pots"});
  v.named("sensors", s.sensors, {.about = "instruments that controls read"});
  v.named("thermostats", s.thermostats, {.about = "on/off controls with two limits"});
  v.named("humidistats", s.humidistats, {.about = "on/off controls of humidity"});
  v.named("deficit_controls", s.deficit_controls, {.about = "on/off controls of the air's vapour pressure deficit"});
  v.named("staged_controls", s.staged_controls, {.about = "controls whose stages join one after the other"});
  v.named("proportional_controls", s.proportional_controls, {.about = "controls that open or turn up by degrees"});
  v.named("timers", s.timers, {.about = "controls by the clock"});
  v.named("rules", s.rules, {.about = "states of affairs that forbid or call devices, or are a sign for the grower"});
  v.named("gutters", s.gutters, {.about = "what drains the roof into the tank; absent: a plain gutter on each slope"});
  v.group("tank", s.tank,
          {.about = "the rain water tank",
           .example = "tank: { capacity: 600 L, starts_with: 300 L, low_mark: 20 L, restart_mark: 40 L }"});
  v.named("refills", s.refills, {.about = "water brought when the tank is low"});
  v.named("pumps", s.pumps, {.about = "pumps with their pipes, for mist lines that name one"});
  v.group("power", s.power, {.about = "panel and battery", .example = "power: { panel_area: 1 m2, battery: 600 Wh }"});
  v.group("grower", s.grower, {.about = "when the grower comes and does what"});
  v.named("hazards", s.hazards, {.about = "bad weather put into the run"});
  v.named("faults", s.faults,
          {.about = "failures put into the run, each at its time; of several at once on one part the newest that is "
                    "not put right yet counts, leaks and misreadings add up"});
  v.group("prices", s.prices, {.about = "what parts cost; nothing given: cost is not told"});
}

void fields(FieldVisitor& v, RunSpec& s) {
  v.date("start", s.start, {.about = "first day; the run starts at its midnight, local standard time"});
  v.quantity("length", s.length_s, Dimension::time,
             {.minimum = 60, .maximum = 40000.0 * 86400.0, .default_text = "7 d", .about = "how long the run lasts"});
  v.quantity("warm_up", s.warm_up_s, Dimension::time,
             {.minimum = 0,
              .maximum = 370.0 * 86400.0,
              .default_text = "4 d",
              .about = "the first day's weather is run this long beforehand, so that house and soil start warm"});
  v.quantity("record_every", s.record_every_s, Dimension::time,
             {.minimum = 1, .maximum = 86400, .default_text = "10 min", .about = "spacing of the recorded series"});
  v.quantity(
      "sun_every", s.sun_every_s, Dimension::time,
      {.minimum = 60,
       .maximum = 3600,
       .default_text = "15 min",
       .about = "spacing at which sun and weather are computed, straight lines between; within gusts and cloudbursts "
                "also at instants of their own"});
  v.quantity(
      "tolerance", s.tolerance_k, Dimension::temperature_difference,
      {.minimum = 1e-6, .maximum = 1, .default_text = "0.001 K", .about = "error of temperature allowed in one step"});
  v.integer("seed", s.seed,
            {.minimum = 0, .maximum = 4294967295, .default_text = "1", .about = "seed of invented variation"});
}

void fields(FieldVisitor& v, SiteSpec& s) {
  v.quantity("latitude", s.latitude_rad, Dimension::angle,
             {.minimum = -kTurn / 4, .maximum = kTurn / 4, .about = "north positive"});
  v.quantity("longitude", s.longitude_rad, Dimension::angle,
             {.minimum = -kTurn / 2, .maximum = kTurn / 2, .about = "east positive"});
  v.quantity("altitude", s.altitude_m, Dimension::length,
             {.minimum = -430, .maximum = 5000, .about = "above sea level; sets the air's pressure and density"});
  v.utc_offset("utc_offset", s.utc_offset_s, {.about = "local standard time ahead of UTC, no summer time"});
  v.quantity("albedo", s.albedo, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "25 %", .about = "sunlight reflected by the ground around"});
  v.quantity("wind_share", s.wind_share, Dimension::share,
             {.minimum = 0,
              .maximum = 2,
              .default_text = "60 %",
              .about = "wind at the house over the weather's wind (common practice, no source)"});
  v.number("gust_factor", s.gust_factor,
           {.minimum = 1,
            .maximum = 4,
            .default_text = "1.6",
            .about = "gusts over the wind's mean at the house (common practice, no source)"});
  v.quantity("deep_soil", s.deep_soil_k, Dimension::temperature,
             {.minimum = 248.15, .maximum = 323.15, .about = "yearly mean temperature of the ground"});
  v.quantity(
      "soil_swing", s.soil_swing_k, Dimension::temperature_difference,
      {.minimum = 0,
       .maximum = 40,
       .default_text = "0 K",
       .about = "half the difference of the warmest and the coldest ground surface in a year; 0 K: as in deep soil"});
  v.integer("coldest_day", s.coldest_day,
            {.minimum = 1,
             .maximum = 366,
             .default_text = s.latitude_rad < 0.0 ? "210" : "25",
             .about = "day of the year when the ground's surface is coldest"});
  v.choice("clear_sky_by", s.sky, {{"dew point", SkyForm::dew_point}, {"vapour pressure", SkyForm::vapour_pressure}},
           {.default_text = "dew point",
            .about = "what tells how a clear sky radiates: Berdahl & Martin 1984, or Brutsaert 1975 by altitude"});
  v.choice(
      "surroundings", s.surroundings,
      {{"open", Surroundings::open},
       {"half as high", Surroundings::half_height},
       {"as high", Surroundings::full_height}},
      {.default_text = "half as high", .about = "what stands around the house and shelters it from wind pressure"});
  v.choice("wind_film", s.wind_film, {{"Watmuff", WindFilm::watmuff}, {"ISO 6946", WindFilm::iso}},
           {.default_text = "Watmuff", .about = "how wind takes heat off the cover: whose published straight line"});
}

void fields(FieldVisitor& v, WeatherSpec& s) {
  v.alternatives("kind", s.source, {"invented heatwave", "invented year", "typical year file", "plain weather file"},
                 {.about = "made by one of the project's own generators, or read from a file"});
}

void fields(FieldVisitor& v, InventedHeatwave& s) {
  const auto temperature = [&v](const char* name, double& value, const char* text, const char* about) {
    v.quantity(name, value, Dimension::temperature,
               {.minimum = 218.15, .maximum = 338.15, .default_text = text, .about = about});
  };
  temperature("first_day_high", s.first_day_high_k, "33 degC", "highest temperature of day 1");
  temperature("peak_high", s.peak_high_k, "40 degC", "highest temperature of the hottest day");
  temperature("last_day_high", s.last_day_high_k, "36 degC", "highest temperature of the last day");
  v.integer("peak_day", s.peak_day,
            {.minimum = 1, .maximum = 40000, .default_text = "5", .about = "which day is hottest"});
  temperature("first_night_low", s.first_night_low_k, "16 degC", "lowest temperature of the first morning");
  temperature("peak_night_low", s.peak_night_low_k, "21 degC", "lowest temperature before the hottest day");
  temperature("dew_point", s.dew_point_k, "6 degC", "dew point of the dry air");
  v.quantity("wind_by_day", s.wind_day_m_s, Dimension::speed,
             {.minimum = 0, .maximum = 40, .default_text = "3.5 m/s", .about = "wind in mid-afternoon"});
  v.quantity("wind_by_night", s.wind_night_m_s, Dimension::speed,
             {.minimum = 0, .maximum = 40, .default_text = "1 m/s", .about = "wind before sunrise"});
  v.number("turbidity", s.turbidity,
           {.minimum = 1, .maximum = 10, .default_text = "3.5", .about = "Linke turbidity of clear days, air mass 2"});
  v.integer("dust_day", s.dust_day,
            {.minimum = 0, .maximum = 40000, .default_text = "0", .about = "day with a dust-hazy sky, 0 none"});
  v.number("dust_strength", s.dust_strength,
           {.minimum = 0, .maximum = 5, .default_text = "0.5", .about = "vertical optical depth of the dust"});
  v.integer("storm_day", s.storm_day,
            {.minimum = 0, .maximum = 40000, .default_text = "0", .about = "day of the thunderstorm, 0 none"});
  v.time_of_day("storm_start", s.storm_start_s, {.default_text = "17:00", .about = "when its rain begins"});
  v.quantity("storm_length", s.storm_length_s, Dimension::time,
             {.minimum = 600, .maximum = 86400, .default_text = "40 min", .about = "how long it rains"});
  v.quantity("storm_rain", s.storm_rain_m, Dimension::rain_depth,
             {.minimum = 0, .maximum = 0.5, .default_text = "12 mm", .about = "its rain in all"});
  v.quantity("storm_gust", s.storm_gust_m_s, Dimension::speed,
             {.minimum = 0, .maximum = 60, .default_text = "16 m/s", .about = "wind of its gust front"});
}

void fields(FieldVisitor& v, InventedYear& s) {
  air_fields(v, s);
  v.quantity("rain_a_year", s.rain_a_year_m, Dimension::rain_depth,
             {.minimum = 0, .maximum = 20, .default_text = "700 mm", .about = "rain of each calendar year"});
  v.integer("rain_days_a_year", s.rain_days_a_year,
            {.minimum = 0,
             .maximum = 365,
             .default_text = "120",
             .about = "days of a calendar year with 1 mm of rain or more"});
  v.choice(
      "wetter_season", s.wetter_season,
      {{"winter", Season::winter}, {"spring", Season::spring}, {"summer", Season::summer}, {"autumn", Season::autumn}},
      {.default_text = "summer", .about = "the middle of the half year with more rain days"});
  const auto share = [&v](const char* name, double& value, const char* text, const char* about) {
    v.quantity(name, value, Dimension::share, {.minimum = 0, .maximum = 1, .default_text = text, .about = about});
  };
  share("wetter_share", s.wetter_share, "55 %", "share of the rain days that are in that half year");
  share("cloudy_days", s.cloudy_days, "60 %", "share of days in cloudy spells; rain falls on such days only");
  share("clear_cover", s.clear_cover, "20 %", "cloud cover of clear spells");
  share("cloudy_cover", s.cloudy_cover, "90 %", "cloud cover of cloudy spells");
  v.quantity("wind_by_day", s.wind_day_m_s, Dimension::speed,
             {.minimum = 0, .maximum = 40, .default_text = "3 m/s", .about = "mean wind in mid-afternoon"});
  v.quantity("wind_by_night", s.wind_night_m_s, Dimension::speed,
             {.minimum = 0, .maximum = 40, .default_text = "1.5 m/s", .about = "mean wind before sunrise"});
  v.quantity("wind_from", s.wind_from_rad, Dimension::angle,
             {.minimum = 0,
              .maximum = kTurn,
              .default_text = "240 deg",
              .about = "where the wind mostly comes from, clockwise from north"});
  v.number("turbidity", s.turbidity,
           {.minimum = 1, .maximum = 10, .default_text = "3.5", .about = "Linke turbidity of clear air, air mass 2"});
}

void fields(FieldVisitor& v, TypicalYearFile& s) {
  v.text("file", s.file,
         {.about = "CSV of a typical meteorological year (TMY3 columns), beside the scenario or a full path"});
}

void fields(FieldVisitor& v, PlainWeatherFile& s) {
  v.text("file", s.file, {.about = "plain weather table with units in its header line"});
}

void fields(FieldVisitor& v, PlanSpec& s) {
  v.text("about", s.about, {.default_text = "", .about = "the plan in one line"});
  v.texts("in_service", s.in_service,
          {.required = true,
           .about = "openings, fans, lines, pads, shades, controls and timers that this plan uses; others rest"});
  v.texts("rules_at_rest", s.rules_at_rest,
          {.about = "rules that do not hold in this plan, with what the grower does on them; all others hold"});
}

}  // namespace noonhouse
