import type { Finding } from '../../findings/finding.js';
import { type Radians, toDegrees } from '../../units/length.js';
import type { RingOptions } from '../ring-options.js';
import { layerSeams, lcm } from '../seams.js';

/** Rounding of angles, radians. */
const SAME: Radians = 1e-9;

/** Least angle between seams of neighbouring layers where the plan does not say, as a share of a felloe's; common practice, no source. */
const SHARE = 1 / 8;

/** Least angle allowed between seams of neighbouring layers. */
export const leastStagger = (o: RingOptions, sweep: Radians): Radians =>
  o.seam?.stagger ?? (o.offsets || scarfedByLayers(o) ? 0 : SHARE * sweep);

/** A laser scarfs a ring by staggering its layers over the overlap. */
const scarfedByLayers = (o: RingOptions): boolean => o.method === 'laser' && o.seam?.joint === 'scarf';

/** Angle between the nearest seams of two rings of seams a felloe apart. */
function apart(a: Radians, b: Radians, sweep: Radians): Radians {
  const off = Math.abs(a - b) % sweep;
  return Math.min(off, sweep - off);
}

/** Least angle between seams of neighbouring layers. */
export const staggerOf = (offsets: readonly Radians[], sweep: Radians): Radians =>
  offsets.slice(1).reduce((least, b, i) => Math.min(least, apart(offsets[i]!, b, sweep)), sweep / 2);

/** Ways to lay out the layers' seams: those that keep their distance to what crosses the ring first, the farthest apart last. */
function candidates(o: RingOptions, layers: number, first: Radians, sweep: Radians): Radians[][] {
  const turns = (by: Radians): Radians[] => Array.from({ length: layers }, (_, j) => first + (j % 2) * by);
  if (o.keep === undefined) return [turns(sweep / 2)];
  const steps = lcm(o.pieces, o.keep) / o.pieces;
  if (steps < 2) return [turns(sweep / 2)];
  return [
    layerSeams(layers, o.pieces, o.keep, first),
    turns(Math.floor(steps / 2) * (sweep / steps)),
    turns(sweep / 2),
  ];
}

/** First seam of every layer that has seams, back to front: the first way that keeps the least angle, else the one that is farthest apart. */
export function layerOffsets(o: RingOptions, layers: number, first: Radians, sweep: Radians): Radians[] {
  if (o.offsets) return o.offsets.slice(0, layers);
  if (scarfedByLayers(o)) {
    const by = Math.min(o.seam?.overlap ?? Infinity, sweep / 2);
    return Array.from({ length: layers }, (_, j) => first + (j % 2) * by);
  }
  const ways = candidates(o, layers, first, sweep);
  return ways.find(w => staggerOf(w, sweep) >= leastStagger(o, sweep) - SAME) ?? ways.at(-1)!;
}

/** A stop where seams of neighbouring layers cannot keep the angle the plan asks for. */
export function staggerFindings(o: RingOptions, offsets: readonly Radians[], sweep: Radians): Finding[] {
  const least = leastStagger(o, sweep);
  const found = staggerOf(offsets, sweep);
  if (offsets.length < 2 || found >= least - SAME) return [];
  const deg = (a: Radians): number => Number(toDegrees(a).toFixed(3));
  return [
    {
      level: 'stop',
      rule: 'seam-stagger',
      where: `${o.field}.seam.stagger`,
      message: `${o.field}.seam.stagger is ${deg(least)} deg; seams of neighbouring layers come within ${deg(found)} deg; allowed: at most ${deg(sweep / 2)} deg, half a felloe`,
      value: deg(least),
      limit: deg(sweep / 2),
    },
  ];
}
