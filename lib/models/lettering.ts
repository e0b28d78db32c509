import { locate } from '../geometry/locate.js';
import { type Box, bounds } from '../geometry/measure.js';
import { movePoint, turning } from '../geometry/motion.js';
import { distance, type Point, subtract } from '../geometry/point.js';
import { letteringBox, letteringWidth } from '../parts/lettering/lettering.js';
import type { Feature, Label, Part } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

/** Where a piece has room to be lettered: the middle of it, how high and how long it may be, mm. */
export interface Lettering {
  readonly at: Point;
  readonly height: Mm;
  readonly length: Mm;
  readonly turn?: Radians;
}

/** Lowest lettering that can be cut and read, the same with a copy's letter behind it, and wood left round it; mm, common practice, no
 * source. */
const LEAST_HEIGHT: Mm = 2;
const LEAST_WITH_COPY: Mm = 1.5;
const ROUND_IT: Mm = 0.5;

/** A copy's letter goes into the same length, so that short lettering is then cut much lower. */
const leastHeight = (text: string): Mm =>
  Math.max(LEAST_HEIGHT, (LEAST_WITH_COPY * letteringWidth(`${text} M`, 1)) / letteringWidth(text, 1));

/** What lettering covers, and the wood left round it; from its middle. */
function boxOf({ text, height }: Label): Box {
  const { minX, minY, maxX, maxY } = letteringBox(text, height);
  return { minX: minX - ROUND_IT, minY: minY - ROUND_IT, maxX: maxX + ROUND_IT, maxY: maxY + ROUND_IT };
}

const share = (from: Mm, to: Mm, of: number): Mm => from + (to - from) * of;

/** Points all over the box that lettering fills. */
function boxPoints(label: Label): Point[] {
  const { minX, minY, maxX, maxY } = boxOf(label);
  const along = Array.from({ length: 13 }, (_, i) => i / 12);
  return along.flatMap(u =>
    [0, 0.25, 0.5, 0.75, 1].map(v =>
      movePoint({ x: share(minX, maxX, u), y: share(minY, maxY, v) }, { turn: label.turn, ...label.at }),
    ),
  );
}

/** Whether a point lies in the box of lettering. */
function isOn(label: Label, p: Point): boolean {
  const { minX, minY, maxX, maxY } = boxOf(label);
  const { x, y } = movePoint(subtract(p, label.at), turning(-label.turn));
  return x > minX && x < maxX && y > minY && y < maxY;
}

/** Whether points are off a feature; marks are for the maker and may be lettered over. */
function isClear(f: Feature, points: readonly Point[]): boolean {
  switch (f.kind) {
    case 'pocket':
      return points.every(p => locate(f.area, p) === 'outside');
    case 'drill':
      return points.every(p => distance(p, f.at) > f.diameter / 2 + ROUND_IT);
    case 'label':
      return points.every(p => !isOn(f, p));
    case 'score':
      return true;
  }
}

/** Whether lettering stays on the part, off its holes, its pockets and its other lettering. */
function fits(part: Part, label: Label): boolean {
  const points = boxPoints(label);
  return points.every(p => locate(part.region, p) === 'inside') && part.features.every(f => isClear(f, points));
}

/** The lettering as large as it fits where it is meant to be; none where it would be too small to read. */
export function fittedLabel(part: Part, lettering: Lettering, text: string): Label | undefined {
  const { at, turn = 0 } = lettering;
  const most = Math.min(lettering.height, lettering.length / letteringWidth(text, 1));
  for (let height = most; height >= leastHeight(text); height *= 0.8) {
    const label: Label = { kind: 'label', text, at, height, turn };
    if (fits(part, label)) return label;
  }
  return undefined;
}

/** Heights tried wherever there is room, and places along and across a part. */
const HEIGHTS: readonly Mm[] = [8, 6, 4.5, 3.5, 2.7, LEAST_HEIGHT];
const PLACES = 15;

/** Places all over a part, those nearest to the middle of its box first. */
function placesOn({ region }: Part): Point[] {
  const { minX, minY, maxX, maxY } = bounds(region.outer);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const steps = Array.from({ length: PLACES }, (_, i) => (i + 1) / (PLACES + 1));
  const all = steps.flatMap(u => steps.map(v => ({ x: minX + u * (maxX - minX), y: minY + v * (maxY - minY) })));
  return all.filter(p => locate(region, p) === 'inside').sort((a, b) => distance(a, middle) - distance(b, middle));
}

/** The largest lettering there is room for anywhere on a part, level or upright. */
function anywhere(part: Part, text: string, places: readonly Point[]): Label | undefined {
  for (const height of HEIGHTS.filter(h => h >= leastHeight(text)))
    for (const turn of [0, Math.PI / 2])
      for (const at of places) {
        const label: Label = { kind: 'label', text, at, height, turn };
        if (fits(part, label)) return label;
      }
  return undefined;
}

/** A part's lettering: its id where it is meant to be, else wherever there is room for it, else a mark that is shorter; none on the smallest. */
export function lettered(part: Part, meant: Lettering | undefined, id: string, mark: string): Label | undefined {
  const own = meant && fittedLabel(part, meant, id);
  if (own) return own;
  const places = placesOn(part);
  return anywhere(part, id, places) ?? anywhere(part, mark, places);
}
