// SPDX-License-Identifier: Apache-2.0
// Long because one class puts a whole house together.
#pragma once
#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "models/air/air_network.hpp"
#include "models/air/spray_table.hpp"
#include "models/control/clock.hpp"
#include "models/control/control_terms.hpp"
#include "models/control/device.hpp"
#include "models/control/fault_causes.hpp"
#include "models/control/hand_move.hpp"
#include "models/control/running_sum.hpp"
#include "models/control/standing_rule.hpp"
#include "models/hazard/hail_strike.hpp"
#include "models/plants/dose.hpp"
#include "models/properties/surface_film.hpp"
#include "models/properties/water.hpp"
#include "models/water/gutter.hpp"
#include "models/water/line_flows.hpp"
#include "sim/contract/agent_plan.hpp"
#include "sim/graph/house_graph.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/error_units.hpp"
#include "tools/scenario/plant_builder.hpp"

namespace noonhouse {

/// Builds one plan's house part by part; each part's file names the laws it uses. Made for one use.
class Assembler {
 public:
  /// With spares: additions that a search may fit (Assembly::spares).
  Assembler(const PlanScenario& plan, std::shared_ptr<const SiteTable> table, const WeatherSeries& weather,
            bool with_spares = false);
  Assembly build();

 private:
  /// What exchanges heat and vapour with the air beside it: one surface, one layer.
  struct Surface {
    std::string name;
    NodeId node;
    double area_m2 = 0.0;
    SurfaceFilm film;
    double half_wet_kg = 0.0;
    int plume_bay = -1;  ///< bay whose column of rising air it feeds; -1 for none
    bool wets = true;    ///< holds water that evaporates, and takes dew
  };
  /// A surface under a mist line, with its share of what the line sprays in a bay.
  struct Landing {
    std::string where;
    NodeId node;
    double height_m = 0.0, share = 0.0;
    int place = -1;
    double area_m2 = 0.0;
  };
  struct Start {
    double air_k = 0.0, humidity_ratio = 0.0;
  };

