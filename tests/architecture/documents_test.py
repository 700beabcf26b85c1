#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What the documents claim is so: commands exist, links lead somewhere, tables agree with the code."""
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True
import documents  # noqa: E402  (beside this file)
import tree  # noqa: E402

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
PROGRAM = pathlib.Path(os.environ.get("NOONHOUSE", ROOT / "build/noonhouse"))
DOCUMENTS = ("README.md", "DEVELOPERS.md", "CHANGELOG.md", "results/README.md")


class TheDocuments(unittest.TestCase):
    def assert_none(self, problems):
        if problems:
            self.fail("\n" + "\n".join(problems))

    def test_commands_exist(self):
        self.assert_none([p for name in DOCUMENTS for p in documents.check_commands(ROOT, name)])

    def test_the_readme_gives_commands(self):
        words = [words[0] for words in documents.commands((ROOT / "README.md").read_text())]
        self.assertIn("tools/demo", words)
        self.assertIn("tools/check", words)

    def test_options_shown_are_options_of_the_program(self):
        if not PROGRAM.exists():
            self.skipTest(f"{PROGRAM} is not built")
        for name in DOCUMENTS:
            for words in documents.commands((ROOT / name).read_text()):
                if words[0] != "build/noonhouse":
                    continue
                shown = subprocess.run([PROGRAM, *words[1:2], "--help"], capture_output=True, text=True, check=False)
                self.assertEqual(0, shown.returncode, f"{name}: noonhouse {words[1]} --help: {shown.stderr}")
                known = set(re.findall(r"(?<![\w-])--?[\w-]+", shown.stdout))
                for word in words[2:]:
                    if word.startswith("-"):
                        self.assertIn(word.split("=")[0], known, f"{name}: {' '.join(words)}")

    def test_plans_shown_in_the_readme_are_plans_of_the_demonstration(self):
        """They are sound, and each brings the set-point that its name tells to its house."""
        if not PROGRAM.exists():
            self.skipTest(f"{PROGRAM} is not built")
        heatwave = (ROOT / "scenarios/heatwave/heatwave.yaml").read_text()
        shown = documents.with_plans(heatwave, (ROOT / "README.md").read_text())
        self.assertEqual(1, len(shown))
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "shown.yaml"
            file.write_text(shown[0])
            for start in ("31", "34"):
                house = subprocess.run([PROGRAM, "check", file, "--plan", f"mist from {start}"], capture_output=True,
                                       text=True, check=False)
                self.assertEqual(0, house.returncode, house.stderr)
                self.assertIn(f"starts at {start}.0 °C", " ".join(house.stdout.replace("│", " ").split()))

    def test_links_lead_to_files(self):
        self.assert_none([p for name in DOCUMENTS for p in documents.check_links(ROOT, name)])

    def test_the_map_of_rooms_is_the_list_of_rooms(self):
        self.assertEqual(list(tree.read_rooms(ROOT)), documents.rooms_in_map(ROOT))

    def test_the_table_of_exit_statuses_is_the_one_in_the_code(self):
        self.assertGreater(len(documents.statuses_in_code(ROOT)), 10)
        self.assertEqual(documents.statuses_in_code(ROOT), documents.statuses_in_table(ROOT))


class PlantedFaults(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = pathlib.Path(folder.name)
        (self.root / "tools").mkdir()
        (self.root / "tools/demo").touch(mode=0o755)
        (self.root / "CMakePresets.json").write_text((ROOT / "CMakePresets.json").read_text())

    def problems(self, block):
        (self.root / "README.md").write_text(f"```sh\n{block}\n```\n")
        return documents.check_commands(self.root, "README.md")

    def test_sound_commands(self):
        self.assertEqual([], self.problems("tools/demo  # builds\ncmake --preset release\nctest --preset fast"))

    def test_script_that_is_not_there(self):
        self.assertEqual(1, len(self.problems("tools/dmeo")))

    def test_script_that_cannot_be_executed(self):
        (self.root / "tools/demo").chmod(0o644)
        self.assertEqual(1, len(self.problems("tools/demo")))

    def test_scenario_that_is_not_there(self):
        self.assertEqual(1, len(self.problems("build/noonhouse compare scenarios/none.yaml")))

    def test_preset_that_is_not_there(self):
        self.assertEqual(1, len(self.problems("cmake --preset quick")))

    def test_link_that_leads_nowhere(self):
        (self.root / "README.md").write_text("see [the map](MAP.md#rooms), [home](README.md), [web](https://a.example)")
        self.assertEqual(1, len(documents.check_links(self.root, "README.md")))


if __name__ == "__main__":
    unittest.main()
