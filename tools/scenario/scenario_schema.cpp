// SPDX-License-Identifier: Apache-2.0
// The schema of a whole scenario file: the fields of the house, and the plans that change them.
#include <nlohmann/json.hpp>
#include <string>

#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kId = "urn:noonhouse:scenario";

/// The schema of a change to what a schema describes: the same keys, none required and none with a default, for what
/// a change leaves out stays as it is. Lists stay as they are, because a change replaces them whole.
Json change_of(const Json& schema) {
  if (schema.value("type", "") == "array") return schema;
  Json change = Json::object();
  for (const auto& [key, part] : schema.items()) {
    if (key == "required" || key == "default" || key == "minProperties") continue;
    if (key == "properties") {
      Json& properties = change[key] = Json::object();
      for (const auto& [name, property] : part.items()) properties[name] = change_of(property);
    } else if (key == "additionalProperties" && part.is_object()) {
      change[key] = change_of(part);
    } else if (key == "oneOf") {
      // With nothing required, a change may suit several alternatives.
      Json& alternatives = change["anyOf"] = Json::array();
      for (const Json& alternative : part) alternatives.push_back(change_of(alternative));
    } else {
      change[key] = part;
    }
  }
  return change;
}

/// A schema without the words that only the root has.
Json without_heading(Json schema) {
  for (const char* key : {"$schema", "$id", "title"}) schema.erase(key);
  return schema;
}

Json plans_schema() {
  Json plan = without_heading(Json::parse(schema_of<PlanSpec>(kId, "")));
  plan["properties"]["change"] = {
      {"$ref", "#/$defs/change"},
      {"description",
       "what differs from the scenario in this plan: the same keys, as many as change, such as a thermostat's "
       "starts_at "
       "or a tank's capacity; two plans with the same devices and other set-points compare the set-points"}};
  return {{"type", "object"},
          {"description", "plans to compare, by name; without any, one plan uses everything in the scenario"},
          {"additionalProperties", std::move(plan)},
          {"minProperties", 1}};
}

}  // namespace

std::string scenario_schema() {
  Json schema = Json::parse(schema_of<ScenarioSpec>(kId, "A small house, its site, its plants and the plans for it"));
  Json change = change_of(without_heading(schema));
  change["description"] = "what differs from the scenario: the same keys, as many as change";
  schema["properties"]["plans"] = plans_schema();
  schema["$defs"] = {{"change", std::move(change)}};
  return schema.dump(2) + "\n";
}

}  // namespace noonhouse
