// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/commands.hpp"

int main(int argc, char** argv) { return noonhouse::command_line(argc, argv); }
