// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/fault_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "sim/core/tick.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/faults/fault_advice.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kLongestShown = 12, kEndShown = 3;

long long whole(double value) { return static_cast<long long>(std::floor(value)); }

std::string hours_and_minutes(long long minutes) {
  if (minutes < 60) return fmt::format("{} min", minutes);
  if (minutes % 60 == 0) return fmt::format("{} h", minutes / 60);
  return fmt::format("{} h {} min", minutes / 60, minutes % 60);
}

std::string worst_sentence(const FaultSheet& sheet) {
  if (harmful_faults(sheet) == 0) return "No failure that was tried harms a plant that this plan keeps.";
  const FaultOutcome& worst = sheet.faults.front();
  return fmt::format(
      "The failure that leaves least time: {}. At its worst moment, {}, it leaves {} until plants come to harm.",
      fault_name(worst), fault_clock(sheet, worst.worst_s), grace_text(worst.worst_grace_s));
}

std::string after_the_worst(const FaultOutcome& worst, const FaultAddition& addition) {
  if (!leaves_more(worst, addition)) return ", but none after the worst one";
  if (!std::isfinite(addition.grace_s))
    return fmt::format(", after the worst one no harm within {}", grace_text(addition.followed_s));
  return fmt::format(", after the worst one {} in place of {}", grace_text(addition.grace_s),
                     grace_text(worst.worst_grace_s));
}

std::string addition_sentence(const FaultSheet& sheet) {
  const std::size_t harmful = harmful_faults(sheet);
  const bool tried = harmful > 0 && !sheet.faults.front().additions.empty();
  if (!tried) return "";
  const std::vector<AdditionGain> gains = addition_gains(sheet);
  if (gains.empty()) return "No addition that was tried leaves more time.";
  const AdditionGain& most = gains.front();
  std::string text =
      fmt::format("Of the additions tried, fitting {} gains most: more time after {} of the {} failures that do harm",
                  most.name, most.lengthened, harmful);
  const FaultOutcome& worst = sheet.faults.front();
  for (const FaultAddition& addition : worst.additions)
    if (addition.name == most.name) text += after_the_worst(worst, addition);
  return text + ".";
}

std::string day_of(const FaultSheet& sheet, double time_s) {
  const std::string clock = fault_clock(sheet, time_s);
  return clock.substr(0, clock.rfind(' '));
}

std::string house_sentence(const FaultSheet& sheet) {
  if (!sheet.house_in_danger) return "";
  std::vector<std::string> alone, worse;
  for (const FaultOutcome& fault : sheet.faults)
    if (!fault.breaks.empty()) (only_worsens(fault) ? worse : alone).push_back(fault_name(fault));
  if (alone.empty() && worse.empty())
    return "Hail and gusts break nothing of the house that they do not break without a failure as soon and as much of "
           "it.";
  const auto part = [](const std::vector<std::string>& names, const char* what) {
    const bool one = names.size() == 1;
    return fmt::format("{} of the failures break{} {} {}: {}.", names.size(), one ? "s" : "", what, one ? "it" : "them",
                       fmt::join(names, "; "));
  };
  std::string text = "The house:";
  if (!alone.empty()) text += " " + part(alone, "what hail and gusts leave whole without");
  if (!worse.empty()) text += " " + part(worse, "sooner, or more of, what hail and gusts break without");
  return text;
}

std::string anyway_sentence(const FaultSheet& sheet) {
  if (sheet.lost_anyway.empty())
    return "Without a failure this plan harms no plants; those that it strains do not count here.";
  return fmt::format(
      "Even without a failure this plan harms or loses {}; that counts here only where a failure brings "
      "it sooner or makes it worse.",
      fmt::join(sheet.lost_anyway, ", "));
}

}  // namespace

std::string grace_text(double grace_s) {
  if (!std::isfinite(grace_s)) return "-";
  if (grace_s < kSecondsPerMinute) return "under 1 min";
  if (grace_s < 3.0 * kSecondsPerHour) return hours_and_minutes(whole(grace_s / kSecondsPerMinute));
  if (grace_s < kSecondsPerDay) return hours_and_minutes(10 * whole(grace_s / (10.0 * kSecondsPerMinute)));
  const long long hours = whole(grace_s / kSecondsPerHour);
  return hours < 72 ? fmt::format("{} h", hours) : fmt::format("{} days {} h", hours / 24, hours % 24);
}

std::string short_grace_text(double grace_s) {
  if (!std::isfinite(grace_s)) return ".";
  if (grace_s < kSecondsPerMinute) return "<1m";
  if (grace_s < 100.0 * kSecondsPerMinute) return fmt::format("{}m", whole(grace_s / kSecondsPerMinute));
  const long long half_hours = whole(grace_s / (0.5 * kSecondsPerHour));
  if (half_hours < 20) return fmt::format("{}{}h", half_hours / 2, half_hours % 2 == 0 ? "" : "½");
  return half_hours < 200 ? fmt::format("{}h", half_hours / 2) : fmt::format("{}d", half_hours / 48);
}

