// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/observer.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// The air of a layer at one instant.
struct LayerMoment {
  double air_k = 0.0, humidity_ratio = 0.0, draught_m_s = 0.0;
};
using LayerSeries = std::vector<LayerMoment>;

/// What meets whatever stands on a place beside the air, at one instant.
struct PlaceMoment {
  double stirring_m_s = 0.0;
  double ground_k = 0.0;   ///< what pots stand on
  double radiant_k = 0.0;  ///< a black surface that sends the thermal radiation that comes from all round
  double light_w_m2 = 0.0, direct_w_m2 = 0.0;         ///< on the level
  double spray_kg_m2_s = 0.0, spray_heat_w_m2 = 0.0;  ///< that lands, mean since the moment before
};

struct PlaceClimate {
  StandingPlace place;
  std::string bay;
  double room_m2 = 0.0;
  double headroom_m = 0.0;           ///< for pots and plants together
  double used_to_w_m2 = 0.0;         ///< direct sun on it, mean of the first ten days
  std::vector<PlaceMoment> moments;  ///< the first at the start, one every `every`
};

/// The climates of all places of a house in one run, used or not; a place without room is left out.
struct HouseClimates {
  Tick every, length;
  double pressure_pa = 0.0, air_density_kg_m3 = 0.0, mean_air_k = 0.0;
  std::vector<double> layer_tops_m;
  std::vector<std::vector<LayerSeries>> air;  ///< [bay][layer]
  std::vector<PlaceClimate> places;

  /// The air at a height of a place's bay, the top layer's for anything above.
  const LayerSeries& air_at(const PlaceClimate& place, double height_m) const;
};

/// Sees what each place of a house meets in a run. A place's thermal radiation is that of what it sees, as if all of it
/// were black; a cover that lets thermal radiation pass shows the sky and, like the wet covers of a whole run, never a
/// film of water. Const towards the run; the assembly must outlive it.
class PlaceWatcher final : public Observer {
 public:
  PlaceWatcher(const Assembly& assembly, const ScenarioSpec& spec, const SiteTable& table, Tick every);
  void see_start(const Stretch& stretch) override { take(stretch, Tick{0}); }
  void see_stretch(const Stretch& stretch) override;
  HouseClimates take_climates() { return std::move(climates_); }

 private:
  /// Part of what a place sees: a node or channel, through a cloth where one hangs before it.
  struct Seen {
    Input what;
    double weight = 0.0;
    int cloth = -1;
    double cloth_passes = 1.0;
  };
  struct Watched {
    Input stirring, ground;
    PlaceChannels light;
    std::vector<Seen> sees;
    std::vector<LandingParts> landings;
    double sprayed_m2 = 0.0, water_kg = 0.0, heat_j = 0.0;  ///< carried at the last moment
  };
  void watch(std::size_t place, const ScenarioSpec& spec, const SiteTable& table);
  std::vector<Seen> sights_of(int surface, const ScenarioSpec& spec, const LightGeometry& geometry) const;
  void take(const Stretch& stretch, Tick when);
  double radiant_k(const Watched& place, std::span<const double> p) const;
  std::size_t at_flux(ExchangeId exchange) const {
    return static_cast<std::size_t>(
        assembly_.plan.house.exchanges[static_cast<std::size_t>(exchange.index)].first_flux);
  }
  double at(std::span<const double> p, const Input& input) const {
    return p[static_cast<std::size_t>(assembly_.plan.house.position(input))];
  }

  const Assembly& assembly_;
  std::vector<Watched> watched_;
  HouseClimates climates_;
  Tick next_;
};

}  // namespace noonhouse
