// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/run_series.hpp"

#include <string>

namespace noonhouse {
namespace {

/// Collects planned series with few words each.
class Planner {
 public:
  explicit Planner(const Assembly& assembly) : a_(assembly) {}

  void one(std::string name, std::string long_name, std::string units, const Input& source,
           std::string standard_name = {}) {
    add({std::move(name), std::move(long_name), std::move(units), std::move(standard_name), "time: point", {}, {}},
        {source});
  }
  template <class Items, class Pick>
  void each(std::string name, std::string long_name, std::string units, std::string axis, const Items& items, Pick pick,
            std::string standard_name = {}) {
    std::vector<Input> sources;
    for (const auto& item : items) sources.push_back(pick(item));
    if (sources.empty()) return;
    add({std::move(name),
         std::move(long_name),
         std::move(units),
         std::move(standard_name),
         "time: point",
         {std::move(axis)},
         {}},
        std::move(sources));
  }
  void air(std::string name, std::string long_name, std::string units, int which, std::string standard_name) {
    std::vector<Input> sources;
    for (const BayParts& bay : a_.bays)
      for (NodeId layer : bay.air) sources.push_back(Input(layer, which));
    add({std::move(name),
         std::move(long_name),
         std::move(units),
         std::move(standard_name),
         "time: point",
         {"bay", "level"},
         {}},
        std::move(sources));
  }
  void soil() {
    std::vector<Input> sources;
    for (const BayParts& bay : a_.bays)
      for (NodeId layer : bay.soil) sources.push_back(layer);
    add({"soil_temperature",
         "temperature of the soil layers under the floor",
         "K",
         "",
         "time: point",
         {"bay", "soil_layer"},
         {}},
        std::move(sources));
  }
  void made(std::string name, std::string long_name, std::string units, std::function<double(const ValueOf&)> value) {
    one(std::move(name), std::move(long_name), std::move(units), {});
    out.back().sources.clear();
    out.back().made = std::move(value);
  }
  std::vector<PlannedSeries> out;

 private:
  void add(RecordSeries series, std::vector<Input> sources) { out.push_back({std::move(series), std::move(sources)}); }
  const Assembly& a_;
};

}  // namespace

std::vector<PlannedSeries> planned_series(const Assembly& a) {
  Planner p(a);
  p.air("air_temperature", "air temperature in the house", "K", 0, "air_temperature");
  p.air("air_humidity_ratio", "water vapour per dry air in the house", "1", 1, "humidity_mixing_ratio");
  p.each("floor_temperature", "temperature of the floor's surface", "K", "bay", a.bays,
         [](const BayParts& b) { return Input(b.floor); });
  p.soil();
  std::vector<NodeId> covers;
  for (const BayParts& bay : a.bays) covers.insert(covers.end(), bay.covers.begin(), bay.covers.end());
  p.each("cover_temperature", "temperature of the cover", "K", "facet", covers, [](NodeId n) { return Input(n); });
  p.each("tissue_temperature", "temperature of plant tissue", "K", "plant", a.plants,
         [](const PlantParts& plant) { return Input(plant.tissue); });
  p.each("tissue_water_film", "water lying on plant tissue", "kg", "plant", a.plants,
         [](const PlantParts& plant) { return Input(plant.tissue, 1); });
  p.each("pot_water", "water in the pots", "kg", "plant", a.plants,
         [](const PlantParts& plant) { return Input(plant.pot, 1); });
  p.each("light_at_plants", "sunlight on the plants, all wavelengths", "W m-2", "plant", a.plants,
         [](const PlantParts& plant) { return Input(plant.light); });
  p.one("tank_water", "water in the tank", "kg", Input(a.tank, 1));
  p.one("tank_temperature", "temperature of the tank", "K", a.tank);
  p.one("battery_charge", "charge in the battery", "J", a.battery);
  p.made("battery_share", "charge of the battery, a share of what can be used", "1",
         [scale = a.charge_scale, battery = a.battery](const ValueOf& value) {
           return scale.usable(value).share_of(value(battery));
         });
  p.one("panel_power", "power the panel could give", "W", a.site.panel);
  p.one("electrical_load", "power the loads draw", "W", a.load);
  p.one("outdoor_temperature", "outdoor air temperature", "K", a.site.outdoor, "air_temperature");
  p.one("outdoor_humidity_ratio", "outdoor water vapour per dry air", "1", a.site.humidity, "humidity_mixing_ratio");
  p.one("outdoor_global", "global irradiance on level ground outdoors", "W m-2", a.site.global,
        "surface_downwelling_shortwave_flux_in_air");
  p.one("sky_temperature", "temperature of the sky as a black body", "K", a.site.sky);
  p.one("wind", "wind speed at the house", "m s-1", a.site.wind, "wind_speed");
  p.one("rain", "rain", "kg m-2 s-1", a.site.rain, "rainfall_flux");
  p.each("device_on", "share that a device runs or is open", "1", "device", a.devices,
         [](const DeviceParts& d) { return Input(d.running); });
  p.each("sensor_reading", "reading of a sensor: K for temperature, 1 for humidity", "1", "sensor", a.sensors,
         [](const SensorParts& s) { return Input(s.reading); });
  return std::move(p.out);
}

std::vector<RecordAxis> record_axes(const Assembly& a) {
  const auto names = [](const auto& items) {
    std::vector<std::string> out;
    for (const auto& item : items) out.push_back(item.name);
    return out;
  };
  std::vector<RecordAxis> axes{{"bay", "bay of the house", names(a.bays), {}, ""}};
  RecordAxis level{"level", "air layer, its middle above the floor", {}, {}, "m"};
  for (std::size_t i = 0; i < a.shape.bays.front().layers.size(); ++i) {
    level.labels.push_back("layer " + std::to_string(i + 1));
    level.coordinates.push_back(a.shape.bays.front().layers[i].middle_m());
  }
  axes.push_back(std::move(level));
  RecordAxis soil{"soil_layer", "soil layer, downward", {}, {}, ""};
  for (std::size_t i = 0; i < a.bays.front().soil.size(); ++i) soil.labels.push_back("soil " + std::to_string(i + 1));
  axes.push_back(std::move(soil));
  RecordAxis facet{"facet", "piece of the cover", {}, {}, ""};
  for (std::size_t b = 0; b < a.shape.bays.size(); ++b)
    for (const Facet& f : a.shape.facets)
      if (f.bay == static_cast<int>(b)) facet.labels.push_back(f.name);
  axes.push_back(std::move(facet));
  const auto labelled = [&](const char* name, const char* long_name, std::vector<std::string> labels) {
    if (!labels.empty()) axes.push_back({name, long_name, std::move(labels), {}, ""});
  };
  labelled("plant", "group of plants", names(a.plants));
  labelled("device", "device or opening", names(a.devices));
  labelled("sensor", "sensor", names(a.sensors));
  return axes;
}

}  // namespace noonhouse
