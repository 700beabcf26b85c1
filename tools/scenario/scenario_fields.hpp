// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/water/tank_shape.hpp"
#include "tools/scenario/field_visitor.hpp"
#include "tools/scenario/scenario_spec.hpp"

/// The one list of fields of each parameter struct: it loads, checks, saves, and makes the schema.
namespace noonhouse {

void fields(FieldVisitor& v, ScenarioSpec& s);
void fields(FieldVisitor& v, RunSpec& s);
void fields(FieldVisitor& v, SiteSpec& s);
void fields(FieldVisitor& v, WeatherSpec& s);
void fields(FieldVisitor& v, InventedHeatwave& s);
void fields(FieldVisitor& v, InventedYear& s);
void fields(FieldVisitor& v, TypicalYearFile& s);
void fields(FieldVisitor& v, PlainWeatherFile& s);
void fields(FieldVisitor& v, HouseSpec& s);
void fields(FieldVisitor& v, BaySpec& s);
void fields(FieldVisitor& v, CoverSpec& s);
void fields(FieldVisitor& v, SheetSpec& s);
void fields(FieldVisitor& v, CoverPartSpec& s);
void fields(FieldVisitor& v, CourseSpec& s);
void fields(FieldVisitor& v, ObstacleSpec& s);
void fields(FieldVisitor& v, BlockSpec& s);
void fields(FieldVisitor& v, CrownSpec& s);
void fields(FieldVisitor& v, FloorSpec& s);
void fields(FieldVisitor& v, OpeningSpec& s);
void fields(FieldVisitor& v, FanSpec& s);
void fields(FieldVisitor& v, MistSpec& s);
void fields(FieldVisitor& v, PadSpec& s);
void fields(FieldVisitor& v, ShadeSpec& s);
void fields(FieldVisitor& v, BenchSpec& s);
void fields(FieldVisitor& v, PlantKindSpec& s);
void fields(FieldVisitor& v, PlantGroupSpec& s);
void fields(FieldVisitor& v, SensorSpec& s);
void fields(FieldVisitor& v, ThermostatSpec& s);
void fields(FieldVisitor& v, HumidistatSpec& s);
void fields(FieldVisitor& v, DeficitControlSpec& s);
void fields(FieldVisitor& v, StagedSpec& s);
void fields(FieldVisitor& v, StageSpec& s);
void fields(FieldVisitor& v, ProportionalSpec& s);
void fields(FieldVisitor& v, TimerSpec& s);
void fields(FieldVisitor& v, RuleSpec& s);
void fields(FieldVisitor& v, DripSpec& s);
void fields(FieldVisitor& v, GutterSpec& s);
void fields(FieldVisitor& v, TankSpec& s);
void fields(FieldVisitor& v, RefillSpec& s);
void fields(FieldVisitor& v, PumpSpec& s);
void fields(FieldVisitor& v, PowerSpec& s);
void fields(FieldVisitor& v, GrowerSpec& s);
void fields(FieldVisitor& v, VisitSpec& s);
void fields(FieldVisitor& v, WindowSpec& s);
void fields(FieldVisitor& v, ResponseSpec& s);
void fields(FieldVisitor& v, WeatherHazardSpec& s);
void fields(FieldVisitor& v, HailSpec& s);
void fields(FieldVisitor& v, GustsSpec& s);
void fields(FieldVisitor& v, CloudburstSpec& s);
void fields(FieldVisitor& v, FrostNightSpec& s);
void fields(FieldVisitor& v, HazeSpec& s);
void fields(FieldVisitor& v, FaultSpec& s);
void fields(FieldVisitor& v, PricesSpec& s);
void fields(FieldVisitor& v, PriceSpec& s);
void fields(FieldVisitor& v, PlanSpec& s);

/// How a device answers several calls and how long it takes to move; what it leaves of water, of charge for others.
void switching_fields(FieldVisitor& v, SwitchingSpec& s, const char* takes);
void water_draw_fields(FieldVisitor& v, DrawSpec& s);
void power_draw_fields(FieldVisitor& v, DrawSpec& s);

/// A name in the lists of what can be called, forbidden or moved by hand.
NameOptions a_device();

/// The tank's measures.
TankShape tank_shape_of(const TankSpec& s);

/// The sides of a house by the words that files use.
std::vector<Choice<WallSide>> side_choices();

}  // namespace noonhouse
