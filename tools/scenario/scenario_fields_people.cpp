// SPDX-License-Identifier: Apache-2.0
// Fields of the grower: hours, visits, what is done on a sign.
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {

void fields(FieldVisitor& v, GrowerSpec& s) {
  v.quantity("pours_to", s.pours_to, Dimension::share,
             {.minimum = 0,
              .maximum = 1,
              .default_text = "95 %",
              .about = "pots are watered up to this share of what they hold"});
  v.list("present", s.present,
         {.maximum_count = 50, .about = "hours at the house each day, beside half an hour for each visit"});
  v.quantity("reaction", s.reaction_s, Dimension::time,
             {.minimum = 0, .maximum = 86400, .default_text = "10 min", .about = "from seeing a sign to having acted"});
  v.quantity(
      "returns_within", s.returns_within_s, Dimension::time,
      {.minimum = 0, .maximum = 604800, .default_text = "45 min", .about = "when called by an alarm while away"});
  v.quantity(
      "stays", s.stays_s, Dimension::time,
      {.minimum = 0,
       .maximum = 86400,
       .default_text = "1 h",
       .about = "how long somebody who came when called is there and sees other signs (common practice, no source)"});
  v.named("visits", s.visits, {.about = "daily visits"});
  v.named("responses", s.responses, {.about = "what the grower does on a sign"});
}

void fields(FieldVisitor& v, WindowSpec& s) {
  v.time_of_day("from", s.from_s, {.about = "time of day"});
  v.time_of_day("until", s.until_s, {.about = "time of day; the same as from: the whole day"});
}

void fields(FieldVisitor& v, VisitSpec& s) {
  v.time_of_day("at", s.at_s, {.about = "time of day"});
  v.names_of("waters", s.waters, {.of = {"plants"}, .about = "a group of plants"},
             {.about = "pots filled from the tank by hand"});
  v.quantity(
      "keeps_back", s.keeps_back_m3, Dimension::volume,
      {.minimum = 0,
       .default_text = "0 L",
       .about = "water that watering by hand leaves in the tank for other draws; the lower half of what the pump "
                "leaves is out of reach of a can anyway (common practice, no source)"});
  v.names_of("opens", s.opens, {.of = {"openings", "shades"}, .about = "an opening or shade"},
             {.about = "opened or drawn by hand, if in service"});
  v.names_of("shuts", s.shuts, {.of = {"openings", "shades"}, .about = "an opening or shade"},
             {.about = "held shut or drawn back by hand, whatever controls call, until opened by hand; if in service"});
}

void fields(FieldVisitor& v, ResponseSpec& s) {
  v.name_of("sign", s.sign, {.of = {"rules"}, .about = "a rule; the grower acts when it begins to hold"});
  v.flag("alarm", s.alarm, {.default_text = "false", .about = "calls the grower when away"});
  v.flag("undo", s.undo,
         {.default_text = "false",
          .about = "puts it back as it was found when the sign is gone; what a visit set since stays"});
  v.names_of("opens", s.opens, a_device(), {.about = "opened, drawn or started by hand, if in service"});
  v.names_of("shuts", s.shuts, a_device(),
             {.about = "held shut, drawn back or off by hand, whatever controls call, until opened by hand or put "
                       "back; if in service"});
}

}  // namespace noonhouse
