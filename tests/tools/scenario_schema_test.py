#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""The published schema accepts what the program accepts, by the word of an independent validator."""
import copy
import json
import os
import pathlib
import re
import sys
import unittest

try:
    import yaml
    from jsonschema import Draft202012Validator
except ImportError as missing:
    print(f"skipped: {missing} (Debian: python3-jsonschema python3-yaml)")
    sys.exit(77)

ROOT = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
SCHEMA = ROOT / "scenarios/noonhouse.schema.json"
DEMO = ROOT / "scenarios/heatwave/heatwave.yaml"


class CoreLoader(yaml.SafeLoader):
    """Scalars as YAML 1.2 resolves them (core schema, section 10.3.2), which is what editors do."""


CoreLoader.yaml_implicit_resolvers = {}
for _tag, _pattern, _first in (
        ("null", r"^(?:null|Null|NULL|~|)$", ["n", "N", "~", ""]),
        ("bool", r"^(?:true|True|TRUE|false|False|FALSE)$", list("tTfF")),
        ("int", r"^[-+]?[0-9]+$", list("-+0123456789")),
        ("float", r"^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$", list("-+.0123456789"))):
    CoreLoader.add_implicit_resolver(f"tag:yaml.org,2002:{_tag}", re.compile(_pattern), _first)
CoreLoader.add_constructor("tag:yaml.org,2002:int", lambda loader, node: int(node.value, 10))
CoreLoader.add_constructor("tag:yaml.org,2002:float", lambda loader, node: float(node.value))


def loaded(text):
    return yaml.load(text, CoreLoader)


def small_text():
    """The scenario that the program's own tests read, out of their source."""
    source = (ROOT / "tests/support/small_scenario.hpp").read_text(encoding="utf-8")
    return re.search(r'R"\((.*?)\)"', source, re.DOTALL).group(1)


class TheSchema(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
        cls.validator = Draft202012Validator(cls.schema)
        cls.small = loaded(small_text())

    def problems(self, scenario):
        return [f"{'.'.join(map(str, e.absolute_path))}: {e.message[:120]}" for e in self.validator.iter_errors(scenario)]

    def test_is_a_schema(self):
        Draft202012Validator.check_schema(self.schema)

    def test_accepts_every_scenario_of_the_project(self):
        files = sorted((ROOT / "scenarios").glob("*/*.yaml"))
        self.assertIn(DEMO, files)
        for file in files:
            self.assertEqual([], self.problems(loaded(file.read_text(encoding="utf-8"))), file)

    def test_the_demo_tells_editors_where_the_schema_is(self):
        first = DEMO.read_text(encoding="utf-8").splitlines()[0]
        self.assertEqual("# yaml-language-server: $schema=../noonhouse.schema.json", first)
        self.assertEqual(SCHEMA, (DEMO.parent / first.split("=")[1]).resolve())

    def test_accepts_the_small_scenario_with_and_without_plans(self):
        self.assertEqual([], self.problems(self.small))
        self.assertEqual([], self.problems({k: v for k, v in self.small.items() if k != "plans"}))

    def refuses(self, part, mutate):
        """The small scenario with one mistake is refused, at the place of the mistake."""
        wrong = copy.deepcopy(self.small)
        mutate(wrong)
        problems = self.problems(wrong)
        self.assertTrue(any(part in problem for problem in problems), f"{part}: {problems}")

    def test_refuses_mistakes(self):
        self.refuses("openigns", lambda s: s.update(openigns=s.pop("openings")))
        self.refuses("house.length", lambda s: s["house"].update(length=6))
        self.refuses("house.length", lambda s: s["house"].update(length="6 L"))
        self.refuses("'capacity' is a required property", lambda s: s["tank"].pop("capacity"))
        self.refuses("mist_lines.high mist.nozzles", lambda s: s["mist_lines"]["high mist"].update(nozzles=1.5))
        self.refuses("openings.ridge vent.side", lambda s: s["openings"]["ridge vent"].update(side="roof"))
        self.refuses("weather", lambda s: s["weather"].update(kind="a guess"))
        self.refuses("house.bays", lambda s: s["house"].update(bays={}))
        self.refuses("plans", lambda s: s.update(plans={}))
        self.refuses("'in_service' is a required property", lambda s: s["plans"]["nothing runs"].pop("in_service"))
        self.refuses("plans.nothing runs.in_service", lambda s: s["plans"]["nothing runs"].update(in_service="all"))
        self.refuses("plans.nothing runs", lambda s: s["plans"]["nothing runs"].update(services=[]))

    def test_changes_ask_for_nothing_and_allow_nothing_unknown(self):
        def change(what):
            return lambda s: s["plans"]["nothing runs"].update(change=what)
        for what in ({}, {"weather": {"peak_high": "42 degC"}}, {"weather": {"file": "july.csv"}}, {"house": {}},
                     {"house": {"bays": {"west": {}}}}, {"openings": {"ridge vent": {"area": "1 m2"}}}):
            sound = copy.deepcopy(self.small)
            change(what)(sound)
            self.assertEqual([], self.problems(sound), what)
        self.refuses("change.openings.ridge vent.area", change({"openings": {"ridge vent": {"area": "1 m"}}}))
        self.refuses("change.openings.ridge vent", change({"openings": {"ridge vent": {"aera": "1 m2"}}}))
        self.refuses("change.weather", change({"weather": {"peak_hi": "42 degC"}}))
        self.refuses("change", change({"plans": {}}))


if __name__ == "__main__":
    unittest.main()
