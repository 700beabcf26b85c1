// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Watches the water in one plant group's pots. A spell of dry pots begins when the water falls to dry_below_kg, which
/// is logged as a warning, and ends when a tenth more than that is there again: as much as a run resolves where dry
/// means a twentieth of what the pots hold. A spell that lasts harms the plants, then kills them, each once; both
/// follow from the warning, and the warning from the last failed watering where one stands. Does not model: harm added
/// up over several spells, recovery, what the wetness does above dry_below_kg.
class PotWatch final : public Agent {
 public:
  struct Parameters {
    std::string name;  ///< of the plant group
    Input pot_water;   ///< [kg]
    double dry_below_kg = 0.0;
    Tick harmed_after, lost_after;        ///< of one spell
    std::vector<std::string> watered_by;  ///< agents whose failure leaves these pots dry
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit PotWatch(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kHarm, kLoss, kDry, kWet };
  void begin_spell(const Situation& situation, Actions& actions);
  void end_spell(Actions& actions) const;
  void await_dry(Actions& actions) const;

  Parameters p_;
  EventId warning_ = kNoEvent;  ///< of the last spell
  bool harmed_ = false;
};

}  // namespace noonhouse
