// SPDX-License-Identifier: Apache-2.0
#include "tools/ledger/heat_ledger.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <string_view>

#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kSunLine = kHeatLines;

struct KnownPath {
  std::string_view path;
  HeatLine line;
  bool stores = false;  ///< what the nodes at its ends keep counts with this line too
};
constexpr std::string_view kSunPath = "sunlight absorbed";
constexpr std::array kKnownPaths{
    KnownPath{"ventilation", HeatLine::vents},
    KnownPath{"leakage", HeatLine::vents},
    KnownPath{"heat of motors", HeatLine::vents},
    KnownPath{"wet pad", HeatLine::vents},
    KnownPath{"mist", HeatLine::mist},
    KnownPath{"evaporation and condensation", HeatLine::surfaces},
    KnownPath{"fog settling", HeatLine::surfaces},
    KnownPath{"transpiration", HeatLine::transpiration},
    KnownPath{"through the cover", HeatLine::cover},
    KnownPath{"to the sky", HeatLine::sky},
    KnownPath{"into the soil", HeatLine::ground, true},
    KnownPath{"tank wall", HeatLine::water, true},
    KnownPath{"leak", HeatLine::water},
    KnownPath{"tank evaporation", HeatLine::water},
    KnownPath{"refill", HeatLine::water},
    KnownPath{"rain", HeatLine::water},
    KnownPath{"overflow", HeatLine::water},
    KnownPath{"run-off", HeatLine::water},
    KnownPath{"back to the tank", HeatLine::water},
};

const KnownPath* known_path(std::string_view path) {
  const auto* found =
      std::find_if(kKnownPaths.begin(), kKnownPaths.end(), [&](const auto& k) { return k.path == path; });
  return found == kKnownPaths.end() ? nullptr : found;
}

std::size_t row_of(HeatLine line) { return static_cast<std::size_t>(line); }

/// The state of a node that counts this quantity.
std::optional<int> state_of(const NodeInfo& node, Quantity quantity) {
  for (int k = 0; k < node.states; ++k)
    if (node.counts[at(k)] == quantity) return node.first_state + k;
  return std::nullopt;
}

}  // namespace

double HeatSum::residual_j() const { return sun_j - std::accumulate(line_j.begin(), line_j.end(), 0.0); }

HeatSum HeatSum::operator-(const HeatSum& earlier) const {
  HeatSum out{sun_j - earlier.sun_j, {}};
  for (std::size_t i = 0; i < kHeatLines; ++i) out.line_j[i] = line_j[i] - earlier.line_j[i];
  return out;
}

HeatSum& HeatSum::operator+=(const HeatSum& other) {
  sun_j += other.sun_j;
  for (std::size_t i = 0; i < kHeatLines; ++i) line_j[i] += other.line_j[i];
  return *this;
}

HeatLedger::HeatLedger(const House& house) : house_(house), vapour_(at(house.states + house.accounts), false) {
  find_vapour();
  place_fluxes();
  place_stores();
}

void HeatLedger::find_vapour() {
  std::vector<double> potentials(at(house_.states)), slope(2 * at(house_.states));
  for (const auto& batch : house_.store_batches)
    batch->slopes(house_.initial_amounts.data(), potentials.data(), slope.data());
  for (const NodeInfo& node : house_.nodes) {
    const auto energy = state_of(node, Quantity::energy), water = state_of(node, Quantity::water);
    if (!energy || !water) continue;
    // dT = (dT/dE) dE + (dT/dW) dW is zero where dE/dW is the energy of a kilogram more.
    const double energy_j_kg = -slope[2 * at(*energy) + 1] / slope[2 * at(*energy)];
    vapour_[at(*water)] = energy_j_kg > 0.5 * kLatentHeatZero;
  }
  for (const FluxInfo& flux : house_.flux) {
    if (flux.quantity != Quantity::water) continue;
    if (!inside(flux.to) && is_vapour_inside(flux.from)) vapour_[at(flux.to)] = true;
    if (!inside(flux.from) && is_vapour_inside(flux.to)) vapour_[at(flux.from)] = true;
  }
}

void HeatLedger::place_fluxes() {
  for (std::size_t j = 0; j < house_.flux.size(); ++j) {
    if (house_.flux[j].quantity == Quantity::energy) place_energy(j);
    if (house_.flux[j].quantity == Quantity::water) place_water(j);
  }
}

const std::string& HeatLedger::path_of(const FluxInfo& flux) const { return house_.exchanges[at(flux.exchange)].path; }

