// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/properties/layer_optics.hpp"
#include "models/properties/sourced_value.hpp"

/// What shade cloths and screens are made of, each figure with its source.
namespace noonhouse {

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
