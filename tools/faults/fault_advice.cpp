// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/fault_advice.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <set>

#include "tools/compare/comparison_layout.hpp"
#include "tools/faults/fault_words.hpp"

namespace noonhouse {
namespace {

constexpr double kMoreS = 120.0;  ///< instants of harm move by seconds between runs; less than this is no gain

/// None counts as longer than any time.
double counted_time(double grace_s) {
  return std::isfinite(grace_s) ? grace_s : std::numeric_limits<double>::infinity();
}

/// "day 4 at 18:57"
std::string day_at(const FaultSheet& sheet, double time_s) {
  const std::string clock = fault_clock(sheet, time_s);
  const auto space = clock.rfind(' ');
  return clock.substr(0, space) + " at " + clock.substr(space + 1);
}

/// "no harm within 24 h": as long as it was followed.
std::string no_harm_text(const FaultAddition& addition) {
  return fmt::format("no harm within {}", grace_text(addition.followed_s));
}

/// What one addition does after a failure: "no harm within 24 h", "1 h 24 min more", "12 min less", "nothing".
std::string gain_text(const FaultOutcome& fault, const FaultAddition& addition) {
  if (!std::isfinite(addition.grace_s)) return no_harm_text(addition);
  const double gained_s = addition.grace_s - fault.worst_grace_s;
  if (gained_s >= kMoreS) return grace_text(gained_s) + " more";
  return gained_s <= -kMoreS ? grace_text(-gained_s) + " less" : "nothing";
}

}  // namespace

bool leaves_more(const FaultOutcome& fault, const FaultAddition& addition) {
  return counted_time(addition.grace_s) >= fault.worst_grace_s + kMoreS;
}

const FaultAddition* longest_addition(const FaultOutcome& fault) {
  const auto longest = std::max_element(
      fault.additions.begin(), fault.additions.end(),
      [](const FaultAddition& a, const FaultAddition& b) { return counted_time(a.grace_s) < counted_time(b.grace_s); });
  return longest != fault.additions.end() && leaves_more(fault, *longest) ? &*longest : nullptr;
}

std::string best_addition_text(const FaultOutcome& fault) {
  if (fault.additions.empty()) return "-";
  const FaultAddition* best = longest_addition(fault);
  if (best == nullptr) return "none";
  return best->name + ": " + (std::isfinite(best->grace_s) ? grace_text(best->grace_s) : no_harm_text(*best));
}

std::string additions_text(const FaultOutcome& fault) {
  if (fault.additions.empty()) return "";
  std::vector<std::string> parts;
  bool any = false;
  for (const FaultAddition& addition : fault.additions) {
    const std::string gain = gain_text(fault, addition);
    any = any || gain != "nothing";
    parts.push_back(addition.name + ": " + gain);
  }
  return any ? fmt::format("{}", fmt::join(parts, "; ")) : "none of them changes it";
}

std::string tried_additions(const FaultSheet& sheet) {
  std::set<std::string> names;
  for (const FaultOutcome& fault : sheet.faults)
    for (const FaultAddition& addition : fault.additions) names.insert(addition.name);
  std::string out;
  for (auto name = names.begin(); name != names.end(); ++name)
    out += (name == names.begin() ? "" : std::next(name) == names.end() ? " and " : ", ") + *name;
  return out;
}

std::vector<std::string> breaking_faults(const FaultSheet& sheet) {
  std::vector<std::string> out;
  for (const FaultOutcome& fault : sheet.faults)
    if (!fault.breaks.empty()) out.push_back(fault_name(fault));
  return out;
}

bool only_worsens(const FaultOutcome& fault) {
  return !fault.breaks.empty() &&
         std::all_of(fault.breaks.begin(), fault.breaks.end(), [](const FaultBreak& b) { return b.anyway; });
}

std::string breaks_text(const FaultSheet& sheet, const FaultOutcome& fault) {
  std::string text;
  for (std::size_t i = 0; i < fault.breaks.size(); ++i) {
    const FaultBreak& b = fault.breaks[i];
    text += i == 0 ? "breaks" : " and";
    text += fmt::format(" the {} on {} ({})", b.of, day_at(sheet, b.time_s), b.words);
    const bool last = i + 1 == fault.breaks.size() || fault.breaks[i + 1].failed_s != b.failed_s;
    if (last) text += fmt::format(", when it fails on {}", day_at(sheet, b.failed_s));
  }
  return text;
}

std::string next_step_text(const FaultSheet& sheet) {
  const std::size_t harmful = harmful_faults(sheet);
  std::vector<std::string> steps;
  std::vector<AdditionGain> gains = addition_gains(sheet);
  const auto most = std::max_element(gains.begin(), gains.end(), [](const AdditionGain& a, const AdditionGain& b) {
    return a.lengthened < b.lengthened;
  });
  if (most != gains.end())
    steps.push_back(
        fmt::format("Fit {}: of the additions tried it helps after most failures, {} of the {} that do harm.",
                    most->name, most->lengthened, harmful));
  else if (!tried_additions(sheet).empty())
    steps.emplace_back("No single addition that was tried helps.");
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    if (longest_addition(fault) != nullptr) continue;
    steps.push_back(fmt::format("Be ready to put this right within {} at its worst moment{}: {}.",
                                unbroken(grace_text(fault.worst_grace_s)),
                                fault.additions.empty() ? "" : ", since no addition helps", fault_name(fault)));
    break;
  }
  if (const auto names = breaking_faults(sheet); !names.empty())
    steps.push_back(fmt::format("Look after these before hail and gusts come: {}.", fmt::join(names, "; ")));
  return steps.empty() ? "" : fmt::format("What to do next: {}", fmt::join(steps, " "));
}

std::vector<AdditionGain> addition_gains(const FaultSheet& sheet) {
  std::vector<AdditionGain> gains;
  for (const FaultOutcome& fault : sheet.faults) {
    for (const FaultAddition& addition : fault.additions) {
      auto found = std::find_if(gains.begin(), gains.end(), [&](const auto& g) { return g.name == addition.name; });
      if (found == gains.end()) found = gains.insert(gains.end(), {addition.name, 0, 0.0});
      const auto counted = [&](double grace_s) { return std::min(counted_time(grace_s), sheet.horizon_s); };
      found->gained_s += counted(addition.grace_s) - counted(fault.worst_grace_s);
      if (leaves_more(fault, addition)) ++found->lengthened;
    }
  }
  std::erase_if(gains, [](const AdditionGain& gain) { return gain.lengthened == 0 || gain.gained_s < 0.0; });
  std::stable_sort(gains.begin(), gains.end(), [](const AdditionGain& a, const AdditionGain& b) {
    return a.gained_s != b.gained_s ? a.gained_s > b.gained_s : a.lengthened > b.lengthened;
  });
  return gains;
}

}  // namespace noonhouse
