// SPDX-License-Identifier: Apache-2.0
// Instruments: what they follow in air, sun and spray, and what they tell at their polls.
#include <algorithm>

#include "models/control/instrument.hpp"
#include "models/control/may_freeze.hpp"
#include "models/control/running_sum.hpp"
#include "models/control/sensor.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kShareUnit = 0.001;
constexpr double kMisread_k = 5.0;          ///< of a sensor that reads low or high; common practice, no source
constexpr double kWiredPollSeconds = 10.0;  ///< of a wired instrument that reads in steps; common practice, no source
}  // namespace

void Assembler::add_sensors() {
  for (const auto& item : spec_.sensors) add_sensor(item);
}

void Assembler::add_sensor(const Named<SensorSpec>& item) {
  const SensorSpec& s = item.value;
  const int bay = out_.shape.bay_index(s.bay);
  const NodeId air = air_at(bay, s.height_m);
  const double humidity =
      vapour_pressure_pa(start_.humidity_ratio, out_.pressure_pa) / saturation_pressure_pa(start_.air_k);
  const double first = s.measures == Measures::temperature ? start_.air_k
                       : s.measures == Measures::humidity  ? humidity
                                                           : (1.0 - humidity) * saturation_pressure_pa(start_.air_k);
  const double unit = s.measures == Measures::temperature ? kTemperatureUnit
                      : s.measures == Measures::humidity  ? kShareUnit
                                                          : 1.0;
  const NodeId reading = graph_.node(item.name, Reading{}, {first}, {unit});
  const Input light =
      s.sun_share > 0.0 ? Input(out_.light[static_cast<std::size_t>(light_place_of(s))].all) : Input(nothing_drawn_);
  const ChannelId bias = graph_.channel("bias of " + item.name, "1",
                                        s.measures == Measures::temperature ? s.offset_k
                                        : s.measures == Measures::humidity  ? s.offset_share
                                                                            : 0.0);
  const SensorBody body{out_.pressure_pa, s.sun_share};
  const ChannelId follows = graph_.channel(item.name + " follows", "1", 1.0);
  const std::array<Input, 7> inputs{reading, air, Input(air, 1), light, wetness_of(item), Input(bias), Input(follows)};
  const auto follow = [&]<class L>(const L& law) {
    graph_.exchange("what " + item.name + " follows", "instruments", MayFreeze<L>{law}, inputs,
                    {{{instruments_, reading}}});
  };
  if (s.measures == Measures::temperature)
    follow(ThermometerLag{s.time_constant_s, body});
  else if (s.measures == Measures::humidity)
    follow(HygrometerLag{s.time_constant_s, body});
  else
    follow(DeficitLag{s.time_constant_s, body});
  out_.sensors.push_back({item.name, s.measures, reading, Input(reading), {}});
  if (s.measures == Measures::temperature) {
    out_.fault_points.push_back(
        {FailureKind::reads_low, item.name, bias, s.offset_k - kMisread_k, s.offset_k, "reads 5 K low"});
    out_.fault_points.push_back(
        {FailureKind::reads_high, item.name, bias, s.offset_k + kMisread_k, s.offset_k, "reads 5 K high"});
  }
  out_.fault_points.push_back({FailureKind::reads_frozen, item.name, follows, 0.0, 1.0, "stays at its last reading"});
  add_polls(item);
}

/// How wet an instrument is: by the lines that spray it, and by others once a failure puts it into their way.
Input Assembler::wetness_of(const Named<SensorSpec>& item) {
  std::vector<RunningSum::Part> on, beside;  // a line that is cut sprays nothing
  for (const auto& line : spec_.mist_lines) {
    if (line.value.wets != MistWets::air || !plan_.uses(line.name)) continue;
    const auto& sprayed_by = item.value.sprayed_by;
    const bool wets = std::find(sprayed_by.begin(), sprayed_by.end(), line.name) != sprayed_by.end();
    (wets ? on : beside).push_back({mist_flow_.at(line.name), 1.0 / line_flow_kg_s(line.value)});
  }
  if (on.empty() && beside.empty()) return nothing_drawn_;
  const ChannelId astray = graph_.channel(item.name + " hangs in the spray", "1", 0.0);
  const ChannelId reaches = graph_.channel("spray on " + item.name, "1", 0.0);
  const ChannelId other = graph_.channel("other spray on " + item.name, "1", 0.0);
  const auto sum_of = [&](const std::string& name, std::vector<RunningSum::Part> parts, ChannelId permit,
                          ChannelId total) {
    for (RunningSum::Part& part : parts) part.adds /= static_cast<double>(parts.size());
    add_agent<RunningSum>(RunningSum::Parameters{name, std::move(parts), 0.0, permit, total});
  };
  if (on.empty()) {
    sum_of("other spray on " + item.name, beside, astray, other);
    on.push_back({other, 1.0});
  }
  sum_of("spray on " + item.name, on, {}, reaches);
  if (on.front().running == other)
    out_.fault_points.push_back({FailureKind::in_the_spray, item.name, astray, 1.0, 0.0, "comes to hang in the spray"});
  const NodeId wetness = graph_.node("wetness of " + item.name, Reading{}, {0.0}, {kShareUnit});
  SensorWetness law;
  law.dries_s = item.value.dries_in_s;
  graph_.exchange("wetting of " + item.name, "instruments", law, {wetness, Input(reaches)},
                  {{{instruments_, wetness}}});
  return wetness;
}

int Assembler::light_place_of(const SensorSpec& s) const {
  const int bay = out_.shape.bay_index(s.bay);
  for (int p = 0; p < static_cast<int>(out_.places.size()); ++p) {
    const StandingPlace& place = out_.places[static_cast<std::size_t>(p)];
    if (place.of == StandingPlace::Of::on && s.light_of != "floor" &&
        spec_.benches[static_cast<std::size_t>(place.bench)].name == s.light_of)
      return p;
  }
  return floor_place(bay);
}

/// What the instrument tells, if it is polled or reads in steps.
void Assembler::add_polls(const Named<SensorSpec>& item) {
  const SensorSpec& s = item.value;
  const bool thermometer = s.measures == Measures::temperature;
  const double step = thermometer ? s.step_k : s.measures == Measures::humidity ? s.step_share : 0.0;
  const bool radio = s.polled_every_s > 0.0;
  if (!radio && step <= 0.0) return;
  SensorParts& parts = out_.sensors.back();
  Instrument::Parameters p;
  p.name = item.name;
  p.reading = parts.reading;
  p.told = graph_.channel("what " + item.name + " tells", "1", 0.0);
  p.good = graph_.channel(item.name + " is heard", "1", 1.0);
  p.every = ticks(radio ? s.polled_every_s : kWiredPollSeconds);
  p.step = step;
  p.zero = thermometer ? kZeroCelsius : 0.0;
  p.dropout_share = s.dropouts;
  p.lost_after = std::max(ticks(s.lost_after_s), p.every);
  p.seed = static_cast<std::uint64_t>(spec_.run.seed);
  p.fault = graph_.channel("fault of " + item.name, "1", 0.0);
  parts.told = Input(p.told);
  parts.good = p.good;
  if (radio) out_.fault_points.push_back({FailureKind::radio_lost, item.name, p.fault, 2.0, 0.0, "is no longer heard"});
  add_agent<Instrument>(std::move(p));
}

}  // namespace noonhouse