  void add_accounts_and_channels();
  // assemble_air.cpp
  void add_air();
  void add_bay_air(int bay);
  void join_layers(int bay);
  void add_column(int bay);
  void join_bays();
  void add_leakage();
  OpeningPlace place_in_layer(int bay, std::size_t layer, double bottom_m) const;
  // assemble_openings.cpp
  void add_openings();
  void add_fans();
  int facet_of(int bay, WallSide side, double height_m) const;
  void open_cover(const std::string& name, int facet, const OpeningSpec& opening, double rise_m, ChannelId share);
  /// A law between a layer and outdoors: its inputs are pressure, temperature and humidity of the layer, temperature
  /// and humidity outdoors, the wind's pressure, and what else the law reads.
  template <class L>
  void join_outdoors(const std::string& name, const char* path, const L& law, int bay, std::size_t layer,
                     ChannelId wind_pa, const std::array<Input, static_cast<std::size_t>(L::kInputs) - 6>& more = {}) {
    const BayParts& parts = out_.bays[static_cast<std::size_t>(bay)];
    const NodeId pressure = parts.pressure[layer], air = parts.air[layer];
    std::array<Input, static_cast<std::size_t>(L::kInputs)> inputs{
        pressure, air, Input(air, 1), out_.site.outdoor, out_.site.humidity, wind_pa};
    std::copy(more.begin(), more.end(), inputs.begin() + 6);
    graph_.exchange(name, path, law, inputs,
                    {{{pressure, outdoor_air_}, {End(air, 1), outdoor_vapour_}, {air, outdoor_heat_}}});
    if constexpr (kFelt<L>) feel(name, law, inputs, bay, layer, section_from(wind_pa, bay, layer));
  }
  /// The upright section of a layer that air crosses which comes in through the facet of this wind [m2].
  double section_from(ChannelId wind_pa, int bay, std::size_t layer) const;
  /// Cracks are too fine to be felt.
  template <class L>
  static constexpr bool kFelt = !std::is_same_v<L, LeakPiece>;
  /// Air of a way through a layer, as the plants there feel it; half of what comes and goes is what passes.
  template <class L>
  void feel(const std::string& name, const L& law,
            const std::array<Input, static_cast<std::size_t>(L::kInputs)>& inputs, int bay, std::size_t layer,
            double section_m2) {
    const NodeId felt = out_.bays[static_cast<std::size_t>(bay)].draught[layer];
    graph_.exchange("draught by " + name + " in layer " + std::to_string(layer + 1) + " of the " +
                        out_.bays[static_cast<std::size_t>(bay)].name + " bay",
                    "instruments", DraughtBy<L>{law, 2.0 * air_density_ * section_m2}, inputs,
                    {{{instruments_, felt}}});
  }
  // assemble_cover.cpp
  void add_covers();
  void add_cover(std::size_t facet);
  void add_cover_outside(std::size_t facet, NodeId outer_face);
  void add_shades();
  void add_shade(int shade);
  // assemble_longwave.cpp
  void add_longwave();
  void join_longwave_centre(const std::vector<double>& areas_m2, const std::vector<NodeId>& nodes,
                            const std::vector<std::string>& names);
  struct LongwaveParts;
  NodeId node_of(const SurfacePart& part) const;
  LongwaveParts longwave_parts() const;
  void add_longwave_through_covers(const LongwaveParts& parts, std::size_t node);
  void add_longwave_of_water(std::size_t facet);
  int cloth_under(NodeId node) const;
  void exchange_longwave(NodeId a, NodeId b, double area_m2, std::map<std::pair<int, int>, double>& to_cloth);
  void longwave_to_outdoors(NodeId from, const std::string& name, int facet, double area_m2);
  // assemble_ground.cpp
  void add_ground();
  void add_soil(int bay);
  // assemble_benches.cpp
  void add_benches();
  void add_places();
  // assemble_plants.cpp
  void add_plants();
  void add_plant_group(std::size_t index);
  PlantSurroundings surroundings_of(int place, const PlantKindSpec& kind) const;
  NodeId ground_of(const StandingPlace& place) const;
  void add_drips();
  static bool waters(const DripSpec& line, const std::string& group);
  void add_pot_watch(const PlantParts& plant, const PlantGroupSpec& group);
  std::vector<std::string> coolers_in_use() const;
  // assemble_water.cpp
  void add_water();
  struct GutterParts {
    std::string name;
    Gutter law;
    NodeId first_flush;
  };
  void add_gutter(const Named<GutterSpec>& gutter);
  void add_pumps();
  LineFlows::Line line_channels(const std::string& line);
  void add_tank_agents();
  std::vector<std::string> drawing_names() const;
  ChannelId water_permit_of(const std::string& device, const DrawSpec& draw);
  // assemble_power.cpp
  void add_power();
  void add_battery_agents();
  void add_loads();
  ChannelId power_permit_of(const std::string& device, const DrawSpec& draw);
  ChannelId charge_above(double share);
  // assemble_sensors.cpp
  void add_sensors();
  void add_sensor(const Named<SensorSpec>& sensor);
  Input wetness_of(const Named<SensorSpec>& sensor);
  int light_place_of(const SensorSpec& sensor) const;
  void add_polls(const Named<SensorSpec>& sensor);
  // assemble_wetting.cpp
  void add_pads();
  void run_off_roof(const Facet& facet, NodeId film);
  NodeId water_off_slope(GutterSpec::Slope slope);
  void sprinkle_roof(const Named<MistSpec>& line, int bay, const std::shared_ptr<const SprayTable>& table);
  // assemble_mist.cpp
  void add_mist();
  std::vector<Landing> landings(const MistSpec& line, int bay) const;
  int floor_place(int bay) const;
  std::vector<Input> spray_history(const Named<MistSpec>& line, int bay,
                                   const std::shared_ptr<const SprayTable>& table);
  void spray_bay(const Named<MistSpec>& line, int bay, const std::shared_ptr<const SprayTable>& table);
  // assemble_control.cpp
  void add_controls();
  const SensorParts& sensor(const std::string& name) const;
  ChannelId demand_of(const std::string& control, const std::vector<std::string>& drives);
  ChannelId duty_of(const std::string& control);
  ControlTerms terms_of(const std::string& control, const std::string& sensor_name, double from_s, double until_s,
                        IfLost lost);
  void add_on_off(const std::string& name, const ThermostatSpec& control, std::string (*words)(double));
  void add_staged(const std::string& name, const StagedSpec& control);
  void add_proportional(const std::string& name, const ProportionalSpec& control);
  void add_weather_diary();
  // assemble_rules.cpp
  struct Spell {
    Tick from, until;
  };
  void add_rules();
  void add_rule(const Named<RuleSpec>& rule);
  std::vector<StandingRule::Test> reading_tests(const RuleSpec& rule) const;
  void add_outdoor_tests(const Named<RuleSpec>& rule, std::vector<StandingRule::Test>& tests);
  ChannelId any_wet(const Named<RuleSpec>& rule);
  std::vector<Spell> parts_of_day(PartOfDay part, Tick before_dusk) const;
  void add_forecast();
  // assemble_switching.cpp
  /// How a sort of device is spoken of.
  struct Sort {
    const char *starts, *stops, *stuck_off, *stuck_on;
    bool stays = false;      ///< where it stands, without power
    bool blown_off = false;  ///< as it fails off: by wind, that needs no motor
  };
  void add_device_agents();
  /// What a device draws while it runs, and by which permit it may.
  struct Load {
    double power_w = 0.0;
    ChannelId permit;
  };
  void add_device(const Sort& sort, const std::string& name, const SwitchingSpec& switching, Load load,
                  std::vector<Device::Need> needs, Device::Output position);
  ChannelId device_fault(const std::string& name);
  void add_stirring();
  // assemble_people.cpp
  void add_people();
  void add_visit(const Named<VisitSpec>& visit);
  void add_response(const Named<ResponseSpec>& response);
  void hands_on(const std::vector<std::string>& names, bool open, std::vector<HandMove>& out);
  std::vector<DailyWindow> presence() const;
  // assemble_spares.cpp
  void add_spares();
  void add_spare_alarms();
  void add_second_thermostats();
  void add_wax_openers();
  NodeId spare_thermometer(const std::string& name, int bay, double height_m, double time_constant_s);
  void add_spare_alarm(const std::string& name, const std::string& sees, const Input& sign, const TwoLimits& limits);
  // assemble_hazards.cpp
  void add_hazards();
  HailStrike::Parameters strike_on(const Facet& facet, const HailSpec& hail) const;
  bool hail_may_break(const Facet& facet, const HailSpec& hail) const;
  void add_hail(const HailSpec& hail, ChannelId hailing);
  void add_holes();
  double cloth_area_m2(const ShadeSpec& shade) const;
  void add_wind_damage(ChannelId storm_until);
  // assemble_faults.cpp
  void add_faults();
  ChannelId fault_cause(ChannelId fault, double healthy, const std::string& cause);
  void join_fault_causes();

