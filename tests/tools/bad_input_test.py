#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Bad scenario files at the program's door: its exit status, its one message, and no crash whatever the bytes."""
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
PROGRAM = pathlib.Path(os.environ.get("NOONHOUSE", ROOT / "build/noonhouse"))
if not PROGRAM.exists():
    print(f"skipped: {PROGRAM} is not built")
    sys.exit(77)


def statuses():
    """Exit statuses by kind, from the code."""
    text = (ROOT / "sim/core/errors.hpp").read_text(encoding="utf-8")
    return {name: int(number) for name, number in re.findall(r"^  (\w+) = (\d+),$", text, re.MULTILINE)}


def small_text():
    """The scenario that the program's own tests read, out of their source."""
    source = (ROOT / "tests/support/small_scenario.hpp").read_text(encoding="utf-8")
    return re.search(r'R"\((.*?)\)"', source, re.DOTALL).group(1)


STATUS = statuses()
SMALL = small_text()
# What is changed in the small scenario (an @ stands where the message must point), the kind, what the message says.
MISTAKES = (
    ("altitude: 1600 m", "@altitud: 1600 m", "unknown_key", 'did you mean "altitude"?'),
    ("altitude: 1600 m", "altitude: @1600", "wrong_unit", 'did you mean "1600 m"?'),
    ("length: 6 m", "length: @6 L", "wrong_unit", "a unit of volume"),
    ("area: 0.8 m2", "area: @-0.8 m2", "out_of_range", "above 0 m2"),
    ("eaves: 2 m", "eaves: 2 m\n  @eaves: 3 m", "duplicate_key", "eaves"),
    ("site:\n  latitude: 35 deg", "@site:", "missing_key", "latitude"),
    ("nozzles: 6", "nozzles: @six", "wrong_type", "whole number"),
    ("peak_day: 2", "peak_day: @40", "out_of_range", 'peak_day: read "40"; allowed is 1 to the number of days, 2'),
    ("latitude: 35 deg", "latitude: @70 deg", "out_of_range", 'latitude: read "70 deg"; allowed is -66 to 66'),
    ("place: long bench", "place: @lnog bench", "unknown_name", 'did you mean "long bench"?'),
    ("height: 80 cm", "height: @9 m", "outside_house", "2.8 m high"),
    ("area: 0.8 m2", "area: @80 m2", "does_not_fit", "back roof of the west bay"),
    ("[ridge vent, high mist]", "&loop [@*loop]", "anchor_cycle", "loop"),
    ("title: A small house", "title: A small house\nmore: @[", "file_syntax", ""),
)


# A wrong command line, and what its one message says.
WRONG_LINES = (
    ((), ("name a command: check, run",)),
    (("compar", "x"), ('did you mean "compare"?',)),
    (("--versio",), ('no option "--versio"', 'did you mean "--version"?')),
    (("run",), ("run: name the scenario file",)),
    (("run", "--thred"), ('no option "--thred"', 'did you mean "--threads"?', "--plan, --results")),
    (("run", "house.yaml", "--threads", "9999"), ("--threads", "9999", "0 to 1024")),
    (("run", "house.yaml", "--plan"), ("--plan", "missing")),
    (("faults", "a", "b c"), ('"b c" beyond', "in quotes")),
)


class WrongLines(unittest.TestCase):
    def test_each_gets_one_message_with_what_is_allowed(self):
        for words, parts in WRONG_LINES:
            with self.subTest(words=words):
                done = subprocess.run([PROGRAM, *words], capture_output=True, text=True, timeout=60, check=False)
                self.assertEqual(done.returncode, STATUS["usage"], done.stderr)
                self.assertEqual(done.stdout, "")
                self.assertEqual(done.stderr.count("\n"), 1, done.stderr)
                self.assertTrue(done.stderr.startswith("noonhouse: "), done.stderr)
                for part in parts + ("--help",):
                    self.assertIn(part, done.stderr)

    def test_help_and_version_are_no_errors(self):
        for words in (("--help",), ("--version",), ("run", "--help")):
            done = subprocess.run([PROGRAM, *words], capture_output=True, text=True, timeout=60, check=False)
            self.assertEqual((done.returncode, done.stderr), (0, ""))
            self.assertTrue(done.stdout)


class BadFiles(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def write(self, content):
        file = self.folder / "house.yaml"
        file.write_bytes(content if isinstance(content, bytes) else content.encode())
        return file

    def check(self, file):
        return subprocess.run([PROGRAM, "check", file], capture_output=True, text=True, errors="replace", timeout=60,
                              check=False)

    def assert_refused(self, file, kind, says=""):
        done = self.check(file)
        self.assertEqual(STATUS[kind], done.returncode, f"{kind}: {done.stderr}")
        self.assertEqual("", done.stdout, "a refused scenario prints nothing but its message")
        self.assertIn(str(file), done.stderr)
        self.assertIn(says, done.stderr)
        self.assertNotIn("terminate called", done.stderr)
        return done.stderr

    def test_a_sound_file_passes(self):
        done = self.check(self.write(SMALL))
        self.assertEqual(0, done.returncode, done.stderr)
        self.assertIn("A small house", done.stdout)

    def test_mistakes_are_pointed_at(self):
        for old, new, kind, says in MISTAKES:
            with self.subTest(new):
                self.assertEqual(1, SMALL.count(old))
                marked = SMALL.replace(old, new)
                before = marked[:marked.index("@")]
                file = self.write(marked.replace("@", ""))
                message = self.assert_refused(file, kind, says)
                if kind != "file_syntax":  # where a broken text is noticed is the YAML reader's affair
                    column = len(before) - (before.rfind("\n") + 1) + 1
                    self.assertIn(f"{file}:{before.count(chr(10)) + 1}:{column}: ", message)

    def test_no_file_and_no_text(self):
        self.assert_refused(self.folder / "none.yaml", "file_missing")
        self.assert_refused(self.folder, "file_missing")
        self.assert_refused(self.write(""), "file_empty")
        self.assert_refused(self.write("# a comment alone\n"), "file_empty")
        self.assert_refused(self.write(b"a: \x00\x01\xff"), "file_syntax")
        self.assert_refused(self.write("a: 1\n" * 1_000_000), "file_too_large")

    def test_texts_that_grow_when_read(self):
        bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n"
        bomb += "".join(f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 10)}]\n" for i in range(1, 10))
        self.assert_refused(self.write(bomb), "anchor_cycle")
        done = self.check(self.write("a: " + "[" * 100_000))
        self.assertIn(done.returncode, STATUS.values(), done.stderr)

    def test_no_bytes_crash_it(self):
        chance = random.Random(20250714)
        sound = SMALL.encode()
        for _ in range(80):
            text = bytearray(sound)
            for _ in range(chance.randint(1, 4)):
                at = chance.randrange(len(text))
                cut = text[at:at + chance.randint(0, 40)]
                how = chance.randrange(4)
                if how == 0:
                    del text[at:at + len(cut)]
                elif how == 1:
                    text[at] = chance.randrange(256)
                elif how == 2:
                    text[at:at] = cut * chance.randint(1, 3)
                else:
                    text[at:at] = chance.choice([b"&a ", b"*a", b"{", b"]", b": ", b"\n- ", b'"', b"!!x ", b"1e999 m", b"\t"])
            done = self.check(self.write(bytes(text)))
            self.assertIn(done.returncode, {0, *STATUS.values()}, f"{bytes(text)!r}\n{done.stderr}")
            if done.returncode != 0:
                self.assertIn("house.yaml", done.stderr)


if __name__ == "__main__":
    unittest.main()
