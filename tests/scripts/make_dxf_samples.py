#!/usr/bin/env python3
"""Writes the DXF samples of tests/data/dxf with ezdxf, and beside them what ezdxf and shapely find in them.

usage: make_dxf_samples.py FOLDER

Each NAME.dxf comes with a line in expected.csv: name, layer, area in mm2 that the layer's closed lines enclose by
the even-odd rule, length of all its lines in mm. ezdxf flattens the curves to 0.0005 mm and gives the inserts'
matrices, shapely joins the pieces and measures. Random samples have fixed seeds: the files come out the same again, but for
the handles and dates that ezdxf gives them. Needs python3-ezdxf and python3-shapely.
"""

import csv
import math
import random
import sys
from pathlib import Path

import ezdxf
import ezdxf.path
from ezdxf import units
from ezdxf.math import Matrix44
from shapely.geometry import LineString
from shapely.ops import linemerge, polygonize

FLAT = 0.0005
JOIN_MM = 0.01
TO_MM = {units.MM: 1, units.CM: 10, units.IN: 25.4, units.M: 1000}


def new(version="R2000", unit=units.MM):
    document = ezdxf.new(version)
    if version != "R12":
        document.units = unit
    return document, document.modelspace()


def entities():
    """One closed outline of each kind, each on a layer of its own."""
    document, model = new()
    layer = {"layer": "circle"}
    model.add_circle((10, 10), 7.5, dxfattribs=layer)
    model.add_ellipse((40, 10), (9, 3), 0.45, dxfattribs={"layer": "ellipse"})
    model.add_lwpolyline([(60, 0, 0.3), (80, 0, -0.2), (80, 15, 1), (60, 15, 0)], format="xyb", close=True,
                         dxfattribs={"layer": "lwpolyline"})
    model.add_polyline2d([(0, 30, 0.5), (20, 30, 0), (20, 45, -0.4), (0, 45, 0)], format="xyb", close=True,
                         dxfattribs={"layer": "polyline"})
    spline = model.add_spline(dxfattribs={"layer": "spline"})
    spline.set_closed([(30, 30, 0), (45, 28, 0), (52, 38, 0), (44, 50, 0), (33, 44, 0)], degree=3)
    model.add_arc((75, 40), 8, 30, 210, dxfattribs={"layer": "half disc"})
    a, b = math.radians(30), math.radians(210)
    model.add_line((75 + 8 * math.cos(b), 40 + 8 * math.sin(b)), (75 + 8 * math.cos(a), 40 + 8 * math.sin(a)),
                   dxfattribs={"layer": "half disc"})
    model.add_ellipse((100, 40), (0, 10), 0.5, 0, math.pi, dxfattribs={"layer": "half ellipse"})
    model.add_line((100, 50), (100, 30), dxfattribs={"layer": "half ellipse"})
    return document


def rational():
    """Rational splines: a true circle of nine control points, and a closed outline of two open ones."""
    document, model = new()
    w = math.sqrt(0.5)
    points = [(10, 0), (10, 10), (0, 10), (-10, 10), (-10, 0), (-10, -10), (0, -10), (10, -10), (10, 0)]
    circle = model.add_spline(degree=2, dxfattribs={"layer": "circle"})
    circle.control_points = [(x, y, 0) for x, y in points]
    circle.knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4]
    circle.weights = [1, w, 1, w, 1, w, 1, w, 1]
    one = model.add_rational_spline([(30, 0), (35, 15), (50, 12), (60, 0)], [1, 3, 0.5, 1],
                                    dxfattribs={"layer": "lens"})
    two = model.add_open_spline([(60, 0), (55, -9), (45, 4), (36, -20), (30, 0)], degree=4,
                                dxfattribs={"layer": "lens"})
    assert one.dxf.degree == 3 and two.dxf.degree == 4
    return document


def blocks():
    """Inserts: turned, scaled unevenly, mirrored, in rows, within one another; in centimetres."""
    document, model = new(unit=units.CM)
    leaf = document.blocks.new("LEAF", base_point=(1, 0.5))
    leaf.add_lwpolyline([(0, 0, 0.6), (2, 1, 0.6)], format="xyb", close=True, dxfattribs={"layer": "0"})
    leaf.add_circle((1, 0.5), 0.2, dxfattribs={"layer": "vein"})
    branch = document.blocks.new("BRANCH")
    for i in range(3):
        branch.add_blockref("LEAF", (2.6 * i, 0.4 * i), dxfattribs={
            "layer": "0", "rotation": 25 * i, "xscale": 1, "yscale": 0.8 + 0.3 * i})
    model.add_blockref("BRANCH", (0, 0), dxfattribs={"layer": "green"})
    model.add_blockref("BRANCH", (10, 5), dxfattribs={
        "layer": "green", "xscale": -1, "yscale": 1.5, "rotation": 40})
    model.add_blockref("LEAF", (0, 8), dxfattribs={
        "layer": "rows", "column_count": 3, "row_count": 2, "column_spacing": 3, "row_spacing": 2.5,
        "rotation": 10})
    return document


