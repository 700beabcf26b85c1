// SPDX-License-Identifier: Apache-2.0
// Long because one invented record shows every kind of line that the comparison and the page must lay out.
#pragma once
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "tools/record/run_record.hpp"

/// Run records whose every number is INVENTED, from plain formulas: for tests of what reads records
/// (comparison, report), never for tests of physics. No simulator was asked.
namespace noonhouse::invented {

struct Choice {
  std::string plan = "mist at noon";
  double days = 7.0;
  double step_s = 600.0;
  double cooling_k = 6.0;        ///< how far the plan takes the top of the day down [K]
  double water_a_day_kg = 30.0;  ///< what it draws [kg]
  double tank_start_kg = 260.0;
  double load_w = 20.0;
};

inline double day_wave(double time_s, double peak_hour) {
  return std::cos(2.0 * std::numbers::pi * (time_s / 3600.0 - peak_hour) / 24.0);
}
/// Each invented day is a little hotter than the one before.
inline double outdoor_k(double t) { return 292.15 + 0.7 * t / 86400.0 + 9.0 * day_wave(t, 15.0); }
inline double sun_w_m2(double t) { return std::max(0.0, 950.0 * day_wave(t, 12.5)); }
inline double air_k(const Choice& c, double t, double height_m, int bay) {
  const double sun = sun_w_m2(t) / 950.0;
  return outdoor_k(t) + sun * (2.0 + 4.5 * height_m + 1.5 * bay - c.cooling_k);
}

struct Plant {
  const char *name, *kind, *place;
  int bay;
  double height_m, harm_k, lethal_k, cold_k;
};
inline const std::vector<Plant>& plants() {
  static const std::vector<Plant> list{{"lettuce", "leafy", "bench A", 0, 0.8, 305.15, 313.15, 273.15},
                                       {"tomato", "fruiting", "bed", 0, 1.2, 311.15, 318.15, 278.15},
                                       {"basil", "leafy", "bench B", 1, 0.8, 309.15, 316.15, 281.15},
                                       {"orchid", "hanging", "rail", 1, 2.2, 308.15, 315.15, 286.15},
                                       {"aloe", "succulent", "shelf", 1, 1.8, 321.15, 328.15, 276.15}};
  return list;
}
inline double tissue_k(const Choice& c, const Plant& p, double t) {
  return air_k(c, t - 1800.0, p.height_m, p.bay) + 1.2 * sun_w_m2(t) / 950.0;
}

inline double tank_kg(const Choice& c, double t) {
  return std::max(20.0, c.tank_start_kg - c.water_a_day_kg * t / 86400.0);
}
inline double battery_j(const Choice& c, double t) {
  const double wave = 0.62 + 0.22 * day_wave(t, 16.0) - 0.03 * (c.load_w / 20.0) * t / 86400.0;
  return 3.6e6 * std::clamp(wave, 0.1, 1.0);
}

template <class Function>
void add_series(RunRecord& r, const std::string& name, const std::string& long_name, const std::string& units,
                const std::vector<std::string>& axes, std::size_t per_time, Function value) {
  RecordSeries s;
  s.name = name;
  s.long_name = long_name;
  s.units = units;
  s.axes = axes;
  for (const double t : r.time_s) {
    for (std::size_t i = 0; i < per_time; ++i) s.values.push_back(value(t, i));
  }
  r.series.push_back(std::move(s));
}

inline const std::vector<double>& heights_m() {
  static const std::vector<double> list{0.2, 0.7, 1.2, 1.7, 2.2};
  return list;
}

inline void fill_series(RunRecord& r, const Choice& c) {
  r.axes = {{"bay", "bay of the house", {"front bay", "back bay"}, {}, ""},
            {"level", "air layer, counted from the floor", {"1", "2", "3", "4", "5"}, heights_m(), "m"},
            {"plant", "plant group", {}, {}, ""},
            {"device", "device", {"mist", "fan"}, {}, ""}};
  for (const Plant& p : plants()) r.axes[2].labels.emplace_back(p.name);
  const std::size_t levels = heights_m().size();
  add_series(r, "air_temperature", "air temperature", "K", {"bay", "level"}, 2 * levels, [&](double t, std::size_t i) {
    return air_k(c, t, heights_m()[i % levels], static_cast<int>(i / levels));
  });
  add_series(r, "air_relative_humidity", "relative humidity", "1", {"bay", "level"}, 2 * levels,
             [&](double t, std::size_t) { return 0.55 - 0.2 * day_wave(t, 15.0); });
  add_series(r, "tissue_temperature", "plant tissue temperature", "K", {"plant"}, plants().size(),
             [&](double t, std::size_t i) { return tissue_k(c, plants()[i], t); });
  add_series(r, "tank_water", "water in the tank", "kg", {}, 1, [&](double t, std::size_t) { return tank_kg(c, t); });
  add_series(r, "battery_charge", "charge of the battery", "J", {}, 1,
             [&](double t, std::size_t) { return battery_j(c, t); });
  add_series(r, "battery_share", "charge of the battery, a share of what can be used", "1", {}, 1,
             [&](double t, std::size_t) { return battery_j(c, t) / 3.6e6; });
  add_series(r, "outdoor_temperature", "outdoor air temperature", "K", {}, 1,
             [](double t, std::size_t) { return outdoor_k(t); });
  add_series(r, "outdoor_global", "global sun on the flat", "W m-2", {}, 1,
             [](double t, std::size_t) { return sun_w_m2(t); });
}

inline void fill_plants(RunRecord& r, const Choice& c) {
  for (const Plant& p : plants()) {
    PlantOutcome o;
    o.name = p.name, o.kind = p.kind, o.place = p.place, o.bay = p.bay == 0 ? "front bay" : "back bay";
    o.height_m = p.height_m, o.harm_above_k = p.harm_k, o.lethal_above_k = p.lethal_k, o.harm_below_k = p.cold_k;
    o.lowest_tissue_k = 1e9, o.peak_air_k = 0.0;
    for (const double t : r.time_s) {
      const double k = tissue_k(c, p, t);
      if (k > o.peak_tissue_k) o.peak_tissue_k = k, o.peak_tissue_time_s = t;
      o.lowest_tissue_k = std::min(o.lowest_tissue_k, k);
      o.peak_air_k = std::max(o.peak_air_k, air_k(c, t, p.height_m, p.bay));
      o.hours_beyond += k > p.harm_k ? c.step_s / 3600.0 : 0.0;
      o.hours_lethal += k > p.lethal_k ? c.step_s / 3600.0 : 0.0;
      o.degree_hours_beyond += std::max(0.0, k - p.harm_k) * c.step_s / 3600.0;
    }
    o.longest_spell_h = o.hours_beyond / 3.0, o.daily_light_mol_m2 = 18.0;
    o.outcome = o.hours_lethal > 2.0    ? "lost"
                : o.hours_beyond > 12.0 ? "harmed"
                : o.hours_beyond > 0    ? "strained"
                                        : "kept";
    if (o.outcome != "kept") o.reason = "too hot for too long in the afternoons";
    r.plants.push_back(o);
  }
}

inline void fill_levels(RunRecord& r, const Choice& c) {
  for (int bay = 0; bay < 2; ++bay) {
    for (std::size_t i = 0; i < heights_m().size(); ++i) {
      LevelOutcome level{bay == 0 ? "front bay" : "back bay", static_cast<int>(i), heights_m()[i]};
      for (const double t : r.time_s) {
        const double k = air_k(c, t, heights_m()[i], bay);
        if (k > level.peak_k) level.peak_k = k, level.peak_time_s = t;
        level.mean_k += k / static_cast<double>(r.time_s.size());
      }
      r.levels.push_back(level);
    }
  }
}

inline void fill_events(RunRecord& r, const Choice& c, bool runs_dry) {
  const auto add = [&](double t, std::int64_t cause, const char* kind, const char* subject, const char* what) {
    r.events.push_back({static_cast<std::int64_t>(r.events.size()), cause, t, kind, subject, what});
    return r.events.back().id;
  };
  const std::int64_t rainless = add(0.0, -1, "weather", "sky", "no rain since day 1");
  for (double day = 0.0; day < c.days && c.water_a_day_kg > 0.0; day += 1.0) {
    const std::int64_t hot = add(day * 86400.0 + 10.5 * 3600.0, -1, "action", "bench A sensor", "30 degC reached");
    add(day * 86400.0 + 10.5 * 3600.0, hot, "action", "mist", "mist on");
    add(day * 86400.0 + 17.0 * 3600.0, -1, "action", "mist", "mist off");
    add(day * 86400.0 + 19.0 * 3600.0, -1, "people", "grower", "looked in");
  }
  if (!runs_dry) return;
  const double dry_s = (c.tank_start_kg - 20.0) / c.water_a_day_kg * 86400.0;
  const std::int64_t low = add(dry_s, rainless, "warning", "tank", "tank at its low mark");
  const std::int64_t pump = add(dry_s, low, "failure", "pump", "pump cut out");
  add(dry_s + 60.0, pump, "failure", "mist", "mist stopped");
  r.water.first_dry_s = dry_s;
  r.failures.push_back({dry_s, "failure", "pump", "pump cut out", {"tank at its low mark", "no rain since day 1"}});
  r.failures.push_back({dry_s + 60.0,
                        "failure",
                        "mist",
                        "mist stopped",
                        {"pump cut out", "tank at its low mark", "no rain since day 1"}});
}

/// Each hour's sun, shared out in fixed parts; what the house keeps by day comes back by night.
inline void fill_ledger(RunRecord& r, const Choice& c) {
  const double mist = c.water_a_day_kg > 0.0 ? 0.2 : 0.0;
  for (double t = 0.0; t < r.duration_s; t += 3600.0) {
    const double sun = 36.0 * 3600.0 * 0.5 * sun_w_m2(t + 1800.0), night = sun > 0.0 ? 0.0 : 2e6;
    LedgerHour h;
    h.begin_s = t, h.end_s = std::min(t + 3600.0, r.duration_s), h.sun_j = sun;
    h.vents_j = (0.44 - mist) * sun, h.mist_j = mist * sun;
    h.surfaces_j = 0.06 * sun - 0.1 * night, h.transpiration_j = 0.1 * sun, h.cover_j = 0.15 * sun + 0.4 * night;
    h.sky_j = 0.05 * sun + 0.6 * night, h.ground_j = 0.12 * sun - 0.7 * night, h.water_j = 0.01 * sun;
    h.kept_j = 0.07 * sun - 0.2 * night;
    r.ledger.push_back(h);
  }
}

/// One whole record of an invented plan.
inline RunRecord make_record(const Choice& c = {}) {
  RunRecord r;
  r.scenario = "invented-week", r.title = "An invented hot week", r.plan = c.plan, r.about = "Invented for tests.";
  r.start = "2025-07-14 00:00:00", r.utc_offset = "-07:00";
  r.latitude_deg = 40.0, r.longitude_deg = -105.0, r.altitude_m = 1600.0, r.duration_s = c.days * 86400.0;
  for (double t = 0.0; t <= r.duration_s; t += c.step_s) r.time_s.push_back(t);
  fill_series(r, c);
  fill_plants(r, c);
  fill_levels(r, c);
  const double drawn = c.tank_start_kg - tank_kg(c, r.duration_s);
  r.water = {300.0, c.tank_start_kg, tank_kg(c, r.duration_s), tank_kg(c, r.duration_s), 0.0, 0.0, drawn,
             0.0,   0.9 * drawn};
  const bool runs_dry = c.water_a_day_kg * c.days > c.tank_start_kg - 20.0;
  if (drawn > 0.0 && !runs_dry) r.water.days_left = (r.water.end_kg - 20.0) / c.water_a_day_kg;
  r.energy.capacity_j = 3.6e6, r.energy.start_j = battery_j(c, 0.0), r.energy.end_j = battery_j(c, r.duration_s);
  r.energy.lowest_j = 1e18;
  for (const double t : r.time_s) {
    if (battery_j(c, t) < r.energy.lowest_j) r.energy.lowest_j = battery_j(c, t), r.energy.lowest_time_s = t;
  }
  r.energy.lowest_share = r.energy.lowest_j / r.energy.capacity_j;
  r.energy.loads_j = c.load_w * r.duration_s, r.energy.panel_j = 1.2 * r.energy.loads_j;
  r.energy.days_left = c.load_w > 0.0 ? 2.5 : kNotHappened;
  r.devices = {{"mist", c.water_a_day_kg > 0.0 ? static_cast<int>(c.days) : 0, 6.5 * c.days}, {"fan", 3, 9.0}};
  r.airing = {45.0 / 3600.0, 0.5 / 3600.0, 4.0 * 3600.0, 120.0 / 3600.0, 14.0 * 3600.0, 96.5 / 3600.0};
  r.ways = {{"ridge vent", 4.5 / 3600.0, 43.0 / 3600.0}, {"side vent", 40.5 / 3600.0, 2.0 / 3600.0}};
  fill_events(r, c, runs_dry);
  fill_ledger(r, c);
  r.closure = {1e-13, 2e-15, 3e-14, 5e8, drawn, 1e7};
  r.counts = {12000, 40, static_cast<std::int64_t>(r.events.size())};
  r.provenance = {"0.1.0", "invented.yaml", "5c1e", "77aa", 1};
  r.scenario_text = "scenario: invented-week\n# nothing here was measured\n";
  r.cautions = {"A closed house in the sun can be too hot to work in."};
  return r;
}

/// Three plans, given worst first: nothing done, a mist that runs dry, and one that keeps more.
inline std::vector<RunRecord> three_plans() {
  return {make_record({"nothing", 7.0, 600.0, 0.0, 0.0, 260.0, 0.0}),
          make_record({"mist only", 7.0, 600.0, 8.0, 60.0, 260.0, 25.0}),
          make_record({"shade and mist", 7.0, 600.0, 13.0, 30.0, 260.0, 15.0})};
}

}  // namespace noonhouse::invented
