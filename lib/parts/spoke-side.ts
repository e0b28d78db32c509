import { type Polyline, vertex } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import { halfWidthAt } from './handle.js';
import type { Part, Score } from './part.js';
import { mirrorClosed } from './spoke.js';

/** Both sides of a handle that is shaped twice; mm along the spoke from the wheel's centre, but edges from the rim on (see handleEdge). */
export interface TwoSides {
  /** where the spoke begins */
  readonly from: Mm;
  readonly rim: Mm;
  /** the handle's upper edge as seen on the face, half the spoke's width at its start */
  readonly face: Polyline;
  /** as seen from the side, half the spoke's thickness at its start */
  readonly side: Polyline;
  /** where the two views are lined up */
  readonly index: readonly Mm[];
}

const across = (x: Mm, half: Mm): Polyline => [vertex({ x, y: -half }), vertex({ x, y: half })];

/** A spoke along +x with the view a quarter turn about its axis, and index marks on it and on the spoke's back to line the two up. */
export function shapedOnBothSides(part: Part, o: TwoSides): Part {
  const [start, ...rest] = o.side;
  const edge = rest.map(v => vertex({ x: v.x + o.rim, y: v.y }, v.bulge));
  const outline = mirrorClosed([vertex({ x: o.from, y: start!.y }), ...edge]);
  const marks = o.index.map(
    (x): Score => ({ kind: 'score', face: 'back', line: across(x, halfWidthAt(o.face, x - o.rim)) }),
  );
  const side = { outline, marks: o.index.map(x => across(x, halfWidthAt(o.side, x - o.rim))) };
  return { ...part, side, features: [...part.features, ...marks] };
}
