// SPDX-License-Identifier: Apache-2.0
#include "models/water/gutter_size.hpp"

#include <array>
#include <cmath>

#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

constexpr const char* kStandard = "BS EN 16941-1, Table 2";

constexpr std::array kSurfaces{
    RoofSurface{"smooth metal", {0.90, kStandard}},
    RoofSurface{"pitched tile", {0.80, kStandard}},
    RoofSurface{"concrete", {0.75, kStandard}},
    RoofSurface{"flat with gravel", {0.60, kStandard}},
    RoofSurface{"flat with felt", {0.50, kStandard}},
    RoofSurface{"green roof", {0.40, kStandard}},
    RoofSurface{"glass or film", {0.90, "as smooth metal of BS EN 16941-1, Table 2; common practice, no source"}},
};

constexpr double kKgPerLitre = 1.0;

}  // namespace

std::span<const RoofSurface> roof_surfaces() { return kSurfaces; }

const RoofSurface* find_roof_surface(std::string_view name) { return find_named(roof_surfaces(), name); }

double half_round_gutter_kg_s(double diameter_m) {
  const double diameter_mm = 1000.0 * diameter_m;
  return kKgPerLitre * 0.9 * 2.78e-5 * std::pow(kPi / 8.0 * diameter_mm * diameter_mm, 1.25);
}

double downpipe_kg_s(double bore_m) {
  constexpr double kRoughnessMm = 0.25, kFilling = 0.33;
  return kKgPerLitre * 2.5e-4 * std::pow(kRoughnessMm, -1.0 / 6.0) * std::pow(1000.0 * bore_m, 8.0 / 3.0) *
         std::pow(kFilling, 5.0 / 3.0);
}

}  // namespace noonhouse
