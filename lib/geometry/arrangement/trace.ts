import type { Around } from './around.js';
import type { Slices } from './slices.js';

/** A slice of the boundary, run so that the inside is on its left: 2i along slice i, 2i + 1 against it. */
export type Run = number;

/** Slices with the inside on one side only, as half-edges that have it on their left. */
export function keptRuns(slices: Slices, left: Float64Array, inside: (winding: number) => boolean): Run[] {
  const kept: Run[] = [];
  for (let i = 0; i < left.length; i++) {
    const onLeft = inside(left[i]!);
    if (onLeft !== inside(left[i]! - slices.weight[i]!)) kept.push(onLeft ? 2 * i : 2 * i + 1);
  }
  return kept;
}

const startOf = (slices: Slices, run: Run): number => (run & 1 ? slices.head[run >> 1]! : slices.tail[run >> 1]!);
const endOf = (slices: Slices, run: Run): number => (run & 1 ? slices.tail[run >> 1]! : slices.head[run >> 1]!);

/** Joins kept runs to closed loops that pass each vertex once. Arriving at a vertex, the boundary goes on along the next kept run clockwise:
 * the other edge of the same wedge of inside. A loop that comes by a vertex twice is cut in two there. */
export function traceLoops(slices: Slices, around: Around, kept: readonly Run[]): Run[][] {
  const waiting = new Uint8Array(2 * slices.count);
  for (const run of kept) waiting[run] = 1;
  const loops: Run[][] = [];
  const seenAt = new Int32Array(slices.xs.length).fill(-1);
  for (const start of kept) {
    if (!waiting[start]) continue;
    const path: Run[] = [];
    let run: Run = start;
    while (run >= 0) {
      const from = startOf(slices, run);
      if (seenAt[from]! >= 0) loops.push(cutBack(slices, path, seenAt[from]!, seenAt));
      seenAt[from] = path.length;
      path.push(run);
      waiting[run] = 0;
      run = nextClockwise(slices, around, run, waiting);
    }
    loops.push(cutBack(slices, path, 0, seenAt));
  }
  return loops;
}

/** Takes the runs from a place in the path to its end off it. */
function cutBack(slices: Slices, path: Run[], place: number, seenAt: Int32Array): Run[] {
  const loop = path.splice(place);
  for (const run of loop) seenAt[startOf(slices, run)] = -1;
  return loop;
}

/** The waiting run leaving the end of another, first clockwise from it; -1 when the loop is closed. */
function nextClockwise(slices: Slices, around: Around, run: Run, waiting: Uint8Array): Run {
  const { first, halves } = around;
  const v = endOf(slices, run);
  const from = first[v]!;
  const to = first[v + 1]!;
  let k = from;
  while (halves[k] !== (run ^ 1)) k++;
  for (let step = from; step < to; step++) {
    k = k > from ? k - 1 : to - 1;
    if (waiting[halves[k]!]) return halves[k]!;
  }
  return -1;
}
