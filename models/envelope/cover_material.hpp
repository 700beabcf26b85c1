// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/envelope/cover_optics.hpp"
#include "models/properties/sourced_value.hpp"

/// What covers and walls are made of, each figure with its source. New and clean; a cover's own age,
/// dirt, lime and frame are added to what make_of() returns.
namespace noonhouse {

/// A figure that a product has not, and that of one that lets light pass instead of returning it like a wall.
inline constexpr SourcedValue kTakenAsNone{0.0, "none, or taken as none"};
inline constexpr SourcedValue kLetsLightPass{-1.0, "lets light pass"};

/// One product for roofs and walls.
struct CoverMaterial {
  const char* name;   ///< lower case, what a person writes
  const char* about;  ///< one line
  int sheets;         ///< clear sheets one behind the other; 0 for opaque ones
  SourcedValue transmittance =
      kTakenAsNone;  ///< published, visible or photosynthetic light, normal incidence; what the next are fitted to
  SourcedValue refractive_index;
  SourcedValue optical_depth = kTakenAsNone;      ///< of each sheet along its normal
  SourcedValue haze = kTakenAsNone;               ///< share of what passes that leaves scattered
  SourcedValue thrown_back = kTakenAsNone;        ///< share of what would pass that is scattered back
  SourcedValue drops_return = kTakenAsNone;       ///< share of light that drops of condensate send back where they are
  SourcedValue opaque_reflects = kLetsLightPass;  ///< of sunlight; -1 for what light passes
  SourcedValue emissivity;                        ///< of either face in thermal radiation
  SourcedValue infrared_transmittance = kTakenAsNone;  ///< of the whole product, dry
  SourcedValue thickness_m;  ///< of the solid in all sheets together: times density the mass of a square metre
  SourcedValue density_kg_m3;
  SourcedValue specific_heat_j_kg_k;
  SourcedValue resistance_m2_k_w =
      kTakenAsNone;  ///< between the two faces of the product; 0 where films and thin sheets have next to none
};

/// All of them.
std::span<const CoverMaterial> cover_materials();

/// The material of that name, or null.
const CoverMaterial* find_cover_material(std::string_view name);

/// A new, clean, dry cover of that material without frame.
CoverMake make_of(const CoverMaterial& material);

/// Overall heat transfer of a cover between air inside and air outside [W/(m2 K)]: 1 / (R_si + R + R_se) with the
/// resistances of the faces, convection and radiation together, of   [ISO 6946, table of surface resistances (from
/// memory): 0.13 inside for heat that flows level, 0.04 outside].
/// For comparison with tables only: it does not know that thermal radiation passes films.
double overall_heat_transfer_w_m2_k(const CoverMaterial& material);

}  // namespace noonhouse
