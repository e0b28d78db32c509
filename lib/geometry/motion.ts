import type { Mm, Radians } from '../units/length.js';
import { type Outline, type Polyline, type Region, reverse, type Vertex, vertex } from './outline.js';
import type { Point } from './point.js';

/** A rigid motion: first mirrored (x to -x) if `mirrored`, then turned anticlockwise about the origin, then moved. */
export interface Motion {
  readonly mirrored?: boolean;
  readonly turn: Radians;
  readonly x: Mm;
  readonly y: Mm;
}

export const STILL: Motion = { turn: 0, x: 0, y: 0 };
export const MIRROR: Motion = { mirrored: true, turn: 0, x: 0, y: 0 };
/** A turn about the origin. */
export const turning = (turn: Radians): Motion => ({ turn, x: 0, y: 0 });

const QUARTER = Math.PI / 2;

/** Cosine and sine, exact at whole quarter turns. */
function cosSin(turn: Radians): readonly [number, number] {
  const quarters = Math.round(turn / QUARTER);
  if (quarters * QUARTER !== turn) return [Math.cos(turn), Math.sin(turn)];
  return (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[((quarters % 4) + 4) % 4]!;
}

/** A motion as a function, for many points: its sine and cosine are worked out once. */
export function mover(m: Motion): (p: Point) => Point {
  const [c, s] = cosSin(m.turn);
  const flip = m.mirrored ? -1 : 1;
  return p => ({ x: c * flip * p.x - s * p.y + m.x, y: s * flip * p.x + c * p.y + m.y });
}

/** A point moved. */
export const movePoint = (p: Point, m: Motion): Point => mover(m)(p);

/** An open run moved; it keeps its direction of travel. */
export function movePolyline(line: Polyline, m: Motion): Polyline {
  const move = mover(m);
  const sign = m.mirrored ? -1 : 1;
  return line.map((v: Vertex) => vertex(move(v), v.bulge === 0 ? 0 : sign * v.bulge, v.mate));
}

/** An outline moved; a mirrored one is run the other way, so that it keeps its turning. */
export function moveOutline(outline: Outline, m: Motion): Outline {
  const moved = movePolyline(outline, m);
  return m.mirrored ? reverse(moved) : moved;
}

/** A region moved, outlines as `moveOutline`. */
export const moveRegion = (region: Region, m: Motion): Region => ({
  outer: moveOutline(region.outer, m),
  openings: region.openings.map(o => moveOutline(o, m)),
});

/** The motion that does `first`, then `second`. */
export function compose(first: Motion, second: Motion): Motion {
  const at = movePoint(first, second);
  const turn = second.mirrored ? second.turn - first.turn : second.turn + first.turn;
  return { mirrored: Boolean(first.mirrored) !== Boolean(second.mirrored), turn, x: at.x, y: at.y };
}
