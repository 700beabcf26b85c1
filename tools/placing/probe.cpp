// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/probe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "models/control/grower.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/water/catchment.hpp"
#include "models/water/drip.hpp"
#include "sim/run/run.hpp"
#include "tools/placing/probe_watch.hpp"
#include "tools/scenario/plant_builder.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

/// Channels of a place's climate.
struct ClimateChannels {
  ChannelId air, vapour, draught, stirring, ground, radiant, light, direct, soft, sunlit, shaded, pots;
  ChannelId sunlit_spray, sunlit_spray_heat, shaded_spray, shaded_spray_heat, pots_spray, pots_spray_heat;
};

/// What a group takes of a square metre's light and spray.
struct Takes {
  double sunlit_of_direct = 0.0, sunlit_of_soft = 0.0, shaded_of_direct = 0.0, shaded_of_soft = 0.0;  ///< [m2]
  double pots_of_light = 0.0;                                                                         ///< [m2]
  double sunlit_of_spray = 0.0, shaded_of_spray = 0.0, pots_of_spray = 0.0;                           ///< [m2]
};

Takes takes_of(const PlantGroupSpec& group, const PlantKindSpec& kind) {
  const LightTaken taken = light_taken(kind);
  const double leaves = leaf_cover_m2(group, kind), sunlit = sides_of(kind).sunlit_area;
  return {taken.sunlit_direct * group.area_m2,
          taken.sunlit_soft * group.area_m2,
          taken.shaded_direct * group.area_m2,
          taken.shaded_soft * group.area_m2,
          group.pot_absorptance * canopy_of(kind).passes * group.area_m2,
          leaves * sunlit,
          leaves * (1.0 - sunlit),
          group.area_m2 - leaves};
}

/// Straight lines between the moments of a place; spray is even between them.
class PlaceForcing final : public Forcing {
 public:
  PlaceForcing(const PlaceClimate& place, const LayerSeries& air, Tick every, const ClimateChannels& channels,
               const Takes& takes)
      : place_(place), air_(air), every_(every), c_(channels), takes_(takes) {}
  Tick next_break(Tick t) const override { return every_ * (t.ms / every_.ms + 1); }
  void fill(Tick from, Tick to, std::span<const double>, std::span<double> at_from,
            std::span<double> at_to) const override {
    const auto k = static_cast<std::size_t>(from.ms / every_.ms);
    const double begin = static_cast<double>(k) * static_cast<double>(every_.ms),
                 length = static_cast<double>(every_.ms);
    write(k, (static_cast<double>(from.ms) - begin) / length, at_from);
    write(k, (static_cast<double>(to.ms) - begin) / length, at_to);
  }

 private:
  void write(std::size_t k, double share, std::span<double> out) const {
    const std::size_t last = place_.moments.size() - 1;
    const PlaceMoment &a = place_.moments[std::min(k, last)], &b = place_.moments[std::min(k + 1, last)];
    const auto put = [&](ChannelId channel, double value) { out[static_cast<std::size_t>(channel.index)] = value; };
    const auto between = [&](double PlaceMoment::*of) { return a.*of + share * (b.*of - a.*of); };
    const LayerMoment &x = air_[std::min(k, last)], &y = air_[std::min(k + 1, last)];
    const auto of_air = [&](double LayerMoment::*of) { return x.*of + share * (y.*of - x.*of); };
    put(c_.air, of_air(&LayerMoment::air_k));
    put(c_.vapour, of_air(&LayerMoment::humidity_ratio));
    put(c_.draught, of_air(&LayerMoment::draught_m_s));
    put(c_.stirring, between(&PlaceMoment::stirring_m_s));
    put(c_.ground, between(&PlaceMoment::ground_k));
    put(c_.radiant, between(&PlaceMoment::radiant_k));
    const double light = between(&PlaceMoment::light_w_m2), direct = between(&PlaceMoment::direct_w_m2);
    const double soft = light - direct;
    put(c_.light, light);
    put(c_.direct, direct);
    put(c_.soft, soft);
    put(c_.sunlit, takes_.sunlit_of_direct * direct + takes_.sunlit_of_soft * soft);
    put(c_.shaded, takes_.shaded_of_direct * direct + takes_.shaded_of_soft * soft);
    put(c_.pots, takes_.pots_of_light * light);
    put(c_.sunlit_spray, takes_.sunlit_of_spray * b.spray_kg_m2_s);
    put(c_.sunlit_spray_heat, takes_.sunlit_of_spray * b.spray_heat_w_m2);
    put(c_.shaded_spray, takes_.shaded_of_spray * b.spray_kg_m2_s);
    put(c_.shaded_spray_heat, takes_.shaded_of_spray * b.spray_heat_w_m2);
    put(c_.pots_spray, takes_.pots_of_spray * b.spray_kg_m2_s);
    put(c_.pots_spray_heat, takes_.pots_of_spray * b.spray_heat_w_m2);
  }

