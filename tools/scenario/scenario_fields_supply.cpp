// SPDX-License-Identifier: Apache-2.0
// Fields of water, power and prices.
#include <fmt/format.h>

#include <algorithm>

#include "models/power/battery.hpp"
#include "models/power/battery_kind.hpp"
#include "models/power/panel.hpp"
#include "models/properties/constants.hpp"
#include "models/water/tank_shape.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {

TankShape tank_shape_of(const TankSpec& s) {
  return {s.form == TankForm::box ? TankShape::Plan::box : TankShape::Plan::round, s.capacity_m3, s.height_m};
}

void fields(FieldVisitor& v, DripSpec& s) {
  v.names_of("waters", s.waters, {.of = {"plants"}, .about = "a group of plants"},
             {.required = true, .minimum_count = 1, .about = "whose pots it waters, by the ground they cover"});
  v.quantity("flow", s.flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "of all its drippers together", .unit = "L/h"});
  v.quantity("pump_power", s.pump_power_w, Dimension::power,
             {.minimum = 0, .default_text = "0 W", .about = "0 W: by gravity from the tank"});
  switching_fields(v, s.switching, "from shut to full flow");
  power_draw_fields(v, s.draw);
  water_draw_fields(v, s.draw);
}

void fields(FieldVisitor& v, GutterSpec& s) {
  v.choice("drains", s.drains, {{"front roof", GutterSpec::Slope::front}, {"back roof", GutterSpec::Slope::back}},
           {.about = "the slope whose rain it takes, and what is sprinkled on it; several share it evenly"});
  v.quantity("runoff", s.runoff, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "90 %",
              .about = "rain on the slope that reaches the gutter (smooth roof, BS EN 16941-1 table 2)"});
  v.quantity("filter_passes", s.filter_passes, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "100 %",
              .about = "water that passes the filter: 100 % without one, about 90 % with (BS EN 16941-1)"});
  v.quantity("carries", s.carries_m3_s, Dimension::volume_flow,
             {.minimum = 0,
              .exclusive_minimum = true,
              .default_text = "1 L/s",
              .about = "most that gutter and downpipe take; more overshoots (100 mm half-round, from memory)"});
  v.quantity("blocked", s.blocked, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "of its screen, by leaves"});
  v.quantity(
      "first_flush", s.first_flush_m, Dimension::rain_depth,
      {.minimum = 0, .maximum = 0.05, .default_text = "0 mm", .about = "first water off the slope that is led aside"});
  v.quantity("flush_empties_in", s.flush_empties_s, Dimension::time,
             {.minimum = 600,
              .maximum = 30.0 * 86400.0,
              .default_text = "24 h",
              .about = "time constant at which what was led aside drips away"});
}

void fields(FieldVisitor& v, TankSpec& s) {
  v.quantity("capacity", s.capacity_m3, Dimension::volume, {.minimum = 0.001, .maximum = 1000, .about = "brim full"});
  v.quantity("starts_with", s.start_m3, Dimension::volume, {.minimum = 0, .about = "water in it when the run starts"});
  v.quantity("low_mark", s.low_m3, Dimension::volume, {.minimum = 0, .about = "pump cuts out here"});
  v.quantity("restart_mark", s.restart_m3, Dimension::volume, {.minimum = 0, .about = "pump may start again here"});
  v.choice("form", s.form, {{"cylinder", TankForm::cylinder}, {"box", TankForm::box}},
           {.default_text = "cylinder", .about = "upright; a box with a square base"});
  v.quantity("height", s.height_m, Dimension::length,
             {.minimum = 0.05, .maximum = 20, .default_text = "0.9 m", .about = "of the water when brim full"});
  const bool known = s.capacity_m3 > 0.0 && s.height_m > 0.0;
  const std::string wall = fmt::format("{:.4g} m2", known ? tank_shape_of(s).wall_area_m2() : 1.0);
  v.quantity("wall_area", s.wall_area_m2, Dimension::area,
             {.minimum = 0.01,
              .maximum = 10000,
              .default_text = wall.c_str(),
              .about = "of the tank, losing and gaining heat outdoors in shade; by its form unless given"});
  v.quantity("wall_u", s.wall_u_w_m2_k, Dimension::heat_transfer,
             {.minimum = 0, .maximum = 50, .default_text = "6 W/m2/K", .about = "of the tank's wall"});
  v.quantity("open", s.open_share, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "0 %",
              .about = "of its surface that is open to the air, where water evaporates"});
  v.text("overflows_to", s.overflows_to, {.default_text = "the ground", .about = "where what is too much goes"});
}

