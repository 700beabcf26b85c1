// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "models/power/battery.hpp"
#include "tools/scenario/field_options.hpp"

/// Instruments, controls and people of a scenario. SI inside; defaults stand in the field lists.
namespace noonhouse {

/// By so much the charge must rise above where loads were shed before they come back; common practice, no source.
inline constexpr double kShedGap = 0.10;
/// The charge must rise by so much before a rule lets go of it, and can only where that is filled.
inline constexpr double kRuleChargeGap = 0.05, kRuleChargeAtMost = 0.92;
static_assert(kRuleChargeAtMost + kRuleChargeGap < kFillsTo + 1e-9);

/// What decides when several controls call for one device; and how long it takes to move.
enum class CallsHeeded { any, all, first };
struct SwitchingSpec {
  CallsHeeded heeds = CallsHeeded::any;
  double takes_s = 0.0;
};
/// What a device leaves for others.
struct DrawSpec {
  double keeps_back_m3 = 0.0;  ///< water left in the tank
  double sheds_at = 0.0;       ///< share of charge at which it is switched off
};

enum class Measures { temperature, humidity, deficit };
struct SensorSpec {
  Measures measures = Measures::temperature;
  std::string bay, light_of;
  double height_m = 0.0, time_constant_s = 0.0;
  double sun_share = 0.0, dries_in_s = 0.0;
  std::vector<std::string> sprayed_by;
  double offset_k = 0.0, offset_share = 0.0, step_k = 0.0, step_share = 0.0;
  double polled_every_s = 0.0, dropouts = 0.0, lost_after_s = 0.0;
};

enum class IfLost { stops, holds, runs };
/// On/off control between two readings [K, share or Pa, by what its sensor measures].
struct ThermostatSpec {
  std::string sensor;
  double starts_at = 0.0, stops_at = 0.0, least_on_s = 0.0, least_off_s = 0.0, from_s = 0.0, until_s = 0.0;
  double pulse_on_s = 0.0, pulse_off_s = 0.0;
  IfLost if_lost = IfLost::stops;
  std::vector<std::string> drives;
};
struct HumidistatSpec : ThermostatSpec {};
struct DeficitControlSpec : ThermostatSpec {};

struct StageSpec {
  double starts_at_k = 0.0, stops_at_k = 0.0;
  std::vector<std::string> drives;
};
struct StagedSpec {
  std::string sensor;
  std::vector<StageSpec> stages;
  double delay_s = 0.0, least_on_s = 0.0, least_off_s = 0.0, from_s = 0.0, until_s = 0.0;
  IfLost if_lost = IfLost::stops;
};
struct ProportionalSpec {
  std::string sensor;
  double begins_k = 0.0, full_k = 0.0, every_s = 0.0, dead_step = 0.0, from_s = 0.0, until_s = 0.0;
  IfLost if_lost = IfLost::stops;
  std::vector<std::string> drives;
};
struct TimerSpec {
  double from_s = 0.0, until_s = 0.0, on_s = 0.0, every_s = 0.0;
  std::vector<std::string> drives;
};

/// A state of affairs: holds while all that is given holds.
enum class PartOfDay { any, night, day };
struct RuleSpec {
  std::string sensor;
  std::optional<double> warmer_k, colder_k, damper, drier_than, deficit_above_pa, deficit_below_pa;
  bool raining = false;
  std::optional<double> wind_above_m_s, outdoors_above_k, outdoors_below_k, forecast_above_k, sun_above_w_m2,
      sun_below_w_m2, tank_below_m3, charge_below;
  std::vector<std::string> wet_leaves;
  PartOfDay during = PartOfDay::any;
  double before_dusk_s = 0.0, from_s = 0.0, until_s = 0.0, after_s = 0.0, least_hold_s = 0.0;
  std::vector<std::string> forbids, calls;
};

struct VisitSpec {
  double at_s = 0.0, keeps_back_m3 = 0.0;
  std::vector<std::string> waters;
  std::vector<std::string> opens, shuts;
};
struct WindowSpec {
  double from_s = 0.0, until_s = 0.0;
};
/// What the grower does on a sign.
struct ResponseSpec {
  std::string sign;  ///< a rule
  bool alarm = false, undo = false;
  std::vector<std::string> opens, shuts;
};
struct GrowerSpec {
  double pours_to = 0.0, reaction_s = 0.0, returns_within_s = 0.0, stays_s = 0.0;
  std::vector<WindowSpec> present;
  std::vector<Named<VisitSpec>> visits;
  std::vector<Named<ResponseSpec>> responses;
};

}  // namespace noonhouse
