#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""`noonhouse faults` at the program's door: the exit statuses of what it cannot answer, before anything is run."""
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
PROGRAM = pathlib.Path(os.environ.get("NOONHOUSE", ROOT / "build/noonhouse"))
if not PROGRAM.exists():
    print(f"skipped: {PROGRAM} is not built")
    sys.exit(77)

SCENARIO = ROOT / "scenarios/heatwave/heatwave.yaml"
USAGE, FILE_MISSING, UNKNOWN_NAME, NOT_WRITABLE = 2, 10, 21, 40  # the table in DEVELOPERS.md


def noonhouse(*words):
    return subprocess.run([PROGRAM, *words], capture_output=True, text=True, timeout=300, check=False)


class FaultsCommand(unittest.TestCase):
    def assert_refused(self, status, says, *words):
        done = noonhouse(*words)
        self.assertEqual(status, done.returncode, done.stderr)
        self.assertIn(says, done.stderr)
        self.assertEqual("", done.stdout)

    def test_an_unknown_plan_is_named(self):
        self.assert_refused(UNKNOWN_NAME, 'did you mean "vents and fan"?', "faults", SCENARIO, "--plan", "vents and fun")

    def test_a_horizon_is_a_duration(self):
        for text in ("24", "24 m", "1 min", "soon"):
            self.assert_refused(USAGE, "--horizon", "faults", SCENARIO, "--horizon", text)

    def test_a_day_is_one_of_the_run(self):
        for text in ("0", "8", "soon", "2025-07-14"):
            self.assert_refused(USAGE, f'--day: read "{text}"; allowed is the number of a day of this run, 1 to 7',
                                "faults", SCENARIO, "--day", text)

    def test_a_scenario_that_is_not_there(self):
        self.assert_refused(FILE_MISSING, "none.yaml", "faults", ROOT / "none.yaml")
        self.assert_refused(USAGE, "give its folder", "faults", "results/week/vents.h5")

    def test_a_folder_that_cannot_be_made_is_known_before_the_search(self):
        with tempfile.TemporaryDirectory() as name:
            taken = pathlib.Path(name) / "taken"
            taken.touch()
            self.assert_refused(NOT_WRITABLE, str(taken), "faults", SCENARIO, "--results", taken)


if __name__ == "__main__":
    unittest.main()
