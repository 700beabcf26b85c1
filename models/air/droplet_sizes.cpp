// SPDX-License-Identifier: Apache-2.0
#include "models/air/droplet_sizes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

constexpr const char* kFogSizes =
    "common practice, no source, within the 2 to 60 um of fog drops (Arbel, Yekutieli & Barak 1999, J. Agric. Eng. "
    "Res. 72, 129; from memory)";
constexpr const char* kSpread =
    "common practice, no source, within the 1.5 to 4 of most sprays (Lefebvre & McDonell, Atomization and Sprays, ch. "
    "3; "
    "from memory)";
constexpr const char* kPractice = "common practice, no source";

constexpr std::array<NozzlePreset, 3> kPresets{{
    {NozzleKind::high_pressure_fog,
     "fog from a fine orifice, about 70 bar",
     {20e-6, kFogSizes},
     {2.5, kSpread},
     {70e5, kPractice}},
    {NozzleKind::low_pressure_mist,
     "mist from a line at 2 to 7 bar",
     {120e-6, kPractice},
     {2.5, kSpread},
     {4e5, kPractice}},
    {NozzleKind::coarse_sprinkler,
     "sprinkler that wets what is below it",
     {1e-3, kPractice},
     {2.0, kSpread},
     {2.5e5, kPractice}},
}};

void require_sound(const DropSizes& sizes) { NOON_ASSERT(sizes.mean_m > 0.0 && sizes.spread > 1.0); }

}  // namespace

DropSizes drop_sizes_of_median(double median_m, double spread) {
  const DropSizes sizes{median_m / std::pow(std::numbers::ln2, 1.0 / spread), spread};
  require_sound(sizes);
  return sizes;
}

double volume_share_below(const DropSizes& sizes, double diameter_m) {
  require_sound(sizes);
  if (diameter_m <= 0.0) return 0.0;
  return -std::expm1(-std::pow(diameter_m / sizes.mean_m, sizes.spread));
}

double diameter_of_volume_share_m(const DropSizes& sizes, double share) {
  require_sound(sizes);
  NOON_ASSERT(share >= 0.0 && share < 1.0);
  return sizes.mean_m * std::pow(-std::log1p(-share), 1.0 / sizes.spread);
}

double volume_median_m(const DropSizes& sizes) { return diameter_of_volume_share_m(sizes, 0.5); }

double sauter_mean_m(const DropSizes& sizes) {
  require_sound(sizes);
  return sizes.mean_m / std::tgamma(1.0 - 1.0 / sizes.spread);
}

std::vector<double> equal_volume_classes(const DropSizes& sizes, int classes) {
  NOON_ASSERT(classes > 0);
  std::vector<double> diameters_m;
  diameters_m.reserve(static_cast<std::size_t>(classes));
  for (int i = 0; i < classes; ++i) {
    diameters_m.push_back(diameter_of_volume_share_m(sizes, (i + 0.5) / classes));
  }
  return diameters_m;
}

std::span<const NozzlePreset> nozzle_presets() { return kPresets; }

const NozzlePreset& nozzle_preset(NozzleKind kind) {
  const auto* found = std::find_if(kPresets.begin(), kPresets.end(),
                                   [kind](const NozzlePreset& preset) { return preset.kind == kind; });
  NOON_ASSERT(found != kPresets.end());
  return *found;
}

DropSizes sizes_of(const NozzlePreset& preset) {
  return drop_sizes_of_median(preset.volume_median_m.value, preset.spread.value);
}

}  // namespace noonhouse
