// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string_view>

#include "models/hazard/hail.hpp"

namespace noonhouse {

/// The rating that is nearest to a material of the library of covers; null for walls of boards or brick.
const HailRating* hail_rating_of(std::string_view material);

}  // namespace noonhouse
