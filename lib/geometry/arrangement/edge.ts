import type { Outline } from '../outline.js';

/** A directed edge with its carrier: a line through its ends, or an arc (at most a half turn) of a circle. mm.
 * An arrangement never moves a carrier: slices of an edge keep pointing at it. */
export interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** 0: a line; 1: an anticlockwise arc; -1: a clockwise arc */
  readonly turn: -1 | 0 | 1;
  /** centre and radius; 0 for a line */
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  /** the change of winding from its right to its left, see winding.ts */
  readonly weight: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function lineEdge(x0: number, y0: number, x1: number, y1: number, weight: number): Edge {
  const [minX, maxX] = x0 < x1 ? [x0, x1] : [x1, x0];
  const [minY, maxY] = y0 < y1 ? [y0, y1] : [y1, y0];
  return { x0, y0, x1, y1, turn: 0, cx: 0, cy: 0, r: 0, weight, minX, minY, maxX, maxY };
}

/** An arc of at most a half turn. An arc lies to the right of its chord when anticlockwise, to the left when clockwise. */
export function arcEdge(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  turn: -1 | 1,
  cx: number,
  cy: number,
  r: number,
  weight: number,
): Edge {
  const dx = x1 - x0;
  const dy = y1 - y0;
  // which side of the chord the circle's four extremes lie on
  const right = turn * (dx * (cy - y0) - dy * (cx + r - x0)) < 0;
  const left = turn * (dx * (cy - y0) - dy * (cx - r - x0)) < 0;
  const top = turn * (dx * (cy + r - y0) - dy * (cx - x0)) < 0;
  const bottom = turn * (dx * (cy - r - y0) - dy * (cx - x0)) < 0;
  return {
    x0,
    y0,
    x1,
    y1,
    turn,
    cx,
    cy,
    r,
    weight,
    minX: left ? cx - r : Math.min(x0, x1),
    minY: bottom ? cy - r : Math.min(y0, y1),
    maxX: right ? cx + r : Math.max(x0, x1),
    maxY: top ? cy + r : Math.max(y0, y1),
  };
}

/** Appends the edges of an outline (no |bulge| above 1, no zero lengths: see repair.ts). An arc flatter than `flat` is its chord. */
export function addOutline(edges: Edge[], outline: Outline, weight: number, flat: number): void {
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const a = outline[i]!;
    const b = outline[i + 1 < n ? i + 1 : 0]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const bulge = a.bulge;
    if (Math.abs(bulge) * (Math.abs(dx) + Math.abs(dy)) <= flat) {
      edges.push(lineEdge(a.x, a.y, b.x, b.y, weight));
      continue;
    }
    const apothem = (1 - bulge * bulge) / (4 * bulge);
    const cx = (a.x + b.x) / 2 - dy * apothem;
    const cy = (a.y + b.y) / 2 + dx * apothem;
    const r = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    edges.push(arcEdge(a.x, a.y, b.x, b.y, bulge > 0 ? 1 : -1, cx, cy, r, weight));
  }
}

/** The largest coordinate of any edge, either sign: what roundings are relative to. */
export function extentOf(edges: readonly Edge[]): number {
  let most = 0;
  for (const e of edges) most = Math.max(most, -e.minX, -e.minY, e.maxX, e.maxY);
  return most;
}
