// SPDX-License-Identifier: Apache-2.0
// Long because the sample has one field of every kind, and the tests share it.
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/located_yaml.hpp"

/// Parameter structs that use every kind of field, texts for them, and mistakes in such texts.
namespace noonhouse::field_sample {

enum class Side { roof, wall };

struct Probe {
  double height_m = 0.0;
  std::string bay;
};

inline void fields(FieldVisitor& v, Probe& s) {
  v.quantity("height", s.height_m, Dimension::length, {.default_text = "1.5 m", .about = "above the floor"});
  v.name_of("bay", s.bay, {.of = {"bays"}, .also = {"outside"}, .default_text = "outside", .about = "where it hangs"});
}

struct Hatch {
  double area_m2 = 0.0;
  double opens_to = 0.0;
  Side side = Side::wall;
  Probe probe;
};

inline void fields(FieldVisitor& v, Hatch& s) {
  v.quantity("area", s.area_m2, Dimension::area,
             {.minimum = 0.0, .exclusive_minimum = true, .maximum = 20.0, .about = "clear opening"});
  v.quantity("opens_to", s.opens_to, Dimension::share,
             {.minimum = 0.0, .maximum = 1.0, .default_text = "100 %", .about = "how far it opens"});
  v.choice("side", s.side, {{"roof", Side::roof}, {"wall", Side::wall}}, {.about = "where it is"});
  v.group("probe", s.probe, {.about = "what it follows"});
}

struct Bay {
  std::vector<Named<Hatch>> hatches;
  std::vector<double> heights_m;
};

inline void fields(FieldVisitor& v, Bay& s) {
  v.named("hatches", s.hatches, {.about = "openings that can be closed"});
  v.quantities("heights", s.heights_m, Dimension::length,
               {.minimum = 0.0, .maximum = 6.0, .about = "middle of a layer above the floor"}, {.about = "layers"});
}

struct Steady {
  double share = 0.0;
};
inline void fields(FieldVisitor& v, Steady& s) { v.quantity("at", s.share, Dimension::share, {.about = "output"}); }

struct Banded {
  double start_k = 0.0, band_k = 0.0;
};
inline void fields(FieldVisitor& v, Banded& s) {
  v.quantity("above", s.start_k, Dimension::temperature, {.about = "where it starts"});
  v.quantity("band", s.band_k, Dimension::temperature_difference, {.default_text = "2 K", .about = "until it is full"});
}

struct Rule {
  std::string hatch;
  std::variant<Steady, Banded> law;
};
inline void fields(FieldVisitor& v, Rule& s) {
  v.text("about", s.hatch, {.default_text = "", .about = "a note"});
  v.alternatives("law", s.law, {"steady", "banded"}, {.about = "how it decides"});
}

struct Place3 {
  double azimuth_rad = 0.0;
};
inline void fields(FieldVisitor& v, Place3& s) {
  v.quantity("azimuth", s.azimuth_rad, Dimension::angle, {.about = "from north, clockwise"});
}

struct Everything {
  std::string title;
  std::chrono::year_month_day first{};
  LocalTime start{};
  double utc_offset_s = 0.0, dusk_s = 0.0, emissivity = 0.0;
  int layers = 0;
  bool dry = false;
  std::optional<double> limit_k;
  std::optional<Place3> place;
  std::vector<Named<Bay>> bays;
  std::vector<Rule> rules;
  std::vector<std::string> notes;
};

inline void fields(FieldVisitor& v, Everything& s) {
  v.text("title", s.title, {.about = "one line"});
  v.date("first", s.first, {.default_text = "2025-07-14", .about = "first day"});
  v.date_time("start", s.start, {.default_text = "2025-07-14 00:00", .about = "second 0"});
  v.utc_offset("utc_offset", s.utc_offset_s, {.default_text = "-07:00", .about = "of the clock"});
  v.time_of_day("dusk", s.dusk_s, {.default_text = "20:15", .about = "when lamps go on"});
  v.number("emissivity", s.emissivity,
           {.minimum = 0.0, .maximum = 1.0, .default_text = "0.9", .about = "of the glazing"});
  v.integer("layers", s.layers, {.minimum = 1, .maximum = 9, .default_text = "3", .about = "of air"});
  v.flag("dry", s.dry, {.default_text = "false", .about = "no water at all"});
  v.quantity("limit", s.limit_k, Dimension::temperature, {.about = "where harm begins"});
  v.optional_group("place", s.place, {.about = "how it stands"});
  v.named("bays", s.bays, {.required = true, .minimum_count = 1, .about = "parts of the house"});
  v.list("rules", s.rules, {.about = "in order"});
  v.texts("notes", s.notes, {.about = "remarks"});
}

inline constexpr const char* kWhole = R"(title: "A house: small"
first: 2025-07-01
start: 2025-07-01 06:30
utc_offset: "+05:45"
dusk: 21:05:30
emissivity: 0.84
layers: 5
dry: true
limit: 100 degF
place: {azimuth: 170 deg}
bays:
  East side:
    hatches:
      ridge: {area: 4 ft2, side: roof, opens_to: 33.3 %, probe: {height: 7 ft, bay: East side}}
      no: {area: 0.123456789 m2, side: wall}
    heights: [0.2 m, 1 m]
  empty: {}
rules:
  - {law: banded, above: 26 degC}
  - about: "hold: # it"
    law: steady
    at: 5 %
  - {about: "two\nlines and \"quotes\"", law: steady, at: 0 %}
notes: ["yes", "12", "", a plain one]
)";

