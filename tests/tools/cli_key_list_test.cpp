// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/core/errors.hpp"
#include "tools/cli/key_list.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

/// The keys under the heading of each block: "run.length". Repeated for each alternative of a block.
std::multiset<std::string> listed_keys(const std::string& text) {
  std::multiset<std::string> out;
  std::istringstream in(text);
  std::string block;
  for (std::string line; std::getline(in, line);) {
    if (line.empty()) continue;
    const std::size_t indent = line.find_first_not_of(' ');
    const std::string first = line.substr(indent, line.find(':', indent) - indent);
    if (indent == 0 && line.find(':') != std::string::npos) block = first;
    if (indent == 2) out.insert((block.starts_with("at the top") ? "" : block + ".") + first);
  }
  return out;
}

class Saved final : public FieldVisitor {
 public:
  std::multiset<std::string> keys;

 private:
  bool keeps_values() const override { return false; }
  void scalar(const ScalarField& field) override {
    if (!in_scalars_.back()) keys.insert(path() + field.name);
  }
  bool open_group(const GroupField& group) override {
    if (!labelled_) keys.insert(path() + group.name);
    open(labelled_ ? "" : group.name);
    return true;
  }
  void close_group() override { close(); }
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string>) override {
    keys.insert(path() + items.name);
    const bool scalars = items.type == ItemsField::Type::scalars;
    open(items.name + (items.type == ItemsField::Type::named ? ".NAME" : ".each"));
    in_scalars_.back() = scalars;
    labelled_ = !scalars;
    return {"1"};
  }
  void close_items() override { close(); }
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t&) override {
    for (std::size_t i = 0; i < word.words.size(); ++i) keys.insert(path() + word.name);  // it heads each
    std::vector<std::size_t> all(word.words.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
  }
  void open(const std::string& name) {
    at_.push_back(name);
    in_scalars_.push_back(false);
    labelled_ = false;
  }
  void close() {
    at_.pop_back();
    in_scalars_.pop_back();
    labelled_ = false;
  }
  std::string path() const {
    std::string out;
    for (const std::string& name : at_)
      if (!name.empty()) out += name + ".";
    return out;
  }
  std::vector<std::string> at_;
  std::vector<bool> in_scalars_{false};
  bool labelled_ = false;  ///< the next group is an item
};

/// Every key of every field list stands in the list, in its block, and nothing else does.
TEST(KeyList, HasEveryKeyOfTheFieldLists) {
  Saved fields_of_all;
  ScenarioSpec scenario{};
  fields(fields_of_all, scenario);
  ASSERT_GT(fields_of_all.keys.size(), 400U);
  std::multiset<std::string> listed = listed_keys(key_list(scenario_schema(), "", 100));
  std::erase_if(listed, [](const std::string& key) { return key.starts_with("plans"); });
  EXPECT_EQ(listed, fields_of_all.keys);
}

TEST(KeyList, TellsUnitRangeDefaultAndWhatIsNeeded) {
  const std::string text = key_list(scenario_schema(), "thermostats", 120);
  EXPECT_THAT(text, HasSubstr("thermostats.NAME: "));
  EXPECT_THAT(text, HasSubstr("  starts_at: reading at which"));
  EXPECT_THAT(text, HasSubstr("in K, degC, degF"));
  EXPECT_THAT(text, HasSubstr("in s, ms, min, h and others"));
  EXPECT_THAT(text, HasSubstr("needed"));
  EXPECT_THAT(text, HasSubstr("default 1 min"));
  EXPECT_THAT(text, HasSubstr("one of: stops,"));
  EXPECT_THAT(text, Not(HasSubstr("humidistats")));
}

TEST(KeyList, GoesIntoBlocksAndTellsAlternativesApart) {
  EXPECT_THAT(key_list(scenario_schema(), "house.cover", 100), HasSubstr("house.cover.parts.NAME: "));
  EXPECT_THAT(key_list(scenario_schema(), "hazards", 100), HasSubstr("with kind: gusts"));
  EXPECT_THAT(key_list(scenario_schema(), "plans", 100), HasSubstr("  change: what differs from the scenario"));
}

TEST(KeyList, AnUnknownBlockIsAnErrorWithASuggestion) {
  try {
    key_list(scenario_schema(), "thermostat", 100);
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_THAT(error.what(), HasSubstr("thermostats"));
  }
}

}  // namespace
}  // namespace noonhouse
