import { middleOf } from './along.js';
import { type Around, chordOf } from './around.js';
import { windingOf } from './ray.js';
import type { Slices } from './slices.js';
import { type Strips, stripAt, stripsOf } from './strips.js';

/** The weight of an edge of the second operand: both winding numbers travel in one number, first + SECOND * second. */
export const SECOND = 2 ** 24;

/** The two winding numbers packed in one. */
export function unpack(winding: number): readonly [number, number] {
  const second = Math.round(winding / SECOND);
  return [winding - second * SECOND, second];
}

/** The winding on the left of every slice, or the vertex where two ways of working it out disagree. */
export type Windings = { readonly left: Float64Array } | { readonly conflict: number };

/** Windings spread from slice to slice round the vertices of each connected piece; a ray sets its level, and another must agree. */
export function windings(slices: Slices, around: Around): Windings {
  const left = new Float64Array(slices.count).fill(Number.NaN);
  const pieces: number[][] = [];
  for (let i = 0; i < slices.count; i++) {
    if (!Number.isNaN(left[i]!)) continue;
    const spread = spreadFrom(slices, around, i, left);
    if ('conflict' in spread) return spread;
    pieces.push(spread.members);
  }
  const index = stripsOf(slices, 2 * pieces.length);
  const levels: number[] = [];
  for (const members of pieces) {
    const [first, second] = twoLongest(slices, members);
    const level = levelAt(slices, index, first, left);
    if (levelAt(slices, index, second, left) !== level) return { conflict: slices.tail[first]! };
    levels.push(level);
  }
  pieces.forEach((members, p) => {
    for (const i of members) left[i]! += levels[p]!;
  });
  return { left };
}

/** Gives every slice connected to the first its winding, taking the first's left to be 0. */
function spreadFrom(
  slices: Slices,
  around: Around,
  start: number,
  left: Float64Array,
): { members: number[] } | { conflict: number } {
  const { tail, head, weight } = slices;
  const { first, halves } = around;
  const members = [start];
  left[start] = 0;
  for (let m = 0; m < members.length; m++) {
    const i = members[m]!;
    for (let half = 2 * i; half <= 2 * i + 1; half++) {
      const v = half & 1 ? head[i]! : tail[i]!;
      const from = first[v]!;
      const to = first[v + 1]!;
      let k = from;
      while (halves[k] !== half) k++;
      // the winding just anticlockwise of a half-edge: the left of one leaving, the right of one arriving
      let winding = half & 1 ? left[i]! - weight[i]! : left[i]!;
      for (let step = from + 1; step < to; step++) {
        k = k + 1 < to ? k + 1 : from;
        const h = halves[k]!;
        const j = h >> 1;
        const leftOfJ = h & 1 ? winding : winding + weight[j]!;
        winding = h & 1 ? winding - weight[j]! : leftOfJ;
        if (Number.isNaN(left[j]!)) {
          left[j] = leftOfJ;
          members.push(j);
        } else if (left[j] !== leftOfJ) return { conflict: v };
      }
    }
  }
  return { members };
}

/** The slices of a piece with the longest chords: a ray from the middle of one is farthest from vertices. */
function twoLongest(slices: Slices, members: readonly number[]): readonly [number, number] {
  let first = members[0]!;
  let second = members[0]!;
  let longest = -1;
  let next = -1;
  for (const i of members) {
    const chord = chordOf(slices, i);
    if (chord > longest) {
      second = first;
      next = longest;
      first = i;
      longest = chord;
    } else if (chord > next) {
      second = i;
      next = chord;
    }
  }
  return [first, second];
}

/** By how much the windings of a piece are too low, by a ray along +x from the middle of one of its slices. As everywhere the point counts
 * as a hair higher, so it is on one side of its own slice. */
function levelAt(slices: Slices, index: Strips, own: number, left: Float64Array): number {
  const { edges, tail, head, xs, ys, edge, weight } = slices;
  const x0 = xs[tail[own]!]!;
  const y0 = ys[tail[own]!]!;
  const x1 = xs[head[own]!]!;
  const y1 = ys[head[own]!]!;
  const turn = edges.turn[edge[own]!]!;
  const [x, y] = middleOf(edges, edge[own]!, turn, x0, y0, x1, y1);
  const onLeft = x1 > x0 || (x1 === x0 && y1 < y0);
  let winding = weight[own]! * windingOfMiddle(turn, y0, y1, y, onLeft);
  const s = stripAt(index, y);
  for (let k = index.first[s]!; k < index.first[s + 1]!; k++) {
    const i = index.members[k]!;
    if (i === own) continue;
    const t = tail[i]!;
    const h = head[i]!;
    winding += weight[i]! * windingOf(edges, edge[i]!, xs[t]!, ys[t]!, xs[h]!, ys[h]!, x, y);
  }
  return winding - (onLeft ? left[own]! : left[own]! - weight[own]!);
}

/** What a slice adds to the winding of a point a hair to the left or right of its own middle: see windingOf. The middle of an
 * anticlockwise arc is to the right of its chord, of a clockwise one to the left. */
function windingOfMiddle(turn: number, y0: number, y1: number, y: number, onLeft: boolean): number {
  const leftOfChord = turn === 0 ? onLeft : turn < 0;
  const inSegment = turn !== 0 && onLeft === turn > 0;
  const arc = inSegment ? turn : 0;
  if (leftOfChord) return y0 <= y && y1 > y ? arc + 1 : arc;
  return y1 <= y && y0 > y ? arc - 1 : arc;
}
