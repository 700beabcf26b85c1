// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <vector>

#include "models/weather/weather_signal.hpp"
#include "sim/contract/forcing.hpp"
#include "sim/contract/ids.hpp"
#include "tools/scenario/light_plan.hpp"
#include "tools/scenario/run_grid.hpp"

namespace noonhouse {

/// Where in a table's row of sunlight each part of the house stands: what each takes up [W], then the light on each
/// place, used or not, and of it what comes straight from the sun and what does not [W/m2 of its level].
struct SunRow {
  std::size_t facets = 0, cloths = 0, floors = 0, benches = 0, groups = 0, places = 0;
  std::size_t facet(std::size_t i) const { return i; }  ///< its inner face
  std::size_t outer_face(std::size_t i) const { return facets + i; }
  std::size_t cloth(std::size_t i) const { return 2 * facets + i; }
  std::size_t floor(std::size_t bay) const { return 2 * facets + cloths + bay; }
  std::size_t bench(std::size_t i) const { return 2 * facets + cloths + floors + i; }
  std::size_t sunlit(std::size_t group) const { return 2 * facets + cloths + floors + benches + group; }
  std::size_t shaded(std::size_t group) const { return sunlit(groups) + group; }
  std::size_t pots(std::size_t group) const { return sunlit(2 * groups) + group; }
  std::size_t light(std::size_t place) const { return sunlit(3 * groups) + place; }
  std::size_t direct(std::size_t place) const { return light(places) + place; }
  std::size_t soft(std::size_t place) const { return light(2 * places) + place; }
  std::size_t size() const { return light(3 * places); }
};

/// The row of a house.
SunRow sun_row(const ScenarioSpec& spec, const HouseShape& shape);

/// Weather at the site, and where the sun's light ends up in the house, at every grid instant of the run: once with all
/// cloths away, and once with each cloth drawn alone.
class SiteTable {
 public:
  struct Instant {
    double outdoor_k = 0.0, humidity_ratio = 0.0, wind_from_rad = 0.0, sky_k = 0.0;
    /// At the beginning and at the end of the interval that begins here: gusts set in and cease at once.
    double wind_m_s = 0.0, wind_at_end_m_s = 0.0;
    double global_w_m2 = 0.0, panel_w = 0.0;
    double rain_kg_m2_s = 0.0;  ///< mean over the interval that begins here
    double deep_soil_k = 0.0;
  };

  /// `sun` holds the geometry and one entry per grid instant; it is kept alive by the table.
  SiteTable(const ScenarioSpec& spec, const HouseShape& shape, const WeatherSignal& weather, double pressure_pa,
            std::shared_ptr<const SunlitHouse> sun);

  const RunGrid& grid() const { return grid_; }
  const SunRow& row() const { return row_; }
  std::size_t instants() const { return instants_.size(); }
  const SunlitHouse& sun() const { return *sun_; }
  double gust_factor() const { return gust_factor_; }  ///< gusts over the mean wind at the house
  double mean_outdoor_k() const;                       ///< over the run's regular instants [K]
  const Instant& instant(std::size_t k) const { return instants_[k]; }
  /// Mean over a span of the run, longer than nothing: the speed, and where the mean of the wind's vectors comes from.
  struct MeanWind {
    double speed_m_s = 0.0, from_rad = 0.0;
  };
  MeanWind mean_wind(Tick from, Tick until) const;
  /// Pressure of the wind on each facet [Pa] at the beginning and at the end of the interval that begins at an instant.
  const double* wind_pa(std::size_t k) const { return wind_pa_.data() + 2 * k * row_.facets; }
  const double* wind_at_end_pa(std::size_t k) const { return wind_pa(k) + row_.facets; }
  /// Entries of a row with all cloths away (state 0) or cloth s alone drawn (state s + 1).
  const double* sunlight(std::size_t k, std::size_t state) const {
    return sunlight_.data() + (k * (row_.cloths + 1) + state) * row_.size();
  }

 private:
  void add_wind(const ScenarioSpec& spec, const HouseShape& shape, double pressure_pa);

  RunGrid grid_;
  double gust_factor_ = 1.0;
  SunRow row_;
  std::shared_ptr<const SunlitHouse> sun_;
  std::vector<Instant> instants_;
  std::vector<double> sunlight_, wind_pa_;
};

/// Mean over the first ten days of the run, or all of it, of the direct sun on a place, all cloths away [W/m2].
double usual_direct(const SiteTable& table, int place);

/// The grid instants of a run with their sun, on the house as it stands: what plans with equal geometry share.
std::shared_ptr<const SunlitHouse> sunlit_house(const ScenarioSpec& spec, const HouseShape& shape,
                                                const WeatherSignal& weather);

/// Most bays a house may have.
inline constexpr std::size_t kMostBays = 64;

/// Which channels the forcing writes.
struct SiteChannels {
  ChannelId outdoor, humidity, wind, gust, sky, rain, global, panel, deep_soil;
  std::vector<ChannelId> sunlight;  ///< by SunRow
  std::vector<ChannelId> wind_pa;   ///< by facet
  std::vector<ChannelId> drawn;     ///< position of each cloth, read
};

/// The house's forcing: the table, between all cloths away and each drawn. With several cloths partly drawn their
/// effects add up, which leaves out reflections from one cloth to another.
class SiteForcing final : public Forcing {
 public:
  SiteForcing(std::shared_ptr<const SiteTable> table, SiteChannels channels);
  Tick next_break(Tick t) const override;
  void fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
            std::span<double> at_to) const override;

 private:
  void write(std::size_t k, double share, std::span<const double> channels, std::span<double> out) const;

  std::shared_ptr<const SiteTable> table_;
  SiteChannels channels_;
};

}  // namespace noonhouse
