import type { Mm, Radians } from '../units/length.js';
import { wrap } from './seams.js';

/** Lines a plug must not touch; angles in the wheel, lengths mm. */
export interface PlugObstacles {
  /** of the circle the plugs sit on */
  readonly radius: Mm;
  /** seams of the rim underneath */
  readonly seams: readonly Radians[];
  readonly spokes: readonly Radians[];
  /** from a spoke's centre line to the wall of its lap */
  readonly lapHalf: Mm;
  /** half the plug's diameter */
  readonly plug: Mm;
}

/** Wood between a plug's rim and a seam or a lap's wall; common practice, no source. */
const CLEAR: Mm = 1;
/** Wood between a plug's rim and the end of its segment, and between two plugs; common practice, no source. */
const FROM_END: Mm = 3;
/** Steps in which a plug is shifted along the circle. */
const STEP: Mm = 0.5;

const between = (a: Radians, b: Radians): Radians => Math.abs(wrap(a - b + Math.PI) - Math.PI);

/** Distance from a point of the circle to the line through the centre at an angle apart; far where it lies behind. */
const fromLine = (radius: Mm, apart: Radians): Mm => (apart < Math.PI / 2 ? radius * Math.sin(apart) : radius);

/** Whether a plug at an angle of the wheel touches neither a seam nor a lap's wall. */
function clearAt(angle: Radians, o: PlugObstacles): boolean {
  const need = o.plug + CLEAR;
  if (o.seams.some(s => fromLine(o.radius, between(angle, s)) < need)) return false;
  return o.spokes.every(s => Math.abs(fromLine(o.radius, between(angle, s)) - o.lapHalf) >= need);
}

/** Shifts to try, the smallest first, both ways. */
function shifts(most: Radians, step: Radians): Radians[] {
  const count = Math.max(0, Math.floor(most / step));
  return [0, ...Array.from({ length: count }, (_, i) => [(i + 1) * step, -(i + 1) * step]).flat()];
}

/** Angles of the plugs of these segments: pairs j and k-1-j shifted by equal and opposite amounts, the middle one of an odd number only
 * where it may be; undefined where one has no place in them all. */
function evenPlaces(
  middles: readonly Radians[],
  sweep: Radians,
  p: PlugPattern,
  o: PlugObstacles,
): Radians[] | undefined {
  const { each } = p;
  const most = sweep / each / 2 - (o.plug + FROM_END / 2) / o.radius;
  if (most < 0) return undefined;
  const fits = (a: Radians): boolean =>
    Math.abs(a) <= sweep / 2 - (o.plug + FROM_END) / o.radius && middles.every(m => clearAt(m + a, o));
  const places: Radians[] = [];
  for (let j = 0; j < Math.ceil(each / 2); j++) {
    const base = ((j + 0.5) / each - 0.5) * sweep;
    const middle = j === each - 1 - j;
    const tried = middle && !p.middleMoves ? [0] : shifts(most, STEP / o.radius);
    const shift = tried.find(d => fits(base + d) && (middle || fits(-base - d)));
    if (shift === undefined) return undefined;
    places[j] = base + shift;
    if (!middle) places[each - 1 - j] = -base - shift;
  }
  return places;
}

/** How many plugs a segment has, and whether the middle one of an odd number may leave the segment's middle. */
export interface PlugPattern {
  readonly each: number;
  readonly middleMoves: boolean;
}

/** Plug angles for every segment, from its middle: evenly spread at (j + 1/2) / k of the segment, pairs shifted symmetrically where
 * that touches a seam or a lap's wall. One arrangement for all segments where there is one, else one each; undefined where a
 * segment has none. */
export function placePlugs(
  middles: readonly Radians[],
  sweep: Radians,
  pattern: PlugPattern,
  o: PlugObstacles,
): (readonly Radians[])[] | undefined {
  if (pattern.each === 0) return middles.map(() => []);
  const common = evenPlaces(middles, sweep, pattern, o);
  if (common) return middles.map(() => common);
  const own = middles.map(m => evenPlaces([m], sweep, pattern, o));
  return own.every(p => p !== undefined) ? own : undefined;
}
