import { requireRange } from '../findings/unusable.js';
import type { Mm } from '../units/length.js';
import { pointAlong, spin } from './along.js';
import type { Outline, Polyline, Region } from './outline.js';
import { add, type Point, subtract } from './point.js';
import { type ArcSegment, polylineSegments, type Segment, segments } from './segment.js';

/** Where the polygon may run: on the curve and either side of it, only outside the area, or only inside. */
export type Side = 'nearest' | 'outward' | 'inward';

/** An area bounded by straight edges: an anticlockwise polygon less clockwise ones. */
export interface FlatRegion {
  readonly outer: Point[];
  readonly openings: Point[][];
}

const FINEST: Mm = 1e-9;
const COARSEST: Mm = 1e4;
/** An arc that turns less than this is its chord: the sagitta is under a 1e-13 part of it. */
const FLAT = 1e-12;
/** However loose the tolerance, a chord spans no more than this: a circle keeps at least four corners and so an area. */
const WIDEST = Math.PI / 2;

/** The turn one chord may span: sagitta r(1 - cos(turn / 2)) <= tolerance, by the half angle so that small shares keep their digits. */
const chordTurn = (radius: Mm, tolerance: Mm): number =>
  4 * Math.asin(Math.sqrt(Math.min(1, tolerance / (2 * radius))));

/** The turn one pair of tangents may span: their corner stands r(1 / cos(turn / 2) - 1) <= tolerance off the circle. */
function tangentTurn(radius: Mm, tolerance: Mm): number {
  const share = tolerance / radius;
  return 2 * Math.atan(Math.sqrt(share * (2 + share)));
}

/** The arc's own points between its ends, `parts` chords. */
const chordPoints = (s: ArcSegment, parts: number): Point[] =>
  Array.from({ length: parts - 1 }, (_, i) => pointAlong(s, (i + 1) / parts));

/** Corners of the tangents at the ends of `parts` equal shares of the arc: a run that touches the circle from outside. */
function tangentPoints(s: ArcSegment, parts: number): Point[] {
  const chord = subtract(s.to, s.from);
  const step = s.sweep / parts;
  // tangent length over the chord's length: r tan(step / 2) with chord = 2 r sin(sweep / 2)
  const reach = Math.tan(step / 2) / (2 * Math.sin(s.sweep / 2));
  return Array.from({ length: parts }, (_, i) =>
    add(pointAlong(s, i / parts), spin(chord, step * i - s.sweep / 2, reach)),
  );
}

/** The points strictly between an edge's ends. */
function between(s: Segment, tolerance: Mm, side: Side): Point[] {
  if (s.kind === 'line' || Math.abs(s.sweep) < FLAT) return [];
  const parts = (turn: number): number => Math.max(1, Math.ceil(Math.abs(s.sweep) / Math.min(WIDEST, turn) - 1e-9));
  // chords cut to the side of the centre, tangents stand off on the other; the area is left of travel
  const hasCentreInside = s.sweep > 0;
  const byChords = side === 'nearest' || (side === 'inward') === hasCentreInside;
  return byChords
    ? chordPoints(s, parts(chordTurn(s.radius, tolerance)))
    : tangentPoints(s, parts(tangentTurn(s.radius, tolerance)));
}

const flattenEdges = (edges: readonly Segment[], tolerance: Mm, side: Side): Point[] => {
  requireRange('tolerance', tolerance, FINEST, COARSEST);
  return edges.flatMap(s => [{ x: s.from.x, y: s.from.y }, ...between(s, tolerance, side)]);
};

/** A closed outline as a polygon; every vertex of the outline stays a vertex, lines stay as they are.
 * - `nearest`: all vertices on the curve, sagitta at most the tolerance.
 * - `outward`: the polygon runs on the curve or to its right, no further than the tolerance, so that of an anticlockwise outline it
 *   contains the area, and of a clockwise one (an opening) it shrinks the hole.
 * - `inward`: on the curve or to its left, so that it lies inside the area.
 *
 * Arcs towards the kept side become chords, the others the tangents between equal shares.
 * Limits: where two edges pass each other closer than the tolerance the polygon may cross itself there; its winding number is then
 * still nowhere below the outline's (outward) or above it (inward), so the promise holds for the area of positive winding.
 * @param tolerance mm, 1e-9 to 10000
 * @returns the polygon's corners in the outline's direction, the first not repeated; of two half arcs at least four
 * @throws Unusable naming the tolerance
 * Source: sagitta of a circular segment, Machinery's Handbook, "Areas and dimensions of plane figures". */
export const flatten = (outline: Outline, tolerance: Mm, side: Side = 'nearest'): Point[] =>
  flattenEdges(segments(outline), tolerance, side);

/** A region as polygons: outward its openings shrink and its edge grows, so the polygons' area contains the region; inward the reverse.
 * Parameters, limits and errors as `flatten`. */
export const flattenRegion = (region: Region, tolerance: Mm, side: Side = 'nearest'): FlatRegion => ({
  outer: flatten(region.outer, tolerance, side),
  openings: region.openings.map(o => flatten(o, tolerance, side)),
});

/** An open run as straight pieces, corners on the curve, its end point included. Parameters and errors as `flatten`. */
export function flattenPolyline(line: Polyline, tolerance: Mm): Point[] {
  const last = line.at(-1);
  const points = flattenEdges(polylineSegments(line), tolerance, 'nearest');
  return last ? [...points, { x: last.x, y: last.y }] : points;
}
