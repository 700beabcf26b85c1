// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "tests/support/cvode_method.hpp"
#include "tests/support/run_marks.hpp"

/// Two methods can be compared by speed only where they are equally good. Here each is given the loosest tolerance
/// at which it reaches the accuracy asked for, against one tight reference of the same run.
namespace noonhouse::bench {

/// A way of stepping, with a tolerance in units of House::amount_tolerance.
struct Method {
  std::string name, about;
  std::function<void(RunPlan&, double tolerance)> choose;
};

inline void choose_cvode(RunPlan& plan, const CvodeSettings& settings) {
  plan.method = [settings](const House& house) { return std::make_unique<CvodeMethod>(house, settings); };
}

inline std::vector<Method> methods() {
  return {{"noonhouse", "the project's own method, with what the fluxes carry",
           [](RunPlan& plan, double tolerance) {
             plan.method = {};
             plan.steps.tolerance = tolerance;
           }},
          {"cvode_klu", "CVODE (BDF) with KLU, states only, history kept where the weather's lines bend",
           [](RunPlan& plan, double tolerance) { choose_cvode(plan, {.absolute_factor = tolerance, .carry = false}); }},
          {"cvode_klu_new_starts", "the same, started anew where the weather's lines bend",
           [](RunPlan& plan, double tolerance) {
             choose_cvode(plan, {.absolute_factor = tolerance, .new_start_at_breaks = true, .carry = false});
           }},
          {"cvode_klu_carried", "the same with history kept, and with what the fluxes carry",
           [](RunPlan& plan, double tolerance) { choose_cvode(plan, {.absolute_factor = tolerance}); }}};
}

/// How good one run was, against the reference.
struct Quality {
  double tolerance = 0.0;
  double median_k = 0.0, p99_k = 0.0, worst_k = 0.0;  ///< node temperatures at hourly marks
  double median_event_s = 0.0;                        ///< time of the n-th event, where both have one
  double steps_a_day = 0.0, rejected_a_day = 0.0, events_a_day = 0.0;
};

inline Quality judge(const RunPlan& plan, double tolerance, const MarkedRun& run, const MarkedRun& reference) {
  const double days = seconds(plan.length) / seconds(kDay);
  const auto differences = temperature_differences(plan.house, run.marks, reference.marks);
  std::vector<double> late;
  const auto &own = run.marks.events(), &theirs = reference.marks.events();
  for (std::size_t i = 0; i < std::min(own.size(), theirs.size()); ++i)
    late.push_back(std::abs(seconds(own[i]) - seconds(theirs[i])));
  std::sort(late.begin(), late.end());
  return {.tolerance = tolerance,
          .median_k = percentile(differences, 0.5),
          .p99_k = percentile(differences, 0.99),
          .worst_k = differences.back(),
          .median_event_s = late.empty() ? 0.0 : percentile(late, 0.5),
          .steps_a_day = static_cast<double>(run.result.steps) / days,
          .rejected_a_day = static_cast<double>(run.result.rejected) / days,
          .events_a_day = static_cast<double>(run.result.events) / days};
}

inline MarkedRun reference_of(RunPlan& plan) {
  choose_cvode(plan, CvodeSettings::reference());
  return run_with_marks(plan, 1_h);
}

/// Loosens the tolerance by steps of sqrt(2) until the accuracy is lost, and returns the last run that had it: one
/// lucky loose run behind a failed one does not count. Empty where even the tightest tolerance misses the mark.
inline std::optional<Quality> loosest(RunPlan& plan, const Method& method, const MarkedRun& reference, double p99_k,
                                      const std::function<void(const Quality&)>& show) {
  constexpr int kTightest = -20, kStart = -8, kLoosest = 16;  // powers of sqrt(2)
  const auto at = [&](int power) {
    const double tolerance = std::pow(2.0, 0.5 * power);
    method.choose(plan, tolerance);
    const Quality quality = judge(plan, tolerance, run_with_marks(plan, 1_h), reference);
    show(quality);
    return quality;
  };
  std::optional<Quality> best;
  int power = kStart;
  Quality quality = at(power);
  while (quality.p99_k > p99_k && power > kTightest) quality = at(--power);
  while (quality.p99_k <= p99_k) {
    best = quality;
    if (power == kLoosest) break;
    quality = at(++power);
  }
  return best;
}

}  // namespace noonhouse::bench
