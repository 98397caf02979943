#!/usr/bin/python3
"""Compares what the SVG reader takes from drawings with what rsvg-convert paints.

usage: compare_clipart.py SVG_MASK FOLDER [--count N] [--seed N] [--report FILE.csv] [--keep FOLDER]
                          [--bar PERCENT]

SVG_MASK is the built program tests/scripts/svg_mask.cpp. FOLDER is searched for *.svg; N of them are drawn
by lot (all of them without --count). On Debian the package openclipart-svg puts several thousand drawings
into /usr/share/openclipart/svg.

Both programs draw the page so that it fits 1000 x 1000 pixels. A pixel is inked where anything of it is
painted. Two masks agree when the pixels that are inked in one and lie more than 1 pixel from the ink of the
other are fewer than 0.5 % of the inked ones. Lines that cover less than 1/16 of a pixel are not held against
us: rsvg-convert samples 1/17 by 1/15 of a pixel and loses some of them. Gradient stops are made solid beforehand in the text that both
read, since a reader for cutting takes see-through paint as solid. A drawing that says nothing of its page gets
one: where it would begin is each program's own choice.

Status 0 when at least --bar percent agree (99 without it), every drawing that does not agree has a message
that says what was left out, no program crashed and none took more than 10 s. Needs rsvg-convert, python3-numpy
and python3-pil.
"""

import argparse
import csv
import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy
from PIL import Image

SIZE = 1000
AGREE = 0.005
SLOW_S = 10
FAINT = 16  # of 255
NO_SIZE = re.compile(rb"<((?:\w+:)?svg)\b(?![^>]*\s(?:width|height|viewBox)\s*=)")
STOP_OPACITY = re.compile(rb"""stop-opacity(\s*[:=]\s*["']?\s*)[-+.\d]+(?:[eE][-+]?\d+)?%?""")


def dilated(mask):
    """The mask grown by one pixel to all eight sides."""
    out = mask.copy()
    out[1:, :] |= mask[:-1, :]
    out[:-1, :] |= mask[1:, :]
    rows = out.copy()
    out[:, 1:] |= rows[:, :-1]
    out[:, :-1] |= rows[:, 1:]
    return out


def difference(ours, theirs):
    """Share of the inked pixels that differ by more than a pixel; ours is how much of each is covered."""
    inked = max(1, int(((ours > 0) | theirs).sum()))
    wrong = ((ours >= FAINT) & ~dilated(theirs)) | (theirs & ~dilated(ours > 0))
    return float(wrong.sum()) / inked


def run(command, seconds):
    """(status, output); status None when it took too long."""
    try:
        done = subprocess.run(command, capture_output=True, timeout=seconds, check=False)
    except subprocess.TimeoutExpired:
        return None, ""
    return done.returncode, done.stdout.decode("utf-8", "replace")


class Outcome:
    def __init__(self, file):
        self.file = file
        self.verdict = ""
        self.share = 0.0
        self.seconds = 0.0
        self.vertices = 0
        self.runs = 0
        self.messages = []

    def row(self):
        return [self.file, self.verdict, f"{self.share:.5f}", f"{self.seconds:.3f}", self.vertices, self.runs,
                " | ".join(self.messages)]


def compare(svg_mask, file, work):
    """Verdicts: agrees, differs, crashed, slow, unpaintable (rsvg-convert refuses or paints nothing)."""
    outcome = Outcome(str(file))
    text = STOP_OPACITY.sub(rb"stop-opacity\g<1>1", file.read_bytes())
    text = NO_SIZE.sub(rb'<\1 viewBox="-500 -500 1000 1000" width="1000" height="1000"', text, count=1)
    source, picture, mask = work / "source.svg", work / "theirs.png", work / "ours.pgm"
    source.write_bytes(text)
    picture.unlink(missing_ok=True)
    status, _ = run(["rsvg-convert", "-w", str(SIZE), "-h", str(SIZE), "-a", "-o", picture, source], 60)
    if status != 0 or not picture.exists():
        outcome.verdict = "unpaintable"
        theirs = numpy.zeros((SIZE, SIZE), bool)
    else:
        with Image.open(picture) as image:
            theirs = numpy.asarray(image.convert("RGBA"))[:, :, 3] > 0
        if not theirs.any():
            outcome.verdict = "unpaintable"
    height, width = theirs.shape
    status, output = run([svg_mask, source, mask, str(width), str(height)], 60)
    if status is None:
        outcome.verdict = "slow"
        return outcome
    if status != 0:
        outcome.verdict = "crashed"
        return outcome
    for line in output.splitlines():
        word, _, rest = line.partition(" ")
        if word == "seconds":
            outcome.seconds = float(rest)
        elif word == "vertices":
            outcome.vertices = int(rest)
        elif word == "runs":
            outcome.runs = int(rest)
        elif word in ("message", "error"):
            outcome.messages.append(rest)
    if outcome.seconds > SLOW_S:
        outcome.verdict = "slow"
    if not outcome.verdict:
        with Image.open(mask) as image:
            ours = numpy.asarray(image)
        outcome.share = difference(ours, theirs)
        outcome.verdict = "agrees" if outcome.share < AGREE else "differs"
    return outcome


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("svg_mask")
    parser.add_argument("folder")
    parser.add_argument("--count", type=int)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--report")
    parser.add_argument("--keep", help="folder for the sources and masks of drawings that do not agree")
    parser.add_argument("--bar", type=float, default=99.0)
    options = parser.parse_args()

    files = sorted(p for p in Path(options.folder).rglob("*.svg") if not p.is_symlink())
    if not files:
        print(f"no *.svg below {options.folder}", file=sys.stderr)
        return 2
    if options.count and options.count < len(files):
        files = sorted(random.Random(options.seed).sample(files, options.count))
    outcomes = []
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        for file in files:
            outcome = compare(options.svg_mask, file, work)
            outcomes.append(outcome)
            if outcome.verdict not in ("agrees", "unpaintable"):
                print(f"{outcome.verdict} {outcome.share:.4f} {file}: {' | '.join(outcome.messages)}", flush=True)
                if options.keep:
                    for name in ("source.svg", "theirs.png", "ours.pgm"):
                        if (work / name).exists():
                            target = Path(options.keep) / f"{file.stem}-{name}"
                            target.write_bytes((work / name).read_bytes())
    if options.report:
        with open(options.report, "w", newline="", encoding="utf-8") as out:
            csv.writer(out).writerows(o.row() for o in outcomes)

    def count(verdict):
        return sum(o.verdict == verdict for o in outcomes)

    judged = [o for o in outcomes if o.verdict != "unpaintable"]
    unsaid = [o for o in judged if o.verdict == "differs" and not o.messages]
    plain = [o for o in judged if not re.search("text was left|text were left|made of pixels", "".join(o.messages))]
    plain_good = sum(o.verdict == "agrees" for o in plain)
    share = 100.0 * count("agrees") / max(1, len(judged))
    print(f"{len(outcomes)} drawings, {count('unpaintable')} not painted by rsvg-convert, {len(judged)} judged: "
          f"{count('agrees')} agree ({share:.2f} %), {count('differs')} differ, {len(unsaid)} of them without a "
          f"message, {count('crashed')} crashed, {count('slow')} slower than {SLOW_S} s; slowest "
          f"{max((o.seconds for o in judged), default=0):.2f} s")
    print(f"of the {len(plain)} without text and pictures made of pixels {plain_good} agree "
          f"({100.0 * plain_good / max(1, len(plain)):.2f} %)")
    good = share >= options.bar and not unsaid and count("crashed") == 0 and count("slow") == 0
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
