# SPDX-License-Identifier: Apache-2.0
"""Reads the room list and the source tree, and says where the one does not keep to the other.

Every check takes the root of a tree and returns a list of messages, empty when all is well, so that the
tests can also run it on a tree with a planted fault.
"""
import fnmatch
import pathlib
import re

TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "CHANGELOG.md", "CMakePresets.json",
             "sim", "models", "scenarios", "tools", "tests", "results"}
ROOM_PARENTS = ("sim", "models", "tools")
MAY_USE = {  # which rooms a room of each part may name in its USES, whatever the list says
    "sim": re.compile(r"sim/"),
    "models": re.compile(r"sim/(core|contract)$|models/properties$"),
    "tools": re.compile(r"(sim|models|tools)/"),
}
LIBRARY_OF_INCLUDE = (  # an outside header, and the library a room must list to include it
    (re.compile(r"boost/"), "Boost::headers"), (re.compile(r"yaml-cpp/"), "yaml-cpp"),
    (re.compile(r"H5Cpp|hdf5"), "hdf5::hdf5"), (re.compile(r"fmt/"), "fmt::fmt"),
    (re.compile(r"nlohmann/"), "nlohmann_json::nlohmann_json"), (re.compile(r"CLI/"), "CLI11::CLI11"),
    (re.compile(r"Eigen/"), "Eigen3::Eigen"))
HEADER_LINES, SOURCE_LINES = 200, 300
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
STD_RANDOM = re.compile(r"std::\w+_distribution\b|std::(random_device|shuffle|sample)\b")
TEST_FILE = re.compile(r"_(test|program)\.cpp$|_test\.(py|sh)$|\.(hpp|py|md|yaml|txt|csv)$")


def read_rooms(root):
    """The room list as {room: (uses, links)}, in the order of the list, which reads bottom to top."""
    text = (root / "tools/build/room_list.cmake").read_text()
    text = re.sub(r"#.*", "", text)
    rooms = {}
    for arguments in re.findall(r"^room\(([^)]*)\)", text, re.MULTILINE):
        name, *words = arguments.split()
        uses, links, into = [], [], None
        for word in words:
            if word in ("USES", "LINKS"):
                into = uses if word == "USES" else links
            else:
                into.append(word)
        rooms[name] = (uses, links)
    return rooms


def check_room_list(root):
    """Rooms use only rooms below them in the list, and only in the direction of the design."""
    problems, seen = [], set()
    for room, (uses, _) in read_rooms(root).items():
        for used in uses:
            if used not in seen:
                problems.append(f"room {room} uses {used}, which does not stand below it in the list")
            if not MAY_USE[room.split("/")[0]].match(used):
                problems.append(f"room {room} may not use {used}: {room.split('/')[0]}/ must not know of it")
        seen.add(room)
    return problems


def code_files(root):
    """Every C++ file of the rooms, relative to the root."""
    for parent in ROOM_PARENTS:
        for path in sorted((root / parent).rglob("*")):
            if path.suffix in (".cpp", ".hpp", ".h", ".cc", ".hxx"):
                yield path.relative_to(root)


def check_includes(root):
    """Every #include stays in its room, in the rooms it declares and in the libraries it declares."""
    rooms, problems = read_rooms(root), []
    for file in code_files(root):
        room = file.parent.as_posix()
        if room not in rooms:
            problems.append(f"{file}: {room} is no room of tools/build/room_list.cmake")
            continue
        for number, line in enumerate((root / file).read_text().splitlines(), 1):
            found = INCLUDE.match(line)
            if found:
                problem = include_problem(rooms, room, found[1], found[2])
                if problem:
                    problems.append(f"{file}:{number}: {problem}")
    return problems


