import { levelSpans } from '../geometry/level.js';
import { type Box, bounds } from '../geometry/measure.js';
import { moveRegion, turning } from '../geometry/motion.js';
import { circle, type Outline, type Polyline, type Region } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { letter, letteringWidth } from '../parts/lettering/lettering.js';
import type { Mm, Radians } from '../units/length.js';
import { caption, type LegendItem, legend, legendDepth, strokes } from './caption.js';
import { bothUnits, dimension } from './dimension.js';
import { type FindingMark, markLegend, markShapes } from './finding-marks.js';
import type { Paint, Picture, PictureGroup, PictureShape } from './picture.js';
import { HOLE_TONE, INK, lineOn, PAPER } from './wood.js';

/** A part where it lies on its stock. */
export interface LaidPart {
  readonly name: string;
  readonly region: Region;
  readonly tone: number;
}

/** One piece of stock with what is cut from it, to be looked at. Lengths mm, in the stock's frame. */
export interface StockLayout {
  readonly title: string;
  readonly stock: Region;
  /** within which parts lie: inside trued edges and margin, where the stock is a rectangle */
  readonly usable?: Outline;
  readonly defects: readonly Region[];
  readonly parts: readonly LaidPart[];
  /** straight cuts of a saw */
  readonly rips: readonly Polyline[];
  /** holes for register pins */
  readonly pins: readonly { readonly at: Point; readonly diameter: Mm }[];
  /** what is left whole */
  readonly offcut?: Outline;
  /** what is to be looked at on the parts */
  readonly marks?: readonly FindingMark[];
}

/** Wood not used. */
const RAW = 0xf6efe1;
const SPARE = 0x2f7d6b;
const FLAW = 0xb4452f;

/** Of a letter's height, how much room a name needs above and below. */
const ROOM = 1.5;
/** Where in a part's height a name is tried. */
const TRIES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

/** The highest lettering for a name that fits level in a region, and where its middle is. @param most height of the letters, mm */
function levelPlace(region: Region, text: string, most: Mm): { readonly at: Point; readonly height: Mm } | undefined {
  const { minY, maxY } = bounds(region.outer);
  const wide = letteringWidth(text, 1);
  let best: { at: Point; height: Mm } | undefined;
  for (const share of TRIES) {
    // off round heights, where corners like to lie
    const y = minY + share * (maxY - minY) + 0.0137;
    for (const half of [most, most * 0.7, most * 0.45, most * 0.3].map(h => (h * ROOM) / 2)) {
      const rows = [y - half, y, y + half].map(at => levelSpans(region, at));
      for (const [a, b] of rows[1]!) {
        const inner = (row: readonly (readonly [Mm, Mm])[]) => row.find(([p, q]) => p < (a + b) / 2 && (a + b) / 2 < q);
        const [below, above] = [inner(rows[0]!), inner(rows[2]!)];
        if (!below || !above) continue;
        const [left, right] = [Math.max(a, below[0], above[0]), Math.min(b, below[1], above[1])];
        const height = Math.min((2 * half) / ROOM, (0.88 * (right - left)) / wide);
        if (height > (best?.height ?? 0) * 1.02) best = { at: { x: (left + right) / 2, y }, height };
      }
    }
  }
  return best;
}

/** A text on a part, level or, where it is larger so, upright; nothing where it could not be read. @param least height worth drawing, mm */
function nameOn({ region, name, tone }: LaidPart, most: Mm, least: Mm): PictureShape[] {
  const level = levelPlace(region, name, most);
  const quarter: Radians = Math.PI / 2;
  const upright = levelPlace(moveRegion(region, turning(-quarter)), name, most);
  const isUpright = (upright?.height ?? 0) > 1.2 * (level?.height ?? 0);
  const place = isUpright ? upright : level;
  if (!place || place.height < least) return [];
  const at = isUpright ? { x: -place.at.y, y: place.at.x } : place.at;
  const written = letter(name, at, place.height, isUpright ? quarter : 0);
  return [strokes(written, { stroke: lineOn(tone), width: place.height / 9 })];
}

/** Of a letter's height, the least a name and a number are drawn. */
const LEAST_NAME = 1 / 4;
const LEAST_NUMBER = 1 / 6;

/** What is written on the parts, and the names that had to give way to numbers, each number once. */
interface Names {
  readonly shapes: readonly PictureShape[];
  readonly numbers: ReadonlyMap<string, string>;
}

/** Every part's name on it; where one has no room, its number: #1, the first name of the layout that has none. */
function namesOn(parts: readonly LaidPart[], h: Mm): Names {
  const numbers = new Map<string, string>();
  const shapes = parts.flatMap(part => {
    const named = nameOn(part, h, LEAST_NAME * h);
    if (named.length > 0) return named;
    const number = numbers.get(part.name) ?? `#${numbers.size + 1}`;
    const numbered = nameOn({ ...part, name: number }, h, LEAST_NUMBER * h);
    if (numbered.length > 0) numbers.set(part.name, number);
    return numbered;
  });
  return { shapes, numbers };
}

const filled = ({ outer, openings }: Region, paint: Paint): PictureShape => ({
  closed: [outer, ...openings],
  open: [],
  paint,
});

interface Sizes {
  readonly box: Box;
  /** height of a letter */
  readonly h: Mm;
  readonly hair: Mm;
}

