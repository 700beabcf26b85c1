// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/layer_optics.hpp"
#include "models/properties/optics.hpp"

/// What a cover does with sunlight: from outside in dirt, whitewash, clear parallel sheets, drops of condensate; beside
/// them opaque frame. And what its wet inner face does with thermal radiation.
namespace noonhouse {

/// What a cover is made of. All shares lie between 0 and 1. Clear sheets follow Fresnel and Bouguer at every angle.
struct CoverMake {
  int sheets = 1;
  Sheet sheet{};
  double haze = 0.0;         ///< share of what passes the sheets that leaves them scattered
  double thrown_back = 0.0;  ///< share of what would pass the sheets that they scatter back (opal sheets, films)
  double dirt = 0.0;         ///< share of diffuse light that dirt on the outside takes up, below 1; more at grazing
  double whitewash_transmits = 1.0;
  double whitewash_reflects = 0.0;  ///< with what it transmits no more than 1; the rest it absorbs
  double condensate_share = 0.0;    ///< share of the inner face that drops hold
  double drops_return = 0.1;      ///< share of light that drops send back where they are; kGlassDropsReturn and beside
  double frame_share = 0.0;       ///< opaque share of the area
  double frame_reflects = 0.4;    ///< weathered aluminium or light paint (common practice, no source)
  double opaque_reflects = -1.0;  ///< 0 or more: an opaque wall that reflects this; dirt and the sheets are ignored
};

/// Share of light that drops on a face send back: what makes the transmittance at normal incidence fall by the measured
/// 3 % on glass and 22 % on polyethylene film (photosynthetic light, condensation without run-off, vertical), since the
/// sheet returns part of it.   [Pollet & Pieters, J. agric. Engng Res. (year from memory: 1999), Measuring facility for
/// shortwave radiation transmission of condensation-covered greenhouse claddings, abstract]
/// Other glass, sloped and draining, under diffuse light: 3 points of percent   [Wageningen UR, measuring protocol for
/// the light transmittance of wet covers, abstract].
inline constexpr double kGlassDropsReturn = 0.033;
inline constexpr double kFilmDropsReturn = 0.26;

/// A coat of lime, as shares of light, either way.
struct Whitewash {
  double transmits = 1.0;
  double reflects = 0.0;
};

/// A coat of calcium carbonate by the concentration sprayed [kg in a litre of water, one coat].
///   transmits = 1 / (1 + S c), reflects the rest     [Kubelka & Munk 1931, a layer that scatters and does not absorb]
/// S is set so that 0.50 kg/L takes a little more than half of what a film cover passes, the one figure of
/// Lopez-Martinez et al. 2019, Int. J. Environ. Res. Public Health 16, 958. What stays on a roof varies with spraying
/// and rain by far more than the form of this law. Not modelled: absorption by soil in the lime, wear, angle.
Whitewash whitewash(double kg_per_litre);

/// A cover's optics, worked out once; cheap to ask. Beam and scattered light are followed apart through the layers:
/// light that a layer scatters meets the next ones as diffuse light does.
/// Not modelled: wavelength, coatings, the direction of scattered light, depth of the frame, ribs between sheets.
class CoverOptics {
 public:
  explicit CoverOptics(const CoverMake& make);
  /// For light from outside at an angle of incidence, 0 to pi/2 [rad]: the whole cover with frame. Transmittance is of
  /// beam and scattered light together; the back reflectance is that of diffuse light, so ask only the front.
  LayerOptics at(double incidence_rad) const;
  /// For even diffuse light, from either side.
  const LayerOptics& diffuse() const { return diffuse_; }
  /// Share of a transmitted beam that leaves as diffuse light, by haze, whitewash, dirt and drops, at normal incidence.
  double scattered_share() const { return scattered_share_at(0.0); }
  /// The same at an angle of incidence [rad]; 0 where nothing passes.
  double scattered_share_at(double incidence_rad) const;

 private:
  /// What a layer does with a beam from the front, as shares of it.
  struct Beam {
    double straight = 1.0;            ///< passes in its direction
    double scattered = 0.0;           ///< passes, diffuse
    double mirrored = 0.0;            ///< returns as from a mirror
    double returned_scattered = 0.0;  ///< returns, diffuse
    double reflectance() const { return mirrored + returned_scattered; }
  };
  struct Layer {
    Beam beam;
    LayerOptics diffuse;
  };
  static Layer behind(const Layer& first, const Layer& second);
  Layer dirt(double incidence_rad) const;
  Layer lime() const;
  Layer sheets(double incidence_rad) const;
  Layer glazing(double incidence_rad) const;
  LayerOptics diffuse_glazing() const;

  CoverMake make_;
  double dirt_depth_ = 0.0;
  LayerOptics diffuse_sheets_;
  LayerOptics diffuse_;
};

/// Absorption of thermal radiation by liquid water [1/m]: 4 pi k / wavelength with k = 0.0508 at 10 um.
///   [Hale & Querry 1973, Appl. Opt. 12, 555, table (from memory)]   Near its least in the band that matters (8 to
/// 14 um), so a film blocks at least as much as this says.
inline constexpr double kWaterInfraredAbsorption_1_m = 4.0 * kPi * 0.0508 / 10.0e-6;

/// Mean path of diffuse radiation in water over its depth, refraction at n = 1.218 counted: 2 n^2 (1 - sqrt(1 -
/// 1/n^2)).
///   [n: the same table; the mean of 1 / cos(inside) over the hemisphere, by hand]
inline constexpr double kWaterInfraredSlant = 1.273;

/// Share of a face that drops too deep for thermal radiation hold when it is wet: 1 - (r / r_max)^(1/3) with drops
/// of 0.016 mm, one path of absorption, and the largest 1.5 mm, where they begin to slide (from memory).
///   [Le Fevre & Rose 1966, distribution of drop sizes in dropwise condensation (from memory)]
/// On a face treated to wet as a film take 1.
inline constexpr double kDropCover = 0.78;

/// Share of thermal radiation that water on a face lets by [-]: 1 without water, falling to 1 - wet_share.
///   1 - w (1 - exp(-a s m / (w rho)))     [Bouguer's law over the wet share, where the water gathers]
/// with m the water on a square metre of face. Falls within some 0.05 kg/m2. Smooth; below no water it goes on as is.
template <class S>
S dry_share(const S& film_kg_m2, double wet_share = kDropCover) {
  using std::exp;
  const double paths_m2_kg = kWaterInfraredAbsorption_1_m * kWaterInfraredSlant / 1000.0;
  return 1.0 - wet_share * (1.0 - exp(film_kg_m2 * (-paths_m2_kg / wet_share)));
}

/// Thermal transmittance of a cover whose dry one is given, with water on it [kg/m2]: dry times dry_share().
double wet_infrared_transmittance(double dry, double film_kg_m2);

}  // namespace noonhouse
