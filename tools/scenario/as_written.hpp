// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/scenario/field_places.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// A value as a person reads it who wrote another at `path`: in that one's unit, such as "600 L"; in a common unit
/// where nothing was written there.
std::string in_unit_of(const Places& places, const std::string& path, double si, Dimension dimension);

/// Whether the file itself gives the value at `path`.
bool is_given(const Places& places, const std::string& path);

/// Which of two values that contradict each other to point at: the first, unless the file gives the second alone.
const std::string& to_blame(const Places& places, const std::string& first, const std::string& second);

/// A key and its value in the unit of the one at `like`, for messages: "low_mark, 60 L", or "low_mark, 60 L (not
/// given)".
std::string key_and_value(const Places& places, const std::string& path, double si, Dimension dimension,
                          const std::string& like);

}  // namespace noonhouse