def include_problem(rooms, room, bracket, name):
    """What is wrong with this #include in this room, or None."""
    uses, links = rooms[room]
    target = name.rpartition("/")[0]
    if target in rooms or name.split("/")[0] in ROOM_PARENTS + ("tests",):
        if bracket == "<":
            return f'write "{name}" in quotes: it is ours'
        if target != room and target not in uses:
            return f"room {room} does not use {target or name} (see tools/build/room_list.cmake)"
    elif bracket == '"':
        return f'"{name}" must be written from the root of the project'
    for pattern, library in LIBRARY_OF_INCLUDE:
        if pattern.match(name) and not any(link.startswith(library) for link in links):
            return f"room {room} does not link {library}"
    if room.startswith("sim/") and name in ("fstream", "iostream", "filesystem"):
        return "the engine opens no file and prints nothing"
    return None


def ignored(root, name):
    """Whether .gitignore leaves this top-level entry out."""
    patterns = (root / ".gitignore").read_text().split() if (root / ".gitignore").exists() else []
    return any(fnmatch.fnmatch(name, p.strip("/")) for p in patterns if p.startswith("/") and "/" not in p.strip("/"))


def check_layout(root):
    """The top level holds what it may, no folder lies deeper than two, no file is left out of the build."""
    problems = []
    for entry in sorted(root.iterdir()):
        name = entry.name
        if name.startswith(".") or ignored(root, name):
            continue
        if name not in TOP_LEVEL:
            problems.append(f"{name}: the top level holds only {', '.join(sorted(TOP_LEVEL))} and dotfiles")
        elif entry.is_dir() and name != "results":
            for path in entry.rglob("*"):
                parts = path.relative_to(root).parts
                if path.is_dir() and len(parts) > 2 and path.name != "__pycache__":
                    problems.append(f"{'/'.join(parts)}: folders lie at most two deep")
    for path in sorted((root / "tests").glob("*/*")):
        folder, built = path.parent.name, bool(TEST_FILE.search(path.name))
        if folder == "support" or path.is_dir() or path.suffix == ".pyc":
            continue
        if not (path.name.endswith("_bench.cpp") if folder == "bench" else built) and path.suffix == ".cpp":
            problems.append(f"{path.relative_to(root)}: no rule of tests/CMakeLists.txt builds a file of this name")
    return problems


def check_text(root):
    """Length limits, the licence line, and nothing that differs between standard libraries."""
    problems = []
    tests = [p.relative_to(root) for p in sorted((root / "tests").glob("*/*.[ch]pp"))]
    for file in list(code_files(root)) + tests:
        lines = (root / file).read_text().splitlines()
        limit = HEADER_LINES if file.suffix == ".hpp" else SOURCE_LINES
        if len(lines) > limit and not any("Long because" in line for line in lines[:15]):
            problems.append(f"{file}: {len(lines)} lines, more than {limit}; divide it, or say 'Long because ...' on top")
        if not lines or "SPDX-License-Identifier: Apache-2.0" not in lines[0]:
            problems.append(f"{file}:1: the licence line is missing")
        if file.parts[0] == "tests":
            continue
        for number, line in enumerate(lines, 1):
            if STD_RANDOM.search(line.split("//")[0]):
                problems.append(f"{file}:{number}: std:: random differs between libraries; use boost::random")
    return problems


TYPE = re.compile(r"^(?:struct|class|enum class) (\w+)(?: final)?(?: :[^:{]*)? ?\{")


def check_names(root):
    """One name, one type: two of one name in different headers would become one at link time, unseen."""
    first, problems = {}, []
    for file in code_files(root):
        if file.suffix != ".hpp":
            continue
        for number, line in enumerate((root / file).read_text().splitlines(), 1):
            found = TYPE.match(line)
            if not found:
                continue
            where = first.setdefault(found[1], f"{file}:{number}")
            if where != f"{file}:{number}":
                problems.append(f"{file}:{number}: {found[1]} is the name of another type already, {where}")
    return problems


