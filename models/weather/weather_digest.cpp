// SPDX-License-Identifier: Apache-2.0
#include "models/weather/weather_digest.hpp"

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

namespace noonhouse {
namespace {

class Fnv1a64 {
 public:
  void add(std::uint64_t word) {
    for (int byte = 0; byte < 8; ++byte) {
      hash_ ^= (word >> (8 * byte)) & 0xffU;
      hash_ *= kPrime;
    }
  }
  void add(double value) {
    if (std::isnan(value)) return add(std::uint64_t{0x7ff8000000000000U});
    add(std::bit_cast<std::uint64_t>(value == 0.0 ? 0.0 : value));
  }
  std::uint64_t hash() const { return hash_; }

 private:
  // FNV-1a, 64 bit: offset basis and prime, IETF draft-eastlake-fnv, section 5 (from memory).
  static constexpr std::uint64_t kOffsetBasis = 0xcbf29ce484222325U;
  static constexpr std::uint64_t kPrime = 0x100000001b3U;
  std::uint64_t hash_ = kOffsetBasis;
};

}  // namespace

std::string weather_digest(const WeatherSeries& series) {
  Fnv1a64 fnv;
  for (double value : {series.latitude_deg, series.longitude_deg, series.altitude_m, series.utc_offset_s, series.step_s,
                       series.instant_share, series.albedo}) {
    fnv.add(value);
  }
  fnv.add(static_cast<std::uint64_t>(series.start.time_since_epoch().count()));
  fnv.add(static_cast<std::uint64_t>(series.rows.size()));
  for (const WeatherRow& row : series.rows) {
    for (double value : {row.temperature_k, row.humidity_ratio, row.pressure_pa, row.beam_normal_w_m2,
                         row.diffuse_horizontal_w_m2, row.global_horizontal_w_m2, row.wind_m_s, row.wind_from_rad,
                         row.rain_kg_m2_s, row.longwave_down_w_m2, row.cloud_share}) {
      fnv.add(value);
    }
  }
  for (const Cloudburst& burst : series.cloudbursts) {
    fnv.add(static_cast<std::uint64_t>(burst.begin.time_since_epoch().count()));
    for (double value : {burst.duration_s, burst.depth_kg_m2, burst.light_share}) fnv.add(value);
  }
  constexpr std::array kDigits{'0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f'};
  std::string text = "fnv1a64:";
  for (int shift = 60; shift >= 0; shift -= 4) text += kDigits[(fnv.hash() >> shift) & 0xfU];
  return text;
}

}  // namespace noonhouse
