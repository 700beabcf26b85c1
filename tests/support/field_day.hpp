// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

#include "models/properties/constants.hpp"

/// The invented day and the parts of a scenario that all field houses share.
namespace noonhouse::field {

/// A bright day: temperature from low at 03:00 to high at 15:00, sun a half sine from 05:00 to 19:00.
struct Day {
  std::string date = "2025-07-05";
  double latitude_deg = 38.0, altitude_m = 20.0;
  double low_c = 20.0, high_c = 32.0, dew_point_c = 14.0;
  double noon_w_m2 = 900.0, wind_m_s = 2.0;
};

inline std::string weather_text(const Day& day) {
  std::string text = fmt::format(
      "# noonhouse weather 1\n# name: Field day\n# origin: invented for this test\n# invented: yes\n"
      "# latitude: {} deg\n# longitude: 0 deg\n# altitude: {} m\n# utc_offset: 0 h\n# step: 1 h\n"
      "time,temperature[degC],dew_point[degC],global[W/m2],wind[m/s]\n",
      day.latitude_deg, day.altitude_m);
  for (int hour = 0; hour < 24; ++hour) {
    const double swing = 0.5 * (1.0 - std::cos(kPi * (hour - 3.0) / 12.0));
    const double sun = hour > 5 && hour < 19 ? day.noon_w_m2 * std::sin(kPi * (hour - 5.0) / 14.0) : 0.0;
    text += fmt::format("{} {:02}:00,{:.2f},{},{:.1f},{}\n", day.date, hour,
                        day.low_c + (day.high_c - day.low_c) * swing, day.dew_point_c, sun, day.wind_m_s);
  }
  return text;
}

/// Run, site, weather, water and power of all field houses: neither ever runs out. Only house and devices differ.
inline std::string scenario_text(const Day& day, const std::string& house_and_devices) {
  return fmt::format(
             "title: Field house\nrun:\n  start: {}\n  length: 18 h\n  warm_up: 2 d\nsite:\n  latitude: {} deg\n"
             "  longitude: 0 deg\n  altitude: {} m\n  utc_offset: \"+00:00\"\n  deep_soil: {} degC\n  wind_share: 100 "
             "%\n"
             "weather:\n  kind: plain weather file\n  file: day.csv\n",
             day.date, day.latitude_deg, day.altitude_m, 0.5 * (day.low_c + day.high_c)) +
         "tank:\n  capacity: 900 m3\n  starts_with: 800 m3\n  low_mark: 1 m3\n  restart_mark: 2 m3\n"
         "power:\n  panel_area: 10 m2\n  battery: 5000 kWh\n" +
         house_and_devices;
}

/// A closed crop on a low bench in each bay: peppers of leaf area 3 that cover the floor but for 5 cm along the walls.
/// Leaves take up half of the light, the crop then throws back about a fifth, as crops do (albedo 0.23 [Allen et al.
/// 1998, FAO Irrigation and Drainage Paper 56, eq. 38]). Conductance and tissue: round
/// figures, from memory.
inline std::string crop_text(const std::vector<std::string>& bays, double bay_length_m, double width_m) {
  std::string benches = "benches:\n", plants = "plants:\n";
  for (const std::string& bay : bays) {
    const double length = bay_length_m - 0.1, width = width_m - 0.1;
    benches +=
        fmt::format("  bench of {0}: {{ bay: {0}, height: 0.3 m, length: {1} m, width: {2} m }}\n", bay, length, width);
    plants +=
        fmt::format("  crop of {0}: {{ kind: pepper, place: bench of {0}, area: {1} m2, pot_water: 100 kg/m2 }}\n", bay,
                    0.99 * length * width);
  }
  return benches +
         "plant_kinds:\n  pepper:\n    like: fruiting crop\n    leaf_area_index: 3\n    tissue: 3 kg/m2\n    "
         "most_conductance: 5 mm/s\n    harm_above: 50 degC\n    lethal_above: 60 degC\n"
         "    harm_below: 0 degC\n    lethal_below: -3 degC\n" +
         plants;
}

/// Outdoor air of the day at an hour [degC].
inline double outdoor_c(const Day& day, double hour) {
  return day.low_c + (day.high_c - day.low_c) * 0.5 * (1.0 - std::cos(kPi * (hour - 3.0) / 12.0));
}

}  // namespace noonhouse::field
