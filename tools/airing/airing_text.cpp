// SPDX-License-Identifier: Apache-2.0
#include "tools/airing/airing_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/core/index.hpp"
#include "sim/core/tick.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

constexpr int kCell = 8;  ///< "+123.45" or "moister", and a gap
constexpr int kHourCell = 6;
constexpr int kLayerNames = 25;  ///< "Layers, from the top down"
constexpr double kFootM = 0.3048;

using Cells = std::vector<std::string>;

/// Three digits of numbers that are neither tiny nor huge.
std::string figure(double value) {
  if (std::isnan(value)) return "-";
  const double size = std::abs(value);
  if (size >= 99.95) return fmt::format("{:.0f}", value);
  return size >= 9.995 ? fmt::format("{:.1f}", value) : fmt::format("{:.2f}", value);
}

/// Writes the text part by part.
class Writer {
 public:
  Writer(const Airing& airing, UnitSystem units, int width) : air_(airing), units_(units), width_(width) {}

  std::string write() {
    heading();
    cover();
    layers();
    between();
    tracer();
    hours();
    return std::move(text_);
  }

 private:
  void line(std::string text) {
    text.erase(text.find_last_not_of(' ') + 1);
    text_ += text + '\n';
  }
  void paragraph(const std::string& text) {
    for (const std::string& part : wrapped(text, at(width_))) line(part);
  }
  /// A name and right-aligned cells; the name's further lines stand below it.
  void row(std::string_view name, int indent, const Cells& cells) {
    const int room = std::min(names_, width_ - kCell * static_cast<int>(cells.size())) - indent;
    const auto parts = wrapped(name, at(room));
    for (std::size_t i = 0; i < parts.size(); ++i) {
      std::string out = std::string(at(indent), ' ') + parts[i];
      out += std::string(at(room) - characters(parts[i]), ' ');
      if (i == 0)
        for (const std::string& cell : cells) out += std::string(padding(cell), ' ') + cell;
      line(out);
    }
  }
  static std::size_t padding(const std::string& cell) {
    return at(std::max(1, kCell - static_cast<int>(characters(cell))));
  }

  /// A way's name beside its bay's: without "of the west bay" at its end.
  std::string short_name(const AirFlow& way) const {
    const std::string of = fmt::format(" of the {} bay", air_.bays[at(way.bay)].name);
    return way.kind == AirWayKind::crack && way.name.ends_with(of) ? way.name.substr(0, way.name.size() - of.size())
                                                                   : way.name;
  }

  bool us() const { return units_ == UnitSystem::us; }
  double shown_flow(double dry_kg_s) const {
    const double m3_s = dry_kg_s / air_.dry_air_kg_m3;
    return us() ? m3_s * kSecondsPerMinute / (kFootM * kFootM * kFootM) : m3_s * kSecondsPerHour;
  }
  std::string flow(double dry_kg_s) const { return figure(shown_flow(dry_kg_s)); }
  std::string_view flow_unit() const { return us() ? "ft³/min" : "m³/h"; }
  std::string flow_text(double dry_kg_s) const { return unbroken(fmt::format("{} {}", flow(dry_kg_s), flow_unit())); }
  std::string volume_text(double m3) const {
    return unbroken(us() ? figure(m3 / (kFootM * kFootM * kFootM)) + " ft³" : figure(m3) + " m³");
  }
  std::string quantity(double si, Dimension dimension) const {
    return unbroken(format_quantity(si, dimension, units_));
  }
  std::string difference(double kelvin) const { return fmt::format("{:+.2f}", us() ? 1.8 * kelvin : kelvin); }
  double humid(const AirState& s) const {
    return 100.0 * relative_humidity(s.temperature_k, s.humidity_ratio, air_.pressure_pa);
  }

  void heading();
  void cover();
  void bay_rows(std::size_t bay);
  void layers();
  void between();
  void neutral(const BayAir& bay);
  void tracer();
  void hours();

  const Airing& air_;
  UnitSystem units_;
  int width_;
  int names_ = kLayerNames;  ///< width of the column of names
  std::string text_;
};

void Writer::heading() {
  paragraph(air_.plan.empty() ? air_.house : fmt::format("{}, plan \"{}\"", air_.house, air_.plan));
  const double of_day = seconds(air_.when - kDay * (air_.day - 1));
  paragraph(fmt::format(
      "{}, day {} {} (local standard time): outdoors {}, {}; wind {} from {}", unbroken(format_date(air_.date)),
      air_.day, format_time_of_day(of_day), quantity(air_.outdoors.temperature_k, Dimension::temperature),
      unbroken(fmt::format("{:.0f} % humid", humid(air_.outdoors))), quantity(air_.wind_m_s, Dimension::speed),
      unbroken(fmt::format("{:.0f} degrees", air_.wind_from_rad / kRadiansPerDegree))));
  text_ += '\n';
  paragraph(fmt::format("The house changes its air {} times an hour: {} in and {} out, of {} of air.",
                        figure(kSecondsPerHour * air_.in_kg_s() / air_.dry_air_kg()), flow_text(air_.in_kg_s()),
                        flow_text(air_.out_kg_s()), volume_text(air_.dry_air_kg() / air_.dry_air_kg_m3)));
}

