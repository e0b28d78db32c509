import type { Outline } from '../outline.js';

/** A table of directed edges with their carriers, each a line through its ends or an arc (at most a half turn) of a circle; mm.
 * Columns of numbers, because tens of thousands of edges as objects would keep the collector busy. An arrangement never moves a carrier:
 * slices of an edge keep pointing at its row. */
export interface Edges {
  /** rows in use */
  count: number;
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  /** 0: a line; 1: an anticlockwise arc; -1: a clockwise arc */
  readonly turn: Int8Array;
  /** centre and radius; 0 for a line */
  readonly cx: Float64Array;
  readonly cy: Float64Array;
  readonly r: Float64Array;
  /** the change of winding from its right to its left, see winding.ts */
  readonly weight: Float64Array;
  /** the place of its tag in `mates`; 0: none */
  readonly mate: Int32Array;
  /** the tags its edges bear (see Vertex.mate), none first */
  readonly mates: (string | undefined)[];
  readonly minX: Float64Array;
  readonly minY: Float64Array;
  readonly maxX: Float64Array;
  readonly maxY: Float64Array;
}

/** An empty table with room for so many edges, with the tags of another or none. */
export function edgeTable(room: number, mates: (string | undefined)[] = [undefined]): Edges {
  const store = new ArrayBuffer((12 * 8 + 4) * room);
  let columns = 0;
  const column = (): Float64Array => new Float64Array(store, 8 * room * columns++, room);
  return {
    count: 0,
    x0: column(),
    y0: column(),
    x1: column(),
    y1: column(),
    turn: new Int8Array(room),
    cx: column(),
    cy: column(),
    r: column(),
    weight: column(),
    mate: new Int32Array(store, 12 * 8 * room, room),
    mates,
    minX: column(),
    minY: column(),
    maxX: column(),
    maxY: column(),
  };
}

export function addLine(edges: Edges, x0: number, y0: number, x1: number, y1: number, weight: number, mate = 0): void {
  const i = edges.count++;
  edges.x0[i] = x0;
  edges.y0[i] = y0;
  edges.x1[i] = x1;
  edges.y1[i] = y1;
  edges.weight[i] = weight;
  edges.mate[i] = mate;
  edges.minX[i] = Math.min(x0, x1);
  edges.minY[i] = Math.min(y0, y1);
  edges.maxX[i] = Math.max(x0, x1);
  edges.maxY[i] = Math.max(y0, y1);
}

/** Appends an arc of at most a half turn. An arc lies to the right of its chord when anticlockwise, to the left when clockwise. */
export function addArc(
  edges: Edges,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  turn: number,
  cx: number,
  cy: number,
  r: number,
  weight: number,
  mate = 0,
): void {
  const i = edges.count;
  addLine(edges, x0, y0, x1, y1, weight, mate);
  edges.turn[i] = turn;
  edges.cx[i] = cx;
  edges.cy[i] = cy;
  edges.r[i] = r;
  // the circle's four extremes, where they lie across the chord; further out by a rounding of a far centre
  const out = r * (1 + 4 * Number.EPSILON);
  const dx = (x1 - x0) * turn;
  const dy = (y1 - y0) * turn;
  const acrossX = dx * (cy - y0);
  const acrossY = dy * (cx - x0);
  if (acrossX - dy * (cx - r - x0) < 0) edges.minX[i] = cx - out;
  if (acrossX - dy * (cx + r - x0) < 0) edges.maxX[i] = cx + out;
  if (dx * (cy - r - y0) - acrossY < 0) edges.minY[i] = cy - out;
  if (dx * (cy + r - y0) - acrossY < 0) edges.maxY[i] = cy + out;
}

/** The place of a tag in the table's list of them, put there the first time. */
function mateNumber({ mates }: Edges, mate: string): number {
  const found = mates.indexOf(mate);
  return found >= 0 ? found : mates.push(mate) - 1;
}

/** Appends the edges of an outline (no |bulge| above 1, no zero lengths: see repair.ts). An arc flatter than `flat` is its chord. */
export function addOutline(edges: Edges, outline: Outline, weight: number, flat: number): void {
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const a = outline[i]!;
    const b = outline[i + 1 < n ? i + 1 : 0]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const bulge = a.bulge;
    const mate = a.mate === undefined ? 0 : mateNumber(edges, a.mate);
    if (Math.abs(bulge) * (Math.abs(dx) + Math.abs(dy)) <= flat) {
      addLine(edges, a.x, a.y, b.x, b.y, weight, mate);
      continue;
    }
    const apothem = (1 - bulge * bulge) / (4 * bulge);
    const cx = (a.x + b.x) / 2 - dy * apothem;
    const cy = (a.y + b.y) / 2 + dx * apothem;
    const r = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    addArc(edges, a.x, a.y, b.x, b.y, bulge > 0 ? 1 : -1, cx, cy, r, weight, mate);
  }
}

/** The largest coordinate of any edge, either sign: what roundings are relative to. */
export function extentOf({ count, minX, minY, maxX, maxY }: Edges): number {
  let most = 0;
  for (let i = 0; i < count; i++) most = Math.max(most, -minX[i]!, -minY[i]!, maxX[i]!, maxY[i]!);
  return most;
}
