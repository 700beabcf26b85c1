// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_watch.hpp"

#include <cmath>
#include <cstdio>

#include "models/properties/constants.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr std::array<const char*, 4> kStates{"fine", "strained", "harmed", "lost"};
constexpr double kLongHours = 48.0 * kSecondsPerHour;

/// "40 min", "3.5 h", "4.0 d".
std::string dose_text(double dose_s) {
  std::array<char, 32> text{};
  if (dose_s < kSecondsPerHour)
    std::snprintf(text.data(), text.size(), "%.0f min", dose_s / 60.0);
  else if (dose_s < kLongHours)
    std::snprintf(text.data(), text.size(), "%.1f h", dose_s / kSecondsPerHour);
  else
    std::snprintf(text.data(), text.size(), "%.1f d", dose_s / (24.0 * kSecondsPerHour));
  return text.data();
}

/// What happened, with its dose in the place of "%".
std::string said(std::string what, double dose_s) {
  const std::size_t at = what.find('%');
  return at == std::string::npos ? what : what.replace(at, 1, dose_text(dose_s));
}

}  // namespace

PlantWatch::PlantWatch(Parameters parameters) : p_(std::move(parameters)), step_(p_.hazards.size(), 0) {}

/// The state that the hazard's dose comes to next: of those further down, the one with the smallest mark.
int PlantWatch::next_step(std::size_t hazard) const {
  int next = 0;
  double mark = Hazard::kNever;
  for (int step = step_[hazard] + 1; step <= 3; ++step) {
    const double at = p_.hazards[hazard].at[static_cast<std::size_t>(step - 1)];
    if (at > mark || !std::isfinite(at)) continue;
    next = step;
    mark = at;
  }
  return next;
}

void PlantWatch::arm_next(std::size_t hazard, Actions& actions) const {
  const int next = next_step(hazard);
  if (next == 0) return;
  actions.arm(
      static_cast<int>(hazard),
      {p_.hazards[hazard].dose, p_.hazards[hazard].at[static_cast<std::size_t>(next - 1)], Watch::Direction::rising});
}

void PlantWatch::say(std::size_t hazard, const Situation& situation, Actions& actions) const {
  const Hazard& h = p_.hazards[hazard];
  EventId cause = situation.standing_failure(h.failed_by);
  if (cause == kNoEvent) cause = actions.log(EventKind::warning, h.otherwise, kNoEvent);
  const auto step = static_cast<std::size_t>(step_[hazard]);
  const bool by_loss = step == 3 && h.when_lost.dose_s > 0.0;
  std::array<char, 32> now{};
  std::snprintf(now.data(), now.size(), "%.1f degC", situation.value(h.temperature) - kZeroCelsius);
  actions.log(EventKind::harm,
              std::string(kStates[step]) + ": " +
                  said(by_loss ? h.when_lost.what : h.what, by_loss ? h.when_lost.dose_s : h.at[step - 1]) + "; " +
                  h.temperature_of + " " + now.data() + " at that moment",
              cause);
}

void PlantWatch::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::start) {
    for (std::size_t hazard = 0; hazard < p_.hazards.size(); ++hazard) arm_next(hazard, actions);
    return;
  }
  if (trigger.kind != Trigger::Kind::crossing) return;
  const auto hazard = static_cast<std::size_t>(trigger.slot);
  step_[hazard] = next_step(hazard);
  say(hazard, situation, actions);
  arm_next(hazard, actions);
}

}  // namespace noonhouse
