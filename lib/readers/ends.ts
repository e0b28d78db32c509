import { distance, midpoint, type Point } from '../geometry/point.js';
import type { Mm } from '../units/length.js';
import { type End, endPoint, type Piece } from './piece.js';

/** Where ends of pieces come together. */
export interface Joint {
  readonly at: Point;
  readonly ends: readonly End[];
}

/** Two ends that do not meet, brought together or left apart. */
export interface Gap {
  readonly at: Point;
  /** mm between the ends */
  readonly width: Mm;
  readonly bridged: boolean;
}

/** Ends nearer than this are one point written with other roundings: joined without a word. */
export const ROUNDING: Mm = 1e-5;

const cell = (v: number, size: Mm): number => Math.floor(v / size);

/** Ends within a distance of each other as joints at the first one's place: by a grid of that size and its neighbours. */
function gathered(pieces: readonly Piece[], ends: readonly End[], within: Mm): Joint[] {
  const grid = new Map<string, number[]>();
  const joints: { at: Point; ends: End[] }[] = [];
  for (const end of ends) {
    const at = endPoint(pieces, end);
    const [cx, cy] = [cell(at.x, within), cell(at.y, within)];
    const near = [-1, 0, 1]
      .flatMap(dx => [-1, 0, 1].flatMap(dy => grid.get(`${cx + dx} ${cy + dy}`) ?? []))
      .find(j => distance(joints[j]!.at, at) <= within);
    if (near !== undefined) joints[near]!.ends.push(end);
    else {
      const key = `${cx} ${cy}`;
      grid.set(key, [...(grid.get(key) ?? []), joints.length]);
      joints.push({ at, ends: [end] });
    }
  }
  return joints;
}

/** Pairs of lone joints, nearest first, each joint in one pair at most. */
function pairs(joints: readonly Joint[], within: Mm): { readonly a: number; readonly b: number; readonly width: Mm }[] {
  const lone = [...joints.keys()].filter(j => joints[j]!.ends.length % 2 === 1);
  const byX = lone.sort((a, b) => joints[a]!.at.x - joints[b]!.at.x || a - b);
  const found: { a: number; b: number; width: Mm }[] = [];
  byX.forEach((a, i) => {
    for (let k = i + 1; k < byX.length && joints[byX[k]!]!.at.x - joints[a]!.at.x <= within; k++) {
      const width = distance(joints[a]!.at, joints[byX[k]!]!.at);
      if (width <= within) found.push({ a, b: byX[k]!, width });
    }
  });
  const taken = new Set<number>();
  return found
    .sort((p, q) => p.width - q.width || p.a - q.a)
    .filter(p => {
      if (taken.has(p.a) || taken.has(p.b)) return false;
      taken.add(p.a).add(p.b);
      return true;
    });
}

/** Brings the ends of pieces together: what differs by rounding, then lone ends up to `bridge` apart, nearest first, at the middle between them.
 * Lone ends farther apart than that but within ten times as far are told as gaps left open. */
export function joinEnds(
  pieces: readonly Piece[],
  ends: readonly End[],
  bridge: Mm,
): { readonly joints: Joint[]; readonly gaps: Gap[] } {
  const joints: (Joint | undefined)[] = gathered(pieces, ends, ROUNDING);
  const all = joints as readonly Joint[];
  const gaps: Gap[] = [];
  for (const { a, b, width } of pairs(all, 10 * bridge)) {
    const at = midpoint(all[a]!.at, all[b]!.at);
    gaps.push({ at, width, bridged: width <= bridge });
    if (width > bridge) continue;
    joints[a] = { at, ends: [...all[a]!.ends, ...all[b]!.ends] };
    joints[b] = undefined;
  }
  return { joints: joints.filter(j => j !== undefined), gaps };
}
