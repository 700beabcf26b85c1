// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "sim/core/errors.hpp"
#include "tests/support/invented_record.hpp"
#include "tools/report/html.hpp"
#include "tools/report/report.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;

/// Without the page in the message when it fails.
bool contains(const std::string& page, const std::string& text) { return page.find(text) != std::string::npos; }
using testing::HasSubstr;

/// An empty folder of this test's own, removed at its end.
class ReportFile : public testing::Test {
 protected:
  void SetUp() override {
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = fs::path(testing::TempDir()) / (std::string("report_") + test->name() + std::to_string(::getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }
  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  static std::string read(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
  }
  static ErrorKind kind_of_failure(const std::string& file) {
    try {
      write_report({invented::make_record()}, file);
    } catch (const UserError& error) {
      EXPECT_THAT(error.what(), HasSubstr(file));
      return error.kind();
    }
    return ErrorKind::interrupted;
  }
  fs::path folder_;
};

TEST_F(ReportFile, IsWrittenWholeAndLeavesNoPart) {
  write_report(invented::three_plans(), path("report.html"));
  EXPECT_TRUE(read(path("report.html")) == report_html(invented::three_plans(), UnitSystem::metric));
  EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1);
}

TEST_F(ReportFile, ReplacesAnOlderOne) {
  std::ofstream(path("report.html")) << "what stood here";
  write_report({invented::make_record()}, path("report.html"));
  EXPECT_TRUE(read(path("report.html")) == report_html({invented::make_record()}, UnitSystem::metric));
}

TEST_F(ReportFile, SaysWhenItCannotBeWritten) {
  EXPECT_EQ(kind_of_failure(path("nowhere/report.html")), ErrorKind::results_not_writable);
  fs::create_directory(path("folder.html"));
  EXPECT_EQ(kind_of_failure(path("folder.html")), ErrorKind::results_not_writable);
  EXPECT_FALSE(fs::exists(path("folder.html.part")));
}

/// Files may grow to a few bytes only while it lives: the system then refuses as it does on a full disk.
class SmallFilesOnly {
 public:
  SmallFilesOnly() : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    rlimit small = before_;
    small.rlim_cur = 4096;
    ::setrlimit(RLIMIT_FSIZE, &small);
  }
  ~SmallFilesOnly() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }

 private:
  rlimit before_{};
  void (*handler_)(int);
};

TEST_F(ReportFile, AFullDiskLeavesTheOlderOne) {
  std::ofstream(path("report.html")) << "old";
  {
    const SmallFilesOnly limit;
    EXPECT_EQ(kind_of_failure(path("report.html")), ErrorKind::disk_full);
  }
  EXPECT_EQ(read(path("report.html")), "old");
  EXPECT_FALSE(fs::exists(path("report.html.part")));
}

TEST(ReportHtml, EscapesTextAndJson) {
  EXPECT_EQ(html_escape("<a href=\"x\">'&'</a>\x01"), "&lt;a href=&quot;x&quot;&gt;&#39;&amp;&#39;&lt;/a&gt;");
  EXPECT_EQ(script_json("{\"a\":\"</script>\"}"), "{\"a\":\"\\u003c/script>\"}");
  EXPECT_EQ(nlohmann::json::parse(script_json("\"<!--\"")), "<!--");
}

TEST(ReportHtml, NoTextOfTheRecordBecomesMarkup) {
  const std::string evil = "</script><script>alert(1)</script><b title=\"'>";
  RunRecord r = invented::make_record({"mist only", 7.0, 600.0, 0.0, 60.0});
  for (std::string* field : {&r.scenario,
                             &r.title,
                             &r.plan,
                             &r.about,
                             &r.start,
                             &r.utc_offset,
                             &r.scenario_text,
                             &r.cautions[0],
                             &r.provenance.version,
                             &r.provenance.scenario_file,
                             &r.provenance.scenario_digest,
                             &r.provenance.weather_digest,
                             &r.plants[0].name,
                             &r.plants[0].kind,
                             &r.plants[0].place,
                             &r.plants[0].bay,
                             &r.plants[0].reason,
                             &r.levels.back().bay,
                             &r.devices[0].name,
                             &r.failures[0].what,
                             &r.failures[0].chain[0],
                             &r.events[0].kind,
                             &r.events[0].subject,
                             &r.events[0].what,
                             &r.axes[0].labels[0],
                             &r.axes[2].labels[0]}) {
    *field = evil;
  }
  const std::string page = report_html({r, invented::make_record()}, UnitSystem::metric);
  const std::string markup = page.substr(0, page.find("<script"));
  EXPECT_EQ(page.find("<script>alert"), std::string::npos);
  EXPECT_EQ(page.find("<b title"), std::string::npos);
  EXPECT_EQ(markup.find("\"'>"), std::string::npos);
  std::size_t scripts = 0;
  for (std::size_t at = page.find("<script"); at != std::string::npos; at = page.find("<script", at + 1)) ++scripts;
  EXPECT_EQ(scripts, 3U);
}

