// SPDX-License-Identifier: Apache-2.0
// Writes a report of invented records for report_page_test.py: report_page_program PAGE.html
#include <cstdio>

#include "tests/support/invented_record.hpp"
#include "tests/tools/faults_sample.hpp"
#include "tools/report/report.hpp"

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  std::vector<noonhouse::RunRecord> records = noonhouse::invented::three_plans();
  // A name that would end the script or run one, were it not escaped.
  records[1].about =
      "</script><script>console.error('escaped')</script><img src=x onerror=\"console.error('escaped')\">";
  records[1].plants[0].reason = "warm & \"dry\" </td><script>console.error('escaped')</script>";
  records[1].events[0].what = "no rain since <b>day 1</b></script><script>console.error('escaped')</script>";
  noonhouse::FaultSheet faults = noonhouse::invented::fault_sheet();
  faults.scenario = records[2].scenario;
  faults.plan = records[2].plan;
  faults.faults[0].chain[0] += "</li><script>console.error('escaped')</script>";
  try {
    noonhouse::write_report(records, argv[1], noonhouse::UnitSystem::metric, &faults);
  } catch (const std::exception& problem) {
    std::fprintf(stderr, "%s\n", problem.what());
    return 1;
  }
  return 0;
}
