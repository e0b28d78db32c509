import { cross, type Point, subtract } from '../geometry/point.js';
import type { SolidSlab } from './solid.js';
import { type Seen, seenPoints } from './view.js';

/** A stretch of a slab's wall that is seen, without a sharp corner in it: its lower and its upper edge on the picture. */
export interface Wall {
  readonly bottom: readonly Point[];
  readonly top: readonly Point[];
  /** how near to the one who looks it comes */
  readonly near: number;
  /** how bright it is, about 1 */
  readonly light: number;
}

/** Two neighbouring edges that turn by more than this, radians, meet in a corner that is drawn. */
const SHARP = 0.45;
/** A wall whose edge shows less than this many mm² is seen from its edge. */
const EDGE_ON = 1e-3;

/** Light from the upper left: how bright a wall over an edge is, by its normal. */
function brightness({ view }: Seen, from: Point, to: Point): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [x, y] = [(to.y - from.y) / length, (from.x - to.x) / length];
  const right = x * view.right.x + y * view.right.y;
  const up = x * view.up.x + y * view.up.y;
  const towards = x * view.towards.x + y * view.towards.y;
  return 0.87 + 0.15 * (0.6 * up + 0.58 * towards - 0.55 * right) - 0.1 * Math.max(0, right);
}

/** Whether two edges in a row meet in a sharp corner. */
function sharp(a: Point, b: Point, c: Point): boolean {
  const [u, v] = [subtract(b, a), subtract(c, b)];
  return Math.abs(Math.atan2(cross(u, v), u.x * v.x + u.y * v.y)) > SHARP;
}

/** Stretches of edges that are seen, each as its first edge and how many there are; none runs round a sharp corner. */
function stretches(seen: readonly boolean[], corners: readonly Point[]): (readonly [first: number, count: number])[] {
  const n = seen.length;
  // begin behind a gap, so that no stretch is cut where the polygon begins
  const start = seen.findIndex((s, i) => s && !seen[(i + n - 1) % n]);
  if (start < 0) return seen[0] ? [[0, n]] : [];
  const out: [number, number][] = [];
  for (let k = 0; k < n; k += 1) {
    const i = (start + k) % n;
    if (!seen[i]) continue;
    const last = out.at(-1);
    const follows = last && (last[0] + last[1]) % n === i;
    if (follows && !sharp(corners[(i + n - 1) % n]!, corners[i]!, corners[(i + 1) % n]!)) last[1] += 1;
    else out.push([i, 1]);
  }
  return out;
}

/** The walls of a slab that are seen, the farthest first. */
export function seenWalls(slab: SolidSlab, seen: Seen): Wall[] {
  const { towards } = seen.view;
  const walls = slab.bottom.flatMap((corners, k) => {
    const n = corners.length;
    const low = seenPoints(seen, corners, slab.low);
    const high = seenPoints(seen, slab.top[k]!, slab.high);
    const facing = low.map((p, i) => {
      const j = (i + 1) % n;
      return cross(subtract(high[j]!, p), subtract(high[i]!, low[j]!)) > EDGE_ON;
    });
    return stretches(facing, corners).map(([first, count]): Wall => {
      const run = Array.from({ length: count + 1 }, (_, i) => (first + i) % n);
      const along = run.map(i => corners[i]!);
      return {
        bottom: run.map(i => low[i]!),
        top: run.map(i => high[i]!),
        near: Math.max(...along.map(p => p.x * towards.x + p.y * towards.y)),
        light: brightness(seen, along[0]!, along.at(-1)!),
      };
    });
  });
  return walls.sort((a, b) => a.near - b.near);
}
