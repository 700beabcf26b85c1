// SPDX-License-Identifier: Apache-2.0
#include "tests/support/synthetic_house.hpp"

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "sim/graph/house_graph.hpp"
#include "tests/support/synthetic_laws.hpp"
#include "tests/support/synthetic_weather.hpp"

namespace noonhouse::synthetic {
namespace {

constexpr std::size_t kBays = 2, kStrata = 4, kFacets = 4, kSoilLayers = 5, kPots = 2;
constexpr double kStartK = 294.0, kStartHumidity = 0.009;

struct Bay {
  std::string name;
  std::array<NodeId, kStrata> air;  // from below
  std::array<NodeId, kFacets> cover;
  std::array<NodeId, kSoilLayers + 1> ground;  // the floor, then the soil from above
  std::array<NodeId, kPots> pot, tissue, water;
  NodeId star, cooler, thermometer;
  ChannelId cooling;
};

/// Switches one cooler on and off between two limits of its thermometer.
class Thermostat final : public Agent {
 public:
  Thermostat(std::string name, const Bay& bay, const Options& options)
      : name_(std::move(name)), reading_(bay.thermometer), cooling_(bay.cooling), options_(options) {}
  std::string_view name() const override { return name_; }
  void react(const Situation&, const Trigger& trigger, Actions& actions) override {
    if (trigger.kind == Trigger::Kind::crossing) {
      on_ = !on_;
      const EventId switched = actions.log(EventKind::action, on_ ? "on" : "off");
      actions.set(cooling_, on_ ? 1.0 : 0.0, switched);
    }
    actions.arm(0, on_ ? Watch{reading_, options_.off_below_k, Watch::Direction::falling}
                       : Watch{reading_, options_.on_above_k, Watch::Direction::rising});
  }

 private:
  std::string name_;
  NodeId reading_;
  ChannelId cooling_;
  Options options_;
  bool on_ = false;
};

class ThermostatPlan final : public AgentPlan {
 public:
  ThermostatPlan(const Bay& bay, const Options& options) : bay_(bay), options_(options) {}
  std::unique_ptr<Agent> start() const override {
    return std::make_unique<Thermostat>("cooler in the " + bay_.name + " bay", bay_, options_);
  }
  bool decides() const override { return true; }

 private:
  Bay bay_;
  Options options_;
};

class Builder {
 public:
  explicit Builder(const Options& options) : options_(options) {
    weather_.outdoor_k = graph_.channel("outdoor temperature", "K", 0.0);
    weather_.outdoor_humidity = graph_.channel("outdoor humidity", "kg/kg", 0.0);
    weather_.sky_k = graph_.channel("sky temperature", "K", 0.0);
    weather_.sun_w_m2 = graph_.channel("sun", "W/m2", 0.0);
    weather_.wind_m_s = graph_.channel("wind", "m/s", 0.0);
    deep_k_ = graph_.channel("deep ground", "K", 288.0);
    outdoors_ = graph_.account("outdoors", Quantity::energy);
    outdoor_water_ = graph_.account("outdoor air's water", Quantity::water);
    instruments_ = graph_.account("instruments", Quantity::reading);
    grid_ = graph_.account("panel and loads", Quantity::charge);
  }

  RunPlan build() {
    for (std::size_t b = 0; b < kBays; ++b) bays_[b] = add_bay(b == 0 ? "south" : "north", b == 0 ? 1.0 : 0.7);
    for (std::size_t k = 0; k < kStrata; ++k)
      mix("air between the bays at level " + std::to_string(k), bays_[0].air[k], bays_[1].air[k], {0.05, 0.0});
    for (std::size_t k = 0; k < kSoilLayers; ++k)
      conduct("soil between the bays at level " + std::to_string(k), bays_[0].ground[k + 1], bays_[1].ground[k + 1], 2);
    add_store_room();
    RunPlan plan;
    plan.house = graph_.compile();
    plan.forcing = std::make_unique<Weather>(weather_, options_.days);
    if (options_.thermostats)
      for (const Bay& bay : bays_) plan.agents.push_back(std::make_unique<ThermostatPlan>(bay, options_));
    plan.length = kDay * options_.days;
    return plan;
  }

