// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/properties/sourced_value.hpp"

namespace noonhouse {

/// What a floor or the ground under it is made of, at one water content. Figures are those of the sources, each with
/// its own; heat capacity is by volume, of the material as it lies there, its pores and its water included. Does not
/// model: water that moves, evaporates in the pores or freezes.
struct SoilMaterial {
  const char* name;                   ///< in lower case, as a scenario says it
  SourcedValue conductivity_w_m_k;    ///< k
  SourcedValue heat_capacity_j_m3_k;  ///< C
  const char* about;                  ///< one sentence for a person who chooses
};

/// The library, in the order to show it: soils, ground, floors.
std::span<const SoilMaterial> soil_materials();

/// The material of that name, or null: the caller knows whom to ask again.
const SoilMaterial* find_soil_material(std::string_view name);

/// Diffusivity of a material [m2/s]:  alpha = k / C.
double soil_diffusivity_m2_s(const SoilMaterial& material);

}  // namespace noonhouse
