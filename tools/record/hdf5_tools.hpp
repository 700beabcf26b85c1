// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <H5Cpp.h>

#include <cstddef>
#include <cstdint>
#include <mutex>
#include <string>
#include <type_traits>
#include <vector>

namespace noonhouse::hdf5 {

/// While one lives, this thread alone uses the HDF5 library (which holds no lock of its own), and the library prints
/// no error stacks: errors arrive as H5::Exception, which is not a std::exception.
class Session {
 public:
  Session();
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

 private:
  std::unique_lock<std::mutex> lock_;
  H5E_auto2_t print_ = nullptr;
  void* print_data_ = nullptr;
};

/// Throws H5::Exception when a call of the library's C interface reports failure; else returns its value.
template <class Value>
Value checked(Value value, const char* call) {
  if (value < 0) throw H5::Exception(call, "call failed");
  return value;
}

/// The type of a value in the file; fixed byte order, so that the file is the same on every machine.
template <class Value>
H5::DataType file_type() {
  if constexpr (std::is_same_v<Value, double>) return H5::PredType::IEEE_F64LE;
  if constexpr (std::is_same_v<Value, int>) return H5::PredType::STD_I32LE;
  if constexpr (std::is_same_v<Value, std::int64_t>) return H5::PredType::STD_I64LE;
  // Fixed-length labels crash one of the readers; variable-length UTF-8 is read by all.
  if constexpr (std::is_same_v<Value, std::string>) {
    H5::StrType text(H5::PredType::C_S1, H5T_VARIABLE);
    text.setCset(H5T_CSET_UTF8);
    return text;
  }
}

/// The type of a value in memory.
template <class Value>
H5::DataType memory_type() {
  if constexpr (std::is_same_v<Value, double>) return H5::PredType::NATIVE_DOUBLE;
  if constexpr (std::is_same_v<Value, int>) return H5::PredType::NATIVE_INT;
  if constexpr (std::is_same_v<Value, std::int64_t>) return H5::PredType::NATIVE_INT64;
  if constexpr (std::is_same_v<Value, std::string>) return file_type<Value>();
}

/// The memory that the library builds a file in, and hands over when it closes the file.
struct FileMemory {
  void* bytes = nullptr;  ///< from malloc; null until the file is closed
};

/// An HDF5 file built in memory, for one write to the disk when it is complete: a full disk then shows as a plain
/// write error, and never leaves the library with a file that it cannot close.
/// Objects carry no times of creation and their members keep the order of creation.
class MemoryFile {
 public:
  MemoryFile();
  ~MemoryFile();
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;

  H5::Group root() const { return file_.openGroup("/"); }
  /// Closes the file and returns its bytes; every object of it must be closed by now.
  std::vector<std::byte> close();

 private:
  FileMemory memory_;
  H5::H5File file_;
};

/// A new group without times, members in order of creation.
H5::Group create_group(const H5::Group& parent, const std::string& name);
/// A dataset creation list without times, attributes in order of creation.
H5::DSetCreatPropList dataset_properties();

/// Names of the datasets directly in a group, in order of creation (of name where no order is kept).
std::vector<std::string> dataset_names(const H5::Group& group);

/// Writes a text attribute as netCDF does (fixed length, UTF-8); an empty text leaves no attribute.
void put_text_attribute(const H5::H5Object& at, const std::string& name, const std::string& text);
/// The text of an attribute; empty where there is none.
std::string text_attribute(const H5::H5Object& at, const std::string& name);

}  // namespace noonhouse::hdf5
