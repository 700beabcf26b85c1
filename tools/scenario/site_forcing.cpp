// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/site_forcing.hpp"

#include <array>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

SiteForcing::SiteForcing(std::shared_ptr<const SiteTable> table, const HouseShape& shape, SiteChannels channels)
    : table_(std::move(table)), bays_(shape.bays.size()), channels_(std::move(channels)) {
  for (const Facet& facet : shape.facets) facet_roof_.push_back(facet.roof());
}

Tick SiteForcing::next_break(Tick t) const { return table_->spacing() * (t.ms / table_->spacing().ms + 1); }

void SiteForcing::fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
                       std::span<double> at_to) const {
  const std::int64_t step = table_->spacing().ms;
  const auto k = static_cast<std::size_t>(from.ms / step);
  NOON_ASSERT(to.ms <= (from.ms / step + 1) * step);
  const auto share = [&](Tick t) {
    return static_cast<double>(t.ms - static_cast<std::int64_t>(k) * step) / static_cast<double>(step);
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
  put(channels_.wind, between(a.wind_m_s, b.wind_m_s));
  put(channels_.sky, between(a.sky_k, b.sky_k));
  put(channels_.global, between(a.global_w_m2, b.global_w_m2));
  put(channels_.panel, between(a.panel_w, b.panel_w));
  put(channels_.rain, a.rain_kg_m2_s);

  double roof_passes = 1.0;
  for (const ShadeCloth& shade : channels_.shades) {
    const double drawn = channels[at(shade.drawn.index)];
    double incident = 0.0;
    for (std::size_t f = 0; f < table.facets(); ++f)
      if (facet_roof_[f]) incident += between(table.facet(k, f).incident_w, table.facet(k + 1, f).incident_w);
    put(shade.gain, drawn * shade.absorbs * incident * roof_passes);
    roof_passes *= 1.0 - drawn * (1.0 - shade.transmits);
  }
  for (std::size_t f = 0; f < table.facets(); ++f)
    put(channels_.facet_gain[f],
        (facet_roof_[f] ? roof_passes : 1.0) * between(table.facet(k, f).absorbed_w, table.facet(k + 1, f).absorbed_w));
  NOON_ASSERT(bays_ <= kMostBays);
  std::array<double, kMostBays> beam{}, diffuse{};
  for (std::size_t bay = 0; bay < bays_; ++bay)
    for (std::size_t f = 0; f < table.facets(); ++f) {
      const SiteTable::Landed &la = table.landed(k, bay, f), &lb = table.landed(k + 1, bay, f);
      const double passes = facet_roof_[f] ? roof_passes : 1.0;
      beam[bay] += passes * between(la.beam_w, lb.beam_w);
      diffuse[bay] += passes * between(la.diffuse_w, lb.diffuse_w);
    }
  for (const LightReceiver& r : channels_.receivers)
    put(r.gain, r.beam_share * beam[at(r.bay)] + r.diffuse_share * diffuse[at(r.bay)]);
}

}  // namespace noonhouse
