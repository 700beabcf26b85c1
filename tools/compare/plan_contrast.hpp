// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tools/compare/comparison.hpp"
#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

// What sets plans apart in words, and what all of them share.

/// What ran out, was cut off or failed in `worse` and in nothing of the kind in `better`, as one sentence about
/// `worse`: `In "mist" the battery was cut off on day 3 21:32, so that fan one and mist stood still.` Empty
/// where nothing of it differs. Temperatures as in the log (text_in_units()).
std::string plain_difference(const RunRecord& better, const RunRecord& worse);

/// Why the plan at `place` of the order stands behind the one before it, with plain_difference(): `"vents" is ahead of
/// "mist" because it keeps more plants. In "mist" ...`. Empty for the first place.
std::string why_behind(const std::vector<RunRecord>& records, const std::vector<RankedPlan>& ranked, std::size_t place);

/// True where the two tell of the same thing from the same first cause, whenever and at whatever temperature.
bool tell_the_same(const FailureOutcome& a, const FailureOutcome& b);

/// The first failure or harm, where it is the same in each of two or more plans; else none.
struct SharedFirst {
  const RunRecord* record = nullptr;        ///< in which it came first
  const FailureOutcome* failure = nullptr;  ///< there
  double earliest_s = 0.0, latest_s = 0.0;  ///< over the plans [s]
};
std::optional<SharedFirst> shared_first(const std::vector<RunRecord>& records);

/// That in words: "seedlings strained: heat, day 1 09:58 <- ...; at the latest day 1 10:07".
std::string shared_first_text(const SharedFirst& shared, std::string_view arrow, UnitSystem units);

/// The earliest failure or harm of a plan that not all plans have; null where there is none.
const FailureOutcome* first_of_its_own(const RunRecord& record, const std::vector<RunRecord>& all);

/// Notes that every record has, in the first one's order; empty for a single record.
std::vector<std::string> shared_notes(const std::vector<RunRecord>& records);

/// What the figures of the comparison count, in sentences to be shown under it.
std::vector<std::string> figure_notes();

}  // namespace noonhouse
