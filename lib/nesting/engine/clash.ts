import type { Search } from './search.js';
import { HEAD, makePair, type Tables } from './tables.js';

/** What one pair of convex pieces counts beside a place looked at. */
const PAIR = 0.125;

/** How deep two poses overlap, the second lying at (vx, vy) from the first: summed over their convex pieces, the least way that parts
 * each pair; 0 if they do not overlap by more than a touch. */
export function depth(tables: Tables, first: number, second: number, vx: number, vy: number, touch: number): number {
  let at = tables.start[first * tables.count + second]!;
  if (at < 0) at = makePair(tables, first, second);
  const data = tables.data;
  let polygons = data[at++]!;
  let sum = 0;
  for (; polygons > 0; polygons--) {
    const edges = data[at]!;
    const next = at + HEAD + 3 * edges;
    if (vx > data[at + 1]! && vy > data[at + 2]! && vx < data[at + 3]! && vy < data[at + 4]!) {
      let most = -Infinity;
      for (let e = at + HEAD; e < next; e += 3) {
        const out = data[e]! * vx + data[e + 1]! * vy - data[e + 2]!;
        if (out > most) {
          most = out;
          if (out > -touch) break;
        }
      }
      if (most <= -touch) sum -= most;
    }
    at = next;
  }
  return sum;
}

/** Weighted overlap of shape i with all others of a bay if it lay at (x, y) in a pose; given up once it is past `bound`. */
export function clash(s: Search, i: number, pose: number, x: number, y: number, bay: number, bound: number): number {
  const right = x + s.tables.width[pose]!;
  const top = y + s.tables.height[pose]!;
  const { members, tables, touch } = s;
  const first = bay * s.count;
  const end = first + s.filled[bay]!;
  const row = i * s.count;
  let sum = 0;
  let work = 1;
  for (let k = first; k < end; k++) {
    const j = members[k]!;
    if (s.x[j]! >= right || s.right[j]! <= x || s.y[j]! >= top || s.top[j]! <= y || j === i) continue;
    work += PAIR * tables.pieces[pose]! * tables.pieces[s.pose[j]!]!;
    const d = depth(tables, pose, s.pose[j]!, s.x[j]! - x, s.y[j]! - y, touch);
    if (d > 0) {
      sum += s.weight[row + j]! * d;
      if (sum >= bound) break;
    }
  }
  s.meter.evaluations += work;
  return sum;
}

/** Whether a place is free: no shape of the bay is overlapped. */
export function isFree(s: Search, pose: number, x: number, y: number, bay: number): boolean {
  const right = x + s.tables.width[pose]!;
  const top = y + s.tables.height[pose]!;
  const first = bay * s.count;
  let work = 1;
  // the last laid first: it is the likeliest to be in the way
  for (let k = first + s.filled[bay]! - 1; k >= first; k--) {
    const j = s.members[k]!;
    if (s.x[j]! >= right || s.right[j]! <= x || s.y[j]! >= top || s.top[j]! <= y) continue;
    work += PAIR * s.tables.pieces[pose]! * s.tables.pieces[s.pose[j]!]!;
    if (depth(s.tables, pose, s.pose[j]!, s.x[j]! - x, s.y[j]! - y, s.touch) > 0) {
      s.meter.evaluations += work;
      return false;
    }
  }
  s.meter.evaluations += work;
  return true;
}
