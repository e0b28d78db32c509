import type { Mm } from '../units/length.js';
import type { Silhouette } from './silhouette.js';

/** A stretch across the stock up to which it is taken, x from its left end. */
export interface Step {
  readonly y0: Mm;
  readonly y1: Mm;
  readonly x: Mm;
  /** which piece it ends at; -1 for the stock's own end */
  readonly piece: number;
}

/** The front line of a piece of stock being filled from its left end; steps from y = 0 to the usable width, in order. */
export type Front = readonly Step[];

/** Where a piece may go: its silhouette's lower left corner. */
export interface Spot {
  readonly x: Mm;
  readonly y: Mm;
  /** area shut in between the piece and the front, mm² */
  readonly waste: number;
}

/** Overlap in y below this is a touch: rounding of sums of sizes. */
const TOUCH: Mm = 1e-7;

export const emptyFront = (width: Mm): Front => [{ y0: 0, y1: width, x: 0, piece: -1 }];

/** Index of the first step that ends above y. */
function stepAt(front: Front, y: Mm): number {
  let low = 0;
  let high = front.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (front[middle]!.y1 > y + TOUCH) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** How far left a shape slides at a height, and what it shuts in there; undefined if it stops right of the limit. */
function slide(front: Front, shape: Silhouette, y: Mm, limit: Mm): Spot | undefined {
  let first = stepAt(front, y);
  let x = 0;
  let taken = 0;
  let across = 0;
  for (const strip of shape.strips) {
    const low = strip.y0 + y;
    const high = strip.y1 + y;
    while (first < front.length - 1 && front[first]!.y1 <= low + TOUCH) first += 1;
    for (let i = first; i < front.length; i += 1) {
      const step = front[i]!;
      if (step.y0 >= high - TOUCH) break;
      const shared = Math.min(high, step.y1) - Math.max(low, step.y0);
      if (shared <= TOUCH) continue;
      x = Math.max(x, step.x - strip.left);
      if (x > limit) return undefined;
      taken += (strip.left - step.x) * shared;
      across += shared;
    }
  }
  return { x, y, waste: taken + x * across };
}

/** Heights worth trying: against the stock's edges, and against or level with the edges of the pieces at the front. */
function heights(front: Front, shape: Silhouette, room: Mm): Mm[] {
  const top = room - shape.height;
  const tries = new Set<Mm>([0, Math.max(0, top)]);
  front.forEach((step, i) => {
    if (i === 0 || step.piece === front[i - 1]!.piece) return;
    for (const y of [step.y0, step.y0 - shape.height]) if (y > 0 && y < top) tries.add(y);
  });
  return [...tries];
}

/** Spots of a shape that end no further right than `end`. @param room usable width, mm; a shape no more than rounding wider fits */
export function spots(front: Front, shape: Silhouette, end: Mm, room: Mm): Spot[] {
  if (shape.height > room + TOUCH || shape.width > end + TOUCH) return [];
  const limit = end + TOUCH - shape.width;
  return heights(front, shape, room).flatMap(y => slide(front, shape, y, limit) ?? []);
}

/** The steps a shape leaves at a spot, cut to the stock's width; of one height side by side are one. */
function stepsOf(shape: Silhouette, spot: Spot, piece: number, room: Mm): Step[] {
  const out: Step[] = [];
  for (const strip of shape.strips) {
    const y0 = Math.max(0, strip.y0 + spot.y);
    const y1 = Math.min(room, strip.y1 + spot.y);
    const x = spot.x + strip.right;
    const before = out.at(-1);
    if (before && before.x === x) out[out.length - 1] = { ...before, y1 };
    else if (y1 > y0) out.push({ y0, y1, x, piece });
  }
  return out;
}

/** The front after a shape was put at a spot. */
export function advance(front: Front, shape: Silhouette, spot: Spot, piece: number): Front {
  const laid = stepsOf(shape, spot, piece, front.at(-1)!.y1);
  const low = laid[0]!.y0;
  const high = laid.at(-1)!.y1;
  const below = front.findIndex(s => s.y1 > low);
  const above = front.findLastIndex(s => s.y0 < high);
  const first = front[below]!;
  const last = front[above]!;
  return [
    ...front.slice(0, below),
    ...(first.y0 < low ? [{ ...first, y1: low }] : []),
    ...laid,
    ...(last.y1 > high ? [{ ...last, y0: high }] : []),
    ...front.slice(above + 1),
  ];
}
