// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "sim/contract/agent_plan.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// The way of the charge that failed cells held, out of the battery. Input: the battery's charge [J]. Flux [J]:
/// out of it. Carries nothing by itself; CellLoss moves amounts along it at an instant.
struct LostWithCells {
  static constexpr std::string_view kName = "charge lost with cells";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::charge};
  template <class S>
  void flux(const std::array<S, 1>&, std::array<S, 1>& q) const {
    q[0] = S(0.0);
  }
};

/// What failed cells held leaves the battery: charge is spread evenly, so when the share of working cells falls from n
/// to m, (1 - m / n) of the charge goes at once. Cells that are put in again come empty.
class CellLoss final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input charge;      ///< [J]
    ChannelId cells;   ///< share that works, 0 to 1
    ExchangeId way;    ///< LostWithCells, out of the battery
    ChannelId lost{};  ///< set to all that went so far [J]; may be none
  };
  static constexpr bool kDecides = true;  // before the guard, which must see what is left
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.cells}; }

  explicit CellLoss(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    const double cells = situation.value(p_.cells);
    const double charge_j = situation.value(p_.charge);
    if (trigger.kind == Trigger::Kind::channel_changed && cells < cells_ && charge_j > 0.0) {
      const double lost_j = charge_j * (1.0 - cells / cells_);
      actions.transfer(p_.way, 0, lost_j);
      lost_j_ += lost_j;
      if (p_.lost.valid()) actions.set(p_.lost, lost_j_, trigger.cause);
    }
    cells_ = cells;
  }

 private:
  Parameters p_;
  double cells_ = 1.0, lost_j_ = 0.0;
};

}  // namespace noonhouse