OWN_TYPE = re.compile(r"^(?:struct|class|enum class|enum) (\w+)(?: final)?(?: :[^:{]*)? ?\{")
ALIAS = re.compile(r"^using (\w+) = (.*);")
CONSTANT = re.compile(r"^(?:inline |static )*(?:constexpr|const) ")
CONSTANT_NAME = re.compile(r"\b(k[A-Z]\w*)(?:\[\w*\])?(?= = |\{)")
FUNCTION = re.compile(r"^(?! |TEST|INSTANTIATE|return|template|using)[\w:<>,&* ]+?[ &*](\w+)\((.*)\)(?: const)? \{")
NESTED = re.compile(r"^(?:inline )?namespace (?:noonhouse::)?(?!noonhouse\b)\w+(?:::\w+)* \{", re.MULTILINE)


def parameter_types(parameters):
    """The types of a parameter list, without names and defaults: what tells overloads apart."""
    types = []
    for parameter in parameters.split(","):
        kept = parameter.split("=")[0].strip()
        types.append(re.sub(r"[ ]*\b\w+$", "", kept) if " " in kept else kept)
    return tuple(types)


def file_names(text):
    """The names that a source defines at file scope, as (line, name, what tells it from others of that name)."""
    for number, line in enumerate(text.splitlines(), 1):
        if found := OWN_TYPE.match(line):
            yield number, found[1], "a type"
        elif found := ALIAS.match(line):
            yield number, found[1], found[2]
        elif CONSTANT.match(line):
            for name in CONSTANT_NAME.findall(line):
                yield number, name, "a constant"
        elif found := FUNCTION.match(line):
            yield number, found[1], parameter_types(found[2])


def batch_of(rooms, file):
    """The library or test executable that a source belongs to, as tests/CMakeLists.txt forms them."""
    folder = file.parent.as_posix()
    if file.parts[0] != "tests":
        return folder
    part = file.parts[1]
    inside = [r.split("/")[1] for r in rooms if r.split("/")[0] == part and file.name.startswith(r.split("/")[1] + "_")]
    return f"{folder}/{max(inside, key=len, default='')}{'_slow' if file.stem.endswith('_slow_test') else ''}"


def check_batches(root):
    """Sources of one room, or of one test executable, compile in batches: none defines a name that another has."""
    rooms, problems, constants, first = read_rooms(root), [], {}, {}
    headers = sorted(file for part in ROOM_PARENTS + ("tests",) for file in (root / part).glob("*/*.hpp"))
    for path in headers:
        text = path.read_text()
        if not NESTED.search(text):
            for number, name, kind in file_names(text):
                if kind == "a constant":
                    constants[name] = f"{path.relative_to(root)}:{number}"
    sources = sorted(file for part in ROOM_PARENTS + ("tests",) for file in (root / part).glob("*/*.cpp"))
    for file in (path.relative_to(root) for path in sources):
        if file.name == "main.cpp" or file.name.endswith("_program.cpp"):
            continue
        for number, name, kind in file_names((root / file).read_text()):
            here = f"{file}:{number}"
            others = first.setdefault((batch_of(rooms, file), name), {})
            if isinstance(kind, tuple) or kind.startswith("a "):  # the same again is as wrong as another meaning
                shared = constants.get(name, "") if kind == "a constant" else ""
                if shared.startswith("tests/") and file.parts[0] != "tests":
                    shared = ""
                there = shared or others.setdefault(kind, here)
            else:  # an alias may be said again, if it says the same
                others.setdefault(kind, here)
                there = next((where for said, where in others.items() if said != kind), here)
            if there != here:
                problems.append(f"{here}: {name} is defined in {there} too: share it in a header, or rename one")
    return problems


CHECKS = (check_room_list, check_includes, check_layout, check_text, check_names, check_batches)


def check_all(root):
    """All messages of all checks."""
    root = pathlib.Path(root)
    return [problem for check in CHECKS for problem in check(root)]
