"""The written sheets: every part there, inside its stock, no cutter in a neighbour, pins to turn a sheet over on."""

import os
from collections import Counter
from itertools import combinations

from shapely.affinity import affine_transform

from outlines import area, polygon, read_dxf

ROUND = 64  # segments a quarter circle when shapely grows a polygon
STRAY = 0.02  # mm: polygons in place of arcs, and shapely's own round corners
SPUR = 0.02  # mm: half the width of the ways out and back on which a cutter opens inside corners


def listed(sheet):
    """How many of each part a sheet lists: ids, or objects with an id (or part) and a quantity."""
    counts = Counter()
    for entry in sheet["parts"]:
        if isinstance(entry, str):
            counts[entry] += 1
        else:
            counts[entry.get("id", entry.get("part"))] += entry.get("quantity", 1)
    return counts


def cut_radius(finished, total):
    """How far all outlines were moved out, from their areas' sum alone."""
    low, high = 0.0, 50.0
    if abs(sum(p.area for p in finished) - total) < 1e-4 * total:
        return 0.0
    for _ in range(60):
        middle = (low + high) / 2
        if sum(p.buffer(middle, ROUND).area for p in finished) < total:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def without_spurs(shape):
    return shape.buffer(SPUR, ROUND).buffer(-SPUR, ROUND)


def small(shape):
    return shape.area <= 0.05 + STRAY * shape.length


def judge_sheet(folder, sheet, plates, excused):
    wrong = []
    name = sheet["file"]
    layers, _, _ = read_dxf(os.path.join(folder, name))
    outside = sorted(layers.closed["OUTSIDE"], key=lambda o: abs(area(o)))
    expected = sorted((plates[i] for i in listed(sheet).elements()), key=lambda p: p.area)
    if len(outside) != len(expected):
        return [f"{name}: {len(outside)} outer profiles, {len(expected)} parts listed"]
    radius = cut_radius(expected, sum(abs(area(o)) for o in outside))
    grown = sorted(p.buffer(radius, ROUND).area for p in expected)
    for outline, want in zip(outside, grown):
        if abs(abs(area(outline)) - want) > 1e-3 * want:
            wrong.append(f"{name}: an outer profile of {abs(area(outline)):.2f} mm2 where a part's is {want:.2f}")
    finished = [without_spurs(polygon(o)).buffer(-radius, ROUND) for o in outside]
    [stock] = [polygon(o) for o in layers.closed["STOCK"]]
    for shape in finished:
        if not small(shape.difference(stock)):
            wrong.append(f"{name}: a part reaches {shape.difference(stock).area:.2f} mm2 over the stock's edge")
    used = sum(p.area for p in finished)
    if not 0 < sheet["utilisation"] <= used / stock.area + 1e-3:
        wrong.append(f"{name}: utilisation {sheet['utilisation']}, outlines fill {used / stock.area:.4f}")
    swaths = [p.buffer(2 * radius, ROUND) for p in finished]
    for i, j in combinations(range(len(finished)), 2):
        if swaths[i].intersects(finished[j]) and not small(swaths[i].intersection(finished[j])):
            wrong.append(f"{name}: a part's cut runs into its neighbour at {finished[j].centroid.wkt}")
    wrong += judge_pockets(name, layers, finished)
    if "back" in sheet:
        first = layers
        layers, _, _ = read_dxf(os.path.join(folder, sheet["back"]))
        length = stock.bounds[2]
        turned = [affine_transform(p, [-1, 0, 0, 1, length, 0]) for p in finished]
        wrong += judge_pockets(sheet["back"], layers, turned)
        pins = register_pins(first, finished)
        # by hand nothing is turned over but single parts
        if pins or (radius > 0 and not excused):
            wrong += judge_pins(name, pins, register_pins(layers, turned), swaths, stock)
    return wrong


def register_pins(layers, parts):
    """Holes outside of all parts: centre and diameter."""
    holes = [o for _, outlines in layers.starting("DRILL_").items() for o in outlines]
    found = []
    for hole in map(polygon, holes):
        if not any(p.intersects(hole.centroid) for p in parts):
            found.append((hole.centroid.x, hole.centroid.y, hole.bounds[2] - hole.bounds[0], hole))
    return sorted(found, key=lambda p: p[:2])


def judge_pins(name, pins, back, swaths, stock):
    """A sheet that is turned over drops on the pins it came off: at least two, clear of the edge, each the image of one of them."""
    wrong = []
    if len(pins) < 2:
        wrong.append(f"{name}: worked on both faces with {len(pins)} register pins")
    length = stock.bounds[2]
    images = sorted((length - x, y, d) for x, y, d, _ in pins)
    for what, others in (("their own images", [p[:3] for p in pins]), ("the holes of the other face", [p[:3] for p in back])):
        if len(others) != len(images) or any(abs(a - b) > STRAY for p, q in zip(images, others) for a, b in zip(p, q)):
            wrong.append(f"{name}: register pins turned over are not {what}")
    for *_, hole in pins:
        if not stock.buffer(-1).contains(hole):
            wrong.append(f"{name}: a register pin is less than 1 mm from the sheet's edge")
        if any(swath.intersects(hole) for swath in swaths):
            wrong.append(f"{name}: a register pin is in the way of a cut")
    return wrong


def judge_pockets(name, layers, finished):
    """A pocket is in one part only, however far it runs past that part's edges."""
    wrong = []
    for layer, outlines in layers.starting("POCKET_").items():
        for outline in outlines:
            pocket = polygon(outline).buffer(0)
            hit = [p for p in finished if p.intersects(pocket) and not small(p.intersection(pocket))]
            if len(hit) != 1:
                wrong.append(f"{name}: a pocket on {layer} is in {len(hit)} parts")
    return wrong


def judge(folder, report):
    """Sentences about what is wrong."""
    wrong, placed = [], Counter()
    plates = {}
    for part in report["parts"]:
        layers, _, _ = read_dxf(os.path.join(folder, "parts", part["id"] + ".dxf"))
        [outer] = layers.closed["OUTSIDE"]
        plates[part["id"]] = polygon(outer)
    # a finding says where there is no place for register pins
    pinless = {f["where"].split(".")[1] for f in report.get("findings", []) if f["rule"] == "register-pins"}
    for sheet in report["sheets"]:
        placed += listed(sheet)
        wrong += judge_sheet(folder, sheet, plates, sheet["stock"] in pinless)
    copies = {part["id"]: placed[part["id"]] / part["quantity"] for part in report["parts"]}
    if len(set(copies.values())) != 1 or not all(c >= 1 and c == int(c) for c in copies.values()):
        wrong.append(f"sheets: parts placed per part wanted: {copies}")
    return wrong
