// SPDX-License-Identifier: Apache-2.0
// Tank, power and sensors: what they exchange. Who switches them: assemble_control.cpp.
#include <algorithm>
#include <array>

#include "models/control/sensor.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/power/battery.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/water/catchment.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kTankShellHeat = 4000.0;  ///< per square metre of wall [J/(m2 K)]; common practice, no source
constexpr double kOverflowSeconds = 20.0;
}  // namespace

/// The channel that says how far a device is open, drawn or running (0 to 1); made on first use.
ChannelId Assembler::position_channel(const std::string& device, const std::string& sort, double at_rest) {
  for (const DeviceParts& parts : out_.devices)
    if (parts.name == device) return parts.running;
  const ChannelId channel = graph_.channel("position of " + device, "1", at_rest);
  out_.devices.push_back({device, sort, channel, plan_.uses(device)});
  return channel;
}

void Assembler::add_water() {
  const TankSpec& t = spec_.tank;
  out_.tank = graph_.node("tank", WetMass{kTankShellHeat * t.wall_area_m2}, {start_.air_k, kWaterKgPerM3 * t.start_m3},
                          {kTemperatureUnit, 0.01});
  graph_.exchange("wall of the tank", "tank wall", Conductance{t.wall_area_m2 * t.wall_u_w_m2_k},
                  {out_.tank, out_.site.outdoor}, {{{out_.tank, outdoor_heat_}}});
  graph_.exchange("rain into the tank", "rain", RoofCatchment{out_.shape.plan_area_m2(), t.runoff_coefficient},
                  {out_.site.rain, out_.site.outdoor}, {{{rain_water_, End(out_.tank, 1)}, {rain_heat_, out_.tank}}});
  graph_.exchange("overflow of the tank", "overflow", Runoff{kWaterKgPerM3 * t.capacity_m3, kOverflowSeconds},
                  {out_.tank, Input(out_.tank, 1)},
                  {{{End(out_.tank, 1), drained_water_}, {out_.tank, drained_heat_}}});
}

void Assembler::add_power() {
  const PowerSpec& p = spec_.power;
  out_.battery = graph_.node("battery", ChargeStore{}, {p.battery_start * p.battery_j}, {1e-4 * p.battery_j});
  const ChannelId temperature = graph_.channel("temperature of the battery", "K", 298.15);
  const ChannelId cells = graph_.channel("working cells of the battery", "1", 1.0);
  const ChannelId uncovered = graph_.channel("uncovered share of the panel", "1", 1.0);
  graph_.exchange("panel, battery and loads", "power",
                  BatteryBus{p.battery_j, p.charge_efficiency, p.discharge_efficiency},
                  {out_.battery, out_.site.panel, out_.load, temperature, cells, uncovered},
                  {{{panel_energy_, loads_},
                    {panel_energy_, out_.battery},
                    {out_.battery, loads_},
                    {out_.battery, losses_},
                    {out_.battery, losses_}}});
}

void Assembler::add_sensors() {
  // Instruments that hang in the shade, out of the spray, and read true.
  const ChannelId light = graph_.channel("light on the instruments", "W/m2", 0.0);
  const ChannelId wetness = graph_.channel("wetness of the instruments", "1", 0.0);
  const ChannelId bias = graph_.channel("bias of the instruments", "1", 0.0);
  for (const auto& item : spec_.sensors) {
    const SensorSpec& s = item.value;
    const NodeId air = air_at(out_.shape.bay_index(s.bay), s.height_m);
    const bool heat = s.measures == Measures::temperature;
    const double first =
        heat ? start_.air_k
             : vapour_pressure_pa(start_.humidity_ratio, out_.pressure_pa) / saturation_pressure_pa(start_.air_k);
    const NodeId reading = graph_.node(item.name, Reading{}, {first}, {heat ? kTemperatureUnit : 0.001});
    const std::string what = "what " + item.name + " follows";
    const std::array<Input, 6> inputs{reading, air, Input(air, 1), light, wetness, bias};
    const SensorBody body{out_.pressure_pa};
    if (heat) {
      graph_.exchange(what, "instruments", ThermometerLag{s.time_constant_s, body}, inputs,
                      {{{instruments_, reading}}});
    } else {
      graph_.exchange(what, "instruments", HygrometerLag{s.time_constant_s, body}, inputs, {{{instruments_, reading}}});
    }
    out_.sensors.push_back({item.name, s.measures, reading});
  }
}

}  // namespace noonhouse
