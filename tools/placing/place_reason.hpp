// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/placing/place_answer.hpp"

namespace noonhouse {

/// Why a group should stand where it should, as a sentence: what is worst where it stands now, when, and what the other
/// place does about it ("too hot on the low bench: 41.3 degC on day 4 at 14:30; under the east bench its tissue is 6.1
/// K cooler at that hour"). Temperatures in degC and differences in K, times by the house's clock.
std::string place_reason(const GroupShown& group, const PlaceAnswer& answer);

}  // namespace noonhouse
