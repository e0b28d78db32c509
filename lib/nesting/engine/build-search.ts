import type { Meter } from './meter.js';
import type { Prepared } from './prepared.js';
import type { Random } from './random.js';
import { type Bay, put, type Search } from './search.js';

/** Bays that stand apart, so that nothing in one reaches into another. */
export function baysOf(prepared: Prepared, stocks: readonly number[]): Bay[] {
  let x = 0;
  return stocks.map(stock => {
    const { width, height } = prepared.problem.stocks[stock]!;
    const bay: Bay = { x, y: 0, width, height, stock };
    x += 2 * width;
    return bay;
  });
}

function sizes(scale: Float64Array, count: number): Float64Array {
  const size = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) if (i !== j) size[i * count + j] = scale[i]! * scale[j]!;
  return size;
}

/** A search with nothing laid down yet but what is forbidden. @param kinds which kind each shape is
 * @param weighed whether overlaps are to be weighed; without it only `isFree` may be asked */
export function searchOf(
  prepared: Prepared,
  kinds: ArrayLike<number>,
  bays: readonly Bay[],
  random: Random,
  meter: Meter,
  weighed = true,
): Search {
  const { tables, posesFrom, allowed, touch, problem } = prepared;
  const fixed = bays.flatMap((bay, b) => prepared.forbidden[bay.stock]!.map(f => ({ ...f, bay: b })));
  const movable = kinds.length;
  const count = movable + fixed.length;
  const scale = new Float64Array(count).fill(1);
  for (let i = 0; i < movable; i++) scale[i] = prepared.scale[kinds[i]!]!;
  if (fixed.length > 0) scale.fill(Math.max(...prepared.scale), movable);
  const size = weighed ? sizes(scale, count) : new Float64Array(0);
  const s: Search = {
    tables,
    random,
    count,
    movable,
    kind: Int32Array.from(kinds),
    posesFrom,
    allowed,
    stocks: problem.stocks.length,
    bays,
    bay: new Int32Array(count).fill(-1),
    pose: new Int32Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    right: new Float64Array(count),
    top: new Float64Array(count),
    members: new Int32Array(count * bays.length),
    filled: new Int32Array(bays.length),
    inWay: new Int32Array(count),
    weight: size.slice(),
    size,
    touch,
    meter,
  };
  fixed.forEach(({ pose, at, bay }, k) => {
    put(s, movable + k, pose, bays[bay]!.x + at.x, bays[bay]!.y + at.y, bay);
  });
  return s;
}
