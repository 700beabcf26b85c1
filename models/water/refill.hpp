// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "models/properties/constants.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Water brought to the tank by road or by hand: at fixed instants, and when the tank has fallen to a mark and somebody
/// has called for it. Fills no further than the brim and takes the rest away again. A tank that is still at its mark
/// after a delivery calls once more. While a call is open there is no second one.
class Refill final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input tank_water;                 ///< [kg]
    double brim_kg = 0.0;             ///< what the tank holds
    double called_at_kg = 0.0;        ///< mark at which water is called for; 0: nobody calls
    Tick comes_after = kDay;          ///< from the call to the delivery
    std::vector<Tick> comes_at = {};  ///< fixed instants since the start, rising
    double brings_kg = 0.0;           ///< each time
    double water_temperature_k = kZeroCelsius + 15.0;
    ExchangeId path;            ///< HandCarried: water, then heat, from outside into the tank
    ChannelId delivered_kg;     ///< set to the sum so far [kg]
    ChannelId deliveries = {};  ///< set to the count of journeys so far, wasted ones too; none: not counted
    ChannelId raining = {};     ///< its last change is the cause of a low tank; none: no cause is told
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit Refill(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kLow, kCalled, kFixed };
  void call(const Situation& situation, Actions& actions);
  void deliver(const Situation& situation, Actions& actions, EventId because);
  void await_low(Actions& actions) const;
  void await_fixed(Actions& actions);

  Parameters p_;
  std::size_t next_fixed_ = 0;
  EventId call_ = kNoEvent;
  double delivered_kg_ = 0.0;
  int deliveries_ = 0;
};

}  // namespace noonhouse
