// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <string>
#include <utility>

#include "models/control/control_terms.hpp"
#include "sim/core/errors.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/channel_record.hpp"

namespace noonhouse {

/// One controller with its reading and its demand, under terms whose flags hands move: `good` from 1, `fault` from 0.
struct ControlStage {
  AgentStage stage;
  ChannelId reading, demand, good, fault;
  ControlStage(Tick length, const PolylineForcing::Points& read, const ChannelChanges& good_moves,
               const ChannelChanges& fault_moves)
      : stage(length),
        reading(stage.moved("reading", read)),
        demand(stage.channel("demand")),
        good(stage.channel("good", 1.0)),
        fault(stage.channel("fault")) {
    if (!good_moves.empty()) stage.hand(good, good_moves);
    if (!fault_moves.empty()) stage.hand(fault, fault_moves);
  }
  ControlTerms terms(const DailyWindow& hours, WhenLost when_lost) const { return {hours, good, when_lost, fault}; }
  /// Runs it and returns how its demand changed.
  template <class Control>
  ChannelChanges run(typename Control::Parameters parameters) {
    ChannelChanges demands;
    stage.agent<ChannelRecord>({demand, &demands});
    stage.agent<Control>(std::move(parameters));
    stage.run();
    return demands;
  }
};

/// The run refuses a stage on which this agent switches without end, and names it.
inline void expect_chatter(AgentStage& stage, const std::string& name) {
  try {
    stage.run();
    ADD_FAILURE() << "chatter went unnoticed";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::chatter);
    EXPECT_NE(std::string(error.what()).find("'" + name + "'"), std::string::npos) << error.what();
  }
}

}  // namespace noonhouse
