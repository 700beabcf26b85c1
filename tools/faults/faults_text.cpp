// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/faults_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/compare/comparison_layout.hpp"
#include "tools/faults/fault_advice.hpp"
#include "tools/faults/fault_words.hpp"

namespace noonhouse {
namespace {

constexpr int kNumberWidth = 3, kClockWidth = 13, kGraceWidth = 11, kHourWidth = 4;
constexpr int kNarrowestRows = 80;       ///< below it a row is a paragraph
constexpr std::size_t kChainsShown = 3;  ///< of the worst failures

/// Lines gathered one after another, none wider than the terminal.
class FaultLines {
 public:
  explicit FaultLines(int width) : width_(width) {}
  int width() const { return width_; }
  void paragraph(const std::string& text, int indent = 0) {
    for (const std::string& line : wrap_text(text, width_ - indent))
      out_ += std::string(static_cast<std::size_t>(indent), ' ') + line + '\n';
  }
  void heading(const std::string& text) {
    out_ += '\n';
    paragraph(text);
    rule(std::min(width_, display_width(text)));
  }
  void row(const TableCells& cells, const std::vector<int>& widths) { append_table_row(out_, cells, widths); }
  void rule(const std::vector<int>& widths) {
    TableCells cells;
    for (const int width : widths) cells.emplace_back(static_cast<std::size_t>(width), '-');
    row(cells, widths);
  }
  void line(std::string text) {
    text.erase(text.find_last_not_of(' ') + 1);
    out_ += text + '\n';
  }
  std::string take() { return std::move(out_); }

 private:
  void rule(int width) { out_ += std::string(static_cast<std::size_t>(width), '-') + '\n'; }
  int width_;
  std::string out_;
};

std::string at_right_of(const std::string& text, int width) {
  return std::string(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ') + text;
}

void add_failure_paragraphs(FaultLines& lines, const FaultSheet& sheet, std::size_t harmful) {
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    lines.paragraph(fmt::format("{} {}", i + 1, fault_name(fault)));
    lines.paragraph(fmt::format("worst {}: {} left; {}", unbroken(fault_clock(sheet, fault.worst_s)),
                                unbroken(grace_text(fault.worst_grace_s)), fault_cost_text(fault)),
                    4);
    lines.paragraph("longest with: " + best_addition_text(fault), 4);
  }
}

void add_failures(FaultLines& lines, const FaultSheet& sheet, std::size_t harmful) {
  lines.heading("What fails, and the time it leaves");
  if (lines.width() < kNarrowestRows) return add_failure_paragraphs(lines, sheet, harmful);
  const int rest = lines.width() - kNumberWidth - kClockWidth - kGraceWidth - 5 * kColumnGap;
  const int cost = rest * 3 / 10, addition = rest / 3;
  const std::vector<int> widths{kNumberWidth, rest - cost - addition, kClockWidth, kGraceWidth, cost, addition};
  lines.row({"", "what fails", "worst moment", "time left", "what it costs", "longest with"}, widths);
  lines.rule(widths);
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    lines.row({fmt::format("{}", i + 1), fault_name(fault), unbroken(fault_clock(sheet, fault.worst_s)),
               unbroken(grace_text(fault.worst_grace_s)), fault_cost_text(fault), best_addition_text(fault)},
              widths);
  }
}

void add_hours(FaultLines& lines, const FaultSheet& sheet, std::size_t harmful) {
  lines.heading("Time left by the hour of the failure, on " + told_day_text(sheet));
  int at_once = 24;
  while (kNumberWidth + at_once * kHourWidth > lines.width()) at_once /= 2;
  for (int from = 0; from < 24; from += at_once) {
    std::string head(kNumberWidth, ' ');
    for (int hour = from; hour < from + at_once; ++hour) head += at_right_of(fmt::format("{:02}", hour), kHourWidth);
    lines.line(head);
    for (std::size_t i = 0; i < harmful; ++i) {
      std::string text = at_right_of(fmt::format("{}", i + 1), kNumberWidth);
      for (int hour = from; hour < from + at_once; ++hour)
        text +=
            at_right_of(short_grace_text(sheet.faults[i].grace_by_hour_s[static_cast<std::size_t>(hour)]), kHourWidth);
      lines.line(text);
    }
  }
  lines.paragraph(
      fmt::format("Rows by the numbers above; m minutes, h hours; \".\" no harm within {} of the failure or "
                  "before the run ends.",
                  horizon_text(sheet)));
}

/// A line for each failure after which some addition changes the time; the others together.
void add_additions(FaultLines& lines, const FaultSheet& sheet, std::size_t harmful) {
  const std::string tried = tried_additions(sheet);
  if (tried.empty()) return;
  lines.heading("What each addition leaves after each failure");
  lines.paragraph(fmt::format("Tried at the worst moment: {}.", tried));
  std::vector<std::size_t> in_vain;
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    if (fault.additions.empty()) continue;
    if (longest_addition(fault) == nullptr)
      in_vain.push_back(i + 1);
    else
      lines.paragraph(fmt::format("{} {}", i + 1, additions_text(fault)), 2);
  }
  if (!in_vain.empty())
    lines.paragraph(fmt::format("None of them leaves more time after {}.", fmt::join(in_vain, ", ")));
}

void add_breaks(FaultLines& lines, const FaultSheet& sheet) {
  bool first = true;
  for (const FaultOutcome& fault : sheet.faults) {
    if (fault.breaks.empty()) continue;
    if (std::exchange(first, false))
      lines.heading("What of the house breaks that stays whole without the failure, or breaks later or less");
    lines.paragraph(fault_name(fault) + ": " + breaks_text(sheet, fault));
  }
}

void add_chains(FaultLines& lines, const FaultSheet& sheet, std::size_t harmful, UnitSystem units) {
  lines.heading("How the worst come to harm, newest first");
  for (std::size_t i = 0; i < std::min(harmful, kChainsShown); ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    lines.paragraph(fmt::format("{} {}, {}", i + 1, fault_name(fault), unbroken(fault_clock(sheet, fault.worst_s))));
    const char* arrow = "";
    for (const std::string& link : shown_chain(fault, units)) {
      lines.paragraph(arrow + link, 4);
      arrow = "<- ";
    }
  }
}

}  // namespace

std::string faults_text(const FaultSheet& sheet, UnitSystem units, int width) {
  FaultLines lines(std::clamp(width, kNarrowestFaults, kWidestFaults));
  const std::size_t harmful = harmful_faults(sheet);
  lines.paragraph(fmt::format("{}, plan \"{}\": {} failures tried", sheet.scenario, sheet.plan, sheet.faults.size()));
  lines.line("");
  for (const std::string& sentence : fault_answer(sheet)) lines.paragraph(sentence);
  if (harmful > 0) {
    add_failures(lines, sheet, harmful);
    add_additions(lines, sheet, harmful);
    add_hours(lines, sheet, harmful);
    add_chains(lines, sheet, harmful, units);
  }
  add_breaks(lines, sheet);
  lines.line("");
  if (const std::string harmless = harmless_text(sheet); !harmless.empty()) lines.paragraph(harmless);
  lines.paragraph(fault_search_text(sheet));
  if (const std::string next = next_step_text(sheet); !next.empty()) {
    lines.line("");
    lines.paragraph(next);
  }
  return lines.take();
}

}  // namespace noonhouse
