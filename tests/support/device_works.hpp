// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstdio>
#include <string>
#include <vector>

#include "models/control/device.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {

inline double number(DeviceFault fault) { return static_cast<double>(fault); }

/// Writes down when a channel changed and to what: "instant in seconds value".
class Scribe final : public Agent {
 public:
  struct Parameters {
    ChannelId channel;
    std::vector<std::string>* out = nullptr;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.channel}; }
  explicit Scribe(Parameters p) : p_(p) {}
  std::string_view name() const override { return "scribe"; }
  void react(const Situation& situation, const Trigger& trigger, Actions&) override {
    if (trigger.kind != Trigger::Kind::channel_changed) return;
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%g %.4g", seconds(situation.now()), situation.value(p_.channel));
    p_.out->push_back(text.data());
  }

 private:
  Parameters p_;
};

/// One device with three callers, each with its duty, a forbid, a need, a fault.
struct DeviceWorks {
  AgentStage stage{1_h};
  std::array<ChannelId, 3> call{stage.channel("call a"), stage.channel("call b"), stage.channel("call c")};
  std::array<ChannelId, 3> duty{stage.channel("duty a", 1.0), stage.channel("duty b", 1.0),
                                stage.channel("duty c", 1.0)};
  ChannelId rain = stage.channel("rain"), night = stage.channel("night");
  ChannelId power = stage.channel("power", 1.0), fault = stage.channel("fault");
  ChannelId position = stage.channel("position");
  std::vector<std::string> moved;
  Device::Parameters p{"vent",
                       "opens",
                       "shuts",
                       {{call[0], duty[0]}, {call[1], duty[1]}, {call[2], duty[2]}},
                       {{power, "no power"}},
                       {{position, 1.0, 0.0}}};
  DeviceWorks() {
    p.forbids = {{rain, "it rains"}, {night, "it is night"}};
    p.fault = fault;
  }
  std::vector<std::string> run() {
    stage.agent<Scribe>({position, &moved});
    stage.agent<Device>(p);
    stage.run();
    return stage.said_by("vent");
  }
};

}  // namespace noonhouse
