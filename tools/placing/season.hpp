// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <functional>
#include <string>
#include <vector>

#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// What is asked: how long each kind may stand in a house that nothing heats.
struct SeasonQuestion {
  std::vector<std::string> kinds;  ///< of the library or the scenario; empty: all of both
  int threads = 1;
  std::function<void(double)> progress;
};

/// The longest stretch of days without harmful cold. Days count from 0 at the run's start; where the run is a whole
/// year the stretch may go over its end, as one year follows another.
struct SafeStretch {
  int first_day = 0, days = 0;
  bool all_year = false;
  bool never() const { return days == 0; }
};

/// A kind on one place through the year.
struct PlaceSeason {
  std::string place;
  SafeStretch safe;
  int hot_days = 0;        ///< within the stretch: days of heat that strains by itself
  int dim_days = 0;        ///< within it: days with less light than the kind needs
  int bright_days = 0;     ///< within it: days with more light than it bears
  int good_days = 0;       ///< within it: the others
  bool too_low = false;    ///< no room for its height
  double coldest_k = 0.0;  ///< tissue in the whole year
  int coldest_day = 0;
  double hottest_k = 0.0;  ///< within the stretch, or the year where there is none
  int hottest_day = 0;
};

struct KindSeason {
  std::string kind;
  double harm_below_k = 0.0, harm_above_k = 0.0;
  std::vector<PlaceSeason> places;
  std::size_t best = 0;  ///< the place with the most good days, of those high enough; then with the longest stretch
};

struct SeasonAnswer {
  std::string house, plan;
  std::chrono::year_month_day start;
  int days = 0;
  double coldest_outdoors_k = 0.0, hottest_outdoors_k = 0.0;
  std::vector<KindSeason> kinds;
};

/// The longest run of true days, the earlier of equals; around the end where `cyclic`.
SafeStretch longest_stretch(const std::vector<bool>& safe, bool cyclic);

/// Runs a plan through its year and tries every kind on every place in the climates it had. A day is safe from cold if
/// its own dose stays below what strains the kind; days of heat are told beside it, since shade and air can mend them.
/// A kind on trial is watered every morning and stands alone: what it does to the house is left out.
/// Throws UserError: does_not_fit where the plan's run is shorter than 330 days, unknown_name for a kind.
SeasonAnswer answer_season(const Scenario& scenario, const PlanScenario& plan, const SeasonQuestion& question);

}  // namespace noonhouse
