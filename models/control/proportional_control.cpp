// SPDX-License-Identifier: Apache-2.0
#include "models/control/proportional_control.hpp"

#include <algorithm>
#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {
constexpr double kRounding = 1e-9;  ///< an end or a change of the dead step, but for rounding, is one
}  // namespace

ProportionalControl::ProportionalControl(Parameters parameters) : p_(std::move(parameters)) {
  NOON_ASSERT(p_.from != p_.to && p_.every.ms > 0);
}

ProportionalControl::Mode ProportionalControl::mode(Tick now) const {
  if (health_.dead() || !p_.terms.hours.holds(now)) return Mode::idle;
  if (!health_.lost()) return Mode::reads;
  switch (p_.terms.when_lost) {
    case WhenLost::holds:
      return Mode::stays;
    case WhenLost::stops:
      return Mode::idle;
    case WhenLost::runs:
      return Mode::full;
  }
  return Mode::idle;
}

double ProportionalControl::wanted(double reading) const {
  const double share = (reading - p_.from) / (p_.to - p_.from);
  if (share < kRounding) return 0.0;
  return share > 1.0 - kRounding ? 1.0 : share;
}

void ProportionalControl::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  health_.look(p_.terms, situation, trigger, actions);
  const Tick now = situation.now();
  const Mode next = mode(now);
  actions.wake(kWindow, health_.dead() ? kNever : p_.terms.hours.next_edge(now));
  const bool due = trigger.kind == Trigger::Kind::wake && trigger.slot == kLook;
  if (next != mode_) {
    enter(next, situation, actions);
  } else if (due) {
    look(situation, actions);
  }
}

void ProportionalControl::enter(Mode mode, const Situation& situation, Actions& actions) {
  mode_ = mode;
  actions.wake(kLook, kNever);
  switch (mode) {
    case Mode::reads:
      return look(situation, actions);
    case Mode::stays:
      return;
    case Mode::idle: {
      if (demand_ == 0.0) return;
      if (health_.dead()) return move(0.0, health_.said(), actions);
      const bool open = p_.terms.hours.holds(situation.now());
      const std::string why = open ? "it has no reading" : "its hours are over";
      return move(0.0, actions.log(EventKind::action, "calls no longer: " + why), actions);
    }
    case Mode::full:
      if (demand_ == 1.0) return;
      return move(1.0, actions.log(EventKind::action, "calls fully for " + p_.calls_for + ": it has no reading"),
                  actions);
  }
}

void ProportionalControl::look(const Situation& situation, Actions& actions) {
  actions.wake(kLook, situation.now() + p_.every);
  const double reading = situation.value(p_.sensor), demand = wanted(reading);
  const bool end = demand == 0.0 || demand == 1.0;
  if (demand == demand_ || (!end && std::abs(demand - demand_) < p_.dead_step - kRounding)) return;
  const std::string what = demand > 0.0 ? "calls for " + number_text(100.0 * demand, 0) + " % of " + p_.calls_for + ": "
                                        : std::string("calls no longer: ");
  move(demand,
       log_because_of(p_.sensor, situation, EventKind::action, what + p_.words(reading) + " at the " + p_.sensor_name,
                      actions),
       actions);
}

void ProportionalControl::move(double demand, EventId event, Actions& actions) {
  demand_ = demand;
  actions.set(p_.demand, demand, event);
}

}  // namespace noonhouse
