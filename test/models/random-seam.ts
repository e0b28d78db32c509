import type { Draw } from './random-plan.js';

/** Random seams for rims of helm wheels. A seam keeps to:
 * - what lies beside it (lap walls w apart at the angle a, the felloe's own middle) is at least as far as the joint's smallest size reaches:
 *   free length r tan(sweep / 2) and (r sin a - w / 2) / cos a at the rim's inner radius r
 * - dowels: 12 to 40 mm thick, holes to 27 mm deep; biscuits: bands of 76 and 88 mm for sizes 0 and 20, thickness 10 mm, walls 20 and 30 mm off, in
 *   layers loose felloes of 50 mm; keys: band 50 mm and more
 * - scarfs: halves of 3 mm, two thicknesses of overlap; in layers felloes of 14 thicknesses and 80 mm; by laser two layers with seams
 */

/** What a seam has to fit into; mm. */
export interface SeamRoom {
  readonly method: string;
  readonly felloes: number;
  readonly spokes: number;
  readonly inner: number;
  readonly band: number;
  /** wall to wall */
  readonly lap: number;
  /** of a layer */
  readonly thickness: number;
  readonly layers: number;
  /** layers that have seams */
  readonly seamed: number;
  /** whether laps are pockets in layers with seams */
  readonly pockets: boolean;
  /** routed on the rim's edges */
  readonly edge: number;
}

type Plain = Record<string, unknown>;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Angle between a seam midway between spokes and the nearest of them. */
const apartOf = ({ felloes, spokes }: SeamRoom): number => Math.PI / ((felloes / gcd(felloes, spokes)) * spokes);

function freeLength(r: SeamRoom): number {
  const middle = r.felloes > 2 ? r.inner * Math.tan(Math.PI / r.felloes) : Infinity;
  const apart = apartOf(r);
  return r.pockets ? Math.min(middle, (r.inner * Math.sin(apart) - r.lap / 2) / Math.cos(apart)) : middle;
}

/** Fingers the library makes of itself: about as wide as the felloe is thick, an odd number, three at least. */
function fingers({ band, thickness }: SeamRoom): number {
  const about = Math.floor(band / Math.max(thickness, 12));
  return Math.max(3, about % 2 === 1 ? about : about - 1);
}

/** The largest biscuit there is room for. */
function biscuitSize(r: SeamRoom): string | undefined {
  const free = freeLength(r);
  const loose = (2 * Math.PI * r.inner) / r.spokes - r.lap;
  if (r.layers > 1 && loose < 50) return undefined;
  if (r.band >= 88 + 2 * r.edge && r.thickness >= 10.1 && free > 30) return '20';
  return r.band >= 76 + 2 * r.edge && r.thickness >= 10.1 && free > 20 ? '0' : undefined;
}

function joints(r: SeamRoom): string[] {
  const free = freeLength(r);
  const mid = r.inner + r.band / 2;
  const sweep = (2 * Math.PI) / r.felloes;
  const beside = r.pockets ? 2 * (apartOf(r) - Math.asin(r.lap / 2 / r.inner) - 3.1 / r.inner) : Infinity;
  const widest = Math.min(0.8 * sweep, beside);
  const laser = r.method === 'laser';
  const biscuit = biscuitSize(r) !== undefined;
  const dowel = !laser && r.thickness >= 12 && r.thickness <= 25.4 && r.band >= 60 + 2 * r.edge && free > 36;
  const finger = free > 4 + (0.4 * r.band) / (fingers(r) - 1);
  const key = r.band >= 50 + 3 * r.edge && free > 7 + r.band / 6 && (laser ? r.layers > 1 : r.thickness >= 7);
  const long = r.layers === 1 || sweep * r.inner > Math.max(14 * r.thickness, 80);
  const scarf = laser ? r.seamed >= 2 : r.thickness >= 6.1 && (2.1 * r.thickness) / mid < widest && long;
  return [
    'butt',
    // few rims have room for these
    ...(biscuit ? ['biscuit', 'biscuit', 'biscuit'] : []),
    ...(dowel ? ['dowel', 'dowel', 'dowel'] : []),
    ...(finger ? ['finger'] : []),
    ...(key ? ['key'] : []),
    ...(scarf ? ['scarf'] : []),
  ];
}

/** A seam's keys; undefined where no seam fits between the spokes nor under them. */
export function randomSeam(d: Draw, r: SeamRoom): Plain | undefined {
  const under = r.spokes % r.felloes === 0;
  const wall = r.inner * Math.sin(apartOf(r)) - r.lap / 2;
  const beside = !r.pockets || wall >= 4;
  if (under && (!beside || d.chance(0.2))) {
    const fits = r.lap / 2 > 4 + (0.4 * r.band) / fingers(r);
    return { joint: fits ? d.one('butt', 'finger') : 'butt', at: 'under-spokes' };
  }
  if (!beside) return undefined;
  const joint = d.one(...joints(r));
  const count = joint === 'finger' && d.chance(0.3) ? { count: Math.max(2, fingers(r) - 1) } : {};
  const face = joint === 'key' && d.chance(0.3) ? { face: 'back' } : {};
  const size = joint === 'biscuit' ? { size: biscuitSize(r) } : {};
  return { joint, at: 'between-spokes', ...count, ...face, ...size };
}
