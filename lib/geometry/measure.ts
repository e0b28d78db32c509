import type { Mm } from '../units/length.js';
import type { Outline, Polyline, Region } from './outline.js';
import type { Point } from './point.js';
import { type ArcSegment, polylineSegments, type Segment, segments } from './segment.js';

/** Integrals over an area, signed like the outline's turning: area, x, y, x², y² and xy, by Green's theorem. */
interface Moments {
  readonly area: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

const NONE: Moments = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };

const sum = (a: Moments, b: Moments): Moments => ({
  area: a.area + b.area,
  x: a.x + b.x,
  y: a.y + b.y,
  xx: a.xx + b.xx,
  yy: a.yy + b.yy,
  xy: a.xy + b.xy,
});

/** The triangle from the origin to a chord. Source: moments of a polygon by Green's theorem, e.g. Steger 1996. */
function triangleMoments(p: Point, q: Point): Moments {
  const c = p.x * q.y - q.x * p.y;
  return {
    area: c / 2,
    x: (c * (p.x + q.x)) / 6,
    y: (c * (p.y + q.y)) / 6,
    xx: (c * (p.x * p.x + p.x * q.x + q.x * q.x)) / 12,
    yy: (c * (p.y * p.y + p.y * q.y + q.y * q.y)) / 12,
    xy: (c * (2 * p.x * p.y + p.x * q.y + q.x * p.y + 2 * q.x * q.y)) / 24,
  };
}

/** s - sin s without cancellation for small s. */
function sineDefect(s: number): number {
  if (Math.abs(s) > 0.5) return s - Math.sin(s);
  let term = (s * s * s) / 6;
  let total = term;
  for (let k = 4; k < 24; k += 2) {
    term *= -(s * s) / (k * (k + 1));
    total += term;
  }
  return total;
}

/** The segment between an arc and its chord, signed by the sweep; in a frame along its bisector first, then turned and moved.
 * Source: circular segment, Machinery's Handbook, "Areas and dimensions of plane figures" (area, centroid); second moments by integration. */
function segmentMoments(s: ArcSegment): Moments {
  const { radius: r, sweep } = s;
  const half = sweep / 2;
  const sin = Math.sin(half);
  const area = (r * r * sineDefect(sweep)) / 2;
  const first = (2 / 3) * r * r * r * sin * sin * sin;
  const r4 = r * r * r * r;
  // along the bisector (uu) and across it (vv), about the circle's centre
  const uu = (r4 / 16) * sineDefect(2 * sweep);
  const vv = (r4 / 48) * (8 * sineDefect(sweep) - sineDefect(2 * sweep));
  const axis = s.start + half;
  const c = Math.cos(axis);
  const n = Math.sin(axis);
  const { x: cx, y: cy } = s.center;
  const mx = first * c;
  const my = first * n;
  return {
    area,
    x: mx + area * cx,
    y: my + area * cy,
    xx: uu * c * c + vv * n * n + 2 * cx * mx + area * cx * cx,
    yy: uu * n * n + vv * c * c + 2 * cy * my + area * cy * cy,
    xy: (uu - vv) * c * n + cx * my + cy * mx + area * cx * cy,
  };
}

const edgeMoments = (s: Segment): Moments =>
  s.kind === 'line' ? triangleMoments(s.from, s.to) : sum(triangleMoments(s.from, s.to), segmentMoments(s));

/** Moments about a near point, so that a small outline far from the origin keeps its digits, then moved to the origin. */
function outlineMoments(outline: Outline): Moments {
  const base = outline[0];
  if (!base) return NONE;
  const near = outline.map(v => ({ x: v.x - base.x, y: v.y - base.y, bulge: v.bulge }));
  const m = segments(near).reduce((t, s) => sum(t, edgeMoments(s)), NONE);
  return {
    area: m.area,
    x: m.x + base.x * m.area,
    y: m.y + base.y * m.area,
    xx: m.xx + 2 * base.x * m.x + base.x * base.x * m.area,
    yy: m.yy + 2 * base.y * m.y + base.y * base.y * m.area,
    xy: m.xy + base.x * m.y + base.y * m.x + base.x * base.y * m.area,
  };
}

