// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/as_written.hpp"

#include <variant>

namespace noonhouse {

std::string in_unit_of(const Places& places, const std::string& path, double si, Dimension dimension) {
  if (const Place* place = places.at(path)) {
    const auto parsed = parse_quantity(place->text, dimension);
    if (const auto* quantity = std::get_if<ParsedQuantity>(&parsed)) return limit_text(si, dimension, quantity->unit);
  }
  return exact_quantity(si, dimension);
}

bool is_given(const Places& places, const std::string& path) {
  const Place* place = places.at(path);
  return place != nullptr && !place->defaulted;
}

const std::string& to_blame(const Places& places, const std::string& first, const std::string& second) {
  return is_given(places, second) && !is_given(places, first) ? second : first;
}

std::string key_and_value(const Places& places, const std::string& path, double si, Dimension dimension,
                          const std::string& like) {
  return path.substr(path.rfind('.') + 1) + ", " + in_unit_of(places, like, si, dimension) +
         (is_given(places, path) ? "" : " (not given)");
}

}  // namespace noonhouse
