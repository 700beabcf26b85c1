// SPDX-License-Identifier: Apache-2.0
// Fields of bad weather and of failures.
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

void day_field(FieldVisitor& v, int& day) {
  v.integer("day", day, {.minimum = 1, .maximum = 40000, .about = "of the run, from 1"});
}
void when_fields(FieldVisitor& v, int& day, double& at_s, double& lasts_s, const char* lasts) {
  day_field(v, day);
  v.time_of_day("at", at_s, {.about = "when it begins"});
  v.quantity("lasts", lasts_s, Dimension::time,
             {.minimum = 60, .maximum = 86400, .default_text = lasts, .about = "how long"});
}

}  // namespace

void fields(FieldVisitor& v, WeatherHazardSpec& s) {
  v.alternatives("kind", s.what, {"hail", "gusts", "cloudburst", "frost night", "smoke or dust"},
                 {.about = "hail strikes the cover; the others change the weather of the run"});
}

void fields(FieldVisitor& v, HailSpec& s) {
  when_fields(v, s.day, s.at_s, s.lasts_s, "10 min");
  v.quantity("stone", s.stone_m, Dimension::length,
             {.minimum = 0.002, .maximum = 0.12, .about = "across", .unit = "mm"});
  v.quantity("hits", s.hits_m2_s, Dimension::none,
             {.minimum = 0,
              .maximum = 1000,
              .about = "stones on a level square metre in a second; absent: 2 % of 1 mm of ice a minute"});
}

void fields(FieldVisitor& v, GustsSpec& s) {
  when_fields(v, s.day, s.at_s, s.lasts_s, "30 min");
  v.quantity("speed", s.speed_m_s, Dimension::speed,
             {.minimum = 1, .maximum = 90, .about = "of the gusts at the house"});
}

void fields(FieldVisitor& v, CloudburstSpec& s) {
  when_fields(v, s.day, s.at_s, s.lasts_s, "20 min");
  v.quantity("rain", s.rain_m, Dimension::rain_depth,
             {.minimum = 0, .maximum = 0.5, .about = "that falls in that time"});
}

void fields(FieldVisitor& v, FrostNightSpec& s) {
  v.integer("day", s.day, {.minimum = 1, .maximum = 40000, .about = "of the run, on whose evening it begins"});
  v.quantity("lowest", s.lowest_k, Dimension::temperature,
             {.minimum = 223.15, .maximum = 283.15, .about = "outdoor air before the sun rises"});
}

void fields(FieldVisitor& v, HazeSpec& s) {
  day_field(v, s.day);
  v.integer("days", s.days, {.minimum = 1, .maximum = 366, .default_text = "1", .about = "how many days"});
  v.number("strength", s.strength,
           {.minimum = 0, .maximum = 5, .default_text = "0.8", .about = "vertical optical depth of smoke or dust"});
}

void fields(FieldVisitor& v, FaultSpec& s) {
  v.choice("what", s.what,
           {{"stuck off", FailureKind::stuck_off},
            {"stuck on", FailureKind::stuck_on},
            {"stuck as it stands", FailureKind::stuck_as_it_stands},
            {"line cut", FailureKind::line_cut},
            {"reads low", FailureKind::reads_low},
            {"reads high", FailureKind::reads_high},
            {"reads frozen", FailureKind::reads_frozen},
            {"in the spray", FailureKind::in_the_spray},
            {"radio lost", FailureKind::radio_lost},
            {"reboots", FailureKind::reboots},
            {"cell dead", FailureKind::cell_dead},
            {"panel covered", FailureKind::panel_covered},
            {"tank leaks", FailureKind::tank_leaks},
            {"grower away", FailureKind::grower_away}},
           {.about = "devices stick, lines are cut, sensors mislead, controls reboot, supplies fail"});
  v.name_of("of", s.of,
            {.of = {"openings", "fans", "mist_lines", "pads", "drip_lines", "shades", "sensors", "thermostats",
                    "humidistats", "deficit_controls", "staged_controls", "proportional_controls"},
             .also = {"tank", "battery", "panel", "grower"},
             .about = "what fails"});
  v.integer("day", s.day, {.minimum = 1, .maximum = 40000, .about = "of the run, from 1"});
  v.time_of_day("at", s.at_s, {.about = "when it fails"});
  v.quantity("lasts", s.lasts_s, Dimension::time,
             {.minimum = 0,
              .maximum = 40000.0 * 86400.0,
              .default_text = s.what == FailureKind::reboots ? "5 min" : "0 s",
              .about = "until it is put right; 0 s: never"});
  v.quantity("by", s.by_k, Dimension::temperature_difference,
             {.minimum = 0, .maximum = 30, .default_text = "5 K", .about = "how much a sensor reads low or high"});
  v.quantity("leak", s.leak_m3_s, Dimension::volume_flow,
             {.minimum = 0, .maximum = 1, .default_text = "60 L/h", .about = "what a leaking tank loses"});
  v.quantity("share", s.share, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "25 %",
              .about = "what is left: of a battery's cells; a covered panel gives nothing"});
}

}  // namespace noonhouse
