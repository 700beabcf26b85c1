// SPDX-License-Identifier: Apache-2.0
// Long because every way a file can fail to be written or read back stands beside its fellows.
// The run file: what is written is read, byte for byte the same each time, whole or not at all.
#include <fcntl.h>
#include <gmock/gmock.h>
#include <sys/file.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iterator>
#include <thread>

#include "sim/core/errors.hpp"
#include "tests/tools/record_sample.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/record/record_difference.hpp"
#include "tools/record/record_reader.hpp"
#include "tools/record/record_writer.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

/// A folder of its own for each test, removed with all it holds.
class RecordFile : public ::testing::Test {
 protected:
  RecordFile() {
    std::string pattern = (fs::temp_directory_path() / "noonhouse-record-XXXXXX").string();
    const char* made = ::mkdtemp(pattern.data());
    if (made == nullptr) throw std::runtime_error("no temporary folder");
    folder_ = made;
  }
  ~RecordFile() override { fs::remove_all(folder_); }

  std::string read_bytes(const fs::path& path) const {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  void write_bytes(const fs::path& path, const std::string& bytes) const {
    std::ofstream(path, std::ios::binary) << bytes;
  }
  std::size_t entries(const fs::path& folder) const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
  }
  /// Runs what must fail with a UserError of this kind and returns its message.
  std::string message_of(ErrorKind kind, const std::function<void()>& run) const {
    try {
      run();
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), kind) << error.what();
      return error.what();
    }
    ADD_FAILURE() << "no error";
    return {};
  }

  fs::path folder_;
};

TEST_F(RecordFile, EveryFieldIsReadAsWritten) {
  const RunRecord record = sample_record();
  write_run(record, folder_ / "run.h5");
  EXPECT_EQ(first_difference(record, read_run(folder_ / "run.h5")), "");
}

TEST_F(RecordFile, ARecordWithoutAnythingIsReadAsWritten) {
  write_run(RunRecord{}, folder_ / "run.h5");
  EXPECT_EQ(first_difference(RunRecord{}, read_run(folder_ / "run.h5")), "");
}

TEST_F(RecordFile, AxesWithoutEntriesAndLongTextsAreReadAsWritten) {
  RunRecord record = sample_record();
  record.axes.push_back({"bench", "bench", {}, {}, ""});
  record.series.push_back({"bench_mass", "", "kg", "", "", {"bench"}, {}});
  record.about.assign(100'000, 'x');  // an attribute beyond the 64 KiB of compact storage
  record.scenario_text.assign(3'000'000, 'y');
  record.cautions.assign(5000, "again");
  write_run(record, folder_ / "run.h5");
  EXPECT_EQ(first_difference(record, read_run(folder_ / "run.h5")), "");
}

TEST_F(RecordFile, SeriesOfManyChunksAreReadAsWritten) {
  RunRecord record = sample_record();
  record.time_s.clear();
  for (RecordSeries& series : record.series) series.values.clear();
  for (int k = 0; k < 10'001; ++k) {
    record.time_s.push_back(60.0 * k);
    for (int j = 0; j < 6; ++j) record.series[0].values.push_back(290.0 + std::sin(k + 0.1 * j));
    record.series[1].values.push_back(k % 7 == 0 ? kNotHappened : 1.0 / (k + 1));
  }
  for (int k = 3; k < 10'000; ++k) record.events.push_back({10'000'000'000 + k, 2, 0.5 * k, "action", "fan", "on"});
  write_run(record, folder_ / "run.h5");
  EXPECT_EQ(first_difference(record, read_run(folder_ / "run.h5")), "");
}

