// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/located_yaml.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <chrono>
#include <filesystem>
#include <fstream>

#include "tests/support/text_marks.hpp"
#include "tools/scenario/located_overlay.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;

/// The error that an action throws; a failure of the test where it throws none.
template <class Action>
UserError error_of(const Action& action) {
  try {
    action();
  } catch (const UserError& error) {
    return error;
  }
  ADD_FAILURE() << "nothing was thrown";
  return {ErrorKind::usage, ""};
}

UserError reading_error(const std::string& text) {
  return error_of([&] { read_yaml_text(text, "house.yaml"); });
}

/// A folder of its own for one test, removed afterwards.
class LocatedFile : public ::testing::Test {
 protected:
  LocatedFile() {
    std::string name = (fs::temp_directory_path() / "noonhouse-located-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
  }
  ~LocatedFile() override { fs::remove_all(folder_); }
  fs::path write(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return folder_ / name;
  }
  fs::path folder_;
};

TEST(LocatedYaml, KeysAndScalarsKnowWhereTheyStand) {
  const LocatedNode root =
      read_yaml_text("# a note\nhouse:\n  width: 3 m\n  benches: [low, \"hi gh\"]\n", "house.yaml");
  const LocatedEntry* house = root.find("house");
  ASSERT_NE(house, nullptr);
  EXPECT_EQ(where(house->key_position), "house.yaml:2:1");
  const LocatedEntry* width = house->value.find("width");
  ASSERT_NE(width, nullptr);
  EXPECT_EQ(where(width->key_position), "house.yaml:3:3");
  EXPECT_EQ(where(width->value.position), "house.yaml:3:10");
  EXPECT_EQ(width->value.text, "3 m");
  const LocatedNode& benches = house->value.find("benches")->value;
  ASSERT_EQ(benches.items.size(), 2U);
  EXPECT_FALSE(benches.items[0].quoted);
  EXPECT_TRUE(benches.items[1].quoted);
  EXPECT_EQ(where(benches.items[1].position), "house.yaml:4:18");
}

TEST(LocatedYaml, ScalarsStayTextAndNullIsNothing) {
  const LocatedNode root = read_yaml_text("a: 010\nb: no\nc: ~\nd:\ne: \"~\"\nf: 12:30\n", "x");
  EXPECT_EQ(root.find("a")->value.text, "010");
  EXPECT_EQ(root.find("b")->value.text, "no");
  EXPECT_EQ(root.find("c")->value.kind, LocatedNode::Kind::nothing);
  EXPECT_EQ(root.find("d")->value.kind, LocatedNode::Kind::nothing);
  EXPECT_EQ(root.find("e")->value.kind, LocatedNode::Kind::scalar);
  EXPECT_EQ(root.find("f")->value.text, "12:30");
}

TEST(LocatedYaml, ColumnsCountCharactersAndCaretStandsUnderThem) {
  const LocatedNode root = read_yaml_text("{größe: {höhe: 9 m}}\n", "x.yaml");
  const Position at = root.find("größe")->value.find("höhe")->value.position;
  EXPECT_EQ(where(at), "x.yaml:1:16");
  EXPECT_EQ(caret_lines(at), "     1 | {größe: {höhe: 9 m}}\n       |                ^");
}

TEST(LocatedYaml, WindowsLineEndsAndByteOrderMarkAreNoTrouble) {
  const LocatedNode root = read_yaml_text(
      "\xEF\xBB\xBF"
      "a: 1\r\nb: 2\r\n",
      "x");
  EXPECT_EQ(root.find("a")->value.text, "1");
  EXPECT_EQ(root.find("b")->value.position.line, 2);
  EXPECT_EQ(caret_lines(root.find("b")->value.position), "     2 | b: 2\n       |    ^");
}

TEST_F(LocatedFile, MissingFileFolderAndDeviceSayWhich) {
  const UserError missing = error_of([&] { read_yaml_file(folder_ / "no.yaml"); });
  EXPECT_EQ(missing.kind(), ErrorKind::file_missing);
  EXPECT_TRUE(says(missing, "no.yaml: there is no such file")) << missing.what();
  const UserError folder = error_of([&] { read_yaml_file(folder_); });
  EXPECT_EQ(folder.kind(), ErrorKind::file_missing);
  EXPECT_TRUE(says(folder, "this is a folder")) << folder.what();
  const UserError device = error_of([] { read_yaml_file("/dev/zero"); });
  EXPECT_EQ(device.kind(), ErrorKind::file_missing);
  EXPECT_TRUE(says(device, "not a regular file")) << device.what();
}

TEST_F(LocatedFile, UnreadableFileSaysWhy) {
  const fs::path path = write("closed.yaml", "a: 1\n");
  fs::permissions(path, fs::perms::none);
  if (std::ifstream(path)) GTEST_SKIP() << "this user may read every file";
  const UserError error = error_of([&] { read_yaml_file(path); });
  EXPECT_EQ(error.kind(), ErrorKind::file_missing);
  EXPECT_TRUE(says(error, "cannot be read")) << error.what();
}

TEST_F(LocatedFile, HugeFileIsRefusedAtOnce) {
  const fs::path path = write("huge.yaml", "");
  fs::resize_file(path, std::uintmax_t{1} << 30U);  // sparse: a gigabyte that takes no room
  const auto start = std::chrono::steady_clock::now();
  const UserError error = error_of([&] { read_yaml_file(path); });
  EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::milliseconds(100));
  EXPECT_EQ(error.kind(), ErrorKind::file_too_large);
  EXPECT_TRUE(says(error, "1024.0 MiB; a scenario is at most 4 MiB")) << error.what();
}

