// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/hand_move.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// The grower's daily visit at a fixed time: waters pots from the tank by hand, opens and shuts by hand.
class GrowerVisit final : public Agent {
 public:
  struct Watering {
    std::string plants;
    Input pot_water;  ///< [kg]
    ExchangeId path;  ///< HandCarried: water, then heat, from tank to pot
    double fill_to_kg = 0.0;
  };
  struct Parameters {
    std::string name;
    Tick at{8 * 3'600'000};  ///< since midnight
    std::vector<Watering> waters;
    std::vector<HandMove> moves;  ///< of devices opened and shut; they last
    Input tank_water, tank_temperature;
    double tank_reserve_kg = 0.0;  ///< what a can cannot reach
    double keeps_back_kg = 0.0;    ///< left for other draws: pots short of water for it are no failure
    ChannelId water_permit;        ///< whose last change explains an empty tank
    ChannelId away{};              ///< above one half: nobody comes; may be none
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit GrowerVisit(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  void water(const Situation& situation, Actions& actions, EventId visit);
  Parameters p_;
};

}  // namespace noonhouse
