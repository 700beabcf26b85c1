// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/house_breaks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <tuple>
#include <variant>

#include "tools/faults/fault_words.hpp"

namespace noonhouse {
namespace {

constexpr double kMoreBroken = 0.05;
constexpr Tick kSooner = 15_min;
constexpr Tick kAhead = 2_h, kJustAhead = 2_min, kTellsUntil = 5_min;

bool says(const LogEntry& entry, const char* words) { return entry.what.find(words) != std::string::npos; }

const Breakage* same_of(const std::vector<Breakage>& among, const Breakage& one) {
  const auto found =
      std::find_if(among.begin(), among.end(), [&](const Breakage& b) { return b.of == one.of && b.by == one.by; });
  return found == among.end() ? nullptr : &*found;
}

bool is_more(const Breakage& b, const Breakage& without) { return b.share >= without.share + kMoreBroken; }
bool is_sooner(const Breakage& b, const Breakage& without) { return b.when + kSooner < without.when; }

Tick put_in_before(const FaultPoint& fault, const Danger& danger) {
  switch (fault.what) {
    case FailureKind::reboots:
      return std::max(Tick{0}, danger.from - kJustAhead);
    case FailureKind::tank_leaks:
    case FailureKind::panel_covered:
    case FailureKind::cell_dead:
      return Tick{0};
    default:
      const Tick when = std::max(Tick{0}, danger.from - kAhead);
      return when - Tick{when.ms % (1_h).ms};
  }
}

}  // namespace

std::vector<Breakage> breakages(const std::vector<LogEntry>& log) {
  std::vector<Breakage> out;
  const auto note = [&](const LogEntry& entry, const char* by) -> Breakage& {
    const auto known =
        std::find_if(out.begin(), out.end(), [&](const Breakage& b) { return b.of == entry.subject && b.by == by; });
    if (known != out.end()) return *known;
    return out.emplace_back(Breakage{entry.subject, by, entry.when});
  };
  constexpr const char* kHail = "broken by hail";
  const std::string over = "hail is over: ";
  for (const LogEntry& entry : log) {
    if (says(entry, "is broken by hail of")) note(entry, kHail);
    if (const auto at = entry.what.find(over); at != std::string::npos)
      note(entry, kHail).share = std::strtod(entry.what.c_str() + at + over.size(), nullptr) / 100.0;
    if (says(entry, "is blown off: ")) note(entry, "blown off by the wind");
    if (says(entry, "is torn open by the wind")) note(entry, "torn open by the wind");
  }
  return out;
}

std::vector<Breakage> new_breakages(const std::vector<Breakage>& with, const std::vector<Breakage>& without) {
  std::vector<Breakage> out;
  for (const Breakage& b : with) {
    const Breakage* own = same_of(without, b);
    if (own == nullptr || is_more(b, *own) || is_sooner(b, *own)) out.push_back(b);
  }
  return out;
}

std::string breakage_words(const Breakage& b, const Breakage* without) {
  if (without == nullptr) return b.share >= 1.0 ? b.by : fmt::format("{:.0f} % of it {}", 100.0 * b.share, b.by);
  const std::string much = is_more(b, *without) ? fmt::format("{:.0f} % of it in place of {:.0f} % {}", 100.0 * b.share,
                                                              100.0 * without->share, b.by)
                                                : b.by;
  return is_sooner(b, *without) ? fmt::format("{}, {} sooner", much, grace_text(seconds(without->when - b.when)))
                                : much;
}

std::vector<Danger> dangers(const PlanScenario& plan, const Assembly& assembly, const SiteTable& table) {
  std::vector<Danger> out;
  for (const auto& [name, hazard] : plan.spec.hazards)
    if (const auto* hail = std::get_if<HailSpec>(&hazard.what)) out.push_back({begin_of(*hail), end_of(*hail)});
  std::map<std::int64_t, std::pair<double, Tick>> strongest;  // by day
  for (std::size_t k = 0; k < table.instants(); ++k) {
    const Tick when = table.grid().when(k);
    auto& [gust, at] = strongest[when.ms / kDay.ms];
    const double here = table.gust_factor() * table.instant(k).wind_m_s;
    if (here > gust) std::tie(gust, at) = std::pair(here, when);
  }
  for (const auto& [day, gust] : strongest)
    if (gust.first >= assembly.breaks_at_gust_m_s) out.push_back({gust.second, gust.second + 1_h});
  std::erase_if(out, [&](const Danger& d) { return d.from >= assembly.plan.length; });
  return out;
}

std::vector<FaultBreak> house_breaks(const FaultBranches& branches, const FaultPoint& fault,
                                     const std::vector<Danger>& dangers) {
  const std::vector<Breakage> own = breakages(branches.log());
  std::map<Tick, Tick> tries;  // when it fails, and until when that is followed
  for (const Danger& danger : dangers) {
    Tick& until = tries[put_in_before(fault, danger)];
    until = std::max(until, std::min(danger.until + kTellsUntil, branches.length()));
  }
  std::map<std::pair<std::string, std::string>, FaultBreak> found;
  for (const auto& [when, until] : tries)  // from the earliest on, so that the latest stays
    for (const Breakage& b : new_breakages(breakages(branches.log_of(fault, when, until)), own)) {
      const Breakage* without = same_of(own, b);
      found[{b.of, b.by}] = {b.of, breakage_words(b, without), seconds(b.when), seconds(when), without != nullptr};
    }
  std::vector<FaultBreak> out;
  for (auto& [key, one] : found) out.push_back(std::move(one));
  std::stable_sort(out.begin(), out.end(),
                   [](const FaultBreak& a, const FaultBreak& b) { return a.time_s < b.time_s; });
  return out;
}

}  // namespace noonhouse
