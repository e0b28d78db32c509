import { intersection } from '../geometry/boolean.js';
import { levelSpans } from '../geometry/level.js';
import { type Box, bounds, segmentBounds } from '../geometry/measure.js';
import { polygon, type Region, rectangle, solid } from '../geometry/outline.js';
import { type Segment, segments } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { bevelSlope, withinBevel } from './bevel.js';
import { type Clearing, clearings } from './clearings.js';
import type { Part } from './part.js';

/** A part as a solid, lying on its back face or stood up on its outline's y = 0 (see Piece), before it is turned and moved: a stack of
 * plan sections. Lengths mm. */
export interface Form {
  readonly part: Part;
  readonly stands: boolean;
  /** its plan, seen from above */
  readonly box: Box;
  /** heights at which its section changes its make-up, rising; the first is its lower end, the last its upper */
  readonly breaks: readonly Mm[];
  /** whether the section also changes between two of them: bevelled edges of a lying part, slanted or round ones of a standing */
  readonly varies: boolean;
  readonly cleared: readonly Clearing[];
  /** of its part's region */
  readonly edges: readonly Segment[];
  /** what a lying part with square edges is at every height, before anything is cleared from it */
  readonly plate: readonly Region[];
}

/** What a form is at a height: areas of wood, and areas cleared from them. */
export interface Slice {
  readonly wood: readonly Region[];
  readonly cleared: readonly Region[];
}

/** Heights closer than this are one: far above rounding, far below any cut. */
const SAME_HEIGHT: Mm = 1e-6;

function distinct(heights: readonly Mm[]): Mm[] {
  const sorted = [...heights].sort((a, b) => a - b);
  return sorted.filter((h, i) => i === 0 || h - sorted[i - 1]! > SAME_HEIGHT);
}

const edgesOf = (region: Region): Segment[] => [region.outer, ...region.openings].flatMap(segments);

const upright = (s: Segment): boolean =>
  s.kind === 'line' && (Math.abs(s.from.x - s.to.x) < SAME_HEIGHT || Math.abs(s.from.y - s.to.y) < SAME_HEIGHT);

function lying(part: Part, cleared: readonly Clearing[]): Form {
  const inside = cleared.flatMap(c => [c.low, c.high]).filter(h => h > 0 && h < part.thickness);
  return {
    part,
    stands: false,
    box: bounds(part.region.outer),
    breaks: distinct([0, ...inside, part.thickness]),
    varies: bevelSlope(part) > 0,
    cleared,
    edges: edgesOf(part.region),
    plate: [part.region],
  };
}

function standing(part: Part, cleared: readonly Clearing[]): Form {
  const { minX, maxX, minY, maxY } = bounds(part.region.outer);
  const all = [part.region, ...cleared.map(c => c.area)].flatMap(edgesOf);
  const heights = all.map(segmentBounds).flatMap(b => [b.minY, b.maxY]);
  return {
    part,
    stands: true,
    box: { minX, maxX, minY: -part.thickness, maxY: 0 },
    breaks: distinct([minY, maxY, ...heights.filter(y => y > minY && y < maxY)]),
    varies: !all.every(upright),
    cleared,
    edges: edgesOf(part.region),
    plate: [],
  };
}

/** A part as a solid. @throws Unusable when its bevel is out of range */
export const formOf = (part: Part, stands: boolean): Form => (stands ? standing : lying)(part, clearings(part));

/** Strips over the stretches a level line has in a region, from a depth behind the back face to another: a stood part's back looks to
 * +y, its front lies at y = -thickness. */
const strips = (region: Region, y: Mm, low: Mm, high: Mm): Region[] =>
  levelSpans(region, y).map(([from, to]) => solid(rectangle(from, -high, to, -low)));

/** A stood part's long edges lean in from its front to its back. */
function leaning({ part, box }: Form): Region {
  const inset = bevelSlope(part) * part.thickness;
  const { minX, maxX } = box;
  const half = (maxX - minX) / 2;
  const back =
    inset < half
      ? [
          { x: maxX - inset, y: 0 },
          { x: minX + inset, y: 0 },
        ]
      : [{ x: minX + half, y: part.thickness * (half / inset - 1) }];
  return solid(polygon([{ x: minX, y: -part.thickness }, { x: maxX, y: -part.thickness }, ...back]));
}

function standingSlice(form: Form, y: Mm): Slice {
  const { part } = form;
  const square = strips(part.region, y, 0, part.thickness);
  return {
    wood: bevelSlope(part) === 0 ? square : intersection(square, [leaning(form)]),
    cleared: form.cleared.flatMap(c => strips(c.area, y, c.low, c.high)),
  };
}

/** A form's section at a height between two of its breaks, before it is turned and moved. @throws GeometryFailure */
export function sliceAt(form: Form, height: Mm): Slice {
  if (form.stands) return standingSlice(form, height);
  const { part, plate, cleared, varies } = form;
  return {
    wood: varies ? withinBevel(part, part.region, height) : plate,
    cleared: cleared.filter(c => c.low < height && height < c.high).map(c => c.area),
  };
}