inline constexpr const char* kLeast = R"(title: least
bays:
  a:
    hatches:
      ridge:
        area: 1 m2
        side: roof
)";

inline Loaded<Everything> load(const std::string& text) {
  return load_fields<Everything>(read_yaml_text(text, "house.yaml"));
}

/// The text with one part replaced, which must be there.
inline std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  NOON_ASSERT(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

struct Mistake {
  const char* from;
  const char* to;
  ErrorKind kind;
  const char* place;
  const char* says;
};

/// Changes to kLeast that loading must refuse.
inline const Mistake kMistakes[] = {
    {"area: 1 m2", "aera: 1 m2", ErrorKind::unknown_key, "house.yaml:6:9",
     "unknown key \"aera\", did you mean \"area\"?; allowed: area, opens_to, side, probe"},
    {"title: least", "titel: least", ErrorKind::unknown_key, "house.yaml:1:1", "did you mean \"title\"?"},
    {"title: least", "title: least\nwibble: 1", ErrorKind::unknown_key, "house.yaml:2:1", "allowed: title, first"},
    {"        area: 1 m2\n", "", ErrorKind::missing_key, "house.yaml:5:7", "ridge › area: this key is missing"},
    {"title: least\n", "", ErrorKind::missing_key, "house.yaml:1:1", "title: this key is missing"},
    {"bays:\n  a:", "rules: []\nbayz:\n  a:", ErrorKind::unknown_key, "house.yaml:3:1", "did you mean \"bays\"?"},
    {"area: 1 m2", "area: 1", ErrorKind::wrong_unit, "house.yaml:6:15", "has no unit"},
    {"area: 1 m2", "area: 1 m", ErrorKind::wrong_unit, "house.yaml:6:15", "is a unit of length or depth of rain"},
    {"area: 1 m2", "area: [1 m2]", ErrorKind::wrong_type, "house.yaml:6:15", "read a list; this must be an area"},
    {"area: 1 m2", "area:", ErrorKind::wrong_type, "house.yaml:6:9", "read nothing"},
    {"area: 1 m2", "area: big", ErrorKind::wrong_type, "house.yaml:6:15", "is not a number and its unit"},
    {"area: 1 m2", "area: 0 m2", ErrorKind::out_of_range, "house.yaml:6:15", "allowed: above 0 m2 and at most 20 m2"},
    {"area: 1 m2", "area: 999 ft2", ErrorKind::out_of_range, "house.yaml:6:15", "at most 215.278 ft2"},
    {"side: roof", "side: rof", ErrorKind::wrong_type, "house.yaml:7:15", "one of roof, wall, did you mean \"roof\"?"},
    {"title: least", "title: least\nlayers: 3.5", ErrorKind::wrong_type, "house.yaml:2:9", "whole number"},
    {"title: least", "title: least\nlayers: 12", ErrorKind::out_of_range, "house.yaml:2:9", "from 1 to 9"},
    {"title: least", "title: least\nlayers: \"3\"", ErrorKind::wrong_type, "house.yaml:2:9", "remove the quotes"},
    {"title: least", "title: least\nlayers: 99999999999999999999", ErrorKind::out_of_range, "2:9", "from 1 to 9"},
    {"title: least", "title: least\ndry: yes", ErrorKind::wrong_type, "house.yaml:2:6", "did you mean \"true\"?"},
    {"title: least", "title: least\nemissivity: 90 %", ErrorKind::wrong_unit, "house.yaml:2:13", "a bare number"},
    {"title: least", "title: least\nemissivity: 1.1", ErrorKind::out_of_range, "house.yaml:2:13", "at most 1"},
    {"title: least", "title: least\ndusk: 8 pm", ErrorKind::wrong_type, "house.yaml:2:7", "such as \"08:30\""},
    {"title: least", "title: least\nfirst: 2025-02-30", ErrorKind::wrong_type, "house.yaml:2:8", "a date"},
    {"title: least", "title: least\nplace: {}", ErrorKind::missing_key, "house.yaml:2:1", "place › azimuth"},
    {"title: least", "title: least\nrules: {}", ErrorKind::wrong_type, "house.yaml:2:8", "this must be a list"},
    {"title: least", "title: least\nrules: [{law: steady}]", ErrorKind::missing_key, "2:9", "rules › 1 › at"},
    {"title: least", "title: least\nrules: [{at: 5 %}]", ErrorKind::missing_key, "2:9", "one of steady, banded"},
    {"title: least", "title: least\nrules: [{lwa: steady}]", ErrorKind::missing_key, "2:9", "is \"lwa\" meant"},
    {"title: least", "title: least\nrules: [{law: steady, at: 5 %, band: 2 K}]", ErrorKind::unknown_key, "2:32",
     "unknown key \"band\""},
    {"  a:\n", "  a.b:\n", ErrorKind::wrong_type, "house.yaml:3:3", "cannot be a name"},
    {"side: roof", "side: roof\n        probe: {bay: b}", ErrorKind::unknown_name, "house.yaml:8:22",
     "read \"b\"; no such name under bays"},
};

}  // namespace noonhouse::field_sample
