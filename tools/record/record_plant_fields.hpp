// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <tuple>

#include "tools/record/record_field.hpp"

namespace noonhouse {

template <>
struct RecordFields<RecordEvent> {
  using S = RecordEvent;
  static constexpr auto list = std::tuple{
      RecordField{"event", &S::id, "", "identifier of the event"},
      RecordField{"cause", &S::cause, "", "identifier of the event that caused it, -1 where none did"},
      RecordField{"time", &S::time_s, kSinceStart, "time of the event, local standard time"},
      RecordField{"kind", &S::kind, "", "kind of event"},
      RecordField{"subject", &S::subject, "", "device, plant or place"},
      RecordField{"what", &S::what, "", "what happened, in words"},
  };
};

template <>
struct RecordFields<PlantOutcome> {
  using S = PlantOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"plant", &S::name, "", "plant group"},
      RecordField{"kind", &S::kind, "", "kind of plant"},
      RecordField{"place", &S::place, "", "bench or place"},
      RecordField{"bay", &S::bay, "", "bay of the house"},
      RecordField{"height", &S::height_m, "m", "height above the floor"},
      RecordField{"harm_above", &S::harm_above_k, "K", "tissue temperature above which it is harmed"},
      RecordField{"lethal_above", &S::lethal_above_k, "K", "tissue temperature above which it dies"},
      RecordField{"harm_below", &S::harm_below_k, "K", "tissue temperature below which it is harmed"},
      RecordField{"outcome", &S::outcome, "", "kept, strained, harmed or lost"},
      RecordField{"reason", &S::reason, "", "reason of the outcome"},
      RecordField{"hours_beyond", &S::hours_beyond, "h", "time of tissue or roots beyond their limits of heat or cold"},
      RecordField{"degree_hours_beyond", &S::degree_hours_beyond, "K h", "integral of the excess above the harm limit"},
      RecordField{"longest_spell", &S::longest_spell_h, "h", "longest single time beyond the limits"},
      RecordField{"hours_lethal", &S::hours_lethal, "h", "time of tissue beyond its lethal limits"},
      RecordField{"peak_tissue_temperature", &S::peak_tissue_k, "K", "highest tissue temperature"},
      RecordField{"peak_tissue_time", &S::peak_tissue_time_s, kSinceStart, "time of the highest tissue temperature"},
      RecordField{"lowest_tissue_temperature", &S::lowest_tissue_k, "K", "lowest tissue temperature"},
      RecordField{"peak_air_temperature", &S::peak_air_k, "K", "highest air temperature at the plant"},
      RecordField{"hours_dry_air", &S::hours_dry_air, "h", "time of vapour pressure deficit above the limit"},
      RecordField{"hours_wet", &S::hours_wet, "h", "time of free water on the tissue"},
      RecordField{"daily_light", &S::daily_light_mol_m2, "mol m-2 d-1", "mean photosynthetic light a day"},
      RecordField{"sunburn_share", &S::sunburn_share, "1", "highest dose of sunburn over the one that marks it"},
      RecordField{"peak_wall_temperature", &S::peak_wall_k, "K", "highest temperature of its pots' walls"},
      RecordField{"transpired", &S::transpired_kg, "kg", "water that left through its leaves"},
      RecordField{"day_length", &S::day_length_h, "h", "mean time a day with light enough to count as day"},
      RecordField{"days_long_enough", &S::days_long_enough, "1", "days of the length the kind wants"},
      RecordField{"days_of_wrong_length", &S::days_of_wrong_length, "1", "days too short or too long for the kind"},
  };
};

template <>
struct RecordFields<LevelOutcome> {
  using S = LevelOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"bay", &S::bay, "", "bay of the house"},
      RecordField{"level", &S::level, "", "air layer, counted from the floor"},
      RecordField{"height", &S::height_m, "m", "middle of the layer above the floor"},
      RecordField{"peak_temperature", &S::peak_k, "K", "highest air temperature"},
      RecordField{"peak_time", &S::peak_time_s, kSinceStart, "time of the highest air temperature"},
      RecordField{"mean_temperature", &S::mean_k, "K", "mean air temperature"},
  };
};

template <>
struct RecordFields<DeviceOutcome> {
  using S = DeviceOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"device", &S::name, "", "device"},
      RecordField{"starts", &S::starts, "1", "number of starts"},
      RecordField{"hours_on", &S::hours_on, "h", "time switched on"},
  };
};

}  // namespace noonhouse
