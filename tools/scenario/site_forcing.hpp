// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <vector>

#include "models/weather/weather_signal.hpp"
#include "sim/contract/forcing.hpp"
#include "sim/contract/ids.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// Weather at the site and sunlight on and through each facet, with no screen drawn, at every grid instant of the
/// run. It depends on site, weather and geometry only: plans that share these share one table.
class SiteTable {
 public:
  /// Per facet [W]: taken up by the cover; arriving on the outside.
  struct FacetSun {
    double absorbed_w = 0.0, incident_w = 0.0;
  };
  /// Per bay and facet [W]: what comes down on the bay's floor plane through the facet.
  struct Landed {
    double beam_w = 0.0, diffuse_w = 0.0;
  };
  struct Instant {
    double outdoor_k = 0.0, humidity_ratio = 0.0, wind_m_s = 0.0, sky_k = 0.0, global_w_m2 = 0.0, panel_w = 0.0;
    double rain_kg_m2_s = 0.0;  ///< mean over the interval that begins here
  };

  SiteTable(const ScenarioSpec& spec, const HouseShape& shape, const WeatherSignal& weather, double pressure_pa);

  Tick spacing() const { return spacing_; }
  std::size_t facets() const { return facets_; }
  double mean_outdoor_k() const;  ///< over the run's grid instants [K]
  const Instant& instant(std::size_t k) const { return instants_[k]; }
  const FacetSun& facet(std::size_t k, std::size_t facet) const { return sun_[k * facets_ + facet]; }
  const Landed& landed(std::size_t k, std::size_t bay, std::size_t facet) const {
    return landed_[(k * bays_ + bay) * facets_ + facet];
  }

 private:
  Tick spacing_;
  std::size_t facets_, bays_;
  std::vector<Instant> instants_;
  std::vector<FacetSun> sun_;
  std::vector<Landed> landed_;
};

/// Most bays a house may have.
inline constexpr std::size_t kMostBays = 64;

/// Sunlight that something inside takes up: its channel [W] is
/// beam_share * (beam landed in the bay) + diffuse_share * (diffuse landed in the bay).
struct LightReceiver {
  ChannelId gain;
  int bay = 0;
  double beam_share = 0.0, diffuse_share = 0.0;
};

/// A shade cloth over all roof facets: its position, and the power it takes up.
struct ShadeCloth {
  ChannelId drawn, gain;
  double transmits = 1.0, absorbs = 0.0;
};

/// Which channels the forcing writes.
struct SiteChannels {
  ChannelId outdoor, humidity, wind, sky, rain, global, panel;
  std::vector<ChannelId> facet_gain;
  std::vector<LightReceiver> receivers;
  std::vector<ShadeCloth> shades;
};

/// The house's forcing: the table, with shade cloths where they are drawn.
/// Not modelled: which place within a bay a beam reaches; the light on its floor plane is shared out by area.
class SiteForcing final : public Forcing {
 public:
  SiteForcing(std::shared_ptr<const SiteTable> table, const HouseShape& shape, SiteChannels channels);
  Tick next_break(Tick t) const override;
  void fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
            std::span<double> at_to) const override;

 private:
  void write(std::size_t k, double share, std::span<const double> channels, std::span<double> out) const;

  std::shared_ptr<const SiteTable> table_;
  std::vector<bool> facet_roof_;
  std::size_t bays_;
  SiteChannels channels_;
};

}  // namespace noonhouse
