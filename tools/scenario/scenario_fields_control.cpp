// SPDX-License-Identifier: Apache-2.0
// Fields of instruments, controls and rules.
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {

NameOptions a_device() {
  return {.of = {"openings", "fans", "mist_lines", "pads", "drip_lines", "shades"},
          .about = "an opening, fan, mist line, pad, drip line or shade"};
}

namespace {

void drives_field(FieldVisitor& v, std::vector<std::string>& drives) {
  v.names_of("drives", drives, a_device(), {.required = true, .minimum_count = 1, .about = "what it switches"});
}

void hours_fields(FieldVisitor& v, double& from_s, double& until_s) {
  v.time_of_day("from", from_s, {.default_text = "00:00", .about = "works from this time of day"});
  v.time_of_day("until", until_s,
                {.default_text = "24:00", .about = "to this time of day; the same as from: the whole day"});
}

void least_fields(FieldVisitor& v, double& on_s, double& off_s) {
  v.quantity("least_on", on_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "1 min", .about = "stays on at least this long"});
  v.quantity("least_off", off_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "1 min", .about = "stays off at least this long"});
}

void if_lost_field(FieldVisitor& v, IfLost& s) {
  v.choice("if_reading_is_lost", s, {{"stops", IfLost::stops}, {"holds", IfLost::holds}, {"runs", IfLost::runs}},
           {.default_text = "stops", .about = "what it does while its sensor gives no reading"});
}

/// Everything of an on/off control but its two limits.
void on_off_fields(FieldVisitor& v, ThermostatSpec& s) {
  least_fields(v, s.least_on_s, s.least_off_s);
  v.quantity("pulse_on", s.pulse_on_s, Dimension::time,
             {.minimum = 0,
              .maximum = 86400,
              .default_text = "0 s",
              .about = "runs in pulses of this length while it calls; 0 s: without pause"});
  v.quantity("pulse_off", s.pulse_off_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "0 s", .about = "pause between two pulses"});
  hours_fields(v, s.from_s, s.until_s);
  if_lost_field(v, s.if_lost);
  drives_field(v, s.drives);
}

QuantityOptions reading_limit(const char* about) { return {.minimum = 253.15, .maximum = 343.15, .about = about}; }

}  // namespace

void switching_fields(FieldVisitor& v, SwitchingSpec& s, const char* takes) {
  v.choice(
      "heeds", s.heeds, {{"any", CallsHeeded::any}, {"all", CallsHeeded::all}, {"first", CallsHeeded::first}},
      {.default_text = "any",
       .about = "of several controls: the one that asks most; all together; or the first at work, in the order on/off, "
                "staged and proportional controls, timers, rules. A hand on it goes before all"});
  v.quantity("takes", s.takes_s, Dimension::time,
             {.minimum = 0, .maximum = 7200, .default_text = "0 s", .about = takes});
}

void water_draw_fields(FieldVisitor& v, DrawSpec& s) {
  v.quantity("keeps_back", s.keeps_back_m3, Dimension::volume,
             {.minimum = 0,
              .maximum = 1000,
              .default_text = "0 L",
              .about = "content of the tank below which it does not draw and leaves the rest to other draws"});
}

void power_draw_fields(FieldVisitor& v, DrawSpec& s) {
  v.quantity("sheds_at", s.sheds_at, Dimension::share,
             {.minimum = 0,
              .maximum = 0.95,
              .default_text = "0 %",
              .about = "charge at which it is switched off before the rest, of what can be used; 0 %: with all loads"});
}

