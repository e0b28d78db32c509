import type { Prepared } from './prepared.js';
import { type Axis, comeFree } from './slide.js';
import type { Tables } from './tables.js';

/** Shapes of one kind in a line along an axis, each as near the one before as it goes. */
export interface Line {
  /** poses taken in turn */
  readonly poses: readonly number[];
  /** where each shape begins along the line; as many as fit the stock */
  readonly at: readonly number[];
  /** breadth across the line */
  readonly breadth: number;
}

/** Ways of making lines that are kept for one kind, the densest. */
const KEPT = 6;

/** Where the next pose begins in a line after those before it. */
function nextAt(tables: Tables, axis: Axis, poses: readonly number[], at: readonly number[], touch: number): number {
  const size = axis === 'x' ? tables.width : tables.height;
  const pose = poses[at.length % poses.length]!;
  let place = at.at(-1) ?? 0;
  for (let k = at.length - 1; k >= 0; k--) {
    const other = poses[k % poses.length]!;
    if (at[k]! + size[other]! <= at.at(-1)!) break;
    const before = place;
    place = at[k]! - comeFree(tables, pose, other, axis, at[k]! - place, 0, touch / 2);
    if (place > before + touch && k < at.length - 1) k = at.length;
  }
  return place;
}

/** The line of these poses in turn that is as long as the room; empty if not one fits. */
function lineOf(tables: Tables, axis: Axis, poses: readonly number[], room: number, touch: number): Line {
  const [size, breadths] = axis === 'x' ? [tables.width, tables.height] : [tables.height, tables.width];
  const at: number[] = [];
  for (;;) {
    const place = nextAt(tables, axis, poses, at, touch);
    if (place + size[poses[at.length % poses.length]!]! > room + touch) break;
    at.push(place);
  }
  return { poses, at, breadth: Math.max(...poses.map(p => breadths[p]!)) };
}

/** The pose a half turn from another, if there is one. */
function opposite(p: Prepared, pose: number, among: readonly number[]): number | undefined {
  const { turn } = p.tables.poses[pose]!;
  return among.find(o => {
    const other = p.tables.poses[o]!.turn;
    return other.mirrored === turn.mirrored && Math.abs(Math.abs(other.angle - turn.angle) - Math.PI) < 1e-9;
  });
}

const made = new WeakMap<Prepared, Map<string, readonly Line[]>>();

/** The densest lines of a kind along an axis of a stock, as long as it is; worked out when first asked for. */
export function linesOf(p: Prepared, kind: number, stock: number, axis: Axis): readonly Line[] {
  const known = made.get(p) ?? new Map<string, readonly Line[]>();
  made.set(p, known);
  const key = `${axis} ${kind} ${stock}`;
  const lines = known.get(key) ?? makeLines(p, kind, stock, axis);
  known.set(key, lines);
  return lines;
}

/** The densest lines of a kind along an axis of a stock, alone or with every other shape turned about; those of more than one shape. */
function makeLines(p: Prepared, kind: number, stock: number, axis: Axis): readonly Line[] {
  const { tables, problem, touch } = p;
  const { width, height } = problem.stocks[stock]!;
  const room = axis === 'x' ? width : height;
  const from = p.posesFrom[kind]!;
  const poses = Array.from({ length: p.posesFrom[kind + 1]! - from }, (_, k) => from + k).filter(
    pose => p.allowed[pose * problem.stocks.length + stock] === 1,
  );
  const density = (l: Line): number => (l.at.length * p.area[kind]!) / l.breadth;
  return poses
    .flatMap(pose => {
      const other = opposite(p, pose, poses);
      return other === undefined ? [[pose]] : [[pose], [pose, other]];
    })
    .map(turns => lineOf(tables, axis, turns, room, touch))
    .filter(l => l.at.length > 1)
    .sort((a, b) => density(b) - density(a))
    .slice(0, KEPT);
}
