// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/envelope/cover_optics.hpp"
#include "models/properties/layer_optics.hpp"
#include "models/properties/sourced_value.hpp"

/// What covers, walls and shade cloths are made of, each figure with its source. New and clean; a cover's own age,
/// dirt, lime and frame are added to what make_of() returns.
namespace noonhouse {

/// One product for roofs and walls.
struct CoverMaterial {
  const char* name;   ///< lower case, what a person writes
  const char* about;  ///< one line
  int sheets;         ///< clear sheets one behind the other; 0 for opaque ones
  SourcedValue
      transmittance;  ///< published, visible or photosynthetic light, normal incidence; what the next are fitted to
  SourcedValue refractive_index;
  SourcedValue optical_depth;           ///< of each sheet along its normal
  SourcedValue haze;                    ///< share of what passes that leaves scattered
  SourcedValue thrown_back;             ///< share of what would pass that is scattered back
  SourcedValue drops_return;            ///< share of light that drops of condensate send back where they are
  SourcedValue opaque_reflects;         ///< of sunlight; -1 for what light passes
  SourcedValue emissivity;              ///< of either face in thermal radiation
  SourcedValue infrared_transmittance;  ///< of the whole product, dry
  SourcedValue thickness_m;  ///< of the solid in all sheets together: times density the mass of a square metre
  SourcedValue density_kg_m3;
  SourcedValue specific_heat_j_kg_k;
  SourcedValue
      resistance_m2_k_w;  ///< between the two faces of the product; 0 where films and thin sheets have next to none
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

/// One shade cloth or screen, hung flat. What it neither passes nor absorbs it reflects, from either face.
struct ShadeMaterial {
  const char* name;
  const char* about;
  SourcedValue transmits;   ///< share of sunlight that gets through, straight and scattered
  SourcedValue absorbs;     ///< share of sunlight taken up
  SourcedValue open_share;  ///< share of sunlight that passes unscattered, through the holes
  SourcedValue infrared_transmittance;
  SourcedValue emissivity;  ///< of the whole cloth, holes counted, in thermal radiation
};

/// All of them.
std::span<const ShadeMaterial> shade_materials();

/// The shade of that name, or null.
const ShadeMaterial* find_shade_material(std::string_view name);

/// A shade as a layer in sunlight; cloth does not mind the angle.
LayerOptics layer_of(const ShadeMaterial& material);

}  // namespace noonhouse
