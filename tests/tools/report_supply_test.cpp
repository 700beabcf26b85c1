// SPDX-License-Identifier: Apache-2.0
// What the page says of stores, heat for people, money and notes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/invented_record.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/report/report.hpp"
#include "tools/report/supply_section.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string section(const RunRecord& record) {
  std::string out;
  add_supply_section(out, record, UnitSystem::metric);
  return out;
}

TEST(ReportSupply, NothingIsSaidOfWhatIsNotKnown) { EXPECT_EQ(section(RunRecord{}), ""); }

TEST(ReportSupply, SaysHowLongItCarriesAndWhatItCosts) {
  RunRecord r;
  r.start = "2025-07-14 00:00:00";
  r.water.days_full = 12.34, r.water.days_full_thirsty = 8.0;
  r.water.overflow_kg = 50.0, r.water.overflows_to = "the <pond>", r.water.storage_rule = "water is drawn as it comes";
  r.water.brought_kg = 300.0, r.water.deliveries = 2;
  r.energy.losses_j = 7.2e6, r.energy.self_discharge_j = 3.6e6, r.energy.dead_cells_j = 1.8e6;
  r.cost = {"EUR", 1240.0, 230.0, 90.0, 120.0};
  r.work_heat = {{"west", 3.0, 305.15, 46800.0}};
  r.notes = {"Its battery was at 30 degC & more."};
  const std::string html = section(r);
  EXPECT_THAT(html, HasSubstr("<th scope=\"row\">A full tank lasts, without rain</th><td>12.3 days, "));
  EXPECT_THAT(html, HasSubstr("L, to the &lt;pond&gt;"));
  r.water.overflow_kg = 0.0;
  EXPECT_THAT(section(r), HasSubstr("nothing; it would go to the &lt;pond&gt;"));
  EXPECT_THAT(html, HasSubstr("In the tank water is drawn as it comes."));
  EXPECT_THAT(html, HasSubstr("in 2 deliveries"));
  EXPECT_THAT(html, HasSubstr("by self-discharge"));
  EXPECT_THAT(html, HasSubstr("with dead cells"));
  EXPECT_THAT(html, HasSubstr("1240 EUR"));
  EXPECT_THAT(html, HasSubstr("for water brought, were all"));
  EXPECT_THAT(html, HasSubstr("28.0 °C of it is the reference value of ISO 7243"));
  EXPECT_THAT(html, HasSubstr("(west bay)"));
  EXPECT_THAT(html, HasSubstr("Local occupational rules decide."));
  EXPECT_THAT(html, HasSubstr("<li>Its battery was at " + unbroken("30 °C") + " &amp; more.</li>"));
}

TEST(ReportSupply, TheTableOfPlansHasCostsWhereAPlanHasPrices) {
  std::vector<RunRecord> records = invented::three_plans();
  EXPECT_THAT(report_html(records, UnitSystem::metric), Not(HasSubstr("Cost to buy")));
  records[0].cost = {"EUR", 1240.0, 230.0};
  EXPECT_THAT(report_html(records, UnitSystem::metric), HasSubstr("data-label=\"Cost a season\">230 EUR</td>"));
}

}  // namespace
}  // namespace noonhouse
