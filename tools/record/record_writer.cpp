// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_writer.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <deque>
#include <numeric>
#include <set>
#include <span>
#include <string>
#include <string_view>

#include "sim/core/errors.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/record/hdf5_columns.hpp"
#include "tools/record/record_layout.hpp"
#include "tools/record/record_seal.hpp"

namespace noonhouse {
namespace {

using hdf5::Dimensions;
using hdf5::FileDimension;

void describe(const H5::DataSet& variable, const std::string& units, const std::string& long_name,
              const std::string& standard_name = {}) {
  hdf5::put_text_attribute(variable, "units", units);
  hdf5::put_text_attribute(variable, "long_name", long_name);
  hdf5::put_text_attribute(variable, "standard_name", standard_name);
}

/// Writes the parts of one record into one file.
class Writer {
 public:
  Writer(const RunRecord& record, const H5::Group& root) : record_(record), root_(root) {}

  void write() {
    write_root_attributes();
    write_time();
    for (const RecordAxis& axis : record_.axes) write_axis(axis);
    write_root_numbers();
    for (const RecordSeries& series : record_.series) write_series(series);
    for (const FileDimension& dimension : dimensions_) hdf5::close_dimension(root_, dimension);
    for (const char* parent : {"metrics", "balance"}) hdf5::create_group(root_, parent);
    for_each_entry(kRecordTables, [this](const auto& table) { write_table(table); });
    for_each_entry(kRecordBlocks, [this](const auto& block) { write_block(block); });
    write_notes();
    write_scenario();
  }

 private:
  void write_root_attributes() {
    hdf5::put_text_attribute(root_, "Conventions", "CF-1.10");
    root_.createAttribute(kRecordVersionName, hdf5::file_type<int>(), H5::DataSpace(H5S_SCALAR))
        .write(hdf5::memory_type<int>(), &kRecordVersion);
    hdf5::put_text_attribute(root_, "source", fmt::format("Noonhouse {}", record_.provenance.version));
    for (const RecordText& text : kRecordTexts) hdf5::put_text_attribute(root_, text.name, record_.*text.member);
  }

  void write_time() {
    use_name("time");
    dimensions_.push_back({"time", record_.time_s.size(), true});
    const H5::DataSet time = hdf5::put_variable(root_, "time", record_.time_s, {&dimensions_.back()});
    describe(time, units_of(kSinceStart), "local standard time", "time");
    put_calendar(time);
    hdf5::put_text_attribute(time, "axis", "T");
  }

  void write_axis(const RecordAxis& axis) {
    use_name(axis.name);
    dimensions_.push_back({axis.name, axis.labels.size()});
    const Dimensions along{&dimensions_.back()};
    if (axis.coordinates.empty()) {
      NOON_ASSERT(axis.units.empty());
      describe(hdf5::put_variable(root_, axis.name, axis.labels, along), "", axis.long_name);
      return;
    }
    const std::string label_name = axis.name + kLabelSuffix;
    use_name(label_name);
    describe(hdf5::put_variable(root_, axis.name, axis.coordinates, along), axis.units, axis.long_name);
    hdf5::put_variable(root_, label_name, axis.labels, along);
  }

  void write_root_numbers() {
    for (const RecordNumber& number : kRecordNumbers) {
      use_name(number.name);
      const std::vector<double> value{record_.*number.member};
      describe(hdf5::put_variable(root_, number.name, value, {}), number.units, number.long_name, number.standard_name);
    }
  }

  void write_series(const RecordSeries& series) {
    Dimensions along{&dimensions_.front()};
    std::string coordinates = "latitude longitude altitude";
    for (const std::string& axis : series.axes) {
      along.push_back(&dimension(axis));
      if (names_.count(axis + kLabelSuffix) > 0) coordinates += " " + axis + kLabelSuffix;
    }
    use_name(series.name);
    const H5::DataSet variable = hdf5::put_variable(root_, series.name, series.values, along);
    describe(variable, series.units, series.long_name, series.standard_name);
    hdf5::put_text_attribute(variable, "cell_methods", series.cell_methods);
    hdf5::put_text_attribute(variable, "coordinates", coordinates);
  }

  template <class Row>
  void write_table(const RecordTable<Row>& table) {
    const std::vector<Row>& rows = record_.*table.rows;
    const H5::Group group = hdf5::create_group(root_, table.group);
    FileDimension dimension{table.dimension, rows.size(), table.growable};
    bool named = false;
    for_each_field<Row>([&](const auto& field) { named = named || dimension.name == field.name; });
    if (!named) write_row_numbers(group, dimension);
    for_each_field<Row>([&](const auto& field) {
      using Value = std::decay_t<decltype(Row{}.*field.member)>;
      std::vector<Value> column;
      for (const Row& row : rows) column.push_back(row.*field.member);
      describe_field(hdf5::put_variable(group, field.name, column, {&dimension}), field);
    });
    if constexpr (std::is_same_v<Row, FailureOutcome>) write_chains(group, dimension);
    hdf5::close_dimension(group, dimension);
  }

