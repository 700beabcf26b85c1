// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "sim/contract/forcing.hpp"
#include "sim/graph/house_graph.hpp"
#include "tests/support/toy_laws.hpp"

/// A small house of the invented laws.
namespace noonhouse::toy {

/// Channels by time: `value(channel, t in seconds)` sampled at breaks `spacing` apart, straight in between.
/// A channel for which `owns` is false belongs to agents.
class LineForcing final : public Forcing {
 public:
  using Signal = std::function<double(double)>;
  LineForcing(Tick spacing, std::vector<std::pair<ChannelId, Signal>> signals)
      : spacing_(spacing), signals_(std::move(signals)) {}
  Tick next_break(Tick t) const override { return Tick{(t.ms / spacing_.ms + 1) * spacing_.ms}; }
  void fill(Tick from, Tick to, std::span<const double>, std::span<double> at_from,
            std::span<double> at_to) const override {
    const Tick begin{from.ms / spacing_.ms * spacing_.ms}, end = begin + spacing_;
    for (const auto& [channel, signal] : signals_) {
      const double a = signal(seconds(begin)), b = signal(seconds(end));
      const auto line = [&](Tick t) { return a + (b - a) * (seconds(t - begin) / seconds(spacing_)); };
      at_from[static_cast<std::size_t>(channel.index)] = line(from);
      at_to[static_cast<std::size_t>(channel.index)] = line(to);
    }
  }

 private:
  Tick spacing_;
  std::vector<std::pair<ChannelId, Signal>> signals_;
};

/// The ids of the toy house, for tests to read and drive it by.
struct Ids {
  NodeId air, floor, deep, cover, film, tank, battery, sensor;
  ChannelId outdoor_k, outdoor_w, sun_w, vent_kg_s, heater_w, rain_kg_s;
  AccountId outdoor_heat, outdoor_water, sky, sun, mains, instrument;
  ExchangeId can;  ///< a watering can from the tank to the film (water, its heat is not counted)
};

inline void add_nodes(HouseGraph& graph, Ids& id) {
  id.air = graph.node("air", Air{40.0}, {295.0, 0.010}, {0.01, 1e-5});
  id.floor = graph.node("floor", ThermalMass{2e6}, {294.0}, {0.01});
  id.deep = graph.node("deep soil", ThermalMass{2e7}, {291.0}, {0.01});
  id.cover = graph.node("cover", ThermalMass{2e4}, {292.0}, {0.01});
  id.film = graph.node("film", WaterBucket{}, {1.0}, {1e-3});
  id.tank = graph.node("tank", WaterBucket{}, {500.0}, {0.01});
  id.battery = graph.node("battery", ChargeStore{}, {1e6}, {100.0});
  id.sensor = graph.node("sensor", Reading{}, {295.0}, {0.01});
  id.outdoor_heat = graph.account("outdoor air", Quantity::energy);
  id.outdoor_water = graph.account("outdoor vapour", Quantity::water);
  id.sky = graph.account("sky", Quantity::energy);
  id.sun = graph.account("sun", Quantity::energy);
  id.mains = graph.account("panel", Quantity::charge);
  id.instrument = graph.account("instrument", Quantity::reading);
  id.outdoor_k = graph.channel("outdoor temperature", "K", 288.0);
  id.outdoor_w = graph.channel("outdoor humidity", "kg/kg", 0.006);
  id.sun_w = graph.channel("sun", "W", 0.0);
  id.vent_kg_s = graph.channel("vent", "kg/s", 0.05);
  id.heater_w = graph.channel("heater", "W", 0.0);
  id.rain_kg_s = graph.channel("rain", "kg/s", 0.0);
}

inline void add_exchanges(HouseGraph& graph, Ids& id) {
  using enum Quantity;
  graph.exchange("air to floor", "convection", Conduction{120.0}, {id.air, id.floor}, {{{id.air, id.floor}}});
  graph.exchange("air to cover", "convection", Conduction{150.0}, {id.air, id.cover}, {{{id.air, id.cover}}});
  graph.exchange("floor to soil", "conduction", Conduction{40.0}, {id.floor, id.deep}, {{{id.floor, id.deep}}});
  graph.exchange("cover to outdoors", "convection", Conduction{300.0}, {id.cover, id.outdoor_k},
                 {{{id.cover, id.outdoor_heat}}});
  graph.exchange("cover to sky", "longwave", Radiation{2e-6}, {id.cover, id.outdoor_k}, {{{id.cover, id.sky}}});
  graph.exchange("floor to cover", "longwave", Radiation{8e-7}, {id.floor, id.cover}, {{{id.floor, id.cover}}});
  graph.exchange("vent", "ventilation", Exchange{},
                 {id.vent_kg_s, id.air, Input(id.air, 1), id.outdoor_k, id.outdoor_w},
                 {{{id.air, id.outdoor_heat}, {End(id.air, 1), id.outdoor_water}}});
  graph.exchange("film dries", "evaporation", Evaporation{}, {id.film, id.floor, Input(id.air, 1)},
                 {{{id.film, End(id.air, 1)}, {id.floor, id.air}}});
  graph.exchange("sun on floor", "sun", Supply<energy>{0.7}, {id.sun_w}, {{{id.sun, id.floor}}});
  graph.exchange("heater", "device", Supply<energy>{1.0}, {id.heater_w}, {{{id.sun, id.air}}});
  graph.exchange("rain to tank", "rain", Supply<water>{1.0}, {id.rain_kg_s}, {{{id.outdoor_water, id.tank}}});
  id.can = graph.exchange("watering can", "hand", Decay<water>{0.0}, {id.tank}, {{{id.tank, id.film}}});
  graph.exchange("panel", "power", Supply<charge>{0.1}, {id.sun_w}, {{{id.mains, id.battery}}});
  graph.exchange("battery leak", "power", Decay<charge>{1e-5}, {id.battery}, {{{id.battery, id.mains}}});
  graph.exchange("sensor lag", "reading", Lag{30.0}, {id.air, id.sensor}, {{{id.instrument, id.sensor}}});
}

inline House build(Ids& id) {
  HouseGraph graph;
  add_nodes(graph, id);
  add_exchanges(graph, id);
  return graph.compile();
}

/// Weather of a sunny spell with a daily wave; breaks every quarter of an hour.
inline std::unique_ptr<Forcing> weather(const Ids& id) {
  constexpr double kDailyRad = 2.0 * 3.14159265358979323846 / 86400.0;
  const auto wave = [](double t) { return -std::cos(kDailyRad * t); };
  return std::make_unique<LineForcing>(
      15_min, std::vector<std::pair<ChannelId, LineForcing::Signal>>{
                  {id.outdoor_k, [wave](double t) { return 288.0 + 8.0 * wave(t); }},
                  {id.outdoor_w, [wave](double t) { return 0.006 + 0.001 * wave(t); }},
                  {id.sun_w, [wave](double t) { return 8000.0 * std::max(0.0, wave(t)); }},
                  {id.rain_kg_s, [](double t) { return std::fmod(t, 500'000.0) < 3600.0 ? 0.02 : 0.0; }}});
}

}  // namespace noonhouse::toy