void fields(FieldVisitor& v, SensorSpec& s) {
  v.choice("measures", s.measures,
           {{"temperature", Measures::temperature}, {"humidity", Measures::humidity}, {"deficit", Measures::deficit}},
           {.default_text = "temperature", .about = "of the air where it hangs; deficit: of vapour pressure"});
  v.name_of("bay", s.bay, {.of = {"house.bays"}, .about = "where it hangs"});
  v.quantity("height", s.height_m, Dimension::length, {.minimum = 0, .about = "above the floor"});
  v.quantity("time_constant", s.time_constant_s, Dimension::time,
             {.minimum = 1, .maximum = 7200, .default_text = "90 s", .about = "lag of the instrument"});
  v.quantity("takes_sun", s.sun_share, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "0 %",
              .about = "light that warms it: 0 % where air is drawn through its shield, 2 % in a louvred screen, 10 % "
                       "bare and white, 25 % bare and dark (common practice, no source)"});
  v.name_of(
      "light_of", s.light_of,
      {.of = {"benches"}, .also = {"floor"}, .default_text = "floor", .about = "the place whose light falls on it"});
  v.names_of("in_spray_of", s.sprayed_by, {.of = {"mist_lines"}, .about = "a mist line"},
             {.about = "mist lines whose spray wets it; absent: it hangs out of the spray"});
  v.quantity("dries_in", s.dries_in_s, Dimension::time,
             {.minimum = 10,
              .maximum = 7200,
              .default_text = "4 min",
              .about = "time constant of drying once the spray stops (common practice, no source)"});
  v.quantity("offset", s.offset_k, Dimension::temperature_difference,
             {.minimum = -30, .maximum = 30, .default_text = "0 K", .about = "a thermometer reads this much too high"});
  v.quantity(
      "humidity_offset", s.offset_share, Dimension::share,
      {.minimum = -0.5, .maximum = 0.5, .default_text = "0 %", .about = "a hygrometer reads this much too high"});
  v.quantity("step", s.step_k, Dimension::temperature_difference,
             {.minimum = 0, .maximum = 10, .default_text = "0 K", .about = "a thermometer reads in steps of this"});
  v.quantity("humidity_step", s.step_share, Dimension::share,
             {.minimum = 0, .maximum = 0.5, .default_text = "0 %", .about = "a hygrometer reads in steps of this"});
  v.quantity("polled_every", s.polled_every_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "0 s", .about = "0 s: wired, read without pause"});
  v.quantity("dropouts", s.dropouts, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "0 %", .about = "polls that do not come through by radio"});
  v.quantity("lost_after", s.lost_after_s, Dimension::time,
             {.minimum = 1,
              .maximum = 604800,
              .default_text = "10 min",
              .about = "without a reading this long it counts as lost"});
}

void fields(FieldVisitor& v, ThermostatSpec& s) {
  v.name_of("sensor", s.sensor,
            {.of = {"sensors"}, .having = {"measures", "temperature"}, .about = "a temperature sensor"});
  v.quantity("starts_at", s.starts_at, Dimension::temperature, reading_limit("reading at which it switches on"));
  v.quantity("stops_at", s.stops_at, Dimension::temperature,
             reading_limit("reading at which it switches off: below starts_at against heat, above it against cold"));
  on_off_fields(v, s);
}

void fields(FieldVisitor& v, HumidistatSpec& s) {
  v.name_of("sensor", s.sensor, {.of = {"sensors"}, .having = {"measures", "humidity"}, .about = "a humidity sensor"});
  v.quantity("starts_at", s.starts_at, Dimension::share,
             {.minimum = 0, .maximum = 1, .about = "reading at which it switches on"});
  v.quantity("stops_at", s.stops_at, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .about = "reading at which it switches off: below starts_at against damp, above it against dry air"});
  on_off_fields(v, s);
}

void fields(FieldVisitor& v, DeficitControlSpec& s) {
  v.name_of("sensor", s.sensor,
            {.of = {"sensors"}, .having = {"measures", "deficit"}, .about = "a sensor that measures deficit"});
  v.quantity("starts_at", s.starts_at, Dimension::pressure,
             {.minimum = 0, .maximum = 20000, .about = "deficit at which it switches on"});
  v.quantity("stops_at", s.stops_at, Dimension::pressure,
             {.minimum = 0, .maximum = 20000, .about = "deficit at which it switches off"});
  on_off_fields(v, s);
}

void fields(FieldVisitor& v, StagedSpec& s) {
  v.name_of("sensor", s.sensor,
            {.of = {"sensors"}, .having = {"measures", "temperature"}, .about = "a temperature sensor"});
  v.list("stages", s.stages,
         {.required = true, .minimum_count = 1, .maximum_count = 20, .about = "from the first to join to the last"});
  v.quantity("delay", s.delay_s, Dimension::time,
             {.minimum = 0,
              .maximum = 86400,
              .default_text = "2 min",
              .about = "a stage joins when it has been asked for this long"});
  least_fields(v, s.least_on_s, s.least_off_s);
  hours_fields(v, s.from_s, s.until_s);
  if_lost_field(v, s.if_lost);
}

void fields(FieldVisitor& v, StageSpec& s) {
  v.quantity("starts_at", s.starts_at_k, Dimension::temperature, reading_limit("reading at which it joins"));
  v.quantity("stops_at", s.stops_at_k, Dimension::temperature,
             reading_limit("reading at which it leaves, below starts_at"));
  drives_field(v, s.drives);
}

void fields(FieldVisitor& v, ProportionalSpec& s) {
  v.name_of("sensor", s.sensor,
            {.of = {"sensors"}, .having = {"measures", "temperature"}, .about = "a temperature sensor"});
  v.quantity("begins_at", s.begins_k, Dimension::temperature, reading_limit("reading at which it begins to open"));
  v.quantity("full_at", s.full_k, Dimension::temperature,
             reading_limit("reading at which it is fully open; below begins_at it acts against cold"));
  v.quantity("every", s.every_s, Dimension::time,
             {.minimum = 1, .maximum = 86400, .default_text = "2 min", .about = "how often it acts"});
  v.quantity("dead_step", s.dead_step, Dimension::share,
             {.minimum = 0, .maximum = 1, .default_text = "5 %", .about = "changes smaller than this are not made"});
  hours_fields(v, s.from_s, s.until_s);
  if_lost_field(v, s.if_lost);
  drives_field(v, s.drives);
}

