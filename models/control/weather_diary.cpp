// SPDX-License-Identifier: Apache-2.0
#include "models/control/weather_diary.hpp"

namespace noonhouse {

void WeatherDiary::react(const Situation& situation, const Trigger&, Actions& actions) {
  for (; next_ < p_.notes.size() && p_.notes[next_].when <= situation.now(); ++next_) {
    const Note& note = p_.notes[next_];
    const EventId event = actions.log(EventKind::weather, note.what, kNoEvent);
    if (note.raining >= 0.0) actions.set(p_.raining, note.raining, event);
  }
  actions.wake(0, next_ < p_.notes.size() ? p_.notes[next_].when : kNever);
}

}  // namespace noonhouse
