import type { Point } from '../../geometry/point.js';
import { boxOf, hullOf, type Ring, ringArea, type Shape, shapeArea, tidy, turnOf } from './polygon.js';

/** Corners of a shape by number: pieces that share an edge name the same corners. */
interface Corners {
  readonly points: readonly Point[];
  /** one run round the shape, openings tied in by bridges there and back */
  readonly loop: readonly number[];
}

type Piece = readonly number[];

/** A right-most corner of an opening sees some corner of the loop; the nearest it sees is where the bridge goes. */
function bridge(points: readonly Point[], loop: readonly number[], opening: readonly number[]): number[] {
  const start = opening.reduce((best, c, i) => (points[c]!.x > points[opening[best]!]!.x ? i : best), 0);
  const p = points[opening[start]!]!;
  const far = (c: number): number => (points[c]!.x - p.x) ** 2 + (points[c]!.y - p.y) ** 2;
  const order = loop.map((_, k) => k).sort((a, b) => far(loop[a]!) - far(loop[b]!) || a - b);
  const at = order.find(
    k => inCorner(points, loop, k, p) && sees(points, [...edges(loop), ...edges(opening)], loop[k]!, opening[start]!),
  );
  if (at === undefined) return [];
  const round = [...opening.slice(start), ...opening.slice(0, start + 1)];
  return [...loop.slice(0, at + 1), ...round, ...loop.slice(at)];
}

const edges = (loop: readonly number[]): [number, number][] => loop.map((c, i) => [c, loop[(i + 1) % loop.length]!]);

/** Whether p lies within the angle the loop makes at its k-th corner, on its inner side. */
function inCorner(points: readonly Point[], loop: readonly number[], k: number, p: Point): boolean {
  const a = points[loop[(k + loop.length - 1) % loop.length]!]!;
  const b = points[loop[k]!]!;
  const c = points[loop[(k + 1) % loop.length]!]!;
  if (turnOf(a, b, c) >= 0) return turnOf(a, b, p) >= 0 && turnOf(b, c, p) >= 0;
  return turnOf(a, b, p) >= 0 || turnOf(b, c, p) >= 0;
}

function sees(points: readonly Point[], all: readonly [number, number][], a: number, b: number): boolean {
  const p = points[a]!;
  const q = points[b]!;
  return !all.some(([c, d]) => {
    if (c === a || d === a || c === b || d === b) return false;
    const r = points[c]!;
    const s = points[d]!;
    return turnOf(p, q, r) > 0 !== turnOf(p, q, s) > 0 && turnOf(r, s, p) > 0 !== turnOf(r, s, q) > 0;
  });
}

function cornersOf(shape: Shape): Corners | undefined {
  const rings = [tidy(shape.outline, true), ...shape.openings.map(o => tidy(o, false))];
  const points = rings.flat();
  let first = 0;
  const numbered = rings.map(r => r.map(() => first++));
  const [outer = [], ...openings] = numbered;
  const rightmost = (o: readonly number[]): number => Math.max(...o.map(c => points[c]!.x));
  let loop: number[] = [...outer];
  for (const o of openings.sort((a, b) => rightmost(b) - rightmost(a))) {
    loop = bridge(points, loop, o);
    if (loop.length === 0) return undefined;
  }
  return { points, loop };
}

/** Whether the corner at k can be cut off as a triangle: it turns left and no other corner lies in it. */
function isEar(points: readonly Point[], loop: readonly number[], k: number, tiny: number): boolean {
  const n = loop.length;
  const ids = [loop[(k + n - 1) % n]!, loop[k]!, loop[(k + 1) % n]!] as const;
  const [a, b, c] = [points[ids[0]]!, points[ids[1]]!, points[ids[2]]!];
  if (turnOf(a, b, c) <= tiny) return false;
  return !loop.some(id => {
    if (ids.includes(id)) return false;
    const p = points[id]!;
    return turnOf(a, b, p) >= -tiny && turnOf(b, c, p) >= -tiny && turnOf(c, a, p) >= -tiny;
  });
}

