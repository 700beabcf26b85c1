// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/core/tick.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

std::string number_word(std::size_t number) {
  static constexpr std::array<std::string_view, 13> kWords{"no",    "one",   "two",  "three", "four",   "five",  "six",
                                                           "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  return number < kWords.size() ? std::string(kWords[number]) : fmt::format("{}", number);
}

std::string groups_words(std::size_t number) {
  return fmt::format("{} group{}", number_word(number), number == 1 ? "" : "s");
}

std::string place_name(const PlaceAnswer& answer, int place) {
  return answer.places.at(static_cast<std::size_t>(place)).name;
}

/// How many groups their whole run loses even where they should stand; empty where it loses none.
std::string lost_words(const PlaceAnswer& answer) {
  const auto lost = static_cast<std::size_t>(count_outcomes(answer, &GroupShown::after).lost);
  if (lost == 0) return "";
  return " " + sentence(fmt::format("{} {} lost all the same, and moving does not save {}", groups_words(lost),
                                    lost == 1 ? "is" : "are", lost == 1 ? "it" : "them"));
}

std::string plan_headline(const StandingPlan& plan, const PlaceAnswer& answer) {
  const auto moves = static_cast<std::size_t>(std::max(0, plan.moves));
  const std::size_t housed = plan.changes.size() - std::min(plan.changes.size(), moves);
  std::string text;
  if (moves > 0) text = sentence(groups_words(moves) + " should move");
  if (housed > 0)
    text += (text.empty() ? "" : " ") + sentence(fmt::format("{} that {} nowhere yet should be put up",
                                                             groups_words(housed), housed == 1 ? "stands" : "stand"));
  const auto stays = [](const PlantGroup& group) { return group.stays; };
  const auto& groups = answer.problem.groups;
  if (text.empty() && (answer.problem.most_moves == 0 || std::all_of(groups.begin(), groups.end(), stays)))
    return "Nothing may be moved, so all stay.";
  if (text.empty())
    text = answer.groups.size() == 1 ? "The one group stands where it is harmed least."
                                     : "All stand where they are harmed least.";
  const int most = answer.problem.most_moves;
  if (most >= 0 && plan.moves >= most)
    text += fmt::format(" No more than {} may move.", groups_words(static_cast<std::size_t>(most)));
  return text;
}

}  // namespace

DayBand band_of(const GroupShown& group, const DayFelt& day) {
  const bool hot = day.peak_k > group.harm_above_k, cold = day.lowest_k < group.harm_below_k;
  if (hot && cold) return day.cold_dose_s > day.heat_dose_s ? DayBand::cold : DayBand::hot;
  if (hot) return DayBand::hot;
  if (cold) return DayBand::cold;
  const bool near = day.peak_k >= group.harm_above_k - kNearLimitK || day.lowest_k <= group.harm_below_k + kNearLimitK;
  return near ? DayBand::near_limit : DayBand::below;
}

std::vector<DaySpan> day_spans(std::size_t days, std::size_t most) {
  std::size_t step = 1;
  while ((days + step - 1) / step > most) step += step == 1 ? 6 : 7;
  std::vector<DaySpan> spans;
  for (std::size_t from = 0; from < days; from += step) spans.push_back({from, std::min(days, from + step)});
  return spans;
}

DayFelt worst_of(const std::vector<DayFelt>& days, DaySpan span) {
  DayFelt worst = days.at(span.from);
  for (std::size_t i = span.from + 1; i < std::min(span.to, days.size()); ++i) {
    const DayFelt& day = days[i];
    if (day.peak_k > worst.peak_k) {
      worst.peak_k = day.peak_k;
      worst.peak_at_s = day.peak_at_s;
    }
    worst.lowest_k = std::min(worst.lowest_k, day.lowest_k);
    worst.peak_air_k = std::max(worst.peak_air_k, day.peak_air_k);
    for (const auto part : {&DayFelt::light_mol_m2, &DayFelt::lit_s, &DayFelt::hot_s, &DayFelt::cold_s, &DayFelt::dry_s,
                            &DayFelt::wet_s, &DayFelt::heat_dose_s, &DayFelt::cold_dose_s})
      worst.*part += day.*part;
  }
  return worst;
}

