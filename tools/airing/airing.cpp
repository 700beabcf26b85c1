// SPDX-License-Identifier: Apache-2.0
#include "tools/airing/airing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/weather_signal.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

constexpr Tick kEvery = 1_min;
constexpr std::size_t kHours = 24;

/// Keeps one instant's potentials, and what is drawn in hour by hour on one day.
class AirWatch final : public Observer {
 public:
  AirWatch(AirStreams& streams, Tick when, Tick midnight) : streams_(streams), when_(when), midnight_(midnight) {}
  void see_start(const Stretch& stretch) override {
    if (when_ == stretch.begin()) keep(stretch);
  }
  void see_stretch(const Stretch& stretch) override {
    if (when_ > stretch.begin() && when_ <= stretch.end()) keep(stretch);
    for (; next_ <= stretch.end(); next_ = next_ + kEvery) {
      if (next_ <= midnight_) continue;
      const auto hour = static_cast<std::size_t>((next_ - midnight_ - kEvery).ms / Tick(1_h).ms);
      if (hour >= kHours) continue;
      sums_[hour] += drawn_in_kg_s(streams_, streams_.flowing(stretch.potentials_at(next_)));
      ++samples_[hour];
    }
  }
  const std::vector<double>& potentials() const { return potentials_; }
  double mean_kg_s(std::size_t hour) const {
    return samples_[hour] > 0 ? sums_[hour] / samples_[hour] : std::numeric_limits<double>::quiet_NaN();
  }

 private:
  void keep(const Stretch& stretch) {
    const auto now = stretch.potentials_at(when_);
    potentials_.assign(now.begin(), now.end());
  }

  AirStreams& streams_;
  Tick when_, midnight_, next_ = kEvery;
  std::vector<double> potentials_;
  std::array<double, kHours> sums_{};
  std::array<int, kHours> samples_{};
};

/// Inside less outside without wind, up the middles and levels of a bay's layers [Pa].
class Column {
 public:
  Column(const Assembly& assembly, const AirStreams& streams, int bay)
      : assembly_(assembly), streams_(streams), bay_(at(bay)), layers_(assembly.shape.bays[bay_].layers) {
    outdoors_ = density(streams.state_of(kOutdoorsZone));
  }
  double excess_pa(std::size_t layer, double height_m) const {
    const House& house = assembly_.plan.house;
    const double pressure = streams_.settled()[at(house.position(Input(assembly_.bays[bay_].pressure[layer])))];
    const double reference = assembly_.reference_density_kg_m3;
    return pressure - kGravity * ((density(layer_state(layer)) - reference) * (height_m - layers_[layer].middle_m()) -
                                  (outdoors_ - reference) * height_m);
  }
  std::optional<double> neutral_m() const {
    for (std::size_t i = 0; i < layers_.size(); ++i) {
      const double low = excess_pa(i, layers_[i].bottom_m), high = excess_pa(i, layers_[i].top_m);
      if ((low > 0.0) == (high > 0.0)) continue;
      return layers_[i].bottom_m + (layers_[i].top_m - layers_[i].bottom_m) * low / (low - high);
    }
    return std::nullopt;
  }

 private:
  double density(const AirState& s) const {
    return moist_air_density(s.temperature_k, s.humidity_ratio, assembly_.pressure_pa);
  }
  AirState layer_state(std::size_t layer) const {
    const auto& zones = streams_.zones();
    for (std::size_t z = 0; z < zones.size(); ++z)
      if (at(zones[z].bay) == bay_ && zones[z].layer == layer && !zones[z].column)
        return streams_.state_of(static_cast<int>(z));
    NOON_ASSERT(false);
    return {};
  }
  const Assembly& assembly_;
  const AirStreams& streams_;
  std::size_t bay_;
  const std::vector<LayerShape>& layers_;
  double outdoors_ = 0.0;
};

void add_layers(Airing& out, const Assembly& assembly, const AirStreams& streams) {
  const auto& zones = streams.zones();
  for (std::size_t z = 0; z < zones.size(); ++z) {
    const AirState state = streams.state_of(static_cast<int>(z));
    if (zones[z].column) {
      out.layers.back().column = state;  // a column stands behind its layer
      continue;
    }
    LayerAir layer;
    layer.bay = zones[z].bay;
    layer.layer = zones[z].layer;
    layer.height_m = assembly.shape.bays[at(layer.bay)].layers[layer.layer].middle_m();
    layer.air = state;
    out.layers.push_back(layer);
  }
}

