// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <utility>

#include "sim/contract/agent.hpp"

namespace noonhouse {

/// The plan of an agent A that is fully described by its const parameters A::Parameters, which name the
/// channels it follows.
template <class A>
class PlanOf final : public AgentPlan {
 public:
  using Parameters = typename A::Parameters;
  explicit PlanOf(Parameters parameters) : parameters_(std::move(parameters)) {}
  std::unique_ptr<Agent> start() const override { return std::make_unique<A>(parameters_); }
  std::unique_ptr<Agent> copy(const Agent& agent) const override {
    return std::make_unique<A>(static_cast<const A&>(agent));
  }
  std::vector<ChannelId> follows() const override { return A::follows(parameters_); }
  bool decides() const override { return A::kDecides; }

 private:
  Parameters parameters_;
};

}  // namespace noonhouse