 private:
  NodeId mass(const std::string& name, double heat_capacity_j_k, double start_k = kStartK) {
    return graph_.node(name, ThermalMass{heat_capacity_j_k}, {start_k}, {options_.temperature_tolerance_k});
  }
  void conduct(const std::string& name, const Input& a, const Input& b, double conductance_w_k) {
    graph_.exchange(name, "conduction", Conduction{conductance_w_k}, {a, b}, {Ends{end_of(a), end_of(b)}});
  }
  void radiate(const std::string& name, const Input& a, const Input& b, double area_m2) {
    graph_.exchange(name, "radiation", Radiation{area_m2}, {a, b}, {Ends{end_of(a), end_of(b)}});
  }
  void convect(const std::string& name, NodeId a, NodeId b, double factor) {
    graph_.exchange(name, "convection", FreeConvection{factor}, {a, b}, {Ends{a, b}});
  }
  void shine(const std::string& name, NodeId on, double area_m2) {
    graph_.exchange(name, "sun", SolarGain{area_m2}, {weather_.sun_w_m2}, {Ends{outdoors_, on}});
  }
  void mix(const std::string& name, NodeId a, NodeId b, const Mixing& law) {
    graph_.exchange(name, "mixing", law, {a, {a, 1}, b, {b, 1}}, {Ends{a, b}, Ends{{a, 1}, {b, 1}}});
  }
  void evaporate(const std::string& name, NodeId body, NodeId water, NodeId air, const Evaporation& law) {
    graph_.exchange(name, "evaporation", law, {body, water, air, {air, 1}, weather_.sun_w_m2},
                    {Ends{body, air}, Ends{water, {air, 1}}});
  }
  /// A temperature given from outside stands for a place beyond the boundary.
  End end_of(const Input& input) const { return input.channel.valid() ? End(outdoors_) : End(input.node, input.which); }

  Bay add_bay(const std::string& name, double sun_share) {
    Bay bay;
    bay.name = name;
    bay.cooling = graph_.channel("cooler on in the " + name + " bay", "1", 0.0);
    bay.star = mass("star in the " + name + " bay", 400.0);
    add_air(bay);
    add_cover(bay, sun_share);
    add_ground(bay, sun_share);
    for (std::size_t i = 0; i < kPots; ++i) add_pot(bay, i, sun_share);
    add_cooler(bay);
    return bay;
  }

  void add_air(Bay& bay) {
    for (std::size_t k = 0; k < kStrata; ++k) {
      const std::string place = bay.name + " air " + std::to_string(k);
      bay.air[k] = graph_.node(place, MoistAir{13.0}, {kStartK, kStartHumidity},
                               {options_.temperature_tolerance_k, options_.humidity_tolerance});
      const NodeId air = bay.air[k];
      graph_.exchange("leaks of " + place, "ventilation", Ventilation{0.004, k == 3 ? 0.02 : 0.004},
                      {air, {air, 1}, weather_.outdoor_k, weather_.outdoor_humidity, weather_.wind_m_s},
                      {Ends{air, outdoors_}, Ends{{air, 1}, outdoor_water_}});
      if (k > 0) mix("below " + place, bay.air[k - 1], air, {0.03, 0.4});
    }
  }

  void add_cover(Bay& bay, double sun_share) {
    for (std::size_t f = 0; f < kFacets; ++f) {
      const std::string place = bay.name + " cover " + std::to_string(f);
      const NodeId cover = bay.cover[f] = mass(place, 6000.0 * 9.0);
      for (std::size_t k : {f / 2 + 1, f / 2 + 2})
        if (k < kStrata) convect(place + " and air " + std::to_string(k), cover, bay.air[k], 12.0);
      graph_.exchange("wind on " + place, "convection", WindConvection{25.0, 30.0},
                      {cover, weather_.outdoor_k, weather_.wind_m_s}, {Ends{cover, outdoors_}});
      radiate(place + " and sky", cover, weather_.sky_k, 7.0);
      radiate(place + " and star", cover, bay.star, 5.0);
      shine("sun on " + place, cover, 0.6 * sun_share);
    }
  }

