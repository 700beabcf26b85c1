// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "tools/weather_file/year_generator.hpp"

namespace noonhouse {

/// First day of the calendar year of a day, and of the next year; days from 1970-01-01.
struct CalendarYear {
  int first_day, next_first_day;
};
CalendarYear calendar_year_of(int day);

/// What chance gave to one day of an invented year.
struct YearDay {
  bool cloudy = false;
  double rain_mm = 0.0;        ///< above zero on rain days only
  double rain_begin_s = 0.0;   ///< since the day's midnight
  double rain_length_s = 0.0;  ///< ends within the day
  double departure = 0.0;      ///< of the mean temperature, standard normal, fading with 3 days
  double dew_gap_share = 0.0;  ///< of the season's mean gap, 0 .. 2 evenly; 0 on rain days
  double wind_turn = 0.0;      ///< standard normal, fading with 2 days
};

/// The seeded days of an invented year. A day is counted from 1970-01-01 and has its own source of chance, so that it
/// is the same whatever other days are asked for; whole calendar years are made, since rain and clouds are shared out
/// within them. The settings are taken as checked.
class YearDays {
 public:
  static constexpr int kKnotsPerDay = 8;  ///< every three hours
  static constexpr double kMemory_days = 3.0;

  /// Days from first to last, both included.
  YearDays(const YearSettings& settings, int first_day, int last_day);

  const YearDay& day(int day) const;
  /// Standard normal variation at a knot, counted from midnight of day 0: of the cloud cover, each for itself, and of
  /// the wind, fading with 12 hours.
  double cover_variation(std::int64_t knot) const;
  double wind_variation(std::int64_t knot) const;

 private:
  /// All that chance has to say about one day, drawn in this order.
  struct Dice {
    double departure, spell, turn, rain, dew, begin, length;
    std::array<double, kKnotsPerDay> cover, wind;
  };
  static Dice roll(std::uint32_t seed, int day);
  const Dice& dice(int day) const;
  double fading(double Dice::*value, int day, double memory_days) const;
  double at_knot(std::array<double, kKnotsPerDay> Dice::*values, std::int64_t knot) const;
  std::vector<int> by_score(const CalendarYear& year) const;
  void share_out_rain(const YearSettings& settings, const std::vector<int>& order);
  void share_out(const YearSettings& settings, const CalendarYear& year);

  int first_dice_, first_day_;
  std::vector<Dice> dice_;
  std::vector<YearDay> days_;
};

/// Share of the calendar year from its coldest instant, 0 .. 1, by the time since 1970-01-01 [s], local standard time.
double share_of_year(double time_s, double latitude_deg);

}  // namespace noonhouse
