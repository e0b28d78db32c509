"""Writes a small folder as the program would, drawn by hand with ezdxf: python3 fixture.py DIR FAULT...

Writes DIR/FAULT for each fault. A fault spoils one thing, for the judge to find; `right` spoils nothing."""

import json
import math
import os
import sys

import ezdxf

from outlines import area, circle

R = 3.0  # half the cutter's width


def rect(x0, y0, x1, y1):
    return [(x0, y0, 0), (x1, y0, 0), (x1, y1, 0), (x0, y1, 0)]


def grown_rect(x0, y0, x1, y1, by):
    """A rectangle's tool-centre outline: quarter circles round the corners, bulge tan(pi / 8)."""
    q = math.tan(math.pi / 8)
    return [
        (x0, y0 - by, 0), (x1, y0 - by, q), (x1 + by, y0, 0), (x1 + by, y1, q),
        (x1, y1 + by, 0), (x0, y1 + by, q), (x0 - by, y1, 0), (x0 - by, y0, q),
    ]  # fmt: skip


def moved(outline, dx, dy):
    return [(x + dx, y + dy, b) for x, y, b in outline]


def svg_path(outline):
    data = f"M{outline[0][0]!r} {-outline[0][1]!r}"
    for (ax, ay, bulge), (bx, by, _) in zip(outline, outline[1:] + outline[:1]):
        if bulge:
            radius = math.hypot(bx - ax, by - ay) * (1 + bulge * bulge) / (4 * abs(bulge))
            data += f"A{radius!r} {radius!r} 0 0 {0 if bulge > 0 else 1} {bx!r} {-by!r}"
        else:
            data += f"L{bx!r} {-by!r}"
    return f'<path d="{data}Z"/>'


def save(folder, name, layers, svg_layers=None):
    document = ezdxf.new("R2007")
    space = document.modelspace()
    for layer, outlines in layers.items():
        document.layers.add(layer)
        for outline in outlines:
            if len(outline) == 2:
                (ax, ay, _), (bx, by, _) = outline
                space.add_circle(((ax + bx) / 2, (ay + by) / 2), math.hypot(bx - ax, by - ay) / 2, {"layer": layer})
            else:
                space.add_lwpolyline(outline, format="xyb", close=True, dxfattribs={"layer": layer})
    path = os.path.join(folder, name + ".dxf")
    document.saveas(path)
    groups = "".join(f'<g id="{k}">{"".join(map(svg_path, v))}</g>' for k, v in (svg_layers or layers).items())
    with open(path[:-4] + ".svg", "w", encoding="utf-8") as file:
        file.write(f'<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="400mm" viewBox="-200 -200 400 400">{groups}</svg>')
    return path


BAR = rect(-50, -10, 50, 10)
LAP = rect(-10, -10, 10, 10)
DISC, BORE = circle(0, 0, 20), circle(0, 0, 5)
# a slab worked on both faces; its back pocket is off centre, so that forgetting the mirror shows
SLAB = rect(-30, -30, 30, 30)
PARTS = {
    "bar": {"OUTSIDE": [BAR], "POCKET_5": [LAP]},
    "disc": {"OUTSIDE": [DISC], "INSIDE": [BORE]},
    "plug": {"OUTSIDE": [BORE]},
    "slab": {"OUTSIDE": [SLAB], "POCKET_4": [circle(0, 0, 12)]},
    "slab-back": {"POCKET_4-5": [circle(-15, 0, 8)]},
    "peg": {"OUTSIDE": [circle(0, 0, 8)]},
}
THICKNESS = {"bar": 10, "disc": 6, "plug": 6, "slab": 12, "peg": 4.5}
QUANTITY = {"bar": 2, "disc": 1, "plug": 1, "slab": 1, "peg": 1}


def piece(part, turn, x, y, z, flipped=False):
    return {"part": part, "turn": turn, "x": x, "y": y, "z": z, "flipped": flipped}


def box(outline):
    """Width and height; of a circle, its diameter."""
    (xs, ys) = zip(*[(x, y) for x, y, _ in outline])
    width = max(xs) - min(xs)
    return (width, width) if len(outline) == 2 else (width, max(ys) - min(ys))


def report():
    parts = [
        {"id": i, "width": box(PARTS[i]["OUTSIDE"][0])[0], "height": box(PARTS[i]["OUTSIDE"][0])[1], "quantity": QUANTITY[i], "thickness": t, "area": sum(map(area, PARTS[i]["OUTSIDE"])) - sum(map(area, PARTS[i].get("INSIDE", [])))}
        for i, t in THICKNESS.items()
    ]
    assembly = [
        piece("bar", 0, 0, 0, 0),
        piece("bar", 90, 0, 0, 0, flipped=True),
        piece("disc", 33, 0, 0, 10),
        piece("plug", 0, 0, 0, 10),
        piece("slab", 0, 200, 0, 0),
        piece("peg", 0, 215, 0, 0),
    ]
    sheet = {"file": "sheets/01-ply.dxf", "back": "sheets/01-ply-back.dxf", "stock": "ply", "parts": ["bar", "bar", "disc", "plug", "slab", "peg"], "utilisation": 0}
    sheet["utilisation"] = sum(p["area"] * p["quantity"] for p in parts) / (300 * 150)
    return {"parts": parts, "assembly": assembly, "sheets": [sheet]}


SECOND_BAR = (80, 55)


