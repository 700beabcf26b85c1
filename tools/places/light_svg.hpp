// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/places/place_light.hpp"

namespace noonhouse {

std::string light_svg(const DayLight& day);

}  // namespace noonhouse
