// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/plain_columns.hpp"

#include "models/properties/constants.hpp"

namespace noonhouse {

const std::vector<PlainColumn>& plain_columns() {
  static const PlainUnit kelvin{.name = "K"}, celsius{.name = "degC", .offset = kZeroCelsius};
  static const PlainUnit per_area{.name = "W/m2"};
  static const std::vector<PlainColumn> columns{
      {"temperature", {kelvin, celsius}, 183.15, 338.15, false, &PlainCells::temperature_k},
      {"humidity_ratio", {{.name = "kg/kg"}}, 0.0, 0.2, false, &PlainCells::humidity_ratio},
      {"relative_humidity", {{.name = "%", .scale = 0.01}}, 0.0, 1.15, false, &PlainCells::relative_humidity},
      {"dew_point", {kelvin, celsius}, 173.15, 323.15, false, &PlainCells::dew_point_k},
      {"pressure", {{.name = "Pa"}, {.name = "hPa", .scale = 100.0}}, 30e3, 110e3, false, &PlainCells::pressure_pa},
      {"beam_normal", {per_area}, 0.0, 1500.0, false, &PlainCells::beam_normal_w_m2},
      {"diffuse", {per_area}, 0.0, 1500.0, false, &PlainCells::diffuse_horizontal_w_m2},
      {"global", {per_area}, 0.0, 1800.0, false, &PlainCells::global_horizontal_w_m2},
      {"wind", {{.name = "m/s"}, {.name = "km/h", .scale = 1.0 / 3.6}}, 0.0, 110.0, false, &PlainCells::wind_m_s},
      {"wind_from",
       {{.name = "rad"}, {.name = "deg", .scale = kRadiansPerDegree}},
       0.0,
       2.0 * kPi,
       false,
       &PlainCells::wind_from_rad},
      {"rain", {{.name = "kg/m2/s"}, {.name = "mm", .per_step = true}}, 0.0, 0.2, false, &PlainCells::rain_kg_m2_s},
      {"longwave_down", {per_area}, 0.0, 800.0, true, &PlainCells::longwave_down_w_m2},
      {"cloud", {{.name = "1"}, {.name = "%", .scale = 0.01}}, 0.0, 1.0, true, &PlainCells::cloud_share},
  };
  return columns;
}

}  // namespace noonhouse
