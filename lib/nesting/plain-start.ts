import { bounds, boundsOfAll } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import { offset } from '../geometry/offset.js';
import { solid } from '../geometry/outline.js';
import type { Pose } from './engine/poses.js';
import type { LaidSheet, SheetLayout } from './engine/sheets.js';
import { preparedOf } from './engine/task.js';
import { layOut } from './layout.js';
import type { Job } from './nest.js';
import { silhouette } from './silhouette.js';
import type { Turned } from './turns.js';

/** So many ways for a part to lie are enough for a plain layout. */
const MOST_WAYS = 8;

/** A pose as the plain layout takes it; its turn carries the pose's number. */
function wayOf(job: Job, pose: Pose): Turned {
  const { angle, mirrored } = pose.turn;
  const part = job.parts[pose.kind]!;
  const room = job.gap > 0 ? offset([solid(part.region.outer)], job.gap / 2) : [solid(part.region.outer)];
  const outlines = room.map(r => moveRegion(r, { mirrored, turn: angle, x: 0, y: 0 }).outer);
  const box = boundsOfAll(outlines.map(bounds));
  return { turn: angle, silhouette: silhouette(outlines), corner: { x: box.minX, y: box.minY } };
}

/** A layout to begin with: all on one kind of stock that is a plain rectangle, each sheet filled from its left end. Far from the best
 * where shapes are odd, hard to better where they are bars. @returns undefined where no one stock takes all, or there are too few */
export function plainStart(job: Job): SheetLayout | undefined {
  const p = preparedOf(job.problem);
  const { stocks } = job.problem;
  const each = (k: number): number => stocks[k]!.price / p.room[k]!;
  const poses = (kind: number, stock: number): number[] => {
    const all = Array.from({ length: p.posesFrom[kind + 1]! - p.posesFrom[kind]! }, (_, i) => p.posesFrom[kind]! + i);
    return all.filter(i => p.allowed[i * stocks.length + stock] === 1).slice(0, MOST_WAYS);
  };
  const takesAll = (k: number): boolean =>
    stocks[k]!.forbidden.length === 0 && job.parts.every((_, i) => poses(i, k).length > 0);
  const [stock] = stocks
    .map((_, k) => k)
    .filter(takesAll)
    .sort((a, b) => each(a) - each(b) || a - b);
  if (stock === undefined) return undefined;
  const numbers = new Map<Turned, number>();
  const batches = job.parts.map((part, kind) => {
    const ways = poses(kind, stock).map(i => {
      const way = wayOf(job, p.tables.poses[i]!);
      numbers.set(way, i);
      return way;
    });
    return { ways, quantity: part.quantity, area: p.area[kind]! };
  });
  const { width, height, count } = stocks[stock]!;
  const filled = layOut(batches, { length: width, width: height });
  if (filled.length > (count ?? Infinity)) return undefined;
  const sheets = filled.map(
    (f): LaidSheet => ({
      stock,
      laid: f.laid.map(l => ({ kind: l.batch, pose: numbers.get(l.way)!, x: l.spot.x, y: l.spot.y })),
    }),
  );
  return { sheets, left: [] };
}
