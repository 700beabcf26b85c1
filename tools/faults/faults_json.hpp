// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>

#include "tools/faults/fault_sheet.hpp"

namespace noonhouse {

/// The sheet as one document for programs: SI units, named in the keys; keys in a fixed order. A time that did not come
/// is null, never left out. Indented by two, with a newline at the end; text that is not UTF-8 is repaired.
///
///   {"scenario", "plan", "start", "hottest_day_s", "told_day_s", "horizon_s", "house_in_danger", "runs",
///    "lost_anyway": [...],
///    "faults": [{"of", "words", "grace_by_hour_s": [24 values], "harms", "worst_s", "worst_grace_s",
///                "costs": [{"plants", "state", "reason", "time_s"}],
///                "breaks": [{"of", "words", "time_s", "failed_s", "anyway"}], "chain": [...],
///                "additions": [{"name", "grace_s", "gained_s", "followed_s"}]}]}
std::string faults_json(const FaultSheet& sheet);

/// The sheet of such a text, every number as it was written; keys that are not known are passed over. Throws
/// UserError(results_unreadable) where the text is damaged or is no such sheet, with what is wrong.
FaultSheet read_faults(std::string_view text);

}  // namespace noonhouse
