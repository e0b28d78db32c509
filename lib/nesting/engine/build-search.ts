import { type Kind, type Pose, posesOf } from './poses.js';
import type { Random } from './random.js';
import type { Bay, Search } from './search.js';
import { tablesOf } from './tables.js';

/** Overlaps thinner than this share of the smallest shape's width are touches. */
const TOUCH = 1e-8;

/** A search with nothing laid down yet: shapes are in the order of their kinds. */
export function searchOf(kinds: readonly Kind[], bays: readonly Bay[], random: Random): Search {
  const each = kinds.map(posesOf);
  const poses: Pose[] = each.flat();
  const posesFrom = new Int32Array(kinds.length + 1);
  each.forEach((p, k) => {
    posesFrom[k + 1] = posesFrom[k]! + p.length;
  });
  const kind = Int32Array.from(kinds.flatMap((k, index) => Array.from({ length: k.quantity }, () => index)));
  const count = kind.length;
  const scale = kinds.map((_, k) => Math.sqrt(Math.sqrt(poses[posesFrom[k]!]!.hullArea)));
  const size = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) size[i * count + j] = i === j ? 0 : scale[kind[i]!]! * scale[kind[j]!]!;
  return {
    tables: tablesOf(poses),
    random,
    count,
    movable: count,
    kind,
    posesFrom,
    bays,
    bay: new Int32Array(count).fill(-1),
    pose: new Int32Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    right: new Float64Array(count),
    top: new Float64Array(count),
    members: new Int32Array(count * bays.length),
    filled: new Int32Array(bays.length),
    weight: size.slice(),
    size,
    touch: TOUCH * Math.min(...poses.map(p => Math.min(p.width, p.height))),
    evaluations: 0,
  };
}