void fields(FieldVisitor& v, RefillSpec& s) {
  v.quantity("called_at", s.called_at_m3, Dimension::volume, {.minimum = 0, .about = "content at which it is called"});
  v.quantity("comes_after", s.comes_after_s, Dimension::time,
             {.minimum = 0, .maximum = 30.0 * 86400.0, .default_text = "1 d", .about = "from the call to the water"});
  v.quantity("brings", s.brings_m3, Dimension::volume,
             {.minimum = 0, .exclusive_minimum = true, .about = "at most; not beyond the brim"});
  v.quantity("water", s.water_k, Dimension::temperature,
             {.minimum = 273.15, .maximum = 333.15, .default_text = "15 degC", .about = "how warm what comes is"});
  v.number("price", s.price, {.minimum = 0, .default_text = "0", .about = "of one visit, in the prices' currency"});
}

void fields(FieldVisitor& v, PumpSpec& s) {
  v.quantity("shut_off", s.shut_off_pa, Dimension::pressure,
             {.minimum = 100, .maximum = 5e7, .about = "pressure at which it delivers nothing"});
  v.quantity("most_flow", s.most_flow_m3_s, Dimension::volume_flow,
             {.minimum = 0, .exclusive_minimum = true, .about = "what it delivers against no pressure"});
  v.quantity("power", s.power_w, Dimension::power, {.minimum = 0, .about = "electric, when any of its lines runs"});
  v.quantity("lift", s.lift_m, Dimension::length,
             {.minimum = -50,
              .maximum = 100,
              .default_text = "1 m",
              .about = "from the water in the half full tank up to the nozzles"});
  v.quantity("pipe_length", s.pipe_length_m, Dimension::length,
             {.minimum = 0, .maximum = 10000, .default_text = "10 m", .about = "from tank to nozzles"});
  v.quantity("pipe_bore", s.pipe_bore_m, Dimension::length,
             {.minimum = 0.001, .maximum = 1, .default_text = "10 mm", .about = "inside"});
  v.number("fittings", s.fittings,
           {.minimum = 0,
            .maximum = 1000,
            .default_text = "10",
            .about = "loss of bends, valves and filter, in velocity heads (common practice, no source)"});
}

namespace {

void panel_fields(FieldVisitor& v, PowerSpec& s) {
  v.quantity("panel_area", s.panel_area_m2, Dimension::area, {.minimum = 0, .maximum = 1000, .about = "of the cells"});
  v.quantity("panel_efficiency", s.panel_efficiency, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "19 %", .about = "at 25 degC cell temperature, with wiring"});
  v.quantity("panel_slope", s.panel_slope_rad, Dimension::angle,
             {.minimum = 0, .maximum = kTurn / 4, .default_text = "30 deg", .about = "from level"});
  v.quantity("panel_faces", s.panel_faces_rad, Dimension::angle,
             {.minimum = 0, .maximum = kTurn, .default_text = "180 deg", .about = "clockwise from north"});
  v.quantity("panel_derate", s.panel_derate_per_k, Dimension::per_temperature,
             {.minimum = -0.02, .maximum = 0, .default_text = "-0.4 %/K", .about = "power lost with cell temperature"});
  v.quantity(
      "panel_noct", s.panel_noct_k, Dimension::temperature,
      {.minimum = 293.15, .maximum = 353.15, .default_text = "45 degC", .about = "nominal operating cell temperature"});
  v.quantity("panel_soiling", s.panel_soiling, Dimension::share,
             {.minimum = 0, .maximum = 0.95, .default_text = "3 %", .about = "light that dirt on it takes up"});
  v.quantity("panel_east", s.panel_east_m, Dimension::length,
             {.minimum = -1000, .maximum = 1000, .default_text = "0 m", .about = "of its middle from the house's"});
  v.quantity("panel_north", s.panel_north_m, Dimension::length,
             {.minimum = -1000, .maximum = 1000, .default_text = "0 m", .about = "of its middle from the house's"});
  v.quantity("panel_height", s.panel_height_m, Dimension::length,
             {.minimum = 0, .maximum = 50, .about = "of its middle, where obstacles shade it; absent: on the ridge"});
}

