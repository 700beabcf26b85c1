// SPDX-License-Identifier: Apache-2.0
// Water from the roof to the nozzles: gutters, tank, refills, pumps, leaks.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/envelope/heat_links.hpp"
#include "models/water/catchment.hpp"
#include "models/water/drip.hpp"
#include "models/water/gutter.hpp"
#include "models/water/leak.hpp"
#include "models/water/leak_flow.hpp"
#include "models/water/line_flows.hpp"
#include "models/water/pump_curve.hpp"
#include "models/water/refill.hpp"
#include "models/water/tank_guard.hpp"
#include "models/water/tank_shape.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {
constexpr double kTankShellHeat = 4000.0;  ///< per square metre of wall [J/(m2 K)]; common practice, no source
constexpr double kOverflowSeconds = 20.0;
constexpr double kLeak_kg_s = 60.0 / 3600.0;  ///< of a failing tank; common practice, no source
constexpr double kCarriesBlocked = 1e-6;      ///< [kg/s] of a gutter whose screen is blocked all over

/// A gutter of which nothing is said but the slope.
GutterSpec plain_gutter(const char* slope) {
  LocatedNode drains, root;
  drains.kind = LocatedNode::Kind::scalar;
  drains.text = slope;
  root.kind = LocatedNode::Kind::mapping;
  root.entries.push_back({"drains", {}, std::move(drains)});
  return load_fields<GutterSpec>(root).value;
}

/// The gutters of a scenario, or a plain one on each slope.
std::vector<Named<GutterSpec>> gutters_of(const ScenarioSpec& spec) {
  if (!spec.gutters.empty()) return spec.gutters;
  return {{"front gutter", plain_gutter("front roof")}, {"back gutter", plain_gutter("back roof")}};
}

/// Ground that a slope covers [m2].
double slope_plan_area_m2(const HouseShape& shape, GutterSpec::Slope slope) {
  const WallSide side = slope == GutterSpec::Slope::front ? WallSide::roof_front : WallSide::roof_back;
  double sum = 0.0;
  for (const Facet& facet : shape.facets)
    if (facet.side == side) sum += facet.area_m2 * std::cos(facet.slope_rad);
  return sum;
}

/// What each of a pump's lines gets, by the set of them that are open. All nozzles of the open lines meet one pressure.
std::vector<std::vector<double>> pumped_flows_kg_s(const PumpSpec& pump,
                                                   const std::vector<const Named<MistSpec>*>& lines) {
  const PumpCurve curve{pump.shut_off_pa, pump.most_flow_m3_s};
  WaterLine pipe;
  pipe.length_m = pump.pipe_length_m;
  pipe.bore_m = pump.pipe_bore_m;
  pipe.fittings = pump.fittings;
  std::vector<std::vector<double>> out(std::size_t{1} << lines.size(), std::vector<double>(lines.size(), 0.0));
  for (std::size_t open = 1; open < out.size(); ++open) {
    double constant = 0.0;
    const auto each = [&](std::size_t i) {
      const MistSpec& m = lines[i]->value;
      return (open >> i & 1U) == 0U ? 0.0 : m.nozzles * nozzle_constant(m.nozzle_flow_m3_s, m.rated_pressure_pa);
    };
    for (std::size_t i = 0; i < lines.size(); ++i) constant += each(i);
    const PumpedFlow flow = operating_point(curve, pipe, pump.lift_m, constant, 1);
    for (std::size_t i = 0; i < lines.size(); ++i) out[open][i] = kWaterKgPerM3 * flow.flow_m3_s * each(i) / constant;
  }
  return out;
}
}  // namespace

