// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "sim/run/run.hpp"
#include "tests/support/toy_run.hpp"

namespace noonhouse::toy {

/// A lump [1e4 J/K] that loses 10 W/K to a channel's temperature and is heated by another channel [W].
struct Lump {
  RunPlan plan;
  NodeId lump;
  ChannelId outdoor_k, heat_w, forbid;  ///< the last one moves nothing: agents may heed it
  ExchangeId heating;
  static constexpr double kTimeConstant_s = 1000.0;
  explicit Lump(Tick length, double start_k = 290.0) {
    HouseGraph graph;
    lump = graph.node("lump", ThermalMass{1e4}, {start_k}, {1e-5});
    outdoor_k = graph.channel("outdoor", "K", 280.0);
    heat_w = graph.channel("heat", "W", 0.0);
    forbid = graph.channel("forbidden", "1", 0.0);
    const auto out = graph.account("out", Quantity::energy), mains = graph.account("mains", Quantity::energy);
    graph.exchange("loss", "x", Conduction{10.0}, {lump, outdoor_k}, {{{lump, out}}});
    heating = graph.exchange("heating", "x", Supply<Quantity::energy>{}, {heat_w}, {{{mains, lump}}});
    plan.house = graph.compile();
    plan.forcing = std::make_unique<LineForcing>(1_h, std::vector<std::pair<ChannelId, LineForcing::Signal>>{});
    plan.length = length;
  }
  void agent(std::string name, Scripted::Reaction reaction, std::vector<ChannelId> follows = {}, bool decides = false) {
    plan.agents.push_back(scripted(std::move(name), std::move(reaction), std::move(follows), decides));
  }
};

inline std::vector<double> times_s(const std::vector<LogEntry>& log) {
  std::vector<double> out;
  for (const auto& entry : log) out.push_back(seconds(entry.when));
  return out;
}

inline std::vector<std::string> texts(const std::vector<LogEntry>& log) {
  std::vector<std::string> out;
  for (const auto& entry : log) out.push_back(entry.what);
  return out;
}

}  // namespace noonhouse::toy