  template <class A>
  void add_agent(typename A::Parameters parameters) {
    out_.plan.agents.push_back(std::make_unique<PlanOf<A>>(std::move(parameters)));
  }

  void touch_air(const Surface& surface, NodeId air);
  void receive_sun(const std::string& name, NodeId node, std::size_t row);
  SurfaceFilm film_of(double tilt_rad, double length_m, double run_m) const;
  NodeId film_node(const std::string& name, double dry_heat_j_k, double start_k);
  void run_off(const std::string& name, NodeId from, double held_kg, const End& water, const End& energy,
               const char* path = "run-off");
  double bench_cover_share(const std::string& bench) const;
  const BenchSpec& bench(const std::string& name) const;
  ChannelId position_channel(const std::string& device, const std::string& sort, double at_rest = 0.0);
  NodeId air_at(int bay, double height_m) const;

  const PlanScenario& plan_;
  const ScenarioSpec& spec_;
  std::shared_ptr<const SiteTable> table_;
  const WeatherSeries& weather_;
  const bool with_spares_;
  HouseGraph graph_;
  Assembly out_;
  Start start_;
  double air_density_ = 1.0;        ///< of dry air at the run's mean outdoor temperature [kg/m3]
  double reference_density_ = 1.0;  ///< of moist air then, from which pressures are counted [kg/m3]
  AccountId sun_, motors_, outdoor_heat_, sky_, deep_soil_, rain_heat_, drained_heat_;
  AccountId outdoor_air_, outdoor_vapour_, rain_water_, drained_water_, panel_energy_, loads_, losses_, instruments_;
  std::vector<ChannelId> stirring_;   ///< per bay [m/s]
  std::vector<NodeId> cover_nodes_;   ///< per facet: its inner face
  std::vector<NodeId> outer_nodes_;   ///< per facet: its outer face, often the same
  std::map<int, NodeId> roof_films_;  ///< per sprinkled facet
  std::map<GutterSpec::Slope, std::vector<GutterParts>> gutters_;
  std::map<GutterSpec::Slope, NodeId> off_slopes_;  ///< water on its way down, where a line sprinkles
  std::vector<NodeId> cloth_nodes_;                 ///< per shade
  std::vector<ChannelId> cloth_drawn_;              ///< per shade
  std::map<std::string, NodeId> bench_nodes_;
  std::map<std::string, ExchangeId> watering_;                  ///< per plant group
  std::map<std::string, ChannelId> held_off_;                   ///< per device: by the grower's hand
  std::map<std::string, ChannelId> hand_;                       ///< per device: set by the grower
  std::map<std::string, HandMove> hand_moves_;                  ///< per name of such a channel
  std::map<std::string, std::vector<Device::Caller>> callers_;  ///< per device
  std::map<std::string, std::vector<Device::Forbid>> forbids_;  ///< per device
  std::set<std::string> graded_;                                ///< devices called by degrees
  std::map<std::string, ChannelId> device_faults_;
  std::map<ChannelId, FaultCauses::Parameters> fault_causes_;  ///< per fault channel that the run itself may set
  std::map<std::string, DailyWindow> hours_;                   ///< of controls that do not work all day
  std::map<std::string, ChannelId> duties_;                    ///< whether they are within them, where a device asks
  std::map<std::string, ChannelId> rule_holds_, leaves_wet_;
  std::map<std::string, ChannelId> mist_flow_, mist_spill_;
  std::vector<RunningSum::Part> loads_of_;    ///< what runs, its power [W], and what it may be shed by
  std::map<double, ChannelId> water_levels_;  ///< by content kept back [m3]
  std::map<double, ChannelId> power_levels_;  ///< by share of charge at which loads are shed
  std::map<double, ChannelId> charge_signs_;  ///< by share of charge that a rule asks for
  std::map<std::size_t, ChannelId> broken_;   ///< per facet that hail may break
  AccountId brought_;
  ExchangeId bringing_, lost_with_cells_;
  ChannelId leak_, cells_, uncovered_, away_, stays_until_, forecast_;
  ChannelId nothing_dried_;  ///< made by the first mist line
  ChannelId raining_, nothing_drawn_;
};

/// Water of a whole line at its own pump's pressure [kg/s].
double line_flow_kg_s(const MistSpec& line);

/// What a charge control hands on of the panel's power.
double controller_efficiency(const PowerSpec& power);

}  // namespace noonhouse
