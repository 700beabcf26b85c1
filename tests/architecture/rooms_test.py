#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The tree keeps to the room list; and each check finds the fault that it is there to find."""
import os
import pathlib
import shutil
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True
import tree  # noqa: E402  (beside this file)

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
LICENCE = "// SPDX-License-Identifier: Apache-2.0\n"


class TheTree(unittest.TestCase):
    def assert_none(self, problems):
        if problems:
            self.fail("\n" + "\n".join(problems))

    def test_the_list_names_rooms(self):
        rooms = tree.read_rooms(ROOT)
        self.assertIn("sim/core", rooms)
        self.assertIn("sim/core", rooms["models/plants"][0])

    def test_rooms_use_only_what_stands_below_them(self):
        self.assert_none(tree.check_room_list(ROOT))

    def test_includes_stay_within_the_declared_rooms_and_libraries(self):
        self.assert_none(tree.check_includes(ROOT))

    def test_layout(self):
        self.assert_none(tree.check_layout(ROOT))

    def test_text(self):
        self.assert_none(tree.check_text(ROOT))

    def test_no_two_types_bear_one_name(self):
        self.assert_none(tree.check_names(ROOT))

    def test_sources_of_a_batch_share_no_name(self):
        self.assert_none(tree.check_batches(ROOT))


class PlantedFaults(unittest.TestCase):
    """Each fault goes alone into a small sound tree with the real room list."""

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = pathlib.Path(folder.name)
        for name in ("tools/build/room_list.cmake", ".gitignore"):
            (self.root / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, self.root / name)
        for name in ("sim", "models", "tests"):
            (self.root / name).mkdir()
        self.plant("sim/integrate/stepper.hpp", LICENCE)
        self.plant("models/plants/leaf.hpp", LICENCE + '#include "sim/core/tick.hpp"\n')
        self.assertEqual([], tree.check_all(self.root), "the tree must be sound before the fault")

    def plant(self, name, text):
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)

    def assert_found(self, *words):
        problems = tree.check_all(self.root)
        self.assertEqual(1, len(problems), problems)
        for word in words:
            self.assertIn(word, problems[0])

    def test_upward_include(self):
        self.plant("models/plants/leaf.cpp", LICENCE + '#include "sim/integrate/stepper.hpp"\n')
        self.assert_found("models/plants/leaf.cpp:2", "sim/integrate")

    def test_sideways_include(self):
        self.plant("models/plants/leaf.cpp", LICENCE + '\n  #  include "models/air/stratum.hpp"\n')
        self.assert_found("models/plants/leaf.cpp:3", "models/air")

    def test_include_of_a_test(self):
        self.plant("sim/core/tick.cpp", LICENCE + '#include "tests/support/house.hpp"\n')
        self.assert_found("tests/support")

    def test_include_of_ours_in_angle_brackets(self):
        self.plant("sim/run/run.cpp", LICENCE + "#include <tools/record/run_record.hpp>\n")
        self.assert_found("in quotes")

    def test_include_not_from_the_root(self):
        self.plant("models/plants/leaf.cpp", LICENCE + '#include "leaf.hpp"\n')
        self.assert_found("from the root")

    def test_library_that_the_room_does_not_declare(self):
        self.plant("models/plants/leaf.cpp", LICENCE + "#include <yaml-cpp/yaml.h>\n")
        self.assert_found("yaml-cpp")

    def test_engine_that_prints(self):
        self.plant("sim/run/run.cpp", LICENCE + "#include <iostream>\n")
        self.assert_found("prints nothing")

    def test_two_types_of_one_name(self):
        self.plant("sim/run/branch.hpp", LICENCE + "/// A way.\nstruct Way {\n};\n")
        self.plant("models/plants/branch.hpp", LICENCE + "enum class Way { up, down };\nstruct Other;\n")
        self.assert_found("Way is the name of another type")

    def test_two_constants_of_one_name_in_a_room(self):
        self.plant("models/plants/leaf.cpp", LICENCE + "constexpr double kEdge = 1.0, kFace = 2.0;\n")
        self.plant("models/plants/stem.cpp", LICENCE + "const double kFace = 3.0;\n")
        self.assert_found("stem.cpp:2: kFace is defined in models/plants/leaf.cpp:2")

    def test_constant_that_a_header_has(self):
        self.plant("sim/core/tick.hpp", LICENCE + "inline constexpr double kHourS = 3600.0;\n")
        self.plant("models/plants/leaf.cpp", LICENCE + "constexpr double kHourS = 3600.0;\n")
        self.assert_found("kHourS is defined in sim/core/tick.hpp:2")

    def test_function_again_in_a_room_but_for_overloads(self):
        self.plant("models/plants/leaf.cpp", LICENCE + "double root(double x) { return x; }\nint root(int x) {\n}\n")
        self.plant("models/plants/stem.cpp", LICENCE + "double root(float x) { return x; }\n")
        self.assertEqual(tree.check_batches(self.root), [])
        self.plant("models/plants/bark.cpp", LICENCE + "double root(double of) { return of; }\n")
        self.assert_found("root is defined in models/plants/bark.cpp:2")

    def test_alias_that_says_something_else(self):
        self.plant("tests/models/plants_a_test.cpp", LICENCE + "using Row = int;\n")
        self.plant("tests/models/plants_b_test.cpp", LICENCE + "using Row = int;\n")
        self.assertEqual(tree.check_batches(self.root), [])
        self.plant("tests/models/plants_c_test.cpp", LICENCE + "using Row = double;\n")
        self.assert_found("Row is defined in")

    def test_room_without_a_line_in_the_list(self):
        self.plant("models/lawn/lawn.cpp", LICENCE)
        self.assert_found("models/lawn", "no room")

    def test_upward_use_in_the_list(self):
        path = self.root / "tools/build/room_list.cmake"
        path.write_text(path.read_text().replace("room(sim/core ", "room(sim/core USES sim/run "))
        self.assert_found("room sim/core uses sim/run")

    def test_model_that_may_use_the_solver(self):
        path = self.root / "tools/build/room_list.cmake"
        path.write_text(path.read_text() + "room(models/lawn USES sim/integrate)\n")
        self.assert_found("models/lawn may not use sim/integrate")

    def test_folder_too_deep(self):
        self.plant("models/plants/leaves/green.txt", "")
        self.assert_found("models/plants/leaves", "two deep")

    def test_stranger_at_the_top(self):
        self.plant("notes.txt", "")
        self.assert_found("notes.txt")

    def test_build_folders_are_no_strangers(self):
        self.plant("build-sanitize/a/b/c.txt", "")
        self.assertEqual([], tree.check_all(self.root))

    def test_test_that_nothing_builds(self):
        self.plant("tests/models/plants_tests.cpp", LICENCE)
        self.assert_found("plants_tests.cpp", "no rule")

    def test_long_header(self):
        self.plant("sim/core/long.hpp", LICENCE + "\n" * tree.HEADER_LINES)
        self.assert_found("sim/core/long.hpp: 201 lines")

    def test_long_header_with_its_reason(self):
        self.plant("sim/core/long.hpp", LICENCE + "// Long because it is one table.\n" + "\n" * tree.HEADER_LINES)
        self.assertEqual([], tree.check_all(self.root))

    def test_missing_licence_line(self):
        self.plant("sim/core/tick.hpp", "#pragma once\n")
        self.assert_found("licence")

    def test_random_numbers_of_the_standard_library(self):
        self.plant("sim/core/draw.cpp", LICENCE + "std::normal_distribution<double> d;\n")
        self.assert_found("boost::random")


if __name__ == "__main__":
    unittest.main()
