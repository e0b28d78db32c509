import type { Mm, Radians } from '../units/length.js';
import { turnFrom } from './biarc.js';
import type { Curve } from './curve.js';
import { distance, dot, type Point } from './point.js';

/** A curve's point with what an arc spline needs to know of it. */
export interface Station {
  readonly t: number;
  readonly at: Point;
  /** direction of travel, radians, running on past pi without a jump */
  readonly heading: Radians;
  /** mm along the curve from its start */
  readonly length: Mm;
}

/** Stations of a coarse table turn no more than this from one to the next. */
const TURN: Radians = 0.1;
const PIECES = 32;
/** A turn that makes a corner where it happens all at once. */
const SHARP: Radians = 1;
const DEEPEST = 30;
/** Far enough from a cusp to have a heading, near enough to be there. */
const STEP = 1e-7;
/** Stations to an arc of the length expected of it. */
const PER_ARC = 10;

/** The curve's heading; where it stands still (a cusp), that just past it. */
function headingAt(curve: Curve, t: number): Point {
  const h = curve.heading(t);
  return dot(h, h) > 0 ? h : curve.heading(t < 0.5 ? t + STEP : t - STEP);
}

/** Parameters so close that the curve turns little between them, save at a corner, which ends up between two points nearer than `near`. */
function coarse(curve: Curve, near: Mm): number[] {
  const found = [0];
  const split = (t0: number, t1: number, depth: number): void => {
    const t = (t0 + t1) / 2;
    const middle = curve.at(t);
    const small = distance(curve.at(t0), middle) + distance(middle, curve.at(t1)) < near;
    const bent = Math.max(
      Math.abs(turnFrom(headingAt(curve, t0), headingAt(curve, t))),
      Math.abs(turnFrom(headingAt(curve, t), headingAt(curve, t1))),
    );
    if (depth < DEEPEST && !small && bent > TURN / 2) {
      split(t0, t, depth + 1);
      split(t, t1, depth + 1);
    } else found.push(t1);
  };
  for (let i = 0; i < PIECES; i++) split(i / PIECES, (i + 1) / PIECES, 0);
  return found;
}

function stationsAt(curve: Curve, parameters: readonly number[]): Station[] {
  let length = 0;
  let before = { at: curve.at(0), heading: headingAt(curve, 0) };
  let heading = Math.atan2(before.heading.y, before.heading.x);
  return parameters.map(t => {
    const here = { at: curve.at(t), heading: headingAt(curve, t) };
    length += distance(before.at, here.at);
    heading += turnFrom(before.heading, here.heading);
    before = here;
    return { t, at: here.at, heading, length };
  });
}

/** How fast the curvature changes at each station, 1/mm²: the second difference of the heading over the length. */
export function curvatureSlopes(stations: readonly Station[]): number[] {
  const slope = (i: number): number => {
    const [a, b, c] = [stations[i - 1]!, stations[i]!, stations[i + 1]!];
    const [u, v] = [b.length - a.length, c.length - b.length];
    return u > 0 && v > 0 ? (2 * ((c.heading - b.heading) / v - (b.heading - a.heading) / u)) / (u + v) : 0;
  };
  const inner = stations.slice(2).map((_, i) => slope(i + 1));
  return [inner[0] ?? 0, ...inner, inner.at(-1) ?? 0];
}

/** Length of the arcs of a best spline where the curvature changes by `slope` a millimetre: see arc-spline.ts. */
export const arcLength = (slope: number, tolerance: Mm): Mm =>
  Math.cbrt((216 * tolerance) / (Math.sqrt(3) * Math.abs(slope)));

/** Stations so close together that ten or so fall on each arc of a spline within the tolerance. */
export function tabulate(curve: Curve, tolerance: Mm): Station[] {
  const rough = stationsAt(curve, coarse(curve, tolerance / 100));
  const slopes = curvatureSlopes(rough);
  const parameters = rough.slice(1).flatMap((b, i) => {
    const a = rough[i]!;
    const steep = Math.max(Math.abs(slopes[i]!), Math.abs(slopes[i + 1]!));
    const parts = Math.max(1, Math.ceil((PER_ARC * (b.length - a.length)) / arcLength(steep, tolerance)));
    return Array.from({ length: parts }, (_, k) => a.t + ((b.t - a.t) * (k + 1)) / parts);
  });
  return stationsAt(curve, [0, ...parameters]);
}

/** The last station within a corner that starts at station i: a radian's turn or more within a fiftieth of the tolerance. */
function cornerEnd(stations: readonly Station[], i: number, tolerance: Mm): number | undefined {
  const start = stations[i]!;
  let end: number | undefined;
  for (let j = i + 1; j < stations.length && stations[j]!.length - start.length <= tolerance / 50; j++)
    if (Math.abs(stations[j]!.heading - start.heading) > SHARP) end = j;
  return end;
}

/** The stations cut at the curve's corners, the little way a corner takes left out; one at an end of the curve is left out altogether.
 * Each run has at least two stations, no two in one place, and the first run starts and the last one ends with the curve. */
export function smoothRuns(stations: readonly Station[], tolerance: Mm): Station[][] {
  const runs: Station[][] = [[stations[0]!]];
  const last = stations.length - 1;
  for (let i = 0; i < last; ) {
    const here = stations[i]!;
    const run = runs.at(-1)!;
    const corner = cornerEnd(stations, i, tolerance);
    const next = stations[corner ?? i + 1]!;
    if (corner === last) run.push({ ...next, heading: here.heading });
    else if (corner === undefined) {
      if (next.length > run.at(-1)!.length) run.push(next);
    } else {
      const start = { ...run.at(-1)!, heading: next.heading };
      if (run.length > 1) runs.push([start]);
      else runs[runs.length - 1] = [start];
    }
    i = corner ?? i + 1;
  }
  return runs.filter(run => run.length > 1);
}
