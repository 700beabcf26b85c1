// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/cover_hail.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace noonhouse {

const HailRating* hail_rating_of(std::string_view material) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 10> kNearest{{
      {"glass 3 mm", "horticultural glass 3 mm"},
      {"glass 4 mm", "horticultural glass 4 mm"},
      {"double glass", "horticultural glass 4 mm"},
      {"film", "polyethylene film"},
      {"polycarbonate 6 mm", "twin-wall polycarbonate 8 mm"},
      {"polycarbonate 10 mm", "twin-wall polycarbonate 10 mm"},
      {"polycarbonate sheet", "twin-wall polycarbonate 10 mm"},
      {"acrylic", "acrylic sheet"},
      {"glass-fibre", "acrylic sheet"},
      {"pvc", "acrylic sheet"},
  }};
  const auto nearest = std::find_if(kNearest.begin(), kNearest.end(), [&](const auto& pair) {
    return material.find(pair.first) != std::string_view::npos;
  });
  if (nearest == kNearest.end()) return nullptr;
  const auto ratings = hail_ratings();
  const auto found = std::find_if(ratings.begin(), ratings.end(),
                                  [&](const HailRating& r) { return std::string_view(r.name) == nearest->second; });
  return found == ratings.end() ? nullptr : &*found;
}

}  // namespace noonhouse
