// SPDX-License-Identifier: Apache-2.0
#include "tools/record/hdf5_columns.hpp"

#include <hdf5_hl.h>

#include <algorithm>
#include <limits>

#include "sim/core/errors.hpp"

namespace noonhouse::hdf5 {
namespace {

constexpr hsize_t kChunkRows = 4096;
constexpr hsize_t kChunkValues = 131072;  // 1 MiB of doubles: the default chunk cache of readers
constexpr unsigned kDeflateLevel = 1;
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

bool unlimited(const FileDimension& dimension) { return dimension.growable || dimension.length == 0; }

bool is_own_scale(const std::string& name, const Dimensions& dimensions) {
  return dimensions.size() == 1 && dimensions.front()->name == name;
}

H5::DataSpace space_of(const Dimensions& dimensions) {
  if (dimensions.empty()) return H5::DataSpace(H5S_SCALAR);
  std::vector<hsize_t> now, most;
  for (const FileDimension* dimension : dimensions) {
    now.push_back(dimension->length);
    most.push_back(unlimited(*dimension) ? H5S_UNLIMITED : dimension->length);
  }
  return H5::DataSpace(static_cast<int>(now.size()), now.data(), most.data());
}

void set_chunks(const H5::DSetCreatPropList& properties, const Dimensions& dimensions) {
  std::vector<hsize_t> chunk;
  hsize_t inner = 1;
  for (const FileDimension* dimension : dimensions) chunk.push_back(std::max<hsize_t>(dimension->length, 1));
  for (std::size_t k = 1; k < chunk.size(); ++k) inner *= chunk[k];
  const hsize_t rows = std::min(kChunkRows, std::max<hsize_t>(kChunkValues / inner, 1));
  chunk.front() = std::min(chunk.front(), rows);
  properties.setChunk(static_cast<int>(chunk.size()), chunk.data());
}

template <class Value>
H5::DSetCreatPropList properties_of(const Dimensions& dimensions) {
  const H5::DSetCreatPropList properties = dataset_properties();
  if (std::any_of(dimensions.begin(), dimensions.end(), [](const FileDimension* d) { return unlimited(*d); })) {
    set_chunks(properties, dimensions);
    if constexpr (!std::is_same_v<Value, std::string>) {
      properties.setShuffle();
      properties.setDeflate(kDeflateLevel);
    }
  }
  if constexpr (std::is_same_v<Value, double>) properties.setFillValue(H5::PredType::NATIVE_DOUBLE, &kNan);
  return properties;
}

hobj_ref_t reference_to(const H5::DataSet& dataset) {
  hobj_ref_t reference = 0;
  checked(H5Rcreate(&reference, dataset.getId(), ".", H5R_OBJECT, -1), "H5Rcreate");
  return reference;
}

/// Writes the variable's list of scales. The library's own H5DSattach_scale writes uninitialised padding beside
/// every entry (so that equal runs would differ) and rewrites the scale's list for each variable.
void put_dimension_list(const H5::Group& group, const H5::DataSet& variable, const Dimensions& dimensions) {
  std::vector<hobj_ref_t> scales;
  for (const FileDimension* dimension : dimensions) scales.push_back(reference_to(group.openDataSet(dimension->name)));
  std::vector<hvl_t> entries;
  for (hobj_ref_t& scale : scales) entries.push_back({1, &scale});
  const H5::VarLenType type(H5::PredType::STD_REF_OBJ);
  const hsize_t rank = entries.size();
  variable.createAttribute("DIMENSION_LIST", type, H5::DataSpace(1, &rank)).write(type, entries.data());
}

/// Opens the scale that a dimension of a variable is attached to and notes its name.
herr_t note_scale_name(hid_t, unsigned, hid_t scale, void* name) {
  const ssize_t size = H5Iget_name(scale, nullptr, 0);
  if (size < 0) return -1;
  std::string path(static_cast<std::size_t>(size) + 1, '\0');
  if (H5Iget_name(scale, path.data(), path.size()) < 0) return -1;
  path.resize(static_cast<std::size_t>(size));
  *static_cast<std::string*>(name) = path.substr(path.rfind('/') + 1);
  return 1;
}

}  // namespace

template <class Value>
H5::DataSet put_variable(const H5::Group& group, const std::string& name, const std::vector<Value>& values,
                         const Dimensions& dimensions) {
  hsize_t expected = 1;
  for (const FileDimension* dimension : dimensions) expected *= dimension->length;
  NOON_ASSERT(values.size() == expected);
  const H5::DataType type = memory_type<Value>();
  H5::DataSet variable =
      group.createDataSet(name, file_type<Value>(), space_of(dimensions), properties_of<Value>(dimensions));
  if constexpr (std::is_same_v<Value, std::string>) {
    std::vector<const char*> texts;
    for (const std::string& value : values) texts.push_back(value.c_str());
    if (!texts.empty()) variable.write(texts.data(), type);
  } else {
    if (!values.empty()) variable.write(values.data(), type);
  }
  if (is_own_scale(name, dimensions)) {
    checked(H5DSset_scale(variable.getId(), name.c_str()), "H5DSset_scale");
    return variable;
  }
  if constexpr (std::is_same_v<Value, double>) {
    const hsize_t one = 1;
    variable.createAttribute("_FillValue", file_type<double>(), H5::DataSpace(1, &one)).write(type, &kNan);
  }
  if (!dimensions.empty()) put_dimension_list(group, variable, dimensions);
  for (std::size_t k = 0; k < dimensions.size(); ++k) {
    dimensions[k]->uses.push_back({reference_to(variable), static_cast<int>(k)});
  }
  return variable;
}

void close_dimension(const H5::Group& group, const FileDimension& dimension) {
  if (dimension.uses.empty()) return;
  constexpr std::size_t kEntrySize = sizeof(hobj_ref_t) + sizeof(std::int32_t);
  H5::CompType file(kEntrySize);
  file.insertMember("dataset", 0, H5::PredType::STD_REF_OBJ);
  file.insertMember("dimension", sizeof(hobj_ref_t), H5::PredType::STD_I32LE);
  H5::CompType memory(sizeof(DimensionUse));
  memory.insertMember("dataset", HOFFSET(DimensionUse, variable), H5::PredType::STD_REF_OBJ);
  memory.insertMember("dimension", HOFFSET(DimensionUse, index), H5::PredType::NATIVE_INT);
  const hsize_t count = dimension.uses.size();
  group.openDataSet(dimension.name)
      .createAttribute("REFERENCE_LIST", file, H5::DataSpace(1, &count))
      .write(memory, dimension.uses.data());
}

template <class Value>
std::vector<Value> get_variable(const H5::DataSet& variable) {
  const H5::DataSpace space = variable.getSpace();
  const auto count = static_cast<std::size_t>(space.getSimpleExtentNpoints());
  const H5::DataType type = memory_type<Value>();
  if ((variable.getTypeClass() == H5T_STRING) != std::is_same_v<Value, std::string>) {
    throw H5::DataSetIException("get_variable", "text where numbers are expected, or numbers where text is");
  }
  if constexpr (std::is_same_v<Value, std::string>) {
    if (!variable.getStrType().isVariableStr()) throw H5::DataSetIException("get_variable", "text of fixed length");
    std::vector<char*> texts(count, nullptr);
    if (count > 0) variable.read(texts.data(), type);
    std::vector<std::string> values;
    for (const char* text : texts) values.emplace_back(text == nullptr ? "" : text);
    if (count > 0) H5Dvlen_reclaim(type.getId(), space.getId(), H5P_DEFAULT, texts.data());
    return values;
  } else {
    std::vector<Value> values(count);
    if (count > 0) variable.read(values.data(), type);
    return values;
  }
}

std::vector<hsize_t> shape(const H5::DataSet& variable) {
  const H5::DataSpace space = variable.getSpace();
  std::vector<hsize_t> lengths(static_cast<std::size_t>(space.getSimpleExtentNdims()));
  if (!lengths.empty()) space.getSimpleExtentDims(lengths.data());
  return lengths;
}

std::vector<std::string> dimension_names(const H5::DataSet& variable) {
  std::vector<std::string> names(shape(variable).size());
  for (std::size_t k = 0; k < names.size(); ++k) {
    checked(H5DSiterate_scales(variable.getId(), static_cast<unsigned>(k), nullptr, note_scale_name, &names[k]),
            "H5DSiterate_scales");
  }
  return names;
}

#define NOONHOUSE_COLUMN(Value)                                                                      \
  template H5::DataSet put_variable(const H5::Group&, const std::string&, const std::vector<Value>&, \
                                    const Dimensions&);                                              \
  template std::vector<Value> get_variable(const H5::DataSet&);
NOONHOUSE_COLUMN(double)
NOONHOUSE_COLUMN(int)
NOONHOUSE_COLUMN(std::int64_t)
NOONHOUSE_COLUMN(std::string)
#undef NOONHOUSE_COLUMN

}  // namespace noonhouse::hdf5
