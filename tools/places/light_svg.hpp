// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/places/place_light.hpp"

namespace noonhouse {

/// A day's light as one drawing that stands alone (SVG 1.1 with a style sheet of its own, no script, nothing loaded):
/// the light outdoors as a curve, under it a band for each place with time along it and the kind of light in steps of
/// five minutes. The kinds differ by height, pattern and lightness, so the drawing reads in grey; it follows the
/// reader's light or dark scheme, and its letters grow where it is shown narrow. Times are local standard time. Text
/// is escaped; it must be UTF-8, which the text of a scenario is. The same day gives the same bytes.
std::string light_svg(const DayLight& day);

}  // namespace noonhouse