void Assembler::add_water() {
  const TankSpec& t = spec_.tank;
  const TankShape shape = tank_shape_of(t);
  out_.tank = graph_.node("tank", WetMass{kTankShellHeat * t.wall_area_m2}, {start_.air_k, kWaterKgPerM3 * t.start_m3},
                          {kTemperatureUnit, 0.01});
  graph_.exchange("wall of the tank", "tank wall", Conductance{t.wall_area_m2 * t.wall_u_w_m2_k},
                  {out_.tank, out_.site.outdoor}, {{{out_.tank, outdoor_heat_}}});
  graph_.exchange("overflow of the tank", "overflow", Runoff{kWaterKgPerM3 * t.capacity_m3, kOverflowSeconds},
                  {out_.tank, Input(out_.tank, 1)},
                  {{{End(out_.tank, 1), drained_water_}, {out_.tank, drained_heat_}}});
  if (t.open_share > 0.0)
    graph_.exchange("evaporation of the tank", "tank evaporation",
                    tank_evaporation(shape, t.open_share, out_.pressure_pa),
                    {out_.tank, Input(out_.tank, 1), out_.site.humidity, out_.site.wind},
                    {{{End(out_.tank, 1), outdoor_vapour_}, {out_.tank, outdoor_heat_}}});
  leak_ = graph_.channel("leak of the tank", "kg s-1", 0.0);
  const ChannelId leaking = graph_.channel("flow of the tank's leak", "kg s-1", 0.0);
  graph_.exchange("leak of the tank", "leak", TankLeak{}, {out_.tank, Input(leaking)},
                  {{{End(out_.tank, 1), drained_water_}, {out_.tank, drained_heat_}}});
  add_agent<LeakFlow>(LeakFlow::Parameters{"leak of the tank", Input(out_.tank, 1), leak_, leaking});
  brought_ = graph_.account("water brought", Quantity::water);
  const AccountId brought_heat = graph_.account("heat of water brought", Quantity::energy);
  bringing_ = graph_.exchange("water brought to the tank", "refill", HandCarried{}, {out_.tank},
                              {{{brought_, End(out_.tank, 1)}, {brought_heat, out_.tank}}});
  for (const auto& gutter : gutters_of(spec_)) add_gutter(gutter);
}

/// Rain of one slope, shared evenly among the gutters that drain it.
void Assembler::add_gutter(const Named<GutterSpec>& item) {
  const GutterSpec& g = item.value;
  const auto all = gutters_of(spec_);
  const auto same =
      std::count_if(all.begin(), all.end(), [&](const auto& other) { return other.value.drains == g.drains; });
  const double area = slope_plan_area_m2(out_.shape, g.drains) / static_cast<double>(same);
  if (area <= 0.0) return;
  Gutter law{area, g.runoff, g.filter_passes};
  law.most_flow_kg_s = std::max(kCarriesBlocked, kWaterKgPerM3 * g.carries_m3_s * (1.0 - g.blocked));
  law.first_flush_kg = kWaterKgPerM3 * g.first_flush_m * area;
  const NodeId chamber = graph_.node("first flush of the " + item.name, WaterBucket{}, {0.0}, {0.01});
  gutters_[g.drains].push_back({item.name, law, chamber});
  graph_.exchange("rain by the " + item.name, "rain", law, {out_.site.rain, out_.site.outdoor, chamber},
                  {{{rain_water_, End(out_.tank, 1)},
                    {rain_heat_, out_.tank},
                    {rain_water_, chamber},
                    {rain_heat_, drained_heat_},
                    {rain_water_, drained_water_},
                    {rain_heat_, drained_heat_}}});
  graph_.exchange("drip of the first flush of the " + item.name, "first flush", FlushDrain{g.flush_empties_s},
                  {chamber}, {{{chamber, drained_water_}}});
}

/// Flows of the mist lines by the pump they hang on: each alone on its own, or several on one of the scenario's.
void Assembler::add_pumps() {
  for (const auto& item : spec_.mist_lines) {
    if (item.value.pump != kOwnPump || !plan_.uses(item.name)) continue;
    LineFlows::Parameters p{"flow of " + item.name, {line_channels(item.name)}, {{0.0}, {line_flow_kg_s(item.value)}}};
    add_agent<LineFlows>(std::move(p));
  }
  for (const auto& pump : spec_.pumps) {
    std::vector<const Named<MistSpec>*> lines;
    for (const auto& item : spec_.mist_lines)
      if (item.value.pump == pump.name && plan_.uses(item.name)) lines.push_back(&item);
    if (lines.empty()) continue;
    LineFlows::Parameters p{pump.name, {}, pumped_flows_kg_s(pump.value, lines)};
    for (const auto* line : lines) p.lines.push_back(line_channels(line->name));
    p.runs = graph_.channel("running of " + pump.name, "1", 0.0);
    loads_of_.push_back({p.runs, pump.value.power_w});
    add_agent<LineFlows>(std::move(p));
  }
}

