// SPDX-License-Identifier: Apache-2.0
#include "models/control/grower.hpp"

#include <algorithm>

#include "models/properties/figure_text.hpp"
#include "models/properties/psychrometrics.hpp"

namespace noonhouse {

void GrowerVisit::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const Tick now = situation.now();
  if (trigger.kind == Trigger::Kind::start) {
    actions.wake(0, Tick{p_.at.ms % kDay.ms});
    return;
  }
  if (trigger.kind != Trigger::Kind::wake) return;
  actions.wake(0, now + kDay);
  if (p_.away.valid() && situation.value(p_.away) > 0.5) {
    actions.log(EventKind::failure, "does not come", situation.last_change(p_.away));
    return;
  }
  const EventId visit = actions.log(EventKind::people, "visits");
  water(situation, actions, visit);
  for (const HandMove& move : p_.moves) {
    actions.set(move.channel, move.value, visit);
    if (move.lasting.valid()) actions.set(move.lasting, move.value, visit);
  }
}

void GrowerVisit::water(const Situation& situation, Actions& actions, EventId visit) {
  actions.clear_failure();  // pots left dry at the last visit; said again below if they stay dry
  double poured = 0.0;
  for (const Watering& watering : p_.waters) {
    const double wish = std::max(0.0, watering.fill_to_kg - situation.value(watering.pot_water));
    const double reached = std::max(0.0, situation.value(p_.tank_water) - p_.tank_reserve_kg);
    const double granted = std::max(0.0, situation.value(p_.tank_water) - p_.keeps_back_kg);
    const double given = std::min({wish, reached, granted});
    if (given > 0.0) {
      const double heat = given * liquid_enthalpy(situation.value(p_.tank_temperature));
      actions.transfer(watering.path, 0, given);
      actions.transfer(watering.path, 1, heat);
      poured += given;
    }
    if (given + 1e-9 >= wish) continue;
    if (granted < reached)
      actions.log(EventKind::people,
                  "leaves " + watering.plants + " " + number_text(wish - given, 1) + " L short, to keep back " +
                      number_text(p_.keeps_back_kg, 0) + " L",
                  visit);
    else
      actions.log(EventKind::failure,
                  "could not water " + watering.plants + " fully: " + number_text(wish - given, 1) +
                      " L short, the tank is nearly empty",
                  situation.last_change(p_.water_permit) == kNoEvent ? visit : situation.last_change(p_.water_permit));
  }
  if (poured > 0.0) actions.log(EventKind::people, "watered the pots: " + number_text(poured, 1) + " L", visit);
}

}  // namespace noonhouse
