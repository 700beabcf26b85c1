// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <optional>

#include "tools/cli/commands.hpp"
#include "tools/cli/fault_files.hpp"
#include "tools/cli/interruptible.hpp"
#include "tools/cli/progress_bar.hpp"
#include "tools/cli/results_folder.hpp"
#include "tools/cli/surroundings.hpp"
#include "tools/faults/fault_search.hpp"
#include "tools/faults/faults_json.hpp"
#include "tools/faults/faults_text.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

FaultSheet searched(const CommandOptions& options, const Scenario& scenario, const PlanScenario& plan, Tick horizon) {
  const Interruptible interruptible;
  ProgressBar bar("letting each thing fail");
  FaultSearch search;
  search.horizon = horizon;
  search.told_day = told_day_of(options.day, plan.spec.run.length_s);
  search.threads = threads_or_all(options.threads);
  search.stop = &interruptible.asked();
  if (!options.quiet) search.progress = [&](double share) { bar.show(share); };
  return search_faults(scenario, plan, weather_of(scenario, plan), search);
}

}  // namespace

void faults_command(const CommandOptions& options) {
  refuse_run_file(options.target);
  const Scenario scenario = read_scenario(options.target);
  const PlanScenario& plan = options.plans.empty() ? fullest_plan(scenario) : scenario.plan(options.plans.front());
  const Tick horizon = horizon_of(options.horizon);
  told_day_of(options.day, plan.spec.run.length_s);  // refused before anything is made
  if (options.plans.empty() && scenario.plans.size() > 1 && !options.quiet)
    fmt::print(stderr, "This is for the plan \"{}\", the one of {} with most in service; --plan chooses another.\n",
               plan.name, scenario.plans.size());
  std::optional<ResultsFolder> folder;
  if (!options.results.empty()) folder.emplace(options.results);
  const FaultSheet sheet = searched(options, scenario, plan, horizon);
  if (folder) {
    const auto file = write_faults(options.results, sheet);
    folder->keep();
    if (!options.quiet) fmt::print(stderr, "Kept in {}, for the page of noonhouse report too.\n", file.string());
  }
  fmt::print("{}", options.json ? faults_json(sheet) : faults_text(sheet, options.units, terminal_width()));
}

}  // namespace noonhouse
