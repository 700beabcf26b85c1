// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <string>

#include "tests/support/small_day.hpp"
#include "tests/support/text_marks.hpp"

namespace noonhouse {
namespace {

using testing::Contains;
using testing::HasSubstr;

std::string small_with_reserve(const std::string& of_mist, const std::string& of_visit) {
  std::string text = small_faults::kText;
  const std::string pump = "pump_power: 40 W";
  text.replace(text.find(pump), pump.size(), pump + ", keeps_back: " + of_mist);
  return text + "grower:\n  visits:\n    round: { at: \"08:00\", waters: [ferns], keeps_back: " + of_visit + " }\n";
}

TEST(Reserves, ThatAreTheWholeTankAreRefused) {
  for (const auto& [mist, visit, part] :
       {std::array{"400 L", "0 L", "mist_lines"}, std::array{"0 L", "400 L", "grower"}}) {
    try {
      read_scenario_text(small_with_reserve(mist, visit), "reserves.yaml");
      ADD_FAILURE() << part;
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::does_not_fit);
      EXPECT_TRUE(says(error, part) && says(error, "keeps_back") && says(error, "leaves nothing of the tank to draw"))
          << error.what();
    }
  }
}

TEST(Reserves, OfAVisitLeaveItsPotsShortAndTheTankFull) {
  small_faults::SmallDay day(read_scenario_text(small_with_reserve("0 L", "379.5 L"), "reserves.yaml"));
  day.run();
  EXPECT_THAT(day.said_by("grower, round"), Contains(HasSubstr("short, to keep back 380 L")));
}

/// A tank that a leak empties and that two fill: what follows is due to whoever came last, the one first in the file
/// too.
TEST(Refills, OfAnyoneAreWhatALowTankGoesBackTo) {
  for (const bool first : {true, false}) {
    const std::string comes = "{ called_at: 300 L, comes_after: 1 h, brings: 100 L }",
                      idles = "{ called_at: 1 L, comes_after: 23 h, brings: 100 L }";
    small_faults::SmallDay day(
        small_faults::read("refills:\n  near: " + (first ? comes : idles) + "\n  far: " + (first ? idles : comes) +
                           "\nfaults:\n  rust: { what: tank leaks, of: tank, day: 1, at: \"00:00\", lasts: 6 h, "
                           "leak: 300 L/h }\n"));
    day.run();
    EXPECT_THAT(day.said_by(first ? "near" : "far"), Contains(HasSubstr("brings 100 L")));
    EXPECT_THAT(day.chain_of("is refilled to its restart mark"),
                HasSubstr(std::string(first ? "near" : "far") + " brings 100 L"));
  }
}

}  // namespace
}  // namespace noonhouse
