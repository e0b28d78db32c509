import { movePoint, turning } from '../geometry/motion.js';
import { asCircle, type Outline } from '../geometry/outline.js';
import { distance, type Point } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import type { Form } from '../parts/form.js';
import type { Mm } from '../units/length.js';
import type { Solid } from './solids.js';

/** The line a round edge or a hole of a piece turns about, square to its faces. */
export interface Axis {
  readonly of: Solid;
  /** the way it runs: '' for every lying piece */
  readonly way: string;
  /** where, seen along it */
  readonly at: Point;
  /** what goes through it, 0 for an edge */
  readonly bore: Mm;
  readonly kind: AxisKind;
}

/** round: a circle, a bore, a piece of a ring; arc: the largest arc of any other outline; drill: a drilled hole, which may have nothing to do
 * with other pieces. */
export type AxisKind = 'round' | 'arc' | 'drill';

type Turned = Pick<Axis, 'at' | 'bore' | 'kind'>;

/** Arcs of two radii about one point nearer than this share it, mm. */
const SAME: Mm = 1e-6;

/** The centre two arcs of different radii share, as a piece of a ring has it; else that of the largest arc. */
function edgeOf(outline: Outline): Turned[] {
  const circle = asCircle(outline);
  if (circle) return [{ at: circle.center, bore: 0, kind: 'round' }];
  const arcs = segments(outline).filter(s => s.kind === 'arc');
  const ring = arcs.find(a =>
    arcs.some(b => Math.abs(a.radius - b.radius) > SAME && distance(a.center, b.center) < SAME),
  );
  if (ring) return [{ at: ring.center, bore: 0, kind: 'round' }];
  const largest = arcs.reduce((l, a) => (l && l.radius > a.radius ? l : a), arcs[0]);
  return largest ? [{ at: largest.center, bore: 0, kind: 'arc' }] : [];
}

function turned({ part: { region, features } }: Form): Turned[] {
  const holes = region.openings.flatMap(o => asCircle(o) ?? []);
  return [
    ...edgeOf(region.outer),
    ...holes.map((h): Turned => ({ at: h.center, bore: 2 * h.radius, kind: 'round' })),
    ...features.flatMap((f): Turned[] => (f.kind === 'drill' ? [{ at: f.at, bore: f.diameter, kind: 'drill' }] : [])),
  ];
}

/** Turns that differ by less are one. */
const DIGITS = 6;

/** A piece's frame seen along its axes: lying pieces from the front; standing ones from the side they look to, the same for those that look
 * the other way. */
function seen({ piece }: Solid): { readonly way: string; readonly place: (p: Point) => Point } {
  if (!piece.stands) return { way: '', place: p => movePoint(p, piece) };
  const half = ((piece.turn % Math.PI) + Math.PI) % Math.PI;
  const turn = Math.PI - half < 10 ** -DIGITS ? 0 : half;
  const sign = Math.cos(piece.turn - turn) < 0 ? -1 : 1;
  const { x } = movePoint(piece, turning(-turn));
  return { way: turn.toFixed(DIGITS), place: p => ({ x: x + sign * p.x, y: piece.z + p.y }) };
}

/** Every axis of every piece. */
export function axes(all: readonly Solid[]): Axis[] {
  const known = new Map<Form, Turned[]>();
  return all.flatMap(of => {
    const own = known.get(of.form) ?? turned(of.form);
    known.set(of.form, own);
    if (own.length === 0) return [];
    const { way, place } = seen(of);
    return own.map(t => ({ ...t, of, way, at: place(t.at) }));
  });
}

/** Two axes of different pieces that run the same way, and how far they are apart. */
export interface Beside {
  readonly a: Axis;
  readonly b: Axis;
  readonly off: Mm;
}

/** Axes of different pieces that run the same way and lie no farther apart than a distance. */
export function axesWithin(all: readonly Axis[], most: Mm): Beside[] {
  const sorted = [...all].sort((a, b) => a.at.x - b.at.x);
  return sorted.flatMap((a, i) => {
    const found: Beside[] = [];
    for (let k = i + 1; k < sorted.length && sorted[k]!.at.x - a.at.x <= most; k++) {
      const b = sorted[k]!;
      const off = distance(a.at, b.at);
      if (a.of !== b.of && a.way === b.way && off <= most) found.push({ a, b, off });
    }
    return found;
  });
}
