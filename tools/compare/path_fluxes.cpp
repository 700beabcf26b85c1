// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/path_fluxes.hpp"

namespace noonhouse {

FluxSum& FluxSum::add(const House& house, std::string_view path, int flux, double sign) {
  for (const ExchangeInfo& exchange : house.exchanges)
    if (exchange.path == path) terms_.push_back({exchange.first_flux + flux, sign});
  return *this;
}

double FluxSum::of(std::span<const double> carried) const {
  double sum = 0.0;
  for (const SignedTerm& term : terms_) sum += term.sign * carried[static_cast<std::size_t>(term.index)];
  return sum;
}

FluxSum water_used(const House& house) {
  FluxSum sum;
  sum.add(house, "mist", 0).add(house, "mist that lands", 0).add(house, "wet pad", 3);
  sum.add(house, "back to the tank", 0, -1.0);
  sum.add(house, "hand watering", 0).add(house, "drip", 0).add(house, "spilt from a line", 0).add(house, "leak", 0);
  return sum;
}

FluxSum loads_drawn(const House& house) {
  FluxSum sum;
  sum.add(house, "power", 0).add(house, "power", 2);
  return sum;
}

}  // namespace noonhouse