void Writer::bay_rows(std::size_t b) {
  const BayAir& bay = air_.bays[b];
  line(bay.name + " bay");
  for (const AirFlow& way : air_.flows)
    if (at(way.bay) == b)
      row(short_name(way), 2,
          {flow(way.in_kg_s), flow(way.out_kg_s), figure(kSecondsPerHour * way.in_kg_s / air_.dry_air_kg()),
           figure(kSecondsPerHour * way.in_kg_s / bay.dry_air_kg)});
  row("in all", 2,
      {flow(bay.in_kg_s), flow(bay.out_kg_s), figure(kSecondsPerHour * bay.in_kg_s / air_.dry_air_kg()),
       figure(kSecondsPerHour * bay.in_kg_s / bay.dry_air_kg)});
}

void Writer::cover() {
  text_ += '\n';
  names_ = kLayerNames;
  for (const AirFlow& way : air_.flows) names_ = std::max(names_, static_cast<int>(characters(short_name(way))) + 2);
  row("Air through the cover", 0, {"in", "out", "house", "bay"});
  const std::string unit(flow_unit());
  row("", 0, {unit, unit, "1/h", "1/h"});
  for (std::size_t b = 0; b < air_.bays.size(); ++b) bay_rows(b);
  paragraph("house, bay: outdoor air that comes in this way, in air changes an hour of the house and of the bay.");
}

void Writer::layers() {
  text_ += '\n';
  names_ = kLayerNames;
  row("Layers, from the top down", 0, {"air", "warmer", "moister", "humid", "column", "rises", "up", "down"});
  const std::string degree = us() ? "°F" : "K", unit(flow_unit());
  row("", 0, {us() ? "°F" : "°C", degree, "g/kg", "%", degree, unit, unit, unit});
  for (std::size_t b = 0; b < air_.bays.size(); ++b) {
    line(air_.bays[b].name + " bay");
    for (auto layer = air_.layers.rbegin(); layer != air_.layers.rend(); ++layer) {
      if (at(layer->bay) != b) continue;
      const double celsius = layer->air.temperature_k - kZeroCelsius;
      row(us() ? fmt::format("{:.2f} ft", layer->height_m / kFootM) : fmt::format("{:.2f} m", layer->height_m), 2,
          {fmt::format("{:.1f}", us() ? 1.8 * celsius + 32.0 : celsius),
           difference(layer->air.temperature_k - air_.outdoors.temperature_k),
           fmt::format("{:+.2f}", 1000.0 * (layer->air.humidity_ratio - air_.outdoors.humidity_ratio)),
           fmt::format("{:.0f}", humid(layer->air)), difference(layer->column.temperature_k - layer->air.temperature_k),
           flow(layer->column_up_kg_s), flow(layer->up_kg_s), flow(layer->down_kg_s)});
    }
  }
  paragraph(
      "warmer, moister: than outdoors; column: how much warmer its rising air is than the layer; rises: in the column "
      "through the layer's top; up, down: through the same level beside the column, by flow and by mixing.");
}

void Writer::neutral(const BayAir& bay) {
  if (bay.neutral_m) {
    paragraph(fmt::format("Neutral level of the {} bay, wind apart: {} above the floor.", bay.name,
                          quantity(*bay.neutral_m, Dimension::length)));
    return;
  }
  paragraph(fmt::format("Neutral level of the {} bay: none, its air presses {} than calm air outdoors at all heights.",
                        bay.name, bay.excess_at_floor_pa > 0.0 ? "more" : "less"));
}

void Writer::between() {
  text_ += '\n';
  for (const BayAir& bay : air_.bays) neutral(bay);
  for (std::size_t b = 0; b + 1 < air_.bays.size(); ++b)
    paragraph(fmt::format("From the {} bay to the {} bay {}, back {}.", air_.bays[b].name, air_.bays[b + 1].name,
                          flow_text(air_.bays[b].to_next_kg_s), flow_text(air_.bays[b].from_next_kg_s)));
}

void Writer::tracer() {
  text_ += '\n';
  if (!air_.tracer) {
    paragraph(
        "Air on both sides of some way is all alike at this instant: what flows both ways at once cannot be told, only "
        "what it comes to, and a tracer cannot be followed.");
    return;
  }
  const TracerCheck& t = *air_.tracer;
  paragraph(fmt::format(
      "A tracer that fills the house evenly, in these flows held still: it decays as if the air changed {} times an "
      "hour while the house takes in its own volume of outdoor air, and {} times in the end; the flows themselves make "
      "{}. The house's air is {} min old on the mean; efficiency {:.2f} (0.5 if all is mixed, less where air "
      "takes a short cut).",
      figure(kSecondsPerHour * t.decay_1_s), figure(kSecondsPerHour * t.slowest_1_s),
      figure(kSecondsPerHour * t.network_1_s), figure(t.mean_age_s / kSecondsPerMinute), t.efficiency));
}

void Writer::hours() {
  text_ += '\n';
  paragraph("Air changes of the house that day, mean of each hour [1/h]");
  const int fitting = std::clamp(width_ / kHourCell, 1, 12);
  for (std::size_t from = 0; from < air_.hourly_1_s.size(); from += at(fitting)) {
    std::string clock, changes;
    for (std::size_t h = from; h < std::min(from + at(fitting), air_.hourly_1_s.size()); ++h) {
      clock += fmt::format("{:>{}}", fmt::format("{:02}:00", h), kHourCell);
      changes += fmt::format("{:>{}}", figure(kSecondsPerHour * air_.hourly_1_s[h]), kHourCell);
    }
    line(clock);
    line(changes);
  }
}

}  // namespace

std::string airing_text(const Airing& airing, UnitSystem units, int width) {
  return Writer(airing, units, std::clamp(width, kNarrowestAiringText, kWidestAiringText)).write();
}

}  // namespace noonhouse
