// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/year_days.hpp"

#include <algorithm>
#include <boost/random/exponential_distribution.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/seed_seq.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>
#include <numeric>

#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

// Own choices: how long spells, wind's bearing and wind's strength are remembered.
constexpr double kSpellMemory_days = 2.0, kTurnMemory_days = 2.0, kWindMemory_days = 0.5;
constexpr int kWindow_days = 40;         // of which a fading sum knows; the memory of 3 days is then down to 2e-6
constexpr double kColdest_days = 14.75;  // after 1 January: the middles of January and July are as far from its wave
constexpr double kLeastRain_mm = 1.0;    // of a day that counts as a rain day
constexpr double kShortestRain_s = 2.0 * kSecondsPerHour, kLongestRain_s = 10.0 * kSecondsPerHour;  // own choice

/// Weights of a sum over earlier values that is standard normal if they are and fades by e over `memory` steps.
std::vector<double> fading_weights(double memory, int count) {
  std::vector<double> weights;
  double squares = 0.0;
  for (int k = 0; k < count; ++k) {
    weights.push_back(std::exp(-k / memory));
    squares += weights.back() * weights.back();
  }
  for (double& weight : weights) weight /= std::sqrt(squares);
  return weights;
}

}  // namespace

CalendarYear calendar_year_of(int day) {
  using namespace std::chrono;
  const year y = year_month_day{sys_days{std::chrono::days{day}}}.year();
  const auto first = [](year of) { return static_cast<int>(sys_days{of / January / 1}.time_since_epoch().count()); };
  return {first(y), first(y + years{1})};
}

double share_of_year(double time_s, double latitude_deg) {
  const CalendarYear year = calendar_year_of(static_cast<int>(std::floor(time_s / kSecondsPerDay)));
  const int length = year.next_first_day - year.first_day;
  const double share =
      (time_s / kSecondsPerDay - year.first_day - kColdest_days) / length + (latitude_deg < 0.0 ? 0.5 : 0.0);
  return share - std::floor(share);
}

YearDays::YearDays(const YearSettings& settings, int first_day, int last_day)
    : first_dice_(calendar_year_of(first_day).first_day - kWindow_days),
      first_day_(calendar_year_of(first_day).first_day) {
  const int end_day = calendar_year_of(last_day).next_first_day;
  for (int day = first_dice_; day < end_day; ++day) dice_.push_back(roll(settings.seed, day));
  days_.resize(static_cast<std::size_t>(end_day - first_day_));
  for (CalendarYear year = calendar_year_of(first_day); year.first_day < end_day;
       year = calendar_year_of(year.next_first_day))
    share_out(settings, year);
}

YearDays::Dice YearDays::roll(std::uint32_t seed, int day) {
  const std::array<std::uint32_t, 2> seeds{seed, static_cast<std::uint32_t>(day)};
  boost::random::seed_seq mixed(seeds.begin(), seeds.end());
  boost::random::mt19937 engine(mixed);
  boost::random::normal_distribution<double> normal;
  boost::random::exponential_distribution<double> exponential;
  boost::random::uniform_01<double> even;
  Dice out{};
  out.departure = normal(engine);
  out.spell = normal(engine);
  out.turn = normal(engine);
  out.rain = exponential(engine);
  out.dew = even(engine);
  out.begin = even(engine);
  out.length = even(engine);
  for (double& value : out.cover) value = normal(engine);
  for (double& value : out.wind) value = normal(engine);
  return out;
}

const YearDays::Dice& YearDays::dice(int day) const { return dice_.at(static_cast<std::size_t>(day - first_dice_)); }

const YearDay& YearDays::day(int day) const { return days_.at(static_cast<std::size_t>(day - first_day_)); }

double YearDays::fading(double Dice::*value, int day, double memory_days) const {
  const std::vector<double> weights = fading_weights(memory_days, kWindow_days);
  double sum = 0.0;
  for (int k = 0; k < kWindow_days; ++k) sum += weights[static_cast<std::size_t>(k)] * (dice(day - k).*value);
  return sum;
}

double YearDays::at_knot(std::array<double, kKnotsPerDay> Dice::*values, std::int64_t knot) const {
  const std::int64_t within = ((knot % kKnotsPerDay) + kKnotsPerDay) % kKnotsPerDay;
  return (dice(static_cast<int>((knot - within) / kKnotsPerDay)).*values)[static_cast<std::size_t>(within)];
}

double YearDays::cover_variation(std::int64_t knot) const { return at_knot(&Dice::cover, knot); }

double YearDays::wind_variation(std::int64_t knot) const {
  static const std::vector<double> weights = fading_weights(kWindMemory_days * kKnotsPerDay, 8 * kKnotsPerDay);
  double sum = 0.0;
  for (std::size_t k = 0; k < weights.size(); ++k)
    sum += weights[k] * at_knot(&Dice::wind, knot - static_cast<std::int64_t>(k));
  return sum;
}

std::vector<int> YearDays::by_score(const CalendarYear& year) const {
  std::vector<double> scores;
  for (int day = year.first_day; day < year.next_first_day; ++day)
    scores.push_back(fading(&Dice::spell, day, kSpellMemory_days));
  std::vector<int> order(scores.size());
  std::iota(order.begin(), order.end(), year.first_day);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return scores[static_cast<std::size_t>(a - year.first_day)] > scores[static_cast<std::size_t>(b - year.first_day)];
  });
  return order;
}

void YearDays::share_out_rain(const YearSettings& settings, const std::vector<int>& order) {
  const double middle = 0.25 * static_cast<int>(settings.wetter_season);
  int wetter_left = static_cast<int>(std::lround(settings.wetter_share * settings.rain_days_a_year));
  int drier_left = settings.rain_days_a_year - wetter_left;
  std::vector<int> rainy;
  double draws = 0.0;
  for (const int number : order) {
    const double share = share_of_year((number + 0.5) * kSecondsPerDay, settings.latitude_deg);
    int& left = std::abs(std::remainder(share - middle, 1.0)) <= 0.25 ? wetter_left : drier_left;
    if (left == 0) continue;
    --left;
    rainy.push_back(number);
    draws += dice(number).rain;
  }
  const double rest_mm = settings.rain_a_year_mm - kLeastRain_mm * settings.rain_days_a_year;
  for (const int number : rainy)
    days_[static_cast<std::size_t>(number - first_day_)].rain_mm = kLeastRain_mm + rest_mm * dice(number).rain / draws;
}

void YearDays::share_out(const YearSettings& settings, const CalendarYear& year) {
  const std::vector<int> order = by_score(year);
  share_out_rain(settings, order);
  int clouds_left = static_cast<int>(std::lround(settings.cloudy_days * static_cast<double>(order.size()))) -
                    settings.rain_days_a_year;
  for (const int number : order) {
    const Dice& drawn = dice(number);
    YearDay& day = days_[static_cast<std::size_t>(number - first_day_)];
    const bool rain = day.rain_mm > 0.0;
    day.cloudy = rain || clouds_left > 0;
    if (!rain) --clouds_left;
    day.rain_length_s = kShortestRain_s + (kLongestRain_s - kShortestRain_s) * drawn.length;
    day.rain_begin_s = (kSecondsPerDay - day.rain_length_s) * drawn.begin;
    day.departure = fading(&Dice::departure, number, kMemory_days);
    day.dew_gap_share = rain ? 0.0 : 2.0 * drawn.dew;
    day.wind_turn = fading(&Dice::turn, number, kTurnMemory_days);
  }
}

}  // namespace noonhouse
