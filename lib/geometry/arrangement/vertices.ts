/** The vertices of an arrangement: points nearer than the tolerance are one vertex, at the place of the first of them. */
export interface Vertices {
  readonly xs: number[];
  readonly ys: number[];
  /** the vertex at a point: an earlier one within the tolerance, or a new one */
  readonly at: (x: number, y: number) => number;
}

/** A cell is so many tolerances wide: few points are then near its border. */
const CELL = 64;

/** Cells, hashed; a point near its cell's border is also looked up across it. */
export function vertexMerger(tolerance: number, expected: number): Vertices {
  const xs: number[] = [];
  const ys: number[] = [];
  const next: number[] = [];
  let mask = 63;
  while (mask < expected * 2) mask = mask * 2 + 1;
  const heads = new Int32Array(mask + 1).fill(-1);
  const cell = CELL * tolerance;
  const near = tolerance * tolerance;
  const bucket = (ix: number, iy: number): number => {
    const h = Math.imul(ix | 0, 0x9e3779b1) ^ Math.imul(iy | 0, 0x85ebca6b);
    return (h ^ (h >>> 15)) & mask;
  };
  const find = (ix: number, iy: number, x: number, y: number, best: number): number => {
    for (let k = heads[bucket(ix, iy)]!; k >= 0; k = next[k]!) {
      const dx = xs[k]! - x;
      const dy = ys[k]! - y;
      if (dx * dx + dy * dy <= near && (best < 0 || k < best)) best = k;
    }
    return best;
  };
  const at = (x: number, y: number): number => {
    const fx = x / cell;
    const fy = y / cell;
    const ix = Math.floor(fx);
    const iy = Math.floor(fy);
    const sideX = beside(fx - ix);
    const sideY = beside(fy - iy);
    let found = find(ix, iy, x, y, -1);
    if (sideX) found = find(ix + sideX, iy, x, y, found);
    if (sideY) found = find(ix, iy + sideY, x, y, found);
    if (sideX && sideY) found = find(ix + sideX, iy + sideY, x, y, found);
    if (found >= 0) return found;
    const b = bucket(ix, iy);
    const k = xs.length;
    xs.push(x);
    ys.push(y);
    next.push(heads[b]!);
    heads[b] = k;
    return k;
  };
  return { xs, ys, at };
}

/** Which neighbouring cell a point at a share of the way across its own is within reach of: the one before, the one after, or none (0). */
const beside = (share: number): -1 | 0 | 1 => (share < 1 / CELL ? -1 : share > 1 - 1 / CELL ? 1 : 0);
