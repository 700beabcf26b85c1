// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/faults_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "sim/core/errors.hpp"
#include "tests/tools/faults_sample.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using Json = nlohmann::ordered_json;

std::string refusal(const std::string& text) {
  try {
    read_faults(text);
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::results_unreadable);
    return error.what();
  }
  ADD_FAILURE() << "read: " << text.substr(0, 200);
  return "";
}

TEST(FaultsJson, NamesUnitsAndWritesNullWhereNothingCame) {
  const Json json = Json::parse(faults_json(invented::fault_sheet()));
  EXPECT_EQ(json.at("plan"), "vents, mist and shade");
  EXPECT_EQ(json.at("horizon_s"), 86400.0);
  EXPECT_EQ(json.at("runs"), 412);
  const Json& mist = json.at("faults").at(0);
  EXPECT_TRUE(mist.at("grace_by_hour_s").at(12).is_null());
  EXPECT_EQ(mist.at("grace_by_hour_s").at(13), 3359.0);
  EXPECT_EQ(mist.at("costs").at(0).at("state"), "lost");
  EXPECT_TRUE(mist.at("additions").at(0).at("grace_s").is_null());
  EXPECT_TRUE(mist.at("additions").at(0).at("gained_s").is_null());
  EXPECT_EQ(mist.at("additions").at(1).at("gained_s"), 7845.0 - 2759.0);
  EXPECT_EQ(mist.at("additions").at(0).at("followed_s"), 86400.0);
  EXPECT_TRUE(json.at("faults").at(3).at("worst_s").is_null());
}

/// The text holds every field, so equal text of what was read means that nothing was lost.
TEST(FaultsJson, ReadsBackWhatItWrote) {
  FaultSheet sheet = invented::hail_sheet();
  sheet.told_day_s = 86400.0;
  sheet.faults[0].additions[0].followed_s = 7200.0;
  sheet.faults[3].breaks[1].anyway = true;
  sheet.faults[0].worst_grace_s = 2758.123456789012;
  sheet.plan = "mosses \"wet\" \u00e9\n";
  const FaultSheet back = read_faults(faults_json(sheet));
  EXPECT_EQ(faults_json(back), faults_json(sheet));
  EXPECT_EQ(back.plan, sheet.plan);
  EXPECT_EQ(back.faults[0].worst_grace_s, 2758.123456789012);
  EXPECT_TRUE(std::isnan(back.faults[0].grace_by_hour_s[12]));
  EXPECT_EQ(back.faults[0].costs[2].plants, "mosses");
  EXPECT_EQ(back.faults[1].chain, sheet.faults[1].chain);
  EXPECT_EQ(back.lost_anyway, sheet.lost_anyway);
  EXPECT_FALSE(back.faults[4].harms);
  EXPECT_EQ(back.told_day_s, 86400.0);
  EXPECT_TRUE(back.house_in_danger);
  ASSERT_EQ(back.faults[3].breaks.size(), 2U);
  EXPECT_EQ(back.faults[3].breaks[0].words, "66 % of it broken by hail");
  EXPECT_FALSE(back.faults[3].breaks[0].anyway);
  EXPECT_TRUE(back.faults[3].breaks[1].anyway);
  EXPECT_EQ(back.faults[0].additions[0].followed_s, 7200.0);
}

TEST(FaultsJson, DamageIsRefused) {
  const std::string sound = faults_json(invented::fault_sheet());
  for (std::size_t length = 0; length + 3 < sound.size(); length += 97) refusal(sound.substr(0, length));
  refusal("");
  refusal("[]");
  refusal("{}");
  refusal("null");
}

TEST(FaultsJson, EveryKeyIsNeeded) {
  const Json sound = Json::parse(faults_json(invented::fault_sheet()));
  for (const auto& [key, value] : sound.items()) {
    Json less = sound;
    less.erase(key);
    EXPECT_THAT(refusal(less.dump()), HasSubstr(key));
  }
  for (const auto& [key, value] : sound.at("faults").at(0).items()) {
    Json less = sound;
    less.at("faults").at(0).erase(key);
    EXPECT_THAT(refusal(less.dump()), HasSubstr(key));
  }
}

TEST(FaultsJson, WhatMakesNoSenseIsRefused) {
  const Json sound = Json::parse(faults_json(invented::fault_sheet()));
  const auto changed = [&](const char* at, const Json& to) {
    Json json = sound;
    json[Json::json_pointer(at)] = to;
    return refusal(json.dump());
  };
  EXPECT_THAT(changed("/faults/0/grace_by_hour_s", Json::array({1.0})), HasSubstr("24"));
  EXPECT_THAT(changed("/faults/0/worst_s", nullptr), HasSubstr("high mist"));
  EXPECT_THAT(changed("/faults/1/worst_grace_s", -1.0), HasSubstr("-1"));
  EXPECT_THAT(changed("/faults/1/worst_grace_s", 1e300), HasSubstr("no time"));
  EXPECT_THAT(changed("/faults/0/additions/0/followed_s", nullptr), HasSubstr("a second thermostat"));
  EXPECT_THAT(changed("/horizon_s", 0.0), HasSubstr("horizon"));
  EXPECT_THAT(changed("/faults/0/costs", nullptr), HasSubstr("array"));
  EXPECT_THAT(changed("/runs", "many"), HasSubstr("number"));
  Json order = sound;
  std::swap(order.at("faults").at(0), order.at("faults").at(4));
  EXPECT_THAT(refusal(order.dump()), HasSubstr("before"));
}

}  // namespace
}  // namespace noonhouse
