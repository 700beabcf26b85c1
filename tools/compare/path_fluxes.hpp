// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>
#include <vector>

#include "sim/graph/house.hpp"

namespace noonhouse {

/// Fluxes that are counted together, each with its sign: "all that leaves the tank".
class FluxSum {
 public:
  /// Takes in one flux of every exchange on a path; those counted with `sign` -1 are subtracted.
  FluxSum& add(const House& house, std::string_view path, int flux, double sign = 1.0);
  /// What they carried together, from what each flux of the house carried [J, kg].
  double of(std::span<const double> carried) const;

 private:
  std::vector<SignedTerm> terms_;
};

/// What the tank gave to devices and people, lost at cuts and leaked [kg], less what ran back into it.
FluxSum water_used(const House& house);
/// What the loads drew, from panel and battery [J].
FluxSum loads_drawn(const House& house);

}  // namespace noonhouse
