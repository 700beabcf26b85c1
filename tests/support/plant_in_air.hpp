// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "models/air/moist_air.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/plants/plant_kind.hpp"
#include "models/plants/plant_sides.hpp"
#include "models/plants/tissue.hpp"
#include "models/water/wet_mass.hpp"
#include "sim/graph/house_graph.hpp"
#include "sim/integrate/evaluation.hpp"
#include "sim/run/run.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/run_marks.hpp"

namespace noonhouse {

/// What one side of a plant gets of the sun.
struct SideInSun {
  double share = 1.0;       ///< of the plant's area and mass
  double absorbed_w = 0.0;  ///< sunlight it takes up
  double light_w_m2 = 0.0;  ///< light its stomata see
};

/// A square metre of one plant by itself, put together from the laws of plants: one or two sides of tissue, a pot, air
/// that is given or kept in a box, and surroundings that exchange thermal radiation like a black enclosure.
struct PlantInAir {
  static constexpr double kPressure = 101325.0;
  double leaf_m2 = 3.0;  ///< area of one side of its leaves
  double leaf_size_m = 0.06;
  double heat_j_k = 5000.0;
  double held_kg = 0.3, water_on_kg = 0.0;
  double emissivity = 0.95;  ///< zero: exchanges no thermal radiation
  double between_w_k = 0.0;  ///< through the body, between both sides
  std::vector<SideInSun> sides{{}};
  Stomata stomata{.least_m_s = 0.2e-3, .most_m_s = 8e-3, .pot_capacity_kg = 1e4};
  double pot_kg = 1e4, pot_k = 298.15;
  double air_k = 298.15, humidity = 0.4;  ///< share of saturation
  double walls_k = 298.15, tissue_k = 298.15;
  double through_m_s = 0.0, stirring_m_s = 0.0;
  std::optional<double> boxed_air_kg;  ///< dry air of a box shut for heat and vapour; else the air is given
  PolylineForcing::Points air_over_time, walls_over_time;

  double humidity_ratio_of_air() const { return humidity * saturation_humidity_ratio_fast(air_k, kPressure); }
  double density() const { return dry_air_density(air_k, humidity_ratio_of_air(), kPressure); }
  TissueFilm film() const { return tissue_film(leaf_size_m, density(), air_k, kPressure); }

  /// A square metre of ground under a kind of the library, as many leaves as it has; its light is set by the test.
  static PlantInAir of_kind(const PlantKind& kind) {
    PlantInAir out;
    out.leaf_m2 = kind.leaf_area_index.value;
    out.leaf_size_m = kind.leaf_size_m.value;
    out.heat_j_k = 3800.0 * kind.tissue_kg_m2.value;
    out.held_kg = kind.holds_film_kg_m2.value;
    out.stomata = {.least_m_s = kind.least_conductance_m_s.value,
                   .most_m_s = kind.most_conductance_m_s.value,
                   .half_light_w_m2 = kind.half_light_w_m2.value,
                   .half_deficit_pa = kind.half_deficit_pa.value,
                   .best_k = kind.best_stomata_k.value,
                   .spread_k = kind.stomata_spread_k.value,
                   .pot_capacity_kg = 1e4,
                   .pot_share = kind.pot_share_unhindered.value,
                   .rhythm = kind.rhythm};
    const double sunlit =
        kind.body == PlantBody::leaves ? sides_of_leaves(out.leaf_m2).sunlit_area : sides_of_one_body().sunlit_area;
    out.sides = {{sunlit}, {1.0 - sunlit}};
    if (kind.body == PlantBody::one_body) out.between_w_k = between_sides_w_m2_k(kind.thickness_m.value) * out.leaf_m2;
    return out;
  }
  /// Air, surroundings, pot and tissue at one temperature to begin with.
  void all_at(double kelvin) { air_k = walls_k = tissue_k = pot_k = kelvin; }

  struct Result {
    RunPlan plan;
    RunMarks marks{House{}, 1_h};
    RunResult run;
    std::vector<NodeId> tissue;
    NodeId pot, air;
    double start(Input input) const { return potential_of(plan.house.initial_amounts, input); }
    double operator()(Input input) const { return potential_of(run.state.amounts, input); }
    double at(std::size_t mark, NodeId node, int which = 0) const {
      return marks.value(mark, plan.house.position(Input(node, which)));
    }
    /// What the fluxes are at the end [kg/s, W]: of the exchange of this name, in its law's order.
    double flux(const std::string& name, int which) const {
      Evaluation evaluation(plan.house);
      std::vector<double> rates(static_cast<std::size_t>(plan.house.states));
      evaluation.rates(run.state.amounts.data(), run.channels.data(), rates.data());
      return evaluation.fluxes()[index(name, which)];
    }
    /// What a flux carried over the run [kg, J].
    double carried(const std::string& name, int which) const { return run.state.carried[index(name, which)]; }

