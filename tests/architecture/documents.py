# SPDX-License-Identifier: Apache-2.0
"""Reads what the documents claim: commands, links, the map of the rooms, the table of exit statuses."""
import json
import os
import re
import shlex

FENCE = re.compile(r"^```sh\n(.*?)^```", re.MULTILINE | re.DOTALL)
PLANS = re.compile(r"^```yaml\n(plans:\n.*?)^```", re.MULTILINE | re.DOTALL)
LINK = re.compile(r"\[[^\]]*\]\(([^)#\s]+)(?:#[^)]*)?\)")


def commands(text):
    """Every command line of the sh blocks, as lists of words; a comment ends a line."""
    for block in FENCE.findall(text):
        for line in block.replace("\\\n", " ").splitlines():
            words = shlex.split(line, comments=True)
            if words:
                yield words


def command_problem(root, words):
    """What is wrong with this command, as far as the tree can tell, or None."""
    program = words[0]
    if program.startswith(("tools/", ".ci/")):
        if not os.access(root / program, os.X_OK) or (root / program).is_dir():
            return f"{program} is no executable file"
    elif program.startswith("build/") and program not in ("build/noonhouse", "build/tests/benchmarks"):
        return f"{program} is not built by tools/build or tests"
    for word in words[1:]:
        if word.startswith(("scenarios/", "tests/", "tools/", "sim/", "models/")) and not (root / word).exists():
            return f"{word} does not exist"
    if "--preset" in words:
        name = words[words.index("--preset") + 1]
        kind = {"cmake": "buildPresets" if "--build" in words else "configurePresets", "ctest": "testPresets"}[program]
        presets = json.loads((root / "CMakePresets.json").read_text())
        if name not in [preset["name"] for preset in presets[kind]]:
            return f"{name} is none of the {kind}"
    return None


def check_commands(root, name):
    """Messages for the commands of one document."""
    text = (root / name).read_text()
    problems = [(words, command_problem(root, words)) for words in commands(text)]
    return [f"{name}: {shlex.join(words)}: {problem}" for words, problem in problems if problem]


def with_plans(scenario, text):
    """The scenario's text with the plans that a document shows in place of its own, for each block of plans."""
    house = scenario[:scenario.index("\nplans:\n") + 1]
    return [house + plans for plans in PLANS.findall(text)]


def check_links(root, name):
    """Messages for links of one document to files that are not there."""
    links = LINK.findall((root / name).read_text())
    return [f"{name}: link to {link}, which does not exist" for link in links
            if not link.startswith(("http://", "https://", "mailto:")) and not (root / link).exists()]


def rooms_in_map(root):
    """The rooms named in the map of DEVELOPERS.md, in its order: the first cell of each row that is one."""
    text = (root / "DEVELOPERS.md").read_text()
    return re.findall(r"^\| `((?:sim|models|tools)/\w+)` \|", text, re.MULTILINE)


def statuses_in_table(root):
    """{name: status} from the table of DEVELOPERS.md, rows such as | 13 | `file_syntax` | ... |."""
    text = (root / "DEVELOPERS.md").read_text()
    return {name: int(status) for status, name in re.findall(r"^\| (\d+) \| `(\w+)` \|", text, re.MULTILINE)}


def statuses_in_code(root):
    """{name: status} from enum class ErrorKind in sim/core/errors.hpp."""
    body = re.search(r"enum class ErrorKind \{(.*?)\};", (root / "sim/core/errors.hpp").read_text(), re.DOTALL)[1]
    return {name: int(status) for name, status in re.findall(r"(\w+) = (\d+),", body)}