def pins(fault, back=False):
    """Register pins in the waste, each the other's image once the sheet is turned over."""
    x, y = (26, 25) if fault == "pin-in-cut" else (10, 140)
    other = 280 if fault == "pins-askew" or (back and fault == "pins-moved") else 300 - x
    return {} if fault == "pins-missing" else {"DRILL_6": [circle(x, y, 3), circle(other, y, 3)]}


def sheet_layers(fault):
    second = {"sheet-overlap": (80, 40), "off-sheet": (80, 155)}.get(fault, SECOND_BAR)
    bars = [(80, 25), second]
    outside = [moved(grown_rect(-50, -10, 50, 10, R), *at) for at in bars]
    if fault == "sheet-missing":
        outside.pop()
    outside += [circle(180, 40, 20 + R), circle(230, 40, 5 + R), circle(260, 40, 8 + R)]
    outside.append(moved(grown_rect(-30, -30, 30, 30, R), 180, 100))
    pockets = [moved(rect(-10, -16, 10, 16), *at) for at in bars]
    if fault == "pocket-long":
        pockets[0] = moved(rect(-10, -16, 10, 25), *bars[0])
    return {
        "OUTSIDE": outside,
        "INSIDE": [circle(180, 40, 5 - R)],
        "POCKET_5": pockets,
        "POCKET_4": [circle(180, 100, 12)],
        **pins(fault),
        "STOCK": [rect(0, 0, 300, 150)],
    }


def write(folder, fault):
    for sub in ("parts", "sheets"):
        os.makedirs(os.path.join(folder, sub), exist_ok=True)
    told = report()
    for name, layers in PARTS.items():
        wrong_svg = {"OUTSIDE": [circle(0, 0, 20.001)], "INSIDE": [BORE]} if fault == "svg" and name == "disc" else None
        layers = {"OUTSIDE": [[BAR[0], BAR[2], BAR[1], BAR[3]]], "POCKET_5": [LAP]} if fault == "crossed" and name == "bar" else layers
        path = save(os.path.join(folder, "parts"), name, layers, wrong_svg)
        if fault == "audit" and name == "plug":
            text = open(path, encoding="utf-8").read()
            # an entity that claims a line type the file does not have
            open(path, "w", encoding="utf-8").write(text.replace("\nAcDbEntity\n  8\nOUTSIDE\n", "\nAcDbEntity\n  8\nOUTSIDE\n  6\nNOWHERE\n", 1))
    save(os.path.join(folder, "sheets"), "01-ply", sheet_layers(fault))
    # the sheet turned over: the slab at x = 180 is now at 120, its back pocket 15 to the left of its middle
    middle = 180 if fault == "back-not-turned" else 120
    back = {"POCKET_4-5": [circle(middle - 15, 100, 8)], **pins(fault, back=True), "STOCK": [rect(0, 0, 300, 150)]}
    save(os.path.join(folder, "sheets"), "01-ply-back", back)
    if fault == "shift":
        told["assembly"][1]["x"] = 0.05  # lap walls are shared, so a twentieth of a millimetre is an overlap
    if fault == "unflipped":
        told["assembly"][1]["flipped"] = False
    if fault == "peg":
        told["assembly"][5]["x"] = 185  # where the pocket would be if the back were not mirrored
    if fault == "area":
        told["parts"][1]["area"] *= 1 + 3e-6
    if fault == "size":
        told["parts"][0]["width"] += 0.01
    if fault == "count":
        told["parts"][0]["quantity"] = 3
    with open(os.path.join(folder, "report.json"), "w", encoding="utf-8") as file:
        json.dump(told, file)


STAVES = 12
STOOD = {
    "floor": {"OUTSIDE": [circle(0, 0, 100)], "INSIDE": [rect(-10, -5, 10, 0)]},
    "paddle": {"OUTSIDE": [[(x, y, 0) for x, y in [(-10, 0), (10, 0), (10, 10), (30, 10), (30, 80), (-30, 80), (-30, 10), (-10, 10)]]]},
    "stave": {"OUTSIDE": [rect(-40, 0, 40, 300)]},
}


def write_stood(folder, fault):
    """A paddle with its tab in a slot, and a ring of bevelled staves round it; parts and assembly only."""
    os.makedirs(os.path.join(folder, "parts"), exist_ok=True)
    for name, layers in STOOD.items():
        save(os.path.join(folder, "parts"), name, layers)
    bevel = 14.9 if fault == "stood-bevel" else 180 / STAVES
    parts = [
        {"id": "floor", "quantity": 1, "thickness": 10},
        {"id": "paddle", "quantity": 1, "thickness": 5},
        {"id": "stave", "quantity": STAVES, "thickness": 18, "bevel": bevel},
    ]
    back = 40 / math.tan(math.pi / STAVES) - 18
    assembly = [piece("floor", 20, 0, 0, 0), {**piece("paddle", 20, 0, 0, -1 if fault == "stood-low" else 0), "stands": True}]
    for i in range(STAVES):
        turn = 2 * math.pi * i / STAVES
        stave = piece("stave", math.degrees(turn), back * math.sin(turn), -back * math.cos(turn), 0)
        assembly.append({**stave, "stands": True})
    with open(os.path.join(folder, "report.json"), "w", encoding="utf-8") as file:
        json.dump({"parts": parts, "assembly": assembly}, file)


if __name__ == "__main__":
    for name in sys.argv[2:]:
        (write_stood if name.startswith("stood") else write)(os.path.join(sys.argv[1], name), name)
