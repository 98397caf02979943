#!/usr/bin/env python3
"""Checks that every C++ file stands as .clang-format wants it.

usage: check_format.py CLANG_FORMAT SOURCE_FOLDER
"""

import subprocess
import sys
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).parent))
import check_tree  # noqa: E402  (the path must be set first)


def main(arguments):
    if len(arguments) != 2:
        print("usage: check_format.py CLANG_FORMAT SOURCE_FOLDER", file=sys.stderr)
        return 2
    formatter, root = arguments
    tree = check_tree.Tree(root)
    off = []
    for file in tree.cpp("app", "core", "tests"):
        path = Path(root, file)
        run = subprocess.run([formatter, str(path)], capture_output=True, check=True)
        if run.stdout != path.read_bytes():
            off.append(str(file))
    if off:
        print(f"{len(off)} files are not formatted; this mends them:\n{formatter} -i " + " ".join(off))
    return 1 if off else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
