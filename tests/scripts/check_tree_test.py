#!/usr/bin/env python3
"""Tests check_tree.py: a small good tree is silent, and each rule speaks when that tree is spoiled for it."""

import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).parent))
import check_tree  # noqa: E402  (the path must be set first)

GOOD = {
    "CMakeLists.txt": "project(x)\n",
    "README.md": "# X\n\nSee [for developers](DEVELOPERS.md#build), [the web](https://example.org/x).\n"
                 "\n```sh\npackaging/run.sh\n```\n",
    "DEVELOPERS.md": "# Build\n",
    ".gitignore": "/build*/\n*~\n",
    "core/CMakeLists.txt": "target_sources(core PRIVATE base/a.cpp)\n",
    "core/base/a.h": "#pragma once\n\n#include <string>\n",
    "core/base/a.cpp": '#include "core/base/a.h"\n',
    "core/io/b.h": '#pragma once\n\n#include "core/base/a.h"\n#include "core/io/c.h"\n',
    "core/io/c.h": "#pragma once\n",
    "app/CMakeLists.txt": "foreach(name w)\nendforeach()\n",
    "app/w.cpp": '#include <QString>\n\n#include "core/io/b.h"\n',
    "resources/CMakeLists.txt": "# none\n",
    "resources/icon.svg": "<svg/>\n",
    "tests/CMakeLists.txt": "test(a_test.cpp)\n",
    "tests/a_test.cpp": '#include "a_test.moc"\n',
    "tests/data/foreign.txt": "as it came\t\r\n",
    "packaging/run.sh": "#!/usr/bin/env bash\n",
    "packaging/part.sh": "# sourced\n",
}
EXECUTABLE = ["packaging/run.sh"]

LATER = "TO" + "DO"
OFF = "DISABLED" + "_slow"
SKIP = "GTEST_" + "SKIP"
DAY = "__" + "DATE__"

# (rule, file to write, its text or None to leave it out, words of the sentence it must bring)
SPOILED = [
    ("top_level", "notes.txt", "x\n", "notes.txt: does not belong"),
    ("top_level", "DEVELOPERS.md", None, "DEVELOPERS.md: is missing"),
    ("no_qt_in_core", "core/base/q.h", "#pragma once\n#include <QString>\n", "core/base/q.h:2: core includes the Qt"),
    ("no_qt_in_core", "core/base/q.h", "#pragma once\n#include <QtCore/qglobal.h>\n", "QtCore/qglobal.h"),
    ("no_qt_in_core", "core/base/q.h", "#pragma once\n# include <qglobal.h>\n", "qglobal.h"),
    ("include_direction", "core/base/d.h", '#pragma once\n#include "core/io/c.h"\n', "core/base may not include core/io"),
    ("include_direction", "core/plan/d.h", '#pragma once\n#include "core/checks/e.h"\n', "core/plan may not include"),
    ("include_direction", "core/io/d.h", '#pragma once\n#include "app/x.h"\n', "core may not include app/x.h"),
    ("include_direction", "app/x.h", '#pragma once\n#include "tests/t.h"\n', "app may not include tests/t.h"),
    ("include_direction", "core/new/d.h", '#pragma once\n#include "core/io/c.h"\n', "core/new has no place"),
    ("include_spelling", "app/x.h", "#pragma once\n#include <core/io/c.h>\n", "write it in quotes"),
    ("include_spelling", "app/x.h", '#pragma once\n#include "core/io/none.h"\n', "core/io/none.h is not there"),
    ("include_spelling", "core/io/d.h", '#pragma once\n#include "c.h"\n', "not named from the top folder"),
    ("pragma_once", "core/io/d.h", "#ifndef D\n#endif\n", "#pragma once"),
    ("unique_names", "app/a.h", "#pragma once\n", "core/base/a.h: has the same name as app/a.h"),
    ("known_to_cmake", "core/base/z.cpp", "int z;\n", "core/base/z.cpp: is named in no"),
    ("known_to_cmake", "core/base/base.cpp", "int b;\n", "core/base/base.cpp: is named in no"),
    ("clean_text", "core/base/a.h", "#pragma once\r\n", "core/base/a.h:1: has a carriage return"),
    ("clean_text", "core/base/a.h", "#pragma once\n\tint a;\n", "core/base/a.h:2: has a tab"),
    ("clean_text", "core/base/a.h", "#pragma once \n", "core/base/a.h:1: ends in blanks"),
    ("clean_text", "core/base/a.h", "#pragma once", "one line end"),
    ("clean_text", "README.md", "# X\n\n", "one line end"),
    ("clean_text", "README.md", b"\xff\n", "is not UTF-8"),
    ("short_files", "core/base/a.h", "#pragma once\n" + "//\n" * 500, "has 501 lines"),
    ("nothing_left_over", "core/base/a.h", f"#pragma once\n// {LATER}: x\n", "leaves work"),
    ("nothing_left_over", "tests/a_test.cpp", f"TEST(A, {OFF}) {{}}\n", "switches a test off"),
    ("nothing_left_over", "tests/a_test.cpp", f"{SKIP}();\n", "switches a test off"),
    ("nothing_left_over", "core/base/a.cpp", f"auto t = {DAY};\n", "time of the build"),
    ("scripts_run", "packaging/x.sh", "#!/usr/bin/env bash\n", "packaging/x.sh:1: is not executable"),
    ("links_lead_somewhere", "README.md", "[x](app/none.md)\n", "app/none.md leads nowhere"),
    ("links_lead_somewhere", "README.md", "![x](none.png)\n", "none.png leads nowhere"),
    ("links_lead_somewhere", "README.md", "```sh\n./packaging/gone.sh --x\n```\n", "packaging/gone.sh is not in the tree"),
    ("links_lead_somewhere", "app/README.md", "[x](../core/none.h)\n", "../core/none.h leads nowhere"),
    ("well_formed_xml", "resources/icon.svg", "<svg>\n", "no well-formed XML"),
]