void HeatLedger::note_unknown(const std::string& path) {
  if (std::find(unknown_paths_.begin(), unknown_paths_.end(), path) == unknown_paths_.end())
    unknown_paths_.push_back(path);
}

/// The line of a flux between the house and the outside.
HeatLine HeatLedger::line_across(const FluxInfo& flux) {
  if (const KnownPath* known = known_path(path_of(flux))) return known->line;
  note_unknown(path_of(flux));
  return line_by_what_crosses(house_.exchanges[at(flux.exchange)]);
}

/// The line of water that changes its state.
HeatLine HeatLedger::line_of_evaporation(const FluxInfo& flux) {
  const KnownPath* known = known_path(path_of(flux));
  if (known == nullptr) note_unknown(path_of(flux));
  if (path_of(flux) == "wet pad") return HeatLine::mist;
  const bool binds = known != nullptr && (known->line == HeatLine::mist || known->line == HeatLine::transpiration);
  return binds ? known->line : HeatLine::surfaces;
}

/// The line of a way of unknown kind between the house and the outside.
HeatLine HeatLedger::line_by_what_crosses(const ExchangeInfo& exchange) const {
  HeatLine line = HeatLine::cover;
  for (int j = exchange.first_flux; j < exchange.first_flux + exchange.fluxes; ++j) {
    const FluxInfo& flux = house_.flux[at(j)];
    if (flux.quantity != Quantity::water || inside(flux.from) == inside(flux.to)) continue;
    if (is_vapour_inside(flux.from) || is_vapour_inside(flux.to)) return HeatLine::vents;
    line = HeatLine::water;
  }
  return line;
}

void HeatLedger::place_energy(std::size_t j) {
  const FluxInfo& flux = house_.flux[j];
  if (inside(flux.from) == inside(flux.to)) return;
  const double outward = inside(flux.from) ? 1.0 : -1.0;
  if (path_of(flux) == kSunPath) {
    of_flux_.push_back({j, kSunLine, -outward});
  } else {
    of_flux_.push_back({j, row_of(line_across(flux)), outward});
  }
}

void HeatLedger::place_water(std::size_t j) {
  const FluxInfo& flux = house_.flux[j];
  const bool evaporates = is_vapour(flux.to) && !is_vapour(flux.from);
  const bool condenses = is_vapour(flux.from) && !is_vapour(flux.to);
  if (evaporates || condenses)
    of_flux_.push_back({j, row_of(line_of_evaporation(flux)), evaporates ? kLatentHeatZero : -kLatentHeatZero});
  // Vapour that leaves takes energy along whose latent part the book does not hold, or has just been given.
  if (inside(flux.from) && !inside(flux.to) && is_vapour(flux.to))
    of_flux_.push_back({j, row_of(line_across(flux)), -kLatentHeatZero});
  if (!inside(flux.from) && inside(flux.to) && is_vapour(flux.from))
    of_flux_.push_back({j, row_of(line_across(flux)), kLatentHeatZero});
}

void HeatLedger::place_stores() {
  std::vector<std::size_t> line(at(house_.states), row_of(HeatLine::kept));
  for (const FluxInfo& flux : house_.flux) {
    const KnownPath* known = known_path(house_.exchanges[at(flux.exchange)].path);
    if (known == nullptr || !known->stores) continue;
    for (const int end : {flux.from, flux.to})
      if (inside(end)) line[at(end)] = row_of(known->line);
  }
  for (const NodeInfo& node : house_.nodes) {
    const auto energy = state_of(node, Quantity::energy), water = state_of(node, Quantity::water);
    if (energy) of_state_.push_back({at(*energy), line[at(*energy)], 1.0});
    if (water && is_vapour(*water))
      of_state_.push_back({at(*water), energy ? line[at(*energy)] : row_of(HeatLine::kept), -kLatentHeatZero});
  }
}

HeatSum HeatLedger::book(std::span<const double> potentials, std::span<const double> carried) const {
  std::vector<double> amounts(at(house_.states));
  for (const auto& batch : house_.store_batches) batch->amounts(potentials.data(), amounts.data());
  std::array<double, kHeatLines + 1> sums{};
  for (const Term& term : of_flux_) sums[term.line] += term.factor * carried[term.index];
  for (const Term& term : of_state_) sums[term.line] += term.factor * amounts[term.index];
  HeatSum out;
  std::copy_n(sums.begin(), kHeatLines, out.line_j.begin());
  out.sun_j = sums[kSunLine];
  return out;
}

}  // namespace noonhouse
