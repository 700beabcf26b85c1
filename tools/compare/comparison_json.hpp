// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// The comparison as one document for programs: SI units, named in the keys; plans in rank order; keys in
/// a fixed order. A value that did not happen or is not a number is null, never left out.
///
///   {"scenario", "title", "start", "utc_offset", "duration_s", "rule", "headline", "warnings": [...],
///    "plans": [{"rank", "name", "about", "tally", "plants", "levels", "water", "energy", "airing", "ways",
///               "failures", "closure", "devices", "steps", "provenance"}]}
nlohmann::ordered_json comparison_document(const std::vector<RunRecord>& records);

/// The same as text, indented by two, with a newline at the end. Text that is not UTF-8 is repaired
/// with the replacement character.
std::string compare_json(const std::vector<RunRecord>& records);

}  // namespace noonhouse
