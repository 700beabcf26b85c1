// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "models/air/air_network.hpp"
#include "models/air/moist_air.hpp"
#include "models/air/updraught.hpp"
#include "models/envelope/heat_links.hpp"
#include "sim/graph/house_graph.hpp"
#include "sim/run/run.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {

/// A box of air cut into layers, with openings, a column of rising air and heat put where a test wants it.
/// Nothing passes its walls; outdoors stands still at one state unless a channel is changed.
struct AiredBox {
  static constexpr double kPressure = 101325.0;
  double height_m, plan_m2, density;
  int layers;
  HouseGraph graph;
  std::vector<NodeId> air, column, pressure;
  ChannelId out_k, out_w, wind_pa, wind, open, heat_w;
  AccountId out_air, out_vapour, out_heat, source;
  std::vector<ExchangeId> ways;

  AiredBox(int cuts, double height, double plan, double inside_k, double outside_k)
      : height_m(height), plan_m2(plan), density(dry_air_density(outside_k, 0.0, kPressure)), layers(cuts) {
    out_k = graph.channel("outdoor temperature", "K", outside_k);
    out_w = graph.channel("outdoor humidity", "1", 0.0);
    wind_pa = graph.channel("wind pressure", "Pa", 0.0);
    wind = graph.channel("wind", "m s-1", 0.0);
    open = graph.channel("open", "1", 1.0);
    heat_w = graph.channel("heat", "W", 0.0);
    out_air = graph.account("outdoor dry air", Quantity::air);
    out_vapour = graph.account("outdoor vapour", Quantity::water);
    out_heat = graph.account("outdoor air", Quantity::energy);
    source = graph.account("source", Quantity::energy);
    for (int i = 0; i < layers; ++i) {
      const double dry = thick() * plan_m2 * density;
      const std::string n = " " + std::to_string(i + 1);
      air.push_back(graph.node("air" + n, MoistAir{0.95 * dry}, {inside_k, 0.0}, {0.01, 1e-5}));
      column.push_back(graph.node("column" + n, MoistAir{0.05 * dry}, {inside_k, 0.0}, {0.01, 1e-5}));
      pressure.push_back(graph.node("pressure" + n, Junction{}, {0.0}, {1e-3}));
    }
    for (int i = 0; i + 1 < layers; ++i) lift(static_cast<std::size_t>(i));
  }
  double thick() const { return height_m / layers; }
  double middle_m(std::size_t i) const { return (static_cast<double>(i) + 0.5) * thick(); }
  std::size_t layer_at(double z) const {
    return static_cast<std::size_t>(std::min(layers - 1, static_cast<int>(z / thick())));
  }

  void lift(std::size_t i) {
    LayerLift law{thick(), 0.5 * thick(), plan_m2, density, kPressure};
    graph.exchange("lift " + std::to_string(i), "mixing", law,
                   {pressure[i], air[i], Input(air[i], 1), pressure[i + 1], air[i + 1], Input(air[i + 1], 1)},
                   {{{pressure[i], pressure[i + 1]}, {End(air[i], 1), End(air[i + 1], 1)}, {air[i], air[i + 1]}}});
  }

  OpeningPlace place(double z) const { return {z, middle_m(layer_at(z + 1e-9)), density, kPressure}; }

  template <class L, std::size_t N>
  void outdoors(const std::string& name, const L& law, std::size_t i, const std::array<Input, N>& inputs) {
    ways.push_back(graph.exchange(name, "ventilation", law, inputs,
                                  {{{pressure[i], out_air}, {End(air[i], 1), out_vapour}, {air[i], out_heat}}}));
  }

