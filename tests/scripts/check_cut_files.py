#!/usr/bin/env python3
"""Has other programs read the cutter's files that core writes, and compares what they find.

usage: check_cut_files.py CUT_SAMPLE PLAN...

CUT_SAMPLE is the built program tests/scripts/cut_sample.cpp, which writes each plan's files and what core says
about them. Both DXF versions must pass ezdxf's audit without an error or a repair. The number of closed outlines
must agree on every layer between core, SVG and both DXF files; so must extents within 0.001 mm, and the area
between the outlines within 0.01 %, as shapely finds it from the coordinates in the files. No layer has a text, a spline
or a fill, but for the engraving of a preset that asks for areas.

Status 0 when all agree, 77 when ezdxf or shapely is not there, 1 otherwise.
"""

import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

try:
    import ezdxf
    from shapely.geometry import LineString, Point, Polygon
except ImportError:
    print("python3-ezdxf and python3-shapely are needed")
    sys.exit(77)

SVG = "{http://www.w3.org/2000/svg}"
EXTENT_MM = 0.001
AREA_SHARE = 1e-4
CIRCLE_QUARTER = 2048  # chords of a quarter circle: off in area by 1e-7
ALLOWED = {"LINE", "LWPOLYLINE", "POLYLINE", "CIRCLE"}


class Layer:
    """The shapes of one layer: closed ones as polygons, all of them for the extent."""

    def __init__(self):
        self.polygons = []
        self.open = []

    def add(self, points, closed):
        if closed:
            self.polygons.append(Polygon(points))
        else:
            self.open.append(LineString(points))

    def circle(self, x, y, radius):
        self.polygons.append(Point(x, y).buffer(radius, CIRCLE_QUARTER))

    def area(self):
        """Between the outlines by the even-odd rule: those around an odd number of others count as holes."""
        total = 0
        for one in self.polygons:
            # A point of its outline tells what lies around it: outlines do not cross.
            edge = LineString(list(one.exterior.coords)[:2]).interpolate(0.5, normalized=True)
            around = sum(other is not one and other.area > one.area and other.contains(edge)
                         for other in self.polygons)
            total += -one.area if around % 2 else one.area
        return total

    def extent(self):
        boxes = [shape.bounds for shape in self.polygons + self.open]
        return (min(b[0] for b in boxes), min(b[1] for b in boxes),
                max(b[2] for b in boxes), max(b[3] for b in boxes))


def read_svg(path, complain):
    """Layers of an SVG file, y up, in mm: the viewBox must say that a unit is one."""
    root = ElementTree.parse(path).getroot()
    width, height = root.get("width"), root.get("height")
    if not width.endswith("mm") or root.get("viewBox") != f"0 0 {width[:-2]} {height[:-2]}":
        complain(f"the size {width} by {height} does not go with the viewBox {root.get('viewBox')}")
    top = float(height[:-2])
    layers = {}
    for group in root.findall(SVG + "g"):
        layer = layers[group.get("id")] = Layer()
        filled = group.get("fill") != "none"
        if filled and "engrave" not in group.get("id").lower():
            complain(f"the layer {group.get('id')} is filled")
        for element in group:
            if element.get("transform") or element.get("fill"):
                complain("an element has a transform or a fill")
            if element.tag == SVG + "circle":
                layer.circle(float(element.get("cx")), top - float(element.get("cy")), float(element.get("r")))
                continue
            for part in re.findall(r"M[^M]*", element.get("d")):
                numbers = [float(n) for n in re.findall(r"-?[\d.]+", part)]
                points = [(x, top - y) for x, y in zip(numbers[::2], numbers[1::2])]
                layer.add(points, part.endswith("Z"))
    return layers


def read_dxf(path, complain):
    document = ezdxf.readfile(path)
    audit = document.audit()
    for found in audit.errors + audit.fixes:
        complain(f"ezdxf: {found.message}")
    if document.dxfversion == "AC1015":
        if document.header["$INSUNITS"] != 4 or document.header["$MEASUREMENT"] != 1:
            complain("the header does not say millimetres")
    layers = {}
    for entity in document.modelspace():
        kind, name = entity.dxftype(), entity.dxf.layer
        if kind not in ALLOWED:
            complain(f"there is a {kind}")
            continue
        if name not in document.layers:
            complain(f"the layer {name} is not in the table")
        layer = layers.setdefault(name, Layer())
        if kind == "CIRCLE":
            layer.circle(entity.dxf.center.x, entity.dxf.center.y, entity.dxf.radius)
        elif kind == "LINE":
            layer.add([entity.dxf.start.vec2, entity.dxf.end.vec2], False)
        elif kind == "LWPOLYLINE":
            layer.add([(x, y) for x, y in entity.get_points("xy")], entity.closed)
        else:
            layer.add([(p.x, p.y) for p in entity.points()], entity.is_closed)
    return layers


def compare(name, wanted, layers, complain):
    for layer, (closed, area, extent) in wanted.items():
        found = layers.get(layer)
        if found is None:
            complain(f"{name} has no layer {layer}")
            continue
        if len(found.polygons) != closed:
            complain(f"{name}, {layer}: {len(found.polygons)} closed outlines, core has {closed}")
        if abs(found.area() - area) > AREA_SHARE * area:
            complain(f"{name}, {layer}: area {found.area():.4f} mm2, core has {area:.4f}")
        if any(abs(a - b) > EXTENT_MM for a, b in zip(found.extent(), extent)):
            complain(f"{name}, {layer}: extent {found.extent()}, core has {extent}")
    for layer in layers.keys() - wanted.keys():
        complain(f"{name} has a layer {layer} that core does not name")


def check(folder, complaints):
    count = 0
    for summary in sorted(folder.glob("*.txt")):
        wanted = {}
        for line in summary.read_text().splitlines():
            layer, closed, area, *extent = line.split()
            wanted[layer] = (int(closed), float(area), [float(v) for v in extent])
        base = str(summary)[:-len(".txt")]
        for suffix, read in ((".svg", read_svg), ("-r12.dxf", read_dxf), ("-r2000.dxf", read_dxf)):
            def complain(text, file=base + suffix):
                complaints.append(f"{file}: {text}")
            layers = read(base + suffix, complain)
            compare(suffix, wanted, layers, complain)
            count += 1
    return count


def main(arguments):
    if len(arguments) < 2:
        print(__doc__.split("\n\n")[1], file=sys.stderr)
        return 2
    complaints, count = [], 0
    for plan in arguments[1:]:
        with tempfile.TemporaryDirectory() as folder:
            subprocess.run([arguments[0], plan, folder], check=True)
            count += check(Path(folder), complaints)
    for complaint in complaints:
        print(complaint)
    print(f"{count} files read, {len(complaints)} complaints")
    # No file proves nothing.
    return 1 if complaints or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