  const PlaceClimate& place_;
  const LayerSeries& air_;
  Tick every_;
  ClimateChannels c_;
  Takes takes_;
};

/// Builds the graph of one group in a given climate.
class ProbeBuilder {
 public:
  ProbeBuilder(const PlantGroupSpec& group, const PlantKindSpec& kind, const PlaceClimate& place,
               const HouseClimates& house)
      : group_(group),
        kind_(kind),
        place_(place),
        house_(house),
        air_(house.air_at(place, canopy_height_m(place.place, kind))) {}

  PlantParts build(double used_to_w_m2, RunPlan& plan, const ProbeWatering& watering) {
    add_channels();
    const AccountId heat = graph_.account("heat of the place", Quantity::energy);
    const AccountId water = graph_.account("water of the place", Quantity::water);
    const AccountId readings = graph_.account("instruments", Quantity::reading);
    PlantSurroundings s{c_.air,
                        c_.vapour,
                        c_.draught,
                        c_.stirring,
                        heat,
                        water,
                        heat,
                        c_.ground,
                        heat,
                        water,
                        place_.place.hangs,
                        c_.light,
                        c_.direct,
                        c_.soft,
                        c_.sunlit,
                        c_.shaded,
                        c_.pots,
                        heat,
                        readings,
                        air_.front().air_k,
                        house_.air_density_kg_m3,
                        house_.pressure_pa,
                        house_.mean_air_k,
                        used_to_w_m2};
    PlantParts plant;
    plant.name = "plants";
    plant.limits = kind_;
    plant.light = c_.light;
    std::vector<NodeId> from_start;
    PlantBuilder(graph_, s, from_start).build(group_, plant);
    radiate(plant, heat);
    spray(plant, water, heat);
    add_watering(plant, water, heat, plan, watering);
    for (auto& agent : plant_agents(plant, c_.air, {})) plan.agents.push_back(std::move(agent));
    plan.agents.push_back(std::make_unique<PlanOf<PotWatch>>(pot_watch_of(plant, group_)));
    plan.house = graph_.compile();
    plan.forcing = std::make_unique<PlaceForcing>(place_, air_, house_.every, c_, takes_of(group_, kind_));
    plan.length = house_.length;
    return plant;
  }

 private:
  void add_channels() {
    const PlaceMoment& start = place_.moments.front();
    const auto channel = [&](const char* name, const char* unit, double value) {
      return graph_.channel(name, unit, value);
    };
    c_ = {channel("air", "K", air_.front().air_k),
          channel("vapour", "1", air_.front().humidity_ratio),
          channel("draught", "m s-1", air_.front().draught_m_s),
          channel("stirring", "m s-1", start.stirring_m_s),
          channel("ground", "K", start.ground_k),
          channel("radiant temperature", "K", start.radiant_k),
          channel("light", "W m-2", 0.0),
          channel("direct sun", "W m-2", 0.0),
          channel("soft light", "W m-2", 0.0),
          channel("sun on the sunlit side", "W", 0.0),
          channel("sun on the shaded side", "W", 0.0),
          channel("sun on the pots", "W", 0.0),
          channel("spray on the sunlit side", "kg s-1", 0.0),
          channel("heat of that spray", "W", 0.0),
          channel("spray on the shaded side", "kg s-1", 0.0),
          channel("heat of the other spray", "W", 0.0),
          channel("spray on the pots", "kg s-1", 0.0),
          channel("heat of the pots' spray", "W", 0.0)};
  }
  void radiate(const PlantParts& plant, AccountId heat) {
    const double leaves = leaf_cover_m2(group_, kind_), sunlit = sides_of(kind_).sunlit_area;
    const auto add = [&](const char* name, NodeId node, double area_m2) {
      if (area_m2 > 0.0)
        graph_.exchange(name, "longwave inside", RadiantExchange{area_m2}, {node, c_.radiant}, {{{node, heat}}});
    };
    add("longwave of the sunlit side", plant.tissue, kTissueEmissivity * sunlit * leaves);
    add("longwave of the shaded side", plant.shaded, kTissueEmissivity * (1.0 - sunlit) * leaves);
    add("longwave of the pots", plant.wall, kPotEmissivity * (group_.area_m2 - leaves));
  }
  void spray(const PlantParts& plant, AccountId water, AccountId heat) {
    const auto add = [&](const char* name, NodeId node, ChannelId rate, ChannelId heat_rate) {
      graph_.exchange(name, "mist that lands", GivenWater{}, {rate, heat_rate},
                      {{{water, End(node, 1)}, {heat, node}}});
    };
    add("spray onto the sunlit side", plant.tissue, c_.sunlit_spray, c_.sunlit_spray_heat);
    add("spray onto the shaded side", plant.shaded, c_.shaded_spray, c_.shaded_spray_heat);
    add("spray onto the pots", plant.pot, c_.pots_spray, c_.pots_spray_heat);
  }
  void add_watering(const PlantParts& plant, AccountId water, AccountId heat, RunPlan& plan,
                    const ProbeWatering& watering) {
    const ExchangeId can = graph_.exchange("watering", "hand watering", HandCarried{}, {c_.air},
                                           {{{water, End(plant.pot, 1)}, {heat, plant.pot}}});
    const ChannelId supply = graph_.channel("water at hand", "kg", 1e12);
    const ChannelId permit = graph_.channel("may be drawn", "1", 1.0);
    for (std::size_t i = 0; i < watering.visits_s.size(); ++i) {
      GrowerVisit::Parameters visit;
      visit.name = "visit " + std::to_string(i + 1);
      visit.at = ticks(watering.visits_s[i]);
      visit.tank_water = supply;
      visit.tank_temperature = c_.air;
      visit.water_permit = permit;
      visit.waters.push_back(
          {plant.name, Input(plant.pot, 1), can, watering.fill_share * group_.pot_water_kg_m2 * group_.area_m2});
      plan.agents.push_back(std::make_unique<PlanOf<GrowerVisit>>(std::move(visit)));
    }
  }

