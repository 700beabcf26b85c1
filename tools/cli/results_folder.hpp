// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// A plan's name as a file name: letters, digits, '-' and '_' stay, the rest becomes '-'.
std::string file_name_of(const std::string& plan);

/// The folder for runs, made and proven to take files before any run. Unless it is kept, what was made for it and is
/// still empty goes again when this goes. The constructor throws results_not_writable or disk_full.
class ResultsFolder {
 public:
  explicit ResultsFolder(const std::filesystem::path& folder);
  ~ResultsFolder();
  ResultsFolder(const ResultsFolder&) = delete;
  ResultsFolder& operator=(const ResultsFolder&) = delete;
  void keep() const { kept_ = true; }

 private:
  std::vector<std::filesystem::path> made_;  ///< innermost first
  mutable bool kept_ = false;
};

/// Writes one file a record, or none: when one cannot be written those written before it by this call are removed.
std::vector<std::filesystem::path> write_results(const std::filesystem::path& folder,
                                                 const std::vector<RunRecord>& records);

/// The run files of a folder, by name; those named in `without` are left out. Throws results_unreadable where the
/// folder cannot be read.
std::vector<std::filesystem::path> run_files(const std::filesystem::path& folder,
                                             const std::vector<std::filesystem::path>& without = {});

/// Throws UserError(usage) where a run's own file is given in place of its folder.
void refuse_run_file(const std::filesystem::path& target);

/// All runs of a folder, by file name. Throws results_unreadable when there are none.
std::vector<RunRecord> read_results(const std::filesystem::path& folder);

/// The records of the plans named, in the order of the records; all of them where none is named. Throws
/// UserError(unknown_name) at a plan that no record is of.
std::vector<RunRecord> only_plans(std::vector<RunRecord> records, const std::vector<std::string>& plans);

}  // namespace noonhouse
