"""An outsider's judgement of folders the program wrote: python3 judge.py DIR... [--only files,assembly,sheets]

Reads the files with ezdxf and shapely, never with the project's own code. Prints one line for each thing wrong.
Exit code: 0 nothing wrong, 1 something is, 3 this Python lacks ezdxf or shapely."""

import argparse
import glob
import json
import os
import sys

try:
    import ezdxf
    import shapely
except ImportError as missing:
    print(f"cannot judge: {missing}")
    sys.exit(3)

import assembled
import sheets
from outlines import CHORD, area, polygon, read_dxf, read_svg

RELATIVE = 1e-6


def close(a, b):
    return abs(a - b) <= RELATIVE * max(abs(a), abs(b), 1e-9)


def judge_dxf(name, layers, errors, fixes):
    wrong = []
    if errors or fixes:
        wrong.append(f"{name}: ezdxf's audit finds {errors} errors and {fixes} things to fix")
    for layer, outlines in layers.closed.items():
        for outline in outlines:
            if not polygon(outline).is_valid:
                wrong.append(f"{name}: an outline on {layer} crosses itself near {outline[0][:2]}")
    return wrong


def judge_svg(name, layers, path):
    """The picture beside a DXF: the same closed outlines by area, layer for layer, and a size in mm."""
    wrong = []
    seen, (width, height, view) = read_svg(path)
    box = [float(n) for n in view.split()]
    mm = {"mm": 1.0, "in": 25.4}
    if not all(close(float(size[:-2]) * mm[size[-2:]], length) for size, length in ((width, box[2]), (height, box[3]))):
        wrong.append(f"{name}: size {width} x {height} is not its viewBox {view} in mm")
    for layer in sorted(set(layers.closed) | set(seen.closed)):
        ours = sorted(abs(area(o)) for o in layers.closed[layer])
        theirs = sorted(abs(area(o)) for o in seen.closed[layer])
        if layer in ("SCORE", "LABEL") and len(ours) != len(theirs):
            continue  # marks may be closed in one and runs in the other
        if len(ours) != len(theirs) or not all(close(a, b) for a, b in zip(ours, theirs)):
            wrong.append(f"{name}: {layer} encloses {sum(theirs):.6f} mm2 in {len(theirs)}, the DXF {sum(ours):.6f} in {len(ours)}")
    return wrong


def judge_files(folder, report):
    wrong = []
    areas = {p["id"]: p["area"] for p in report["parts"]}
    sizes = {p["id"]: (p["width"], p["height"]) for p in report["parts"]}
    for path in sorted(glob.glob(os.path.join(folder, "**", "*.dxf"), recursive=True)):
        name = os.path.relpath(path, folder)
        layers, errors, fixes = read_dxf(path)
        wrong += judge_dxf(name, layers, errors, fixes)
        svg = path[:-4] + ".svg"
        wrong += judge_svg(name[:-4] + ".svg", layers, svg) if os.path.exists(svg) else [f"{name}: no SVG beside it"]
        part = os.path.basename(path)[:-4]
        if os.path.basename(os.path.dirname(path)) == "parts" and part in areas:
            found = sum(abs(area(o)) for o in layers.closed["OUTSIDE"]) - sum(abs(area(o)) for o in layers.closed["INSIDE"])
            if not close(found, areas[part]):
                wrong.append(f"{name}: encloses {found:.9f} mm2, the report says {areas[part]:.9f}")
        if os.path.basename(os.path.dirname(path)) == "parts" and part in sizes:
            x0, y0, x1, y1 = polygon(layers.closed["OUTSIDE"][0]).bounds
            if any(abs(a - b) > 2 * CHORD for a, b in zip((x1 - x0, y1 - y0), sizes[part])):
                wrong.append(f"{name}: is {x1 - x0:.4f} x {y1 - y0:.4f} mm, the report says {sizes[part]}")
    for part in areas:
        if not os.path.exists(os.path.join(folder, "parts", part + ".dxf")):
            wrong.append(f"parts/{part}.dxf is missing")
    return wrong


JUDGES = {"files": judge_files, "assembly": assembled.judge, "sheets": sheets.judge}


def judge(folder, names):
    with open(os.path.join(folder, "report.json"), encoding="utf-8") as file:
        report = json.load(file)
    return [line for name in names for line in JUDGES[name](folder, report)]


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folders", nargs="+", metavar="DIR")
    parser.add_argument("--only", default=",".join(JUDGES))
    options = parser.parse_args()
    total = 0
    for folder in options.folders:
        wrong = judge(folder, options.only.split(","))
        total += len(wrong)
        for line in wrong:
            print(line if len(options.folders) == 1 else f"{os.path.basename(folder)}: {line}")
    print(f"{total} wrong (ezdxf {ezdxf.__version__}, shapely {shapely.__version__})")
    return 1 if total else 0


if __name__ == "__main__":
    sys.exit(main())
