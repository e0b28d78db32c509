import type { Mm } from '../units/length.js';
import type { Silhouette, Strip } from './silhouette.js';

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

/** Calls back with each pair of a strip (its shape moved up by y) and a step that face each other. */
function facing(
  front: Front,
  strips: readonly Strip[],
  y: Mm,
  see: (step: Step, strip: Strip, shared: Mm) => void,
): void {
  let k = stepAt(front, y);
  for (const strip of strips) {
    const low = strip.y0 + y;
    const high = strip.y1 + y;
    while (k < front.length - 1 && front[k]!.y1 <= low + TOUCH) k += 1;
    for (let j = k; j < front.length && front[j]!.y0 < high - TOUCH; j += 1) {
      const step = front[j]!;
      const shared = Math.min(high, step.y1) - Math.max(low, step.y0);
      if (shared > TOUCH) see(step, strip, shared);
    }
  }
}

/** How far left a shape slides at a height, and what it shuts in. */
function slide(front: Front, shape: Silhouette, y: Mm): Spot {
  let x = 0;
  let taken = 0;
  let across = 0;
  facing(front, shape.strips, y, (step, strip, shared) => {
    x = Math.max(x, step.x - strip.left);
    taken += (strip.left - step.x) * shared;
    across += shared;
  });
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

/** Every spot of a shape that ends within the stock's usable length. @param room usable width, mm; a shape no more than rounding wider fits */
export function spots(front: Front, shape: Silhouette, length: Mm, room: Mm): Spot[] {
  if (shape.height > room + TOUCH || shape.width > length + TOUCH) return [];
  return heights(front, shape, room)
    .map(y => slide(front, shape, y))
    .filter(s => s.x + shape.width <= length + TOUCH);
}

/** Steps alike and from the same piece become one. */
function push(out: Step[], step: Step): void {
  const before = out.at(-1);
  if (step.y1 - step.y0 <= 0) return;
  if (before && before.piece === step.piece && before.x === step.x) out[out.length - 1] = { ...before, y1: step.y1 };
  else out.push(step);
}

/** The front after a shape was put at a spot. */
export function advance(front: Front, shape: Silhouette, spot: Spot, piece: number): Front {
  const room = front.at(-1)!.y1;
  const low = Math.max(0, spot.y);
  const high = Math.min(room, spot.y + shape.height);
  const out: Step[] = [];
  for (const step of front) if (step.y0 < low) push(out, { ...step, y1: Math.min(step.y1, low) });
  for (const s of shape.strips) {
    const y0 = Math.max(low, s.y0 + spot.y);
    const y1 = Math.min(high, s.y1 + spot.y);
    push(out, { y0, y1, x: spot.x + s.right, piece });
  }
  for (const step of front) if (step.y1 > high) push(out, { ...step, y0: Math.max(step.y0, high) });
  return out;
}
