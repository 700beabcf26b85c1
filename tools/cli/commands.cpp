// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/commands.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <optional>
#include <set>
#include <span>

#include "tools/airing/airing.hpp"
#include "tools/airing/airing_text.hpp"
#include "tools/cli/fault_files.hpp"
#include "tools/cli/interruptible.hpp"
#include "tools/cli/key_list.hpp"
#include "tools/cli/progress_bar.hpp"
#include "tools/cli/results_folder.hpp"
#include "tools/cli/surroundings.hpp"
#include "tools/compare/comparison.hpp"
#include "tools/compare/comparison_json.hpp"
#include "tools/compare/comparison_text.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/plan_run.hpp"
#include "tools/places/day_light.hpp"
#include "tools/places/light_svg.hpp"
#include "tools/places/light_text.hpp"
#include "tools/placing/place_answer.hpp"
#include "tools/placing/place_svg.hpp"
#include "tools/placing/place_text.hpp"
#include "tools/placing/season_text.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/report/report.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/material_tree.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/scenario/weather_hints.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

std::filesystem::path results_of(const CommandOptions& options, const Scenario& scenario) {
  return options.results.empty() ? std::filesystem::path("results") / scenario.name
                                 : std::filesystem::path(options.results);
}

/// Says on standard error, each thing once, what can spoil an answer unseen.
void warn_of_slips(const std::vector<const PlanScenario*>& plans) {
  std::set<std::string> said;
  for (const PlanScenario* plan : plans)
    for (const std::string& slip : plan_slips(*plan))
      if (said.insert(slip).second) fmt::print(stderr, "Worth a look (plan \"{}\"): {}\n", plan->name, slip);
}

void write_picture(const std::string& file, const std::string& picture) {
  write_file_whole(file, std::as_bytes(std::span(picture.data(), picture.size())));
  fmt::print("\nThe picture is at {}\n", std::filesystem::absolute(file).lexically_normal().string());
}

/// Runs the plans asked for and writes their files.
std::vector<RunRecord> run_and_write(const CommandOptions& options, std::vector<std::filesystem::path>& files) {
  refuse_run_file(options.target);
  const Scenario scenario = read_scenario(options.target);
  std::vector<const PlanScenario*> plans;
  for (const std::string& name : options.plans) plans.push_back(&scenario.plan(name));
  if (plans.empty())
    for (const PlanScenario& plan : scenario.plans) plans.push_back(&plan);
  if (!options.quiet) warn_of_slips(plans);
  const auto folder = results_of(options, scenario);
  const ResultsFolder guard(folder);
  const int threads = threads_or_all(options.threads);
  const Interruptible interruptible;
  std::vector<RunRecord> records;
  {
    ProgressBar bar(fmt::format("{} plan{}", plans.size(), plans.size() == 1 ? "" : "s"));
    const auto show = [&](double share) {
      if (!options.quiet) bar.show(share);
    };
    records = run_plans(scenario, plans, threads, show, &interruptible.asked());
  }
  files = write_results(folder, records);
  guard.keep();
  return records;
}

void print_comparison(const CommandOptions& options, const std::vector<RunRecord>& records) {
  if (options.json) {
    fmt::print("{}\n", compare_json(records));
  } else {
    fmt::print("{}", compare_text(records, options.units, terminal_width()));
  }
}

/// Where the runs just written are, and which older ones stand beside them.
void print_where(const std::vector<std::filesystem::path>& files) {
  const std::filesystem::path folder = files.front().parent_path();
  fmt::print("\nRuns are in {}/; the page with charts: noonhouse report {}\n", folder.string(), folder.string());
  std::vector<std::string> others;
  for (const auto& file : run_files(folder, files)) others.push_back(file.filename().string());
  if (others.empty()) return;
  fmt::print("Also there from before: {}; the page would show {} too\n", fmt::join(others, ", "),
             others.size() == 1 ? "it" : "them");
}

/// What to ask next of the plan that came out best.
void print_next(const CommandOptions& options, const std::vector<RunRecord>& records,
                const std::filesystem::path& folder) {
  const RunRecord& best = records[rank_plans(records).front().index];
  const std::string plan = records.size() > 1 ? fmt::format(" --plan \"{}\"", best.plan) : "";
  if (!best.plants.empty())
    fmt::print("Where each group of plants should stand: noonhouse place {}{}\n", options.target, plan);
  if (!best.plants.empty() && !best.devices.empty())
    fmt::print("What happens when something fails: noonhouse faults {}{} --results {}\n", options.target, plan,
               folder.string());
}

}  // namespace

void check_command(const CommandOptions& options) {
  const Scenario scenario = read_scenario(options.target);
  // The house is the same in all plans; one tree is enough.
  const PlanScenario& shown = options.plans.empty() ? scenario.plans.front() : scenario.plan(options.plans.front());
  std::vector<std::vector<std::string>> idle_limits;
  for (PlanScenario plan : scenario.plans) {
    const WeatherSeries weather = weather_of(scenario, plan);
    plan.spec.run.warm_up_s = 0.0;  // the house is put together, not run
    static_cast<void>(assemble(plan, site_table(plan, weather), weather));
    idle_limits.push_back(weather_hints(plan, weather));
  }
  fmt::print("{}", house_tree(shown, options.units));
  std::vector<Branch> hints;
  for (std::string& hint : further_hints(scenario, shown, idle_limits)) hints.push_back({std::move(hint), {}});
  if (!hints.empty()) fmt::print("\nworth a look in the plans and their weather\n{}", tree_text(hints, kTextWidth));
  fmt::print("\n{} is sound: {} plan{}\n", options.target, scenario.plans.size(),
             scenario.plans.size() == 1 ? "" : "s");
}