std::string horizon_text(const FaultSheet& sheet) {
  return hours_and_minutes(whole(sheet.horizon_s / kSecondsPerMinute));
}

std::string fault_clock(const FaultSheet& sheet, double time_s) {
  RunRecord record;
  record.start = sheet.start;
  return clock_text(record, time_s);
}

std::string fault_name(const FaultOutcome& fault) { return fault.of + " " + fault.words; }

std::string fault_cost_text(const FaultOutcome& fault) {
  std::string text;
  for (const char* state : {"lost", "harmed"}) {
    std::vector<std::string> names;
    for (const FaultCost& cost : fault.costs)
      if (cost.state == state) names.push_back(cost.plants);
    if (!names.empty()) text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", state, fmt::join(names, ", "));
  }
  for (const bool anyway : {false, true}) {
    std::vector<std::string> broken;
    for (const FaultBreak& b : fault.breaks)
      if (b.anyway == anyway) broken.push_back(b.of);
    if (!broken.empty())
      text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", anyway ? "broken sooner or more of it" : "broken",
                          fmt::join(broken, ", "));
  }
  return text.empty() ? "-" : text;
}

int grace_step(double grace_s) {
  if (!std::isfinite(grace_s)) return 0;
  if (grace_s < 0.25 * kSecondsPerHour) return 5;
  if (grace_s < kSecondsPerHour) return 4;
  if (grace_s < 3.0 * kSecondsPerHour) return 3;
  return grace_s < 8.0 * kSecondsPerHour ? 2 : 1;
}

const char* grace_step_text(int step) {
  constexpr const char* kWords[] = {"no harm seen", "8 h and more", "under 8 h",
                                    "under 3 h",    "under 1 h",    "under 15 min"};
  return kWords[step];
}

std::string told_day_text(const FaultSheet& sheet) {
  const std::string hottest = day_of(sheet, sheet.hottest_day_s);
  if (sheet.told_day_s == sheet.hottest_day_s) return hottest + ", the hottest outdoors";
  return fmt::format("{}, as asked; the hottest outdoors is {}", day_of(sheet, sheet.told_day_s), hottest);
}

std::size_t harmful_faults(const FaultSheet& sheet) {
  return static_cast<std::size_t>(
      std::count_if(sheet.faults.begin(), sheet.faults.end(), [](const FaultOutcome& fault) { return fault.harms; }));
}

std::vector<std::string> fault_answer(const FaultSheet& sheet) {
  std::vector<std::string> out{worst_sentence(sheet)};
  if (const std::string additions = addition_sentence(sheet); !additions.empty()) out.push_back(additions);
  if (const std::string house = house_sentence(sheet); !house.empty()) out.push_back(house);
  out.push_back(anyway_sentence(sheet));
  return out;
}

std::string harmless_text(const FaultSheet& sheet) {
  std::vector<std::string> names;
  for (const FaultOutcome& fault : sheet.faults)
    if (!fault.harms && fault.breaks.empty()) names.push_back(fault_name(fault));
  return names.empty() ? "" : fmt::format("Not seen to harm anything in this run: {}.", fmt::join(names, "; "));
}

std::string fault_search_text(const FaultSheet& sheet) {
  const std::string house =
      sheet.house_in_danger ? "What of the house breaks was looked for with a failure two hours before each fall of "
                              "hail and each day's gusts that reach what something bears. "
                            : "No hail or gusts of this run can break anything of the house. ";
  return fmt::format(
      "How it was searched: each failure from the midnight of {}, the hottest outdoors, and where that does harm at "
      "every full hour (reboots and readings that stand still at every full hour in any case); on the other days at "
      "about the hour that is worst there; then every ten minutes around the worst moment. Each was followed for {}; "
      "what does no harm on that day and adds up from day to day, from the start to the end of the run, the rest from "
      "the midnight of the next hottest day, then the other days too. Costs are those of the day after the first harm. "
      "{}{} runs in all. A shorter time between two of those moments is not seen; times are rounded down.",
      day_of(sheet, sheet.hottest_day_s), horizon_text(sheet), house, sheet.runs);
}

std::vector<std::string> shown_chain(const FaultOutcome& fault, UnitSystem units) {
  std::vector<std::string> chain = fault.chain, out;
  chain.erase(std::unique(chain.begin(), chain.end()), chain.end());  // a device may repeat what was done to it
  const std::size_t links = chain.size();
  const std::size_t left_out = links > kLongestShown ? links - kLongestShown : 0;
  const std::size_t gap = left_out > 0 ? kLongestShown - kEndShown : links;
  for (std::size_t i = 0; i < links; ++i) {
    if (i == gap) {
      out.push_back(fmt::format("({} more between)", left_out));
      i += left_out;
    }
    out.push_back(text_in_units(chain[i], units));
  }
  return out;
}

}  // namespace noonhouse
