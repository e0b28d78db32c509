import type { Point } from '../../geometry/point.js';

/** A polygon: corners in order, the first not repeated. */
export type Ring = readonly Point[];

/** A polygon with openings, any directions. */
export interface Shape {
  readonly outline: Ring;
  readonly openings: readonly Ring[];
}

/** Twice the area of the triangle a, b, c; positive if it runs anticlockwise. */
export const turnOf = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Area, positive if the ring runs anticlockwise. */
export function ringArea(ring: Ring): number {
  const base = ring[0];
  if (!base) return 0;
  let sum = 0;
  for (let i = 2; i < ring.length; i++) sum += turnOf(base, ring[i - 1]!, ring[i]!);
  return sum / 2;
}

export const shapeArea = (shape: Shape): number =>
  Math.abs(ringArea(shape.outline)) - shape.openings.reduce((sum, o) => sum + Math.abs(ringArea(o)), 0);

/** The ring run anticlockwise (or clockwise), without corners that repeat or lie on the line between their neighbours. */
export function tidy(ring: Ring, anticlockwise: boolean): Ring {
  const run = ringArea(ring) > 0 === anticlockwise ? [...ring] : [...ring].reverse();
  const box = boxOf(run);
  const tiny =
    1e-12 * Math.max(box.maxX - box.minX, box.maxY - box.minY) * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  for (let again = true; again && run.length > 3; ) {
    again = false;
    for (let i = 0; i < run.length && run.length > 3; i++) {
      const a = run[(i + run.length - 1) % run.length]!;
      const c = run[(i + 1) % run.length]!;
      if (Math.abs(turnOf(a, run[i]!, c)) > tiny) continue;
      run.splice(i, 1);
      again = true;
      i--;
    }
  }
  return run;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOf(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const p of points) {
    minX = Math.min(minX, p.x);
    minY = Math.min(minY, p.y);
    maxX = Math.max(maxX, p.x);
    maxY = Math.max(maxY, p.y);
  }
  return { minX, minY, maxX, maxY };
}

/** Smallest convex polygon round the points, anticlockwise. Source: Andrew's monotone chain, 1979. */
export function hullOf(points: readonly Point[]): Ring {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (from: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of from) {
      while (out.length > 1 && turnOf(out.at(-2)!, out.at(-1)!, p) <= 0) out.pop();
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}