std::vector<Choice<std::string>> kind_choices() {
  std::vector<Choice<std::string>> out;
  for (const BatteryKind& kind : battery_kinds()) out.push_back({kind.name, kind.name});
  return out;
}

void battery_fields(FieldVisitor& v, PowerSpec& s) {
  v.choice("battery_kind", s.battery_kind, kind_choices(),
           {.default_text = "lithium iron phosphate", .about = "of the library; its values hold unless given"});
  const BatteryKind* found = find_battery_kind(s.battery_kind);
  const BatteryKind& kind = found != nullptr ? *found : battery_kinds().front();
  const auto percent = [](double share) { return fmt::format("{:.6g} %", 100.0 * share); };
  v.quantity("battery", s.battery_j, Dimension::energy,
             {.minimum = 1, .about = "it holds when full and warm", .unit = "Wh"});
  v.name_of("battery_stands", s.battery_stands,
            {.of = {"house.bays"},
             .also = {"outdoors"},
             .default_text = "outdoors",
             .about = "whose air it is as warm as: outdoors in shade, or low in a bay"});
  v.quantity("battery_starts_at", s.battery_start, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "90 %",
              .about = "charge when the run starts, of what it holds when full and warm"});
  const std::string cut_off = percent(kind.cut_off_share());
  v.quantity("cut_off_at", s.cut_off, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = cut_off.c_str(),
              .about = "loads are cut off here, of what can be used"});
  const std::string reconnect = percent(std::min(kFillsTo, s.cut_off + 0.15));
  v.quantity("reconnect_at", s.reconnect, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = reconnect.c_str(),
              .about = "loads come back here, of what can be used"});
  const std::string charging = percent(kind.charge_efficiency.value);
  v.quantity("charge_efficiency", s.charge_efficiency, Dimension::share,
             {.minimum = 0.1, .maximum = 1, .default_text = charging.c_str(), .about = "of charging"});
  const std::string discharging = percent(kind.discharge_efficiency.value);
  v.quantity("discharge_efficiency", s.discharge_efficiency, Dimension::share,
             {.minimum = 0.1, .maximum = 1, .default_text = discharging.c_str(), .about = "of discharging"});
}

}  // namespace

void fields(FieldVisitor& v, PowerSpec& s) {
  panel_fields(v, s);
  v.choice("charge_control", s.charge_control,
           {{"tracking", ChargeControl::tracking}, {"switching", ChargeControl::switching}},
           {.default_text = "tracking",
            .about = "follows the panel's best voltage, or ties the panel to the battery's and loses the rest"});
  battery_fields(v, s);
  v.quantity("standby", s.standby_w, Dimension::power,
             {.minimum = 0, .default_text = "2 W", .about = "controls and sensors, always"});
  v.quantity("inverter_standby", s.inverter_standby_w, Dimension::power,
             {.minimum = 0, .default_text = "0 W", .about = "of an inverter, while loads may draw; 0 W: none"});
  v.quantity(
      "inverter_efficiency", s.inverter_efficiency, Dimension::share,
      {.minimum = 0.3, .maximum = 1, .default_text = "100 %", .about = "of the inverter that feeds the devices"});
}

void fields(FieldVisitor& v, PricesSpec& s) {
  v.text("currency", s.currency, {.default_text = "", .about = "such as EUR"});
  v.number("water", s.water_m3, {.minimum = 0, .default_text = "0", .about = "of a cubic metre that is brought"});
  v.quantity("season", s.season_s, Dimension::time,
             {.minimum = 86400,
              .maximum = 366.0 * 86400.0,
              .default_text = "120 d",
              .about = "days a year that are like the run"});
  v.named("parts", s.parts, {.about = "by the name of a device, control or sensor; also tank, panel and battery"});
}

void fields(FieldVisitor& v, PriceSpec& s) {
  v.number("price", s.buys, {.minimum = 0, .default_text = "0", .about = "to buy and fit it"});
  v.number("lasts", s.lasts_seasons, {.minimum = 0.1, .maximum = 100, .default_text = "10", .about = "in seasons"});
  v.number("a_season", s.a_season, {.minimum = 0, .default_text = "0", .about = "to keep it running"});
}

}  // namespace noonhouse
