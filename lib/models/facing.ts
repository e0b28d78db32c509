import { intersection } from '../geometry/boolean.js';
import { encloses } from '../geometry/locate.js';
import { area, centroid, perimeter } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import type { Region } from '../geometry/outline.js';
import { type Point, subtract } from '../geometry/point.js';
import { pointOn, segments } from '../geometry/segment.js';
import { flatsAt } from '../parts/flats.js';
import type { Form } from '../parts/form.js';
import type { Mm } from '../units/length.js';
import type { Placing } from './overlap.js';

/** A flat face of one form and one of another that look at each other. Heights and places as the first one sees them. */
export interface Facing {
  /** how far the second's face lies over the first's, mm */
  readonly gap: Mm;
  /** height of the first's face */
  readonly height: Mm;
  /** what lies over each other, mm² */
  readonly area: number;
  /** in its largest stretch, in the middle unless that is hollow */
  readonly at: Point;
}

/** Stretches narrower than this are a joint's clearance seen from above. */
const STRIP: Mm = 0.5;

/** Heights of breaks, the second form's over the first's, whose gap is in a range. */
export const gapsBetween = (
  a: Form,
  b: Form,
  rise: Mm,
  least: Mm,
  most: Mm,
): { readonly low: Mm; readonly high: Mm }[] =>
  a.breaks.flatMap(low =>
    b.breaks.flatMap(high => (high + rise - low >= least && high + rise - low <= most ? [{ low, high }] : [])),
  );

const wide = (region: Region): boolean => (2 * area(region)) / perimeter(region) > STRIP;

/** A point of a region: its centroid, or beside the middle of an edge where that lies in a hollow of it. */
function pointOf(region: Region): Point {
  const middle = centroid(region);
  if (encloses(region.outer, middle) && !region.openings.some(o => encloses(o, middle))) return middle;
  const [edge] = segments(region.outer);
  const [at, chord] = [pointOn(edge!, 0.5), subtract(edge!.to, edge!.from)];
  const by = STRIP / 2 / Math.hypot(chord.x, chord.y);
  return { x: at.x - by * chord.y, y: at.y + by * chord.x };
}

/** Where a break of a form looks up at a break of a second one that looks down. @throws GeometryFailure */
export function facingAt(a: Form, b: Form, at: Placing, low: Mm, high: Mm): Facing | undefined {
  const up = flatsAt(a, low, 'up');
  const down = up.length > 0 ? flatsAt(b, high, 'down') : [];
  if (down.length === 0) return undefined;
  const common = intersection(
    up,
    down.map(r => moveRegion(r, at)),
  ).filter(wide);
  const [largest] = [...common].sort((p, q) => area(q) - area(p));
  if (!largest) return undefined;
  const total = common.reduce((sum, r) => sum + area(r), 0);
  return { gap: high + at.rise - low, height: low, area: total, at: pointOf(largest) };
}