void add_bays(Airing& out, const Assembly& assembly, const AirStreams& streams) {
  for (std::size_t b = 0; b < assembly.bays.size(); ++b) {
    const Column column(assembly, streams, static_cast<int>(b));
    BayAir bay;
    bay.name = assembly.bays[b].name;
    bay.dry_air_kg = assembly.shape.bays[b].volume_m3 * assembly.air_density_kg_m3;
    bay.neutral_m = column.neutral_m();
    bay.excess_at_floor_pa = column.excess_pa(0, 0.0);
    out.bays.push_back(bay);
  }
  for (const AirFlow& flow : out.flows) {
    out.bays[at(flow.bay)].in_kg_s += flow.in_kg_s;
    out.bays[at(flow.bay)].out_kg_s += flow.out_kg_s;
  }
}

/// What moves between the zones: up the columns, between layers, between bays.
void add_inner_flows(Airing& out, const AirStreams& streams, const std::vector<TwoWayAir>& flow) {
  const auto& zones = streams.zones();
  const auto layer_of = [&](const AirZone& zone) -> LayerAir& {
    return *std::find_if(out.layers.begin(), out.layers.end(),
                         [&](const LayerAir& l) { return l.bay == zone.bay && l.layer == zone.layer; });
  };
  for (std::size_t i = 0; i < streams.ways().size(); ++i) {
    const AirWay& way = streams.ways()[i];
    if (way.b == kOutdoorsZone) continue;
    const AirZone &a = zones[at(way.a)], &b = zones[at(way.b)];
    if (a.column && b.column) layer_of(a).column_up_kg_s += flow[i].a_to_b_kg_s;
    if (a.bay != b.bay) {
      out.bays[at(a.bay)].to_next_kg_s += flow[i].a_to_b_kg_s;
      out.bays[at(a.bay)].from_next_kg_s += flow[i].b_to_a_kg_s;
    } else if (!a.column && !b.column) {
      layer_of(a).up_kg_s += flow[i].a_to_b_kg_s;
      layer_of(a).down_kg_s += flow[i].b_to_a_kg_s;
    }
  }
}

TracerCheck tracer_check(const Airing& airing, const FlushedZones& zones) {
  TracerCheck out;
  out.network_1_s = airing.in_kg_s() / airing.dry_air_kg();
  out.decay_1_s = zones.mean_decay_1_s(zones.nominal_time_s());
  out.slowest_1_s = zones.slowest_decay_1_s();
  out.mean_age_s = zones.mean_age_s();
  out.efficiency = zones.air_change_efficiency();
  return out;
}

[[noreturn]] void refuse_instant(const std::string& text, const std::string& why) {
  throw UserError(ErrorKind::usage, fmt::format("--at: read \"{}\"; {}", text, why));
}

}  // namespace

double Airing::dry_air_kg() const {
  double sum = 0.0;
  for (const BayAir& bay : bays) sum += bay.dry_air_kg;
  return sum;
}

double Airing::in_kg_s() const {
  double sum = 0.0;
  for (const AirFlow& flow : flows) sum += flow.in_kg_s;
  return sum;
}

double Airing::out_kg_s() const {
  double sum = 0.0;
  for (const AirFlow& flow : flows) sum += flow.out_kg_s;
  return sum;
}

Tick instant_of(const std::string& text, const PlanScenario& plan) {
  static const std::string kDayWord = "day ";
  const std::string wanted = "give an instant such as \"day 1 15:00\"";
  if (!text.starts_with(kDayWord)) refuse_instant(text, wanted);
  const std::size_t gap = text.find(' ', kDayWord.size());
  if (gap == std::string::npos) refuse_instant(text, wanted);
  const std::string number = text.substr(kDayWord.size(), gap - kDayWord.size());
  constexpr std::size_t kMostDigits = 5;
  const bool counts = !number.empty() && number.size() <= kMostDigits &&
                      std::all_of(number.begin(), number.end(), [](char c) { return c >= '0' && c <= '9'; });
  const auto of_day = parse_time_of_day(std::string_view(text).substr(gap + 1));
  if (!counts || std::stoi(number) < 1 || !of_day) refuse_instant(text, wanted);
  const Tick when = kDay * (std::stoi(number) - 1) + ticks(*of_day);
  if (when > ticks(plan.spec.run.length_s))
    refuse_instant(
        text, fmt::format("the run lasts {:.3g} days, to the end of day {:.0f}", plan.spec.run.length_s / seconds(kDay),
                          std::ceil(plan.spec.run.length_s / seconds(kDay))));
  return when;
}