   private:
    std::size_t index(const std::string& name, int which) const {
      const ExchangeId id = plan.house.find_exchange(name).value();
      return static_cast<std::size_t>(plan.house.exchanges[static_cast<std::size_t>(id.index)].first_flux + which);
    }
    double potential_of(const std::vector<double>& amounts, Input input) const {
      std::vector<double> p(static_cast<std::size_t>(plan.house.states + plan.house.channels));
      for (const auto& batch : plan.house.store_batches) batch->potentials(amounts.data(), p.data());
      return p[static_cast<std::size_t>(plan.house.position(input))];
    }
  };

  /// Exchanges are named "convection", "film", "transpiration", "longwave" and "sun", with the side's number from 0.
  Result run(Tick length, Tick marks_every = 1_h) const {
    Result out;
    Build at(*this, out);
    for (std::size_t i = 0; i < sides.size(); ++i) at.side(i);
    if (between_w_k > 0.0)
      at.graph.exchange("between", "tissue", Conductance{between_w_k}, {out.tissue[0], out.tissue[1]},
                        {{{out.tissue[0], out.tissue[1]}}});
    out.plan.house = at.graph.compile();
    auto forcing = std::make_unique<PolylineForcing>();
    if (!air_over_time.empty()) forcing->add(at.air_channel, air_over_time);
    if (!walls_over_time.empty()) forcing->add(at.walls, walls_over_time);
    out.plan.forcing = std::move(forcing);
    out.plan.length = length;
    MarkedRun marked = run_with_marks(out.plan, marks_every);
    out.marks = std::move(marked.marks);
    out.run = std::move(marked.result);
    return out;
  }

 private:
  struct Build {
    const PlantInAir& plant;
    Result& out;
    HouseGraph graph;
    ChannelId air_channel, walls, through, stirring;
    AccountId vapour, heat, radiation, sun;
    Input air_t, air_w;
    End air_heat, air_vapour;

    Build(const PlantInAir& p, Result& result) : plant(p), out(result) {
      walls = graph.channel("walls", "K", plant.walls_k);
      through = graph.channel("through", "m/s", plant.through_m_s);
      stirring = graph.channel("stirring", "m/s", plant.stirring_m_s);
      radiation = graph.account("surroundings", Quantity::energy);
      sun = graph.account("sun", Quantity::energy);
      out.pot = graph.node("pot", WetMass{1e4}, {plant.pot_k, plant.pot_kg}, {0.01, 1e-4});
      const double w = plant.humidity_ratio_of_air();
      if (plant.boxed_air_kg) {
        out.air = graph.node("air", MoistAir{*plant.boxed_air_kg}, {plant.air_k, w}, {0.01, 1e-5});
        air_t = out.air, air_w = Input(out.air, 1);
        air_heat = out.air, air_vapour = End(out.air, 1);
        return;
      }
      air_channel = graph.channel("air", "K", plant.air_k);
      air_t = air_channel, air_w = graph.channel("humidity", "1", w);
      heat = graph.account("air", Quantity::energy), vapour = graph.account("vapour", Quantity::water);
      air_heat = heat, air_vapour = vapour;
    }

    void side(std::size_t i) {
      const SideInSun& part = plant.sides[i];
      const std::string n = " " + std::to_string(i);
      const double leaf = part.share * plant.leaf_m2;
      const TissueFilm film = plant.film();
      const NodeId tissue = graph.node("tissue" + n, WetMass{part.share * plant.heat_j_k},
                                       {plant.tissue_k, part.share * plant.water_on_kg}, {0.001, 1e-5});
      out.tissue.push_back(tissue);
      graph.exchange("convection" + n, "x", TissueConvection{2.0 * leaf, film}, {tissue, air_t, through, stirring},
                     {{{tissue, air_heat}, {tissue, air_heat}}});
      graph.exchange("film" + n, "x", WetTissue{2.0 * leaf, kPressure, 0.3 * part.share * plant.held_kg, film},
                     {tissue, Input(tissue, 1), air_t, air_w, through, stirring},
                     {{{End(tissue, 1), air_vapour}, {tissue, air_heat}}});
      if (plant.emissivity > 0.0)
        graph.exchange("longwave" + n, "x", RadiantExchange{2.0 * leaf * plant.emissivity}, {tissue, walls},
                       {{{tissue, radiation}}});
      const ChannelId power = graph.channel("sun" + n, "W", part.absorbed_w);
      graph.exchange("sun" + n, "x", GivenPower{}, {power}, {{{sun, tissue}}});
      const ChannelId light = graph.channel("light" + n, "W/m2", part.light_w_m2);
      graph.exchange("transpiration" + n, "x", Transpiration{leaf, plant.density(), kPressure, film, plant.stomata},
                     {tissue, Input(out.pot, 1), out.pot, air_t, air_w, light, through, stirring},
                     {{{End(out.pot, 1), air_vapour}, {out.pot, tissue}, {tissue, air_heat}}});
    }
  };
};

}  // namespace noonhouse
