// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "sim/contract/observer.hpp"
#include "tools/placing/probe.hpp"

namespace noonhouse {

/// Sees what a plant on trial feels; const towards the run.
class ProbeWatch final : public Observer {
 public:
  ProbeWatch(const House& house, const PlantParts& plant, const PlantGroupSpec& group, const PlaceClimate& place,
             const HouseClimates& climates);
  void see_start(const Stretch& stretch) override { sample(stretch, Tick{0}); }
  void see_stretch(const Stretch& stretch) override;
  void see_event(const LogEntry& entry) override;
  PlaceFelt finish();

 private:
  struct Watched {
    Input dose;
    double strained_s = 1.0;
  };
  void watch(const std::string& what, NodeId dose, double strained_s, double harmed_s, double lost_s);
  void watch_hazards(const PlantKindSpec& kind);
  void sample(const Stretch& stretch, Tick when);
  void close_day();
  double at(std::span<const double> p, const Input& input) const {
    return p[static_cast<std::size_t>(house_.position(input))];
  }

  const House& house_;
  const PlantParts& plant_;
  const HouseClimates& climates_;
  const LayerSeries& air_;
  double wet_kg_ = 0.0, dry_kg_ = 0.0, dry_s_ = 0.0, night_cold_s_ = 0.0;
  Tick next_;
  std::size_t moment_ = 0, thirst_ = 0;  ///< thirst_: which hazard it is
  std::vector<Watched> watched_;
  PlaceFelt felt_;
  DayFelt day_;
  double light_before_ = 0.0, lit_before_ = 0.0, light_now_ = 0.0, lit_now_ = 0.0;
};

}  // namespace noonhouse
