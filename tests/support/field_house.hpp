// SPDX-License-Identifier: Apache-2.0
// Long because a whole house of the field cases is put together in one place.
#pragma once
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/run/run.hpp"
#include "tests/support/run_marks.hpp"
#include "tools/scenario/assemble.hpp"

/// Whole houses of invented scenarios under one invented day of weather, run as a person would run them, to be held
/// against what was measured in real ones.
namespace noonhouse::field {

/// A bright day: temperature from low at 03:00 to high at 15:00, sun a half sine from 05:00 to 19:00.
struct Day {
  std::string date = "2025-07-05";
  double latitude_deg = 38.0, altitude_m = 20.0;
  double low_c = 20.0, high_c = 32.0, dew_point_c = 14.0;
  double noon_w_m2 = 900.0, wind_m_s = 2.0;
};

inline std::string weather_text(const Day& day) {
  std::string text = fmt::format(
      "# noonhouse weather 1\n# name: Field day\n# origin: invented for this test\n# invented: yes\n"
      "# latitude: {} deg\n# longitude: 0 deg\n# altitude: {} m\n# utc_offset: 0 h\n# step: 1 h\n"
      "time,temperature[degC],dew_point[degC],global[W/m2],wind[m/s]\n",
      day.latitude_deg, day.altitude_m);
  for (int hour = 0; hour < 24; ++hour) {
    const double swing = 0.5 * (1.0 - std::cos(kPi * (hour - 3.0) / 12.0));
    const double sun = hour > 5 && hour < 19 ? day.noon_w_m2 * std::sin(kPi * (hour - 5.0) / 14.0) : 0.0;
    text += fmt::format("{} {:02}:00,{:.2f},{},{:.1f},{}\n", day.date, hour,
                        day.low_c + (day.high_c - day.low_c) * swing, day.dew_point_c, sun, day.wind_m_s);
  }
  return text;
}

/// Run, site, weather, water and power of all field houses: neither ever runs out. Only house and devices differ.
inline std::string scenario_text(const Day& day, const std::string& house_and_devices) {
  return fmt::format(
             "title: Field house\nrun:\n  start: {}\n  length: 18 h\n  warm_up: 2 d\nsite:\n  latitude: {} deg\n"
             "  longitude: 0 deg\n  altitude: {} m\n  utc_offset: \"+00:00\"\n  deep_soil: {} degC\n  wind_share: 100 "
             "%\n"
             "weather:\n  kind: plain weather file\n  file: day.csv\n",
             day.date, day.latitude_deg, day.altitude_m, 0.5 * (day.low_c + day.high_c)) +
         "tank:\n  capacity: 900 m3\n  starts_with: 800 m3\n  low_mark: 1 m3\n  restart_mark: 2 m3\n"
         "power:\n  panel_area: 10 m2\n  battery: 5000 kWh\n" +
         house_and_devices;
}

/// A folder of this process' own, with the weather in it, removed afterwards.
class WeatherFolder {
 public:
  explicit WeatherFolder(const Day& day)
      : path_(std::filesystem::temp_directory_path() / fmt::format("noonhouse_field_{}", ::getpid())) {
    std::filesystem::create_directories(path_);
    std::ofstream(path_ / "day.csv") << weather_text(day);
  }
  ~WeatherFolder() { std::filesystem::remove_all(path_); }
  WeatherFolder(const WeatherFolder&) = delete;
  WeatherFolder& operator=(const WeatherFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

/// What every flux has carried since the start [kg, J], at even marks of a run.
class CarriedMarks final : public Observer {
 public:
  explicit CarriedMarks(Tick interval) : interval_(interval) {}
  void see_start(const Stretch& stretch) override { read(stretch); }
  void see_stretch(const Stretch& stretch) override { read(stretch); }
  const std::vector<double>& at(std::size_t mark) const { return rows_.at(mark); }

 private:
  void read(const Stretch& stretch) {
    for (Tick when = interval_ * static_cast<std::int64_t>(rows_.size()); when <= stretch.end();
         when = when + interval_) {
      const auto now = stretch.carried_at(when);
      rows_.emplace_back(now.begin(), now.end());
    }
  }
  Tick interval_;
  std::vector<std::vector<double>> rows_;
};

/// A plan's house, run once, and what stood in it and went through it over hours of the day. Marks of ten minutes.
class FieldRun {
 public:
  static constexpr std::int64_t kMarksAnHour = 6;

  FieldRun(const Scenario& scenario, const PlanScenario& plan) : marks_(House{}, 10_min), carried_(10_min) {
    const WeatherSeries weather = weather_of(scenario, plan);
    assembly_ = assemble(plan, site_table(plan, weather), weather);
    marks_ = RunMarks(house(), 10_min);
    Run run(assembly_.plan);
    run.add_observer(marks_);
    run.add_observer(carried_);
    result_ = run.go();
  }

  const Assembly& assembly() const { return assembly_; }
  const House& house() const { return assembly_.plan.house; }
  const BayParts& bay(std::size_t i = 0) const { return assembly_.bays.at(i); }
  const RunMarks& marks() const { return marks_; }
  std::int64_t steps() const { return result_.steps; }

  /// Mean of a node's potential over hours of the run.
  double mean(NodeId node, int which, double from_h, double to_h) const {
    return marks_.mean(house().position(Input(node, which)), mark(from_h), mark(to_h));
  }
  /// Mean of the air of a bay by volume, of its temperature [K] or humidity ratio.
  double air(std::size_t bay_index, int which, double from_h, double to_h) const {
    const auto& layers = assembly_.shape.bays.at(bay_index).layers;
    double sum = 0.0, volume = 0.0;
    for (std::size_t i = 0; i < layers.size(); ++i) {
      sum += layers[i].volume_m3 * mean(bay(bay_index).air[i], which, from_h, to_h);
      volume += layers[i].volume_m3;
    }
    return sum / volume;
  }
  /// Air of a bay at one height.
  double layer_k(std::size_t bay_index, std::size_t layer, double from_h, double to_h) const {
    return mean(bay(bay_index).air.at(layer), 0, from_h, to_h);
  }
  /// Relative humidity of the whole house [1] and vapour pressure deficit [Pa], of its mean air.
  double relative_humidity(double from_h, double to_h) const {
    return vapour_pa(from_h, to_h) / saturation_pressure_pa(house_air(0, from_h, to_h));
  }
  double deficit_pa(double from_h, double to_h) const {
    return saturation_pressure_pa(house_air(0, from_h, to_h)) - vapour_pa(from_h, to_h);
  }
  /// Mean air of all bays by their volumes.
  double house_air(int which, double from_h, double to_h) const {
    double sum = 0.0, volume = 0.0;
    for (std::size_t b = 0; b < assembly_.bays.size(); ++b) {
      const double v = assembly_.shape.bays[b].volume_m3;
      sum += v * air(b, which, from_h, to_h);
      volume += v;
    }
    return sum / volume;
  }
  NodeId node(const std::string& name) const {
    const auto found = house().find_node(name);
    if (!found) throw std::runtime_error("no node " + name);
    return *found;
  }
  /// Mean rate of one flux [kg/s or W].
  double rate(std::size_t flux, double from_h, double to_h) const {
    return (carried_.at(mark(to_h))[flux] - carried_.at(mark(from_h))[flux]) / (3600.0 * (to_h - from_h));
  }
  /// What comes in from outdoors by all exchanges of one path whose net flow is inwards [kg/s or W].
  double flow_in(const std::string& path, Quantity quantity, double from_h, double to_h) const {
    double sum = 0.0;
    for (std::size_t f = 0; f < house().flux.size(); ++f) {
      const FluxInfo& info = house().flux[f];
      if (info.quantity != quantity || house().exchanges[static_cast<std::size_t>(info.exchange)].path != path)
        continue;
      sum += std::max(0.0, -rate(f, from_h, to_h));
    }
    return sum;
  }
  /// Mean rate at which water leaves a store [kg/s].
  double water_lost(NodeId from, double from_h, double to_h) const {
    const int at = house().position(Input(from, 1));
    return (marks_.value(mark(from_h), at) - marks_.value(mark(to_h), at)) / (3600.0 * (to_h - from_h));
  }

 private:
  static std::size_t mark(double hour) { return static_cast<std::size_t>(std::lround(hour * kMarksAnHour)); }
  double vapour_pa(double from_h, double to_h) const {
    return vapour_pressure_pa(house_air(1, from_h, to_h), assembly_.pressure_pa);
  }
  Assembly assembly_;
  RunMarks marks_;
  CarriedMarks carried_;
  RunResult result_;
};

/// A closed crop on a low bench in each bay: peppers of leaf area 3 that cover the floor but for 5 cm along the walls.
/// It takes up 77 % of the light: a crop's albedo is 0.23 [Allen et al. 1998, FAO Irrigation and Drainage Paper 56,
/// eq. 38]. Conductances and tissue: round figures, from memory.
inline std::string crop_text(const std::vector<std::string>& bays, double bay_length_m, double width_m) {
  std::string benches = "benches:\n", plants = "plants:\n";
  for (const std::string& bay : bays) {
    const double length = bay_length_m - 0.1, width = width_m - 0.1;
    benches +=
        fmt::format("  bench of {0}: {{ bay: {0}, height: 0.3 m, length: {1} m, width: {2} m }}\n", bay, length, width);
    plants +=
        fmt::format("  crop of {0}: {{ kind: pepper, place: bench of {0}, area: {1} m2, pot_water: 100 kg/m2 }}\n", bay,
                    0.99 * length * width);
  }
  return benches +
         "plant_kinds:\n  pepper:\n    leaf_area_index: 3\n    tissue: 3 kg/m2\n    absorptance: 77 %\n"
         "    most_conductance: 8 mm/s\n    harm_above: 50 degC\n    lethal_above: 60 degC\n"
         "    harm_below: 0 degC\n    lethal_below: -3 degC\n" +
         plants;
}

/// The run of a plan of house and devices under a day.
inline FieldRun run(const Day& day, const std::string& house_and_devices, const std::string& plan) {
  const WeatherFolder folder(day);
  const Scenario scenario = read_scenario_text(scenario_text(day, house_and_devices), folder.path() / "field.yaml");
  return {scenario, scenario.plan(plan)};
}

/// Outdoor air of the day at an hour [degC].
inline double outdoor_c(const Day& day, double hour) {
  return day.low_c + (day.high_c - day.low_c) * 0.5 * (1.0 - std::cos(kPi * (hour - 3.0) / 12.0));
}

}  // namespace noonhouse::field
