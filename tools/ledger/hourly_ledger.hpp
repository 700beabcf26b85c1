// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "sim/contract/observer.hpp"
#include "tools/ledger/heat_ledger.hpp"

namespace noonhouse {

/// One hour of the book; the last one of a run may be shorter.
struct LedgerSpan {
  Tick begin, end;
  HeatSum heat;
};

/// Keeps the book of a run hour by hour, read from the dense output: it cannot move the run.
class HourlyLedger final : public Observer {
 public:
  /// `length` is the run's. The house outlives the ledger.
  HourlyLedger(const House& house, Tick length);
  void see_start(const Stretch& stretch) override;
  void see_stretch(const Stretch& stretch) override;
  /// The hours that are over, in order and without gaps from the start of the run.
  const std::vector<LedgerSpan>& hours() const { return hours_; }

 private:
  HeatLedger ledger_;
  Tick length_, begin_, due_;
  HeatSum before_;
  std::vector<LedgerSpan> hours_;
};

}  // namespace noonhouse
