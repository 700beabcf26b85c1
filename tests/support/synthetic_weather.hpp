// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>
#include <numbers>
#include <span>
#include <vector>

#include "sim/contract/forcing.hpp"
#include "sim/contract/ids.hpp"

namespace noonhouse::synthetic {

/// The channels of the invented weather, in the order of its rows.
struct WeatherChannels {
  ChannelId outdoor_k, outdoor_humidity, sky_k, sun_w_m2, wind_m_s;
  std::array<ChannelId, 5> all() const { return {outdoor_k, outdoor_humidity, sky_k, sun_w_m2, wind_m_s}; }
};

/// Invented hot summer weather: straight lines between rows a quarter of an hour apart.
class Weather final : public Forcing {
 public:
  using Row = std::array<double, 5>;
  static constexpr Tick kInterval = 15_min;

  Weather(const WeatherChannels& channels, int days) : channels_(channels.all()) {
    boost::random::mt19937 random(20260701);
    boost::random::uniform_01<double> share;
    for (int i = 0; i <= days * 96; ++i) {
      const double cloud = share(random), gust = share(random);
      rows_.push_back(row(i, cloud, gust));
    }
  }
  static Row row(int quarter, double cloud, double gust) {
    const double hour = std::fmod(quarter * 0.25, 24.0), day = quarter / 96.0;
    const double warmth = std::cos(2.0 * std::numbers::pi * (hour - 15.0) / 24.0);
    const double height = std::max(std::sin(std::numbers::pi * (hour - 5.5) / 15.0), 0.0);
    const double sun = 900.0 * height * (hour > 5.5 && hour < 20.5 ? 1.0 : 0.0) * (1.0 - 0.5 * cloud * cloud);
    const double outdoor = 296.0 + 0.3 * day + 8.0 * warmth;
    return {outdoor, 0.009 + 0.001 * std::sin(day), outdoor - 16.0 + 6.0 * cloud, sun, 0.5 + 3.0 * gust};
  }
  const Row& first() const { return rows_.front(); }

  Tick next_break(Tick t) const override { return kInterval * (t.ms / kInterval.ms + 1); }
  void fill(Tick from, Tick to, std::span<const double>, std::span<double> at_from,
            std::span<double> at_to) const override {
    write(from, at_from);
    write(to, at_to);
  }

 private:
  void write(Tick when, std::span<double> out) const {
    const auto last = static_cast<std::int64_t>(rows_.size()) - 2;
    const auto i = static_cast<std::size_t>(std::min(when.ms / kInterval.ms, last));
    const double share = seconds(when - kInterval * static_cast<std::int64_t>(i)) / seconds(kInterval);
    for (std::size_t k = 0; k < channels_.size(); ++k)
      out[static_cast<std::size_t>(channels_[k].index)] = rows_[i][k] + share * (rows_[i + 1][k] - rows_[i][k]);
  }

  std::array<ChannelId, 5> channels_;
  std::vector<Row> rows_;
};

}  // namespace noonhouse::synthetic
