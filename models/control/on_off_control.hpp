// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/control_terms.hpp"
#include "models/control/limits.hpp"
#include "models/properties/figure_text.hpp"

namespace noonhouse {

/// On/off control of any quantity: calls when its reading reaches the first limit, stops calling when the reading has
/// come back to the second. Cooling has its first limit above its second, heating below.
/// A call begins only after the least time off, whatever asks for it; it lasts its least time unless its hours end, its
/// reading is lost (where that stops it) or it dies: these end a call at once. While it calls it may pulse and pause,
/// beginning with a pulse; the least times are the call's. Acts at the instant of crossing, not at polls, unless its
/// sensor tells it only at polls. Output: a demand channel, 0 or 1.
/// Where its two limits are one and there is no least time it chatters, which the run refuses.
class OnOffControl final : public Agent {
 public:
  struct Parameters {
    std::string name, sensor_name;
    Input sensor;
    ChannelId demand;
    TwoLimits limits;
    Tick least_on{}, least_off{};
    ControlTerms terms{};
    Tick pulse_on{}, pulse_off{};  ///< both above zero, or no pulses
    std::string calls_for = "cooling";
    std::string (*words)(double) = celsius_text;  ///< the reading as the log shows it
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters& p) { return p.terms.follows(p.sensor); }

  explicit OnOffControl(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kLimit, kWindow, kWait, kPulse };
  void die(Actions& actions);
  bool must_end(Tick now) const;
  bool may_switch(Tick now) const;
  void decide(const Situation& situation, bool reached, Actions& actions);
  void switch_to(bool on, const Situation& situation, Actions& actions, const char* why);
  void pulse(Tick now, Actions& actions);
  void look_ahead(Tick now, Actions& actions);

  Parameters p_;
  ControlHealth health_;
  bool on_ = false, in_pulse_ = false;
  bool has_switched_ = false;
  Tick switched_;
  EventId call_ = kNoEvent;  ///< the event that began the call, behind each of its pulses
};

}  // namespace noonhouse