/// One test per listed field would be long; instead every field is changed in turn and must come back changed.
TEST_F(RecordFile, AChangeOfAnyFieldReachesTheFileAndIsSeen) {
  const RunRecord original = sample_record();
  int changed = 0;
  const auto check = [&](const RunRecord& other, const std::string& what) {
    ++changed;
    write_run(other, folder_ / "run.h5");
    const RunRecord back = read_run(folder_ / "run.h5");
    EXPECT_EQ(first_difference(other, back), "") << what;
    EXPECT_NE(first_difference(original, back), "") << what;
  };
  const auto change = [](auto& value) {
    if constexpr (std::is_same_v<std::decay_t<decltype(value)>, std::string>) {
      value += " other";
    } else {
      value = 77;
    }
  };
  for_each_entry(kRecordTables, [&](const auto& table) {
    using Row = typename std::decay_t<decltype(original.*table.rows)>::value_type;
    for_each_field<Row>([&](const auto& field) {
      RunRecord other = original;
      change((other.*table.rows)[2].*field.member);
      check(other, fmt::format("{}/{}", table.group, field.name));
    });
  });
  for_each_entry(kRecordBlocks, [&](const auto& block) {
    using Struct = std::decay_t<decltype(original.*block.member)>;
    for_each_field<Struct>([&](const auto& field) {
      RunRecord other = original;
      change(other.*block.member.*field.member);
      check(other, fmt::format("{}/{}", block.group, field.name));
    });
  });
  EXPECT_GT(changed, 70);
}

TEST_F(RecordFile, EqualRecordsGiveEqualBytes) {
  write_run(sample_record(), folder_ / "a.h5");
  write_run(sample_record(), folder_ / "b.h5");
  const std::string a = read_bytes(folder_ / "a.h5");
  EXPECT_GT(a.size(), 1000u);
  EXPECT_TRUE(a == read_bytes(folder_ / "b.h5"));
  RunRecord other = sample_record();
  other.series[1].values[3] = std::nextafter(other.series[1].values[3], 0.0);
  write_run(other, folder_ / "b.h5");
  EXPECT_FALSE(a == read_bytes(folder_ / "b.h5"));
}

