import type { CutPart } from '../cutting/cut-part.js';
import { endDirection, pointAlong, startDirection } from '../geometry/along.js';
import { area, bounds, length, segmentLength } from '../geometry/measure.js';
import type { Outline } from '../geometry/outline.js';
import { dot } from '../geometry/point.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { FEWEST_TABS, TAB_SPACING, type Tabs } from './finishing.js';
import { type Cut, isNear } from './room.js';
import { roundsCorner } from './start.js';
import type { Tab } from './work.js';

/** A part smaller than this falls or tips when it is cut free: 120 mm square, or narrower than 60 mm. Common practice, no source. */
const SMALL_AREA = 120 * 120;
const SMALL_WIDTH: Mm = 60;

/** Waste a tab is held by: from the cut to the next one. Common practice, no source. */
const WASTE: Mm = 2;
/** A tab keeps so far from corners and from where the cut starts. */
const FROM_CORNER: Mm = 2;
/** Places tried along an edge lie at most so far apart. */
const STEP: Mm = 5;
/** Arcs are taken where lines lie more than this share of the spacing farther from where a tab should be. */
const ARC_SHARE = 0.25;

/** Whether a part falls or tips when it is cut free. */
export function isSmall({ finished }: CutPart): boolean {
  const { minX, minY, maxX, maxY } = bounds(finished.outer);
  return area(finished) < SMALL_AREA || Math.min(maxX - minX, maxY - minY) < SMALL_WIDTH;
}

/** A place for a tab: its middle, in mm along the outline. */
interface Spot {
  readonly along: Mm;
  readonly straight: boolean;
}

/** How a tab is cut. */
interface Shape {
  /** of the outline the cutter does not cut, mm: the tab and the cutter's own width */
  readonly gap: Mm;
  /** the cutter's radius */
  readonly radius: Mm;
}

/** Whether the waste behind a tab is still there when all is cut. */
const isHeld = (s: Segment, share: number, half: number, { radius }: Shape, others: readonly Cut[]): boolean =>
  [-1, -0.5, 0, 0.5, 1].every(at => {
    const p = pointAlong(s, share + at * half);
    return others.every(cut => !isNear(cut, p, 2 * radius + WASTE));
  });

/** Whether an outline runs on smoothly from one edge to the next. */
const SMOOTH = 1 - 1e-6;

const isCorner = (a: Segment, b: Segment, radius: Mm): boolean =>
  roundsCorner(a, radius) || roundsCorner(b, radius) || dot(endDirection(a), startDirection(b)) < SMOOTH;

/** Places on one edge. @param from length of the outline before it */
function spotsOn(s: Segment, from: Mm, kept: readonly [Mm, Mm], shape: Shape, others: readonly Cut[]): Spot[] {
  const size = segmentLength(s);
  const [low, high] = [shape.gap / 2 + kept[0], size - shape.gap / 2 - kept[1]];
  if (!(low <= high)) return [];
  const steps = Math.max(1, Math.ceil((high - low) / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps)
    .filter(at => isHeld(s, at / size, shape.gap / 2 / size, shape, others))
    .map(at => ({ along: from + at, straight: s.kind === 'line' }));
}

/** Every place a tab may stand: on edges that no other piece meets, off corners and off the start. */
function spots(outline: Outline, shape: Shape, others: readonly Cut[]): Spot[] {
  const edges = segments(outline);
  let from = 0;
  return edges.flatMap((s, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    const behind = edges[(i + 1) % edges.length]!;
    const kept = [
      i === 0 || isCorner(before, s, shape.radius) ? FROM_CORNER : 0,
      i === edges.length - 1 || isCorner(s, behind, shape.radius) ? FROM_CORNER : 0,
    ] as const;
    const free = outline[i]!.mate === undefined && !roundsCorner(s, shape.radius);
    const own = free ? spotsOn(s, from, kept, shape, others) : [];
    from += segmentLength(s);
    return own;
  });
}

const around = (a: Mm, b: Mm, whole: Mm): Mm => Math.min(Math.abs(a - b), whole - Math.abs(a - b));

/** So many of the places, as evenly round the outline as they allow. */
function spread(places: readonly Spot[], count: number, whole: Mm, gap: Mm): Spot[] {
  const chosen: Spot[] = [];
  for (let i = 0; i < count; i++) {
    const ideal = ((i + 0.5) * whole) / count;
    const cost = (s: Spot): Mm => around(s.along, ideal, whole) + (s.straight ? 0 : (ARC_SHARE * whole) / count);
    const free = places.filter(s => chosen.every(c => around(c.along, s.along, whole) >= 2 * gap));
    const best = free.reduce<Spot | undefined>((b, s) => (b && cost(b) <= cost(s) ? b : s), undefined);
    if (best) chosen.push(best);
  }
  return chosen.sort((a, b) => a.along - b.along);
}

/** How many tabs a profile of some length gets. */
const wanted = (tabs: Tabs, whole: Mm): number =>
  tabs.count ?? Math.max(FEWEST_TABS, Math.ceil(whole / (tabs.spacing ?? TAB_SPACING)));

/** The stretches of an outer profile that hold a piece, in their order: fewer than asked for where no more find a place.
 * @param width of the cut, mm   @param others the sheet's other cuts */
export function tabsOn(
  outline: Outline,
  tabs: Tabs,
  width: Mm,
  others: readonly Cut[],
): { readonly tabs: readonly Tab[]; readonly wanted: number } {
  const whole = length(outline);
  const shape: Shape = { gap: tabs.width + width, radius: width / 2 };
  const count = wanted(tabs, whole);
  const chosen = spread(spots(outline, shape, others), count, whole, shape.gap);
  return {
    tabs: chosen.map(s => ({ along: [s.along - shape.gap / 2, s.along + shape.gap / 2] })),
    wanted: count,
  };
}
