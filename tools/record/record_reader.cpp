// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_reader.hpp"

#include <fmt/core.h>
#include <hdf5_hl.h>

#include <algorithm>
#include <string>

#include "sim/core/errors.hpp"
#include "tools/record/hdf5_columns.hpp"
#include "tools/record/record_layout.hpp"
#include "tools/record/record_seal.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;

/// What is wrong with a file that HDF5 itself can read.
struct LayoutError {
  std::string what;
};

void expect(bool holds, const std::string& what) {
  if (!holds) throw LayoutError{what};
}

/// Reads the parts of one record from one file.
class Reader {
 public:
  explicit Reader(const H5::Group& root) : root_(root) {}

  RunRecord read() {
    check_version();
    for (const RecordText& text : kRecordTexts) record_.*text.member = hdf5::text_attribute(root_, text.name);
    for (const RecordNumber& number : kRecordNumbers) record_.*number.member = get_one<double>(root_, number.name);
    read_time();
    const std::vector<std::string> names = hdf5::dataset_names(root_);
    for (const std::string& name : names) read_axis(name, names);
    for (const std::string& name : names) read_series(name);
    for_each_entry(kRecordTables, [this](const auto& table) { read_table(table); });
    for_each_entry(kRecordBlocks, [this](const auto& block) { read_block(block); });
    record_.scenario_text = get_one<std::string>(root_, "scenario/text");
    record_.cautions = hdf5::get_variable<std::string>(root_.openDataSet("scenario/cautions"));
    record_.notes = hdf5::get_variable<std::string>(root_.openDataSet("notes/text"));
    return std::move(record_);
  }

 private:
  void check_version() const {
    expect(root_.attrExists(kRecordVersionName), fmt::format("it has no attribute '{}'", kRecordVersionName));
    int version = 0;
    root_.openAttribute(kRecordVersionName).read(hdf5::memory_type<int>(), &version);
    expect(version == kRecordVersion, fmt::format("its layout has version {}", version));
  }

  template <class Value>
  static Value get_one(const H5::Group& group, const std::string& name) {
    const std::vector<Value> values = hdf5::get_variable<Value>(group.openDataSet(name));
    expect(values.size() == 1, fmt::format("'{}' holds {} values", name, values.size()));
    return values.front();
  }

  void read_time() {
    const H5::DataSet time = root_.openDataSet("time");
    record_.time_s = hdf5::get_variable<double>(time);
    record_.calendar = hdf5::text_attribute(time, "calendar");
  }

  void read_axis(const std::string& name, const std::vector<std::string>& names) {
    const H5::DataSet scale = root_.openDataSet(name);
    if (name == "time" || hdf5::shape(scale).size() != 1 || H5DSis_scale(scale.getId()) <= 0) return;
    RecordAxis axis{name, hdf5::text_attribute(scale, "long_name"), {}, {}, hdf5::text_attribute(scale, "units")};
    if (scale.getTypeClass() == H5T_STRING) {
      axis.labels = hdf5::get_variable<std::string>(scale);
    } else {
      const std::string label_name = name + kLabelSuffix;
      if (std::find(names.begin(), names.end(), label_name) == names.end()) return;
      axis.coordinates = hdf5::get_variable<double>(scale);
      axis.labels = hdf5::get_variable<std::string>(root_.openDataSet(label_name));
      expect(axis.labels.size() == axis.coordinates.size(), fmt::format("'{}' has too few labels", name));
    }
    record_.axes.push_back(axis);
  }

  void read_series(const std::string& name) {
    const H5::DataSet variable = root_.openDataSet(name);
    if (name == "time" || variable.getTypeClass() != H5T_FLOAT) return;
    std::vector<std::string> dimensions = hdf5::dimension_names(variable);
    if (dimensions.empty() || dimensions.front() != "time") return;
    dimensions.erase(dimensions.begin());
    const std::vector<hsize_t> lengths = hdf5::shape(variable);
    expect(lengths.front() == record_.time_s.size(), fmt::format("'{}' does not fit the time axis", name));
    for (std::size_t k = 0; k < dimensions.size(); ++k) {
      const auto axis = std::find_if(record_.axes.begin(), record_.axes.end(),
                                     [&](const RecordAxis& a) { return a.name == dimensions[k]; });
      if (axis == record_.axes.end()) return;
      expect(lengths[k + 1] == axis->labels.size(), fmt::format("'{}' does not fit its axis '{}'", name, axis->name));
    }
    const auto text = [&](const char* attribute) { return hdf5::text_attribute(variable, attribute); };
    record_.series.push_back({name, text("long_name"), text("units"), text("standard_name"), text("cell_methods"),
                              dimensions, hdf5::get_variable<double>(variable)});
  }

