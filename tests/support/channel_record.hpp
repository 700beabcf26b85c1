// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <utility>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What a channel was changed to and when; of several changes at one instant the last.
using ChannelChanges = std::vector<std::pair<Tick, double>>;

/// An agent that writes down how a channel changes, net of what was taken back at the same instant.
class ChannelRecord final : public Agent {
 public:
  struct Parameters {
    ChannelId channel;
    ChannelChanges* into = nullptr;
    double first = 0.0;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.channel}; }

  explicit ChannelRecord(Parameters parameters) : p_(parameters) {}
  std::string_view name() const override { return "record"; }
  void react(const Situation& situation, const Trigger&, Actions&) override {
    auto& changes = *p_.into;
    if (!changes.empty() && changes.back().first == situation.now()) changes.pop_back();
    const double before = changes.empty() ? p_.first : changes.back().second;
    const double value = situation.value(p_.channel);
    if (value != before) changes.emplace_back(situation.now(), value);
  }

 private:
  Parameters p_;
};

}  // namespace noonhouse
