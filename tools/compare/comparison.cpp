// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

#include "sim/core/errors.hpp"
#include "tools/compare/plan_contrast.hpp"

namespace noonhouse {
namespace {

constexpr double kJoulesPerWattHour = 3600.0;

/// A whole number to rank by, less is better; a value that is no number ranks last.
double whole(double value) {
  return std::isfinite(value) ? std::round(value) : std::numeric_limits<double>::infinity();
}

struct Criterion {
  double (*cost)(const PlanTally&);  ///< less is better
  const char* reason;
};

constexpr std::array<Criterion, 8> kCriteria{{
    {[](const PlanTally& t) { return -static_cast<double>(t.kept); }, "it keeps more plants"},
    {[](const PlanTally& t) { return static_cast<double>(t.lost); }, "it loses fewer plants"},
    {[](const PlanTally& t) { return static_cast<double>(t.harmed); }, "it harms fewer plants"},
    {[](const PlanTally& t) { return whole(t.hours_beyond); }, "its plants are too hot or too cold for fewer hours"},
    {[](const PlanTally& t) { return static_cast<double>(t.failures); }, "less fails"},
    {[](const PlanTally& t) { return whole(t.water_used_kg); }, "it uses less water"},
    {[](const PlanTally& t) { return whole(t.energy_used_j / kJoulesPerWattHour); }, "it uses less charge"},
    {[](const PlanTally& t) { return whole(t.cost_a_season); }, "it costs less a season"},
}};

/// The first criterion in which the two differ, or null.
const Criterion* deciding(const PlanTally& a, const PlanTally& b) {
  const bool both_cost = std::isfinite(a.cost_a_season) && std::isfinite(b.cost_a_season);
  const auto differs = [&](const Criterion& c) {
    return c.cost(a) != c.cost(b) && (both_cost || &c != &kCriteria.back());
  };
  const auto* found = std::find_if(kCriteria.begin(), kCriteria.end(), differs);
  return found == kCriteria.end() ? nullptr : found;
}

/// Costs compare only where every plan has one, in one currency: with some left out the order would not be strict.
void drop_costs_unless_all_known(const std::vector<RunRecord>& records, std::vector<RankedPlan>& ranked) {
  const bool all = std::all_of(records.begin(), records.end(), [&](const RunRecord& r) {
    return r.cost.known() && r.cost.currency == records.front().cost.currency;
  });
  if (all) return;
  for (RankedPlan& plan : ranked) plan.tally.cost_a_season = kNotHappened;
}

/// What a failure began with, without when: the last link of its chain, or the failure itself.
std::string root_cause(const FailureOutcome& failure) {
  if (failure.chain.empty()) return failure.what;
  const std::string& link = failure.chain.back();
  return link.substr(0, link.rfind(", day "));
}

std::string plant_count(int count) { return count == 1 ? "1 plant group" : fmt::format("{} plant groups", count); }

std::string kept_words(const PlanTally& tally) {
  if (tally.plants == 0) return "has no plants to keep";
  if (tally.kept == tally.plants) {
    return tally.plants == 1 ? "keeps the one plant group" : fmt::format("keeps all {}", plant_count(tally.plants));
  }
  if (tally.kept == 0) {
    return tally.plants == 1 ? "does not keep the one plant group"
                             : fmt::format("keeps none of {}", plant_count(tally.plants));
  }
  return fmt::format("keeps {} of {}", tally.kept, plant_count(tally.plants));
}

}  // namespace

PlanTally tally_plan(const RunRecord& record) {
  PlanTally tally;
  tally.plants = static_cast<int>(record.plants.size());
  for (const PlantOutcome& plant : record.plants) {
    if (plant.outcome == "kept") {
      ++tally.kept;
    } else if (plant.outcome == "strained") {
      ++tally.strained;
    } else if (plant.outcome == "harmed") {
      ++tally.harmed;
    } else if (plant.outcome == "lost") {
      ++tally.lost;
    } else {
      throw UserError(ErrorKind::results_unreadable,
                      fmt::format("the results of plan '{}' give plant '{}' the outcome '{}'; known are kept, "
                                  "strained, harmed and lost. Was the file written by this program?",
                                  record.plan, plant.name, plant.outcome));
    }
    tally.hours_beyond += plant.hours_beyond;
  }
  std::set<std::string> roots;
  for (const FailureOutcome& failure : record.failures)
    if (failure.kind == "failure") roots.insert(root_cause(failure));
  tally.failures = static_cast<int>(roots.size());
  tally.water_used_kg = record.water.used_kg();
  tally.energy_used_j = record.energy.loads_j;
  if (record.cost.known()) tally.cost_a_season = record.cost.per_season;
  return tally;
}

std::vector<RankedPlan> rank_plans(const std::vector<RunRecord>& records) {
  if (records.empty()) {
    throw UserError(ErrorKind::usage, "nothing to compare: name at least one results file");
  }
  std::vector<RankedPlan> ranked;
  for (std::size_t i = 0; i < records.size(); ++i) ranked.push_back({0, i, tally_plan(records[i])});
  drop_costs_unless_all_known(records, ranked);
  std::stable_sort(ranked.begin(), ranked.end(), [&](const RankedPlan& a, const RankedPlan& b) {
    const Criterion* criterion = deciding(a.tally, b.tally);
    if (criterion != nullptr) return criterion->cost(a.tally) < criterion->cost(b.tally);
    return records[a.index].plan < records[b.index].plan;
  });
  for (std::size_t i = 0; i < ranked.size(); ++i) {
    const bool shared = i > 0 && deciding(ranked[i - 1].tally, ranked[i].tally) == nullptr;
    ranked[i].rank = shared ? ranked[i - 1].rank : static_cast<int>(i) + 1;
  }
  return ranked;
}

std::string ranking_rule() {
  return "Plans are ranked by plants kept (more first), then by plants lost, plants harmed, plant hours too hot or "
         "too cold in whole hours, failures, water used, charge used and, where all have prices, cost a season, fewer "
         "or less first, then by "
         "name.";
}

std::vector<std::string> comparison_warnings(const std::vector<RunRecord>& records) {
  std::vector<std::string> warnings;
  const auto differ = [&](auto&& field) {
    return std::any_of(records.begin(), records.end(),
                       [&](const RunRecord& r) { return field(r) != field(records[0]); });
  };
  if (differ([](const RunRecord& r) { return r.scenario; })) {
    warnings.emplace_back("These runs come from different scenarios: the order says little about the plans.");
  }
  if (differ([](const RunRecord& r) { return r.start; })) {
    warnings.emplace_back("These runs start at different times: they do not meet the same weather.");
  }
  if (differ([](const RunRecord& r) { return r.duration_s; })) {
    warnings.emplace_back("These runs are of different length: a longer one uses more water and charge.");
  }
  if (differ([](const RunRecord& r) { return r.provenance.weather_digest; })) {
    warnings.emplace_back("These runs were given different weather.");
  }
  if (differ([](const RunRecord& r) { return r.provenance.version; })) {
    warnings.emplace_back("These runs were made by different versions of the program.");
  }
  return warnings;
}

std::string deciding_reason(const PlanTally& better, const PlanTally& worse) {
  const Criterion* criterion = deciding(better, worse);
  return criterion == nullptr ? "" : criterion->reason;
}

std::string headline(const std::vector<RunRecord>& records, const std::vector<RankedPlan>& ranked) {
  const RankedPlan& best = ranked.front();
  const std::string& name = records[best.index].plan;
  std::string text = fmt::format("\"{}\" {}.", name, kept_words(best.tally));
  if (ranked.size() == 1) return text;
  if (best.tally.plants > 0 && best.tally.kept < best.tally.plants) text = "No plan keeps every plant. " + text;
  const RankedPlan& next = ranked[1];
  const std::string reason = deciding_reason(best.tally, next.tally);
  const std::string& other = records[next.index].plan;
  if (reason.empty()) return fmt::format("{} \"{}\" comes to the same.", text, other);
  text = fmt::format("{} Next is \"{}\"; \"{}\" is ahead because {}.", text, other, name, reason);
  const std::string difference = plain_difference(records[best.index], records[next.index]);
  return difference.empty() ? text : text + " " + difference;
}

}  // namespace noonhouse
