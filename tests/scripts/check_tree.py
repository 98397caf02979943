#!/usr/bin/env python3
"""Checks the habits of the tree that no compiler sees, and names each breach as file:line.

usage: check_tree.py FOLDER
Status 0 when all is well, 1 when something is to be mended, 2 when FOLDER is none.
Python's standard library is enough; git need not be there.
"""

import fnmatch
import os
import re
import sys
import xml.etree.ElementTree as ElementTree
from pathlib import Path, PurePosixPath

TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md",
             "app", "core", "resources", "tests", "packaging"}

# Each folder of core may include itself and those before it.
CORE_ORDER = ["base", "geometry", "materials", "plan", "layout", "solvers", "checks", "drawing", "io"]

CODE = {".cpp", ".h", ".py", ".sh", ".cmake"}
TEXT = CODE | {".md", ".desktop", ".in", ".qrc", ".supp", ".1"}
MAX_LINES = 500

# Samples of what outside programs write: they come as they come.
FOREIGN = ["tests/data/*", "tests/fuzz/corpus/*"]

# Written in two parts, so that this file does not name what it forbids.
MARKS = re.compile(r"\b(" + "|".join(["TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK"]) + r")\b")
SWITCHED_OFF = re.compile(r"\b(DISABLED" + r"_\w+|GTEST_" + r"SKIP|Q" + r"SKIP)\b")
BUILD_TIME = re.compile(r"__(DATE|TIME|TIMESTAMP)__")

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
QT_HEADER = re.compile(r"^(Qt\w*/.*|Q[A-Z]\w*|q[a-z0-9]+\.h)$")
LINK = re.compile(r"\]\(<?([^)#>\s]*)(?:#[^)]*)?>?(?:\s+\"[^\"]*\")?\)")
TREE_PATH = re.compile(r"(?<![\w./-])(?:\./)?((?:app|core|resources|tests|packaging|\.ci)/[\w./-]*\w)")


class Tree:
    """The files below a folder, less what .gitignore leaves out."""

    def __init__(self, root):
        self.root = Path(root)
        self.ignored = self._ignored()
        self.top = sorted(n for n in os.listdir(self.root) if not self._skip(n, True))
        self.files = []
        for folder, folders, names in os.walk(self.root):
            at_top = Path(folder) == self.root
            folders[:] = sorted(d for d in folders if not self._skip(d, at_top))
            for name in sorted(names):
                if not self._skip(name, at_top):
                    self.files.append(PurePosixPath(Path(folder, name).relative_to(self.root)))
        self._lines = {}

    def _ignored(self):
        """Patterns of .gitignore as (pattern, at the top only): plain names and wildcards are understood."""
        path = self.root / ".gitignore"
        found = [("__pycache__", False), (".git", True)]
        if path.is_file():
            for line in path.read_text(encoding="utf-8").split():
                found.append((line.strip("/"), line.startswith("/")))
        return found

    def _skip(self, name, at_top):
        return any(fnmatch.fnmatch(name, p) for p, top_only in self.ignored if at_top or not top_only)

    def lines(self, file):
        """Text lines without their ends; bytes that are no UTF-8 become marks of replacement."""
        if file not in self._lines:
            text = (self.root / file).read_bytes().decode("utf-8", errors="replace")
            self._lines[file] = text.split("\n")
        return self._lines[file]

    def is_code(self, file):
        return file.suffix in CODE or file.name == "CMakeLists.txt" or self.is_script(file)

    def is_script(self, file):
        return file.suffix == "" and self.lines(file)[0].startswith("#!")

    def is_text(self, file):
        if any(fnmatch.fnmatch(str(file), p) for p in FOREIGN) and not self.is_code(file):
            return False
        return file.suffix in TEXT or self.is_code(file)

    def includes(self, file):
        """(line number, "<" or '"', header) of a C++ file."""
        for number, line in enumerate(self.lines(file), 1):
            match = INCLUDE.match(line)
            if match:
                yield number, match.group(1), match.group(2)

    def cpp(self, *folders):
        return [f for f in self.files
                if f.suffix in (".cpp", ".h") and (not folders or f.parts[0] in folders)]


def top_level(tree):
    """The top level holds what it is meant to hold, beside dot-files."""
    seen = {n for n in tree.top if not n.startswith(".")}
    for name in sorted(seen - TOP_LEVEL):
        yield name, 0, "does not belong at the top level"
    for name in sorted(TOP_LEVEL - seen):
        yield name, 0, "is missing at the top level"


def no_qt_in_core(tree):
    """Core knows no Qt."""
    for file in tree.cpp("core"):
        for number, _, header in tree.includes(file):
            if QT_HEADER.match(header):
                yield file, number, f"core includes the Qt header {header}"


def include_direction(tree):
    """Includes go one way: within core along CORE_ORDER, from app to core, never into tests or back."""
    for file in tree.cpp("core", "app"):
        for number, _, header in tree.includes(file):
            target = PurePosixPath(header).parts
            if target[0] == "tests" or (target[0] == "app" and file.parts[0] == "core"):
                yield file, number, f"{file.parts[0]} may not include {header}"
            if target[0] != "core" or file.parts[0] != "core":
                continue
            here, there = file.parts[1], target[1]
            if here not in CORE_ORDER or there not in CORE_ORDER:
                unknown = there if here in CORE_ORDER else here
                yield file, number, f"core/{unknown} has no place in the order of core's folders"
            elif CORE_ORDER.index(there) > CORE_ORDER.index(here):
                yield file, number, f"core/{here} may not include core/{there}, which comes after it"


