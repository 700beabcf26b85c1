// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "tools/units/units.hpp"

namespace noonhouse {

/// What the command line asks for; each command reads what it needs.
struct CommandOptions {
  std::string target;              ///< scenario file or results folder
  std::vector<std::string> plans;  ///< empty: all
  std::string results;             ///< folder; empty: results/NAME
  std::string page;                ///< of the report; empty: report.html in the results folder
  std::string day, drawn, svg;     ///< of light: "2026-07-01" (empty: the run's first day), a cloth, a picture's file
  std::vector<std::string> kinds;  ///< of season: empty for all
  std::vector<std::string> keep;   ///< of place: groups that stay
  int most_moves = -1;             ///< of place: negative for any number
  std::string at = "day 1 15:00";  ///< of air: the instant
  std::string horizon = "24 h";    ///< of faults: how far each is followed; `day` is the day told: "3"
  double turbidity = 3.5;          ///< of a clear sky
  bool clear_sky = false;
  int threads = 0;  ///< 0: as many as the machine has
  bool json = false, quiet = false;
  UnitSystem units = UnitSystem::metric;
};

// Each command prints to standard output and throws UserError.
void check_command(const CommandOptions& options);
void run_command(const CommandOptions& options);
void compare_command(const CommandOptions& options);
void report_command(const CommandOptions& options);
void light_command(const CommandOptions& options);
void air_command(const CommandOptions& options);
void place_command(const CommandOptions& options);
void season_command(const CommandOptions& options);
void faults_command(const CommandOptions& options);
void materials_command(const CommandOptions& options);
void keys_command(const CommandOptions& options);
void schema_command();

/// The whole program: parses, runs a command, prints errors; returns the exit status.
int command_line(int argc, char** argv);

}  // namespace noonhouse
