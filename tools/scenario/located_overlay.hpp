// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "tools/scenario/located_node.hpp"

namespace noonhouse {

/// Whether the mapping at a dotted path ("house.vents") holds named items, which a change may alter but not invent.
using NamedItems = std::function<bool(const std::string& path)>;

/// Makes NamedItems of patterns such as "house.bays.*.vents", where `*` stands for one part.
NamedItems named_items(std::vector<std::string> patterns);

/// The base with a change laid over it: mappings merge key by key, everything else (lists too) is replaced whole.
/// Every part keeps the position where it was written. A key that a mapping of named items in the base lacks throws
/// UserError(unknown_name) with the nearest name; other unknown keys stay for the strict reading of fields to refuse.
LocatedNode overlay(const LocatedNode& base, const LocatedNode& change, const NamedItems& named = nullptr);

}  // namespace noonhouse
