// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Keeps a channel at the sum of what the running devices add to it: the electrical load [W], what stirs a bay's air
/// [W, told as m/s]. With a permit the sum is nothing, standing part and all, while the permit is withdrawn.
class RunningSum final : public Agent {
 public:
  struct Part {
    ChannelId running;  ///< share that it runs, 0 to 1
    double adds = 0.0;
    ChannelId only_while{};  ///< above one half: else it adds nothing; may be none
  };
  struct Parameters {
    std::string name;
    std::vector<Part> parts;
    double standing = 0.0;
    ChannelId permit;  ///< may be none
    ChannelId total;
    double power = 1.0;  ///< the channel is scale * sum^power: turbulence goes with the cube root of what drives it
    double scale = 1.0;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit RunningSum(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  Parameters p_;
};

}  // namespace noonhouse
