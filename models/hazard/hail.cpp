// SPDX-License-Identifier: Apache-2.0
#include "models/hazard/hail.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr std::array<double, 5> kClassEnergy_j = {0.04, 0.69, 3.5, 11.1, 27.0};

constexpr double kPane_m2 = 0.36;
constexpr SourcedValue kFallsOut{0.0, "common practice, no source: a pane falls out"};
constexpr SourcedValue kPunched{2.0, "common practice, no source: a tough sheet is punched through"};
constexpr SourcedValue kTorn{4.0, "common practice, no source: taut film and brittle plastic tear or crack on"};

constexpr std::array<HailRating, 7> kRatings = {{
    {"horticultural glass 3 mm",
     {0.7, "estimate from memory: stones of 20 mm, the second class; no table at hand"},
     kFallsOut},
    {"horticultural glass 4 mm", {1.7, "estimate from memory: stones of 25 mm; no table at hand"}, kFallsOut},
    {"tempered glass 4 mm",
     {11.1, "estimate from memory: stones of 40 mm, the fourth class, as solar collectors have"},
     kFallsOut},
    {"twin-wall polycarbonate 8 mm",
     {2.0, "estimate from memory: the tests of makers at about 25 mm; new sheets"},
     kPunched},
    {"twin-wall polycarbonate 10 mm",
     {3.5, "estimate from memory: stones of 30 mm, the third class; new sheets"},
     kPunched},
    {"acrylic sheet",
     {0.7, "estimate from memory: stones of 20 mm, the second class; not the impact-modified kind"},
     kTorn},
    {"polyethylene film",
     {1.7, "estimate from memory: stones of 25 mm dent new taut film; old film tears sooner"},
     kTorn},
}};

constexpr std::array<HailRating, 2> kNets = {{
    {"hail net", {10.0, "common practice, no source: nets of the trade are said to stop stones of 40 mm"}},
    {"shade net", {2.0, "common practice, no source: a knitted cloth, taut and well clear of the cover"}},
}};

}  // namespace

double hailstone_mass_kg(const Hailstone& stone) {
  return stone.density_kg_m3 * kPi / 6.0 * stone.diameter_m * stone.diameter_m * stone.diameter_m;
}

double hail_fall_speed_m_s(const Hailstone& stone) {
  const double weight = 4.0 * stone.density_kg_m3 * kGravity * stone.diameter_m;
  return std::sqrt(weight / (3.0 * stone.air_density_kg_m3 * stone.drag_coefficient));
}

double hail_impact_speed_m_s(const Hailstone& stone, double wind_m_s) {
  return std::hypot(hail_fall_speed_m_s(stone), wind_m_s);
}

double hail_energy_j(const Hailstone& stone, double wind_m_s) {
  const double speed = hail_impact_speed_m_s(stone, wind_m_s);
  return 0.5 * hailstone_mass_kg(stone) * speed * speed;
}

double hail_class_energy_j(int hail_class) {
  NOON_ASSERT(hail_class >= 1 && hail_class <= static_cast<int>(kClassEnergy_j.size()));
  return kClassEnergy_j[static_cast<std::size_t>(hail_class - 1)];
}

std::span<const HailRating> hail_ratings() { return kRatings; }
std::span<const HailRating> hail_nets() { return kNets; }

double hail_hits_per_m2_s(double ice_kg_m2_s, const Hailstone& stone) {
  NOON_ASSERT(stone.diameter_m > 0.0);
  return ice_kg_m2_s / hailstone_mass_kg(stone);
}

HailOnFacet hail_on_facet(const Hailstone& stone, double wind_m_s, double slope_rad, double off_wind_rad) {
  const double fall = hail_fall_speed_m_s(stone);
  NOON_ASSERT(fall > 0.0);
  const double across = fall * std::cos(slope_rad) + wind_m_s * std::sin(slope_rad) * std::cos(off_wind_rad);
  const double met = std::max(0.0, across);
  return {met / fall, met * met / (fall * fall + wind_m_s * wind_m_s)};
}

double hail_opening_m2(const HailRating* rating, double stone_m) {
  if (rating == nullptr || rating->tears.value <= 0.0) return kPane_m2;
  const double wide_m = rating->tears.value * stone_m;
  return wide_m * wide_m;
}

double hail_broken_share(double hits_per_m2_s, double opens_m2, double duration_s) {
  return -std::expm1(-hits_per_m2_s * opens_m2 * duration_s);
}

}  // namespace noonhouse
