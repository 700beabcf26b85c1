// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_kind.hpp"

#include <array>

#include "models/plants/plant_kind_parts.hpp"

namespace noonhouse {

std::span<const PlantKind> plant_kinds() {
  using namespace plant_kind_parts;
  static const std::array kKinds{kSunSucculent,   kShadeSucculent, kLeafyCrop, kFruitingCrop, kFern,
                                 kForestEpiphyte, kOrchid,         kCitrus,    kSeedling,     kCutting};
  return kKinds;
}

const PlantKind* find_plant_kind(std::string_view name) { return find_named(plant_kinds(), name); }

}  // namespace noonhouse
