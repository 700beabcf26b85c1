// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// Where two records first differ, in words ("metrics/plants, row 2, plant: 'fern' against 'moss'"); empty when every
/// field is equal. Numbers are compared exactly, NaN equals NaN.
std::string first_difference(const RunRecord& a, const RunRecord& b);

}  // namespace noonhouse
