// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_csv.hpp"

#include <gmock/gmock.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using ::testing::HasSubstr;

RunRecord small_record() {
  RunRecord r;
  r.start = "2024-02-28 23:50:00";
  r.time_s = {0.0, 600.0, 1200.5};
  r.axes = {{"level", "", {"floor", "ridge"}, {0.25, 1.75}, "m"}, {"bay", "", {"west", "east"}, {}, ""}};
  r.series = {{"air_temperature",
               "",
               "K",
               "",
               "",
               {"level", "bay"},
               {300, 301, 302, 303, 304, 305, 306, 307, 308, 309, 310, 0.1 + 0.2}},
              {"tank_mass", "", "kg", "", "", {}, {250.0, kNotHappened, 249.5}}};
  r.events = {{1, -1, 600.0, "warning", "tank, \"big\"", "low\nmark"}};
  return r;
}

// Expected texts are written out by hand from the record above.
TEST(RecordCsv, ListsEveryEntryOfTheChosenSeries) {
  EXPECT_EQ(series_csv(small_record(), {"tank_mass", "air_temperature"}),
            "time [s],local standard time,tank_mass [kg],\"air_temperature(floor, west) [K]\","
            "\"air_temperature(floor, east) [K]\",\"air_temperature(ridge, west) [K]\","
            "\"air_temperature(ridge, east) [K]\"\n"
            "0,2024-02-28 23:50:00,250,300,301,302,303\n"
            "600,2024-02-29 00:00:00,,304,305,306,307\n"
            "1200.5,2024-02-29 00:10:00.500,249.5,308,309,310,0.30000000000000004\n");
}

TEST(RecordCsv, NoNamesMeansAllSeries) {
  const RunRecord record = small_record();
  EXPECT_EQ(series_csv(record, {}), series_csv(record, {"air_temperature", "tank_mass"}));
}

TEST(RecordCsv, AnUnknownSeriesIsNamedWithTheKnownOnes) {
  try {
    series_csv(small_record(), {"air_temprature"});
    FAIL() << "no error";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_THAT(error.what(), HasSubstr("'air_temprature'"));
    EXPECT_THAT(error.what(), HasSubstr("air_temperature, tank_mass"));
  }
}

TEST(RecordCsv, EventsQuoteWhatNeedsQuotes) {
  EXPECT_EQ(events_csv(small_record()),
            "event,cause,time [s],local standard time,kind,subject,what\n"
            "1,-1,600,2024-02-29 00:00:00,warning,\"tank, \"\"big\"\"\",\"low\nmark\"\n");
}

TEST(RecordCsv, FilesHoldTheTexts) {
  std::string pattern = (std::filesystem::temp_directory_path() / "noonhouse-csv-XXXXXX").string();
  ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
  const std::filesystem::path folder = pattern;
  const auto text_of = [&](const char* name) {
    std::ifstream in(folder / name, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(in), {});
  };
  const RunRecord record = small_record();
  write_series_csv(record, folder / "series.csv", {"tank_mass"});
  write_events_csv(record, folder / "events.csv");
  EXPECT_EQ(text_of("series.csv"), series_csv(record, {"tank_mass"}));
  EXPECT_EQ(text_of("events.csv"), events_csv(record));
  std::filesystem::remove_all(folder);
}

TEST(RecordCsv, LocalTimeCrossesYearsAndRefusesWhatIsNoDate) {
  EXPECT_EQ(local_time_text("2025-12-31 23:59:59", 1.0), "2026-01-01 00:00:00");
  EXPECT_EQ(local_time_text("2025-07-14 00:00:00", -0.001), "2025-07-13 23:59:59.999");
  for (const char* start : {"", "2025-07-14", "2025-02-30 00:00:00", "2025-07-14 00:00:00 UTC", "noon"}) {
    EXPECT_EQ(local_time_text(start, 0.0), "") << start;
  }
}

}  // namespace
}  // namespace noonhouse
