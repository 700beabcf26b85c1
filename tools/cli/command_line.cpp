// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "sim/core/errors.hpp"
#include "tools/cli/commands.hpp"
#include "tools/cli/usage_errors.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

constexpr int kInternalError = 70;

void add_target(CLI::App& command, CommandOptions& options, const char* about) {
  command.add_option("target", options.target, about)->required();
}

void add_threads(CLI::App& command, CommandOptions& options, const char* about) {
  command.add_option("--threads", options.threads, about)->check(CLI::Range(0, 1024));
}

void add_picture(CLI::App& command, CommandOptions& options) {
  command.add_option("--svg", options.svg, "write a picture to this file too");
}

void add_units(CLI::App& command, bool& us) { command.add_flag("--us", us, "show US customary units"); }

void add_run_options(CLI::App& command, CommandOptions& options) {
  command.add_option("--plan", options.plans, "only this plan; may be given several times");
  command.add_option("--results", options.results, "folder for the runs (default results/NAME)");
  add_threads(command, options, "plans run at once (default: all cores)");
  command.add_flag("--quiet", options.quiet, "no progress bar, no hints");
}

CLI::App* add_light(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* light = app.add_subcommand("light", "show which light each place in the house gets on a day");
  add_target(*light, options, "scenario file");
  light->add_option("--day", options.day, "date, such as 2026-07-01 (default: the run's first day)");
  light->add_option("--plan", options.plans, "the plan whose house is looked at (default: the first)");
  light->add_option("--drawn", options.drawn, "a shade cloth that is drawn all day");
  light->add_flag("--clear", options.clear_sky, "under a cloudless sky instead of the scenario's weather");
  light->add_option("--turbidity", options.turbidity, "haze of a cloudless sky, Linke's factor: 2 clean, 3.5, 5 hazy")
      ->check(CLI::Range(1.0, 10.0));
  add_picture(*light, options);
  add_units(*light, us);
  return light;
}

CLI::App* add_air(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* air = app.add_subcommand("air", "show where the air of the house goes at an instant of a run");
  add_target(*air, options, "scenario file");
  air->add_option("--at", options.at, "the instant, such as \"day 4 15:00\" (default: day 1 15:00)");
  air->add_option("--plan", options.plans, "the plan that is run (default: the first)");
  add_units(*air, us);
  return air;
}

CLI::App* add_place(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* place = app.add_subcommand("place", "find where each group of plants should stand, and say why");
  add_target(*place, options, "scenario file");
  place->add_option("--plan", options.plans, "the plan whose weather and devices count (default: the first)");
  place->add_option("--keep", options.keep, "a group that stays where it is; may be given several times");
  place->add_option("--moves", options.most_moves, "most groups to be moved (default: any number)")
      ->check(CLI::Range(0, 1000));
  add_threads(*place, options, "trials at once (default: all cores)");
  add_picture(*place, options);
  place->add_flag("--quiet", options.quiet, "no progress bar");
  add_units(*place, us);
  return place;
}

CLI::App* add_season(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* season = app.add_subcommand("season", "find from when to when each kind of plants is safe without heating");
  add_target(*season, options, "scenario file whose run is a year");
  season->add_option("--plan", options.plans, "the plan whose devices run (default: the first)");
  season->add_option("--kind", options.kinds, "only this kind; may be given several times");
  add_threads(*season, options, "trials at once (default: all cores)");
  season->add_flag("--quiet", options.quiet, "no progress bar");
  add_units(*season, us);
  return season;
}

CLI::App* add_faults(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* faults =
      app.add_subcommand("faults", "let each thing fail at its worst moment and say how long plants bear it");
  add_target(*faults, options, "scenario file");
  faults->add_option("--plan", options.plans, "the plan whose devices fail (default: the one with most in service)");
  faults->add_option("--horizon", options.horizon, "how long each failure is followed, such as 24h (the default)");
  faults->add_option("--day", options.day, "number of the day whose hours are told (default: the hottest outdoors)");
  faults->add_option("--results", options.results, "folder to keep the answer in too, for the report");
  faults->add_flag("--json", options.json, "print one JSON document instead of the tables");
  add_threads(*faults, options, "failures at once (default: all cores)");
  faults->add_flag("--quiet", options.quiet, "no progress bar, no hints");
  add_units(*faults, us);
  return faults;
}

