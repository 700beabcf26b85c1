// SPDX-License-Identifier: Apache-2.0
#include "tools/report/event_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_map>

#include "tools/compare/comparison_words.hpp"

namespace noonhouse {
namespace {

using EventIndex = std::unordered_map<std::int64_t, const RecordEvent*>;
constexpr std::size_t kLongestChain = 12;

std::vector<std::string> chain_of(const RunRecord& record, const RecordEvent& event, const EventIndex& by_id,
                                  UnitSystem units) {
  std::vector<std::string> chain;
  std::int64_t cause = event.cause;
  std::vector<std::int64_t> seen{event.id};
  while (chain.size() < kLongestChain) {
    const auto found = by_id.find(cause);
    if (found == by_id.end() || std::find(seen.begin(), seen.end(), cause) != seen.end()) break;
    const RecordEvent& earlier = *found->second;
    chain.push_back(fmt::format("{}, {}: {}", clock_text(record, earlier.time_s), earlier.subject,
                                text_in_units(earlier.what, units)));
    seen.push_back(cause);
    cause = earlier.cause;
  }
  return chain;
}

}  // namespace

ShownEvents shown_events(const RunRecord& record, UnitSystem units) {
  EventIndex by_id;
  for (const RecordEvent& event : record.events) by_id.emplace(event.id, &event);
  const bool without_actions = record.events.size() > kMostEvents;
  ShownEvents shown;
  for (const RecordEvent& event : record.events) {
    const bool fits = shown.events.size() < kMostEvents && !(without_actions && event.kind == "action");
    if (fits) {
      shown.events.push_back({&event, text_in_units(event.what, units), chain_of(record, event, by_id, units)});
    } else {
      ++shown.left_out;
    }
  }
  std::stable_sort(shown.events.begin(), shown.events.end(),
                   [](const ShownEvent& a, const ShownEvent& b) { return a.event->time_s < b.event->time_s; });
  return shown;
}

}  // namespace noonhouse
