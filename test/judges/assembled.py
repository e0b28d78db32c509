"""The written parts put together by the report: are they disjoint solids?"""

import math
import os
from itertools import combinations

from shapely.affinity import affine_transform
from shapely.geometry import MultiPolygon
from shapely.ops import unary_union

from outlines import CHORD, depth_of, polygon, read_dxf

AREA = 0.05  # mm²: overlap up to this is rounding
SLAB = 0.01  # mm: slabs thinner than this are rounding of depths in layer names


def merge(outlines):
    return unary_union([polygon(o).buffer(0) for o in outlines]) if outlines else MultiPolygon()


class Solid:
    """A part: plan section by height over its lower face, in its own file's frame with the seen face up."""

    def __init__(self, folder, part_id, thickness):
        layers, _, _ = read_dxf(os.path.join(folder, part_id + ".dxf"))
        self.thickness = thickness
        self.plate = merge(layers.closed["OUTSIDE"]).difference(merge(layers.closed["INSIDE"]))
        # (from, to, area) of what is cleared, heights over the lower face
        self.cleared = [
            (thickness - depth_of(name), thickness, merge(outlines)) for name, outlines in layers.starting("POCKET_").items()
        ]
        back = os.path.join(folder, part_id + "-back.dxf")
        if os.path.exists(back):
            layers, _, _ = read_dxf(back)
            for name, outlines in layers.starting("POCKET_").items():
                mirrored = affine_transform(merge(outlines), [-1, 0, 0, 1, 0, 0])
                self.cleared.append((0, depth_of(name), mirrored))
        self.sections = {}

    def section(self, height):
        open_now = tuple(i for i, (low, high, _) in enumerate(self.cleared) if low < height < high)
        if open_now not in self.sections:
            section = self.plate
            for i in open_now:
                section = section.difference(self.cleared[i][2])
            self.sections[open_now] = section
        return self.sections[open_now]


class Piece:
    def __init__(self, solid, entry):
        self.solid, self.name = solid, entry["part"]
        turn = math.radians(entry["turn"])
        c, s = math.cos(turn), math.sin(turn)
        self.flipped = bool(entry["flipped"])
        flip = -1 if self.flipped else 1
        self.matrix = [c * flip, -s, s * flip, c, entry["x"], entry["y"]]
        self.low, self.high = entry["z"], entry["z"] + solid.thickness
        self.box = affine_transform(solid.plate, self.matrix).bounds
        self.placed = {}

    def breaks(self):
        heights = {self.low, self.high}
        for low, high, _ in self.solid.cleared:
            heights.update(self.high - h if self.flipped else self.low + h for h in (low, high))
        return heights

    def section(self, z):
        section = self.solid.section(self.high - z if self.flipped else z - self.low)
        if id(section) not in self.placed:
            self.placed[id(section)] = affine_transform(section, self.matrix)
        return self.placed[id(section)]


def boxes_meet(a, b):
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def overlap(a, b):
    """The worst overlap of two pieces beyond what chords can feign, mm², and the height it is at; 0 if none."""
    worst = (0.0, 0.0)
    low, high = max(a.low, b.low), min(a.high, b.high)
    if high - low < SLAB or not boxes_meet(a.box, b.box):
        return worst
    heights = sorted(h for h in a.breaks() | b.breaks() | {low, high} if low <= h <= high)
    for z0, z1 in zip(heights, heights[1:]):
        if z1 - z0 < SLAB:
            continue
        middle = (z0 + z1) / 2
        shared = a.section(middle).intersection(b.section(middle))
        # two inscribed polygons of one arc may stray across each other by a chord's sagitta all along
        if shared.area > AREA + CHORD * shared.length and shared.area > worst[0]:
            worst = (shared.area, middle)
    return worst


def judge(folder, report):
    """Sentences about what is wrong."""
    wrong = []
    parts = {p["id"]: p for p in report["parts"]}
    solids = {i: Solid(os.path.join(folder, "parts"), i, p["thickness"]) for i, p in parts.items()}
    pieces = [Piece(solids[e["part"]], e) for e in report["assembly"]]
    shares = {i: sum(p.name == i for p in pieces) / parts[i]["quantity"] for i in parts}
    if len(set(shares.values())) != 1:
        wrong.append(f"assembly: pieces and quantities do not go together: {shares}")
    for (i, a), (j, b) in combinations(enumerate(pieces), 2):
        area, z = overlap(a, b)
        if area:
            wrong.append(f"assembly: {a.name} (entry {i}) and {b.name} (entry {j}) share {area:.3f} mm2 at z = {z:.3f}")
    return wrong
