// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/field_facts.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/tree_text.hpp"

namespace noonhouse {

/// The values of a plan in the words and units of a reader, what was assumed marked: what the tree of a house is made
/// of.
class PlanWords {
 public:
  using Keys = std::vector<std::string>;

  /// The plan must outlive it.
  PlanWords(const PlanScenario& plan, UnitSystem system);

  /// The values of a group in words, all of them or those of some keys, what was assumed marked; defaults that do
  /// nothing only counted.
  std::string listed(const std::string& path, const Keys& keys = {}) const;
  /// What the file itself gives of a group beside some keys, each with ", " before it.
  std::string given_beside(const std::string& path, const Keys& keys) const;
  Branch group(const std::string& name, const std::string& path) const { return {name, {{listed(path)}}}; }
  /// Items of a mapping, a line each; nothing where there are none.
  template <class T>
  void add_named(std::vector<Branch>& out, const char* words, const char* group,
                 const std::vector<Named<T>>& items) const {
    if (items.empty()) return;
    Branch branch{words, {}};
    for (const auto& it : items)
      branch.children.push_back({it.name + ": " + listed(std::string(group) + "." + it.name)});
    out.push_back(std::move(branch));
  }

  std::string shown(double si, Dimension dimension) const { return unbroken(format_quantity(si, dimension, system_)); }
  /// A volume of air [m3], never in the units of liquids.
  std::string air(double volume_m3) const;
  std::string resting(const std::string& device) const { return plan_.uses(device) ? "" : "; at rest in this plan"; }
  /// Names with what this plan leaves at rest marked.
  std::string devices(const std::vector<std::string>& names) const;

  /// What was assumed, by group; groups of one mapping that assume the same stand on one line.
  std::string assumptions() const;

 private:
  const PlanScenario& plan_;
  UnitSystem system_;
  std::vector<Fact> facts_;
};

/// A branch as it is, or one that says that it holds nothing.
Branch or_none(Branch branch);

}  // namespace noonhouse
