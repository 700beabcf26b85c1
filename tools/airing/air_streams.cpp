// SPDX-License-Identifier: Apache-2.0
#include "tools/airing/air_streams.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "models/properties/psychrometrics.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr int kNoZone = -2;
constexpr double kAlike = 1e-9;  ///< relative difference below which two states count as one

/// How much two values differ for their size.
double contrast(double a, double b) {
  const double size = std::max(std::abs(a), std::abs(b));
  return size > 0.0 ? std::abs(a - b) / size : 0.0;
}

std::optional<AirWayKind> kind_of(const std::string& path) {
  if (path == "ventilation") return AirWayKind::opening;
  if (path == "leakage") return AirWayKind::crack;
  if (path == "mixing") return AirWayKind::inside;
  return std::nullopt;
}

}  // namespace

bool told_apart(const AirState& a, const AirState& b) {
  return contrast(a.humidity_ratio, b.humidity_ratio) > kAlike ||
         contrast(moist_air_enthalpy(a.temperature_k, a.humidity_ratio),
                  moist_air_enthalpy(b.temperature_k, b.humidity_ratio)) > kAlike;
}

TwoWayAir two_ways(const CarriedAir& net, const AirState& a, const AirState& b) {
  const double h_a = moist_air_enthalpy(a.temperature_k, a.humidity_ratio);
  const double h_b = moist_air_enthalpy(b.temperature_k, b.humidity_ratio);
  const double by_heat = contrast(h_a, h_b), by_vapour = contrast(a.humidity_ratio, b.humidity_ratio);
  double back = 0.0;
  if (by_heat >= by_vapour && by_heat > kAlike) back = (net.enthalpy_w - net.air_kg_s * h_a) / (h_a - h_b);
  if (by_vapour > by_heat && by_vapour > kAlike)
    back = (net.vapour_kg_s - net.air_kg_s * a.humidity_ratio) / (a.humidity_ratio - b.humidity_ratio);
  back = std::max({back, 0.0, -net.air_kg_s});
  return {net.air_kg_s + back, back};
}

AirStreams::AirStreams(const Assembly& assembly)
    : assembly_(assembly),
      junctions_(assembly.plan.house),
      amounts_(assembly.plan.house.initial_amounts),
      flux_(at(assembly.plan.house.fluxes), 0.0) {
  find_zones();
  find_ways();
  streams_.resize(ways_.size());
}

void AirStreams::find_zones() {
  const House& house = assembly_.plan.house;
  zone_of_amount_.assign(at(house.states), kNoZone);
  const auto add = [&](NodeId node, const AirZone& zone) {
    zone_of_amount_[at(house.position(End(node, 1)))] = static_cast<int>(zones_.size());
    state_.push_back(house.position(Input(node)));
    zones_.push_back(zone);
  };
  for (std::size_t b = 0; b < assembly_.bays.size(); ++b) {
    const BayParts& bay = assembly_.bays[b];
    for (std::size_t i = 0; i < bay.air.size(); ++i) {
      const double dry_air = assembly_.shape.bays[b].layers[i].volume_m3 * assembly_.air_density_kg_m3;
      add(bay.air[i], {static_cast<int>(b), i, false, (1.0 - kColumnShare) * dry_air});
      add(bay.column[i], {static_cast<int>(b), i, true, kColumnShare * dry_air});
    }
  }
}

/// The zone whose vapour an amount counts; outdoors for what lies beyond the boundary.
int AirStreams::zone_of(int amount) const {
  const House& house = assembly_.plan.house;
  return amount >= house.states ? kOutdoorsZone : zone_of_amount_[at(amount)];
}

