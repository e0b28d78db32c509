import { distanceToSegment } from '../geometry/locate.js';
import { type Box, boundsOfAll, segmentBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { pointOn, type Segment } from '../geometry/segment.js';
import type { Mm } from '../units/length.js';
import { edgesOf, type Piece } from './piece.js';

interface Drawn {
  readonly edges: readonly Segment[];
  readonly box: Box;
  /** points that tell one line or arc from another: both ends of each edge and three between */
  readonly points: readonly Point[];
}

const drawn = (piece: Piece): Drawn => {
  const edges = edgesOf(piece);
  return {
    edges,
    box: boundsOfAll(edges.map(segmentBounds)),
    points: edges.flatMap(s => [0, 0.25, 0.5, 0.75, 1].map(share => pointOn(s, share))),
  };
};

const boxHolds = (outer: Box, inner: Box, slack: Mm): boolean =>
  outer.minX <= inner.minX + slack &&
  outer.minY <= inner.minY + slack &&
  outer.maxX >= inner.maxX - slack &&
  outer.maxY >= inner.maxY - slack;

const liesOn = (a: Drawn, b: Drawn, within: Mm): boolean =>
  boxHolds(b.box, a.box, within) && a.points.every(p => b.edges.some(s => distanceToSegment(s, p) <= within));

/** Pieces that lie wholly on another piece, so that a cutter would go over them twice; of two alike the later one.
 * Whether they may be left out is the chain's to say: two frames that share an edge draw it twice too.
 * @param within mm: how near is on
 * @returns index of each doubled piece, with the piece it lies on */
export function doubledPieces(pieces: readonly Piece[], within: Mm): ReadonlyMap<number, number> {
  const all = pieces.map(drawn);
  const order = [...all.keys()].sort((a, b) => all[a]!.box.minX - all[b]!.box.minX);
  const found = new Map<number, number>();
  order.forEach((i, at) => {
    // sorted by their left sides: nothing further on can overlap once one starts right of this
    for (let k = at + 1; k < order.length && all[order[k]!]!.box.minX <= all[i]!.box.maxX + within; k++) {
      const [a, b] = [Math.min(i, order[k]!), Math.max(i, order[k]!)];
      if (found.has(a) || found.has(b)) continue;
      if (liesOn(all[b]!, all[a]!, within)) found.set(b, a);
      else if (liesOn(all[a]!, all[b]!, within)) found.set(a, b);
    }
  });
  return found;
}