TEST_F(RecordFile, ThreadsMayWriteAndReadAtOnce) {
  std::vector<std::string> differences(4, "not run");
  std::vector<std::thread> threads;
  for (std::size_t k = 0; k < differences.size(); ++k) {
    threads.emplace_back([&, k] {
      const fs::path path = folder_ / fmt::format("{}.h5", k);
      RunRecord record = sample_record();
      record.provenance.seed = static_cast<std::int64_t>(k);
      for (int again = 0; again < 5; ++again) write_run(record, path);
      differences[k] = first_difference(record, read_run(path));
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_THAT(differences, ::testing::Each(""));
}

TEST_F(RecordFile, AnOlderFileIsReplacedAndNoPartIsLeft) {
  write_bytes(folder_ / "run.h5", std::string(500'000, 'o'));
  write_bytes(folder_ / "run.h5.part", std::string(500'000, 'p'));  // of a run that was killed
  write_run(sample_record(), folder_ / "run.h5");
  EXPECT_EQ(first_difference(sample_record(), read_run(folder_ / "run.h5")), "");
  EXPECT_EQ(entries(folder_), 1u);
}

TEST_F(RecordFile, AMissingFolderIsNamed) {
  const auto message =
      message_of(ErrorKind::results_not_writable, [&] { write_run(sample_record(), folder_ / "none" / "run.h5"); });
  EXPECT_THAT(message, HasSubstr("the folder '" + (folder_ / "none").string() + "' does not exist"));
  EXPECT_EQ(entries(folder_), 0u);
}

TEST_F(RecordFile, AFileInPlaceOfTheFolderIsNamed) {
  write_bytes(folder_ / "file", "x");
  const auto message =
      message_of(ErrorKind::results_not_writable, [&] { write_run(sample_record(), folder_ / "file" / "run.h5"); });
  EXPECT_THAT(message, HasSubstr("is not a folder"));
  EXPECT_EQ(read_bytes(folder_ / "file"), "x");
}

TEST_F(RecordFile, FoldersAndDevicesAreNeverReplaced) {
  fs::create_directory(folder_ / "run.h5");
  ASSERT_EQ(::mkfifo((folder_ / "pipe").c_str(), 0600), 0);
  for (const char* name : {"run.h5", "pipe", ""}) {
    const auto message =
        message_of(ErrorKind::results_not_writable, [&] { write_run(sample_record(), folder_ / name); });
    EXPECT_THAT(message, HasSubstr("not an ordinary file")) << name;
  }
  EXPECT_TRUE(fs::is_directory(folder_ / "run.h5"));
  EXPECT_TRUE(fs::is_fifo(folder_ / "pipe"));
  EXPECT_EQ(entries(folder_), 2u);
}

TEST_F(RecordFile, APartThatAnotherWriterHoldsIsLeftAlone) {
  const fs::path part = folder_ / "run.h5.part";
  write_bytes(part, "half");
  const int holder = ::open(part.c_str(), O_WRONLY);  // flock counts each opening for itself, as it does processes
  ASSERT_EQ(::flock(holder, LOCK_EX | LOCK_NB), 0);
  const auto message =
      message_of(ErrorKind::results_not_writable, [&] { write_run(sample_record(), folder_ / "run.h5"); });
  EXPECT_THAT(message, HasSubstr("another process is writing it"));
  EXPECT_FALSE(fs::exists(folder_ / "run.h5"));
  EXPECT_EQ(read_bytes(part), "half");
  ::close(holder);
}

/// A small file system of its own, unmounted at the end.
class SmallDisk {
 public:
  SmallDisk(fs::path at, unsigned long flags, const char* options) : at_(std::move(at)) {
    fs::create_directory(at_);
    mounted_ = ::mount("tmpfs", at_.c_str(), "tmpfs", flags, options) == 0;
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;
  ~SmallDisk() {
    if (mounted_) ::umount2(at_.c_str(), MNT_DETACH);
  }
  bool mounted() const { return mounted_; }

 private:
  fs::path at_;
  bool mounted_ = false;
};

TEST_F(RecordFile, AFullDiskIsSaidAndTheOldFileStays) {
  const SmallDisk disk(folder_ / "disk", 0, "size=32k");
  if (!disk.mounted()) GTEST_SKIP() << "mounting a small disk needs more rights";
  write_bytes(folder_ / "disk" / "run.h5", "old");
  const auto message =
      message_of(ErrorKind::disk_full, [&] { write_run(sample_record(), folder_ / "disk" / "run.h5"); });
  EXPECT_THAT(message, HasSubstr("no room left"));
  EXPECT_EQ(read_bytes(folder_ / "disk" / "run.h5"), "old");
  EXPECT_EQ(entries(folder_ / "disk"), 1u);
}

TEST_F(RecordFile, AReadOnlyDiskIsSaid) {
  const SmallDisk disk(folder_ / "disk", MS_RDONLY, "size=32k");
  if (!disk.mounted()) GTEST_SKIP() << "mounting a small disk needs more rights";
  const auto message =
      message_of(ErrorKind::results_not_writable, [&] { write_run(sample_record(), folder_ / "disk" / "run.h5"); });
  EXPECT_THAT(message, HasSubstr("read-only"));
}

/// Limits the size of files this process may write; needs no rights, so a write that stops halfway is always tested.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    handler_ = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit lower{bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &lower);
  }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;
  ~FileSizeLimit() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }

 private:
  rlimit before_{};
  void (*handler_)(int) = SIG_DFL;
};

TEST_F(RecordFile, AWriteThatStopsHalfwayLeavesTheOldFileAndNoPart) {
  write_bytes(folder_ / "run.h5", "old");
  std::string message;
  {
    const FileSizeLimit limit(20'000);
    message = message_of(ErrorKind::disk_full, [&] { write_run(sample_record(), folder_ / "run.h5"); });
  }
  EXPECT_THAT(message, HasSubstr("no room left"));
  EXPECT_EQ(read_bytes(folder_ / "run.h5"), "old");
  EXPECT_EQ(entries(folder_), 1u);
}

using RecordFileDeathTest = RecordFile;

TEST_F(RecordFileDeathTest, ARecordThatIsNotWholeIsAProgrammingError) {
  RunRecord record = sample_record();
  record.series[0].values.pop_back();
  EXPECT_DEATH(write_run(record, folder_ / "run.h5"), "broken invariant");
  record = sample_record();
  record.series[1].name = "time";
  EXPECT_DEATH(write_run(record, folder_ / "run.h5"), "broken invariant");
  record = sample_record();
  record.series[0].axes[0] = "shelf";
  EXPECT_DEATH(write_run(record, folder_ / "run.h5"), "broken invariant");
}

}  // namespace
}  // namespace noonhouse
