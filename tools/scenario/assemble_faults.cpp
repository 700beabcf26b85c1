// SPDX-License-Identifier: Apache-2.0
// Failures at stated times, and the joining of all that may be wrong with a part.
#include <fmt/format.h>

#include <algorithm>

#include "models/control/fault_causes.hpp"
#include "models/control/script.hpp"
#include "models/properties/water.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {

/// What a covered panel, a low reading or a leak leaves, where the scenario says how much.
double value_of(const FaultSpec& f, const FaultPoint& point) {
  switch (f.what) {
    case FailureKind::reads_low:
      return point.healthy - f.by_k;
    case FailureKind::reads_high:
      return point.healthy + f.by_k;
    case FailureKind::tank_leaks:
      return kWaterKgPerM3 * f.leak_m3_s;
    case FailureKind::cell_dead:
      return f.share;
    default:
      return point.value;
  }
}

/// Three digits that count, and from a thousand on all that are before the point.
std::string figure(double value) { return value < 999.5 ? fmt::format("{:.3g}", value) : fmt::format("{:.0f}", value); }

/// Whether several of a kind on one part add up; of others the newest counts.
bool adds_up(FailureKind what) {
  return what == FailureKind::tank_leaks || what == FailureKind::reads_low || what == FailureKind::reads_high;
}

/// What a failure of the scenario's own says: with its own figure where it has one.
std::string words_of(const FaultSpec& f, const FaultPoint& point) {
  switch (f.what) {
    case FailureKind::reads_low:
      return fmt::format("reads {:.3g} K low", f.by_k);
    case FailureKind::reads_high:
      return fmt::format("reads {:.3g} K high", f.by_k);
    case FailureKind::tank_leaks:
      return fmt::format("leaks {} L an hour", figure(3.6e6 * f.leak_m3_s));
    default:
      return point.words;
  }
}

}  // namespace

/// Failures that the scenario puts into its run, each at its time.
void Assembler::add_faults() {
  for (const auto& [name, fault] : spec_.faults) {
    const auto point = std::find_if(out_.fault_points.begin(), out_.fault_points.end(),
                                    [&](const FaultPoint& p) { return p.what == fault.what && p.of == fault.of; });
    if (point == out_.fault_points.end()) continue;  // not in service in this plan
    const Tick when = kDay * (fault.day - 1) + ticks(fault.at_s);
    const ChannelId cause = fault_cause(point->channel, point->healthy, "failure of the scenario: " + name);
    fault_causes_[point->channel].adds = adds_up(fault.what);
    Script::Parameters script{name, {}};
    script.lines.push_back(
        {when, point->of + " " + words_of(fault, *point), EventKind::failure, {{cause, value_of(fault, *point)}}});
    if (fault.lasts_s > 0.0)
      script.lines.push_back({when + ticks(fault.lasts_s),
                              point->of + ": this failure is put right",
                              EventKind::action,
                              {{cause, point->healthy}},
                              0,
                              true});
    add_agent<Script>(std::move(script));
  }
  join_fault_causes();
}

/// A channel for one cause of a failure, healthy while it does not stand.
ChannelId Assembler::fault_cause(ChannelId fault, double healthy, const std::string& cause) {
  FaultCauses::Parameters& p = fault_causes_[fault];
  p.fault = fault;
  p.healthy = healthy;
  return p.causes.emplace_back(graph_.channel(cause, "1", healthy));
}

/// Joins what may be wrong with each part. A failure that somebody puts into a branch of the run is one cause more.
void Assembler::join_fault_causes() {
  for (auto& [fault, p] : fault_causes_) {
    ChannelId put_in;
    for (FaultPoint& point : out_.fault_points) {
      if (point.channel != fault) continue;
      p.name = "failures of " + point.of;
      if (!put_in.valid())
        put_in = fault_cause(fault, point.healthy, "failure put in: " + point.of + " " + point.words);
      point.channel = put_in;
    }
    add_agent<FaultCauses>(p);
  }
}

}  // namespace noonhouse
