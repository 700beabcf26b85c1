// SPDX-License-Identifier: Apache-2.0
// The demonstration house on a measured (typical) year, unchanged but for where its weather comes from.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/support/measured_year.hpp"
#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

std::string demo_text() {
  std::ifstream file(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios/heatwave/heatwave.yaml");
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Replaces a top-level block of the scenario, from its key to the next top-level key.
void replace_block(std::string& text, const std::string& key, const std::string& by) {
  const auto begin = text.find("\n" + key + ":\n");
  ASSERT_NE(begin, std::string::npos) << key;
  auto end = begin + key.size() + 3;
  while (end < text.size() && (text[end] == ' ' || text[end] == '\n')) end = text.find('\n', end) + 1;
  text.replace(begin + 1, end - begin - 1, by);
}

TEST(MeasuredYear, RunsWholeWithItsBalancesClosed) {
  const auto file = measured_year();
  if (file.empty()) GTEST_SKIP() << kNoMeasuredYear;
  std::string text = demo_text();
  replace_block(text, "weather", "weather: { kind: typical year file, file: \"" + file.string() + "\" }\n\n");
  replace_block(text, "run", "run: { start: 2025-01-01, length: 365 d, record_every: 1 h }\n\n");
  replace_block(text, "site",
                "site: { latitude: 35.04 deg, longitude: -106.62 deg, altitude: 1619 m, utc_offset: \"-07:00\", "
                "deep_soil: 14 degC }\n\n");
  const Scenario scenario = read_scenario_text(text, "measured_year.yaml");
  const auto runs = run_plans(scenario, {&scenario.plan("all shut"), &scenario.plan("vents, mist and shade")}, 2);
  for (const RunRecord& run : runs) {
    EXPECT_LE(run.closure.energy_relative, 1e-6) << run.plan;
    EXPECT_LE(run.closure.water_relative, 1e-9) << run.plan;
    EXPECT_EQ(run.time_s.size(), 8761U);
    for (const RecordSeries& series : run.series)
      EXPECT_TRUE(std::all_of(series.values.begin(), series.values.end(), [](double v) { return std::isfinite(v); }))
          << run.plan << ": " << series.name;
    for (const LevelOutcome& level : run.levels) {
      EXPECT_GT(level.peak_k, 300.0);
      EXPECT_LT(level.peak_k, 350.0);
    }
  }
  EXPECT_GT(runs[0].levels.back().peak_k, runs[1].levels.back().peak_k) << "cooling must cool";
}

}  // namespace
}  // namespace noonhouse