CLI::App* add_report(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* report = app.add_subcommand("report", "write a page with charts from a folder of runs");
  add_target(*report, options, "folder of runs");
  report->add_option("--out", options.page, "the page (default report.html in that folder)");
  add_units(*report, us);
  return report;
}

CLI::App* add_materials(CLI::App& app, CommandOptions& options, bool& us) {
  CLI::App* materials =
      app.add_subcommand("materials", "show the libraries of covers, cloths, soils and plants with their sources");
  materials->add_option("target", options.target, "only those whose name holds this");
  add_units(*materials, us);
  return materials;
}

CLI::App* add_keys(CLI::App& app, CommandOptions& options) {
  CLI::App* keys = app.add_subcommand("keys", "list the keys of scenario files with their units, ranges and defaults");
  keys->add_option("target", options.target, "only this block, such as thermostats or house.cover");
  return keys;
}

void refuse_unknown_command(const CLI::App& app, int argc, char** argv) {
  if (argc < 2 || argv[1][0] == '-' || argv[1][0] == '\0') return;
  std::vector<std::string> names;
  for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
  if (std::find(names.begin(), names.end(), argv[1]) != names.end()) return;
  throw UserError(ErrorKind::usage, fmt::format("there is no command \"{}\"{}; commands: {}; more with --help", argv[1],
                                                did_you_mean(argv[1], names), fmt::join(names, ", ")));
}

/// Shows help or version where that was asked for, else what is wrong with the command line.
int answer(const CLI::App& app, const CLI::ParseError& error) {
  if (error.get_exit_code() == 0) return app.exit(error);
  fmt::print(stderr, "noonhouse: {}\n", usage_error(app, error).what());
  return static_cast<int>(ErrorKind::usage);
}

}  // namespace

int command_line(int argc, char** argv) {
  CommandOptions options;
  bool us = false;
  CLI::App app("Noonhouse: which cooling keeps every plant within its limits, and what it costs in water and charge");
  app.require_subcommand(1);
  app.set_version_flag("--version", std::string("noonhouse ") + NOONHOUSE_VERSION);
  CLI::App* check = app.add_subcommand("check", "read a scenario and show its house as a tree");
  add_target(*check, options, "scenario file");
  check->add_option("--plan", options.plans, "the plan to show (default: the first)");
  add_units(*check, us);
  CLI::App* run = app.add_subcommand("run", "run a scenario's plans and keep one file a run");
  add_target(*run, options, "scenario file");
  add_run_options(*run, options);
  CLI::App* compare = app.add_subcommand("compare", "run a scenario's plans and compare them");
  add_target(*compare, options, "scenario file, or a folder of runs made before");
  add_run_options(*compare, options);
  compare->add_flag("--json", options.json, "print one JSON document instead of the table");
  add_units(*compare, us);
  CLI::App* report = add_report(app, options, us);
  CLI::App* light = add_light(app, options, us);
  CLI::App* air = add_air(app, options, us);
  CLI::App* place = add_place(app, options, us);
  CLI::App* season = add_season(app, options, us);
  CLI::App* faults = add_faults(app, options, us);
  CLI::App* materials = add_materials(app, options, us);
  CLI::App* keys = add_keys(app, options);
  CLI::App* schema = app.add_subcommand("schema", "print the JSON Schema of scenario files, for editors and programs");
  try {
    refuse_unknown_command(app, argc, argv);
    app.parse(argc, argv);
    if (us) options.units = UnitSystem::us;
    const std::pair<CLI::App*, void (*)(const CommandOptions&)> commands[] = {
        {check, check_command},         {run, run_command},       {compare, compare_command},
        {report, report_command},       {light, light_command},   {air, air_command},
        {place, place_command},         {season, season_command}, {faults, faults_command},
        {materials, materials_command}, {keys, keys_command}};
    for (const auto& [command, carry_out] : commands)
      if (command->parsed()) carry_out(options);
    if (schema->parsed()) schema_command();
    if (std::fflush(stdout) != 0) throw UserError(ErrorKind::disk_full, "standard output cannot be written");
    return 0;
  } catch (const CLI::ParseError& error) {
    return answer(app, error);
  } catch (const UserError& error) {
    fmt::print(stderr, "noonhouse: {}\n", error.what());
    return error.exit_status();
  } catch (const std::exception& error) {
    fmt::print(stderr, "noonhouse: unexpected: {} (a programming error; please report it)\n", error.what());
    return kInternalError;
  }
}

}  // namespace noonhouse
