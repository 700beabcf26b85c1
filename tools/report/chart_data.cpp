// SPDX-License-Identifier: Apache-2.0
#include "tools/report/chart_data.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "tools/compare/comparison_words.hpp"

namespace noonhouse {
namespace {

/// A unit as shown: value = (si - zero) / (one - zero), from the one table of units.
class ShownUnit {
 public:
  ShownUnit(std::string name, const char* unit, Dimension dimension, double si_scale = 1.0)
      : name_(std::move(name)),
        zero_(known_quantity(fmt::format("0 {}", unit), dimension) * si_scale),
        hundred_(known_quantity(fmt::format("100 {}", unit), dimension) * si_scale) {}
  const std::string& name() const { return name_; }
  double operator()(double si) const { return 100.0 * (si - zero_) / (hundred_ - zero_); }

 private:
  std::string name_;
  double zero_, hundred_;
};

ShownUnit temperature_unit(UnitSystem units) {
  return units == UnitSystem::us ? ShownUnit("°F", "degF", Dimension::temperature)
                                 : ShownUnit("°C", "degC", Dimension::temperature);
}

/// Water's mass shown as its volume, at 1000 kg/m3.
ShownUnit water_unit(UnitSystem units) {
  return units == UnitSystem::us ? ShownUnit("gal", "gal", Dimension::volume, 1000.0)
                                 : ShownUnit("L", "L", Dimension::volume, 1000.0);
}

const RecordAxis* find_axis(const RunRecord& record, const std::string& name) {
  const auto found =
      std::find_if(record.axes.begin(), record.axes.end(), [&](const RecordAxis& a) { return a.name == name; });
  return found == record.axes.end() ? nullptr : &*found;
}

std::vector<double> shown(std::vector<double> values, const ShownUnit& unit) {
  for (double& value : values) value = unit(value);
  return values;
}

/// Sets the value axis around the lines, the limit above which a plant is harmed, and those other limits within reach.
void fit_axis(Chart& chart, double reach) {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const ChartLine& line : chart.lines) {
    for (const double value : line.values) {
      if (!std::isfinite(value)) continue;
      low = std::min(low, value);
      high = std::max(high, value);
    }
  }
  if (!(low <= high)) low = 0.0, high = 1.0;
  const double from = low - reach;
  const double to = high + reach;
  std::erase_if(chart.limits,
                [&](const ChartLimit& l) { return l.role != "harm" && !(l.value >= from && l.value <= to); });
  for (const ChartLimit& limit : chart.limits) {
    low = std::min(low, limit.value);
    high = std::max(high, limit.value);
  }
  const double margin = std::max(0.04 * (high - low), 0.5);
  chart.lowest = std::floor(low - margin);
  chart.highest = std::ceil(high + margin);
}

std::string layer_label(const RecordAxis& levels, std::size_t i, UnitSystem units) {
  return i < levels.coordinates.size() ? height_text(levels.coordinates[i], units) : levels.labels[i];
}

std::vector<ChartLine> layer_lines(const RunRecord& record, const RecordSeries& air, std::size_t bay,
                                   UnitSystem units) {
  const RecordAxis& levels = *find_axis(record, "level");
  std::vector<ChartLine> lines;
  for (std::size_t i = 0; i < levels.labels.size(); ++i) {
    const std::size_t offset = bay * levels.labels.size() + i;
    lines.push_back({layer_label(levels, i, units), "middle",
                     shown(element_over_time(record, air, offset), temperature_unit(units))});
  }
  return lines;
}

/// Of every bay a picture of temperature by height, and lines of its lowest, middle and highest layer.
void add_air_charts(const RunRecord& record, UnitSystem units, std::vector<Chart>& charts) {
  const RecordSeries* air = find_series(record, "air_temperature");
  if (air == nullptr || air->axes.empty() || air->axes.back() != "level") return;
  if (air->axes.size() > 2 || (air->axes.size() == 2 && air->axes.front() != "bay")) return;
  const RecordAxis* bays = air->axes.size() == 2 ? find_axis(record, "bay") : nullptr;
  const RecordSeries* outdoors = find_series(record, "outdoor_temperature");
  for (std::size_t bay = 0; bay < (bays == nullptr ? 1 : bays->labels.size()); ++bay) {
    const std::string where = bays == nullptr ? "" : ", " + bays->labels[bay];
    Chart picture;
    picture.kind = ChartKind::heights;
    picture.group = "air";
    picture.title = "Air temperature by height" + where;
    picture.unit = temperature_unit(units).name();
    picture.lines = layer_lines(record, *air, bay, units);
    fit_axis(picture, 0.0);
    Chart lines = picture;
    lines.kind = ChartKind::lines;
    lines.title = "Lowest, middle and highest air" + where;
    const std::size_t count = picture.lines.size();
    std::vector<ChartLine> chosen;
    if (count > 1) chosen.push_back({"low, " + picture.lines[0].label, "low", picture.lines[0].values});
    if (count > 2)
      chosen.push_back({"middle, " + picture.lines[count / 2].label, "middle", picture.lines[count / 2].values});
    if (count > 0)
      chosen.push_back({"high, " + picture.lines[count - 1].label, "high", picture.lines[count - 1].values});
    lines.lines = std::move(chosen);
    lines.table = picture.lines;
    if (outdoors != nullptr && outdoors->axes.empty()) {
      lines.lines.push_back(
          {"outdoors", "outdoors", shown(element_over_time(record, *outdoors, 0), temperature_unit(units))});
      lines.table.push_back(lines.lines.back());
    }
    fit_axis(lines, 0.0);
    charts.push_back(std::move(picture));
    charts.push_back(std::move(lines));
  }
}

void add_limits(const PlantOutcome& plant, UnitSystem units, Chart& chart) {
  const ShownUnit unit = temperature_unit(units);
  const auto add = [&](double limit_k, const char* words, const char* role) {
    if (!std::isfinite(limit_k)) return;
    chart.limits.push_back({fmt::format("{} {}", words, temperature_text(limit_k, units)), role, unit(limit_k)});
  };
  add(plant.harm_above_k, "harmed above", "harm");
  add(plant.lethal_above_k, "dies above", "lethal");
  add(plant.harm_below_k, "harmed below", "cold");
}

/// Of every plant its tissue temperature against its limits; one table for all of them, behind the last.
void add_plant_charts(const RunRecord& record, UnitSystem units, std::vector<Chart>& charts) {
  const RecordSeries* tissue = find_series(record, "tissue_temperature");
  const RecordAxis* plants = find_axis(record, "plant");
  if (tissue == nullptr || plants == nullptr || tissue->axes != std::vector<std::string>{"plant"}) return;
  std::vector<ChartLine> table;
  for (std::size_t i = 0; i < plants->labels.size(); ++i) {
    Chart chart;
    chart.group = "plants";
    chart.title = plants->labels[i];
    chart.unit = temperature_unit(units).name();
    chart.lines = {{plants->labels[i], "plant", shown(element_over_time(record, *tissue, i), temperature_unit(units))}};
    table.push_back(chart.lines.front());
    const auto is_it = [&](const PlantOutcome& p) { return p.name == plants->labels[i]; };
    const auto plant = std::find_if(record.plants.begin(), record.plants.end(), is_it);
    if (plant != record.plants.end()) {
      chart.title += ": " + outcome_text(*plant, units);
      add_limits(*plant, units, chart);
    }
    fit_axis(chart, units == UnitSystem::us ? 14.0 : 8.0);
    charts.push_back(std::move(chart));
  }
  if (!table.empty()) charts.back().table = std::move(table);
}

/// The tank's water and the battery's charge.
void add_store_charts(const RunRecord& record, UnitSystem units, std::vector<Chart>& charts) {
  const RecordSeries* tank = find_series(record, "tank_water");
  if (tank != nullptr && tank->axes.empty()) {
    const ShownUnit unit = water_unit(units);
    Chart chart{ChartKind::lines, "stores", "Water in the tank", unit.name(), {}, {}, 0.0, 1.0, {}};
    chart.lines = {{"water", "tank", shown(element_over_time(record, *tank, 0), unit)}};
    if (record.water.capacity_kg > 0.0) chart.limits = {{"full", "mark", unit(record.water.capacity_kg)}};
    chart.table = chart.lines;
    fit_axis(chart, std::numeric_limits<double>::infinity());
    chart.lowest = 0.0;
    charts.push_back(std::move(chart));
  }
  const RecordSeries* battery = find_series(record, "battery_share");
  if (battery != nullptr && battery->axes.empty()) {
    Chart chart{ChartKind::lines, "stores", "Charge of the battery", "%", {}, {}, 0.0, 100.0, {}};
    std::vector<double> values = element_over_time(record, *battery, 0);
    for (double& value : values) value *= 100.0;
    chart.lines = {{"charge", "battery", std::move(values)}};
    chart.table = chart.lines;
    charts.push_back(std::move(chart));
  }
}

}  // namespace

