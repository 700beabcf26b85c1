// SPDX-License-Identifier: Apache-2.0
#include "models/water/refill.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/psychrometrics.hpp"

namespace noonhouse {
namespace {
std::string litres_text(double water_kg) { return std::to_string(std::lround(water_kg)) + " L"; }
}  // namespace

void Refill::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  switch (trigger.kind) {
    case Trigger::Kind::start:
      await_low(actions);
      await_fixed(actions);
      return;
    case Trigger::Kind::crossing:
      call(situation, actions);
      return;
    case Trigger::Kind::wake:
      deliver(situation, actions, trigger.slot == kCalled ? call_ : kNoEvent);
      if (trigger.slot == kCalled) {
        await_low(actions);
      } else {
        ++next_fixed_;
        await_fixed(actions);
      }
      return;
    case Trigger::Kind::channel_changed:
      return;
  }
}

void Refill::await_low(Actions& actions) const {
  if (p_.called_at_kg > 0.0) actions.arm(kLow, {p_.tank_water, p_.called_at_kg, Watch::Direction::falling});
}

void Refill::await_fixed(Actions& actions) {
  if (next_fixed_ < p_.comes_at.size()) actions.wake(kFixed, p_.comes_at[next_fixed_]);
}

void Refill::call(const Situation& situation, Actions& actions) {
  const EventId rain = p_.raining.valid() ? situation.last_change(p_.raining) : kNoEvent;
  call_ =
      actions.log(EventKind::people, "is called for: " + litres_text(situation.value(p_.tank_water)) + " left", rain);
  actions.wake(kCalled, situation.now() + p_.comes_after);
}

void Refill::deliver(const Situation& situation, Actions& actions, EventId because) {
  const double room_kg = std::max(0.0, p_.brim_kg - situation.value(p_.tank_water));
  const double given_kg = std::min(p_.brings_kg, room_kg);
  delivered_kg_ += given_kg;
  ++deliveries_;
  std::string what = "brings " + litres_text(given_kg);
  if (given_kg < p_.brings_kg) what += "; the tank is full, " + litres_text(p_.brings_kg - given_kg) + " go back";
  const EventId event = actions.log(EventKind::people, std::move(what), because);
  if (p_.deliveries.valid()) actions.set(p_.deliveries, static_cast<double>(deliveries_), event);
  if (given_kg <= 0.0) return;
  actions.transfer(p_.path, 0, given_kg);
  actions.transfer(p_.path, 1, given_kg * liquid_enthalpy(p_.water_temperature_k));
  actions.set(p_.delivered_kg, delivered_kg_, event);
}

}  // namespace noonhouse