void run_command(const CommandOptions& options) {
  std::vector<std::filesystem::path> files;
  const auto records = run_and_write(options, files);
  for (std::size_t i = 0; i < records.size(); ++i) {
    const PlanTally tally = tally_plan(records[i]);
    fmt::print("{}: {} of {} plant groups kept, {} failures; air changes an hour: {}; {}\n", records[i].plan,
               tally.kept, tally.plants, tally.failures, air_changes_text(records[i].airing), files[i].string());
  }
}

void compare_command(const CommandOptions& options) {
  if (std::filesystem::is_directory(options.target)) {
    print_comparison(options, only_plans(read_results(options.target), options.plans));
    return;
  }
  std::vector<std::filesystem::path> files;
  const auto records = run_and_write(options, files);
  print_comparison(options, records);
  if (options.json || options.quiet) return;
  print_where(files);
  print_next(options, records, files.front().parent_path());
}

void report_command(const CommandOptions& options) {
  refuse_run_file(options.target);
  const auto records = read_results(options.target);
  const std::filesystem::path page = options.page.empty() ? std::filesystem::path(options.target) / "report.html"
                                                          : std::filesystem::path(options.page);
  const std::optional<FaultSheet> faults = faults_in(options.target);
  write_report(records, page.string(), options.units, faults ? &*faults : nullptr);
  fmt::print("The report is at {}\n", std::filesystem::absolute(page).lexically_normal().string());
}

void light_command(const CommandOptions& options) {
  const Scenario scenario = read_scenario(options.target);
  const PlanScenario& plan = options.plans.empty() ? scenario.plans.front() : scenario.plan(options.plans.front());
  DayQuestion question{plan.spec.run.start, options.clear_sky, options.turbidity, options.drawn};
  if (!options.day.empty()) {
    const auto date = parse_date(options.day);
    if (!date)
      throw UserError(ErrorKind::usage, fmt::format("--day: read \"{}\"; give a date such as {}", options.day,
                                                    format_date(plan.spec.run.start)));
    question.date = *date;
  }
  if (const auto* invented = std::get_if<InventedHeatwave>(&plan.spec.weather.source);
      invented && options.turbidity == 3.5)
    question.turbidity = invented->turbidity;
  if (const auto* year = std::get_if<InventedYear>(&plan.spec.weather.source); year && options.turbidity == 3.5)
    question.turbidity = year->turbidity;
  const DayLight day = light_of_day(scenario, plan, question);
  fmt::print("{}", light_text(day, options.units, terminal_width(), utf8_terminal()));
  if (options.svg.empty()) return;
  write_picture(options.svg, light_svg(day));
}

void air_command(const CommandOptions& options) {
  const Scenario scenario = read_scenario(options.target);
  const PlanScenario& plan = options.plans.empty() ? scenario.plans.front() : scenario.plan(options.plans.front());
  const Airing airing = airing_at(scenario, plan, instant_of(options.at, plan));
  fmt::print("{}", airing_text(airing, options.units, terminal_width()));
}

void place_command(const CommandOptions& options) {
  const Scenario scenario = read_scenario(options.target);
  const PlanScenario& plan = options.plans.empty() ? scenario.plans.front() : scenario.plan(options.plans.front());
  if (options.plans.empty() && scenario.plans.size() > 1 && !options.quiet)
    fmt::print(stderr, "This is for the plan \"{}\", the first of {}; --plan chooses another.\n", plan.name,
               scenario.plans.size());
  PlaceQuestion question{options.keep, options.most_moves, threads_or_all(options.threads), {}};
  PlaceAnswer answer;
  {
    ProgressBar bar("trying every group on every place");
    if (!options.quiet) question.progress = [&](double share) { bar.show(share); };
    answer = answer_place(scenario, plan, question);
  }
  fmt::print("{}", place_text(answer, options.units, terminal_width(), utf8_terminal()));
  if (options.svg.empty()) return;
  write_picture(options.svg, place_svg(answer));
}

void season_command(const CommandOptions& options) {
  const Scenario scenario = read_scenario(options.target);
  const PlanScenario& plan = options.plans.empty() ? scenario.plans.front() : scenario.plan(options.plans.front());
  SeasonAnswer answer;
  {
    ProgressBar bar("a year in the house");
    SeasonQuestion question{options.kinds, threads_or_all(options.threads), {}};
    if (!options.quiet) question.progress = [&](double share) { bar.show(share); };
    answer = answer_season(scenario, plan, question);
  }
  fmt::print("{}", season_text(answer, options.units, terminal_width()));
}

void materials_command(const CommandOptions& options) {
  fmt::print("{}", material_tree(options.target, options.units));
}

void keys_command(const CommandOptions& options) {
  fmt::print("{}", key_list(scenario_schema(), options.target, terminal_width()));
}

void schema_command() { fmt::print("{}", scenario_schema()); }

}  // namespace noonhouse
