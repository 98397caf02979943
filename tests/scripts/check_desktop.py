#!/usr/bin/env python3
"""Checks what the desktop is told about Lidwright: that our files agree with one another, and that the
freedesktop.org tools that are installed accept them.

usage: check_desktop.py SOURCE_FOLDER
"""

import configparser
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

APP_ID = "org.lidwright.Lidwright"
MIME = "{http://www.freedesktop.org/standards/shared-mime-info}"


def agreement(root):
    """Sentences about facts that stand in several files and differ."""
    packaging = root / "packaging"
    entry = configparser.ConfigParser(interpolation=None)
    entry.optionxform = str
    entry.read(packaging / f"{APP_ID}.desktop", encoding="utf-8")
    entry = entry["Desktop Entry"]
    info = ElementTree.parse(packaging / f"{APP_ID}.metainfo.xml").getroot()
    mime = ElementTree.parse(packaging / f"{APP_ID}.mime.xml").getroot()
    cmake = (root / "CMakeLists.txt").read_text(encoding="utf-8")

    changes = (packaging / "deb" / "changelog").read_text(encoding="utf-8")

    summary = re.search(r'DESCRIPTION "([^"]*)"', cmake).group(1)
    version = re.search(r"VERSION ([\d.]+)\s+DESCRIPTION", cmake).group(1)
    mime_type = mime.find(f"{MIME}mime-type").get("type")
    expected = [
        ("newest version of the change log", re.match(r"lidwright \(([^)]*)\)", changes).group(1), version),
        ("Comment of the desktop entry", entry["Comment"], summary),
        ("summary of the metainfo", info.findtext("summary"), summary),
        ("MimeType of the desktop entry", entry["MimeType"], mime_type + ";"),
        ("mediatype of the metainfo", info.findtext("provides/mediatype"), mime_type),
        ("Icon of the desktop entry", entry["Icon"], APP_ID),
        ("id of the metainfo", info.findtext("id"), APP_ID),
        ("launchable of the metainfo", info.findtext("launchable"), f"{APP_ID}.desktop"),
        ("binary of the metainfo", info.findtext("provides/binary"), entry["Exec"].split()[0]),
    ]
    return [f"{what} is {found!r}, not {wanted!r}" for what, found, wanted in expected if found != wanted]


def verdict_of(*command):
    """Nothing when the tool accepts the file or is not installed, else its own words."""
    if not shutil.which(command[0]):
        print(f"{command[0]} is not installed: not asked")
        return []
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    return [] if run.returncode == 0 else [f"{command[0]}: {(run.stdout + run.stderr).strip()}"]


def mime_database(root):
    """update-mime-database ends with 0 even on a file it cannot read, so its result is looked at."""
    if not shutil.which("update-mime-database"):
        print("update-mime-database is not installed: not asked")
        return []
    with tempfile.TemporaryDirectory() as folder:
        packages = Path(folder, "packages")
        packages.mkdir()
        shutil.copy(root / "packaging" / f"{APP_ID}.mime.xml", packages / f"{APP_ID}.xml")
        run = subprocess.run(["update-mime-database", folder], capture_output=True, text=True, check=False)
        globs = Path(folder, "globs2")
        line = "50:application/vnd.lidwright.plan+json:*.lidplan"
        if globs.is_file() and line in globs.read_text(encoding="utf-8").splitlines():
            return []
        return [f"update-mime-database did not learn {line}: {run.stderr.strip()}"]


def metainfo(file):
    """Errors and warnings of appstreamcli. The project has no home page yet: 1.0 warns of that, 0.16 does not
    know the tag, so it can be neither overridden nor asked for by name."""
    if not shutil.which("appstreamcli"):
        print("appstreamcli is not installed: not asked")
        return []
    run = subprocess.run(["appstreamcli", "validate", "--no-net", "--no-color", str(file)], capture_output=True,
                         text=True, check=False)
    if run.returncode == 0:
        return []
    told = (run.stdout + run.stderr).splitlines()
    serious = [line for line in told if line.startswith(("E:", "W:")) and "url-homepage-missing" not in line]
    known = [line for line in told if "url-homepage-missing" in line]
    return [f"appstreamcli: {line}" for line in (serious or ([] if known else told))]


def main(arguments):
    if len(arguments) != 1:
        print("usage: check_desktop.py SOURCE_FOLDER", file=sys.stderr)
        return 2
    root = Path(arguments[0])
    packaging = root / "packaging"
    found = agreement(root)
    found += verdict_of("desktop-file-validate", str(packaging / f"{APP_ID}.desktop"))
    found += metainfo(packaging / f"{APP_ID}.metainfo.xml")
    found += mime_database(root)
    print("\n".join(found) or "the desktop files agree")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
