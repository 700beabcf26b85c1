// SPDX-License-Identifier: Apache-2.0
#include "models/power/battery_kind.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>

#include "models/properties/constants.hpp"
#include "models/properties/figure_text.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kWarmK = 298.15;
constexpr const char* kMemory = "typical of makers' data sheets; from memory";
constexpr const char* kRoundTrip = "round trip 0.92 to 0.96 of lithium iron phosphate; from memory";
constexpr const char* kRoundTripLead = "round trip 0.80 to 0.85 of lead and acid; from memory";
constexpr const char* kPeukert = "range 1.02 to 1.05 of lithium iron phosphate; from memory";
constexpr const char* kPeukertLead = "range 1.1 to 1.3 of lead and acid; from memory";
constexpr const char* kTwentyHours = "capacity of stationary lead batteries stated at 20 h; common practice, no source";
constexpr const char* kFiveHours = "capacity stated at 5 h (0.2 C), as in IEC 62620; from memory";
constexpr const char* kHalf = "half of the capacity, for the sake of the plates; common practice, no source";
constexpr const char* kCold = "about 1 % of capacity a kelvin below 25 degC at slow rates; common practice, no source";
constexpr const char* kPlating = "lithium plates out when charged below freezing; makers' limit; from memory";
constexpr const char* kTenK = "reaction rates double for each 10 K; common practice, no source";
constexpr const char* kTenKLead = "life halves for each 10 K above 25 degC; common practice, no source";
constexpr const char* kTenKLithium = "fading on the shelf doubles for each 10 to 15 K; from memory";

constexpr std::array kKinds{
    BatteryKind{"lithium iron phosphate",
                {0.96, kRoundTrip},
                {0.97, kRoundTrip},
                {1.03, kPeukert},
                {5.0, kFiveHours},
                {0.80, kMemory},
                {0.85, kMemory},
                {0.60, kMemory},
                {273.15, kPlating},
                {0.03, kMemory},
                {10.0, kTenK},
                {3000.0, kMemory},
                {0.80, kMemory},
                {12.0, kMemory},
                {12.0, kTenKLithium},
                "Light, deep and long-lived; must not be charged in frost."},
    BatteryKind{"absorbent lead",
                {0.92, kRoundTripLead},
                {0.92, kRoundTripLead},
                {1.12, kPeukertLead},
                {20.0, kTwentyHours},
                {0.50, kHalf},
                {0.80, kCold},
                {0.60, kCold},
                {253.15, kMemory},
                {0.03, kMemory},
                {10.0, kTenK},
                {600.0, kMemory},
                {0.50, kMemory},
                {7.0, kMemory},
                {10.0, kTenKLead},
                "Sealed lead battery with its acid in glass fleece: needs no water, suffers in heat."},
    BatteryKind{"flooded lead",
                {0.90, kRoundTripLead},
                {0.91, kRoundTripLead},
                {1.25, kPeukertLead},
                {20.0, kTwentyHours},
                {0.50, kHalf},
                {0.75, kCold},
                {0.55, kCold},
                {253.15, kMemory},
                {0.06, kMemory},
                {10.0, kTenK},
                {800.0, kMemory},
                {0.50, kMemory},
                {8.0, kMemory},
                {10.0, kTenKLead},
                "Open lead battery: cheap, must be topped up with water and aired, freezes when empty."},
};

std::string whole_celsius(double temperature_k) { return number_text(temperature_k - kZeroCelsius, 0) + " degC"; }
std::string in_years(double years) { return number_text(years, years < 10.0 ? 1 : 0); }

}  // namespace

std::span<const BatteryKind> battery_kinds() { return kKinds; }

const BatteryKind* find_battery_kind(std::string_view name) { return find_named(battery_kinds(), name); }

double BatteryKind::self_discharge_per_s() const {
  return -std::log1p(-self_discharge_a_month.value) / (30.0 * 86400.0);
}

double capacity_share(const BatteryKind& kind, double temperature_k) { return kind.cold().share(temperature_k); }

double BatteryLife::years() const { return std::min(by_cycles_years, by_age_years); }

BatteryLife battery_life(const BatteryKind& kind, const BatteryUse& use) {
  NOON_ASSERT(use.season_days > 0.0 && use.full_cycles >= 0.0);
  const double a_year = use.full_cycles * 365.25 / use.season_days;
  BatteryLife out;
  out.heat_factor = std::exp2(-std::max(0.0, use.mean_k - kWarmK) / kind.life_halves_k.value);
  out.by_cycles_years = a_year > 0.0 ? out.heat_factor * kind.cycles.value * kind.cycle_depth.value / a_year
                                     : std::numeric_limits<double>::infinity();
  out.by_age_years = out.heat_factor * kind.shelf_years.value;
  return out;
}

std::string ageing_note(const BatteryKind& kind, const BatteryUse& use) {
  const BatteryLife life = battery_life(kind, use);
  std::string out = "A new " + std::string(kind.name) + " battery used like this all year (" +
                    number_text(use.full_cycles, 1) + " full cycles in " + number_text(use.season_days, 0) +
                    " days, to a mean depth of " + percent_text(use.mean_depth) + ") lives about " +
                    in_years(life.years()) + " years, ended by ";
  out += life.by_cycles_years < life.by_age_years ? "its cycles" : "age rather than cycles";
  out += "; its " + whole_celsius(use.mean_k) + " in the mean (" + whole_celsius(use.peak_k) + " at most) ";
  out += life.heat_factor < 0.995
             ? "leave it " + percent_text(life.heat_factor) + " of its life at 25 degC, which each " +
                   number_text(kind.life_halves_k.value, 0) + " K more halve"
             : std::string("shorten nothing");
  if (use.mean_depth > kind.cycle_depth.value)
    out += "; cycles deeper than " + percent_text(kind.cycle_depth.value) + " wear it faster than is reckoned here";
  return out + ".";
}

}  // namespace noonhouse
