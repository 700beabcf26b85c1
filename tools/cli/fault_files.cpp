// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/fault_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <span>
#include <sstream>

#include "sim/core/errors.hpp"
#include "tools/faults/faults_json.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {
constexpr double kShortestS = 600.0, kLongestS = 31.0 * 86400.0;
}

const PlanScenario& fullest_plan(const Scenario& scenario) {
  return *std::max_element(scenario.plans.begin(), scenario.plans.end(),
                           [](const auto& a, const auto& b) { return a.in_service.size() < b.in_service.size(); });
}

Tick horizon_of(const std::string& text) {
  const auto parsed = parse_quantity(text, Dimension::time, "h");
  if (const auto* failure = std::get_if<QuantityFailure>(&parsed))
    throw UserError(ErrorKind::usage, "--horizon: " + failure->message());
  const double horizon_s = std::get<ParsedQuantity>(parsed).si;
  if (!(horizon_s >= kShortestS && horizon_s <= kLongestS))
    throw UserError(ErrorKind::usage, fmt::format("--horizon: read \"{}\"; allowed is 10 min to 31 d", text));
  return ticks(horizon_s);
}

Tick told_day_of(const std::string& text, double run_s) {
  if (text.empty()) return kNever;
  const auto days = static_cast<int>(std::ceil(run_s / seconds(kDay)));
  int day = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), day);
  if (error != std::errc{} || end != text.data() + text.size() || day < 1 || day > days)
    throw UserError(
        ErrorKind::usage,
        fmt::format("--day: read \"{}\"; allowed is the number of a day of this run, {}, such as --day {}", text,
                    days == 1 ? "which is 1" : fmt::format("1 to {}", days), std::clamp(day, 1, days)));
  return kDay * (day - 1);
}

std::optional<FaultSheet> faults_in(const std::filesystem::path& folder) {
  const auto file = folder / kFaultsFile;
  if (!std::filesystem::exists(file)) return std::nullopt;
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  if (!in) throw UserError(ErrorKind::results_unreadable, "'" + file.string() + "' cannot be read");
  try {
    return read_faults(text.str());
  } catch (const UserError& error) {
    throw UserError(error.kind(), fmt::format("'{}' is {}; make it again with: noonhouse faults SCENARIO --results {}",
                                              file.string(), error.what(), folder.string()));
  }
}

std::filesystem::path write_faults(const std::filesystem::path& folder, const FaultSheet& sheet) {
  std::filesystem::path file = folder / kFaultsFile;
  const std::string text = faults_json(sheet);
  write_file_whole(file, std::as_bytes(std::span(text.data(), text.size())));
  return file;
}

}  // namespace noonhouse