/** Sharpness of the least angle of a corner's triangle: fat ears first leave better pieces. */
function fatness(points: readonly Point[], loop: readonly number[], k: number): number {
  const n = loop.length;
  const [a, b, c] = [points[loop[(k + n - 1) % n]!]!, points[loop[k]!]!, points[loop[(k + 1) % n]!]!];
  const side = (p: Point, q: Point): number => (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
  return turnOf(a, b, c) / Math.max(side(a, b), side(b, c), side(c, a));
}

/** Cuts a loop into triangles, fattest ear first; undefined if it finds no ear. */
function triangles({ points, loop }: Corners, tiny: number): Piece[] | undefined {
  const left = [...loop];
  const out: Piece[] = [];
  while (left.length > 3) {
    let best = -1;
    let fattest = -Infinity;
    for (let k = 0; k < left.length; k++) {
      const fat = fatness(points, left, k);
      if (fat > fattest && isEar(points, left, k, tiny)) {
        best = k;
        fattest = fat;
      }
    }
    if (best < 0) {
      // a corner that repeats along a bridge, or lies straight: nothing is lost with it
      best = left.findIndex((_, k) => Math.abs(turnOfCorner(points, left, k)) <= tiny);
      if (best < 0) return undefined;
      left.splice(best, 1);
      continue;
    }
    const n = left.length;
    out.push([left[(best + n - 1) % n]!, left[best]!, left[(best + 1) % n]!]);
    left.splice(best, 1);
  }
  return turnOf(points[left[0]!]!, points[left[1]!]!, points[left[2]!]!) > tiny ? [...out, left] : out;
}

function turnOfCorner(points: readonly Point[], loop: readonly number[], k: number): number {
  const n = loop.length;
  return turnOf(points[loop[(k + n - 1) % n]!]!, points[loop[k]!]!, points[loop[(k + 1) % n]!]!);
}

const isConvex = (points: readonly Point[], piece: Piece, tiny: number): boolean =>
  piece.every((_, k) => turnOfCorner(points, piece, k) >= -tiny);

/** Two pieces joined over an edge they share; undefined if they share none. */
function join(a: Piece, b: Piece): Piece | undefined {
  for (let i = 0; i < a.length; i++) {
    const next = a[(i + 1) % a.length]!;
    const k = b.findIndex((c, m) => c === next && b[(m + 1) % b.length] === a[i]);
    if (k < 0) continue;
    const fromA = [...a.slice(i + 1), ...a.slice(0, i + 1)];
    const fromB = [...b.slice(k + 1), ...b.slice(0, k + 1)];
    return [...fromA, ...fromB.slice(1, -1)];
  }
  return undefined;
}

/** Joins pieces over shared edges as long as the whole stays convex, largest joined area first. Source: Hertel and Mehlhorn, 1983. */
function merge(points: readonly Point[], pieces: readonly Piece[], tiny: number): Piece[] {
  const left = [...pieces];
  for (;;) {
    let best: { i: number; k: number; piece: Piece; size: number } | undefined;
    for (let i = 0; i < left.length; i++)
      for (let k = i + 1; k < left.length; k++) {
        const piece = join(left[i]!, left[k]!);
        if (!piece || !isConvex(points, piece, tiny)) continue;
        const size = ringArea(piece.map(c => points[c]!));
        if (!best || size > best.size) best = { i, k, piece, size };
      }
    if (!best) return left;
    left.splice(best.k, 1);
    left[best.i] = best.piece;
  }
}

/** Convex polygons that cover a shape and nothing else, anticlockwise; of a shape that cannot be cut up, its convex hull: more than the
 * shape, never less. @param shape plain: outlines do not cross */
export function convexPieces(shape: Shape): readonly Ring[] {
  const whole = [tidy(hullOf(shape.outline), true)];
  const box = boxOf(shape.outline);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const tiny = 1e-12 * size * size;
  const corners = cornersOf(shape);
  const cut = corners && triangles(corners, tiny);
  if (!corners || !cut) return whole;
  const pieces = merge(corners.points, cut, tiny).map(p =>
    tidy(
      p.map(c => corners.points[c]!),
      true,
    ),
  );
  const covered = pieces.reduce((sum, p) => sum + ringArea(p), 0);
  return Math.abs(covered - shapeArea(shape)) <= 1e-9 * size * size ? pieces : whole;
}
