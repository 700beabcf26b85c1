// SPDX-License-Identifier: Apache-2.0
// Writes sample run files for the scripts that open them: record_sample_program FILE (full) or FILE --empty.
#include <cstdio>
#include <cstring>

#include "sim/core/errors.hpp"
#include "tests/tools/record_sample.hpp"
#include "tools/record/record_writer.hpp"

int main(int argc, char** argv) {
  if (argc < 2) {
    std::fputs("usage: record_sample_program FILE [--empty]\n", stderr);
    return 2;
  }
  noonhouse::RunRecord record;
  if (argc > 2 && std::strcmp(argv[2], "--empty") == 0) {
    record.start = "2025-07-14 00:00:00";
  } else {
    record = noonhouse::sample_record();
  }
  try {
    noonhouse::write_run(record, argv[1]);
  } catch (const noonhouse::UserError& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return error.exit_status();
  }
  return 0;
}
