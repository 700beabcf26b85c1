// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "sim/graph/house.hpp"

namespace noonhouse {

/// Where heat goes that the sun brings into a house.
enum class HeatLine : std::uint8_t {
  vents,          ///< out with air through openings, fans and gaps, without latent heat, less what motors give the air
  mist,           ///< to mist that evaporates in the air
  surfaces,       ///< to wet surfaces that dry; dew and settling fog give it back
  transpiration,  ///< to water that leaves evaporate
  cover,          ///< through the cover to outdoor air and surroundings
  sky,            ///< radiated to the sky, from the cover or through it
  ground,         ///< into floor and soil: what they keep, and what leaves below and at the edge
  water,          ///< with water: what the tank keeps and loses, rain and drained water
  kept,           ///< what all other parts of the house keep: air without its latent heat, cover, benches, plants, pots
};
inline constexpr std::size_t kHeatLines = 9;

/// Heat taken up from the sun and where it went, over some time [J]. A line is positive where heat leaves the house,
/// is bound in vapour or is kept; negative where it comes back.
struct HeatSum {
  double sun_j = 0.0;
  std::array<double, kHeatLines> line_j{};
  double of(HeatLine line) const { return line_j[static_cast<std::size_t>(line)]; }
  /// Sun less all lines [J]: zero but for rounding.
  double residual_j() const;
  HeatSum operator-(const HeatSum& earlier) const;
  HeatSum& operator+=(const HeatSum& other);
};

/// The book of sensible heat of a house, kept from what every flux carried and what every store holds.
///
/// Energy counts from 0 degC and liquid water, so air's energy holds the latent heat L0 (at 0 degC) of its vapour. The
/// sensible book takes it out: S = E - L0 W, summed over the stores, with W the water that is vapour. A flux then adds
///   energy between house and outside          what it carries, to the line of its way
///   vapour between air and outside            -L0 of it, to the same line: outside gets sensible heat alone
///   liquid of the house that turns to vapour  +L0 of it, to the line of its way; vapour that turns to liquid, -L0
///   what dries straight to outside air        +L0 of it, to surfaces, and -L0 to the line of its way
/// and all else moves heat within the house. Air that comes in by one way and leaves by another counts its heat from
/// 0 degC at each, so only the sum over all ways of air says what it took along: they share one line. What the stores
/// keep is read from their own amounts and not from the fluxes, so that sun = sum of lines tests both.
///
/// Which amounts are vapour is asked of the stores: water is vapour where a kilogram more of it at constant temperature
/// takes more than L0 / 2 of energy. A water account outside is vapour where it exchanges with vapour. The line is told
/// by the way's kind (ExchangeInfo::path); a way of unknown kind counts with the vents where it carries vapour across
/// the boundary, with water where it carries liquid, else with the cover; water that changes its state on a way that is
/// not one of mist, surfaces or transpiration counts with surfaces.
/// Does not tell apart: evaporation from plants, benches, floor and cover; freezing.
class HeatLedger {
 public:
  explicit HeatLedger(const House& house);
  /// The book at an instant, from potentials (states first) and what each flux has carried so far: of use as the
  /// difference between two instants.
  HeatSum book(std::span<const double> potentials, std::span<const double> carried) const;
  /// The kinds of way that were placed by what they carry, because the list of known ones lacks them.
  const std::vector<std::string>& unknown_paths() const { return unknown_paths_; }
  /// True where this amount (states, then accounts) is water that is vapour.
  bool is_vapour(int amount) const { return vapour_[static_cast<std::size_t>(amount)]; }

 private:
  /// What an amount or a flux adds to one line, a unit of it; line kHeatLines is the sun.
  struct Term {
    std::size_t index = 0, line = 0;
    double factor = 0.0;
  };
  void find_vapour();
  void place_fluxes();
  void place_energy(std::size_t flux);
  void place_water(std::size_t flux);
  void place_stores();
  bool inside(int amount) const { return amount < house_.states; }
  bool is_vapour_inside(int amount) const { return inside(amount) && is_vapour(amount); }
  const std::string& path_of(const FluxInfo& flux) const;
  void note_unknown(const std::string& path);
  HeatLine line_across(const FluxInfo& flux);
  HeatLine line_of_evaporation(const FluxInfo& flux);
  HeatLine line_by_what_crosses(const ExchangeInfo& exchange) const;

  const House& house_;
  std::vector<bool> vapour_;
  std::vector<Term> of_flux_, of_state_;
  std::vector<std::string> unknown_paths_;
};

}  // namespace noonhouse
