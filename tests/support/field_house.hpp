// SPDX-License-Identifier: Apache-2.0
// Long because a whole house of the field cases is put together in one place.
#pragma once
#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/properties/psychrometrics.hpp"
#include "sim/run/run.hpp"
#include "tests/support/field_day.hpp"
#include "tests/support/run_marks.hpp"
#include "tests/support/weather_folder.hpp"
#include "tools/scenario/assemble.hpp"

/// Whole houses of invented scenarios under one invented day of weather, run as a person would run them, to be held
/// against what was measured in real ones.
namespace noonhouse::field {

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

/// The run of a plan of house and devices under a day.
inline FieldRun run(const Day& day, const std::string& house_and_devices, const std::string& plan) {
  const WeatherFolder folder("day.csv", weather_text(day));
  const Scenario scenario = read_scenario_text(scenario_text(day, house_and_devices), folder.path() / "field.yaml");
  return {scenario, scenario.plan(plan)};
}

}  // namespace noonhouse::field