  template <class Row>
  void read_table(const RecordTable<Row>& table) {
    const H5::Group group = root_.openGroup(table.group);
    std::vector<Row>& rows = record_.*table.rows;
    rows.resize(hdf5::shape(group.openDataSet(table.dimension)).at(0));
    for_each_field<Row>([&](const auto& field) {
      using Value = std::decay_t<decltype(Row{}.*field.member)>;
      const std::vector<Value> column = hdf5::get_variable<Value>(group.openDataSet(field.name));
      expect(column.size() == rows.size(), fmt::format("'{}/{}' is not as long as its table", table.group, field.name));
      for (std::size_t k = 0; k < rows.size(); ++k) rows[k].*field.member = column[k];
    });
    if constexpr (std::is_same_v<Row, FailureOutcome>) read_chains(group, rows);
  }

  static void read_chains(const H5::Group& group, std::vector<FailureOutcome>& failures) {
    const auto links = hdf5::get_variable<std::string>(group.openDataSet("chain"));
    const auto lengths = hdf5::get_variable<int>(group.openDataSet("chain_length"));
    expect(lengths.size() == failures.size(), "the chains of its failures do not fit the failures");
    auto next = links.begin();
    for (std::size_t k = 0; k < failures.size(); ++k) {
      expect(lengths[k] >= 0 && lengths[k] <= links.end() - next, "the chains of its failures are cut short");
      failures[k].chain.assign(next, next + lengths[k]);
      next += lengths[k];
    }
  }

  template <class Struct>
  void read_block(const RecordBlock<Struct>& block) {
    const H5::Group group = root_.openGroup(block.group);
    for_each_field<Struct>([&](const auto& field) {
      using Value = std::decay_t<decltype(Struct{}.*field.member)>;
      record_.*block.member.*field.member = get_one<Value>(group, field.name);
    });
  }

  H5::Group root_;
  RunRecord record_;
};

[[noreturn]] void fail(const fs::path& path, const std::string& what) {
  throw UserError(ErrorKind::results_unreadable,
                  fmt::format("{}: cannot be read as results: {}; expected a results file of a run, an HDF5 file of "
                              "layout version {}; run the scenario again to write it anew",
                              path.string(), what, kRecordVersion));
}

void refuse_what_is_no_file(const fs::path& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) {
    throw UserError(ErrorKind::file_missing,
                    fmt::format("{}: there is no such file; expected a results file of a run", path.string()));
  }
  if (fs::is_directory(status)) fail(path, "it is a folder");
  if (!fs::is_regular_file(status)) fail(path, error ? error.message() : "it is not an ordinary file");
}

H5::H5File open_file(const fs::path& path) {
  H5::FileAccPropList access;
  // No lock: read-only folders and network disks refuse it, and a file under its final name no longer changes.
  hdf5::checked(H5Pset_file_locking(access.getId(), false, true), "H5Pset_file_locking");
  return {path.string(), H5F_ACC_RDONLY, H5::FileCreatPropList::DEFAULT, access};
}

}  // namespace

RunRecord read_run(const fs::path& path) {
  refuse_what_is_no_file(path);
  if (seal_holds(path) == false) fail(path, "it is damaged (its checksum does not hold)");
  const hdf5::Session session;
  try {
    const H5::H5File file = open_file(path);
    return Reader(file.openGroup("/")).read();
  } catch (const H5::FileIException& error) {
    fail(path, fmt::format("it is not HDF5, or damaged or cut short ({})", error.getDetailMsg()));
  } catch (const H5::Exception& error) {
    fail(path,
         fmt::format("it is damaged or from another program ({}: {})", error.getFuncName(), error.getDetailMsg()));
  } catch (const LayoutError& error) {
    fail(path, error.what);
  } catch (const std::exception& error) {  // such as an absurd length in a damaged file
    fail(path, fmt::format("it is damaged ({})", error.what()));
  }
}

}  // namespace noonhouse
