// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <csignal>
#include <fstream>

#include "sim/core/errors.hpp"
#include "tools/cli/interruptible.hpp"
#include "tools/cli/results_folder.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;

std::vector<RunRecord> records_of(const std::vector<std::string>& plans) {
  std::vector<RunRecord> records;
  for (const std::string& plan : plans) {
    records.emplace_back();
    records.back().plan = plan;
  }
  return records;
}

std::vector<std::string> chosen(const std::vector<std::string>& plans) {
  std::vector<std::string> names;
  for (const RunRecord& record : only_plans(records_of({"all shut", "mist alone", "vents"}), plans))
    names.push_back(record.plan);
  return names;
}

TEST(ResultsFolder, OnlyThePlansNamed) {
  EXPECT_THAT(chosen({}), ElementsAre("all shut", "mist alone", "vents"));
  EXPECT_THAT(chosen({"vents", "all shut"}), ElementsAre("all shut", "vents"));
}

TEST(ResultsFolder, APlanThatNoRunIsOfIsRefusedWithTheNearest) {
  try {
    chosen({"mist alnoe"});
    FAIL() << "not refused";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_THAT(error.what(), HasSubstr("did you mean \"mist alone\"?"));
    EXPECT_THAT(error.what(), HasSubstr("\"all shut\", \"mist alone\", \"vents\""));
  }
}

TEST(ResultsFolder, ARunsOwnFileIsRefusedWithItsFolder) {
  try {
    refuse_run_file("results/week/vents.h5");
    FAIL() << "not refused";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::usage);
    EXPECT_THAT(error.what(), HasSubstr("give its folder: 'results/week'"));
  }
  EXPECT_THROW(refuse_run_file("vents.h5"), UserError);
  EXPECT_NO_THROW(refuse_run_file("results/week"));
  EXPECT_NO_THROW(refuse_run_file("house.yaml"));
}

TEST(ResultsFolder, OlderRunsBesideTheNewAreFound) {
  const fs::path folder = fs::path(testing::TempDir()) / ("runs_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  for (const char* name : {"b.h5", "a.h5", "new.h5", "report.html"}) std::ofstream(folder / name) << "x";
  EXPECT_THAT(run_files(folder, {folder / "new.h5"}), ElementsAre(folder / "a.h5", folder / "b.h5"));
  fs::remove_all(folder);
  EXPECT_THROW(run_files(folder), UserError);
}

TEST(Interruptible, TheFirstInterruptOnlyAsks) {
  struct sigaction before {};
  sigaction(SIGINT, nullptr, &before);
  {
    const Interruptible interruptible;
    EXPECT_FALSE(interruptible.asked());
    std::raise(SIGINT);
    EXPECT_TRUE(interruptible.asked());
    struct sigaction second {};
    sigaction(SIGINT, nullptr, &second);
    EXPECT_EQ(second.sa_handler, SIG_DFL) << "a second interrupt ends the program";
  }
  struct sigaction after {};
  sigaction(SIGINT, nullptr, &after);
  EXPECT_EQ(after.sa_handler, before.sa_handler);
  EXPECT_FALSE(Interruptible().asked()) << "an earlier interrupt is over";
}

}  // namespace
}  // namespace noonhouse
