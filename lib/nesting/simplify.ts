import type { Point } from '../geometry/point.js';
import { type Ring, turnOf } from './engine/polygon.js';

/** Whether p lies in the triangle a, b, c (clockwise), its edges included. */
const inTriangle = (p: Point, a: Point, b: Point, c: Point): boolean =>
  turnOf(a, b, p) <= 0 && turnOf(b, c, p) <= 0 && turnOf(c, a, p) <= 0;

/** Fills shallow hollows: corners that turn right are left out, the least first, as long as the area gained is within an allowance. The
 * result holds all of the polygon. @param ring runs with its area to the left: an outer one anticlockwise, an opening clockwise
 * @param allowance area that may be gained in all */
export function fillHollows(ring: Ring, allowance: number): Ring {
  const run = [...ring];
  let left = allowance;
  while (run.length > 3) {
    let best = -1;
    let least = left;
    run.forEach((b, k) => {
      const a = run[(k + run.length - 1) % run.length]!;
      const c = run[(k + 1) % run.length]!;
      const gained = -turnOf(a, b, c) / 2;
      if (gained < 0 || gained > least) return;
      if (run.some(p => p !== a && p !== b && p !== c && inTriangle(p, a, b, c))) return;
      best = k;
      least = gained;
    });
    if (best < 0) return run;
    left -= least;
    run.splice(best, 1);
  }
  return run;
}