TEST_F(LocatedFile, FileIsReadUnderItsOwnName) {
  const fs::path path = write("ok.yaml", "a: 1\n");
  EXPECT_EQ(where(read_yaml_file(path).find("a")->value.position), path.string() + ":1:4");
}

TEST(LocatedYaml, EmptyTextsSaySo) {
  for (const char* text : {"", "\n \n", "# only a note\n\n  # and another", "---\n"}) {
    const UserError error = reading_error(text);
    EXPECT_EQ(error.kind(), ErrorKind::file_empty) << text;
    EXPECT_TRUE(says(error, "house.yaml: ")) << error.what();
  }
}

struct Mistake {
  const char* name;
  const char* text;
  ErrorKind kind;
  const char* place;
  const char* says;
};

const Mistake kMistakes[] = {
    {"unclosed", "a: [1, 2\nb: 3\n", ErrorKind::file_syntax, "house.yaml:", "not readable as YAML"},
    {"tab", "a:\n\tb: 1\n", ErrorKind::file_syntax, "house.yaml:2:", "indent with spaces"},
    {"percent", "a: %5\n", ErrorKind::file_syntax, "house.yaml:1:4", "may not start with %"},
    {"two colons", "a: b: c\n", ErrorKind::file_syntax, "house.yaml:1:5", "not readable as YAML"},
    {"second document", "a: 1\n---\nb: 2\n", ErrorKind::file_syntax, "house.yaml:3:1", "second document"},
    {"merge key", "x: &x {a: 1}\ny:\n  <<: *x\n", ErrorKind::file_syntax, "house.yaml:3:3", "merge keys"},
    {"tag", "a: !!int 5\n", ErrorKind::file_syntax, "house.yaml:1:4", "tag"},
    {"list as key", "? [1, 2]\n: 3\n", ErrorKind::file_syntax, "house.yaml:1:3", "plain word"},
    {"unknown alias", "a: *nobody\n", ErrorKind::file_syntax, "house.yaml:1:4", "not readable as YAML"},
    {"duplicate", "vent:\n  area: 1 m2\n  area: 2 m2\n", ErrorKind::duplicate_key, "house.yaml:3:3", "first is at 2:3"},
    {"self alias", "a: &a [1, *a]\n", ErrorKind::anchor_cycle, "house.yaml:1:11", "inside the anchor"},
};

TEST(LocatedYaml, MistakesNameKindPlaceAndRemedy) {
  for (const Mistake& mistake : kMistakes) {
    const UserError error = reading_error(mistake.text);
    EXPECT_EQ(error.kind(), mistake.kind) << mistake.name << ": " << error.what();
    EXPECT_TRUE(says(error, mistake.place)) << mistake.name << ": " << error.what();
    EXPECT_TRUE(says(error, mistake.says)) << mistake.name << ": " << error.what();
  }
}

TEST(LocatedYaml, BinaryAndOtherEncodingsAreNotText) {
  for (const std::string& text : {std::string("a: b\xFF\n"), std::string("a: \xC0\x80\n"), std::string("a\0: 1\n", 6),
                                  std::string("\x89HDF\r\n"), std::string("a: \xED\xA0\x80\n")}) {
    const UserError error = reading_error(text);
    EXPECT_EQ(error.kind(), ErrorKind::file_syntax);
    EXPECT_TRUE(says(error, "house.yaml:1:") && says(error, "UTF-8")) << error.what();
  }
}