  const PlantGroupSpec& group_;
  const PlantKindSpec& kind_;
  const PlaceClimate& place_;
  const HouseClimates& house_;
  const LayerSeries& air_;
  HouseGraph graph_;
  ClimateChannels c_;
};

constexpr double kNear = 0.75;  ///< share of the mark from which a miss counts as near

/// Points of one hazard, by the band its dose has come to.
double points_of(const HazardFelt& h) {
  const auto within = [](double low, double high, double x) {
    if (!std::isfinite(high)) high = 3.0 * low;
    return std::clamp((x - low) / std::max(high - low, 1e-12), 0.0, 1.0);
  };
  if (h.most >= h.lost) return 1000.0 + 100.0 * std::log10(h.most / h.lost);
  if (h.most >= h.harmed)
    return std::isfinite(h.lost) ? 100.0 * (1.0 + within(h.harmed, h.lost, h.most))
                                 : 100.0 + 50.0 * std::log10(h.most / h.harmed);
  if (h.most >= 1.0) return 10.0 * (1.0 + within(1.0, h.harmed, h.most));
  return h.most >= kNear ? 0.5 : 0.0;
}

}  // namespace

std::string too_low(const PlantKindSpec& kind, const PlaceClimate& place) {
  const double needs = kind.height_m + kPotHeight;
  if (needs <= place.headroom_m) return {};
  const auto metres = [](double v) { return format_quantity(v, Dimension::length, UnitSystem::metric); };
  return fmt::format("has only {} above it for plants of {} with their pots", metres(place.headroom_m), metres(needs));
}

double harm_points(const std::vector<HazardFelt>& hazards) {
  double worst = 0.0, sum = 0.0;
  for (const HazardFelt& hazard : hazards) {
    worst = std::max(worst, points_of(hazard));
    sum += points_of(hazard);
  }
  return worst + 0.01 * (sum - worst);
}

const HazardFelt* worst_hazard(const PlaceFelt& felt) {
  const auto rank = [](const HazardFelt& h) { return std::pair(points_of(h), h.most); };
  const auto worst = std::max_element(felt.hazards.begin(), felt.hazards.end(),
                                      [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return worst == felt.hazards.end() ? nullptr : &*worst;
}

PlaceFelt feel_place(const PlantGroupSpec& group, const PlantKindSpec& kind, const PlaceClimate& place,
                     const HouseClimates& house, double used_to_w_m2, const ProbeWatering& watering) {
  RunPlan plan;
  const PlantParts plant = ProbeBuilder(group, kind, place, house).build(used_to_w_m2, plan, watering);
  ProbeWatch watch(plan.house, plant, group, place, house);
  Run run(plan);
  run.add_observer(watch);
  run.go();
  return watch.finish();
}

}  // namespace noonhouse
