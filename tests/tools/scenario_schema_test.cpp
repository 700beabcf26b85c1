// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "tools/scenario/scenario.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::json;

TEST(ScenarioSchema, PublishedFileIsTheOneOfTheFields) {
  const std::filesystem::path file = std::filesystem::path(NOONHOUSE_SOURCE_DIR) / "scenarios/noonhouse.schema.json";
  std::ostringstream text;
  text << std::ifstream(file).rdbuf();
  EXPECT_TRUE(text.str() == scenario_schema())
      << file << " differs from what the fields say; write it anew: build/noonhouse schema > " << file;
}

TEST(ScenarioSchema, PlansCarryWhatTheReaderTakes) {
  const Json schema = Json::parse(scenario_schema());
  EXPECT_EQ(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
  const Json& plan = schema["properties"]["plans"]["additionalProperties"];
  EXPECT_EQ(plan["required"], Json({"in_service"}));
  std::set<std::string> keys;
  for (const auto& [key, part] : plan["properties"].items()) keys.insert(key);
  EXPECT_EQ(keys, (std::set<std::string>{"about", "in_service", "rules_at_rest", "change"}));
  const Json& required = schema["required"];
  EXPECT_EQ(std::count(required.begin(), required.end(), "plans"), 0);
}

/// Every word `wanted` among a schema's words, at any depth; names of properties are not words.
bool has_word(const Json& schema, const std::string& wanted) {
  if (!schema.is_object()) return false;
  for (const auto& [word, part] : schema.items()) {
    if (word == wanted) return true;
    if (word == "properties") {
      for (const auto& [name, property] : part.items())
        if (has_word(property, wanted)) return true;
    } else if (part.is_array()) {
      for (const Json& one : part)
        if (has_word(one, wanted)) return true;
    } else if (has_word(part, wanted)) {
      return true;
    }
  }
  return false;
}

TEST(ScenarioSchema, ChangeHasTheSameKeysAndAsksForNone) {
  const Json schema = Json::parse(scenario_schema());
  const Json& change = schema["$defs"]["change"];
  const Json& entry = schema["properties"]["plans"]["additionalProperties"]["properties"]["change"];
  EXPECT_EQ(entry["$ref"], "#/$defs/change");
  EXPECT_NE(entry["description"].get<std::string>().find("set-points"), std::string::npos);
  std::set<std::string> whole, changed;
  for (const auto& [key, part] : schema["properties"].items()) whole.insert(key);
  for (const auto& [key, part] : change["properties"].items()) changed.insert(key);
  whole.erase("plans");
  EXPECT_EQ(changed, whole);
  EXPECT_TRUE(has_word(schema["properties"]["openings"], "required"));
  EXPECT_TRUE(has_word(schema["properties"]["openings"], "default"));
  // A list in a change takes the place of the whole list, so its items ask for what they always do.
  for (const auto& [key, part] : change["properties"].items())
    if (key != "staged_controls" && key != "grower") {
      EXPECT_FALSE(has_word(part, "required")) << key;
    }
  EXPECT_FALSE(change.contains("required"));
  EXPECT_FALSE(has_word(change, "default"));
  EXPECT_FALSE(has_word(change, "oneOf"));
  EXPECT_EQ(change["properties"]["openings"]["additionalProperties"]["properties"]["area"]["pattern"],
            schema["properties"]["openings"]["additionalProperties"]["properties"]["area"]["pattern"]);
  EXPECT_EQ(change["additionalProperties"], false);
}

}  // namespace
}  // namespace noonhouse
