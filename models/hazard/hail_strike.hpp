// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Hail on one facet of a house, and what it breaks there. Between two instants stones of one energy fall. Covers that
/// are drawn take their share off each stone; while what is left exceeds what the facet bears, the broken share
/// grows as hail_broken_share says, on what is whole still. It is told to the run once a minute, when a cover
/// moves and at the end; it never shrinks here, and two storms add up.
/// The first break is a failure that stands: a cover's own failure is its cause where one stands, else the hail. At
/// the end one line tells the share broken, that the facet held, or that it lost no more to this storm than to others.
/// Does not model: stones of many sizes, chance (the share is the expected one), panes that crack and hold.
class HailStrike final : public Agent {
 public:
  struct Cover {
    std::string name;        ///< of the device that draws it
    ChannelId position;      ///< 0 open to 1 drawn, set by agents: one that a forcing moves is not heard
    double absorbs_j = 0.0;  ///< off each stone, while drawn beyond kDrawn
    static constexpr double kDrawn = 0.95;
  };
  struct Parameters {
    std::string name;  ///< of the facet
    Tick from, until;
    double stone_j = 0.0;    ///< hail_energy_j
    double bears_j = 0.0;    ///< the facet's rating
    double hits_m2_s = 0.0;  ///< hail_hits_per_m2_s
    double opens_m2 = 1.0;   ///< hail_opening_m2
    std::vector<Cover> covers;
    ChannelId broken;   ///< broken share of the facet, 0 to 1
    ChannelId hailing;  ///< of this storm alone; optional: its last change is the weather event behind a break
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit HailStrike(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  double left_of_stone_j(const Situation& situation) const;
  void break_more(const Situation& situation, Actions& actions);
  void finish(const Situation& situation, Actions& actions);
  EventId cause(const Situation& situation) const;

  Parameters p_;
  bool hailing_ = false;
  double reaching_j_ = 0.0;  ///< of each stone, past the covers, since told_
  Tick told_;                ///< up to here the broken share is told
  EventId failure_ = kNoEvent;
};

}  // namespace noonhouse
