// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_reason.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

std::string clock(double time_s) {
  const auto minutes = static_cast<int>(std::lround(time_s / 60.0));
  return fmt::format("{:02d}:{:02d}", minutes / 60 % 24, minutes % 60);
}

std::string day_and_clock(double time_s) {
  return fmt::format("on day {} at {}", 1 + static_cast<int>(time_s / 86400.0), clock(std::fmod(time_s, 86400.0)));
}

/// Tissue at another place at an instant, from the samples of a trial.
double tissue_at(const PlaceFelt& felt, double time_s, double every_s) {
  const auto k = static_cast<std::size_t>(std::lround(time_s / every_s));
  return felt.tissue_k[std::min(k, felt.tissue_k.size() - 1)];
}

template <class Pick>
double mean_of(const PlaceFelt& felt, Pick pick) {
  double sum = 0.0;
  for (const DayFelt& day : felt.days) sum += pick(day);
  return felt.days.empty() ? 0.0 : sum / static_cast<double>(felt.days.size());
}

double light(const PlaceFelt& felt) {
  return mean_of(felt, [](const DayFelt& d) { return d.light_mol_m2; });
}
double dry_hours(const PlaceFelt& felt) {
  return mean_of(felt, [](const DayFelt& d) { return d.dry_s / 3600.0; });
}
double wet_hours(const PlaceFelt& felt) {
  return mean_of(felt, [](const DayFelt& d) { return d.wet_s / 3600.0; });
}

double hottest_air(const PlaceFelt& felt) {
  double most = 0.0;
  for (const DayFelt& day : felt.days) most = std::max(most, day.peak_air_k);
  return most;
}

/// What the light of the new place lacks, as a part of a sentence; empty where it is enough.
std::string lacks_light(const GroupShown& group, const PlaceFelt& there) {
  if (light(there) >= group.least_light_mol_m2) return {};
  return fmt::format(
      "; its light there, {:.1f} mol/m2 a day, is less than the {:.1f} it needs: bring it back when it is cooler",
      light(there), group.least_light_mol_m2);
}

/// When the tissue was coldest: the samples tell.
double coldest_at_s(const PlaceFelt& felt, double every_s) {
  const auto coldest = std::min_element(felt.tissue_k.begin(), felt.tissue_k.end());
  return every_s * static_cast<double>(coldest - felt.tissue_k.begin());
}

std::string cooler(double before_k, double after_k) {
  const double by = before_k - after_k;
  return fmt::format("{:.1f} K {}", std::abs(by), by >= 0.0 ? "cooler" : "warmer");
}

/// What is worst at a place, and what the other makes of the same.
std::string compared(const std::string& what, const PlaceFelt& here, const PlaceFelt& there, double every_s) {
  if (what == "hot roots")
    return fmt::format("pots too hot: walls of {:.1f} degC at the most; there {:.1f} degC",
                       here.peak_wall_k - kZeroCelsius, there.peak_wall_k - kZeroCelsius);
  if (what == "dry pots") return "its pots dry out sooner than it is watered; there they last longer";
  if (what == "hot air")
    return fmt::format("air too hot: {:.1f} degC at the most; there {:.1f} degC", hottest_air(here) - kZeroCelsius,
                       hottest_air(there) - kZeroCelsius);
  if (what == "heat") {
    const double when = here.peak_s, now = tissue_at(here, when, every_s);
    return fmt::format("too hot: {:.1f} degC in the tissue {}; there it is {} at that hour", here.peak_k - kZeroCelsius,
                       day_and_clock(when), cooler(now, tissue_at(there, when, every_s)));
  }
  if (what == "cold" || what == "cold air") {
    const double when = coldest_at_s(here, every_s), now = tissue_at(here, when, every_s);
    return fmt::format("too cold: {:.1f} degC in the tissue {}; there it is {} at that hour", now - kZeroCelsius,
                       day_and_clock(when), cooler(now, tissue_at(there, when, every_s)));
  }
  if (what == "sunburn")
    return fmt::format(
        "too bright: direct sun on tissue of {:.1f} degC {} and {:.0f} mol/m2 of light a day; there {:.0f} mol/m2 and "
        "{}",
        here.peak_k - kZeroCelsius, day_and_clock(here.peak_s), light(here), light(there),
        cooler(here.peak_k, tissue_at(there, here.peak_s, every_s)));
  if (what == "dry air")
    return fmt::format("too dry: {:.1f} h a day in dry air; there {:.1f} h", dry_hours(here), dry_hours(there));
  if (what == "free water")
    return fmt::format("too wet: {:.1f} h a day with water on it; there {:.1f} h", wet_hours(here), wet_hours(there));
  if (what == "too little light" || what == "too much light")
    return fmt::format("{}: {:.1f} mol/m2 a day; there {:.1f} mol/m2",
                       what == "too little light" ? "too dim" : "too bright", light(here), light(there));
  return fmt::format("{}; there less of it", what);
}

}  // namespace

std::string place_reason(const GroupShown& group, const PlaceAnswer& answer) {
  const PlaceFelt& here = group.felt[at(group.stands_on)];
  const HazardFelt& worst = *worst_hazard(here);
  if (group.should_stand_on < 0) return "finds no place";
  if (group.should_stand_on == group.stands_on) {
    if (here.outcome == "kept" && worst.most < 0.3) return "stands well where it is";
    double best = here.harm;
    for (std::size_t p = 0; p < group.felt.size(); ++p)
      if (group.cannot[p].empty()) best = std::min(best, group.felt[p].harm);
    const std::string nearest = worst.most < 1.0
                                    ? fmt::format("{} comes to {:.2g} of what strains it", worst.what, worst.most)
                                    : fmt::format("{} comes to {} times what strains it", worst.what,
                                                  worst.most < 100.0 ? fmt::format("{:.3g}", worst.most) : "over 100");
    if (best >= here.harm - 1e-9) return nearest + "; no other place harms it less";
    if (group.stays) return nearest + "; it would be less elsewhere, but it is to stay";
    if (answer.problem.most_moves >= 0)
      return nearest + "; it would be less elsewhere, but other moves gain more or others need the room";
    return nearest + "; it would be less elsewhere, but others need the room more";
  }
  const PlaceFelt& there = group.felt[at(group.should_stand_on)];
  if (there.harm > here.harm + 1e-9)
    return fmt::format("makes room for others and is no more than {} there", there.outcome);
  const std::string words = compared(worst.what, here, there, answer.every_s) + lacks_light(group, there);
  return here.outcome == "kept" ? "stands closer to harm than it needs, " + words : words;
}

}  // namespace noonhouse
