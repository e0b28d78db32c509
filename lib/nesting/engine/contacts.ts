import type { Search } from './search.js';
import { HEAD, makePair } from './tables.js';

/** The overlaps of one shape at one place: for each the direction that parts them soonest, how far, and what it weighs. */
export interface Contacts {
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly depth: Float64Array;
  readonly cost: Float64Array;
  count: number;
}

/** More overlaps at once than these are left out, the first found being kept. */
const MOST = 48;

export const contactList = (): Contacts => ({
  nx: new Float64Array(MOST),
  ny: new Float64Array(MOST),
  depth: new Float64Array(MOST),
  cost: new Float64Array(MOST),
  count: 0,
});

/** Fills the list with the overlaps shape i would have at a place: moved by -depth along the normal, it would just touch. */
export function findContacts(s: Search, c: Contacts, i: number, pose: number, x: number, y: number, bay: number): void {
  const right = x + s.tables.width[pose]!;
  const top = y + s.tables.height[pose]!;
  const first = bay * s.count;
  const end = first + s.filled[bay]!;
  c.count = 0;
  for (let k = first; k < end; k++) {
    const j = s.members[k]!;
    if (j === i || s.x[j]! >= right || s.right[j]! <= x || s.y[j]! >= top || s.top[j]! <= y) continue;
    addContacts(s, c, pose, s.pose[j]!, s.x[j]! - x, s.y[j]! - y, s.weight[i * s.count + j]!);
  }
}

function addContacts(
  s: Search,
  c: Contacts,
  pose: number,
  other: number,
  vx: number,
  vy: number,
  weight: number,
): void {
  const { tables, touch } = s;
  let at = tables.start[pose * tables.count + other]!;
  if (at < 0) at = makePair(tables, pose, other);
  const data = tables.data;
  let polygons = data[at++]!;
  for (; polygons > 0; polygons--) {
    const next = at + HEAD + 3 * data[at]!;
    if (vx > data[at + 1]! && vy > data[at + 2]! && vx < data[at + 3]! && vy < data[at + 4]!) {
      let most = -Infinity;
      let edge = at;
      for (let e = at + HEAD; e < next; e += 3) {
        const out = data[e]! * vx + data[e + 1]! * vy - data[e + 2]!;
        if (out > most) {
          most = out;
          edge = e;
          if (out > -touch) break;
        }
      }
      if (most <= -touch && c.count < MOST) {
        c.nx[c.count] = data[edge]!;
        c.ny[c.count] = data[edge + 1]!;
        c.depth[c.count] = -most;
        c.cost[c.count] = -most * weight;
        c.count++;
      }
    }
    at = next;
  }
}

/** Brings the costliest contacts to the front, at most `many`. */
export function costliestFirst(c: Contacts, many: number): void {
  for (let a = 0; a < many && a < c.count; a++) {
    let best = a;
    for (let b = a + 1; b < c.count; b++) if (c.cost[b]! > c.cost[best]!) best = b;
    if (best !== a) {
      swap(c.nx, a, best);
      swap(c.ny, a, best);
      swap(c.depth, a, best);
      swap(c.cost, a, best);
    }
  }
}

function swap(list: Float64Array, a: number, b: number): void {
  const kept = list[a]!;
  list[a] = list[b]!;
  list[b] = kept;
}
