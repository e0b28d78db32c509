"""Outlines as an outsider reads them: from DXF by ezdxf, from SVG by its path data. Exact areas by formula, polygons for shapely."""

import math
import re
import xml.etree.ElementTree as ElementTree
from collections import defaultdict

import ezdxf
from shapely.geometry import Polygon

CHORD = 0.002  # mm: how far a polygon may stray from an arc


class Layers:
    """Closed outlines of a file by layer; an outline is a list of (x, y, bulge), a circle two half arcs."""

    def __init__(self):
        self.closed = defaultdict(list)

    def starting(self, prefix):
        return {name: self.closed[name] for name in sorted(self.closed) if name.startswith(prefix)}


def circle(x, y, radius):
    return [(x + radius, y, 1.0), (x - radius, y, 1.0)]


INCHES = 1  # $INSUNITS


def read_dxf(path):
    """Outlines of a DXF in mm, with ezdxf's own count of errors and fixes."""
    document = ezdxf.readfile(path)
    auditor = document.audit()
    mm = 25.4 if document.header.get("$INSUNITS") == INCHES else 1.0
    layers = Layers()

    def close(layer, outline):
        layers.closed[layer].append([(x * mm, y * mm, bulge) for x, y, bulge in outline])

    for entity in document.modelspace():
        kind = entity.dxftype()
        if kind == "LWPOLYLINE" and entity.closed:
            close(entity.dxf.layer, entity.get_points("xyb"))
        elif kind == "POLYLINE" and entity.is_closed:
            close(entity.dxf.layer, [(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in entity.vertices])
        elif kind == "CIRCLE":
            center = entity.dxf.center
            close(entity.dxf.layer, circle(center.x, center.y, entity.dxf.radius))
    return layers, len(auditor.errors), len(auditor.fixes)


def edges(outline):
    return zip(outline, outline[1:] + outline[:1])


def area(outline):
    """Signed area, mm². Circular segment: r²(s - sin s)/2 with sweep s = 4 atan(bulge) (Machinery's Handbook; DXF reference, code 42)."""
    x0, y0 = outline[0][0], outline[0][1]
    total = 0.0
    for (ax, ay, bulge), (bx, by, _) in edges(outline):
        total += ((ax - x0) * (by - y0) - (bx - x0) * (ay - y0)) / 2
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(bx - ax, by - ay) * (1 + bulge * bulge) / (4 * abs(bulge))
            total += radius * radius * (sweep - math.sin(sweep)) / 2
    return total


def points(outline, chord=CHORD):
    """Corners of the polygon inscribed in an outline, arcs by chords no further off than `chord`."""
    out = []
    for (ax, ay, bulge), (bx, by, _) in edges(outline):
        out.append((ax, ay))
        if not bulge:
            continue
        sweep = 4 * math.atan(bulge)
        radius = math.hypot(bx - ax, by - ay) * (1 + bulge * bulge) / (4 * abs(bulge))
        lift = (1 - bulge * bulge) / (4 * bulge)
        cx, cy = (ax + bx) / 2 - (by - ay) * lift, (ay + by) / 2 + (bx - ax) * lift
        start = math.atan2(ay - cy, ax - cx)
        count = max(1, math.ceil(abs(sweep) / (2 * math.acos(max(0.0, 1 - chord / radius)))))
        for i in range(1, count):
            angle = start + sweep * i / count
            out.append((cx + radius * math.cos(angle), cy + radius * math.sin(angle)))
    return out


def polygon(outline, chord=CHORD):
    return Polygon(points(outline, chord))


def depth_of(layer):
    """POCKET_19-05 is 19.05 mm deep."""
    return float(layer.split("_", 1)[1].replace("-", "."))


# --- SVG ---------------------------------------------------------------------------------------------------------------

TOKEN = re.compile(r"[MmLlHhVvAaZz]|[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "A": 7, "Z": 0}


def arc_bulge(ax, ay, bx, by, radius, large, sweep):
    """Bulges of an SVG circular arc, split in two if it passes a half circle. Source: SVG 1.1, F.6.5."""
    chord = math.hypot(bx - ax, by - ay)
    turn = 2 * math.asin(min(1.0, chord / (2 * radius)))
    if large:
        turn = 2 * math.pi - turn
    return math.tan(turn / 4) * (1 if sweep else -1)


def subpaths(data):
    """Closed subpaths of SVG path data, as outlines whose bulges may pass 1 (an arc over a half circle)."""
    tokens = TOKEN.findall(data)
    if "".join(tokens) != re.sub(r"[\s,]+", "", data):
        raise ValueError(f"path data with commands this judge does not read: {data[:60]}")
    done, current, command, i = [], [], "", 0
    x = y = 0.0
    while i < len(tokens):
        if tokens[i].isalpha():
            command = tokens[i]
            i += 1
        kind, relative = command.upper(), command.islower()
        v = [float(t) for t in tokens[i : i + TAKES[kind]]]
        i += TAKES[kind]
        ox, oy = (x, y) if relative else (0.0, 0.0)
        if kind == "Z":
            if math.hypot(current[-1][0] - current[0][0], current[-1][1] - current[0][1]) < 1e-9:
                current.pop()
            done.append(current)
            x, y = current[0][0], current[0][1]
            continue
        if kind == "M":
            current = []
            command = "l" if relative else "L"
        bulge = 0.0
        nx, ny = {"H": lambda: (ox + v[0], y), "V": lambda: (x, oy + v[0])}.get(kind, lambda: (ox + v[-2], oy + v[-1]))()
        if kind == "A":
            if v[0] != v[1]:
                raise ValueError("an ellipse where only circles are cut")
            bulge = arc_bulge(x, y, nx, ny, v[0], v[3] == 1, v[4] == 1)
        if current:
            current[-1] = (current[-1][0], current[-1][1], bulge)
        current.append((nx, ny, 0.0))
        x, y = nx, ny
    return done


def shape_outlines(element):
    kind = element.tag.rsplit("}", 1)[-1]
    get = lambda name: float(element.get(name, "0"))
    if kind == "path":
        return subpaths(element.get("d"))
    if kind == "circle":
        return [circle(get("cx"), get("cy"), get("r"))]
    if kind == "rect":
        x, y, w, h = get("x"), get("y"), get("width"), get("height")
        return [[(x, y, 0), (x + w, y, 0), (x + w, y + h, 0), (x, y + h, 0)]]
    if kind == "polygon":
        numbers = [float(n) for n in re.split(r"[\s,]+", element.get("points").strip())]
        return [[(a, b, 0) for a, b in zip(numbers[::2], numbers[1::2])]]
    return []


def read_svg(path):
    """Outlines of an SVG, by the id of the group they are in. Only moves and mirrors may stand on the way: areas must keep."""
    layers = Layers()
    root = ElementTree.parse(path).getroot()

    def walk(element, layer):
        kind = element.tag.rsplit("}", 1)[-1]
        if kind == "text":
            return  # no outline, and it may be turned
        transform = element.get("transform")
        if transform and not re.fullmatch(r"\s*(translate\([^)]*\)\s*|scale\(\s*1[\s,]+-1\s*\)\s*)+", transform):
            raise ValueError(f"a transform this judge does not read: {transform}")
        if kind == "g" and element.get("id"):
            layer = element.get("id")
        if layer:
            layers.closed[layer].extend(shape_outlines(element))
        for child in element:
            walk(child, layer)

    walk(root, None)
    size = root.get("width", ""), root.get("height", ""), root.get("viewBox", "")
    return layers, size
