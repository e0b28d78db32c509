import type { Radians } from '../units/length.js';
import { add, type Point, scale, subtract } from './point.js';
import type { Segment } from './segment.js';

/** A vector turned anticlockwise and stretched. */
export function spin(v: Point, turn: Radians, by = 1): Point {
  const c = Math.cos(turn) * by;
  const s = Math.sin(turn) * by;
  return { x: c * v.x - s * v.y, y: s * v.x + c * v.y };
}

const chordOf = (s: Segment): Point => subtract(s.to, s.from);
const unit = (v: Point): Point => scale(v, 1 / Math.hypot(v.x, v.y));

/** Unit vector of travel where an edge starts. */
export const startDirection = (s: Segment): Point => unit(spin(chordOf(s), s.kind === 'arc' ? -s.sweep / 2 : 0));

/** Unit vector of travel where an edge ends. */
export const endDirection = (s: Segment): Point => unit(spin(chordOf(s), s.kind === 'arc' ? s.sweep / 2 : 0));

/** Signed curvature, 1/mm: positive where an edge turns left. */
export const curvature = (s: Segment): number => (s.kind === 'arc' ? Math.sign(s.sweep) / s.radius : 0);

/** The point a share 0..1 of the way along an edge, its ends exactly; an arc's is reached from its chord, so that a flat arc's far centre
 * costs no digits. */
export function pointAlong(s: Segment, share: number): Point {
  if (share <= 0) return s.from;
  if (share >= 1) return s.to;
  if (s.kind === 'line') return add(s.from, scale(chordOf(s), share));
  const turn = s.sweep * share;
  return add(s.from, spin(chordOf(s), (turn - s.sweep) / 2, Math.sin(turn / 2) / Math.sin(s.sweep / 2)));
}
