import { clash } from './clash.js';
import { type Contacts, costliestFirst, findContacts } from './contacts.js';
import type { Search } from './search.js';
import type { Spot } from './spot.js';

/** Contacts looked at in pairs. */
const PAIRED = 3;
const MOST_PUSHES = 12;

const within = (v: number, low: number, high: number): number => Math.max(low, Math.min(v, high));

/** Takes a spot if it is cheaper. @returns whether it was */
function trySpot(s: Search, i: number, spot: Spot, x: number, y: number): boolean {
  const bay = s.bays[spot.bay]!;
  const px = within(x, bay.x, bay.x + bay.width - s.tables.width[spot.pose]!);
  const py = within(y, bay.y, bay.y + bay.height - s.tables.height[spot.pose]!);
  if (px === spot.x && py === spot.y) return false;
  const cost = clash(s, i, spot.pose, px, py, spot.bay, spot.cost);
  if (cost >= spot.cost) return false;
  spot.x = px;
  spot.y = py;
  spot.cost = cost;
  return true;
}

/** Pushes a shape out of what it overlaps: out of one neighbour, or into the corner where it touches two, as long as that helps.
 * A least overlap lies at such a corner, so it is met exactly. */
export function pushOut(s: Search, c: Contacts, i: number, spot: Spot): void {
  for (let step = 0; step < MOST_PUSHES && spot.cost > 0; step++) {
    findContacts(s, c, i, spot.pose, spot.x, spot.y, spot.bay);
    if (c.count === 0) return;
    costliestFirst(c, PAIRED);
    const { x, y } = spot;
    const many = Math.min(PAIRED, c.count);
    let better = false;
    for (let a = 0; a < many; a++) {
      const ax = c.nx[a]!;
      const ay = c.ny[a]!;
      const da = c.depth[a]!;
      if (trySpot(s, i, spot, x - ax * da, y - ay * da)) better = true;
      for (let b = a + 1; b < many; b++) {
        const det = ax * c.ny[b]! - ay * c.nx[b]!;
        if (Math.abs(det) < 1e-3) continue;
        const mx = (-da * c.ny[b]! + c.depth[b]! * ay) / det;
        const my = (-c.depth[b]! * ax + da * c.nx[b]!) / det;
        if (trySpot(s, i, spot, x + mx, y + my)) better = true;
      }
    }
    if (!better) return;
  }
}

/** Looks around a spot in ever smaller steps, along both axes and both diagonals. Lengths: the first and the last step. */
export function lookAround(s: Search, i: number, spot: Spot, first: number, last: number): void {
  for (let step = first; step >= last && spot.cost > 0; step *= 0.5) {
    const axis = s.random() * 4;
    const dx = axis < 2 ? (axis < 1 ? step : 0) : step * Math.SQRT1_2;
    const dy = axis < 1 ? 0 : axis < 2 ? step : axis < 3 ? step * Math.SQRT1_2 : -step * Math.SQRT1_2;
    const { x, y } = spot;
    const moved =
      trySpot(s, i, spot, x + dx, y + dy) ||
      trySpot(s, i, spot, x - dx, y - dy) ||
      trySpot(s, i, spot, x + dy, y - dx) ||
      trySpot(s, i, spot, x - dy, y + dx);
    if (moved) step *= 2.2;
  }
}
