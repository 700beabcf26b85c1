// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/usage_errors.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <vector>

#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

/// The options of a command as they are written: "--plan".
std::vector<std::string> options_of(const CLI::App& command) {
  std::vector<std::string> out;
  for (const CLI::Option* option : command.get_options())
    if (option->nonpositional()) out.push_back(option->get_name());
  return out;
}

/// The command that the line names, or the program where it names none.
const CLI::App& named_command(const CLI::App& app) {
  const auto parsed = app.get_subcommands();
  return parsed.empty() ? app : *parsed.front();
}

/// The first word that looks like an option and is none of the command's; "" where there is none.
std::string unknown_option(const CLI::App& command) {
  const auto left = command.remaining(true);
  const auto found = std::find_if(left.begin(), left.end(), [](const auto& word) { return word.rfind('-', 0) == 0; });
  return found == left.end() ? std::string() : *found;
}

std::string beyond(const CLI::App& command) {
  const auto left = command.remaining(true);
  return fmt::format("read \"{}\" beyond what it takes; a name that holds spaces stands in quotes",
                     left.empty() ? std::string() : left.back());
}

std::string missing(const CLI::App& app, const CLI::App& command) {
  if (&command == &app) {
    std::vector<std::string> names;
    for (const CLI::App* each : app.get_subcommands({})) names.push_back(each->get_name());
    return fmt::format("name a command: {}", fmt::join(names, ", "));
  }
  const CLI::Option* target = command.get_option_no_throw("target");
  return fmt::format("name the {}", target != nullptr ? target->get_description() : std::string("target"));
}

}  // namespace

UserError usage_error(const CLI::App& app, const CLI::ParseError& error) {
  const CLI::App& command = named_command(app);
  std::string what = error.what();
  const auto known = options_of(command);
  if (const std::string option = unknown_option(command); !option.empty())
    what = fmt::format("there is no option \"{}\"{}; allowed here: {}", option, did_you_mean(option, known),
                       fmt::join(known, ", "));
  else if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr)
    what = missing(app, command);
  else if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr)
    what = beyond(command);
  const bool named = &command != &app;
  return UserError(ErrorKind::usage,
                   fmt::format("{}{}{}; more with {} --help", named ? command.get_name() : "", named ? ": " : "", what,
                               named ? "noonhouse " + command.get_name() : "noonhouse"));
}

}  // namespace noonhouse
