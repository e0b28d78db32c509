import { bounds, boundsOfAll } from '../geometry/measure.js';
import { moveOutline } from '../geometry/motion.js';
import type { Point } from '../geometry/point.js';
import type { Piece } from '../models/model.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { bandsOf } from './bands.js';
import { frontOutlines } from './front-faces.js';
import type { Manner } from './front-view.js';
import type { PictureGroup } from './picture.js';
import { motionOf, type Placed } from './placed.js';
import { type SlabsOf, slabsOf } from './slabs.js';
import { type Solid, solidOf } from './solid.js';
import { solidShapes } from './solid-shapes.js';
import { FROM_RIGHT, seenPiece } from './view.js';

/** Arcs stray by this share of the prop's half size: less than a line is wide. */
const STRAY = 1 / 1200;

/** What is drawn as one: a part, or a band of one that stands. */
interface Body {
  readonly part: Part;
  readonly solid: Solid;
}

/** The bodies of every part. A part's pieces all lie or all stand. */
function bodiesOf(pieces: readonly Placed[], slabs: SlabsOf, tolerance: Mm): ReadonlyMap<Part, readonly Body[]> {
  const body = (part: Part): Body => ({ part, solid: solidOf(part, slabs.get(part) ?? slabsOf(part), tolerance) });
  const stands = new Map(pieces.map(({ part, piece }) => [part, piece.stands ?? false]));
  return new Map([...stands].map(([part, stood]) => [part, (stood ? bandsOf(part) : [part]).map(body)]));
}

/** How far to the right, towards the one who looks, a part reaches where a piece is. */
function nearest(part: Part, piece: Piece): Mm {
  const outlines = frontOutlines(part, piece.stands ?? false).map(o => moveOutline(o, motionOf(piece)));
  return boundsOfAll(outlines.map(bounds)).maxX;
}

/** Nearer by less than this is as near. */
const AS_NEAR: Mm = 1e-6;

/** A prop from its right side, its front to the left: what is nearer over what is farther, as a whole; stood pieces by bands.
 * @param slabs of the pieces' parts   @param at where the prop's origin is drawn; heights run to the left of it */
export function sideView(pieces: readonly Placed[], slabs: SlabsOf, { tones, unit }: Manner, at: Point): PictureGroup {
  const bodies = bodiesOf(pieces, slabs, unit * STRAY);
  const all = pieces.flatMap(({ part, piece }) =>
    bodies.get(part)!.map(body => ({ piece, body, near: nearest(body.part, piece) })),
  );
  const ordered = all.sort((a, b) => (Math.abs(a.near - b.near) < AS_NEAR ? 0 : a.near - b.near));
  const moved = { x: 0, y: at.y, z: -at.x };
  const shapes = ordered.flatMap(({ piece, body }) =>
    solidShapes(body.solid, seenPiece(FROM_RIGHT, piece, moved), { tone: tones(body.part), line: unit / 450 }),
  );
  return { name: 'side', shapes };
}

/** Whether a prop is so deep that its front alone does not show it: pieces stand in it, or it is deeper than an eighth of its size. */
export const isDeep = (pieces: readonly Placed[], depth: Mm, unit: Mm): boolean =>
  pieces.some(p => p.piece.stands) || depth > unit / 4;
