// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <limits>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "models/power/charge_scale.hpp"
#include "models/weather/weather_series.hpp"
#include "sim/run/run.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/site_forcing.hpp"
#include "tools/scenario/standing_place.hpp"

namespace noonhouse {

/// Share of a layer's air that is in the column that rises beside it.
inline constexpr double kColumnShare = 0.05;

/// Where the parts of a bay ended up, for recorders.
struct BayParts {
  std::string name;
  std::vector<NodeId> air;       ///< layers, from the floor up
  std::vector<NodeId> column;    ///< the air that rises beside each layer, kColumnShare of its air
  std::vector<NodeId> pressure;  ///< of each layer, a junction
  std::vector<NodeId> soil;      ///< below the floor's surface, downward
  std::vector<NodeId> covers;    ///< facets, in the shape's order
  NodeId floor;
  ChannelId stirring;           ///< of its air [m/s]
  std::vector<NodeId> draught;  ///< by layer: air drawn past what stands there
};

/// What a group of plants has borne, as readings; one that its kind does not have is not valid.
struct PlantDoses {
  NodeId heat, cold, hot_roots, sunburn, hot_air, cold_air, dry_air, damp_air, wet;
  NodeId used_to;             ///< direct sun it is used to [W/m2]
  NodeId light_sum, day_sum;  ///< light received [J/m2] and time with light [s] since the start
};

struct PlantParts {
  std::string name, kind, place, bay;
  int bay_index = 0, layer = 0, place_index = 0;
  double height_m = 0.0;
  PlantKindSpec limits;
  NodeId tissue, shaded;  ///< sunlit side and the side in its shade, with the water on each
  NodeId pot, wall;       ///< soil with its water, and the pots' walls
  ChannelId light;        ///< on the level of its place [W/m2]
  PlantDoses doses;
};

struct DeviceParts {
  std::string name, sort;  ///< sort: "opening", "fan", "mist line", "shade"
  ChannelId running;
  bool in_service = false;
  double at_rest = 0.0;  ///< of `running`, when it is off
};

struct SensorParts {
  std::string name;
  Measures measures = Measures::temperature;
  NodeId reading;
  Input told;      ///< what controls read: the reading, or a channel that jumps at polls
  ChannelId good;  ///< below one half: the reading is lost; none: wired
};

/// One way in which something can fail: a channel and what it is set to.
struct FaultPoint {
  FailureKind what = FailureKind::stuck_off;
  std::string of;
  ChannelId channel;
  double value = 0.0, healthy = 0.0;
  std::string words;  ///< after the name of what fails: "is stuck open"
};

/// A call of a control for devices.
struct DemandParts {
  std::string control;
  ChannelId demand;
  std::vector<std::string> drives;
};

/// An addition that the house does not have; setting its channel fits it.
struct SpareParts {
  std::string name;  ///< "a heat alarm"
  ChannelId channel;
  double fitted = 1.0;
};

struct RefillParts {
  std::string name;
  ChannelId delivered_kg, deliveries;
  double price = 0.0;
};

/// Spray that lands on a place: an exchange whose first flux is water [kg] and second its heat [J], and the ground that
/// it falls on.
struct LandingParts {
  int place = -1;
  ExchangeId exchange;
  double area_m2 = 0.0;
};

/// Light on the level of a place [W/m2]: all of it, straight from the sun, the rest.
struct PlaceChannels {
  ChannelId all, direct, soft;
};

/// A plan ready to run, with the names of its parts.
struct Assembly {
  RunPlan plan;
  HouseShape shape;
  double pressure_pa = 0.0;
  double air_density_kg_m3 = 0.0;        ///< of the dry air that fills the layers
  double reference_density_kg_m3 = 0.0;  ///< of the column of air from which pressures are counted
  std::vector<BayParts> bays;
  std::vector<StandingPlace> places;  ///< used or not
  std::vector<PlaceChannels> light;   ///< per place
  std::vector<LandingParts> landings;
  std::vector<NodeId> benches, cloths;  ///< per bench, per shade
  std::vector<PlantParts> plants;
  std::vector<DeviceParts> devices;
  std::vector<SensorParts> sensors;
  std::vector<DemandParts> demands;
  std::vector<FaultPoint> fault_points;
  std::vector<RefillParts> refills;
  std::vector<SpareParts> spares;
  double breaks_at_gust_m_s = std::numeric_limits<double>::infinity();  ///< the least that lifts or tears something
  SiteChannels site;
  NodeId tank, battery;
  ChargeScale charge_scale;  ///< of the battery
  ChannelId load, water_permit, power_permit;
  std::vector<NodeId> not_warmed_up;  ///< readings that count from the run's start
  std::vector<std::string> cautions;
};

/// The weather of a plan, read or made. Throws UserError of the weather kinds.
WeatherSeries weather_of(const Scenario& scenario, const PlanScenario& plan);

/// What weather_of depends on, as text: plans with equal keys have equal weather.
std::string weather_key(const PlanScenario& plan);

/// Sun and weather on the house's facets; plans with equal site, weather and geometry may share one.
/// `sun`, if given, is that of a plan with the same sun_key.
std::shared_ptr<const SiteTable> site_table(const PlanScenario& plan, const WeatherSeries& weather,
                                            std::shared_ptr<const SunlitHouse> sun = nullptr);

/// The house's geometry in the sun of the run's days, and what it depends on, as text.
std::shared_ptr<const SunlitHouse> sunlit_house(const PlanScenario& plan, const WeatherSeries& weather);
std::string sun_key(const PlanScenario& plan);

/// Checks a plan's values across each other and builds its house, agents and forcing. This is the only place that
/// names all models. Throws UserError with the place in the file.
/// With spares: additions are put in that a search may fit; they do nothing until then.
Assembly assemble(const PlanScenario& plan, std::shared_ptr<const SiteTable> table, const WeatherSeries& weather,
                  bool with_spares = false);

}  // namespace noonhouse
