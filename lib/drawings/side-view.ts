import { bounds, boundsOfAll } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import type { Manner } from './front-view.js';
import type { PictureGroup } from './picture.js';
import type { Placed } from './placed.js';
import type { SlabsOf } from './slabs.js';
import { solidOf } from './solid.js';
import { solidShapes } from './solid-shapes.js';
import { FROM_RIGHT, seenPiece } from './view.js';

/** Arcs stray by this share of the prop's half size: less than a line is wide. */
const STRAY = 1 / 1200;

/** How far to the right, towards the one who looks, a piece reaches. */
const nearest = (p: Placed): Mm => boundsOfAll(p.outlines.map(bounds)).maxX;

/** A prop from its right side, its front to the left: whole pieces as they are seen, the nearer over the farther.
 * @param slabs of the pieces' parts   @param at where the prop's origin is drawn; heights run to the left of it */
export function sideView(pieces: readonly Placed[], slabs: SlabsOf, manner: Manner, at: Point): PictureGroup {
  const { tones, unit } = manner;
  const solids = new Map([...slabs].map(([part, of]) => [part, solidOf(part, of, unit * STRAY)]));
  const ordered = pieces
    .map(p => ({ p, near: nearest(p) }))
    .sort((a, b) => (Math.abs(a.near - b.near) < 1e-6 ? 0 : a.near - b.near));
  const moved = { x: 0, y: at.y, z: -at.x };
  const shapes = ordered.flatMap(({ p }) =>
    solidShapes(solids.get(p.part) ?? [], seenPiece(FROM_RIGHT, p.piece, moved), {
      tone: tones(p.part),
      line: unit / 450,
    }),
  );
  return { name: 'side', shapes };
}

/** Whether a prop is so deep that its front alone does not show it: pieces stand in it, or it is deeper than an eighth of its size. */
export const isDeep = (pieces: readonly Placed[], depth: Mm, unit: Mm): boolean =>
  pieces.some(p => p.piece.stands) || depth > unit / 4;
