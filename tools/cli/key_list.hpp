// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>

namespace noonhouse {

/// The keys of scenario files as a plain list, from their JSON Schema (scenario_schema()): block by block, each key
/// with what it means, its range and units, and its default or that it is needed. A block is a mapping; one of many by
/// names of your own shows as NAME, one of a list as "each". `block` is the path of the blocks wanted, such as
/// "thermostats" or "house.cover"; empty for all. Throws UserError(unknown_name) where there is no such block.
std::string key_list(const std::string& schema, std::string_view block, int width);

}  // namespace noonhouse
