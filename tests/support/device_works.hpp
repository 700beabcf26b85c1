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

/// What one agent's standing failure says at given instants, or "none".
class FailureWatch final : public Agent {
 public:
  struct Parameters {
    std::string of;
    std::vector<Tick> when;
    std::vector<EventId>* out = nullptr;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit FailureWatch(Parameters p) : p_(std::move(p)) {}
  std::string_view name() const override { return "failure watch"; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    if (trigger.kind == Trigger::Kind::wake) p_.out->push_back(situation.standing_failure({&p_.of, 1}));
    actions.wake(0, next_ < p_.when.size() ? p_.when[next_] : kNever);
    ++next_;
  }
  static std::vector<std::string> words(const std::vector<EventId>& ids, const std::vector<LogEntry>& log) {
    std::vector<std::string> out;
    for (const EventId id : ids) out.push_back(id == kNoEvent ? "none" : log[static_cast<std::size_t>(id)].what);
    return out;
  }

 private:
  Parameters p_;
  std::size_t next_ = 0;
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
  std::vector<std::string> standing(std::vector<Tick> when) {
    std::vector<EventId> ids;
    stage.agent<FailureWatch>({"vent", std::move(when), &ids});
    run();
    return FailureWatch::words(ids, stage.log());
  }
};

}  // namespace noonhouse