const regionMoments = (region: Region): Moments =>
  [region.outer, ...region.openings].reduce((t, o) => sum(t, outlineMoments(o)), NONE);

/** Area of an outline, mm², positive when it runs anticlockwise; arcs by formula. */
export const signedArea = (outline: Outline): number => outlineMoments(outline).area;

/** Area of a region less its openings, mm². Directions are taken as they are: openings run clockwise (see `repair`). */
export const area = (region: Region): number => regionMoments(region).area;

/** Centroid of a region, mm. */
export function centroid(region: Region): Point {
  const m = regionMoments(region);
  return { x: m.x / m.area, y: m.y / m.area };
}

/** Second moments of area about the centroid, mm⁴: xx = integral of y² (bending about the x axis), yy of x², xy of x·y. */
export function secondMoments(region: Region): { readonly xx: number; readonly yy: number; readonly xy: number } {
  const m = regionMoments(region);
  return {
    xx: m.yy - (m.y * m.y) / m.area,
    yy: m.xx - (m.x * m.x) / m.area,
    xy: m.xy - (m.x * m.y) / m.area,
  };
}

/** Length of an edge, mm. */
export const segmentLength = (s: Segment): Mm =>
  s.kind === 'line' ? Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) : s.radius * Math.abs(s.sweep);

/** Length of a closed outline, mm. */
export const length = (outline: Outline): Mm => segments(outline).reduce((t, s) => t + segmentLength(s), 0);

/** Length of all outlines of a region, mm. */
export const perimeter = (region: Region): Mm => [region.outer, ...region.openings].reduce((t, o) => t + length(o), 0);

/** An upright box, mm. */
export interface Box {
  readonly minX: Mm;
  readonly minY: Mm;
  readonly maxX: Mm;
  readonly maxY: Mm;
}

const joinBoxes = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

/** Whether an angle lies on the arc; its ends count. */
function sweepsOver(s: ArcSegment, angle: number): boolean {
  const turn = 2 * Math.PI;
  const along = s.sweep > 0 ? angle - s.start : s.start - angle;
  return ((along % turn) + turn) % turn <= Math.abs(s.sweep);
}

/** The upright box of one edge, an arc's own extremes included. */
export function segmentBounds(s: Segment): Box {
  let { minX, minY, maxX, maxY } = {
    minX: Math.min(s.from.x, s.to.x),
    minY: Math.min(s.from.y, s.to.y),
    maxX: Math.max(s.from.x, s.to.x),
    maxY: Math.max(s.from.y, s.to.y),
  };
  if (s.kind === 'arc') {
    if (sweepsOver(s, 0)) maxX = Math.max(maxX, s.center.x + s.radius);
    if (sweepsOver(s, Math.PI / 2)) maxY = Math.max(maxY, s.center.y + s.radius);
    if (sweepsOver(s, Math.PI)) minX = Math.min(minX, s.center.x - s.radius);
    if (sweepsOver(s, -Math.PI / 2)) minY = Math.min(minY, s.center.y - s.radius);
  }
  return { minX, minY, maxX, maxY };
}

const NOWHERE: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** The upright box round an outline. */
export const bounds = (outline: Outline): Box => segments(outline).map(segmentBounds).reduce(joinBoxes, NOWHERE);

/** The upright box round an open run. */
export const polylineBounds = (line: Polyline): Box =>
  polylineSegments(line).map(segmentBounds).reduce(joinBoxes, NOWHERE);

/** The upright box round several; of none, a box turned inside out (min above max). */
export const boundsOfAll = (boxes: readonly Box[]): Box => boxes.reduce(joinBoxes, NOWHERE);
