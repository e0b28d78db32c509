import { vertex } from '../geometry/outline.js';
import { type Point, polar } from '../geometry/point.js';
import type { Face, Part, Score } from '../parts/part.js';
import type { Mm, Radians } from '../units/length.js';

/** Where a router that rounds a rim's edges must stop before what crosses the rim; lengths mm. */
export interface RouterStops {
  readonly inner: Mm;
  readonly outer: Mm;
  /** from the middle line of what crosses to the mark */
  readonly off: Mm;
  /** angles of what crosses, in the piece's frame, from +y */
  readonly at: readonly Radians[];
  /** angle between the piece's ends, symmetric about +y */
  readonly sweep: Radians;
  readonly faces: readonly Face[];
}

/** The longest mark. */
const LONGEST: Mm = 12;

/** A rim piece with short marks on both its edges, parallel to what crosses it, on every face given. */
export function markStops(part: Part, s: RouterStops): Part {
  const { off } = s;
  const tick = Math.min(LONGEST, (s.outer - s.inner) / 4);
  const along = (radius: Mm): Mm => Math.sqrt(radius * radius - off * off);
  const runs: [Mm, Mm][] = [
    [along(s.inner), along(s.inner) + tick],
    [along(s.outer) - tick, along(s.outer)],
  ];
  const marks = s.at.flatMap(angle =>
    [-1, 1].flatMap(side =>
      runs.map(([a, b]): [Point, Point] => {
        const end = (x: Mm): Point => polar(Math.hypot(x, off), Math.PI / 2 + angle + side * Math.atan2(off, x));
        return [end(a), end(b)];
      }),
    ),
  );
  const inside = (p: Point): boolean => Math.abs(Math.atan2(-p.x, p.y)) < s.sweep / 2;
  const kept = marks.filter(m => m.every(inside));
  const scores = s.faces.flatMap(face =>
    kept.map((m): Score => ({ kind: 'score', face, line: m.map(p => vertex(p)) })),
  );
  return { ...part, features: [...part.features, ...scores] };
}
