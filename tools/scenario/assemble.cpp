// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/assemble.hpp"

#include "models/air/moist_air.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/properties/atmosphere.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/warm_up.hpp"

namespace noonhouse {
namespace {
constexpr double kDraught = 0.1;  ///< air past surfaces inside with nothing running [m/s]; common practice, no source
}  // namespace

Assembler::Assembler(const PlanScenario& plan, std::shared_ptr<const SiteTable> table, const WeatherSeries& weather,
                     bool with_spares)
    : plan_(plan), spec_(plan.spec), table_(std::move(table)), weather_(weather), with_spares_(with_spares) {
  out_.shape = shape_of(spec_.house);
  out_.pressure_pa = standard_pressure_pa(spec_.site.altitude_m);
  start_ = {table_->instant(0).outdoor_k, table_->instant(0).humidity_ratio};
  air_density_ = dry_air_density(table_->mean_outdoor_k(), start_.humidity_ratio, out_.pressure_pa);
  reference_density_ = moist_air_density(table_->mean_outdoor_k(), start_.humidity_ratio, out_.pressure_pa);
  out_.air_density_kg_m3 = air_density_;
  out_.reference_density_kg_m3 = reference_density_;
}

Assembly Assembler::build() {
  add_accounts_and_channels();
  add_places();
  add_air();
  add_ground();
  add_shades();
  add_covers();
  add_benches();
  add_water();
  add_power();
  add_plants();
  add_drips();
  add_longwave();
  add_openings();
  add_holes();
  add_fans();
  add_pads();
  add_mist();
  add_sensors();
  add_controls();
  out_.plan.house = graph_.compile();
  out_.plan.forcing = std::make_unique<SiteForcing>(table_, out_.site);
  out_.plan.length = ticks(spec_.run.length_s);
  out_.plan.steps.tolerance = spec_.run.tolerance_k / kTemperatureUnit;
  return std::move(out_);
}

void Assembler::add_accounts_and_channels() {
  sun_ = graph_.account("sun", Quantity::energy);
  motors_ = graph_.account("motors", Quantity::energy);
  outdoor_heat_ = graph_.account("outdoor air", Quantity::energy);
  sky_ = graph_.account("sky", Quantity::energy);
  deep_soil_ = graph_.account("deep soil", Quantity::energy);
  rain_heat_ = graph_.account("heat of rain", Quantity::energy);
  drained_heat_ = graph_.account("heat of drained water", Quantity::energy);
  outdoor_air_ = graph_.account("outdoor dry air", Quantity::air);
  outdoor_vapour_ = graph_.account("outdoor vapour", Quantity::water);
  rain_water_ = graph_.account("rain", Quantity::water);
  drained_water_ = graph_.account("drained water", Quantity::water);
  panel_energy_ = graph_.account("panel", Quantity::charge);
  loads_ = graph_.account("loads", Quantity::charge);
  losses_ = graph_.account("battery losses", Quantity::charge);
  instruments_ = graph_.account("instruments", Quantity::reading);
  const auto& first = table_->instant(0);
  out_.site.outdoor = graph_.channel("outdoor temperature", "K", first.outdoor_k);
  out_.site.humidity = graph_.channel("outdoor humidity ratio", "1", first.humidity_ratio);
  out_.site.wind = graph_.channel("wind at the house", "m s-1", first.wind_m_s);
  out_.site.gust = graph_.channel("gusts at the house", "m s-1", first.wind_m_s);
  out_.site.sky = graph_.channel("sky temperature", "K", first.sky_k);
  out_.site.rain = graph_.channel("rain", "kg m-2 s-1", 0.0);
  out_.site.global = graph_.channel("global irradiance", "W m-2", 0.0);
  out_.site.panel = graph_.channel("panel power", "W", 0.0);
  out_.site.deep_soil = graph_.channel("deep soil temperature", "K", first.deep_soil_k);
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f)
    out_.site.wind_pa.push_back(
        graph_.channel("wind pressure on the " + out_.shape.facets[f].name, "Pa", table_->wind_pa(0)[f]));
  nothing_drawn_ = graph_.channel("no cloth", "1", 0.0);
  out_.site.sunlight.resize(table_->row().size());
  raining_ = graph_.channel("raining", "1", 0.0);
  out_.water_permit = graph_.channel("tank may be drawn", "1", 1.0);
  out_.power_permit = graph_.channel("loads may draw", "1", 1.0);
  out_.load = graph_.channel("electrical load", "W", 0.0);
}

