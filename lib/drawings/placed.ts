import { bounds } from '../geometry/measure.js';
import { type Motion, moveOutline } from '../geometry/motion.js';
import type { Outline, Vertex } from '../geometry/outline.js';
import type { Model, Piece } from '../models/model.js';
import type { Part } from '../parts/part.js';
import type { Mm } from '../units/length.js';
import { frontOutlines } from './front-faces.js';

/** A piece in its place in the assembled prop. */
export interface Placed {
  readonly piece: Piece;
  readonly part: Part;
  /** all it covers, seen from the front */
  readonly outlines: readonly Outline[];
  /** heights of its rearmost and its foremost point */
  readonly low: Mm;
  readonly high: Mm;
}

/** How a piece is turned and moved, seen from the front. */
export const motionOf = ({ turn, x, y }: Piece): Motion => ({ turn, x, y });

/** How far a part reaches down and up from its piece's z. */
function reach(part: Part, stands: boolean): readonly [low: Mm, high: Mm] {
  if (!stands) return [0, part.thickness];
  const { minY, maxY } = bounds(part.region.outer);
  return [minY, maxY];
}

/** All pieces of a model whose part it has, in its order. */
export function placedPieces(model: Model): Placed[] {
  const parts = new Map(model.parts.map(p => [p.id, p]));
  return model.pieces.flatMap(piece => {
    const part = parts.get(piece.part);
    if (!part) return [];
    const stands = piece.stands ?? false;
    const [low, high] = reach(part, stands);
    const outlines = frontOutlines(part, stands).map(o => moveOutline(o, motionOf(piece)));
    return { piece, part, outlines, low: piece.z + low, high: piece.z + high };
  });
}

/** The same words for edges that are one line, whichever way they run. */
function edgeKey(from: Vertex, to: Vertex): string {
  const place = (n: number): number => Math.round(n * 20);
  const ends = [from, to].map(v => `${place(v.x)},${place(v.y)}`).sort();
  return `${ends.join(' ')} ${Math.round(Math.abs(from.bulge) * 1e4)}`;
}

/** Edges of outlines, each once, however many pieces meet along it: two pieces' sides of a seam are one line.
 * @param but outlines whose edges are left out */
export function distinctEdges(outlines: readonly Outline[], but: readonly Outline[] = []): Outline[] {
  const edges = (list: readonly Outline[]): (readonly [string, Outline])[] =>
    list.flatMap(outline =>
      outline.map((from, i) => {
        const to = outline[(i + 1) % outline.length] ?? from;
        return [edgeKey(from, to), [from, { ...to, bulge: 0 }]] as const;
      }),
    );
  const left = new Set(edges(but).map(([key]) => key));
  const seen = new Map(edges(outlines).filter(([key]) => !left.has(key)));
  return [...seen.values()];
}
