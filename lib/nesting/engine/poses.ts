import type { Point } from '../../geometry/point.js';
import type { Radians } from '../../units/length.js';
import { convexPieces } from './convex-pieces.js';
import { type Box, boxOf, hullOf, type Ring, ringArea, type Shape, shapeArea, tidy } from './polygon.js';

/** A way a shape may lie: mirrored first (x to -x) where it says so, then turned anticlockwise. */
export interface Turn {
  readonly angle: Radians;
  readonly mirrored: boolean;
  /** kinds of stock it may lie on so, by number; all unless given */
  readonly on?: readonly number[];
  /** its box so turned, where the polygon stands off the true shape; the polygon's own unless given */
  readonly box?: Box;
}

/** Shapes that are alike: how they may lie and how many there are. */
export interface Kind {
  readonly shape: Shape;
  readonly turns: readonly Turn[];
  readonly quantity: number;
}

/** A kind lying one way, its box's lower left corner at the origin. */
export interface Pose {
  readonly kind: number;
  readonly turn: Turn;
  /** where the lower left corner of its box is when it is turned about its own origin */
  readonly corner: Point;
  readonly width: number;
  readonly height: number;
  /** convex polygons that cover it */
  readonly pieces: readonly Ring[];
  readonly area: number;
  readonly hullArea: number;
  /** middles of its openings' boxes and their sizes, largest first: places for other shapes */
  readonly openings: readonly Opening[];
}

/** The box of an opening. */
export interface Opening {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Cosine and sine, without rounding for quarter turns. */
function direction(angle: Radians): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return [Math.cos(angle), Math.sin(angle)];
  return (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[((whole % 4) + 4) % 4]!;
}

/** A ring mirrored and turned; still anticlockwise if it was. */
export function turned(ring: Ring, { angle, mirrored }: Turn): Ring {
  const [c, s] = direction(angle);
  const sign = mirrored ? -1 : 1;
  const out = ring.map(p => ({ x: sign * p.x * c - p.y * s, y: sign * p.x * s + p.y * c }));
  return mirrored ? out.reverse() : out;
}

const moved = (ring: Ring, by: Point): Ring => ring.map(p => ({ x: p.x - by.x, y: p.y - by.y }));

/** Whether two sets of rings are one but for rounding, wherever the rings start. */
export function sameRings(a: readonly Ring[], b: readonly Ring[], near: number): boolean {
  const alike = (r: Ring, q: Ring): boolean =>
    r.length === q.length &&
    q.some((_, k) =>
      r.every((p, i) => {
        const o = q[(i + k) % q.length]!;
        return Math.abs(p.x - o.x) <= near && Math.abs(p.y - o.y) <= near;
      }),
    );
  return a.length === b.length && a.every(r => b.some(q => alike(r, q)));
}

function openingOf(ring: Ring): Opening {
  const box = boxOf(ring);
  return {
    x: (box.minX + box.maxX) / 2,
    y: (box.minY + box.maxY) / 2,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
  };
}

/** The different ways a kind may lie: those that look like an earlier one are left out. */
export function posesOf(kind: Kind, index: number): Pose[] {
  const outline = tidy(kind.shape.outline, true);
  const openings = kind.shape.openings.map(o => tidy(o, false));
  const pieces = convexPieces(kind.shape);
  const area = shapeArea(kind.shape);
  const hullArea = ringArea(hullOf(outline));
  const seen: { readonly rings: readonly Ring[]; readonly on: string }[] = [];
  const poses: Pose[] = [];
  for (const turn of kind.turns) {
    const lying = [outline, ...openings].map(r => turned(r, turn));
    const box = turn.box ?? boxOf(lying[0]!);
    const corner = { x: box.minX, y: box.minY };
    const rings = lying.map(r => moved(r, corner));
    const width = box.maxX - box.minX;
    const height = box.maxY - box.minY;
    const on = turn.on?.join() ?? '';
    if (seen.some(s => s.on === on && sameRings(rings, s.rings, 1e-9 * Math.max(width, height)))) continue;
    seen.push({ rings, on });
    poses.push({
      kind: index,
      turn,
      corner,
      width,
      height,
      pieces: pieces.map(r => moved(turned(r, turn), corner)),
      area,
      hullArea,
      openings: rings
        .slice(1)
        .map(openingOf)
        .sort((a, b) => b.width * b.height - a.width * a.height),
    });
  }
  return poses;
}
