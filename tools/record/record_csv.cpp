// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_csv.hpp"

#include <fmt/core.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <span>

#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/record/atomic_file.hpp"

namespace noonhouse {
namespace {

std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + '"';
}

std::string cell(double value) { return std::isnan(value) ? std::string() : fmt::format("{}", value); }

const RecordSeries& find_series(const RunRecord& record, const std::string& name) {
  for (const RecordSeries& series : record.series) {
    if (series.name == name) return series;
  }
  std::vector<std::string> known;
  for (const RecordSeries& series : record.series) known.push_back(series.name);
  throw UserError(ErrorKind::unknown_name,
                  fmt::format("there is no series '{}' in this run; its series are: {}", name, fmt::join(known, ", ")));
}

const RecordAxis& find_axis(const RunRecord& record, const std::string& name) {
  const auto found =
      std::find_if(record.axes.begin(), record.axes.end(), [&](const RecordAxis& a) { return a.name == name; });
  NOON_ASSERT(found != record.axes.end());
  return *found;
}

/// Headings of the columns of one series, in the order of its values.
std::vector<std::string> headings(const RunRecord& record, const RecordSeries& series) {
  std::vector<std::string> entries{""};
  for (const std::string& axis : series.axes) {
    std::vector<std::string> longer;
    for (const std::string& entry : entries) {
      for (const std::string& label : find_axis(record, axis).labels) {
        longer.push_back(entry);
        if (!entry.empty()) longer.back() += ", ";
        longer.back() += label;
      }
    }
    entries = longer;
  }
  for (std::string& entry : entries) {
    entry = series.axes.empty() ? fmt::format("{} [{}]", series.name, series.units)
                                : fmt::format("{}({}) [{}]", series.name, entry, series.units);
  }
  return entries;
}

void write_text(const std::filesystem::path& path, const std::string& text) {
  write_file_whole(path, std::as_bytes(std::span(text)));
}

}  // namespace

std::string local_time_text(const std::string& start, double seconds_since_start) {
  int year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0, used = 0;
  if (std::sscanf(start.c_str(), "%d-%d-%d %d:%d:%d%n", &year, &month, &day, &hour, &minute, &second, &used) != 6 ||
      used != static_cast<int>(start.size())) {
    return {};
  }
  using namespace std::chrono;
  const year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                            std::chrono::day{static_cast<unsigned>(day)}};
  if (!date.ok()) return {};
  const auto at = sys_days{date} + hours{hour} + minutes{minute} + std::chrono::seconds{second} +
                  milliseconds{ticks(seconds_since_start).ms};
  const auto midnight = floor<days>(at);
  const year_month_day on{midnight};
  const hh_mm_ss clock{at - midnight};
  const std::string text =
      fmt::format("{:04}-{:02}-{:02} {:02}:{:02}:{:02}", int{on.year()}, unsigned{on.month()}, unsigned{on.day()},
                  clock.hours().count(), clock.minutes().count(), clock.seconds().count());
  const auto fraction = clock.subseconds().count();
  return fraction == 0 ? text : text + fmt::format(".{:03}", fraction);
}

std::string series_csv(const RunRecord& record, const std::vector<std::string>& names) {
  std::vector<const RecordSeries*> chosen;
  for (const std::string& name : names) chosen.push_back(&find_series(record, name));
  if (names.empty()) {
    for (const RecordSeries& series : record.series) chosen.push_back(&series);
  }
  std::string text = "time [s],local standard time";
  std::vector<std::size_t> widths;
  for (const RecordSeries* series : chosen) {
    const std::vector<std::string> columns = headings(record, *series);
    widths.push_back(columns.size());
    NOON_ASSERT(series->values.size() == columns.size() * record.time_s.size());
    for (const std::string& column : columns) text += "," + cell(column);
  }
  text += "\n";
  for (std::size_t row = 0; row < record.time_s.size(); ++row) {
    text += cell(record.time_s[row]) + "," + local_time_text(record.start, record.time_s[row]);
    for (std::size_t k = 0; k < chosen.size(); ++k) {
      const double* values = chosen[k]->values.data() + row * widths[k];
      for (std::size_t column = 0; column < widths[k]; ++column) text += "," + cell(values[column]);
    }
    text += "\n";
  }
  return text;
}

std::string events_csv(const RunRecord& record) {
  std::string text = "event,cause,time [s],local standard time,kind,subject,what\n";
  for (const RecordEvent& event : record.events) {
    text += fmt::format("{},{},{},{},{},{},{}\n", event.id, event.cause, cell(event.time_s),
                        local_time_text(record.start, event.time_s), cell(event.kind), cell(event.subject),
                        cell(event.what));
  }
  return text;
}

void write_series_csv(const RunRecord& record, const std::filesystem::path& path,
                      const std::vector<std::string>& names) {
  write_text(path, series_csv(record, names));
}

void write_events_csv(const RunRecord& record, const std::filesystem::path& path) {
  write_text(path, events_csv(record));
}

}  // namespace noonhouse
