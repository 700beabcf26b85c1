// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "tools/scenario/field_places.hpp"
#include "tools/scenario/located_node.hpp"
#include "tools/scenario/scenario_spec.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// One plan of a scenario: the base house with the plan's changes laid over it, checked.
struct PlanScenario {
  std::string name, about;
  std::vector<std::string> in_service;
  ScenarioSpec spec;
  Places places;
  LocatedNode root;                        ///< the merged text, for saving and messages
  std::vector<std::string> rules_at_rest;  ///< of the scenario; the spec has them no longer
  bool uses(const std::string& device) const;
};

struct Scenario {
  std::filesystem::path file;
  std::string name;                 ///< of the file, without its ending
  std::vector<PlanScenario> plans;  ///< in file order; one named "base" where the file has no plans

  const PlanScenario& plan(const std::string& wanted) const;  ///< throws unknown_name
};

/// Reads and checks a scenario file with all its plans. Throws UserError at the place of the first mistake.
Scenario read_scenario(const std::filesystem::path& file);
/// The same from text in memory; `file` is used in messages and to find files beside it.
Scenario read_scenario_text(const std::string& text, const std::filesystem::path& file);

/// A kind of the library of plants, as a scenario would have it; the name is known to be right.
PlantKindSpec library_kind(const std::string& name);

/// Checks that need more than one value: what lies outside the house, what does not fit, marks in the wrong order.
void cross_check(const PlanScenario& plan);
/// Its parts: on the limits of kinds of plants; on tank, battery and pumps; on controls, hazards, failures and prices.
void cross_check_kinds(const PlanScenario& plan);
void cross_check_stores(const PlanScenario& plan);
void cross_check_supply(const PlanScenario& plan);

/// The scenario's JSON Schema (2020-12), for editors.
std::string scenario_schema();

/// A plan's house as a tree in words, at most 100 characters wide: site, weather, bays with their layers and what
/// stands in them, controls, tank, power, people and what is in service. What was assumed by default is marked, and
/// listed at the end; what is probably not meant stands before it.
std::string house_tree(const PlanScenario& plan, UnitSystem system = UnitSystem::metric);

}  // namespace noonhouse