void fields(FieldVisitor& v, TimerSpec& s) {
  v.time_of_day("from", s.from_s, {.about = "works from this time of day"});
  v.time_of_day("until", s.until_s, {.about = "to this time of day; the same as from: the whole day"});
  v.quantity("on_for", s.on_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "24 h", .about = "length of one pulse"});
  v.quantity(
      "every", s.every_s, Dimension::time,
      {.minimum = 1, .maximum = 86400, .default_text = "24 h", .about = "from the start of one pulse to the next"});
  drives_field(v, s.drives);
}

namespace {

/// What a rule may ask of an instrument.
void reading_tests(FieldVisitor& v, RuleSpec& s) {
  v.name_of("sensor", s.sensor,
            {.of = {"sensors"}, .also = {"none"}, .default_text = "none", .about = "whose reading the limits are for"});
  v.quantity("warmer_than", s.warmer_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 373.15, .about = "the sensor reads more; holds on down to 1 K less"});
  v.quantity("colder_than", s.colder_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 373.15, .about = "the sensor reads less; holds on up to 1 K more"});
  v.quantity("damper_than", s.damper, Dimension::share,
             {.minimum = 0, .maximum = 1, .about = "the sensor reads more; holds on down to 3 % less"});
  v.quantity("drier_than", s.drier_than, Dimension::share,
             {.minimum = 0, .maximum = 1, .about = "the sensor reads less; holds on up to 3 % more"});
  v.quantity("deficit_above", s.deficit_above_pa, Dimension::pressure,
             {.minimum = 0, .maximum = 20000, .about = "the sensor reads more; holds on down to 0.1 kPa less"});
  v.quantity("deficit_below", s.deficit_below_pa, Dimension::pressure,
             {.minimum = 0, .maximum = 20000, .about = "the sensor reads less; holds on up to 0.1 kPa more"});
}

/// What it may ask of the weather and of the stores.
void outdoor_tests(FieldVisitor& v, RuleSpec& s) {
  v.flag("raining", s.raining, {.default_text = "false", .about = "it rains"});
  v.quantity("gusts_above", s.wind_above_m_s, Dimension::speed,
             {.minimum = 0.5, .maximum = 80, .about = "gusts at the house; holds on down to four fifths"});
  v.quantity("outdoors_above", s.outdoors_above_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 343.15, .about = "outdoor air; holds on down to 1 K less"});
  v.quantity("outdoors_below", s.outdoors_below_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 343.15, .about = "outdoor air; holds on up to 1 K more"});
  v.quantity("forecast_above", s.forecast_above_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 343.15, .about = "the day's high as told at its midnight"});
  v.quantity("sun_above", s.sun_above_w_m2, Dimension::irradiance,
             {.minimum = 1, .maximum = 1500, .about = "sunlight on level ground; holds on down to four fifths"});
  v.quantity("sun_below", s.sun_below_w_m2, Dimension::irradiance,
             {.minimum = 1, .maximum = 1500, .about = "sunlight on level ground; holds on up to five fourths"});
  v.quantity("tank_below", s.tank_below_m3, Dimension::volume,
             {.minimum = 0, .maximum = 1000, .about = "a float; holds on up to a tenth more"});
  v.quantity("charge_below", s.charge_below, Dimension::share,
             {.minimum = 0,
              .maximum = kRuleChargeAtMost,
              .about = "of what the battery can give just now, warm or cold; holds on up to 5 % more, and charging "
                       "tapers off at 97 %"});
  v.names_of("wet_leaves_of", s.wet_leaves, {.of = {"plants"}, .about = "a group of plants"},
             {.about = "any of their leaves are wet"});
}

}  // namespace

void fields(FieldVisitor& v, RuleSpec& s) {
  reading_tests(v, s);
  outdoor_tests(v, s);
  v.choice("during", s.during, {{"any time", PartOfDay::any}, {"night", PartOfDay::night}, {"day", PartOfDay::day}},
           {.default_text = "any time", .about = "night and day by the sun"});
  v.quantity("before_dusk", s.before_dusk_s, Dimension::time,
             {.minimum = 0, .maximum = 43200, .default_text = "0 s", .about = "night begins this long before sunset"});
  hours_fields(v, s.from_s, s.until_s);
  v.quantity("after", s.after_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "0 s", .about = "must be so for this long first"});
  v.quantity("least", s.least_hold_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "1 min", .about = "holds at least this long"});
  v.names_of("forbids", s.forbids, a_device(), {.about = "what it holds back, whatever calls"});
  v.names_of("calls", s.calls, a_device(), {.about = "what it calls"});
}

}  // namespace noonhouse