const RecordSeries* find_series(const RunRecord& record, const std::string& name) {
  for (const RecordSeries& series : record.series) {
    if (series.name != name) continue;
    std::size_t expected = record.time_s.size();
    for (const std::string& axis : series.axes) {
      const RecordAxis* found = find_axis(record, axis);
      if (found == nullptr) return nullptr;
      expected *= found->labels.size();
    }
    return expected > 0 && series.values.size() == expected ? &series : nullptr;
  }
  return nullptr;
}

std::vector<double> element_over_time(const RunRecord& record, const RecordSeries& series, std::size_t offset) {
  const std::size_t stride = series.values.size() / record.time_s.size();
  std::vector<double> out;
  out.reserve(record.time_s.size());
  for (std::size_t i = 0; i < record.time_s.size(); ++i) out.push_back(series.values[i * stride + offset]);
  return out;
}

std::vector<Chart> make_charts(const RunRecord& record, UnitSystem units) {
  std::vector<Chart> charts;
  add_air_charts(record, units, charts);
  add_plant_charts(record, units, charts);
  add_store_charts(record, units, charts);
  return charts;
}

void share_scales(std::vector<std::vector<Chart>>& plans) {
  for (const ChartKind kind : {ChartKind::heights, ChartKind::lines}) {
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    const auto each = [&](auto&& action) {
      for (std::vector<Chart>& charts : plans) {
        for (Chart& chart : charts) {
          if (chart.group == "air" && chart.kind == kind) action(chart);
        }
      }
    };
    each([&](const Chart& c) { low = std::min(low, c.lowest), high = std::max(high, c.highest); });
    each([&](Chart& c) { c.lowest = low, c.highest = high; });
  }
}

}  // namespace noonhouse
