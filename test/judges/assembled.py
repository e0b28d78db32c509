"""The written parts put together by the report: are they disjoint solids?"""

import math
import os
from itertools import combinations

from shapely.affinity import affine_transform
from shapely.geometry import LineString, MultiPolygon, Polygon, box
from shapely.ops import unary_union

from outlines import CHORD, depth_of, polygon, read_dxf

AREA = 0.05  # mm²: overlap up to this is rounding
SLAB = 0.01  # mm: slabs thinner than this are rounding of depths in layer names
BEVELLED = 16  # slabs a part with bevelled edges is cut into
FAR = 1e6


def merge(outlines):
    return unary_union([polygon(o).buffer(0) for o in outlines]) if outlines else MultiPolygon()


def pocketed(outlines):
    """The area of a pocket layer: an outline inside another is an island left standing in it."""
    area = MultiPolygon()
    for outline in outlines:
        area = area.symmetric_difference(polygon(outline).buffer(0))
    return area


def level_strips(area, level, low, high):
    """A stood-up area seen from above where it is cut at a level: rectangles from one y to another over every stretch inside."""
    cut = area.intersection(LineString([(-FAR, level), (FAR, level)]))
    lines = [line for line in getattr(cut, "geoms", [cut]) if line.length > 0]
    return unary_union([box(line.bounds[0], min(low, high), line.bounds[2], max(low, high)) for line in lines])


class Solid:
    """A part: plan section by height over its lower face, in its own file's frame with the seen face up."""

    def __init__(self, folder, part_id, thickness, bevel=0):
        layers, _, _ = read_dxf(os.path.join(folder, part_id + ".dxf"))
        self.thickness = thickness
        self.lean = math.tan(math.radians(bevel))  # how far long edges come in for each mm towards the back face
        self.plate = merge(layers.closed["OUTSIDE"]).difference(merge(layers.closed["INSIDE"]))
        # (from, to, area) of what is cleared, heights over the lower face
        self.cleared = [
            (thickness - depth_of(name), thickness, pocketed(outlines)) for name, outlines in layers.starting("POCKET_").items()
        ]
        back = os.path.join(folder, part_id + "-back.dxf")
        if os.path.exists(back):
            layers, _, _ = read_dxf(back)
            for name, outlines in layers.starting("POCKET_").items():
                mirrored = affine_transform(pocketed(outlines), [-1, 0, 0, 1, 0, 0])
                self.cleared.append((0, depth_of(name), mirrored))
        self.sections = {}

    def section(self, height, depth):
        """At a height over the file's lower face, which is so deep under the front."""
        open_now = tuple(i for i, (low, high, _) in enumerate(self.cleared) if low < height < high)
        key = (open_now, self.lean and depth)
        if key not in self.sections:
            section = self.plate
            for i in open_now:
                section = section.difference(self.cleared[i][2])
            if self.lean:
                left, _, right, _ = self.plate.bounds
                section = section.intersection(box(left + self.lean * depth, -FAR, right - self.lean * depth, FAR))
            self.sections[key] = section
        return self.sections[key]

    def stood(self, level, flipped):
        """Stood up and cut at a level of the file's y: its back at y = 0, its front at -thickness."""

        def y(height):
            return -(self.thickness - height if flipped else height)

        if (level, flipped) not in self.sections:
            section = level_strips(self.plate, level, y(0), y(self.thickness))
            for low, high, area in self.cleared:
                section = section.difference(level_strips(area, level, y(low), y(high)))
            if self.lean:
                left, _, right, _ = self.plate.bounds
                inset, front = self.lean * self.thickness, -self.thickness
                leaning = Polygon([(left, front), (right, front), (right - inset, 0), (left + inset, 0)])
                section = section.intersection(leaning)
            self.sections[(level, flipped)] = section
        return self.sections[(level, flipped)]

    def heights(self, flipped, stands):
        """Over its lower face (of its y = 0 where it stands): where its section changes."""
        if stands:
            areas = [self.plate] + [area for _, _, area in self.cleared]
            rings = [r for a in areas for p in getattr(a, "geoms", [a]) for r in [p.exterior, *p.interiors]]
            return {y for ring in rings for _, y in ring.coords}
        slabs = [i * self.thickness / BEVELLED for i in range(BEVELLED)] if self.lean else []
        found = {0, self.thickness, *slabs, *(h for low, high, _ in self.cleared for h in (low, high))}
        return {self.thickness - h for h in found} if flipped else found


class Piece:
    def __init__(self, solid, entry):
        self.solid, self.name = solid, entry["part"]
        turn = math.radians(entry["turn"])
        c, s = math.cos(turn), math.sin(turn)
        self.flipped, self.stands = bool(entry["flipped"]), bool(entry.get("stands"))
        flip = -1 if self.flipped else 1
        self.matrix = [c * flip, -s, s * flip, c, entry["x"], entry["y"]]
        self.z = entry["z"]
        self.breaks = {self.z + h for h in solid.heights(self.flipped, self.stands)}
        self.low, self.high = min(self.breaks), max(self.breaks)
        left, _, right, _ = solid.plate.bounds
        seen = box(left, -solid.thickness, right, 0) if self.stands else solid.plate
        self.box = affine_transform(seen, self.matrix).bounds
        self.placed = {}

    def section(self, z):
        if self.stands:
            section = self.solid.stood(z - self.z, self.flipped)
        else:
            height = self.high - z if self.flipped else z - self.z
            section = self.solid.section(height, height if self.flipped else self.solid.thickness - height)
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
    heights = sorted(h for h in a.breaks | b.breaks | {low, high} if low <= h <= high)
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
    solids = {i: Solid(os.path.join(folder, "parts"), i, p["thickness"], p.get("bevel", 0)) for i, p in parts.items()}
    pieces = [Piece(solids[e["part"]], e) for e in report["assembly"]]
    shares = {i: sum(p.name == i for p in pieces) / parts[i]["quantity"] for i in parts}
    if len(set(shares.values())) != 1:
        wrong.append(f"assembly: pieces and quantities do not go together: {shares}")
    for (i, a), (j, b) in combinations(enumerate(pieces), 2):
        area, z = overlap(a, b)
        if area:
            wrong.append(f"assembly: {a.name} (entry {i}) and {b.name} (entry {j}) share {area:.3f} mm2 at z = {z:.3f}")
    return wrong