  /// An upright opening from z upwards, cut at the layers; without the wind's unrest.
  void opening(const std::string& name, double z, double width_m, double rise_m, double discharge = 0.6,
               double unrest = 0.0) {
    for (std::size_t i = 0; i < air.size(); ++i) {
      const double low = std::max(z, static_cast<double>(i) * thick()),
                   high = std::min(z + rise_m, static_cast<double>(i + 1) * thick());
      if (high - low <= 1e-12) continue;
      outdoors(
          name + std::to_string(i),
          OpeningPiece{{low, middle_m(i), density, kPressure}, TallOpening{width_m, high - low, discharge}, unrest}, i,
          std::array<Input, 8>{pressure[i], air[i], Input(air[i], 1), out_k, out_w, wind_pa, wind, open});
    }
  }

  /// A column of a point source on the floor (area grows with height), or of a given area.
  void column_of(double entrainment, double area_m2 = 0.0) {
    const auto level = [&](int i) {
      if (i < 0 || i + 1 >= layers) return ColumnLevel{};
      const double z = (i + 1) * thick(), b = 1.2 * entrainment * z;
      return ColumnLevel{area_m2 > 0.0 ? area_m2 : kPi * b * b, z};
    };
    for (std::size_t i = 0; i < air.size(); ++i) {
      const int k = static_cast<int>(i);
      const std::size_t low = i > 0 ? i - 1 : 0;
      graph.exchange("intake " + std::to_string(i), "mixing", ColumnIntake{level(k), level(k - 1), kPressure, 1e-7},
                     {column[i], Input(column[i], 1), air[i], Input(air[i], 1), column[low], Input(column[low], 1),
                      air[low], Input(air[low], 1)},
                     {{{End(air[i], 1), End(column[i], 1)}, {air[i], column[i]}}});
      if (level(k).area_m2 > 0.0)
        graph.exchange(
            "rise " + std::to_string(i), "mixing", ColumnRise{level(k), kPressure},
            {column[i], Input(column[i], 1), air[i], Input(air[i], 1)},
            {{{pressure[i], pressure[i + 1]}, {End(column[i], 1), End(column[i + 1], 1)}, {column[i], column[i + 1]}}});
    }
  }
  void heat(NodeId node) { graph.exchange("heat", "heat", GivenPower{}, {heat_w}, {{{source, node}}}); }

  struct Rest {
    RunPlan plan;
    RunResult result;
    double potential(Input input) const {
      std::vector<double> p(static_cast<std::size_t>(plan.house.states + plan.house.channels));
      for (const auto& batch : plan.house.store_batches) batch->potentials(result.state.amounts.data(), p.data());
      return p[static_cast<std::size_t>(plan.house.position(input))];
    }
    /// All fluxes at the end [kg/s, W].
    std::vector<double> fluxes() const {
      Evaluation evaluation(plan.house);
      std::vector<double> rates(static_cast<std::size_t>(plan.house.states));
      evaluation.rates(result.state.amounts.data(), result.channels.data(), rates.data());
      return {evaluation.fluxes().begin(), evaluation.fluxes().end()};
    }
    /// Dry air outwards through the ways whose names begin so, out and in apart [kg/s].
    TwoWayFlow<double> through(const std::string& begin) const {
      TwoWayFlow<double> sum;
      const auto q = fluxes();
      for (const ExchangeInfo& e : plan.house.exchanges)
        if (e.name.rfind(begin, 0) == 0) {
          const double m = q[static_cast<std::size_t>(e.first_flux)];
          (m > 0.0 ? sum.a_to_b_kg_s : sum.b_to_a_kg_s) += std::abs(m);
        }
      return sum;
    }
  };
  /// Runs from the start with some channels at other values than theirs.
  Rest run(Tick length, const std::vector<std::pair<ChannelId, double>>& set = {}) {
    Rest out;
    out.plan.house = graph.compile();
    for (const auto& [channel, value] : set)
      out.plan.house.initial_channels[static_cast<std::size_t>(channel.index)] = value;
    out.plan.forcing = std::make_unique<PolylineForcing>();
    out.plan.length = length;
    Run run(out.plan);
    out.result = run.go();
    return out;
  }
};

}  // namespace noonhouse
