import type { AccentPlaces } from '../accents.js';
import { type Fixings, washerRadius } from './fixings.js';
import { boreRadius, type ReelSizes, reelHeight } from './sizes.js';

/** Accents go on the front flange: a ring between the bore and what stands on the flange, a name band outside the washers of a flange
 * of segments; battens leave it no room on planks. */
export function reelPlaces(s: ReelSizes, fixed: Fixings): AccentPlaces {
  const front = reelHeight(s);
  const washer = washerRadius(s);
  const battens = fixed.battens.map(x => Math.abs(x) - (s.battens?.width ?? 0) / 2);
  const radius = Math.min(fixed.rods.radius - washer, ...battens);
  const hole = boreRadius(s);
  const inner = fixed.rods.radius + washer;
  return {
    ...(radius > hole && { hub: { radius, hole, front } }),
    ...(s.battens === undefined && inner < s.flange.radius && { rim: { inner, outer: s.flange.radius, front } }),
  };
}