  void add_ground(Bay& bay, double sun_share) {
    bay.ground[0] = mass(bay.name + " floor", 1.2e6);
    convect(bay.name + " floor and air", bay.ground[0], bay.air[0], 45.0);
    radiate(bay.name + " floor and star", bay.ground[0], bay.star, 14.0);
    shine("sun on the " + bay.name + " floor", bay.ground[0], 6.0 * sun_share);
    double depth = 1.0;
    for (std::size_t k = 1; k <= kSoilLayers; ++k) {
      const std::string place = bay.name + " soil " + std::to_string(k);
      bay.ground[k] = mass(place, 1.5e6 * depth, 293.0 - static_cast<double>(k));
      conduct("above " + place, bay.ground[k - 1], bay.ground[k], 250.0 / depth);
      conduct("rim of " + place, bay.ground[k], weather_.outdoor_k, 3.0);
      depth *= 1.7;
    }
    conduct("under the " + bay.name + " soil", bay.ground[kSoilLayers], deep_k_, 15.0);
  }

  void add_pot(Bay& bay, std::size_t i, double sun_share) {
    const std::string place = bay.name + " pot " + std::to_string(i);
    const NodeId pot = bay.pot[i] = mass(place, 1.5e5), tissue = bay.tissue[i] = mass(place + " plant", 1.2e4);
    const NodeId water = bay.water[i] = graph_.node(place + " water", WaterBucket{}, {60.0}, {0.005});
    const NodeId air = bay.air[i + 1];
    convect(place + " and air", pot, air, 6.0);
    convect(place + " plant and air", tissue, air, 15.0);
    radiate(place + " and star", pot, bay.star, 1.0);
    radiate(place + " plant and star", tissue, bay.star, 3.0);
    conduct(place + " and floor", pot, bay.ground[0], 4.0);
    conduct(place + " and stem", pot, tissue, 1.0);
    shine("sun on " + place, pot, 0.4 * sun_share);
    shine("sun on " + place + " plant", tissue, 1.6 * sun_share);
    evaporate("soil of " + place, pot, water, air, {2e-3, 1.0, 4.0});
    evaporate("leaves of " + place, tissue, water, air, {2e-2, 0.1, 4.0});
  }

  void add_cooler(Bay& bay) {
    bay.cooler = mass(bay.name + " cooler", 2.0e5);
    for (std::size_t k : {std::size_t{0}, std::size_t{1}})
      conduct(bay.name + " cooler and air " + std::to_string(k), bay.cooler, bay.air[k], 120.0);
    graph_.exchange(bay.name + " cooling", "cooling", HeatPumped{250.0}, {bay.cooler, bay.cooling},
                    {Ends{bay.cooler, outdoors_}});
    bay.thermometer = graph_.node(bay.name + " thermometer", Reading{}, {kStartK}, {options_.temperature_tolerance_k});
    graph_.exchange(bay.name + " thermometer's lag", "reading", Lag{90.0}, {bay.air[1], bay.thermometer},
                    {Ends{instruments_, bay.thermometer}});
  }

  void add_store_room() {
    const NodeId tank = mass("tank", 300.0 * 4186.0);
    conduct("tank and air", tank, bays_[1].air[0], 8.0);
    conduct("tank and floor", tank, bays_[1].ground[0], 10.0);
    const NodeId battery = graph_.node("battery", ChargeStore{}, {2.0e6}, {1000.0});
    graph_.exchange("panel", "charge", ChargeFlow{0.1}, {weather_.sun_w_m2}, {Ends{grid_, battery}});
    for (const Bay& bay : bays_)
      graph_.exchange(bay.name + " cooler's power", "charge", ChargeFlow{50.0}, {bay.cooling}, {Ends{battery, grid_}});
  }

  Options options_;
  HouseGraph graph_;
  WeatherChannels weather_;
  ChannelId deep_k_;
  AccountId outdoors_, outdoor_water_, instruments_, grid_;
  std::array<Bay, kBays> bays_;
};

}  // namespace

RunPlan make_plan(const Options& options) { return Builder(options).build(); }

}  // namespace noonhouse::synthetic
