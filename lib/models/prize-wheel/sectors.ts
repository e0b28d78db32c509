import type { Radians } from '../../units/length.js';
import type { SectorOptions } from '../prize-wheel-options.js';
import { relative } from '../seams.js';

// Sectors run clockwise from the one whose middle points up; angles from +y (up), anticlockwise.

const TURN = 2 * Math.PI;

/** The angle of every sector, in their order, a full turn in all to the last digit. */
export function sectorAngles(o: SectorOptions): Radians[] {
  if ('count' in o) return Array.from({ length: o.count }, () => TURN / o.count);
  const sum = o.angles.reduce((total, a) => total + a, 0);
  return o.angles.map(a => (a * TURN) / sum);
}

/** The lines between sectors: line i is where sector i begins. */
export function sectorLines(angles: readonly Radians[]): Radians[] {
  let at = (angles[0] ?? 0) / 2;
  return angles.map(a => {
    const line = at;
    at -= a;
    return line;
  });
}

/** The middle of every sector. */
export const sectorMiddles = (angles: readonly Radians[]): Radians[] =>
  sectorLines(angles).map((line, i) => line - (angles[i] ?? 0) / 2);

/** Where the number of a sector stands: the angle of its middle, and how far it may reach to either side. */
export interface NumberPlace {
  readonly number: number;
  readonly at: Radians;
  readonly half: Radians;
}

/** Places tried for a number, from its sector's middle, over the sector. */
const SHIFTS = [0, 0.2, -0.2, 0.27, -0.27];

/** A place for every number, off its sector's lines and off all seams: in the middle of the sector unless a seam leaves more room beside it. */
export function numberPlaces(angles: readonly Radians[], seams: readonly Radians[]): NumberPlace[] {
  return sectorMiddles(angles).map((middle, i) => {
    const places = SHIFTS.map((shift): NumberPlace => {
      const at = middle + shift * angles[i]!;
      const free = Math.min(Math.PI, ...seams.map(seam => Math.abs(relative(seam, at))));
      return { number: i + 1, at, half: Math.min(angles[i]! * (0.5 - Math.abs(shift)), free) };
    });
    return places.reduce((best, p) => (p.half > best.half + 1e-9 ? p : best));
  });
}
