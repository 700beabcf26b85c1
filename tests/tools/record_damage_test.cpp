// SPDX-License-Identifier: Apache-2.0
// Files that are no results, or no longer: the reader says so, and never dies of them.
#include <H5Cpp.h>
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <unistd.h>

#include <boost/random/mersenne_twister.hpp>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <span>

#include "sim/core/errors.hpp"
#include "tests/tools/record_sample.hpp"
#include "tools/record/record_difference.hpp"
#include "tools/record/record_reader.hpp"
#include "tools/record/record_seal.hpp"
#include "tools/record/record_writer.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

class RecordDamage : public ::testing::Test {
 protected:
  RecordDamage() {
    std::string pattern = (fs::temp_directory_path() / "noonhouse-damage-XXXXXX").string();
    const char* made = ::mkdtemp(pattern.data());
    if (made == nullptr) throw std::runtime_error("no temporary folder");
    folder_ = made;
    path_ = folder_ / "run.h5";
  }
  ~RecordDamage() override { fs::remove_all(folder_); }

  void put(const std::string& bytes) const { std::ofstream(path_, std::ios::binary) << bytes; }
  std::string sample_bytes() const {
    const std::vector<std::byte> image = run_file_image(sample_record());
    std::string bytes(image.size(), '\0');
    for (std::size_t k = 0; k < image.size(); ++k) bytes[k] = static_cast<char>(image[k]);
    return bytes;
  }
  /// The reader's message about the file, which it must refuse with this kind of error.
  std::string refusal(ErrorKind kind = ErrorKind::results_unreadable) const {
    try {
      read_run(path_);
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), kind);
      EXPECT_THAT(error.what(), HasSubstr(path_.string()));
      return error.what();
    }
    ADD_FAILURE() << "the file was accepted";
    return {};
  }
  /// Writes the sample and changes it with the HDF5 library.
  void change(const std::function<void(H5::H5File&)>& by) const {
    write_run(sample_record(), path_);
    H5::H5File file(path_.string(), H5F_ACC_RDWR);
    by(file);
  }

  fs::path folder_, path_;
};

TEST_F(RecordDamage, AMissingFileIsSaid) { EXPECT_THAT(refusal(ErrorKind::file_missing), HasSubstr("no such file")); }

TEST_F(RecordDamage, AFolderIsSaid) {
  fs::create_directory(path_);
  EXPECT_THAT(refusal(), HasSubstr("it is a folder"));
}

TEST_F(RecordDamage, AFileThatIsNotHdf5IsSaidWithWhatWasExpected) {
  for (const char* content : {"", "house:\n  bays: 2\n"}) {
    put(content);
    const std::string message = refusal();
    EXPECT_THAT(message, HasSubstr("it is not HDF5"));
    EXPECT_THAT(message, HasSubstr("expected a results file of a run"));
  }
}

TEST_F(RecordDamage, AnHdf5FileOfAnotherProgramIsSaid) {
  H5::H5File(path_.string(), H5F_ACC_TRUNC).createGroup("something");
  EXPECT_THAT(refusal(), HasSubstr("it has no attribute 'record_version'"));
}

TEST_F(RecordDamage, AnotherLayoutVersionIsSaid) {
  change([](H5::H5File& file) {
    const int version = kRecordVersion + 1;
    file.openAttribute("record_version").write(H5::PredType::NATIVE_INT, &version);
  });
  EXPECT_THAT(refusal(), HasSubstr(fmt::format("its layout has version {}", kRecordVersion + 1)));
}

TEST_F(RecordDamage, MissingPartsAreRefused) {
  for (const char* part : {"time", "metrics/plants/hours_beyond", "events", "provenance/seed", "scenario/text"}) {
    change([&](H5::H5File& file) { file.unlink(part); });
    refusal();
  }
}

TEST_F(RecordDamage, ChainsThatDoNotFitAreRefused) {
  for (const int length : {-1, 1000}) {
    change([&](H5::H5File& file) {
      const int lengths[3] = {length, 0, 1};
      file.openDataSet("metrics/failures/chain_length").write(lengths, H5::PredType::NATIVE_INT);
    });
    EXPECT_THAT(refusal(), HasSubstr("chains"));
  }
}

TEST_F(RecordDamage, VariablesOfOthersAreLeftOut) {
  change([](H5::H5File& file) {
    const double value = 1.0;
    file.createDataSet("note", H5::PredType::NATIVE_DOUBLE, H5::DataSpace(H5S_SCALAR))
        .write(&value, H5::PredType::NATIVE_DOUBLE);
    const hsize_t count = 4;
    file.createDataSet("list", H5::PredType::NATIVE_DOUBLE, H5::DataSpace(1, &count));
  });
  EXPECT_EQ(first_difference(read_run(path_), sample_record()), "");
}

TEST_F(RecordDamage, AFileCutShortAnywhereIsRefused) {
  std::string whole = sample_bytes();
  whole.resize(whole.rfind("\nsealed"));
  for (std::size_t k = 0; k < 40; ++k) {
    put(whole.substr(0, whole.size() * k / 40));
    refusal();
  }
  put(whole.substr(0, whole.size() - 1));
  refusal();
}

TEST_F(RecordDamage, ADamagedSeriesIsRefusedNotReadWrong) {
  write_run(sample_record(), path_);
  haddr_t at = 0;
  hsize_t size = 0;
  {
    const H5::H5File file(path_.string(), H5F_ACC_RDONLY);
    const hsize_t first[3] = {0, 0, 0};
    const H5::DataSet air = file.openDataSet("air_temperature");
    unsigned filters = 0;
    ASSERT_GE(H5Dget_chunk_info_by_coord(air.getId(), first, &filters, &at, &size), 0);
  }
  std::string bytes = sample_bytes();
  for (const bool sealed : {true, false}) {  // without its seal the chunk's own checksum must find it
    for (const hsize_t offset : {hsize_t{10}, size / 2, size - 3}) {
      std::string damaged = bytes;
      damaged[at + offset] = static_cast<char>(damaged[at + offset] ^ 0x10);
      if (!sealed) damaged.resize(damaged.rfind("\nsealed"));
      put(damaged);
      refusal();
    }
  }
}

TEST_F(RecordDamage, AFileWithoutItsSealIsRead) {
  std::string bytes = sample_bytes();
  bytes.resize(bytes.rfind("\nsealed"));
  put(bytes);
  EXPECT_EQ(first_difference(read_run(path_), sample_record()), "");
}

// The check value of CRC-64/XZ is its value for the digits 1 to 9; this one from memory of the public CRC catalogues.
TEST_F(RecordDamage, TheSealsChecksumHasItsPublishedCheckValue) {
  const std::string digits = "123456789";
  EXPECT_EQ(crc64(std::as_bytes(std::span(digits))), 0x995DC9BBDF1939FAu);
}

TEST_F(RecordDamage, DamageAnywhereIsRefused) {
  const std::string whole = sample_bytes();
  boost::random::mt19937 random(20250714);
  const std::size_t sealed = whole.rfind("\nsealed");
  for (int trial = 0; trial < 300; ++trial) {
    std::string damaged = whole;
    char& byte = damaged[random() % sealed];
    byte = static_cast<char>(byte ^ (1 + random() % 255));
    put(damaged);
    EXPECT_THAT(refusal(), HasSubstr("checksum"));
  }
}

}  // namespace
}  // namespace noonhouse
