// SPDX-License-Identifier: Apache-2.0
#include "tools/record/hdf5_tools.hpp"

#include <cstdlib>
#include <cstring>

#include "sim/core/errors.hpp"

namespace noonhouse::hdf5 {
namespace {

std::mutex& library_mutex() {
  static std::mutex mutex;
  return mutex;
}

constexpr unsigned kKeepOrder = H5P_CRT_ORDER_TRACKED | H5P_CRT_ORDER_INDEXED;
constexpr std::size_t kGrowth = std::size_t{1} << 20;  // bytes the memory file grows by
constexpr std::size_t kEndOfFileAt = 28;               // in a superblock of version 2 with 8-byte addresses

void* allocate(std::size_t size, H5FD_file_image_op_t, void*) { return std::malloc(size); }
void* reallocate(void* bytes, std::size_t size, H5FD_file_image_op_t, void*) { return std::realloc(bytes, size); }
void* copy(void* to, const void* from, std::size_t size, H5FD_file_image_op_t, void*) {
  return std::memcpy(to, from, size);
}
herr_t release(void* bytes, H5FD_file_image_op_t operation, void* memory) {
  if (operation == H5FD_FILE_IMAGE_OP_FILE_CLOSE && memory != nullptr) {
    static_cast<FileMemory*>(memory)->bytes = bytes;
  } else {
    std::free(bytes);
  }
  return 0;
}
void* share_memory(void* memory) { return memory; }
herr_t leave_memory(void*) { return 0; }

H5::FileAccPropList memory_access(FileMemory& memory) {
  H5::FileAccPropList access;
  checked(H5Pset_fapl_core(access.getId(), kGrowth, false), "H5Pset_fapl_core");
  // H5Fget_file_image would be shorter, but clears a flag of the superblock and leaves its checksum wrong.
  H5FD_file_image_callbacks_t callbacks{allocate, copy, reallocate, release, share_memory, leave_memory, &memory};
  checked(H5Pset_file_image_callbacks(access.getId(), &callbacks), "H5Pset_file_image_callbacks");
  // The oldest bounds that keep creation order: read by netCDF-4 libraries built on HDF5 1.8 and later.
  checked(H5Pset_libver_bounds(access.getId(), H5F_LIBVER_V18, H5F_LIBVER_V18), "H5Pset_libver_bounds");
  return access;
}

H5::FileCreatPropList file_properties() {
  H5::FileCreatPropList properties;
  checked(H5Pset_link_creation_order(properties.getId(), kKeepOrder), "H5Pset_link_creation_order");
  checked(H5Pset_attr_creation_order(properties.getId(), kKeepOrder), "H5Pset_attr_creation_order");
  checked(H5Pset_obj_track_times(properties.getId(), false), "H5Pset_obj_track_times");
  return properties;
}

herr_t note_dataset(hid_t group, const char* name, const H5L_info_t*, void* names) {
  H5O_info_t about;
  if (H5Oget_info_by_name2(group, name, &about, H5O_INFO_BASIC, H5P_DEFAULT) < 0) return -1;
  if (about.type == H5O_TYPE_DATASET) static_cast<std::vector<std::string>*>(names)->emplace_back(name);
  return 0;
}

}  // namespace

Session::Session() : lock_(library_mutex()) {
  H5Eget_auto2(H5E_DEFAULT, &print_, &print_data_);
  H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
}

Session::~Session() { H5Eset_auto2(H5E_DEFAULT, print_, print_data_); }

MemoryFile::MemoryFile() : file_("run in memory", H5F_ACC_TRUNC, file_properties(), memory_access(memory_)) {}

MemoryFile::~MemoryFile() {
  try {
    if (memory_.bytes == nullptr) file_.close();
  } catch (const H5::Exception&) {  // already on the way out of an error, which is the one to report
  }
  std::free(memory_.bytes);
}

std::vector<std::byte> MemoryFile::close() {
  file_.flush(H5F_SCOPE_GLOBAL);  // reports what closing would only swallow
  NOON_ASSERT(H5Fget_obj_count(file_.getId(), H5F_OBJ_ALL) == 1);
  file_.close();
  NOON_ASSERT(memory_.bytes != nullptr);
  const auto* bytes = static_cast<const std::byte*>(memory_.bytes);
  // The memory is longer than the file. The superblock (version 2) holds the end of the file, little-endian.
  std::uint64_t end = 0;
  for (std::size_t k = 8; k-- > 0;) end = end << 8 | std::to_integer<std::uint64_t>(bytes[kEndOfFileAt + k]);
  return {bytes, bytes + end};
}

H5::Group create_group(const H5::Group& parent, const std::string& name) {
  const hid_t properties = checked(H5Pcreate(H5P_GROUP_CREATE), "H5Pcreate");
  H5Pset_link_creation_order(properties, kKeepOrder);
  H5Pset_attr_creation_order(properties, kKeepOrder);
  H5Pset_obj_track_times(properties, false);
  const hid_t id = H5Gcreate2(parent.getId(), name.c_str(), H5P_DEFAULT, properties, H5P_DEFAULT);
  H5Pclose(properties);
  H5::Group group(checked(id, "H5Gcreate2"));
  H5Gclose(id);  // the object above counts for itself
  return group;
}

H5::DSetCreatPropList dataset_properties() {
  H5::DSetCreatPropList properties;
  checked(H5Pset_attr_creation_order(properties.getId(), kKeepOrder), "H5Pset_attr_creation_order");
  checked(H5Pset_obj_track_times(properties.getId(), false), "H5Pset_obj_track_times");
  return properties;
}

std::vector<std::string> dataset_names(const H5::Group& group) {
  std::vector<std::string> names;
  hsize_t at = 0;
  if (H5Literate(group.getId(), H5_INDEX_CRT_ORDER, H5_ITER_INC, &at, note_dataset, &names) < 0) {
    names.clear();
    at = 0;
    checked(H5Literate(group.getId(), H5_INDEX_NAME, H5_ITER_INC, &at, note_dataset, &names), "H5Literate");
  }
  return names;
}

void put_text_attribute(const H5::H5Object& at, const std::string& name, const std::string& text) {
  if (text.empty()) return;
  H5::StrType type(H5::PredType::C_S1, text.size());
  type.setCset(H5T_CSET_UTF8);
  at.createAttribute(name, type, H5::DataSpace(H5S_SCALAR)).write(type, text.data());
}

std::string text_attribute(const H5::H5Object& at, const std::string& name) {
  if (!at.attrExists(name)) return {};
  const H5::Attribute attribute = at.openAttribute(name);
  if (attribute.getTypeClass() != H5T_STRING) throw H5::AttributeIException("text_attribute", name + " is no text");
  std::string text;
  attribute.read(attribute.getStrType(), text);
  return text;
}

}  // namespace noonhouse::hdf5
