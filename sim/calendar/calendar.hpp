// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <compare>
#include <cstdint>
#include <map>
#include <utility>

#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {

/// The order of what happens at one instant. Forcing breaks come before all of them and recording after:
/// neither needs an entry, since breaks bound the steps and observers read the dense output.
enum class Phase : std::uint8_t { crossing, controller, device };

/// The key of an entry: a total order, written down once. Equal instants go by phase, equal phases by
/// the order of booking, so that the same scenario gives the same run on any machine.
struct CalendarKey {
  Tick when;
  Phase phase = Phase::device;
  std::uint64_t sequence = 0;
  friend constexpr auto operator<=>(const CalendarKey&, const CalendarKey&) = default;
};

/// What is due and when. Entries can be cancelled by the key that booking returned.
template <class Payload>
class Calendar {
 public:
  CalendarKey book(Tick when, Phase phase, Payload payload) {
    const CalendarKey key{when, phase, next_sequence_++};
    entries_.emplace(key, std::move(payload));
    return key;
  }
  /// True when the entry was still there.
  bool cancel(const CalendarKey& key) { return entries_.erase(key) == 1; }
  bool empty() const { return entries_.empty(); }
  Tick next_time() const { return entries_.empty() ? kNever : entries_.begin()->first.when; }
  std::pair<CalendarKey, Payload> take_next() {
    NOON_ASSERT(!entries_.empty());
    auto node = entries_.extract(entries_.begin());
    return {node.key(), std::move(node.mapped())};
  }

 private:
  std::map<CalendarKey, Payload> entries_;
  std::uint64_t next_sequence_ = 0;
};

}  // namespace noonhouse
