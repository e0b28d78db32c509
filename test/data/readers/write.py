"""Writes the drawings of this folder and what they measure. See README.md."""

import json
import math
import os

import ezdxf
from shapely.geometry import Polygon

HERE = os.path.dirname(os.path.abspath(__file__))
FINE = 1e-7  # mm: sagitta of the chords measured


def points(e):
    """Points along one entity, chords for arcs."""
    if e.dxftype() == "LINE":
        return [e.dxf.start, e.dxf.end]
    if e.dxftype() == "SPLINE":
        curve = e.construction_tool()
        knots, order, count = curve.knots(), curve.order, curve.count
        first, last = knots[order - 1], knots[count]
        return list(curve.points([first + (last - first) * k / 200000 for k in range(200000)]))
    return list(e.flattening(FINE))


def area(*entities):
    """Area inside a chain of entities, by ezdxf's points and shapely."""
    entities = [v for e in entities for v in (e.virtual_entities() if "POLYLINE" in e.dxftype() else [e])]
    parts = [points(e) for e in entities]
    ring = [(p.x, p.y) for p in parts.pop(0)]
    while parts:
        end = ring[-1]
        gap = lambda p: min(math.dist(end, (p[0].x, p[0].y)), math.dist(end, (p[-1].x, p[-1].y)))
        nearest = min(parts, key=gap)
        parts.remove(nearest)
        run = [(p.x, p.y) for p in nearest]
        ring += run if math.dist(end, run[0]) <= math.dist(end, run[-1]) else run[::-1]
    return Polygon(ring).area


def plate():
    doc = ezdxf.new("R2010", setup=False)
    doc.units = 4
    m = doc.modelspace()
    # 200 x 120 with corners of radius 15 by lines and arcs, out of order, some backwards
    edges = [
        m.add_arc((185, 15), 15, 270, 360),
        m.add_line((15, 0), (185, 0)),
        m.add_line((200, 105), (200, 15)),
        m.add_arc((15, 105), 15, 90, 180),
        m.add_line((185, 120), (15, 120)),
        m.add_arc((15, 15), 15, 180, 270),
        m.add_line((0, 105), (0, 15)),
        m.add_arc((185, 105), 15, 0, 90),
    ]
    m.add_text("PLATE", dxfattribs={"insert": (10, -20)})
    m.add_point((5, 5))
    slot = m.add_lwpolyline([(40, 20, 0), (70, 20, 1), (70, 32, 0), (40, 32, 1)], format="xyb", close=True)
    hole = m.add_circle((30, 80), 12)
    oval = m.add_ellipse((80, 80), major_axis=(15, 9, 0), ratio=0.4)
    blob = m.add_spline(dxfattribs={"layer": "CURVES"})
    blob.set_closed([(120, 20, 0), (150, 15, 0), (155, 40, 0), (135, 45, 0), (118, 38, 0)], degree=3)
    ring = m.add_spline(dxfattribs={"layer": "CURVES"})
    h = math.sqrt(0.5)
    square = [(150, 90), (150, 100), (140, 100), (130, 100), (130, 90), (130, 80), (140, 80), (150, 80), (150, 90)]
    ring.control_points = [(x, y, 0) for x, y in square]
    ring.dxf.degree = 2
    ring.knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4]
    ring.weights = [1, h, 1, h, 1, h, 1, h, 1]
    # a half disc as a block, its base in a corner, inserted turned and mirrored
    block = doc.blocks.new("HALF", base_point=(5, 0))
    block.add_arc((0, 0), 5, 0, 180)
    block.add_line((-5, 0), (5, 0))
    m.add_blockref("HALF", (180, 60), dxfattribs={"rotation": 90})
    m.add_blockref("HALF", (100, 50), dxfattribs={"xscale": -0.8, "yscale": 0.8})
    # a half disc drawn from behind: in the world its arc is about (-60, 40) and bulges up
    m.add_arc((60, 40), 10, 0, 180, dxfattribs={"extrusion": (0, 0, -1)})
    m.add_line((-70, 40), (-50, 40))
    doc.layout("Layout1").add_line((0, 0), (1, 1))
    doc.saveas(os.path.join(HERE, "plate.dxf"))
    openings = {
        "slot": area(slot),
        "hole": area(hole),
        "oval": area(oval),
        "blob": area(blob),
        "ring": area(ring),
        "half": math.pi * 25 / 2,
        "half smaller": 0.64 * math.pi * 25 / 2,
    }
    return {"outer": area(*edges), "openings": openings, "from behind": math.pi * 50}


def faults():
    doc = ezdxf.new("R2000", setup=False)
    doc.units = 1
    m = doc.modelspace()
    m.add_line((0, 0), (2, 0))
    m.add_line((2.0002, 0), (2, 1))  # 0.0002 in: bridged
    m.add_line((2, 1), (0, 1))
    m.add_line((0, 0), (0, 1))
    m.add_line((0, 1), (0, 0))  # again, backwards
    m.add_line((5, 0), (6, 0))
    m.add_line((6.002, 0), (6, 1))  # 0.002 in: left open
    m.add_line((6, 1), (5, 0))
    m.add_line((3, 3), (3.5, 3))  # leads nowhere
    m.add_polyline2d([(8, 0, 0, 0, 0.5), (9, 0, 0, 0, 0), (9, 1, 0, 0, 0)], format="xyseb", close=True)
    doc.saveas(os.path.join(HERE, "faults.dxf"))
    bulge = area(*[e for e in m if e.dxftype() == "POLYLINE"])
    return {"frame": 2.0, "polyline": bulge}


if __name__ == "__main__":
    with open(os.path.join(HERE, "expected.json"), "w") as f:
        json.dump({"plate": plate(), "faults": faults()}, f, indent=2)
        f.write("\n")