TEST(ReportHtml, AnswersFirst) {
  const std::string page = report_html(invented::three_plans(), UnitSystem::metric);
  const std::size_t answer = page.find("&quot;shade and mist&quot; keeps all 5 plant groups.");
  ASSERT_NE(answer, std::string::npos);
  EXPECT_LT(answer, page.find("<table"));
  EXPECT_TRUE(contains(page,
                       "mist only</a> keeps 4 of 5: harms orchid. First: pump cut out, day\u00A05\u00A000:00 ← "
                       "tank at its low mark ← no rain since day 1."));
  EXPECT_TRUE(contains(page, "A closed house in the sun can be too hot to work in."));
}

/// What all plans share stands once, before the plans; why a plan stands behind its neighbour, in its line, but for the
/// second, of which the headline has said it.
TEST(ReportHtml, SaysWhatSetsPlansApartAndWhatTheyShareOnce) {
  std::vector<RunRecord> records = invented::three_plans();
  for (RunRecord& record : records)
    record.failures.insert(record.failures.begin(), {60.0, "harm", "fern", "fern strained: heat", {}});
  const std::string page = report_html(records, UnitSystem::metric);
  const std::string answer = page.substr(0, page.find("</section>"));
  EXPECT_TRUE(contains(answer, "<p>First in every plan: fern strained: heat, day\u00A01\u00A000:01.</p>"));
  EXPECT_EQ(answer.find("fern strained"), answer.rfind("fern strained"));
  EXPECT_TRUE(contains(answer, "Then: pump cut out, day\u00A05\u00A000:00"));
  EXPECT_TRUE(contains(answer, "In &quot;mist only&quot; the pump was cut out for a low tank on day 5 00:00."));
  EXPECT_EQ(answer.find("is ahead of &quot;mist only&quot;"), std::string::npos);
  EXPECT_TRUE(contains(answer, "&quot;mist only&quot; is ahead of &quot;nothing&quot; because it "));
  EXPECT_TRUE(contains(page, "Failures: what broke, jammed"));
  EXPECT_TRUE(contains(page, "its cover and its drawn cloths with it"));
}

TEST(ReportHtml, TheDataIsReadableJson) {
  const std::string page = report_html(invented::three_plans(), UnitSystem::us);
  const std::string open = "<script type=\"application/json\" id=\"plans\">";
  const std::size_t from = page.find(open) + open.size();
  const auto data = nlohmann::json::parse(page.substr(from, page.find("</script>", from) - from));
  ASSERT_EQ(data.size(), 3U);
  EXPECT_EQ(data[1]["name"], "mist only");
  EXPECT_EQ(data[1]["charts"].size(), 11U);
  bool found = false;
  for (const auto& event : data[1]["events"]) {
    if (event["what"] != "mist stopped") continue;
    found = true;
    EXPECT_EQ(event["chain"].size(), 3U);
    EXPECT_EQ(event["chain"][0], "day 5 00:00, pump: pump cut out");
  }
  EXPECT_TRUE(found);
}

TEST(ReportHtml, SameRecordsSameBytes) {
  EXPECT_TRUE(report_html(invented::three_plans(), UnitSystem::metric) ==
              report_html(invented::three_plans(), UnitSystem::metric));
}

TEST(ReportHtml, ABareRecordAndNoRecord) {
  RunRecord bare;
  bare.plan = "bare", bare.scenario = "nothing";
  EXPECT_TRUE(contains(report_html({bare}, UnitSystem::metric), "Nothing failed."));
  EXPECT_THROW(report_html({}, UnitSystem::metric), UserError);
}

}  // namespace
}  // namespace noonhouse