LineFlows::Line Assembler::line_channels(const std::string& name) {
  const ChannelId cut = graph_.channel("cut of " + name, "1", 0.0);
  out_.fault_points.push_back({FailureKind::line_cut, name, cut, 1.0, 0.0, "is cut: its water runs out at the cut"});
  return {position_channel(name, "mist line"), cut, mist_flow_.at(name), mist_spill_.at(name)};
}

void Assembler::add_tank_agents() {
  const TankSpec& t = spec_.tank;
  const double low = kWaterKgPerM3 * t.low_m3, gap = kWaterKgPerM3 * (t.restart_m3 - t.low_m3);
  TankGuard::Parameters guard{"tank", Input(out_.tank, 1), low, low + gap, out_.water_permit, raining_};
  for (const auto& item : spec_.refills) {
    const ChannelId own = graph_.channel("water delivered by " + item.name, "kg", 0.0);
    out_.refills.push_back({item.name, own, graph_.channel("deliveries by " + item.name, "1", 0.0), item.value.price});
    guard.delivered.push_back(own);
  }
  guard.drained_by = drawing_names();
  guard.drained_by.emplace_back("tank");
  add_agent<TankGuard>(guard);
  for (const auto& [level_m3, permit] : water_levels_) {
    TankGuard::Parameters reserve = guard;
    reserve.name = fmt::format("reserve of {:.4g} L", 1000.0 * level_m3);
    reserve.low_kg = kWaterKgPerM3 * level_m3;
    reserve.restart_kg = reserve.low_kg + gap;
    reserve.permit = permit;
    reserve.words.low = fmt::format("the last {:.4g} L are left", 1000.0 * level_m3);
    reserve.words.withdraws = "keeps them for other uses";
    reserve.words.gives_back = "is full enough again for all";
    reserve.words.withdrawal = EventKind::warning;
    add_agent<TankGuard>(std::move(reserve));
  }
  for (std::size_t i = 0; i < spec_.refills.size(); ++i) {
    const RefillSpec& r = spec_.refills[i].value;
    Refill::Parameters p;
    p.name = spec_.refills[i].name;
    p.tank_water = Input(out_.tank, 1);
    p.brim_kg = kWaterKgPerM3 * t.capacity_m3;
    p.called_at_kg = kWaterKgPerM3 * r.called_at_m3;
    p.comes_after = ticks(r.comes_after_s);
    p.brings_kg = kWaterKgPerM3 * r.brings_m3;
    p.water_temperature_k = r.water_k;
    p.path = bringing_;
    p.delivered_kg = out_.refills[i].delivered_kg;
    p.deliveries = out_.refills[i].deliveries;
    p.raining = raining_;
    add_agent<Refill>(std::move(p));
  }
  out_.fault_points.push_back({FailureKind::tank_leaks, "tank", leak_, kLeak_kg_s, 0.0, "leaks 60 L an hour"});
}

/// Devices that draw from the tank, and failures of the scenario's own: what can empty it.
std::vector<std::string> Assembler::drawing_names() const {
  std::vector<std::string> out;
  for (const auto& item : spec_.mist_lines) out.push_back(item.name);
  for (const auto& item : spec_.pads) out.push_back(item.name);
  for (const auto& item : spec_.drip_lines) out.push_back(item.name);
  for (const auto& [name, fault] : spec_.faults)
    if (fault.what == FailureKind::tank_leaks || fault.what == FailureKind::line_cut) out.push_back(name);
  return out;
}

/// The permit of a device that draws from the tank: the pump's cut-out, or the level it keeps back. None for one that
/// is not in service: a level that nothing hangs on would keep water back from nobody.
ChannelId Assembler::water_permit_of(const std::string& device, const DrawSpec& draw) {
  if (!plan_.uses(device)) return {};
  if (draw.keeps_back_m3 <= spec_.tank.low_m3) return out_.water_permit;
  const auto [at, fresh] = water_levels_.try_emplace(draw.keeps_back_m3);
  if (fresh) at->second = graph_.channel(fmt::format("tank may be drawn above {:.6g} L", 1000.0 * at->first), "1", 1.0);
  return at->second;
}

}  // namespace noonhouse
