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

/** Shapes still to be laid, by kind, those of like kinds together: their numbers in the search. */
export type Waiting = readonly number[][];

interface Spot {
  readonly line: Line;
  readonly many: number;
  /** where the line begins, and where it lies across */
  readonly along: number;
  readonly across: number;
  readonly end: number;
}

/** A rectangle of the bay, and the axis along which lines are laid in it. */
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

/** The same rectangle for lines the other way. */
const crosswise = ({ axis, from, to, front, far }: Region): Region => ({
  axis: other(axis),
  from: front,
  to: far,
  front: from,
  far: to,
});

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
      const along = region.from + (Math.min(slack, line.at[1]!) * k) / (PHASES - 1);
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

/** A shape's own pose that looks like a pose of a like kind. */
const ownPose = (s: Search, i: number, kind: number, pose: number): number =>
  s.posesFrom[s.kind[i]!]! + pose - s.posesFrom[kind]!;

function layLine(s: Search, spot: Spot, axis: Axis, kind: number, shapes: number[]): void {
  for (let k = 0; k < spot.many; k++) {
    const along = spot.along + spot.line.at[k]!;
    const [x, y] = axis === 'x' ? [along, spot.across] : [spot.across, along];
    const i = shapes.pop()!;
    put(s, i, ownPose(s, i, kind, spot.line.poses[k % spot.line.poses.length]!), x, y, 0);
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

/** Lays one line after another of a kind while chance has it so and one fits.
 * @returns the part of the region they take up, its `to` being where they end; undefined if none fits */
function layRun(p: Prepared, s: Search, kind: number, shapes: number[], region: Region): Region | undefined {
  const lines = linesOf(p, kind, s.bays[0]!.stock, region.axis);
  let { front } = region;
  let to = region.from;
  do {
    const spot = findLine(s, lines, shapes.length, { ...region, front });
    if (!spot) break;
    layLine(s, spot, region.axis, kind, shapes);
    front = Math.max(front, spot.end);
    to = Math.max(to, spot.along + lengthOf(s, spot.line, spot.many, region.axis));
  } while (s.random() < AGAIN);
  return to > region.from ? { ...region, to, far: front } : undefined;
}

/** Lays lines in a region, kind by kind, until none fits or chance has it otherwise.
 * @returns what is left of it: beyond the lines, to be filled crosswise, and past the ends of each kind's lines */
function fillRegion(p: Prepared, s: Search, waiting: Waiting, region: Region): Region[] {
  let open = waiting.flatMap((w, k) => (w.length > 1 ? [k] : []));
  let { front } = region;
  const left: Region[] = [];
  while (open.length > 0) {
    const kind = anyKind(p, s, open, waiting);
    const run = layRun(p, s, kind, waiting[kind]!, { ...region, front });
    if (!run || waiting[kind]!.length < 2) open = open.filter(k => k !== kind);
    if (!run) continue;
    left.push({ ...run, from: run.to, to: region.to });
    front = run.far;
    if (s.random() < CROSS) break;
  }
  return front > region.front ? [...left, crosswise({ ...region, front })] : [];
}

/** Fills the first bay with lines of shapes of one kind, line beside line, kinds and directions by chance. What is laid leaves `waiting`.
 * @param axis, from: from where along an axis the bay is empty */
export function layLines(p: Prepared, s: Search, waiting: Waiting, axis: Axis, from: number): void {
  const { x, y, width, height } = s.bays[0]!;
  const begin = { x, y, [axis]: from + (axis === 'x' ? x : y) };
  const whole: Region = { axis: 'x', from: begin.x, to: x + width, front: begin.y, far: y + height };
  const open = [s.random() < 0.5 ? whole : crosswise(whole)];
  for (let region = open.pop(); region; region = open.pop()) {
    const left = fillRegion(p, s, waiting, region);
    open.push(...(left.length > 0 ? left : fillRegion(p, s, waiting, crosswise(region))));
  }
}
