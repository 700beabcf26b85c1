// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/units/units.hpp"

namespace noonhouse {

/// The libraries of covers, shade cloths, soils and floors as a tree in words: each material's figures with the source
/// of each. `wanted` limits it to materials whose name holds that text; a text that none holds is a UserError.
std::string material_tree(const std::string& wanted, UnitSystem system);

}  // namespace noonhouse
