// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/record/hdf5_tools.hpp"

namespace noonhouse::hdf5 {

/// Where one variable uses a dimension: the variable's address and which of its dimensions it is.
struct DimensionUse {
  hobj_ref_t variable;
  int index;
};

/// A named dimension: a one-dimensional dataset of the same name that is an HDF5 dimension scale.
/// `growable` dimensions are unlimited in the file; those of length 0 always are, since netCDF knows no fixed length 0.
struct FileDimension {
  std::string name;
  hsize_t length = 0;
  bool growable = false;
  std::vector<DimensionUse> uses = {};
};
using Dimensions = std::vector<FileDimension*>;

/// Writes one variable, row-major over `dimensions` (none: one value), and notes its use of them.
/// Numbers over a growable dimension are chunked, shuffled and deflated; a variable that bears the name of its only
/// dimension becomes that dimension's scale. Doubles get a NaN `_FillValue` unless they are coordinates.
/// Value is double, int, std::int64_t or std::string.
template <class Value>
H5::DataSet put_variable(const H5::Group& group, const std::string& name, const std::vector<Value>& values,
                         const Dimensions& dimensions);

/// Writes the list of a dimension's uses to its scale; once, after the last variable that uses it.
void close_dimension(const H5::Group& group, const FileDimension& dimension);

/// All values of a variable, row-major; throws H5::Exception where its kind of value cannot be read as Value.
template <class Value>
std::vector<Value> get_variable(const H5::DataSet& variable);

/// Lengths of a variable's dimensions, outermost first; empty for a single value.
std::vector<hsize_t> shape(const H5::DataSet& variable);
/// Names of a variable's dimensions, outermost first; "" where a dimension has no scale.
std::vector<std::string> dimension_names(const H5::DataSet& variable);

}  // namespace noonhouse::hdf5
