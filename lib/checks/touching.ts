import { movePoint } from '../geometry/motion.js';
import { type Point, subtract } from '../geometry/point.js';
import { pointOn, segments } from '../geometry/segment.js';
import { facingAt, gapsBetween } from '../models/facing.js';
import { apart, overlapOf } from '../models/overlap.js';
import { placingFrom } from '../models/placing.js';
import { holds, near, type Solid } from '../models/solids.js';
import { unlessFailed } from '../models/unless-failed.js';
import type { Mm } from '../units/length.js';
import { WITHIN } from './nearness.js';

/** How far pieces are pressed together beyond their fit, mm. */
const PRESS: Mm = 0.05;
/** How far inside an edge its piece is looked at, mm. */
const INSIDE: Mm = 1;

/** Heights at which one piece may lie on the other, within a fit. */
const seatsOf = (a: Solid, b: Solid, fit: Mm): ReturnType<typeof gapsBetween> =>
  near(a, b, fit + WITHIN) ? gapsBetween(a.form, b.form, b.piece.z - a.piece.z, -WITHIN, fit + WITHIN) : [];

/** Places just inside the edges of a piece's outline, seen from the front. */
function rimPlaces({ form, piece }: Solid): Point[] {
  if (form.stands) return [];
  return segments(form.part.region.outer).map(s => {
    const at = pointOn(s, 0.5);
    const chord = subtract(s.to, s.from);
    const by = INSIDE / Math.hypot(chord.x, chord.y);
    return movePoint({ x: at.x - by * chord.y, y: at.y + by * chord.x }, piece);
  });
}

/** Whether one piece plainly lies on the other: there is wood of both at the middle of an edge of the smaller. */
export function liesPlainlyOn(a: Solid, b: Solid, fit: Mm): boolean {
  const heights = seatsOf(a, b, fit);
  if (heights.length === 0) return false;
  const by = WITHIN + fit;
  return rimPlaces(a.radius < b.radius ? a : b).some(p =>
    heights.some(
      ({ low, high }) => holds(a, { ...p, z: a.piece.z + low - by }) && holds(b, { ...p, z: b.piece.z + high + by }),
    ),
  );
}

/** The same, wherever they touch. */
export function liesOn(a: Solid, b: Solid, fit: Mm): boolean {
  const heights = seatsOf(a, b, fit);
  if (heights.length === 0) return false;
  const at = placingFrom(a.piece, b.piece);
  return heights.some(({ low, high }) => unlessFailed(() => facingAt(a.form, b.form, at, low, high)) !== undefined);
}

/** The four ways pieces are pressed to see whether their edges touch. */
const WAYS = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];

/** Whether two pieces touch edge to edge: pressed together a little beyond their fit they take the same room. */
export function meetsEdge(a: Solid, b: Solid, fit: Mm): boolean {
  const by = fit + PRESS;
  if (!near(a, b, by)) return false;
  const at = placingFrom(a.piece, b.piece);
  return WAYS.some(w => {
    const pressed = { ...at, x: at.x + by * w.x, y: at.y + by * w.y };
    return !apart(a.form, b.form, pressed) && unlessFailed(() => overlapOf(a.form, b.form, pressed, 0)) !== undefined;
  });
}
