// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/plan_contrast.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "tools/compare/comparison_words.hpp"
#include "tools/scenario/supply_words.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kMostNamed = 3;

/// A supply that can end: when it did first, and the words with which what needs it says so in the log.
struct Supply {
  double (*ended_s)(const RunRecord&);
  const char* ends;     ///< after "In the plan ..."
  const char* lacking;  ///< as devices say it
};
constexpr Supply kSupplies[] = {
    {[](const RunRecord& r) { return r.energy.first_cut_off_s; }, "the battery was cut off", kBatteryCutOff},
    {[](const RunRecord& r) { return r.water.first_dry_s; }, "the pump was cut out for a low tank", kPumpCutOut}};

bool says(const FailureOutcome& failure, std::string_view words) {
  return failure.what.find(words) != std::string::npos;
}

bool of_a_supply(const FailureOutcome& failure) {
  return std::any_of(std::begin(kSupplies), std::end(kSupplies),
                     [&](const Supply& s) { return says(failure, s.lacking); });
}

/// Without when and at what temperature.
std::string_view bare(std::string_view text) {
  text = text.substr(0, text.find("; "));
  return text.substr(0, text.rfind(", day "));
}

/// Devices that stood still for want of it, each once, in the order in which they did.
std::vector<std::string> lackers(const RunRecord& record, const Supply& supply) {
  std::vector<std::string> names;
  for (const FailureOutcome& failure : record.failures)
    if (says(failure, supply.lacking) && std::find(names.begin(), names.end(), failure.subject) == names.end())
      names.push_back(failure.subject);
  return names;
}

bool has_like(const RunRecord& record, const FailureOutcome& failure) {
  return std::any_of(record.failures.begin(), record.failures.end(),
                     [&](const FailureOutcome& other) { return tell_the_same(other, failure); });
}

/// The first failure of a device, from no supply that ended, that the other has not.
const FailureOutcome* own_device_failure(const RunRecord& better, const RunRecord& worse) {
  const FailureOutcome* found = nullptr;
  for (const FailureOutcome& failure : worse.failures) {
    if (failure.kind != "failure" || of_a_supply(failure) || has_like(better, failure)) continue;
    const auto same_subject = [&](const FailureOutcome& f) {
      return f.kind == "failure" && f.subject == failure.subject && !of_a_supply(f);
    };
    if (std::any_of(better.failures.begin(), better.failures.end(), same_subject)) continue;
    if (found == nullptr || failure.time_s < found->time_s) found = &failure;
  }
  return found;
}

/// "fan, mist and pump".
std::string in_words(std::vector<std::string> names) {
  if (names.size() < 2) return fmt::format("{}", fmt::join(names, ""));
  const std::string last = names.back();
  names.pop_back();
  return fmt::format("{} and {}", fmt::join(names, ", "), last);
}

std::string ended_text(const RunRecord& record, const Supply& supply) {
  std::string text = fmt::format("{} on {}", supply.ends, clock_text(record, supply.ended_s(record)));
  std::vector<std::string> names = lackers(record, supply);
  if (names.empty()) return text;
  if (names.size() > kMostNamed) {
    names.resize(kMostNamed);
    names.emplace_back("others");
  }
  return text + fmt::format(", so that {} stood still", in_words(names));
}

}  // namespace

bool tell_the_same(const FailureOutcome& a, const FailureOutcome& b) {
  if (a.kind != b.kind || a.subject != b.subject || bare(a.what) != bare(b.what)) return false;
  if (a.chain.empty() || b.chain.empty()) return a.chain.empty() == b.chain.empty();
  return bare(a.chain.back()) == bare(b.chain.back());
}

std::string plain_difference(const RunRecord& better, const RunRecord& worse) {
  std::vector<std::string> parts;
  for (const Supply& supply : kSupplies)
    if (std::isfinite(supply.ended_s(worse)) && !std::isfinite(supply.ended_s(better)))
      parts.push_back(ended_text(worse, supply));
  if (parts.empty())
    if (const FailureOutcome* failure = own_device_failure(better, worse); failure != nullptr)
      parts.push_back(fmt::format("{} on {}", failure->what, clock_text(worse, failure->time_s)));
  if (parts.empty()) return "";
  return fmt::format("In \"{}\" {}.", worse.plan, fmt::join(parts, "; "));
}

std::string why_behind(const std::vector<RunRecord>& records, const std::vector<RankedPlan>& ranked,
                       std::size_t place) {
  if (place == 0) return "";
  const RunRecord &better = records[ranked[place - 1].index], &worse = records[ranked[place].index];
  const std::string reason = deciding_reason(ranked[place - 1].tally, ranked[place].tally);
  std::string text = reason.empty()
                         ? fmt::format("\"{}\" and \"{}\" come to the same.", better.plan, worse.plan)
                         : fmt::format("\"{}\" is ahead of \"{}\" because {}.", better.plan, worse.plan, reason);
  const std::string difference = plain_difference(better, worse);
  return difference.empty() ? text : text + " " + difference;
}

std::optional<SharedFirst> shared_first(const std::vector<RunRecord>& records) {
  if (records.size() < 2) return std::nullopt;
  SharedFirst out;
  for (const RunRecord& record : records) {
    const FailureOutcome* first = first_failure(record);
    if (first == nullptr || (out.failure != nullptr && !tell_the_same(*first, *out.failure))) return std::nullopt;
    out.latest_s = out.failure == nullptr ? first->time_s : std::max(out.latest_s, first->time_s);
    if (out.failure != nullptr && first->time_s >= out.earliest_s) continue;
    out.record = &record, out.failure = first, out.earliest_s = first->time_s;
  }
  return out;
}

std::string shared_first_text(const SharedFirst& shared, std::string_view arrow, UnitSystem units) {
  std::string text = failure_text(*shared.record, *shared.failure, arrow, units);
  const std::string earliest = clock_text(*shared.record, shared.earliest_s),
                    latest = clock_text(*shared.record, shared.latest_s);
  return earliest == latest ? text : text + "; at the latest " + latest;
}

const FailureOutcome* first_of_its_own(const RunRecord& record, const std::vector<RunRecord>& all) {
  const FailureOutcome* found = nullptr;
  for (const FailureOutcome& failure : record.failures) {
    if (std::all_of(all.begin(), all.end(), [&](const RunRecord& other) { return has_like(other, failure); })) continue;
    if (found == nullptr || failure.time_s < found->time_s) found = &failure;
  }
  return found;
}

std::vector<std::string> shared_notes(const std::vector<RunRecord>& records) {
  std::vector<std::string> out;
  if (records.size() < 2) return out;
  for (const std::string& note : records.front().notes) {
    const auto has = [&](const RunRecord& r) {
      return std::find(r.notes.begin(), r.notes.end(), note) != r.notes.end();
    };
    if (std::all_of(records.begin(), records.end(), has)) out.push_back(note);
  }
  return out;
}

std::vector<std::string> figure_notes() {
  return {
      "Hours too hot or cold: those in which a group's leaves or roots were beyond their limits of heat or cold, each "
      "hour once a group. Hot or cold air, dry or damp air, wet leaves, dry pots, sunburn and light outside what a "
      "kind wants are borne for longer and count by their doses in what is strained, harmed or lost, not here.",
      "Failures: what broke, jammed, lost its signal, ran out or was cut off, by its first cause, so that what "
      "fails again for one cause counts once; harm to plants is not among them."};
}

}  // namespace noonhouse