void AirStreams::find_ways() {
  const House& house = assembly_.plan.house;
  std::set<std::size_t> batches;
  for (const ExchangeInfo& exchange : house.exchanges) {
    const auto kind = kind_of(exchange.path);
    if (!kind) continue;
    Source source;
    for (int j = exchange.first_flux; j < exchange.first_flux + exchange.fluxes; ++j) {
      const Quantity quantity = house.flux[at(j)].quantity;
      if (quantity == Quantity::air) source.air = j;
      if (quantity == Quantity::water) source.vapour = j;
      if (quantity == Quantity::energy) source.energy = j;
    }
    if (source.vapour < 0 || source.energy < 0) continue;
    const FluxInfo& vapour = house.flux[at(source.vapour)];
    const int a = zone_of(vapour.from), b = zone_of(vapour.to);
    if (a < 0 || b == kNoZone) continue;
    ways_.push_back({way_name(exchange.name, *kind), *kind, a, b});
    sources_.push_back(source);
    const auto& firsts = house.batch_first_flux;
    batches.insert(
        at(static_cast<int>(std::upper_bound(firsts.begin(), firsts.end(), source.vapour) - firsts.begin()) - 1));
  }
  batches_.assign(batches.begin(), batches.end());
}

/// An exchange's name without its layer; cracks of all facets of a bay's side have one name.
std::string AirStreams::way_name(const std::string& exchange, AirWayKind kind) const {
  static const std::string kCracks = "cracks of the ", kLayer = " at layer ";
  if (kind == AirWayKind::inside) return exchange;
  std::string whole = exchange.substr(0, exchange.rfind(kLayer));
  if (kind != AirWayKind::crack) return whole;
  const auto& facets = assembly_.shape.facets;
  const auto facet =
      std::find_if(facets.begin(), facets.end(), [&](const Facet& f) { return whole == kCracks + f.name; });
  if (facet == facets.end()) return whole;
  const auto first = std::find_if(facets.begin(), facets.end(),
                                  [&](const Facet& f) { return f.bay == facet->bay && f.side == facet->side; });
  static const std::string kFirstPart = " 1 of the ";  // an arch's side has several facets, numbered
  std::string side = first->name;
  if (const auto part = side.find(kFirstPart); part != std::string::npos) side.erase(part, 2);
  return kCracks + side;
}

void AirStreams::settle(std::span<const double> potentials) {
  const House& house = assembly_.plan.house;
  potentials_.assign(potentials.begin(), potentials.end());
  for (const auto& batch : house.store_batches) batch->amounts(potentials_.data(), amounts_.data());
  static_cast<void>(junctions_.settle(amounts_.data(), potentials_.data() + house.states));
  for (const int state : house.junctions.states) potentials_[at(state)] = amounts_[at(state)];
}

AirState AirStreams::state_of(int zone) const {
  const House& house = assembly_.plan.house;
  if (zone == kOutdoorsZone)
    return {potentials_[at(house.position(Input(assembly_.site.outdoor)))],
            potentials_[at(house.position(Input(assembly_.site.humidity)))]};
  const std::size_t first = at(state_[at(zone)]);
  return {potentials_[first], potentials_[first + 1]};
}

/// Net flows into columns from their layers, which no law states: the column keeps its air.
void AirStreams::fill_columns() {
  std::vector<double> gains(zones_.size(), 0.0);
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    gains[at(ways_[i].a)] -= net_[i];
    if (ways_[i].b != kOutdoorsZone) gains[at(ways_[i].b)] += net_[i];
  }
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    if (sources_[i].air >= 0 || ways_[i].b == kOutdoorsZone) continue;
    const AirZone &a = zones_[at(ways_[i].a)], &b = zones_[at(ways_[i].b)];
    if (b.column && !a.column) net_[i] = -gains[at(ways_[i].b)];
  }
}

const std::vector<TwoWayAir>& AirStreams::flowing(std::span<const double> potentials) {
  const House& house = assembly_.plan.house;
  settle(potentials);
  for (const std::size_t b : batches_)
    house.exchange_batches[b]->fluxes(potentials_.data(), flux_.data() + house.batch_first_flux[b]);
  net_.assign(ways_.size(), 0.0);
  for (std::size_t i = 0; i < ways_.size(); ++i)
    if (sources_[i].air >= 0) net_[i] = flux_[at(sources_[i].air)];
  fill_columns();
  told_apart_ = true;
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const AirState a = state_of(ways_[i].a), b = state_of(ways_[i].b);
    streams_[i] = two_ways({net_[i], flux_[at(sources_[i].vapour)], flux_[at(sources_[i].energy)]}, a, b);
    told_apart_ = told_apart_ && noonhouse::told_apart(a, b);
  }
  return streams_;
}

}  // namespace noonhouse