std::size_t days_felt(const PlaceAnswer& answer) {
  std::size_t days = 0;
  for (const GroupShown& group : answer.groups)
    for (const PlaceFelt& felt : group.felt) days = std::max(days, felt.days.size());
  return days;
}

std::string day_label(const PlaceAnswer& answer, std::size_t day) {
  const auto start = parse_date_time(answer.start);
  if (!start) return fmt::format("day {}", day + 1);
  const auto date = std::chrono::floor<std::chrono::days>(*start) + std::chrono::days(day);
  return format_date(std::chrono::year_month_day(date)).substr(5);
}

std::string worst_hazard_text(const PlaceFelt& felt) {
  const HazardFelt* worst = worst_hazard(felt);
  if (worst == nullptr || worst->most <= 0.0) return "none";
  double mark = 1.0;
  std::string_view name = "strain";
  if (worst->most >= 1.0 && std::isfinite(worst->harmed)) {
    mark = worst->harmed;
    name = "harm";
  }
  if (worst->most >= worst->harmed && std::isfinite(worst->lost)) {
    mark = worst->lost;
    name = "loss";
  }
  constexpr double kSlack = 1e-9;  // so that 0.29, whose hundredfold is below 29 in doubles, stays 0.29
  constexpr double kFar = 15.0;    // doses end at twenty times the last mark
  if (worst->most / mark > kFar) return fmt::format("{} over {:.0f} times {}", worst->what, kFar, name);
  std::string share = fmt::format("{:.2f}", std::floor(100.0 * worst->most / mark + kSlack) / 100.0);
  if (share == "0.00") share = "under 0.01";
  while (share.ends_with('0')) share.pop_back();
  if (share.ends_with('.')) share.pop_back();
  return fmt::format("{} {} of {}", worst->what, share, name);
}

std::string placing_headline(const PlaceAnswer& answer, UnitSystem units) {
  if (const auto* unhoused = std::get_if<Unhoused>(&answer.standing))
    return sentence(text_in_units(unhoused_text(answer.problem, *unhoused, units), units));
  if (answer.groups.empty()) return "There are no plants.";
  return plan_headline(std::get<StandingPlan>(answer.standing), answer) + lost_words(answer);
}

std::string standing_words(const PlaceAnswer& answer, const GroupShown& group) {
  const int now = group.stands_on, should = group.should_stand_on;
  if (now == kNowhere && should == kNowhere) return "stands nowhere yet.";
  if (should == kNowhere) return fmt::format("stands {}.", place_name(answer, now));
  if (now == kNowhere) return fmt::format("stands nowhere yet, should stand {}.", place_name(answer, should));
  if (now == should) return fmt::format("stays {}.", place_name(answer, now));
  const bool lost = group.before.outcome == "lost" && group.after.outcome == "lost";
  return fmt::format("should move{}: now {}, better {}.", lost ? ", though it is lost either way" : "",
                     place_name(answer, now), place_name(answer, should));
}

std::string run_words(const PlaceAnswer& answer) {
  const double days = answer.length_s / kSecondsPerDay;
  const auto start = parse_date_time(answer.start);
  return fmt::format("{:.3g} day{} from {}", days, days == 1.0 ? "" : "s",
                     start ? format_date_time(*start) : answer.start);
}

OutcomeCounts count_outcomes(const PlaceAnswer& answer, PlantOutcome GroupShown::*when) {
  OutcomeCounts counts;
  for (const GroupShown& group : answer.groups) {
    const std::string& outcome = (group.*when).outcome;
    counts.kept += outcome == "kept" ? 1 : 0;
    counts.strained += outcome == "strained" ? 1 : 0;
    counts.harmed += outcome == "harmed" ? 1 : 0;
    counts.lost += outcome == "lost" ? 1 : 0;
  }
  return counts;
}

bool any_change(const PlaceAnswer& answer) {
  const auto* plan = std::get_if<StandingPlan>(&answer.standing);
  return plan != nullptr && !plan->changes.empty();
}

std::string sentence(std::string text) {
  if (text.empty()) return text;
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  if (std::string_view(".!?").find(text.back()) == std::string_view::npos) text += '.';
  return text;
}

}  // namespace noonhouse