TEST(LocatedYaml, AliasesAreExpandedWithThePositionOfTheirAnchor) {
  const LocatedNode root = read_yaml_text("a: &a {deep: 1}\nb: *a\n", "x");
  EXPECT_EQ(root.find("b")->value.find("deep")->value.text, "1");
  EXPECT_EQ(root.find("b")->value.find("deep")->value.position.line, 1);
}

TEST(LocatedYaml, AliasBombIsDefusedBeforeItGrows) {
  std::string text = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
  for (int i = 1; i <= 40; ++i) {
    text += fmt::format("a{0}: &a{0} [", i);
    for (int k = 0; k < 10; ++k) text += fmt::format("{}*a{}", k == 0 ? "" : ", ", i - 1);
    text += "]\n";
  }
  const auto start = std::chrono::steady_clock::now();
  const UserError error = reading_error(text);
  EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(5));
  EXPECT_EQ(error.kind(), ErrorKind::anchor_cycle);
  EXPECT_TRUE(says(error, "100000 values")) << error.what();
}

TEST(LocatedYaml, DepthIsLimited) {
  const auto nested = [](std::size_t depth) { return "a: " + std::string(depth, '[') + std::string(depth, ']'); };
  EXPECT_NO_THROW(read_yaml_text(nested(62), "x"));
  EXPECT_EQ(reading_error(nested(65)).kind(), ErrorKind::anchor_cycle);
  const ErrorKind far = reading_error(nested(200'000)).kind();
  EXPECT_TRUE(far == ErrorKind::anchor_cycle || far == ErrorKind::file_syntax);
}

TEST(LocatedOverlay, ChangeReplacesValuesAndKeepsThePlacesOfBoth) {
  const LocatedNode base = read_yaml_text("house: {width: 3 m, height: 2 m}\nplants: [a, b]\n", "base.yaml");
  const LocatedNode change = read_yaml_text("house:\n  height: 4 m\nplants: [c]\nextra: 1\n", "plan.yaml");
  const LocatedNode merged = overlay(base, change);
  const LocatedNode& house = merged.find("house")->value;
  EXPECT_EQ(house.find("width")->value.text, "3 m");
  EXPECT_EQ(where(house.find("width")->value.position), "base.yaml:1:16");
  EXPECT_EQ(house.find("height")->value.text, "4 m");
  EXPECT_EQ(where(house.find("height")->value.position), "plan.yaml:2:11");
  ASSERT_EQ(merged.find("plants")->value.items.size(), 1U);  // lists are replaced whole
  EXPECT_EQ(merged.find("extra")->value.text, "1");          // left for strict reading to refuse
  EXPECT_EQ(base.find("house")->value.find("height")->value.text, "2 m");
}

TEST(LocatedOverlay, ChangeMayNotInventNamedItems) {
  const LocatedNode base = read_yaml_text("bays:\n  east: {vents: {ridge: {area: 1}, side: {area: 2}}}\n", "base.yaml");
  const NamedItems named = named_items({"bays", "bays.*.vents"});
  const auto lay = [&](const std::string& text) { return overlay(base, read_yaml_text(text, "plan.yaml"), named); };
  const LocatedNode merged = lay("bays: {east: {vents: {side: {area: 9}}}}");
  EXPECT_EQ(
      merged.find("bays")->value.find("east")->value.find("vents")->value.find("side")->value.find("area")->value.text,
      "9");
  const UserError error = error_of([&] { lay("bays:\n  east:\n    vents:\n      rigde: {area: 9}\n"); });
  EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
  EXPECT_TRUE(says(error, "plan.yaml:4:7: bays › east › vents")) << error.what();
  EXPECT_TRUE(says(error, "did you mean \"ridge\"?")) << error.what();
  EXPECT_TRUE(says(error, "there is ridge, side")) << error.what();
  EXPECT_NO_THROW(lay("bays: {east: {colour: red}}"));  // not a named item: for strict reading to refuse
}

TEST(LocatedOverlay, ChangeMayNotInventAWholeMappingOfNamedItems) {
  const LocatedNode base = read_yaml_text("width: 3 m\n", "base.yaml");
  const UserError error =
      error_of([&] { overlay(base, read_yaml_text("fans: {big: {}}", "p"), named_items({"fans"})); });
  EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
  EXPECT_TRUE(says(error, "there is none")) << error.what();
}

}  // namespace
}  // namespace noonhouse
