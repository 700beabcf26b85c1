// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Sets one fault channel by all that may be wrong with a part at the same time, so that the end of one failure undoes
/// no other. Each cause has a channel of its own and stands while that is away from the healthy value:
///   nothing stands   healthy
///   adds             healthy + sum of (cause - healthy) of all that stand: leaks, what a sensor reads too much
///   else             the value of the newest that stands, a changed one being new; but while the lasting one stands,
///                    its own: what is torn off cannot stick in another place
/// The channel follows from the newest that stands; healthy again, from the end of the last. It logs nothing.
class FaultCauses final : public Agent {
 public:
  struct Parameters {
    std::string name;
    ChannelId fault;
    double healthy = 0.0;
    bool adds = false;
    std::vector<ChannelId> causes{};  ///< each `healthy` while it does not stand
    ChannelId lasting{};              ///< one of them, which overrules the others; may be none
  };
  static constexpr bool kDecides = true;  // a control or a device that fails now must not act as if it were whole
  static std::vector<ChannelId> follows(const Parameters& p) { return p.causes; }

  explicit FaultCauses(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  struct Standing {
    ChannelId cause;
    double value = 0.0;
  };
  void hear(ChannelId cause, double value);
  double ruling() const;

  Parameters p_;
  std::vector<Standing> standing_;  ///< by age, the newest last; the lasting one behind all
};

}  // namespace noonhouse
