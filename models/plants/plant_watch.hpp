// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// How far a plant has gone, by the time its tissue spent beyond its limits.
enum class PlantState { fine, strained, harmed, lost };

/// Watches one plant group's tissue against its limits and adds up the time beyond each. Strained and harmed go by
/// the time beyond the harm limit (hot or cold), lost by the time beyond the lethal one. Each step down is logged as
/// harm; its cause is the newest failure that stands at that moment among the devices that cool. Cold is no device's
/// failure: none heats.
/// Does not model: recovery, acclimatisation, light, dry air.
class PlantWatch final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input tissue;  ///< [K]
    double harm_above_k = 0.0, lethal_above_k = 0.0, harm_below_k = 0.0, lethal_below_k = 0.0;
    Tick strained_after, harmed_after, lost_after;
    std::vector<std::string> cooled_by;  ///< agents whose failure lets it get too hot
    std::string when_nothing_failed;     ///< why it can be too hot although no device failed
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit PlantWatch(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Limit { kHot, kLethalHot, kCold, kLethalCold, kLimits };
  struct Crossed {
    double threshold = 0.0;
    bool above = true;  ///< beyond means above
    bool lethal = false;
    bool beyond = false;
  };
  void arm(int limit, Actions& actions) const;
  void add_time(Tick now);
  void plan_wake(Tick now, Actions& actions) const;
  void judge(const Situation& situation, Actions& actions);
  void say(PlantState state, const Situation& situation, Actions& actions);

  Parameters p_;
  std::array<Crossed, kLimits> limits_;
  Tick beyond_, lethal_, counted_until_;
  PlantState state_ = PlantState::fine;
};

}  // namespace noonhouse
