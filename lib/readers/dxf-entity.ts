import { refuse } from '../findings/unusable.js';
import type { ArcFit } from '../geometry/arc-spline.js';
import { arcsFromPoints } from '../geometry/curves.js';
import { arcsFromEllipse } from '../geometry/ellipse.js';
import { arcVertices, circle, type Polyline, type Vertex, vertex } from '../geometry/outline.js';
import { distance, type Point, polar } from '../geometry/point.js';
import { arcsFromSpline } from '../geometry/spline.js';
import type { Mm } from '../units/length.js';
import type { DxfEntity } from './dxf-groups.js';

/** The lines and arcs of one entity in the file's own units. */
export interface Drawn {
  readonly line: Polyline;
  readonly closed: boolean;
  readonly deviation: Mm;
}

/** An entity this reader leaves out, and why. */
export interface LeftOut {
  readonly because: string;
}

const RADIANS = Math.PI / 180;

/** Values of a group code, in order. */
const all = (e: DxfEntity, code: number): number[] => e.groups.filter(g => g.code === code).map(g => Number(g.value));

const has = (e: DxfEntity, code: number): boolean => e.groups.some(g => g.code === code);

/** A group's number, or what it is when left out. */
function number(e: DxfEntity, code: number, without?: number): number {
  const found = e.groups.find(g => g.code === code);
  const value = found ? Number(found.value) : without;
  return value !== undefined && Number.isFinite(value)
    ? value
    : refuse(`${described(e)}, group ${code}`, found?.value, 'a finite number');
}

/** Text of a group, or ''. */
export const text = (e: DxfEntity, code: number): string => String(e.groups.find(g => g.code === code)?.value ?? '');

/** What and where an entity is in its file. */
export const described = (e: DxfEntity): string =>
  `${e.type}${has(e, 5) ? ` ${text(e, 5)}` : ''} on layer ${text(e, 8) || '0'}`;

/** Points of a code and the code 10 above it, each x followed by its y. */
function points(e: DxfEntity, code: number): Point[] {
  const found: { x: number; y: number }[] = [];
  for (const g of e.groups) {
    if (g.code === code) found.push({ x: Number(g.value), y: 0 });
    else if (g.code === code + 10 && found.length > 0) found.at(-1)!.y = Number(g.value);
  }
  if (found.some(p => !Number.isFinite(p.x + p.y)))
    refuse(`${described(e)}, group ${code}`, 'not a number', 'finite coordinates');
  return found;
}

const point = (e: DxfEntity, code: number): Point =>
  points(e, code)[0] ?? refuse(`${described(e)}, group ${code}`, 'missing', 'a point');

const exact = (line: Polyline, closed: boolean): Drawn => ({ line, closed, deviation: 0 });
const fitted = (fit: ArcFit, closed: boolean): Drawn => ({
  line: closed ? fit.line.slice(0, -1) : fit.line,
  closed,
  deviation: fit.deviation,
});

const radius = (e: DxfEntity): Mm => {
  const r = number(e, 40);
  return r > 0 ? r : refuse(`${described(e)}, radius`, r, 'above 0');
};

function arc(e: DxfEntity): Drawn {
  const [center, r] = [point(e, 10), radius(e)];
  const start = number(e, 50);
  const turn = (((number(e, 51) - start) % 360) + 360) % 360;
  if (turn === 0) return exact(circle(r, center), true);
  const line = arcVertices(center, r, start * RADIANS, turn * RADIANS);
  return exact([...line, vertex(polar(r, (start + turn) * RADIANS, center))], false);
}

/** Bulges above 1 are arcs of more than a half circle: cut in the middle. */
function withinHalf(line: readonly Vertex[], closed: boolean): Vertex[] {
  return line.flatMap((v, i) => {
    const next = line[i + 1] ?? (closed ? line[0] : undefined);
    if (!next || Math.abs(v.bulge) <= 1) return [v];
    const middle = {
      x: (v.x + next.x + (next.y - v.y) * v.bulge) / 2,
      y: (v.y + next.y - (next.x - v.x) * v.bulge) / 2,
    };
    const bulge = Math.tan(Math.atan(v.bulge) / 2);
    return [vertex(v, bulge), vertex(middle, bulge)];
  });
}

/** Neighbours in one place are one vertex; of a closed line the last and first too. */
function cleaned(vertices: readonly Vertex[], closed: boolean): Drawn {
  const kept = vertices.filter((v, i) => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    return !next || next === v || distance(v, next) > 0;
  });
  return exact(withinHalf(kept, closed), closed);
}

