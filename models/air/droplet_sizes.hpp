// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "models/properties/nozzle.hpp"
#include "models/properties/sourced_value.hpp"

/// How large the drops of a nozzle are, how much water it lets through, and what its pump must do.
namespace noonhouse {

/// Sizes of drops by volume:  share of volume in drops smaller than d  =  1 - exp(-(d / mean)^spread)
/// [Rosin & Rammler 1933, J. Inst. Fuel 7, 29; Lefebvre & McDonell, Atomization and Sprays, 2nd ed., ch. 3, eq. (3.14);
/// from memory]. The larger the spread parameter, the more alike the drops; most sprays have 1.5 to 4 (same chapter).
/// Mean above zero, spread above one. Does not model: a largest and a smallest drop (the law has neither), two humps.
struct DropSizes {
  double mean_m;  ///< 63.2 % of the volume is in smaller drops
  double spread;
};

/// The sizes of a given median by volume [m].  mean = median / (ln 2)^(1/spread)
DropSizes drop_sizes_of_median(double median_m, double spread);

/// Share of the volume [-] in drops smaller than a diameter [m]; 0 for zero, towards 1.
double volume_share_below(const DropSizes& sizes, double diameter_m);

/// Diameter [m] below which a share of the volume lies; share from 0 to less than 1. The inverse of the above.
double diameter_of_volume_share_m(const DropSizes& sizes, double share);

/// Diameter [m] that halves the volume:  mean (ln 2)^(1/spread).
double volume_median_m(const DropSizes& sizes);

/// Diameter [m] of the drop with the spray's ratio of volume to surface:  mean / Gamma(1 - 1/spread)
/// [same chapter; from memory]. A spray of volume V has the surface 6 V / D32.
double sauter_mean_m(const DropSizes& sizes);

/// A spray as that many drops [m], rising, each standing for 1 / classes of the volume: the one in the middle of each
/// class by volume. At least one. The smallest stand for all smaller ones, so a few classes have too little surface: 10
/// classes lack 6 % of it at spread 2.5 and 11 % at spread 2, 50 classes 2 and 5 %.
std::vector<double> equal_volume_classes(const DropSizes& sizes, int classes);

/// The kinds of nozzle that have typical sizes.
enum class NozzleKind { high_pressure_fog, low_pressure_mist, coarse_sprinkler };

/// What is typical of a kind, where the maker's own measurement is missing.
struct NozzlePreset {
  NozzleKind kind;
  const char* about;
  SourcedValue volume_median_m;
  SourcedValue spread;
  SourcedValue pressure_pa;  ///< gauge, at which the sizes hold
};

/// All of them.
std::span<const NozzlePreset> nozzle_presets();

/// That of a kind.
const NozzlePreset& nozzle_preset(NozzleKind kind);

/// The sizes of a preset.
DropSizes sizes_of(const NozzlePreset& preset);

}  // namespace noonhouse
