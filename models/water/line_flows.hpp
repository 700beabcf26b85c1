// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What flows in the lines of one pump, as they open and shut: the flow of each by which of them are open, since all
/// share the pump's curve. A line that is cut loses its water at the cut instead of spraying it.
/// Does not model: filling of empty pipes, a cut line's lower resistance.
class LineFlows final : public Agent {
 public:
  struct Line {
    ChannelId open;   ///< share of its flow that it takes, 0 to 1
    ChannelId cut;    ///< above one half: cut
    ChannelId spray;  ///< set to what its nozzles get [kg/s]
    ChannelId spill;  ///< set to what is lost at the cut [kg/s]
  };
  struct Parameters {
    std::string name;
    std::vector<Line> lines;  ///< at most kMostLines
    /// Flow of each line [kg/s] by the set of lines open: bit i of the first index stands for line i.
    std::vector<std::vector<double>> flows_kg_s;
    ChannelId runs{};  ///< set to 1 while any line is open; may be none
  };
  static constexpr std::size_t kMostLines = 6;
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit LineFlows(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  Parameters p_;
};

}  // namespace noonhouse
