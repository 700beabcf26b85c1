// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <optional>
#include <string>

#include "sim/core/tick.hpp"
#include "tools/faults/fault_sheet.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

inline constexpr const char* kFaultsFile = "faults.json";  ///< its name in a results folder

/// The plan with most in service, the first of equals.
const PlanScenario& fullest_plan(const Scenario& scenario);

/// How long each failure is followed, of text such as "24h": a duration of 10 minutes to 31 days. Throws
/// UserError(usage).
Tick horizon_of(const std::string& text);

/// Midnight of a day of the run, of its number as text, from 1 on; kNever of no text. Throws UserError(usage) where
/// that is no day of a run of this length.
Tick told_day_of(const std::string& text, double run_s);

/// The failures that a results folder tells of; nothing where it has none. Throws UserError(results_unreadable), with
/// the file's name, where they are damaged.
std::optional<FaultSheet> faults_in(const std::filesystem::path& folder);

/// Writes them there, whole or not at all.
std::filesystem::path write_faults(const std::filesystem::path& folder, const FaultSheet& sheet);

}  // namespace noonhouse
