// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>

#include "models/properties/water.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/work_heat.hpp"

namespace noonhouse {
namespace {

std::string join(const std::vector<std::string>& parts, std::string_view between) {
  return fmt::format("{}", fmt::join(parts, between));
}

}  // namespace

double start_of_clock_s(const RunRecord& record) {
  int year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0;
  const int read =
      std::sscanf(record.start.c_str(), "%4d-%2d-%2d%*[ T]%2d:%2d:%2d", &year, &month, &day, &hour, &minute, &second);
  if (read < 5 || hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) return 0.0;
  return hour * 3600.0 + minute * 60.0 + second;
}

std::string clock_text(const RunRecord& record, double time_s) {
  if (!std::isfinite(time_s)) return "-";
  const double clock_s = start_of_clock_s(record) + time_s;
  const auto minutes = static_cast<long long>(std::floor(clock_s / 60.0));
  const auto days = static_cast<long long>(std::floor(clock_s / kSecondsPerDay));
  const long long minute_of_day = minutes - days * 1440;
  return fmt::format("day {} {:02}:{:02}", days + 1, minute_of_day / 60, minute_of_day % 60);
}

std::string temperature_text(double temperature_k, UnitSystem units) {
  return std::isfinite(temperature_k) ? format_quantity(temperature_k, Dimension::temperature, units) : "-";
}

std::string height_text(double height_m, UnitSystem units) {
  if (!std::isfinite(height_m)) return "-";
  if (units == UnitSystem::us) return format_quantity(height_m, Dimension::length, units);
  return fmt::format("{:.2f} m", std::round(100.0 * height_m) / 100.0);  // halves away from zero: 0.975 m is 0.98 m
}

std::string water_text(double water_kg, UnitSystem units) {
  if (!std::isfinite(water_kg)) return "-";
  return format_quantity(water_kg / kWaterKgPerM3, Dimension::volume, units);
}

std::string water_use_text(const WaterOutcome& water, UnitSystem units) {
  const double lost_kg = water.leaked_kg + water.spilt_kg;
  const std::string used = water_text(water.used_kg(), units);
  return lost_kg >= 0.5 ? used + ", " + water_text(lost_kg, units) + " of it lost" : used;
}

std::string energy_text(double energy_j, UnitSystem units) {
  return std::isfinite(energy_j) ? format_quantity(energy_j, Dimension::energy, units) : "-";
}

std::string lowest_charge_text(const EnergyOutcome& energy) {
  if (!(energy.capacity_j > 0.0) || !std::isfinite(energy.lowest_share)) return "-";
  return fmt::format("{:.0f} %", 100.0 * energy.lowest_share);
}

std::string hours_text(double hours) { return std::isfinite(hours) ? fmt::format("{:.1f} h", hours) : "-"; }

std::string place_text(const PlantOutcome& plant, UnitSystem units) {
  std::vector<std::string> parts;
  if (!plant.place.empty()) parts.push_back(plant.place);
  parts.push_back(height_text(plant.height_m, units));
  if (!plant.bay.empty()) parts.push_back(plant.bay);
  return join(parts, ", ");
}

std::string level_label(const LevelOutcome& level, UnitSystem units) {
  const std::string height = height_text(level.height_m, units);
  return level.bay.empty() ? height : height + ", " + level.bay;
}

std::string spare_text(const PlantOutcome& plant, UnitSystem units) {
  const double spare_k = plant.harm_above_k - plant.peak_tissue_k;
  if (!(plant.harm_above_k > 0.0) || !(plant.peak_tissue_k > 0.0)) return "";
  if (plant.hours_beyond > 0.0 && spare_k >= 0.0) return "";  // it was too cold, or its roots too hot
  const bool us = units == UnitSystem::us;
  const std::string text = fmt::format("{:.1f} {}", std::abs(spare_k) * (us ? 1.8 : 1.0), us ? "°F" : "K");
  return text + (spare_k < 0.0 ? " too hot" : " to spare");
}

std::string outcome_text(const PlantOutcome& plant, UnitSystem units) {
  std::string text = plant.outcome;
  if (plant.hours_beyond > 0.0) text += ", " + hours_text(plant.hours_beyond);
  if (plant.outcome != "kept") return text;
  if (plant.hours_beyond > 0.0) text += " beyond";
  const std::string spare = spare_text(plant, units);
  return spare.empty() ? text : text + ", " + spare;
}

std::string text_in_units(std::string_view text, UnitSystem units) {
  constexpr std::string_view kUnit = " degC";
  constexpr std::string_view kDigits = "0123456789";
  std::string out;
  std::size_t from = 0;
  for (std::size_t at = text.find(kUnit); at != std::string_view::npos; at = text.find(kUnit, at + kUnit.size())) {
    std::size_t first = at;
    while (first > from && (kDigits.find(text[first - 1]) != kDigits.npos || text[first - 1] == '.')) --first;
    if (first > from && text[first - 1] == '-') --first;
    double celsius = 0.0;
    const auto read = std::from_chars(text.data() + first, text.data() + at, celsius);
    if (read.ec != std::errc{} || read.ptr != text.data() + at) continue;
    const std::string_view number = text.substr(first, at - first);
    const auto point = number.find('.');
    const auto decimals = point == number.npos ? 0 : static_cast<int>(number.size() - point - 1);
    out += text.substr(from, first - from);
    out += unbroken(units == UnitSystem::us ? fmt::format("{:.{}f} °F", 1.8 * celsius + 32.0, decimals)
                                            : fmt::format("{} °C", number));
    from = at + kUnit.size();
  }
  return out.append(text.substr(from));
}

std::string air_changes_text(const AiringOutcome& airing) {
  if (!std::isfinite(airing.mean_1_s)) return "-";
  const auto an_hour = [](double changes_1_s) {
    const double value = 3600.0 * changes_1_s;
    return value >= 99.95 ? fmt::format("{:.0f}", value) : fmt::format("{:.{}f}", value, value >= 9.995 ? 1 : 2);
  };
  return fmt::format("{} on the mean, {} to {}, {} when hottest", an_hour(airing.mean_1_s), an_hour(airing.least_1_s),
                     an_hour(airing.most_1_s), an_hour(airing.hottest_1_s));
}

std::string water_outlook(const RunRecord& record) {
  const WaterOutcome& water = record.water;
  if (std::isfinite(water.first_dry_s)) return "pump cut out on " + clock_text(record, water.first_dry_s);
  if (std::isfinite(water.days_left)) return fmt::format("lasts {:.1f} days more", water.days_left);
  return water.used_kg() > 0.0 ? "-" : "not used";
}

std::string charge_outlook(const RunRecord& record) {
  const EnergyOutcome& energy = record.energy;
  if (std::isfinite(energy.first_cut_off_s)) return "cut off on " + clock_text(record, energy.first_cut_off_s);
  if (std::isfinite(energy.days_left)) return fmt::format("lasts {:.1f} days without sun", energy.days_left);
  return energy.loads_j > 0.0 ? "-" : "not used";
}

std::string carry_text(double days_at_mean, double days_at_heaviest) {
  const auto days = [](double value) {
    return value >= 99.95 ? fmt::format("{:.0f}", value) : fmt::format("{:.1f}", value);
  };
  if (!std::isfinite(days_at_mean)) return "-";
  const std::string text = days(days_at_mean) + " days";
  return std::isfinite(days_at_heaviest) ? text + ", " + unbroken(days(days_at_heaviest) + " at worst") : text;
}

std::string money_text(double amount, std::string_view currency) {
  if (!std::isfinite(amount)) return "-";
  const std::string number = fmt::format("{:.{}f}", amount, amount >= 9.995 ? 0 : 2);
  return currency.empty() ? number : fmt::format("{} {}", number, currency);
}

std::string season_cost_text(const CostOutcome& cost) {
  std::string text = money_text(cost.per_season, cost.currency);
  if (cost.brought > 0.0)
    text += fmt::format(", of it {} for water brought, were all {} like the run's",
                        unbroken(money_text(cost.brought, cost.currency)),
                        unbroken(fmt::format("{:.0f} days", cost.season_d)));
  return text;
}

const WorkHeatOutcome* worst_work_heat(const RunRecord& record) {
  const auto better = [](const WorkHeatOutcome& a, const WorkHeatOutcome& b) {
    return a.unwise_h != b.unwise_h ? a.unwise_h < b.unwise_h : a.peak_k < b.peak_k;
  };
  const auto found = std::max_element(record.work_heat.begin(), record.work_heat.end(), better);
  return found == record.work_heat.end() ? nullptr : &*found;
}

std::string work_heat_text(const RunRecord& record, UnitSystem units) {
  const WorkHeatOutcome* worst = worst_work_heat(record);
  if (worst == nullptr) return "-";
  return fmt::format("{} above {}, at most {}, {}", unbroken(hours_text(worst->unwise_h)),
                     unbroken(temperature_text(work_reference_k(), units) + " WBGT"),
                     unbroken(temperature_text(worst->peak_k, units)),
                     unbroken(clock_text(record, worst->peak_time_s)));
}

std::string work_heat_caution(UnitSystem units) {
  return fmt::format(
      "WBGT is the wet-bulb globe temperature, which takes in heat, damp, sun and moving air; here an estimate for 1.1 "
      "m "
      "above the floor. {} of it is the reference value of ISO 7243 (edition of 1989, Table A.1) for moderate work of "
      "somebody healthy, lightly clad and used to heat; above it rest, slower work or another hour is called for. "
      "Local "
      "occupational rules decide.",
      temperature_text(work_reference_k(), units));
}

const FailureOutcome* first_failure(const RunRecord& record) {
  const auto earlier = [](const FailureOutcome& a, const FailureOutcome& b) { return a.time_s < b.time_s; };
  const auto found = std::min_element(record.failures.begin(), record.failures.end(), earlier);
  return found == record.failures.end() ? nullptr : &*found;
}

std::string failure_text(const RunRecord& record, const FailureOutcome& failure, std::string_view arrow,
                         UnitSystem units) {
  std::string text = fmt::format("{}, {}", failure.what, unbroken(clock_text(record, failure.time_s)));
  for (std::size_t i = 0; i < failure.chain.size(); ++i) {
    const bool is_itself = i == 0 && failure.chain[i].starts_with(failure.what);
    if (!is_itself) text += fmt::format(" {} {}", arrow, failure.chain[i]);
  }
  return text_in_units(text, units);
}

std::vector<std::string> plant_reasons(const RunRecord& record, UnitSystem units) {
  std::vector<std::string> reasons;
  for (const PlantOutcome& plant : record.plants) {
    if (plant.outcome == "kept") continue;
    std::string text = fmt::format("{} ({}): {}", plant.name, place_text(plant, units), plant.outcome);
    if (!plant.reason.empty()) text += ", " + text_in_units(plant.reason, units);
    reasons.push_back(text);
  }
  return reasons;
}

std::string starts_text(const RunRecord& record) {
  std::vector<std::string> parts;
  for (const DeviceOutcome& device : record.devices) parts.push_back(fmt::format("{} {}", device.name, device.starts));
  return parts.empty() ? "none" : join(parts, ", ");
}

}  // namespace noonhouse
