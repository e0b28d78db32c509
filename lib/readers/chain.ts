import { requireRange } from '../findings/unusable.js';
import { pointAlong } from '../geometry/along.js';
import type { Outline, Polyline } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { doubledPieces } from './doubled.js';
import { type Gap, joinEnds, ROUNDING } from './ends.js';
import { edgesOf, type Piece, pieceLength } from './piece.js';
import { bothEnds, loops, type Net, netOf, prune, type Route, run, strays } from './routes.js';

/** Something in a file that is not part of any outline, or twice. */
export interface Oddity {
  readonly at: Point;
  readonly source: string;
}

/** Pieces that form no closed outline, as one run. */
export interface Stray extends Oddity {
  readonly to: Point;
  readonly length: Mm;
}

/** What a file's pieces were found to be, and where: mm, in the drawing's own frame. */
export interface ChainReport {
  /** ends that do not meet: bridged up to the tolerance, left open up to ten times as far */
  readonly gaps: readonly Gap[];
  /** pieces left out because they lie on others */
  readonly doubled: readonly Oddity[];
  readonly stray: readonly Stray[];
  /** pieces shorter than rounding, left out */
  readonly specks: readonly Oddity[];
}

/** Closed outlines and open runs made of pieces. */
export interface Chained {
  readonly outlines: readonly Outline[];
  /** the stray pieces, each a run */
  readonly open: readonly Polyline[];
  readonly report: ChainReport;
}

/** How far apart ends may be and still be brought together, unless said otherwise. */
export const BRIDGE: Mm = 0.01;

/** Doubled pieces to leave out: those whose leaving out makes no more joints odd. An edge drawn twice by one frame goes, an edge
 * two frames share, each closed with it, stays. Decided for each connected set of doubled pieces. */
function superfluous(pieces: readonly Piece[], doubled: ReadonlyMap<number, number>): Set<number> {
  const open = [...pieces.keys()].filter(i => !pieces[i]!.closed);
  const { joints } = joinEnds(pieces, open.flatMap(bothEnds), ROUNDING);
  const { jointOf } = netOf(pieces, joints);
  const out = new Set([...doubled.keys()].filter(i => pieces[i]!.closed));
  const waiting = new Set([...doubled.keys()].filter(i => !pieces[i]!.closed));
  while (waiting.size > 0) {
    const group: number[] = [];
    const touched = new Map<number, number>();
    const queue = [[...waiting][0]!];
    waiting.delete(queue[0]!);
    for (let i = queue.pop(); i !== undefined; i = queue.pop()) {
      group.push(i);
      for (const j of jointOf.get(i)!) {
        touched.set(j, (touched.get(j) ?? 0) + 1);
        for (const { piece } of joints[j]!.ends) if (waiting.delete(piece)) queue.push(piece);
      }
    }
    const odd = (less: boolean): number =>
      [...touched].filter(([j, n]) => (joints[j]!.ends.length - (less ? n : 0)) % 2 === 1).length;
    if (odd(true) <= odd(false)) for (const i of group) out.add(i);
  }
  return out;
}

const middle = (piece: Piece): Point => {
  const edges = edgesOf(piece);
  return pointAlong(edges[Math.floor(edges.length / 2)]!, 0.5);
};

function strayOf(net: Net, route: Route): Stray {
  const line = run(net, route);
  const length = route.reduce((t, e) => t + pieceLength(net.pieces[e.piece]!), 0);
  return { at: line[0]!, to: line.at(-1)!, length, source: route.map(e => net.pieces[e.piece]!.source).join(', ') };
}

/** Chains pieces, in whatever order and direction they were drawn, into closed outlines; what closes nowhere is told with its place.
 * - ends within rounding (1e-5 mm) are one point; lone ends up to `bridge` apart are brought to the middle between them and told as bridged gaps;
 * - a piece that lies on another is left out and told, unless outlines that share an edge need both;
 * - at a joint of four and more, the way on is the one that keeps the face to the left, so shapes that touch come apart.
 *
 * @param bridge mm, 1e-5 to 10
 * @returns outlines in the order of their first piece, direction as found; arcs and lines as drawn, their ends moved by at most half a bridge
 * @throws Unusable naming the bridge */
export function chain(pieces: readonly Piece[], bridge: Mm = BRIDGE): Chained {
  requireRange('bridge', bridge, ROUNDING, 10);
  const [real, specks] = [
    pieces.filter(p => pieceLength(p) > ROUNDING),
    pieces.filter(p => !(pieceLength(p) > ROUNDING)),
  ];
  const doubled = doubledPieces(real, bridge);
  const dropped = superfluous(real, doubled);
  const kept = real.filter((_, i) => !dropped.has(i));
  const open = [...kept.keys()].filter(i => !kept[i]!.closed);
  const { joints, gaps } = joinEnds(kept, open.flatMap(bothEnds), bridge);
  const net = netOf(kept, joints);
  const free = new Set(open);
  prune(net, free);
  const closed = loops(net, free);
  const used = new Set(closed.flatMap(r => r.map(e => e.piece)));
  const left = strays(net, new Set(open.filter(i => !used.has(i))));
  return {
    outlines: inOrder(
      kept,
      closed.map(r => [r[0]!.piece, run(net, r).slice(0, -1)]),
    ),
    open: left.map(r => run(net, r)),
    report: {
      gaps,
      doubled: [...dropped].sort((a, b) => a - b).map(i => ({ at: middle(real[i]!), source: real[i]!.source })),
      stray: left.map(r => strayOf(net, r)),
      specks: specks.map(p => ({ at: p.line[0] ?? { x: 0, y: 0 }, source: p.source })),
    },
  };
}

/** Outlines drawn closed and outlines put together, by the place of their first piece. */
function inOrder(pieces: readonly Piece[], chained: readonly (readonly [number, Outline])[]): Outline[] {
  const whole = [...pieces.keys()]
    .filter(i => pieces[i]!.closed)
    .map((i): readonly [number, Outline] => [i, pieces[i]!.line]);
  return [...whole, ...chained].sort((a, b) => a[0] - b[0]).map(([, outline]) => outline);
}
