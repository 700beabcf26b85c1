// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/results_folder.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <set>
#include <system_error>

#include "sim/core/errors.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/record/record_reader.hpp"
#include "tools/record/record_writer.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {
constexpr const char* kEnding = ".h5";
}

std::string file_name_of(const std::string& plan) {
  std::string out;
  for (const char c : plan) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_';
    if (plain) out += c;
    if (!plain && !out.empty() && out.back() != '-') out += '-';
  }
  return (out.empty() ? "plan" : out) + kEnding;
}

ResultsFolder::ResultsFolder(const std::filesystem::path& folder) {
  std::error_code error;
  for (auto path = folder; !path.empty() && !std::filesystem::exists(path, error); path = path.parent_path())
    made_.push_back(path);
  std::filesystem::create_directories(folder, error);
  if (error || !std::filesystem::is_directory(folder))
    throw UserError(ErrorKind::results_not_writable, "results folder '" + folder.string() + "' cannot be made: " +
                                                         (error ? error.message() : "something else has that name") +
                                                         "; give another one with --results");
  // A probe of its own, so that a folder that takes no files is known before the runs, not after.
  const auto probe = folder / (".noonhouse-probe-" + std::to_string(getpid()));
  write_file_whole(probe, std::array<std::byte, 1>{});
  std::filesystem::remove(probe, error);
}

ResultsFolder::~ResultsFolder() {
  if (kept_) return;
  std::error_code ignored;  // a folder that is not empty stays: remove() refuses it
  for (const auto& path : made_) std::filesystem::remove(path, ignored);
}

std::vector<std::filesystem::path> write_results(const std::filesystem::path& folder,
                                                 const std::vector<RunRecord>& records) {
  std::vector<std::filesystem::path> written;
  std::set<std::string> names;
  try {
    for (const RunRecord& record : records) {
      std::string name = file_name_of(record.plan);
      while (!names.insert(name).second) name.insert(name.size() - 3, "-");
      write_run(record, folder / name);
      written.push_back(folder / name);
    }
  } catch (...) {
    std::error_code ignored;
    for (const auto& path : written) std::filesystem::remove(path, ignored);
    throw;
  }
  return written;
}

std::vector<std::filesystem::path> run_files(const std::filesystem::path& folder,
                                             const std::vector<std::filesystem::path>& without) {
  std::error_code error;
  std::vector<std::filesystem::path> files;
  const auto is_left_out = [&](const std::filesystem::path& file) {
    return std::any_of(without.begin(), without.end(), [&](const auto& w) { return w.filename() == file.filename(); });
  };
  for (const auto& entry : std::filesystem::directory_iterator(folder, error))
    if (entry.path().extension() == kEnding && !is_left_out(entry.path())) files.push_back(entry.path());
  if (error)
    throw UserError(ErrorKind::results_unreadable,
                    "results folder '" + folder.string() + "' cannot be read: " + error.message());
  std::sort(files.begin(), files.end());
  return files;
}

void refuse_run_file(const std::filesystem::path& target) {
  if (target.extension() != kEnding || std::filesystem::is_directory(target)) return;
  const auto folder = target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
  throw UserError(ErrorKind::usage,
                  "'" + target.string() + "' is the file of one run; give its folder: '" + folder.string() + "'");
}

std::vector<RunRecord> read_results(const std::filesystem::path& folder) {
  const std::vector<std::filesystem::path> files = run_files(folder);
  if (files.empty())
    throw UserError(ErrorKind::results_unreadable, "results folder '" + folder.string() +
                                                       "' holds no run (*.h5); make some with: noonhouse compare "
                                                       "SCENARIO --results " +
                                                       folder.string());
  std::vector<RunRecord> records;
  for (const auto& file : files) records.push_back(read_run(file));
  return records;
}

std::vector<RunRecord> only_plans(std::vector<RunRecord> records, const std::vector<std::string>& plans) {
  if (plans.empty()) return records;
  std::vector<std::string> known;
  for (const RunRecord& record : records) known.push_back(record.plan);
  for (const std::string& plan : plans)
    if (std::find(known.begin(), known.end(), plan) == known.end())
      throw UserError(ErrorKind::unknown_name, fmt::format("no run here is of a plan \"{}\"{}; there are: \"{}\"", plan,
                                                           did_you_mean(plan, known), fmt::join(known, "\", \"")));
  std::erase_if(records, [&](const RunRecord& record) {
    return std::find(plans.begin(), plans.end(), record.plan) == plans.end();
  });
  return records;
}

}  // namespace noonhouse