std::vector<AirFlow> through_the_cover(const AirStreams& house, const std::vector<TwoWayAir>& streams) {
  std::vector<AirFlow> out;
  for (const AirWayKind kind : {AirWayKind::opening, AirWayKind::crack})
    for (std::size_t i = 0; i < streams.size(); ++i) {
      const AirWay& way = house.ways()[i];
      if (way.kind != kind || way.b != kOutdoorsZone) continue;
      auto found =
          std::find_if(out.begin(), out.end(), [&](const AirFlow& f) { return f.name == way.name && f.kind == kind; });
      if (found == out.end()) found = out.insert(out.end(), {way.name, kind, house.zones()[at(way.a)].bay, 0.0, 0.0});
      found->in_kg_s += streams[i].b_to_a_kg_s;
      found->out_kg_s += streams[i].a_to_b_kg_s;
    }
  return out;
}

FlushedZones flushed_zones(const AirStreams& house, const std::vector<TwoWayAir>& streams, double dry_air_kg_m3) {
  std::vector<FlushedZone> zones;
  for (const AirZone& zone : house.zones()) zones.push_back({zone.dry_air_kg / dry_air_kg_m3, 0.0, 0.0});
  std::vector<ZoneStream> between;
  for (std::size_t i = 0; i < streams.size(); ++i) {
    const AirWay& way = house.ways()[i];
    const std::size_t a = at(way.a);
    const double forth = streams[i].a_to_b_kg_s / dry_air_kg_m3, back = streams[i].b_to_a_kg_s / dry_air_kg_m3;
    if (way.b == kOutdoorsZone) {
      zones[a].to_outdoors_m3_s += forth;
      zones[a].from_outdoors_m3_s += back;
      continue;
    }
    between.push_back({a, at(way.b), forth});
    between.push_back({at(way.b), a, back});
  }
  return {std::move(zones), std::move(between)};
}

double drawn_in_kg_s(const AirStreams& house, const std::vector<TwoWayAir>& streams) {
  double sum = 0.0;
  for (std::size_t i = 0; i < streams.size(); ++i)
    if (house.ways()[i].b == kOutdoorsZone) sum += streams[i].b_to_a_kg_s;
  return sum;
}

Airing airing_at(const Scenario& scenario, const PlanScenario& plan, Tick when) {
  const WeatherSeries weather = weather_of(scenario, plan);
  Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  const std::int64_t day = std::min(when.ms, assembly.plan.length.ms - 1) / kDay.ms;
  assembly.plan.length = std::min(assembly.plan.length, kDay * (day + 1));
  AirStreams streams(assembly);
  AirWatch watch(streams, when, kDay * day);
  Run run(assembly.plan);
  run.add_observer(watch);
  static_cast<void>(run.go());

  const std::vector<TwoWayAir>& flow = streams.flowing(watch.potentials());
  Airing out;
  out.house = plan.spec.title;
  out.plan = plan.name;
  out.when = when;
  out.day = static_cast<int>(day) + 1;
  out.date = std::chrono::sys_days(plan.spec.run.start) + std::chrono::days(day);
  out.outdoors = streams.state_of(kOutdoorsZone);
  out.pressure_pa = assembly.pressure_pa;
  out.dry_air_kg_m3 = assembly.air_density_kg_m3;
  out.wind_m_s = streams.settled()[at(assembly.plan.house.position(Input(assembly.site.wind)))];
  out.wind_from_rad = WeatherSignal(weather, std::chrono::sys_seconds(std::chrono::sys_days(plan.spec.run.start)),
                                    plan.spec.run.length_s)
                          .at(when)
                          .wind_from_rad;
  out.flows = through_the_cover(streams, flow);
  add_layers(out, assembly, streams);
  add_bays(out, assembly, streams);
  add_inner_flows(out, streams, flow);
  if (streams.told_apart()) out.tracer = tracer_check(out, flushed_zones(streams, flow, out.dry_air_kg_m3));
  for (std::size_t hour = 0; hour < kHours; ++hour) out.hourly_1_s.push_back(watch.mean_kg_s(hour) / out.dry_air_kg());
  return out;
}

}  // namespace noonhouse
