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
