// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Something that the wind takes: a loose cover that is on, a vent that is open. The first time that the gust reaches
/// its limit while it is exposed, or that it is exposed while the gust is over the limit, it fails for good: its fault
/// channel is set once, and the failure stands. One limit, the same each time; no wear by lesser gusts.
/// It follows from the failure that keeps it exposed, where one of its own name stands; from what exposed it, where the
/// wind blew so already; else from the gust, which goes back to the storm that was announced.
class GivesWay final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input gust;  ///< [m/s]
    double limit_m_s = 0.0;
    ChannelId position;  ///< above one half: exposed; set by agents
    ChannelId fault;     ///< of its own, where other failures may come and go beside it (FaultCauses)
    double fault_value = 1.0;
    std::string what = "is torn off by the wind";
    ChannelId storm_until{};  ///< end of the last storm that an event announced, since the start [s]; may be none
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit GivesWay(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kGust };
  EventId cause(const Situation& situation, const Trigger& trigger, Actions& actions) const;
  Parameters p_;
  bool gone_ = false;
};

}  // namespace noonhouse