/// The channel that says how far a device is open, drawn or running (0 to 1); made on first use.
ChannelId Assembler::position_channel(const std::string& device, const std::string& sort, double at_rest) {
  for (const DeviceParts& parts : out_.devices)
    if (parts.name == device) return parts.running;
  const ChannelId channel = graph_.channel("position of " + device, "1", at_rest);
  out_.devices.push_back({device, sort, channel, plan_.uses(device), at_rest});
  return channel;
}

/// A surface with a water film, dry at the start.
NodeId Assembler::film_node(const std::string& name, double dry_heat_j_k, double start_k) {
  return graph_.node(name, WetMass{dry_heat_j_k}, {start_k, 0.0}, {kTemperatureUnit, kFilmUnit});
}

/// Convection and evaporation between a surface and the air beside it.
void Assembler::touch_air(const Surface& s, NodeId air) {
  const std::string to = s.name + " and the air beside it";
  if (s.plume_bay >= 0) {
    const BayParts& bay = out_.bays[static_cast<std::size_t>(s.plume_bay)];
    const auto layer = static_cast<std::size_t>(std::find(bay.air.begin(), bay.air.end(), air) - bay.air.begin());
    graph_.exchange("heat between " + to, "convection inside", PlumeConvection{s.area_m2, s.film}, {s.node, air},
                    {{{s.node, air}, {s.node, bay.column[layer]}}});
  } else {
    graph_.exchange("heat between " + to, "convection inside", InsideConvection{s.area_m2, s.film}, {s.node, air},
                    {{{s.node, air}}});
  }
  if (!s.wets) return;
  graph_.exchange("vapour between " + to, "evaporation and condensation",
                  WetSurface{s.area_m2, out_.pressure_pa, s.half_wet_kg, s.film},
                  {s.node, Input(s.node, 1), air, Input(air, 1)}, {{{End(s.node, 1), End(air, 1)}, {s.node, air}}});
}

/// Sunlight taken up by a node: an entry of the table's row.
void Assembler::receive_sun(const std::string& name, NodeId node, std::size_t row) {
  const ChannelId gain = graph_.channel("sun on " + name, "W", 0.0);
  out_.site.sunlight[row] = gain;
  graph_.exchange("sun on " + name, "sunlight absorbed", GivenPower{}, {gain}, {{{sun_, node}}});
}

/// The film of a flat face of the house's air, with the draught that is never absent.
SurfaceFilm Assembler::film_of(double tilt_rad, double length_m, double run_m) const {
  return surface_film(tilt_rad, length_m, kDraught, table_->mean_outdoor_k(), out_.pressure_pa, run_m);
}

void Assembler::run_off(const std::string& name, NodeId from, double held_kg, const End& water, const End& energy,
                        const char* path) {
  graph_.exchange("run-off from " + name, path, Runoff{held_kg}, {from, Input(from, 1)},
                  {{{End(from, 1), water}, {from, energy}}});
}

NodeId Assembler::air_at(int bay, double height_m) const {
  return out_.bays[static_cast<std::size_t>(bay)].air[static_cast<std::size_t>(out_.shape.layer_at(height_m))];
}

Assembly assemble(const PlanScenario& plan, std::shared_ptr<const SiteTable> table, const WeatherSeries& weather,
                  bool with_spares) {
  Assembly assembly = Assembler(plan, std::move(table), weather, with_spares).build();
  warm_up(assembly, plan.spec, ticks(plan.spec.run.warm_up_s));
  return assembly;
}

}  // namespace noonhouse
