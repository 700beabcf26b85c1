// SPDX-License-Identifier: Apache-2.0
#include "tools/ledger/hourly_ledger.hpp"

#include <algorithm>

namespace noonhouse {
namespace {
constexpr Tick kHour = 60_min;
}

HourlyLedger::HourlyLedger(const House& house, Tick length)
    : ledger_(house), length_(length), due_(std::min(kHour, length)) {}

void HourlyLedger::see_start(const Stretch& stretch) {
  begin_ = stretch.begin();
  before_ = ledger_.book(stretch.potentials_at(begin_), stretch.carried_at(begin_));
}

void HourlyLedger::see_stretch(const Stretch& stretch) {
  while (begin_ < due_ && due_ <= stretch.end()) {
    const HeatSum now = ledger_.book(stretch.potentials_at(due_), stretch.carried_at(due_));
    hours_.push_back({begin_, due_, now - before_});
    before_ = now;
    begin_ = due_;
    due_ = std::min(due_ + kHour, length_);
  }
}

}  // namespace noonhouse
