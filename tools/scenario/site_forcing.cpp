// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/site_forcing.hpp"

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {

SiteForcing::SiteForcing(std::shared_ptr<const SiteTable> table, SiteChannels channels)
    : table_(std::move(table)), channels_(std::move(channels)) {
  NOON_ASSERT(channels_.sunlight.size() == table_->row().size() && channels_.drawn.size() == table_->row().cloths);
}

Tick SiteForcing::next_break(Tick t) const {
  const RunGrid& grid = table_->grid();
  return grid.when(grid.interval_at(t) + 1);
}

void SiteForcing::fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
                       std::span<double> at_to) const {
  const RunGrid& grid = table_->grid();
  const std::size_t k = grid.interval_at(from);
  const Tick begin = grid.when(k), end = grid.when(k + 1);
  NOON_ASSERT(to <= end);
  const auto share = [&](Tick t) {
    return static_cast<double>((t - begin).ms) / static_cast<double>((end - begin).ms);
  };
  write(k, share(from), channels, at_from);
  write(k, share(to), channels, at_to);
}

/// Channels at a share of the way from grid instant k to the next.
void SiteForcing::write(std::size_t k, double share, std::span<const double> channels, std::span<double> out) const {
  const SiteTable& table = *table_;
  const auto between = [share](double a, double b) { return a + share * (b - a); };
  const SiteTable::Instant &a = table.instant(k), &b = table.instant(k + 1);
  const auto put = [&out](ChannelId channel, double value) { out[at(channel.index)] = value; };
  put(channels_.outdoor, between(a.outdoor_k, b.outdoor_k));
  put(channels_.humidity, between(a.humidity_ratio, b.humidity_ratio));
  put(channels_.wind, between(a.wind_m_s, a.wind_at_end_m_s));
  put(channels_.gust, table.gust_factor() * between(a.wind_m_s, a.wind_at_end_m_s));
  put(channels_.sky, between(a.sky_k, b.sky_k));
  put(channels_.global, between(a.global_w_m2, b.global_w_m2));
  put(channels_.panel, between(a.panel_w, b.panel_w));
  put(channels_.deep_soil, between(a.deep_soil_k, b.deep_soil_k));
  put(channels_.rain, a.rain_kg_m2_s);
  const double *wind = table.wind_pa(k), *wind_next = table.wind_at_end_pa(k);
  for (std::size_t f = 0; f < channels_.wind_pa.size(); ++f) put(channels_.wind_pa[f], between(wind[f], wind_next[f]));

  const double *away = table.sunlight(k, 0), *away_next = table.sunlight(k + 1, 0);
  for (std::size_t i = 0; i < channels_.sunlight.size(); ++i)
    put(channels_.sunlight[i], between(away[i], away_next[i]));
  for (std::size_t s = 0; s < channels_.drawn.size(); ++s) {
    const double drawn = channels[at(channels_.drawn[s].index)];
    if (drawn == 0.0) continue;
    const double *with = table.sunlight(k, s + 1), *with_next = table.sunlight(k + 1, s + 1);
    for (std::size_t i = 0; i < channels_.sunlight.size(); ++i)
      out[at(channels_.sunlight[i].index)] += drawn * between(with[i] - away[i], with_next[i] - away_next[i]);
  }
}

}  // namespace noonhouse
