import type { Meter } from './meter.js';
import type { Random } from './random.js';
import type { Tables } from './tables.js';

/** A rectangle to lay shapes in: a strip, or one of several sheets set side by side. */
export interface Bay {
  x: number;
  y: number;
  width: number;
  height: number;
  /** which kind of stock it is */
  readonly stock: number;
}

/** All that changes while shapes are moved about; flat arrays, nothing is made anew in the inner loops. Lengths in the problem's unit. */
export interface Search {
  readonly tables: Tables;
  readonly random: Random;
  /** shapes, the fixed ones last */
  readonly count: number;
  /** of these, how many may move */
  readonly movable: number;
  /** which kind each movable shape is, and the poses it may take: posesFrom[kind] up to posesFrom[kind + 1] */
  readonly kind: Int32Array;
  readonly posesFrom: Int32Array;
  /** whether a pose may lie on a kind of stock: pose * stocks + stock */
  readonly allowed: Uint8Array;
  readonly stocks: number;
  readonly bays: readonly Bay[];
  readonly bay: Int32Array;
  readonly pose: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** upper right corner of each box */
  readonly right: Float64Array;
  readonly top: Float64Array;
  /** shapes in each bay: bay * count up to bay * count + filled[bay] */
  readonly members: Int32Array;
  readonly filled: Int32Array;
  /** room for a list of shapes while one is slid along */
  readonly inWay: Int32Array;
  /** weight of each pair's overlap, the pair's size included, count * count */
  readonly weight: Float64Array;
  /** size of each pair, without its weight: how much its overlap counts */
  readonly size: Float64Array;
  /** overlap thinner than this is a touch */
  readonly touch: number;
  readonly meter: Meter;
}

/** Puts a shape at a place. It stays in its bay's list unless the bay changes. */
export function put(s: Search, i: number, pose: number, x: number, y: number, bay: number): void {
  if (s.bay[i] !== bay) {
    leave(s, i);
    s.members[bay * s.count + s.filled[bay]!] = i;
    s.filled[bay]!++;
    s.bay[i] = bay;
  }
  s.pose[i] = pose;
  s.x[i] = x;
  s.y[i] = y;
  s.right[i] = x + s.tables.width[pose]!;
  s.top[i] = y + s.tables.height[pose]!;
}

/** Takes a shape out of its bay's list; those after it keep their order, so that sums come out the same. */
export function leave(s: Search, i: number): void {
  const bay = s.bay[i]!;
  if (bay < 0) return;
  const from = bay * s.count;
  const end = from + s.filled[bay]!;
  let k = from;
  while (s.members[k] !== i) k++;
  s.members.copyWithin(k, k + 1, end);
  s.filled[bay]!--;
  s.bay[i] = -1;
}