def old():
    """R12, which has no unit: pieces drawn the wrong way round and in the wrong order, an upside-down circle."""
    document, model = new("R12")
    model.add_line((0, 0), (30, 0), dxfattribs={"layer": "CUT"})
    model.add_line((30, 20), (30, 0), dxfattribs={"layer": "CUT"})
    model.add_arc((15, 20), 15, 0, 180, dxfattribs={"layer": "CUT"})
    model.add_line((0, 0), (0, 20), dxfattribs={"layer": "CUT"})
    model.add_circle((-15, 12), 5, dxfattribs={"layer": "CUT", "extrusion": (0, 0, -1)})
    model.add_polyline2d([(50, 0, 1), (60, 0, 1)], format="xyb", close=True, dxfattribs={"layer": "ROUND"})
    return document


def chain(seed, unit):
    """A closed outline of many loose pieces of all kinds, shuffled, ends off by up to 3 micrometres."""
    dice = random.Random(seed)
    document, model = new(unit=unit)
    scale = 1 / TO_MM[unit]
    count = 24
    corners = [(math.cos(2 * math.pi * i / count), math.sin(2 * math.pi * i / count)) for i in range(count)]
    corners = [(x * r, y * r) for (x, y), r in zip(corners, [dice.uniform(35, 55) for _ in range(count)])]
    legs = list(zip(corners, corners[1:] + corners[:1]))
    dice.shuffle(legs)

    def at(p):
        return tuple((v + dice.uniform(-0.003, 0.003)) * scale for v in p)

    for i, (a, b) in enumerate(legs):
        a, b = at(a), at(b)
        if dice.random() < 0.5:
            a, b = b, a
        middle = [(p + q) / 2 for p, q in zip(a, b)]
        aside = [(b[1] - a[1]) * 0.2, (a[0] - b[0]) * 0.2]
        if i % 3 == 0:
            model.add_line(a, b, dxfattribs={"layer": "chain"})
        elif i % 3 == 1:
            model.add_lwpolyline([(*a, dice.uniform(-0.3, 0.3)), (*b, 0)], format="xyb",
                                 dxfattribs={"layer": "chain"})
        else:
            model.add_open_spline([a, (middle[0] + aside[0], middle[1] + aside[1]),
                                   (middle[0] - aside[0], middle[1] - aside[1]), b], degree=3,
                                  dxfattribs={"layer": "chain"})
    model.add_circle((0, 0), 12 * scale, dxfattribs={"layer": "chain"})
    return document


def flat_lines(document):
    """(layer, points) of everything in model space, in the file's units."""
    factor = TO_MM.get(document.units, 1) if document.dxfversion > "AC1009" else 1
    # Inserts of the samples enlarge by less than 4.
    distance = FLAT / factor / 4

    def points_of(entity):
        kind = entity.dxftype()
        if kind == "LINE":
            return [entity.dxf.start, entity.dxf.end]
        if kind in ("LWPOLYLINE", "POLYLINE"):
            return list(ezdxf.path.make_path(entity).flattening(distance))
        return list(entity.flattening(distance))

    # Inserts by their matrices: ezdxf's own explosion of inserts that shear is only near to the truth.
    def each(items, layer, matrix):
        for entity in items:
            own = entity.dxf.layer if entity.dxf.layer != "0" or layer is None else layer
            if entity.dxftype() == "INSERT":
                for insert in entity.multi_insert() if entity.mcount > 1 else [entity]:
                    yield from each(document.blocks.get(insert.dxf.name), own, insert.matrix44() * matrix)
            else:
                yield own, [matrix.transform(p) for p in points_of(entity)]

    for layer, points in each(document.modelspace(), None, Matrix44()):
        yield layer, [(p.x * factor, p.y * factor) for p in points]


def joined(lines):
    """Ends within JOIN_MM of an earlier one are moved to it."""
    known = []

    def snap(p):
        for q in known:
            if math.hypot(p[0] - q[0], p[1] - q[1]) <= JOIN_MM:
                return q
        known.append(p)
        return p

    return [LineString([snap(line[0])] + line[1:-1] + [snap(line[-1])]) for line in lines]


def measured(document):
    layers = {}
    for layer, points in flat_lines(document):
        layers.setdefault(layer, []).append(points)
    for layer in sorted(layers):
        lines = joined(layers[layer])
        merged = linemerge(lines) if len(lines) > 1 else lines[0]
        rings = [line for line in getattr(merged, "geoms", [merged]) if line.is_ring]
        shape = None
        for ring in rings:
            polygons = list(polygonize([ring]))
            for polygon in polygons:
                shape = polygon if shape is None else shape.symmetric_difference(polygon)
        yield layer, 0 if shape is None else shape.area, sum(line.length for line in lines)


def main(arguments):
    if len(arguments) != 1 or not Path(arguments[0]).is_dir():
        print(__doc__.split("\n\n")[1], file=sys.stderr)
        return 2
    folder = Path(arguments[0])
    samples = {"entities": entities(), "rational": rational(), "blocks": blocks(), "old": old(),
               "chain_mm": chain(7, units.MM), "chain_in": chain(8, units.IN), "chain_m": chain(9, units.M)}
    with open(folder / "expected.csv", "w", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(["name", "layer", "area_mm2", "length_mm"])
        for name, document in samples.items():
            document.saveas(folder / f"{name}.dxf")
            for layer, area, length in measured(document):
                writer.writerow([name, layer, f"{area:.6f}", f"{length:.6f}"])
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