function lwpolyline(e: DxfEntity): Drawn {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of e.groups) {
    if (code === 10) vertices.push({ x: Number(value), y: 0, bulge: 0 });
    else if (code === 20 && vertices.length > 0) vertices.at(-1)!.y = Number(value);
    else if (code === 42 && vertices.length > 0) vertices.at(-1)!.bulge = Number(value);
  }
  if (vertices.some(v => !Number.isFinite(v.x + v.y + v.bulge)))
    refuse(described(e), 'a vertex that is no number', 'finite vertices');
  return cleaned(vertices, (number(e, 70, 0) & 1) === 1);
}

/** Flags of POLYLINE (group 70): closed 1, polygon mesh 16, polyface mesh 64; of VERTEX: control point of a spline frame 16. */
function polyline(e: DxfEntity): Drawn | LeftOut {
  const flags = number(e, 70, 0);
  if ((flags & (16 | 64)) !== 0) return { because: 'a mesh' };
  const vertices = e.parts.filter(v => (number(v, 70, 0) & 16) === 0).map(v => vertex(point(v, 10), number(v, 42, 0)));
  return cleaned(vertices, (flags & 1) === 1);
}

function ellipse(e: DxfEntity, hand: 1 | -1, tolerance: Mm): Drawn {
  const [start, end] = [number(e, 41, 0), number(e, 42, 2 * Math.PI)];
  const turn = end > start ? end - start : end - start + 2 * Math.PI;
  const whole = turn > 2 * Math.PI - 1e-9;
  const form = {
    center: point(e, 10),
    axis: point(e, 11),
    ratio: hand * number(e, 40),
    start,
    sweep: whole ? 2 * Math.PI : turn,
  };
  return fitted(arcsFromEllipse(form, tolerance), whole);
}

function spline(e: DxfEntity, tolerance: Mm): Drawn | LeftOut {
  const [controls, fits] = [points(e, 10), points(e, 11)];
  if (controls.length > 0) {
    const weights = all(e, 41);
    const form = { degree: number(e, 71), controls, knots: all(e, 40), ...(weights.length > 0 ? { weights } : {}) };
    return fitted(arcsFromSpline(form, tolerance), false);
  }
  if (fits.length < 2) return { because: 'neither control nor fit points' };
  const meets = distance(fits[0]!, fits.at(-1)!) === 0;
  const closed = (number(e, 70, 0) & 1) === 1 || meets;
  return fitted(arcsFromPoints(meets ? fits.slice(0, -1) : fits, tolerance, { closed }), closed);
}

/** An entity of a DXF file as lines and true arcs in the file's own units and the world's frame, or why not.
 * `extruded` -1: drawn from behind (its normal is -z), so that x runs the other way in arcs and polylines, and ellipses turn clockwise.
 * @param tolerance in the file's units: for ellipses and splines
 * @throws Unusable naming the entity and group
 * Source: DXF reference, ENTITIES section. A spline by fit points alone is the reader's own smooth curve through them. */
export function drawnEntity(e: DxfEntity, tolerance: Mm): Drawn | LeftOut {
  const normal = [number(e, 210, 0), number(e, 220, 0), number(e, 230, 1)];
  const hand = normal[2]! < 0 ? -1 : 1;
  if (Math.hypot(normal[0]!, normal[1]!) > 1e-9 * Math.abs(normal[2]!))
    return { because: 'drawn in a plane other than x and y' };
  switch (e.type) {
    case 'LINE':
      return exact([vertex(point(e, 10)), vertex(point(e, 11))], false);
    case 'ELLIPSE':
      return ellipse(e, hand, tolerance);
    case 'SPLINE':
      return spline(e, tolerance);
    case 'ARC':
      return facing(arc(e), hand);
    case 'CIRCLE':
      return facing(exact(circle(radius(e), point(e, 10)), true), hand);
    case 'LWPOLYLINE':
      return facing(lwpolyline(e), hand);
    case 'POLYLINE':
      return facing(polyline(e), hand);
    default:
      return { because: 'not a line, arc or curve' };
  }
}

/** From an entity's own frame seen from behind to the world's: x to -x. Source: DXF reference, "Arbitrary Axis Algorithm". */
function facing(drawn: Drawn | LeftOut, hand: 1 | -1): Drawn | LeftOut {
  if (hand > 0 || 'because' in drawn) return drawn;
  return { ...drawn, line: drawn.line.map(v => vertex({ x: -v.x, y: v.y }, -v.bulge)) };
}
