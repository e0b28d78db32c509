import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { Manner } from './front-view.js';
import type { PictureGroup } from './picture.js';
import type { Placed } from './placed.js';
import { solidOf, solidShapes } from './solid-shapes.js';
import { dot3, FROM_RIGHT, inProp, type View } from './view.js';

/** Arcs stray by this share of the prop's half size: less than a line is wide. */
export const STRAY = 1 / 1200;

/** How near to the one who looks a piece comes. */
function nearest(p: Placed, view: View): Mm {
  const place = inProp(p.piece);
  const corners = p.part.region.outer.flatMap(v => [place(v, 0), place(v, p.part.thickness)]);
  return Math.max(...corners.map(c => dot3(c, view.towards)));
}

/** A prop from its right side, its front to the left: whole pieces as they are seen, the nearer over the farther.
 * @param at where the prop's origin is drawn; heights run to the left of it */
export function sideView(pieces: readonly Placed[], manner: Manner, at: Point): PictureGroup {
  const solids = new Map([...new Set(pieces.map(p => p.part))].map(p => [p, solidOf(p, manner.unit * STRAY)]));
  const ordered = pieces
    .map(p => ({ p, near: nearest(p, FROM_RIGHT) }))
    .sort((a, b) => (Math.abs(a.near - b.near) < 1e-6 ? 0 : a.near - b.near));
  const shapes = ordered.flatMap(({ p }) => {
    const place = inProp(p.piece);
    const moved = (q: Point, height: Mm) => {
      const spot = place(q, height);
      return { ...spot, y: spot.y + at.y, z: spot.z - at.x };
    };
    const tone = manner.tones(p.part);
    return solidShapes(solids.get(p.part)!, { view: FROM_RIGHT, place: moved, tone, line: manner.unit / 450 });
  });
  return { name: 'side', shapes };
}

/** Whether a prop is so deep that its front alone does not show it: pieces stand in it, or it is deeper than an eighth of its size. */
export const isDeep = (pieces: readonly Placed[], depth: Mm, unit: Mm): boolean =>
  pieces.some(p => p.piece.stands) || depth > unit / 4;
