// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What failed cells held leaves the battery: charge is spread evenly, so when the share of working cells falls from n
/// to m, (1 - m / n) of the charge goes along the given flux at once. Cells that are put in again come empty.
class CellLoss final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input charge;     ///< [J]
    ChannelId cells;  ///< share that works, 0 to 1
    ExchangeId bus;
    int flux = 4;  ///< of the bus, from the battery to what is lost
  };
  static constexpr bool kDecides = true;  // before the guard, which must see what is left
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.cells}; }

  explicit CellLoss(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    const double cells = situation.value(p_.cells);
    const double charge_j = situation.value(p_.charge);
    if (trigger.kind == Trigger::Kind::channel_changed && cells < cells_ && charge_j > 0.0)
      actions.transfer(p_.bus, p_.flux, charge_j * (1.0 - cells / cells_));
    cells_ = cells;
  }

 private:
  Parameters p_;
  double cells_ = 1.0;
};

}  // namespace noonhouse
