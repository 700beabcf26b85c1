// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/control_terms.hpp"
#include "models/properties/figure_text.hpp"

namespace noonhouse {

/// Proportional control: demand = (reading - from) / (to - from), held between 0 and 1; `to` below `from` makes it act
/// on a falling reading. It looks at its reading when it starts, when its hours open and when a lost reading comes
/// back, and every `every` after that; it moves if the change is at least its dead step, or to an end (0 or 1) by any
/// change, so that what can be shut is shut. Outside its hours, dead, or with a lost reading that stops it, its demand
/// is 0 at once. No memory of past errors (no integral part): at rest a reading stays off `from` by what the demand
/// needs.
class ProportionalControl final : public Agent {
 public:
  struct Parameters {
    std::string name, sensor_name;
    Input sensor;
    ChannelId demand;
    double from = 0.0, to = 1.0;  ///< readings at which the demand is 0 and 1, in the reading's unit; not equal
    Tick every{60'000};           ///< above zero
    double dead_step = 0.0;       ///< least change of the demand, 0..1
    ControlTerms terms{};
    std::string calls_for = "cooling";
    std::string (*words)(double) = celsius_text;  ///< the reading as the log shows it
  };
  static constexpr bool kDecides = true;
  /// Not the reading's own channel: it looks at its own times.
  static std::vector<ChannelId> follows(const Parameters& p) { return p.terms.follows({}); }

  explicit ProportionalControl(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kWindow, kLook };
  enum class Mode : std::uint8_t { idle, reads, stays, full };
  Mode mode(Tick now) const;
  double wanted(double reading) const;
  void enter(Mode mode, const Situation& situation, Actions& actions);
  void look(const Situation& situation, Actions& actions);
  void move(double demand, EventId event, Actions& actions);

  Parameters p_;
  ControlHealth health_;
  Mode mode_ = Mode::idle;
  double demand_ = 0.0;
};

}  // namespace noonhouse
