// SPDX-License-Identifier: Apache-2.0
// What the limits of a kind of plants say of one another.
#include <fmt/format.h>

#include <variant>

#include "tools/scenario/as_written.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {
namespace {

class KindCheck {
 public:
  KindCheck(const Places& places, const Named<PlantKindSpec>& kind)
      : places_(places), path_("plant_kinds." + kind.name), k_(kind.value) {}
  void all() const {
    const Limit harm_above{path_ + ".harm_above", k_.harm_above_k},
        lethal_above{path_ + ".lethal_above", k_.lethal_above_k}, harm_below{path_ + ".harm_below", k_.harm_below_k},
        lethal_below{path_ + ".lethal_below", k_.lethal_below_k};
    if (k_.harm_above_k > k_.lethal_above_k)
      swapped(lethal_above, "not be below the harm limit,", harm_above, "not be above the lethal limit,");
    if (k_.harm_below_k < k_.lethal_below_k)
      swapped(lethal_below, "not be above the harm limit,", harm_below, "not be below the lethal limit,");
    if (k_.harm_below_k >= k_.harm_above_k) swapped(harm_below, "be colder than", harm_above, "be warmer than");
    if (k_.shortest_day_s && k_.longest_day_s && *k_.shortest_day_s > *k_.longest_day_s)
      places_.fail(ErrorKind::out_of_range, path_ + ".shortest_day",
                   "no day is longer than this and shorter than longest_day");
  }

 private:
  struct Limit {
    std::string path;
    double kelvin;
  };

  /// Refuses two limits that stand the wrong way round: at the one whose degrees were mistaken, or else at the first
  /// unless the file gives the second alone.
  void swapped(const Limit& first, const char* first_must, const Limit& second, const char* second_must) const {
    const bool is_first =
        to_blame(places_, first.path, second.path) == first.path && celsius_meant(second, first).empty();
    const Limit &wrong = is_first ? first : second, &right = is_first ? second : first;
    places_.fail(ErrorKind::out_of_range, wrong.path,
                 fmt::format("{}must {} {}, {}{}{}", in_celsius(wrong), is_first ? first_must : second_must,
                             right.path.substr(path_.size() + 1), degrees(right),
                             is_given(places_, right.path) ? "" : " (not given)", celsius_meant(wrong, right)));
  }

  /// What was written in other degrees, in degrees Celsius, as all the program's own figures are.
  std::string in_celsius(const Limit& limit) const {
    return unit_of(limit) == "degC" ? "" : fmt::format("that is {} and ", degrees(limit));
  }
  static std::string degrees(const Limit& limit) {
    return format_quantity(limit.kelvin, Dimension::temperature, UnitSystem::metric);
  }

  /// The suggestion that the number was meant in degrees Celsius, where that would mend it.
  std::string celsius_meant(const Limit& wrong, const Limit& right) const {
    if (unit_of(wrong) != "degF") return {};
    std::string meant = quantity_in(wrong.kelvin, Dimension::temperature, "degF");
    meant.back() = 'C';
    const double kelvin = known_quantity(meant, Dimension::temperature);
    const bool mends = (kelvin > right.kelvin) != (wrong.kelvin > right.kelvin);
    return mends ? fmt::format("; did you mean \"{}\"?", meant) : "";
  }

  std::string unit_of(const Limit& limit) const {
    const Place* place = places_.at(limit.path);
    const auto parsed = parse_quantity(place == nullptr ? "" : place->text, Dimension::temperature);
    const auto* quantity = std::get_if<ParsedQuantity>(&parsed);
    return quantity == nullptr ? "degC" : quantity->unit;
  }

  const Places& places_;
  std::string path_;
  const PlantKindSpec& k_;
};

}  // namespace

void cross_check_kinds(const PlanScenario& plan) {
  for (const auto& kind : plan.spec.plant_kinds) KindCheck(plan.places, kind).all();
}

}  // namespace noonhouse
