import { type Line, linesOf } from './lines.js';
import type { Prepared } from './prepared.js';
import { put, type Search } from './search.js';
import { type Axis, slide } from './slide.js';

/** Places along a line at which it is pushed up to what lies there. */
const PHASES = 8;
/** Chance that one more line of the same kind follows. */
const AGAIN = 0.8;
/** Chance that lines go on crosswise after some of one kind. */
const CROSS = 0.25;
/** A line of fewer shapes than this share of a full one is not laid. */
const SHORTEST = 0.6;

/** Shapes still to be laid, by kind: their numbers in the search. */
export type Waiting = readonly number[][];

interface Spot {
  readonly line: Line;
  readonly many: number;
  /** where the line begins, and where it lies across */
  readonly along: number;
  readonly across: number;
  readonly end: number;
}

/** What is left of the bay for lines along an axis. */
interface Region {
  readonly axis: Axis;
  /** from where to where the lines may reach along the axis */
  readonly from: number;
  readonly to: number;
  /** from where to where they may lie across it */
  readonly front: number;
  readonly far: number;
}

const other = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

/** Pushes a line back across its own direction as far as it goes. @param along where the line begins
 * @returns where it comes to lie, Infinity if it is past the limit */
function pushLine(s: Search, line: Line, many: number, region: Region, along: number, limit: number): number {
  const push = other(region.axis);
  // no further back than it might reach between the shapes of the line before
  let place = Math.max(s.bays[0]![push], region.front - line.breadth);
  for (let quiet = 0, k = 0; quiet < many; quiet++, k = (k + 1) % many) {
    const next = slide(s, line.poses[k % line.poses.length]!, 0, push, along + line.at[k]!, place, limit);
    if (next > limit) return Infinity;
    if (next > place + s.touch) {
      place = next;
      quiet = 0;
    }
  }
  return place;
}

/** Where the first so many shapes of a line end. */
const lengthOf = (s: Search, line: Line, many: number, axis: Axis): number => {
  const size = axis === 'x' ? s.tables.width : s.tables.height;
  return line.at[many - 1]! + size[line.poses[(many - 1) % line.poses.length]!]!;
};

/** How many shapes of a line fit a region. */
function mostIn(s: Search, line: Line, region: Region): number {
  let many = line.at.length;
  while (many > 0 && lengthOf(s, line, many, region.axis) > region.to - region.from + s.touch) many--;
  return many;
}

/** The place of the next line of a kind that wastes least for each shape. */
function findLine(s: Search, lines: readonly Line[], waiting: number, region: Region): Spot | undefined {
  let best: Spot | undefined;
  let least = Infinity;
  for (const line of lines) {
    const most = mostIn(s, line, region);
    const many = Math.min(most, waiting);
    if (many < 2 || many < SHORTEST * most) continue;
    const slack = Math.max(0, region.to - region.from - lengthOf(s, line, many, region.axis));
    for (let k = 0; k < PHASES; k++) {
      const along = region.from + (slack * k) / (PHASES - 1);
      const limit = Math.min(region.far + s.touch, region.front + least * many) - line.breadth;
      const across = pushLine(s, line, many, region, along, limit);
      const end = across + line.breadth;
      const each = (end - region.front) / many;
      if (across === Infinity || each >= least) continue;
      least = each;
      best = { line, many, along, across, end };
      if (slack < s.touch) break;
    }
  }
  return best;
}

function layLine(s: Search, spot: Spot, axis: Axis, shapes: number[]): void {
  for (let k = 0; k < spot.many; k++) {
    const along = spot.along + spot.line.at[k]!;
    const pose = spot.line.poses[k % spot.line.poses.length]!;
    const [x, y] = axis === 'x' ? [along, spot.across] : [spot.across, along];
    put(s, shapes.pop()!, pose, x, y, 0);
  }
}

/** A kind, the likelier the more of it is left. */
function anyKind(p: Prepared, s: Search, kinds: readonly number[], waiting: Waiting): number {
  const left = (k: number): number => waiting[k]!.length * p.area[k]!;
  let pick = s.random() * kinds.reduce((sum, k) => sum + left(k), 0);
  for (const k of kinds) {
    pick -= left(k);
    if (pick < 0) return k;
  }
  return kinds.at(-1)!;
}

/** Lays lines in a region, kind by kind, until none fits or chance has it otherwise. @returns what is left of it, to be filled crosswise */
function fillRegion(p: Prepared, s: Search, waiting: Waiting, region: Region): Region {
  const { axis, far } = region;
  const lines = (k: number): readonly Line[] => linesOf(p, k, s.bays[0]!.stock, axis);
  let open = waiting.flatMap((w, k) => (w.length > 1 && lines(k).length > 0 ? [k] : []));
  let { front } = region;
  while (open.length > 0) {
    const kind = anyKind(p, s, open, waiting);
    do {
      const spot = findLine(s, lines(kind), waiting[kind]!.length, { ...region, front });
      if (!spot) {
        open = open.filter(k => k !== kind);
        break;
      }
      layLine(s, spot, axis, waiting[kind]!);
      front = Math.max(front, spot.end);
    } while (s.random() < AGAIN);
    if (s.random() < CROSS) break;
  }
  return { axis: other(axis), from: front, to: far, front: region.from, far: region.to };
}

/** Fills the first bay with lines of shapes of one kind, line beside line, kinds and directions by chance. What is laid leaves `waiting`.
 * @param axis, from: from where along an axis the bay is empty */
export function layLines(p: Prepared, s: Search, waiting: Waiting, axis: Axis, from: number): void {
  const { x, y, width, height } = s.bays[0]!;
  const left = axis === 'x' ? x + from : x;
  const low = axis === 'y' ? y + from : y;
  let region: Region =
    s.random() < 0.5
      ? { axis: 'x', from: left, to: x + width, front: low, far: y + height }
      : { axis: 'y', from: low, to: y + height, front: left, far: x + width };
  // twice without a line: none fits either way
  for (let idle = 0; idle < 2; ) {
    const before = s.filled[0]!;
    region = fillRegion(p, s, waiting, region);
    idle = s.filled[0] === before ? idle + 1 : 0;
  }
}
