// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/tools/field_sample.hpp"

namespace noonhouse::field_sample {
namespace {

TEST(FieldSave, SavedTextIsExpandedAndLoadsToTheSameValues) {
  for (const char* text : {kWhole, kLeast}) {
    const Everything first = load(text).value;
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
      const std::string saved = save_fields(first, system);
      const Loaded<Everything> again = load(saved);
      EXPECT_TRUE(again.places.defaulted().empty()) << saved;
      EXPECT_EQ(save_fields(again.value, system), saved);
      EXPECT_EQ(save_fields(again.value, UnitSystem::metric), save_fields(first, UnitSystem::metric));
      EXPECT_EQ(again.value.limit_k, first.limit_k);
      EXPECT_EQ(again.value.notes, first.notes);
      EXPECT_EQ(again.value.bays[0].value.hatches[0].value.opens_to, first.bays[0].value.hatches[0].value.opens_to);
      EXPECT_EQ(again.value.bays[0].value.hatches[0].value.area_m2, first.bays[0].value.hatches[0].value.area_m2);
      for (std::size_t i = 0; i < first.rules.size(); ++i) EXPECT_EQ(again.value.rules[i].hatch, first.rules[i].hatch);
    }
  }
}

TEST(FieldSave, TextShowsDefaultsInTheUnitsOfTheirField) {
  const Loaded<Everything> loaded = load(kLeast);
  EXPECT_EQ(save_fields(loaded.value, UnitSystem::metric, &loaded.places), R"(title: least
first: "2025-07-14"  # default
start: "2025-07-14 00:00"  # default
utc_offset: "-07:00"  # default
dusk: "20:15"  # default
emissivity: 0.9  # default
layers: 3  # default
dry: false  # default
bays:
  a:
    hatches:
      ridge:
        area: 1 m2
        opens_to: 100 %  # default
        side: roof
        probe:
          height: 1.5 m  # default
          bay: outside  # default
    heights: []
rules: []
notes: []
)");
}

TEST(FieldSave, ScalarsAreQuotedWhereOtherReadersWouldMistakeThem) {
  EXPECT_EQ(yaml_scalar("a plain one"), "a plain one");
  EXPECT_EQ(yaml_scalar("no"), "\"no\"");
  EXPECT_EQ(yaml_scalar("12"), "\"12\"");
  EXPECT_EQ(yaml_scalar(""), "\"\"");
  EXPECT_EQ(yaml_scalar("a: b"), "\"a: b\"");
  EXPECT_EQ(yaml_scalar("a # b"), "\"a # b\"");
  EXPECT_EQ(yaml_scalar("say \"\\\"\n"), "\"say \\\"\\\\\\\"\\n\"");
}

using Json = nlohmann::json;

/// Whether a value satisfies the part of JSON Schema that the field lists use.
bool accepts(const Json& schema, const Json& value) {
  if (schema.contains("oneOf")) {
    int count = 0;
    for (const Json& one : schema["oneOf"]) count += accepts(one, value) ? 1 : 0;
    return count == 1;
  }
  if (schema.contains("const") && value != schema["const"]) return false;
  if (schema.contains("enum") && std::count(schema["enum"].begin(), schema["enum"].end(), value) == 0) return false;
  const std::string type = schema.value("type", "");
  if (type == "string" && !value.is_string()) return false;
  if (type == "boolean" && !value.is_boolean()) return false;
  if (type == "integer" && !value.is_number_integer()) return false;
  if (type == "number" && !value.is_number()) return false;
  if (schema.contains("pattern")) {
    const std::regex pattern(schema["pattern"].get<std::string>());
    if (!std::regex_search(value.get<std::string>(), pattern)) return false;
  }
  if (schema.contains("minimum") && value < schema["minimum"]) return false;
  if (schema.contains("maximum") && value > schema["maximum"]) return false;
  if (type == "array") {
    if (!value.is_array()) return false;
    for (const Json& item : value)
      if (!accepts(schema["items"], item)) return false;
  }
  if (type == "object") {
    if (!value.is_object()) return false;
    for (const Json& key : schema.value("required", Json::array()))
      if (!value.contains(key.get<std::string>())) return false;
    for (const auto& [key, item] : value.items()) {
      const bool known = schema.contains("properties") && schema["properties"].contains(key);
      const Json& rule = known ? schema["properties"][key] : schema["additionalProperties"];
      if (rule.is_boolean() ? !rule.get<bool>() : !accepts(rule, item)) return false;
    }
  }
  return true;
}

/// A located tree as JSON, scalars resolved as a YAML 1.2 editor would.
Json as_json(const LocatedNode& node) {
  if (node.kind == LocatedNode::Kind::scalar) {
    const bool bare = !node.quoted && (Json::accept(node.text) && node.text.front() != '"');
    return bare ? Json::parse(node.text) : Json(node.text);
  }
  Json json = node.kind == LocatedNode::Kind::list ? Json::array() : Json::object();
  for (const LocatedNode& item : node.items) json.push_back(as_json(item));
  for (const LocatedEntry& entry : node.entries) json[entry.key] = as_json(entry.value);
  return json;
}

TEST(FieldSchemaText, NamesEveryFieldWithWhatItIs) {
  const std::string text = schema_of<Everything>("https://example.org/house", "A house");
  const Json schema = Json::parse(text);
  EXPECT_EQ(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
  EXPECT_EQ(schema["$id"], "https://example.org/house");
  for (const char* key : {"title", "first", "start", "utc_offset", "dusk", "emissivity", "layers", "dry", "limit",
                          "place", "bays", "rules", "notes"}) {
    ASSERT_TRUE(schema["properties"].contains(key)) << key;
    EXPECT_FALSE(schema["properties"][key]["description"].get<std::string>().empty()) << key;
  }
  EXPECT_EQ(schema["required"], Json({"title", "bays"}));
  const Json& hatch =
      schema["properties"]["bays"]["additionalProperties"]["properties"]["hatches"]["additionalProperties"];
  EXPECT_EQ(hatch["required"], Json({"area", "side"}));
  EXPECT_EQ(hatch["properties"]["opens_to"]["default"], "100 %");
  EXPECT_EQ(hatch["properties"]["side"]["enum"], Json({"roof", "wall"}));
  EXPECT_EQ(hatch["additionalProperties"], false);
  EXPECT_EQ(schema["properties"]["layers"]["default"], 3);
  EXPECT_EQ(schema["properties"]["rules"]["items"]["oneOf"].size(), 2U);
}

TEST(FieldSchemaText, AcceptsWhatIsSavedAndRefusesWhatLoadingRefuses) {
  const Json schema = Json::parse(schema_of<Everything>("https://example.org/house", "A house"));
  for (const char* text : {kWhole, kLeast}) {
    EXPECT_TRUE(accepts(schema, as_json(read_yaml_text(text, "x")))) << text;
    const std::string saved = save_fields(load(text).value, UnitSystem::us);
    EXPECT_TRUE(accepts(schema, as_json(read_yaml_text(saved, "x")))) << saved;
  }
  for (const Mistake& mistake : kMistakes) {
    const bool beyond_a_schema = mistake.kind == ErrorKind::unknown_name || std::string(mistake.to) == "  a.b:\n" ||
                                 std::string(mistake.to).find("2025-02-30") != std::string::npos ||
                                 std::string(mistake.to).find("area: 0 m2") != std::string::npos ||
                                 std::string(mistake.to).find("area: 999") != std::string::npos;
    const LocatedNode wrong = read_yaml_text(with(kLeast, mistake.from, mistake.to), "x");
    EXPECT_EQ(accepts(schema, as_json(wrong)), beyond_a_schema) << mistake.to;
  }
}

}  // namespace
}  // namespace noonhouse::field_sample
