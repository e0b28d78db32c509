import { type Box, bounds } from '../geometry/measure.js';
import { type Motion, moveOutline, movePolyline } from '../geometry/motion.js';
import { circle, type Outline } from '../geometry/outline.js';
import type { Model, Piece } from '../models/model.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { type FrontFace, frontFaces, frontOutlines, throughHoles } from './front-faces.js';

/** A piece in its place in the assembled prop, seen from the front. */
export interface Placed {
  readonly piece: Piece;
  readonly part: Part;
  /** all it covers */
  readonly outlines: readonly Outline[];
  /** what of it faces the front, at heights in the prop */
  readonly faces: readonly FrontFace[];
  /** holes right through it from the front */
  readonly holes: readonly Outline[];
  /** heights of its rearmost and its foremost point */
  readonly low: Mm;
  readonly high: Mm;
}

const motionOf = (piece: Piece): Motion => ({ turn: piece.turn, x: piece.x, y: piece.y });

const moveFace = (face: FrontFace, piece: Piece): FrontFace => ({
  ...face,
  height: piece.z + face.height,
  outlines: face.outlines.map(o => moveOutline(o, motionOf(piece))),
  marks: face.marks.map(m => movePolyline(m, motionOf(piece))),
});

/** How far a part reaches up and down from its piece's z. */
export function reachAbove(part: Part, stands: boolean): readonly [low: Mm, high: Mm] {
  if (!stands) return [0, part.thickness];
  const { minY, maxY } = bounds(part.region.outer);
  return [minY, maxY];
}

/** A part as all its pieces that lie alike show it. */
interface Shown {
  readonly outlines: readonly Outline[];
  readonly faces: readonly FrontFace[];
  readonly holes: readonly Outline[];
  readonly reach: readonly [Mm, Mm];
}

const shown = (part: Part, stands: boolean): Shown => ({
  outlines: frontOutlines(part, stands),
  faces: frontFaces(part, stands),
  holes: stands ? [] : throughHoles(part).map(d => circle(d.diameter / 2, d.at)),
  reach: reachAbove(part, stands),
});

/** All pieces of a model whose part it has, in its order. @throws GeometryFailure */
export function placedPieces(model: Model): Placed[] {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  const seen = new Map<string, Shown>();
  return model.pieces.flatMap(piece => {
    const part = parts.get(piece.part);
    if (!part) return [];
    const key = `${piece.stands ?? false} ${piece.part}`;
    const view = seen.get(key) ?? shown(part, piece.stands ?? false);
    seen.set(key, view);
    const move = (o: Outline): Outline => moveOutline(o, motionOf(piece));
    return {
      piece,
      part,
      outlines: view.outlines.map(move),
      faces: view.faces.map(f => moveFace(f, piece)),
      holes: view.holes.map(move),
      low: piece.z + view.reach[0],
      high: piece.z + view.reach[1],
    };
  });
}

/** The box round what pieces cover. */
export const boxesOf = (pieces: readonly Placed[]): Box[] => pieces.flatMap(p => p.outlines.map(bounds));

/** Edges of outlines, each once, however many pieces meet along it: two pieces' sides of a seam are one line. */
export function distinctEdges(outlines: readonly Outline[]): Outline[] {
  const place = (n: number): number => Math.round(n * 20);
  const seen = new Map<string, Outline>();
  for (const outline of outlines) {
    outline.forEach((from, i) => {
      const to = outline[(i + 1) % outline.length] ?? from;
      const ends = [from, to].map(v => `${place(v.x)},${place(v.y)}`).sort();
      const key = `${ends.join(' ')} ${Math.round(Math.abs(from.bulge) * 1e4)}`;
      if (!seen.has(key)) seen.set(key, [from, { ...to, bulge: 0 }]);
    });
  }
  return [...seen.values()];
}