def spoken(folder, changes):
    """What check_tree says of the good tree with some files replaced or left out: (rule, line of output)."""
    for name, text in {**GOOD, **changes}.items():
        path = Path(folder, name)
        path.parent.mkdir(parents=True, exist_ok=True)
        if text is not None:
            path.write_bytes(text if isinstance(text, bytes) else text.encode())
    for name in EXECUTABLE:
        Path(folder, name).chmod(0o755)
    return [(rule, f"{file}:{line}: {text}" if line else f"{file}: {text}")
            for rule, file, line, text in check_tree.complaints(folder)]


class CheckTree(unittest.TestCase):
    maxDiff = None

    def test_good_tree_is_silent(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(spoken(folder, {}), [])

    def test_each_breach_is_named(self):
        for rule, name, text, words in SPOILED:
            with self.subTest(rule=rule, name=name, words=words), tempfile.TemporaryDirectory() as folder:
                said = [line for r, line in spoken(folder, {name: text}) if r == rule]
                self.assertTrue(any(words in line for line in said), said)

    def test_every_rule_has_a_breach(self):
        self.assertEqual({r.__name__ for r in check_tree.RULES}, {rule for rule, *_ in SPOILED})

    def test_limits_are_met_exactly(self):
        """At the limit nothing is said: 500 lines, a file including its own folder, an ignored file."""
        with tempfile.TemporaryDirectory() as folder:
            changes = {"core/base/a.h": "#pragma once\n" + "//\n" * 499,
                       "build/x/bad.h": "\t", "app/left.cpp~": "\t", "core/__pycache__/a.h": "\t"}
            self.assertEqual(spoken(folder, changes), [])

    def test_executable_without_interpreter(self):
        with tempfile.TemporaryDirectory() as folder:
            spoken(folder, {})
            Path(folder, "packaging/part.sh").chmod(0o755)
            self.assertIn(("scripts_run", "packaging/part.sh:1: is executable and does not say by what"),
                          spoken(folder, {}))

    def test_status(self):
        command = [sys.executable, str(Path(check_tree.__file__))]
        with tempfile.TemporaryDirectory() as folder:
            spoken(folder, {})
            good = subprocess.run([*command, folder], capture_output=True, text=True)
            self.assertEqual((good.returncode, good.stdout), (0, "the tree keeps its habits\n"))
            Path(folder, "stray").write_text("")
            bad = subprocess.run([*command, folder], capture_output=True, text=True)
            self.assertEqual(bad.returncode, 1)
            self.assertIn("stray: does not belong at the top level [top_level]\n1 to be mended\n", bad.stdout)
            none = subprocess.run([*command, folder + "/none"], capture_output=True, text=True)
            self.assertEqual(none.returncode, 2)


if __name__ == "__main__":
    unittest.main()