function sizesOf(stock: Region): Sizes {
  const box = bounds(stock.outer);
  const h = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 55;
  return { box, h, hair: h / 14 };
}

const dashed = ({ h, hair }: Sizes, stroke: number): Paint => ({
  stroke,
  width: 1.6 * hair,
  dashes: [0.7 * h, 0.4 * h],
});

/** What is left whole, with its size. */
function offcutShapes(offcut: Outline, sizes: Sizes): PictureShape[] {
  const { minX, minY, maxX, maxY } = bounds(offcut);
  const region = { outer: offcut, openings: [] };
  const size = `left whole: ${bothUnits(maxX - minX)} x ${bothUnits(maxY - minY)}`;
  return [filled(region, dashed(sizes, SPARE)), ...nameOn({ region, name: size, tone: PAPER }, sizes.h, sizes.h / 4)];
}

function legendItems(layout: StockLayout, { numbers }: Names, sizes: Sizes): LegendItem[] {
  const toneOf = (name: string): number => layout.parts.find(p => p.name === name)!.tone;
  return [
    ...[...numbers].map(([name, number]) => ({ text: `${number} ${name}`, paint: { fill: toneOf(name) } })),
    ...(layout.defects.length > 0 ? [{ text: 'defect', paint: { fill: FLAW } }] : []),
    ...(layout.rips.length > 0 ? [{ text: 'saw cut', paint: dashed(sizes, INK) }] : []),
    ...(layout.offcut ? [{ text: 'left whole', paint: dashed(sizes, SPARE) }] : []),
    ...(layout.pins.length > 0 ? [{ text: 'register pin', paint: { fill: HOLE_TONE } }] : []),
    ...markLegend(layout.marks ?? [], sizes.hair),
  ];
}

function groupsOf(layout: StockLayout, names: Names, sizes: Sizes): PictureGroup[] {
  const { hair, h } = sizes;
  const edge = { stroke: INK, width: 2 * hair };
  const parts = layout.parts.map(p => filled(p.region, { fill: p.tone, stroke: lineOn(p.tone), width: hair }));
  const pins = layout.pins.map(p => circle(p.diameter / 2, p.at));
  const groups: PictureGroup[] = [
    { name: 'stock', shapes: [filled(layout.stock, { fill: RAW, ...edge })] },
    {
      name: 'usable',
      shapes: layout.usable
        ? [{ closed: [layout.usable], open: [], paint: { stroke: INK, width: hair / 2, opacity: 0.45 } }]
        : [],
    },
    { name: 'offcut', shapes: layout.offcut ? offcutShapes(layout.offcut, sizes) : [] },
    { name: 'parts', shapes: parts },
    { name: 'defects', shapes: layout.defects.map(d => filled(d, { fill: FLAW, opacity: 0.85 })) },
    {
      name: 'cuts',
      shapes: layout.rips.length > 0 ? [{ closed: [], open: layout.rips, paint: dashed(sizes, INK) }] : [],
    },
    { name: 'pins', shapes: pins.length > 0 ? [{ closed: pins, open: [], paint: { fill: HOLE_TONE } }] : [] },
    { name: 'names', shapes: names.shapes },
    { name: 'findings', shapes: (layout.marks ?? []).flatMap(m => markShapes(m, h)) },
  ];
  return groups.filter(g => g.shapes.length > 0);
}

/** A picture of a laid out piece of stock: every part with its name, or a number that the legend tells where there is no room for it, the stock's edge and size, defects, saw cuts, pins and what is left whole. */
export function layoutPicture(layout: StockLayout): Picture {
  const sizes = sizesOf(layout.stock);
  const { box, h } = sizes;
  const names = namesOn(layout.parts, h);
  const items = legendItems(layout, names, sizes);
  const [width, middle] = [box.maxX - box.minX, (box.minX + box.maxX) / 2];
  const wide = Math.max(width, 30 * h);
  const below = box.minY - 2 * h;
  const legendY = below - 4.2 * h;
  const depth = items.length > 0 ? 4.2 * h + legendDepth(items, h, wide) : 2.4 * h;
  const high = box.maxY - box.minY;
  // a board's width would be lettered too small beside it
  const narrow = high < letteringWidth(bothUnits(high), h);
  const level = { from: { x: box.minX, y: below }, to: { x: box.maxX, y: below }, height: h, most: wide };
  const left = box.minX - 1.6 * h;
  const upright = { from: { x: left, y: box.minY }, to: { x: left, y: box.maxY }, height: h };
  const around: PictureShape[] = [
    caption(layout.title, { x: middle, y: box.maxY + 2.2 * h }, 1.25 * h, wide),
    ...dimension({ ...level, text: narrow ? `${bothUnits(width)} x ${bothUnits(high)}` : bothUnits(width) }),
    ...(narrow ? [] : dimension({ ...upright, text: bothUnits(high) })),
    ...legend(items, { x: middle, y: legendY }, h, wide),
  ];
  return {
    title: layout.title,
    box: {
      minX: Math.min(box.minX - 4.4 * h, middle - wide / 2 - h),
      minY: below - depth - h,
      maxX: Math.max(box.maxX + 1.5 * h, middle + wide / 2 + h),
      maxY: box.maxY + 4.2 * h,
    },
    background: PAPER,
    groups: [...groupsOf(layout, names, sizes), { name: 'sizes', shapes: around }],
  };
}
