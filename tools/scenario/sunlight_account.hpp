// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <map>
#include <memory>
#include <vector>

#include "models/weather/sky_light.hpp"
#include "tools/scenario/light_plan.hpp"
#include "tools/scenario/site_forcing.hpp"

namespace noonhouse {

/// Sends one instant's light through one plan's covers, cloths and surfaces and says who takes it up.
class SunlightAccount {
 public:
  SunlightAccount(const ScenarioSpec& spec, const HouseShape& shape, const SunRow& row);
  SunlightAccount(const SunlightAccount&) = delete;
  SunlightAccount& operator=(const SunlightAccount&) = delete;

  /// Where all light of an instant went [W]; the last three and what is taken up add up to the first.
  struct Totals {
    double came_w = 0.0, taken_up_w = 0.0, sent_back_w = 0.0, let_out_w = 0.0;
  };
  /// One row, with all cloths away (state 0) or cloth s alone drawn (state s + 1).
  Totals write(const SkyLight& light, const SunlitHouse::Instant& now, std::size_t state, double* row);

  /// An instant's light in full, for those who look at places.
  struct Lit {
    OutdoorLight outdoors;
    std::vector<FacetOptics::Taken> facets;
    std::vector<PieceBeam> beams;
    LitHouse house;
  };
  Lit light_up(const SkyLight& light, const SunlitHouse::Instant& now, std::size_t state);
  const LightBalance& balance(const LightGeometry& geometry, std::size_t state);
  const FacetOptics& facet(std::size_t f, std::size_t state) const { return optics_[state][f]; }

 private:
  double write_inside(const LitHouse& lit, const LightGeometry& geometry, double* row) const;
  void write_places(const LitHouse& lit, const LightGeometry& geometry, double* row) const;
  struct Key {
    const LightGeometry* geometry;
    std::size_t state;
    auto operator<=>(const Key&) const = default;
  };
  ScenarioSpec spec_;
  const HouseShape shape_;
  SunRow row_;
  std::vector<std::unique_ptr<const CoverOptics>> covers_;  ///< per facet
  std::vector<std::vector<FacetOptics>> optics_;            ///< [state][facet]
  std::vector<int> cloth_of_;                               ///< per facet
  std::map<Key, std::unique_ptr<const LightBalance>> balances_;
  std::map<const LightGeometry*, std::vector<SurfacePart>> parts_;
  std::vector<StandingPlace> places_;
  std::vector<LightTaken> takes_;  ///< per group
};

}  // namespace noonhouse
