#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""`noonhouse air` at the program's door: its answer, its units, and the exit statuses of what it cannot answer."""
import os
import pathlib
import re
import subprocess
import sys
import unittest

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
PROGRAM = pathlib.Path(os.environ.get("NOONHOUSE", ROOT / "build/noonhouse"))
if not PROGRAM.exists():
    print(f"skipped: {PROGRAM} is not built")
    sys.exit(77)

SCENARIO = ROOT / "scenarios/heatwave/heatwave.yaml"
USAGE, UNKNOWN_NAME = 2, 21  # the table of statuses in DEVELOPERS.md


def air(*options):
    return subprocess.run([PROGRAM, "air", SCENARIO, *options], capture_output=True, text=True, timeout=300,
                          check=False)


def total(answer):
    """Air changes an hour, volume flows in and out, of the line that sums them up."""
    line = re.search(r"changes its air ([\d.]+) times an hour: ([\d.]+) \S+ in and ([\d.]+) \S+ out", answer)
    return [float(number) for number in line.groups()]


class AirCommand(unittest.TestCase):
    def test_answers_for_a_plan_and_an_instant(self):
        done = air("--plan", "vents and fan", "--at", "day 2 15:00")
        self.assertEqual(0, done.returncode, done.stderr)
        for name in ("west ridge vent", "gable fan", "louvre of gable fan", "day 2 15:00", "m³/h"):
            self.assertIn(name, done.stdout)
        changes, into, out = total(done.stdout)
        self.assertEqual(into, out)
        shut = total(air("--plan", "all shut", "--at", "day 2 15:00").stdout)
        self.assertLess(shut[0], 0.2 * changes, "a shut house changes its air less")

    def test_us_units_are_the_same_air(self):
        metric, us = (total(air("--plan", "vents and fan", "--at", "day 2 15:00", *units).stdout)
                      for units in ((), ("--us",)))
        self.assertEqual(metric[0], us[0])
        # 1 m3/h = 0.588578 ft3/min, of 1 ft = 0.3048 m; both flows are shown with three digits or more
        self.assertAlmostEqual(us[1] / metric[1], 1.0 / (0.3048 ** 3 * 60.0), delta=0.005)

    def test_an_unknown_plan_is_named(self):
        done = air("--plan", "vents and fun")
        self.assertEqual(UNKNOWN_NAME, done.returncode, done.stderr)
        self.assertIn('did you mean "vents and fan"?', done.stderr)
        self.assertEqual("", done.stdout)

    def test_other_instants_are_refused(self):
        for text, says in (("noon", 'such as "day 1 15:00"'), ("day 0 12:00", "such as"), ("day 8 00:01", "7 days")):
            done = air("--at", text)
            self.assertEqual(USAGE, done.returncode, done.stderr)
            self.assertIn(f'read "{text}"', done.stderr)
            self.assertIn(says, done.stderr)
            self.assertEqual("", done.stdout)


if __name__ == "__main__":
    unittest.main()
