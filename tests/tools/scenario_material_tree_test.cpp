// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"
#include "models/ground/soil_material.hpp"
#include "sim/core/errors.hpp"
#include "tools/scenario/material_tree.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(MaterialTree, ShowsEveryMaterial) {
  const std::string text = material_tree("", UnitSystem::metric);
  for (const auto& m : cover_materials()) EXPECT_THAT(text, HasSubstr(m.name));
  for (const auto& m : shade_materials()) EXPECT_THAT(text, HasSubstr(m.name));
  for (const auto& m : soil_materials()) EXPECT_THAT(text, HasSubstr(m.name));
}

TEST(MaterialTree, LimitsItselfToWhatIsWantedAndShowsSources) {
  const std::string text = material_tree("clear glass 3", UnitSystem::metric);
  EXPECT_THAT(text, HasSubstr("thickness 3 mm"));
  EXPECT_THAT(text, HasSubstr("EN 673"));
  EXPECT_THAT(text, Not(HasSubstr("clear glass 4 mm")));
  EXPECT_THAT(text, Not(HasSubstr("soils and floors")));
  EXPECT_THAT(material_tree("timber boards", UnitSystem::metric), HasSubstr("opaque, reflects"));
}

/// Every rating of a cover stands with its source; walls of boards have none.
TEST(MaterialTree, ShowsWhatHailACoverBears) {
  const auto shown = [](const std::string& material) {
    std::string text = material_tree(material, UnitSystem::metric);
    std::erase_if(text, [](char c) { return c == '\n'; });
    return text;
  };
  for (const auto& m : cover_materials()) {
    const bool rated = shown(m.name).find("hailstone's blow") != std::string::npos;
    EXPECT_EQ(rated, m.opaque_reflects.value < 0.0) << m.name;
  }
  const std::string film = shown("polyethylene film");
  EXPECT_THAT(film, HasSubstr("1.7 J (as polyethylene film: estimate from memory"));
}

TEST(MaterialTree, AnUnknownNameIsAnErrorWithASuggestion) {
  try {
    material_tree("clear glas 3 mm", UnitSystem::metric);
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_THAT(error.what(), HasSubstr("clear glass 3 mm"));
  }
}

}  // namespace
}  // namespace noonhouse
