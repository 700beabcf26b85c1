// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <CLI/CLI.hpp>

#include "sim/core/errors.hpp"

namespace noonhouse {

/// What is wrong with a command line, in one message: what was read, what is allowed, and what was perhaps meant.
/// `error` is what parsing it with `app` threw, other than a call for help or version.
UserError usage_error(const CLI::App& app, const CLI::ParseError& error);

}  // namespace noonhouse
