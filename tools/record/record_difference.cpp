// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_difference.hpp"

#include <fmt/core.h>

#include <cmath>

#include "tools/record/record_layout.hpp"

namespace noonhouse {
namespace {

template <class Value>
bool same(const Value& a, const Value& b) {
  return a == b;
}
bool same(double a, double b) { return a == b || (std::isnan(a) && std::isnan(b)); }

/// Keeps the first difference that it is shown.
class Search {
 public:
  template <class Value>
  void look(const std::string& where, const Value& a, const Value& b) {
    if (found_.empty() && !same(a, b)) found_ = fmt::format("{}: '{}' against '{}'", where, a, b);
  }

  template <class Value>
  void look(const std::string& where, const std::vector<Value>& a, const std::vector<Value>& b) {
    look(where + ", length", a.size(), b.size());
    for (std::size_t k = 0; k < a.size() && found_.empty(); ++k) look(fmt::format("{}, row {}", where, k), a[k], b[k]);
  }

  template <class Struct>
  void look_at_fields(const std::string& where, const Struct& a, const Struct& b) {
    for_each_field<Struct>(
        [&](const auto& field) { look(fmt::format("{}, {}", where, field.name), a.*field.member, b.*field.member); });
    if constexpr (std::is_same_v<Struct, FailureOutcome>) look(where + ", chain", a.chain, b.chain);
  }

  template <class Row>
  void look_at_table(const std::string& where, const std::vector<Row>& a, const std::vector<Row>& b) {
    look(where + ", length", a.size(), b.size());
    for (std::size_t k = 0; k < a.size() && found_.empty(); ++k) {
      look_at_fields(fmt::format("{}, row {}", where, k), a[k], b[k]);
    }
  }

  void look(const std::string& where, const RecordAxis& a, const RecordAxis& b) {
    look(where + ", name", a.name, b.name);
    look(where + ", long_name", a.long_name, b.long_name);
    look(where + ", labels", a.labels, b.labels);
    look(where + ", coordinates", a.coordinates, b.coordinates);
    look(where + ", units", a.units, b.units);
  }

  void look(const std::string& where, const RecordSeries& a, const RecordSeries& b) {
    look(where + ", name", a.name, b.name);
    look(a.name + ", long_name", a.long_name, b.long_name);
    look(a.name + ", units", a.units, b.units);
    look(a.name + ", standard_name", a.standard_name, b.standard_name);
    look(a.name + ", cell_methods", a.cell_methods, b.cell_methods);
    look(a.name + ", axes", a.axes, b.axes);
    look(a.name, a.values, b.values);
  }

  const std::string& found() const { return found_; }

 private:
  std::string found_;
};

}  // namespace

std::string first_difference(const RunRecord& a, const RunRecord& b) {
  Search search;
  for (const RecordText& text : kRecordTexts) search.look(text.name, a.*text.member, b.*text.member);
  for (const RecordNumber& number : kRecordNumbers) search.look(number.name, a.*number.member, b.*number.member);
  search.look("calendar", a.calendar, b.calendar);
  search.look("time", a.time_s, b.time_s);
  search.look("axes", a.axes, b.axes);
  search.look("series", a.series, b.series);
  for_each_entry(kRecordTables,
                 [&](const auto& table) { search.look_at_table(table.group, a.*table.rows, b.*table.rows); });
  for_each_entry(kRecordBlocks,
                 [&](const auto& block) { search.look_at_fields(block.group, a.*block.member, b.*block.member); });
  search.look("scenario text", a.scenario_text, b.scenario_text);
  search.look("cautions", a.cautions, b.cautions);
  search.look("notes", a.notes, b.notes);
  return search.found();
}

}  // namespace noonhouse
