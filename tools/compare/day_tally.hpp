// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <span>
#include <utility>

#include "tools/compare/path_fluxes.hpp"

namespace noonhouse {

/// The heaviest calendar day of what some fluxes carried. Runs begin at midnight; a last day that is cut short counts
/// as it is.
class HeaviestDay {
 public:
  explicit HeaviestDay(FluxSum sum) : sum_(std::move(sum)) {}
  /// A day ends, or the run: what each flux has carried since the run's start.
  void end_day(std::span<const double> carried) {
    const double now = sum_.of(carried);
    heaviest_ = std::max(heaviest_, now - before_);
    before_ = now;
  }
  double heaviest() const { return heaviest_; }  ///< [kg or J], 0 before the first day ends
  double total() const { return before_; }       ///< up to the last end of a day

 private:
  FluxSum sum_;
  double before_ = 0.0, heaviest_ = 0.0;
};

/// How far a store goes down and up in a day, on the mean of the days.
class DailySwing {
 public:
  void look(double amount) {
    lowest_ = any_ ? std::min(lowest_, amount) : amount;
    highest_ = any_ ? std::max(highest_, amount) : amount;
    any_ = true;
  }
  /// The day is over; looks that come after belong to the next.
  void end_day() {
    if (!any_) return;
    sum_ += highest_ - lowest_;
    ++days_;
    any_ = false;
  }
  /// Of whole days; of what there was before the first is over.
  double mean() const { return days_ > 0 ? sum_ / days_ : highest_ - lowest_; }

 private:
  double lowest_ = 0.0, highest_ = 0.0, sum_ = 0.0;
  int days_ = 0;
  bool any_ = false;
};

}  // namespace noonhouse
