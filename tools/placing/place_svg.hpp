// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/placing/place_answer.hpp"

namespace noonhouse {

/// The answer as a drawing that stands alone (SVG without scripts, links or fonts): for each group its places, and of
/// each place the days as cells whose lightness and pattern say how near the tissue came to the harm limits, with its
/// peak [°C] where the days are few. An outline marks where the group stands, a filled arrow where it should. Follows
/// the viewer's light or dark scheme and does not need its colours to be told apart. Days beyond 53 are joined by whole
/// weeks. The same answer gives the same bytes.
///
/// Every group must have as many `felt` and `cannot` as there are places.
std::string place_svg(const PlaceAnswer& answer);

}  // namespace noonhouse