  void write_row_numbers(const H5::Group& group, FileDimension& dimension) const {
    std::vector<int> numbers(dimension.length);
    std::iota(numbers.begin(), numbers.end(), 0);
    describe(hdf5::put_variable(group, dimension.name, numbers, {&dimension}), "", "number of the line");
  }

  template <class Struct>
  void write_block(const RecordBlock<Struct>& block) {
    const H5::Group group = hdf5::create_group(root_, block.group);
    for_each_field<Struct>([&](const auto& field) {
      const std::vector value{record_.*block.member.*field.member};
      describe_field(hdf5::put_variable(group, field.name, value, {}), field);
    });
  }

  template <class Field>
  void describe_field(const H5::DataSet& variable, const Field& field) const {
    describe(variable, units_of(field.units), field.long_name);
    if (field.units == kSinceStart) put_calendar(variable);
  }

  /// A contiguous ragged array (CF-1.10, section 9.3.3): counts along one dimension, entries along another.
  void write_chains(const H5::Group& group, FileDimension& failures) const {
    std::vector<int> lengths;
    std::vector<std::string> links;
    for (const FailureOutcome& failure : record_.failures) {
      lengths.push_back(static_cast<int>(failure.chain.size()));
      links.insert(links.end(), failure.chain.begin(), failure.chain.end());
    }
    FileDimension link{"link", links.size()};
    write_row_numbers(group, link);
    const H5::DataSet counts = hdf5::put_variable(group, "chain_length", lengths, {&failures});
    describe(counts, "1", "number of events in the chain that led to the failure");
    hdf5::put_text_attribute(counts, "sample_dimension", link.name);
    describe(hdf5::put_variable(group, "chain", links, {&link}), "", "events that led to it, newest first");
    hdf5::close_dimension(group, link);
  }

  void write_scenario() {
    const H5::Group group = hdf5::create_group(root_, "scenario");
    const std::vector<std::string> text{record_.scenario_text};
    describe(hdf5::put_variable(group, "text", text, {}), "", "scenario as read, defaults expanded");
    write_sentences(group, "cautions", "caution", record_.cautions, "safety notes of this house");
  }

  void write_notes() {
    write_sentences(hdf5::create_group(root_, "notes"), "text", "note", record_.notes,
                    "what the run wears out, overloads or calls for");
  }

  void write_sentences(const H5::Group& group, const char* name, const char* dimension,
                       const std::vector<std::string>& sentences, const char* long_name) const {
    FileDimension along{dimension, sentences.size()};
    write_row_numbers(group, along);
    describe(hdf5::put_variable(group, name, sentences, {&along}), "", long_name);
    hdf5::close_dimension(group, along);
  }

  std::string units_of(std::string_view units) const {
    if (units != kSinceStart) return std::string(units);
    const std::string since = "seconds since " + record_.start;
    return record_.utc_offset.empty() ? since : since + " " + record_.utc_offset;
  }

  void put_calendar(const H5::DataSet& time) const { hdf5::put_text_attribute(time, "calendar", record_.calendar); }

  void use_name(const std::string& name) {
    NOON_ASSERT(!name.empty() && name.find('/') == std::string::npos);
    NOON_ASSERT(names_.insert(name).second);
  }

  FileDimension& dimension(const std::string& name) {
    const auto found = std::find_if(dimensions_.begin() + 1, dimensions_.end(),
                                    [&](const FileDimension& d) { return d.name == name; });
    NOON_ASSERT(found != dimensions_.end());
    return *found;
  }

  const RunRecord& record_;
  H5::Group root_;
  std::deque<FileDimension> dimensions_;  // time first; variables keep pointers to its entries
  std::set<std::string> names_{"events", "metrics", "balance", "notes", "scenario", "provenance"};
};

std::vector<std::byte> hdf5_image(const RunRecord& record) {
  const hdf5::Session session;
  try {
    hdf5::MemoryFile file;
    Writer(record, file.root()).write();
    return file.close();
  } catch (const H5::Exception& error) {
    throw UserError(ErrorKind::results_not_writable, fmt::format("the run cannot be put into an HDF5 file: {}: {}",
                                                                 error.getFuncName(), error.getDetailMsg()));
  }
}

}  // namespace

std::vector<std::byte> run_file_image(const RunRecord& record) {
  std::vector<std::byte> image = hdf5_image(record);
  const std::string seal = seal_of(image);
  const auto seal_bytes = std::as_bytes(std::span(seal));
  image.insert(image.end(), seal_bytes.begin(), seal_bytes.end());
  return image;
}

void write_run(const RunRecord& record, const std::filesystem::path& path) {
  const std::vector<std::byte> image = run_file_image(record);
  write_file_whole(path, image);
}

}  // namespace noonhouse
