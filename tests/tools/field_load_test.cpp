// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "tests/support/text_marks.hpp"
#include "tests/tools/field_sample.hpp"
#include "tools/scenario/located_overlay.hpp"

namespace noonhouse::field_sample {
namespace {

UserError load_error(const std::string& text) {
  try {
    load(text).places.check_names();
  } catch (const UserError& error) {
    return error;
  }
  ADD_FAILURE() << "nothing was thrown for\n" << text;
  return {ErrorKind::usage, ""};
}

TEST(FieldLoad, ReadsEveryKindOfField) {
  const Everything s = load(kWhole).value;
  EXPECT_EQ(s.title, "A house: small");
  EXPECT_EQ(format_date(s.first), "2025-07-01");
  EXPECT_EQ(format_date_time(s.start), "2025-07-01 06:30");
  EXPECT_EQ(s.utc_offset_s, 20700.0);
  EXPECT_EQ(s.dusk_s, 75930.0);
  EXPECT_EQ(s.layers, 5);
  EXPECT_TRUE(s.dry);
  ASSERT_TRUE(s.limit_k);
  EXPECT_NEAR(*s.limit_k, 310.92777777777775, 1e-12);  // (100 + 459.67) * 5 / 9
  ASSERT_TRUE(s.place);
  ASSERT_EQ(s.bays.size(), 2U);
  EXPECT_EQ(s.bays[0].name, "East side");
  ASSERT_EQ(s.bays[0].value.hatches.size(), 2U);
  const Hatch& ridge = s.bays[0].value.hatches[0].value;
  EXPECT_EQ(ridge.side, Side::roof);
  EXPECT_EQ(ridge.probe.bay, "East side");
  EXPECT_EQ(s.bays[0].value.hatches[1].name, "no");
  EXPECT_EQ(s.bays[0].value.hatches[1].value.opens_to, 1.0);
  EXPECT_EQ(s.bays[0].value.heights_m, (std::vector<double>{0.2, 1.0}));
  ASSERT_EQ(s.rules.size(), 3U);
  EXPECT_EQ(std::get<Banded>(s.rules[0].law).start_k, 299.15);
  EXPECT_EQ(std::get<Banded>(s.rules[0].law).band_k, 2.0);
  EXPECT_EQ(std::get<Steady>(s.rules[1].law).share, 0.05);
  EXPECT_EQ(s.notes, (std::vector<std::string>{"yes", "12", "", "a plain one"}));
}

TEST(FieldLoad, NotesPlacesAndDefaults) {
  const Loaded<Everything> loaded = load(kLeast);
  const Place* area = loaded.places.at("bays.a.hatches.ridge.area");
  ASSERT_NE(area, nullptr);
  EXPECT_EQ(where(area->position), "house.yaml:6:15");
  EXPECT_EQ(area->text, "1 m2");
  EXPECT_FALSE(area->defaulted);
  const Place* height = loaded.places.at("bays.a.hatches.ridge.probe.height");
  ASSERT_NE(height, nullptr);
  EXPECT_TRUE(height->defaulted);
  EXPECT_EQ(height->text, "1.5 m");
  EXPECT_EQ(loaded.places.defaulted(),
            (std::vector<std::string>{"bays.a.hatches.ridge.opens_to", "bays.a.hatches.ridge.probe.bay",
                                      "bays.a.hatches.ridge.probe.height", "dry", "dusk", "emissivity", "first",
                                      "layers", "start", "utc_offset"}));
  EXPECT_FALSE(loaded.value.limit_k);
  EXPECT_FALSE(loaded.value.place);
}

TEST(FieldLoad, PlacesPointAtTheLineWithACaret) {
  const Loaded<Everything> loaded = load(kLeast);
  try {
    loaded.places.fail(ErrorKind::outside_house, "bays.a.hatches.ridge.area", "the roof has 0.5 m2");
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::outside_house);
    EXPECT_STREQ(error.what(),
                 "house.yaml:6:15: bays › a › hatches › ridge › area: read \"1 m2\"; the roof has 0.5 m2\n"
                 "     6 |         area: 1 m2\n"
                 "       |               ^");
  }
  try {
    loaded.places.fail(ErrorKind::outside_house, "bays.a.hatches.ridge.opens_to", "too far");
    FAIL();
  } catch (const UserError& error) {
    EXPECT_TRUE(says(error, "house.yaml:5:7: bays › a › hatches › ridge › opens_to: not given, so \"100 %\"; too far"))
        << error.what();
  }
}

TEST(FieldLoad, MistakesNameKindPlaceAllowedAndSuggestion) {
  for (const Mistake& mistake : kMistakes) {
    const UserError error = load_error(with(kLeast, mistake.from, mistake.to));
    EXPECT_EQ(error.kind(), mistake.kind) << mistake.to << ": " << error.what();
    EXPECT_TRUE(says(error, mistake.place)) << mistake.place << ": " << error.what();
    EXPECT_TRUE(says(error, mistake.says)) << mistake.says << ": " << error.what();
  }
}

TEST(FieldLoad, RootMustBeAMappingAndCountsAreHeld) {
  EXPECT_EQ(load_error("- 1\n").kind(), ErrorKind::wrong_type);
  EXPECT_EQ(load_error("title: x\nbays: {}\n").kind(), ErrorKind::out_of_range);
  EXPECT_EQ(load_error("title: x\n").kind(), ErrorKind::missing_key);
}

TEST(FieldLoad, MistakeInAPlanPointsIntoThePlan) {
  const LocatedNode base = read_yaml_text(kLeast, "house.yaml");
  const LocatedNode plan = read_yaml_text("bays: {a: {hatches: {ridge: {area: 99 m2}}}}", "plan.yaml");
  const LocatedNode merged = overlay(base, plan, named_items(named_patterns<Everything>()));
  try {
    load_fields<Everything>(merged);
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::out_of_range);
    EXPECT_TRUE(says(error, "plan.yaml:1:36")) << error.what();
  }
}

TEST(FieldNames, PatternsFollowTheFieldLists) {
  EXPECT_EQ(named_patterns<Everything>(), (std::vector<std::string>{"bays", "bays.*.hatches"}));
}

}  // namespace
}  // namespace noonhouse::field_sample
