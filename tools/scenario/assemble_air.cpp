// SPDX-License-Identifier: Apache-2.0
// The air of the bays: layers with their pressures, what rises between them, columns over warm surfaces, cracks.
#include <algorithm>

#include "models/air/mixing.hpp"
#include "models/air/moist_air.hpp"
#include "models/air/updraught.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/wind_plan.hpp"

namespace noonhouse {
namespace {
constexpr double kHumidityTolerance = 2e-5;  ///< [kg/kg]
constexpr double kPressureUnit = 1e-3;       ///< [Pa]
constexpr double kDraughtUnit = 0.02;        ///< [m/s]
constexpr double kColumnSeconds = 60.0;      ///< in which a column that does not rise takes on its layer's state
constexpr double kLongestEddy = 1.0;         ///< mixing length in a tall house [m]; common practice, no source
/// Of air in a house that is never quite still [m2/s]: draughts along walls, people, leaves (common practice, no
/// source).
constexpr double kDraughtDiffusivity = 2e-4;
constexpr double kLeastLeakage = 1e-5;  ///< [1/s]; no house is a vessel, and its pressure must have a way out
}  // namespace

void Assembler::add_air() {
  for (int b = 0; b < static_cast<int>(out_.shape.bays.size()); ++b) {
    add_bay_air(b);
    join_layers(b);
    add_column(b);
  }
  join_bays();
  add_leakage();
}

void Assembler::add_bay_air(int b) {
  const BayShape& bay = out_.shape.bays[at(b)];
  BayParts parts;
  parts.name = bay.name;
  for (std::size_t i = 0; i < bay.layers.size(); ++i) {
    const std::string layer = " layer " + std::to_string(i + 1);
    const double dry_air = bay.layers[i].volume_m3 * air_density_;
    // Air forgets an error within a minute, the column's within seconds; what stands in it does not.
    const std::array<double, 2> start{start_.air_k, start_.humidity_ratio};
    const std::array<double, 2> unit{2.0 * kTemperatureUnit, 2.0 * kHumidityTolerance};
    const std::array<double, 2> column_unit{5.0 * kTemperatureUnit, 5.0 * kHumidityTolerance};
    parts.air.push_back(
        graph_.node("air of the " + bay.name + " bay," + layer, MoistAir{(1.0 - kColumnShare) * dry_air}, start, unit));
    parts.column.push_back(graph_.node("air that rises in the " + bay.name + " bay," + layer,
                                       MoistAir{kColumnShare * dry_air}, start, column_unit));
    parts.pressure.push_back(
        graph_.node("pressure in the " + bay.name + " bay," + layer, Junction{}, {0.0}, {kPressureUnit}));
  }
  for (int layer = 0; layer < static_cast<int>(bay.layers.size()); ++layer) {
    const std::string name = "draught in layer " + std::to_string(layer + 1) + " of the " + bay.name + " bay";
    const NodeId draught = graph_.node(name, Reading{}, {0.0}, {kDraughtUnit});
    graph_.exchange(name + " fades", "instruments", DraughtFades{}, {draught}, {{{instruments_, draught}}});
    parts.draught.push_back(draught);
  }
  out_.bays.push_back(std::move(parts));
  stirring_.push_back(graph_.channel("stirring in the " + bay.name + " bay", "m s-1", 0.0));
  out_.bays.back().stirring = stirring_.back();
}

void Assembler::join_layers(int b) {
  const BayShape& bay = out_.shape.bays[at(b)];
  const BayParts& parts = out_.bays[at(b)];
  for (std::size_t i = 0; i + 1 < parts.air.size(); ++i) {
    const std::string between =
        " layers " + std::to_string(i + 1) + " and " + std::to_string(i + 2) + " of the " + bay.name + " bay";
    const NodeId low = parts.air[i], high = parts.air[i + 1];
    LayerExchange mixing;
    mixing.area_m2 = bay.layers[i].top_area_m2;
    mixing.spacing_m = bay.layers[i + 1].middle_m() - bay.layers[i].middle_m();
    mixing.dry_air_density_kg_m3 = air_density_;
    mixing.length_m = mixing_length_m(bay.layers[i].top_m, out_.shape.top_m, kLongestEddy);
    mixing.still_m2_s = kDraughtDiffusivity;
    graph_.exchange("mixing of" + between, "mixing", mixing,
                    {low, Input(low, 1), high, Input(high, 1), stirring_[at(b)]},
                    {{{End(low, 1), End(high, 1)}, {low, high}}});
    LayerLift lift;
    lift.middle_to_middle_m = mixing.spacing_m;
    lift.level_above_lower_m = bay.layers[i].top_m - bay.layers[i].middle_m();
    lift.area_m2 = mixing.area_m2;
    lift.reference_kg_m3 = reference_density_;
    lift.pressure_pa = out_.pressure_pa;
    graph_.exchange("rise between" + between, "mixing", lift,
                    {parts.pressure[i], low, Input(low, 1), parts.pressure[i + 1], high, Input(high, 1)},
                    {{{parts.pressure[i], parts.pressure[i + 1]}, {End(low, 1), End(high, 1)}, {low, high}}});
    for (const std::size_t layer : {i, i + 1})
      feel("the rise between" + between, lift,
           {parts.pressure[i], low, Input(low, 1), parts.pressure[i + 1], high, Input(high, 1)}, b, layer,
           lift.area_m2);
  }
}

/// The column that rises over the bay's warm surfaces: half of its plan at most, the rest sinks.
void Assembler::add_column(int b) {
  const BayShape& bay = out_.shape.bays[at(b)];
  const BayParts& parts = out_.bays[at(b)];
  const auto level = [&](int i) {  // above layer i
    const bool inside = i >= 0 && i + 1 < static_cast<int>(bay.layers.size());
    return inside ? ColumnLevel{0.5 * bay.layers[at(i)].top_area_m2, bay.layers[at(i)].top_m} : ColumnLevel{};
  };
  for (std::size_t i = 0; i < parts.air.size(); ++i) {
    const int k = static_cast<int>(i);
    const std::string of = " layer " + std::to_string(i + 1) + " of the " + bay.name + " bay";
    const NodeId column = parts.column[i], air = parts.air[i];
    const NodeId below = parts.column[i > 0 ? i - 1 : 0], air_below = parts.air[i > 0 ? i - 1 : 0];
    const ColumnIntake intake{level(k), level(k - 1), out_.pressure_pa,
                              kColumnShare * air_density_ * bay.layers[i].volume_m3 / kColumnSeconds};
    graph_.exchange(
        "air rising takes from" + of, "mixing", intake,
        {column, Input(column, 1), air, Input(air, 1), below, Input(below, 1), air_below, Input(air_below, 1)},
        {{{End(air, 1), End(column, 1)}, {air, column}}});
    if (level(k).area_m2 <= 0.0) continue;
    const NodeId next = parts.column[i + 1];
    graph_.exchange("air rising out of" + of, "mixing", ColumnRise{level(k), out_.pressure_pa},
                    {column, Input(column, 1), air, Input(air, 1)},
                    {{{parts.pressure[i], parts.pressure[i + 1]}, {End(column, 1), End(next, 1)}, {column, next}}});
  }
}

OpeningPlace Assembler::place_in_layer(int bay, std::size_t layer, double bottom_m) const {
  return {bottom_m, out_.shape.bays[at(bay)].layers[layer].middle_m(), reference_density_, out_.pressure_pa};
}

void Assembler::join_bays() {
  for (int b = 0; b + 1 < static_cast<int>(out_.bays.size()); ++b) {
    const BayShape& bay = out_.shape.bays[at(b)];
    const BayParts &here = out_.bays[at(b)], &next = out_.bays[at(b + 1)];
    for (std::size_t i = 0; i < bay.layers.size(); ++i) {
      const double height = bay.layers[i].top_m - bay.layers[i].bottom_m;
      const SectionPiece law{place_in_layer(b, i, bay.layers[i].bottom_m),
                             TallOpening{bay.layers[i].section_area_m2 / height, height}};
      const NodeId a = here.air[i], c = next.air[i];
      graph_.exchange("layer " + std::to_string(i + 1) + " between the " + here.name + " and " + next.name + " bays",
                      "mixing", law, {here.pressure[i], a, Input(a, 1), next.pressure[i], c, Input(c, 1)},
                      {{{here.pressure[i], next.pressure[i]}, {End(a, 1), End(c, 1)}, {a, c}}});
      for (const int side : {b, b + 1})
        feel("what passes between the " + here.name + " and " + next.name + " bays", law,
             {here.pressure[i], a, Input(a, 1), next.pressure[i], c, Input(c, 1)}, side, i,
             out_.shape.bays[at(side)].layers[i].section_area_m2);
    }
  }
}

/// Through an end air runs along the house, through a long side across it.
double Assembler::section_from(ChannelId wind_pa, int bay, std::size_t layer) const {
  const BayShape& shape = out_.shape.bays[at(bay)];
  const auto facet = std::find(out_.site.wind_pa.begin(), out_.site.wind_pa.end(), wind_pa) - out_.site.wind_pa.begin();
  const WallSide side = out_.shape.facets[static_cast<std::size_t>(facet)].side;
  if (side == WallSide::first_end || side == WallSide::last_end) return shape.layers[layer].section_area_m2;
  return shape.length_m * (shape.layers[layer].top_m - shape.layers[layer].bottom_m);
}

/// Cracks spread over the cover: one piece for each side of each bay in each layer.
void Assembler::add_leakage() {
  const LeakPiece usual;
  const double leakiness = leakiness_m_s(out_.shape, spec_.site.surroundings, usual.exponent,
                                         std::max(spec_.house.leakage_per_s, kLeastLeakage), air_density_);
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
    const Facet& facet = out_.shape.facets[f];
    const auto& layers = out_.shape.bays[at(facet.bay)].layers;
    for (std::size_t i = 0; i < layers.size(); ++i) {
      const double share = facet_share_in_layer(facet, layers, i);
      if (share <= 0.0) continue;
      const double low = std::max(facet.bottom_m, layers[i].bottom_m), high = std::min(facet.top_m, layers[i].top_m);
      LeakPiece law{place_in_layer(facet.bay, i, 0.5 * (low + high)), leakiness * facet.area_m2 * share};
      law.counterflow_kg_s = 1e-3 * law.coefficient;
      join_outdoors("cracks of the " + facet.name + " at layer " + std::to_string(i + 1), "leakage", law, facet.bay, i,
                    out_.site.wind_pa[f]);
    }
  }
}

}  // namespace noonhouse