def include_spelling(tree):
    """Own headers are named from the top folder, in quotes, and are there."""
    for file in tree.cpp("core", "app", "tests"):
        for number, quote, header in tree.includes(file):
            own = header.split("/")[0] in ("core", "app", "tests", "resources")
            if own and quote == "<":
                yield file, number, f"{header} is ours: write it in quotes"
            elif own and not (tree.root / header).is_file():
                yield file, number, f"{header} is not there"
            elif quote == '"' and not own and not header.endswith(".moc"):
                yield file, number, f'"{header}" is not named from the top folder'


def pragma_once(tree):
    """Every header begins with its guard."""
    for file in tree.cpp():
        if file.suffix == ".h" and tree.lines(file)[0] != "#pragma once":
            yield file, 1, "the first line of a header is #pragma once"


def unique_names(tree):
    """A file name says which file is meant."""
    seen = {}
    for file in tree.files:
        if tree.is_code(file) and file.name != "CMakeLists.txt":
            if file.name in seen:
                yield file, 0, f"has the same name as {seen[file.name]}"
            seen.setdefault(file.name, file)


def known_to_cmake(tree):
    """A source that no CMakeLists.txt names is compiled nowhere. (File names are unique, so the name will do.)"""
    text = "\n".join("\n".join(tree.lines(f)) for f in tree.files
                     if f.name == "CMakeLists.txt" or f.suffix == ".cmake")
    for file in tree.cpp("core", "app", "tests"):
        if file.suffix != ".cpp":
            continue
        name = re.compile(rf"(?<![\w.]){re.escape(file.name)}(?![\w.])")
        # A loop over plain names, foreach(name a b c), names a source by its stem.
        stem = re.compile(rf"foreach\([^)]*(?<![\w./]){re.escape(file.stem)}(?![\w./])")
        if not name.search(text) and not stem.search(text):
            yield file, 0, "is named in no CMakeLists.txt"


def clean_text(tree):
    """No carriage returns, tabs, trailing blanks; one line end at the end."""
    for file in tree.files:
        if not tree.is_text(file):
            continue
        lines = tree.lines(file)
        for number, line in enumerate(lines, 1):
            if line.endswith("\r"):
                yield file, number, "has a carriage return"
            elif line != line.rstrip():
                yield file, number, "ends in blanks"
            if "\t" in line:
                yield file, number, "has a tab"
            if "\ufffd" in line:
                yield file, number, "is not UTF-8"
        if lines[-1] != "" or (len(lines) > 1 and lines[-2] == ""):
            yield file, len(lines), "does not end in one line end"


def short_files(tree):
    """One subject, one file."""
    for file in tree.files:
        count = len(tree.lines(file)) - 1
        if tree.is_code(file) and count > MAX_LINES:
            yield file, 0, f"has {count} lines, more than {MAX_LINES}: split it by subject"


def nothing_left_over(tree):
    """Nothing is left for later, no test is switched off, two builds of one source are the same."""
    for file in tree.files:
        if not tree.is_code(file):
            continue
        for number, line in enumerate(tree.lines(file), 1):
            for pattern, what in ((MARKS, "leaves work for later"),
                                  (SWITCHED_OFF, "switches a test off"),
                                  (BUILD_TIME, "puts the time of the build into the program")):
                found = pattern.search(line)
                if found:
                    yield file, number, f"{what}: {found.group(0)}"


def scripts_run(tree):
    """A shell script is executable exactly if it says by what it is run."""
    for file in tree.files:
        if file.suffix != ".sh" and not tree.is_script(file):
            continue
        executable = os.access(tree.root / file, os.X_OK)
        shebang = tree.lines(file)[0].startswith("#!")
        if shebang and not executable:
            yield file, 1, "is not executable"
        if executable and not shebang:
            yield file, 1, "is executable and does not say by what"


def links_lead_somewhere(tree):
    """Every local link, picture and path of the tree that a Markdown file shows exists."""
    for file in tree.files:
        if file.suffix != ".md":
            continue
        for number, line in enumerate(tree.lines(file), 1):
            links = [t for t in LINK.findall(line) if t and not re.match(r"[a-z+]+:", t)]
            for target in links:
                if not (tree.root / file.parent / target).exists():
                    yield file, number, f"the link {target} leads nowhere"
            for path in TREE_PATH.findall(line):
                local = (tree.root / file.parent / path).exists()
                if not local and not (tree.root / path).exists() and path not in links:
                    yield file, number, f"{path} is not in the tree"


def well_formed_xml(tree):
    """Our own XML parses."""
    for file in tree.files:
        if file.suffix not in (".svg", ".xml", ".qrc", ".ui", ".ts") or \
                any(fnmatch.fnmatch(str(file), p) for p in FOREIGN):
            continue
        try:
            ElementTree.parse(tree.root / file)
        except ElementTree.ParseError as error:
            yield file, error.position[0], f"is no well-formed XML: {error}"


RULES = [
    top_level, no_qt_in_core, include_direction, include_spelling, pragma_once, unique_names,
    known_to_cmake, clean_text, short_files, nothing_left_over, scripts_run, links_lead_somewhere,
    well_formed_xml,
]


def complaints(root):
    """(rule, file, line, sentence) for every breach, in the order of RULES."""
    tree = Tree(root)
    return [(rule.__name__, str(file), line, text) for rule in RULES for file, line, text in rule(tree)]


def main(arguments):
    if len(arguments) != 1 or not Path(arguments[0]).is_dir():
        print(__doc__.split("\n\n")[1], file=sys.stderr)
        return 2
    found = complaints(arguments[0])
    for rule, file, line, text in found:
        print(f"{file}:{line}: {text} [{rule}]" if line else f"{file}: {text} [{rule}]")
    print(f"{len(found)} to be mended" if found else "the tree keeps its habits")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
