import type { CutPart } from '../cutting/cut-part.js';
import { area } from '../geometry/measure.js';
import type { Mm } from '../units/length.js';
import type { Kind } from './engine/poses.js';
import type { Prepared, Problem } from './engine/prepared.js';
import { runNow } from './engine/rounds.js';
import { searchSheets } from './engine/search-sheets.js';
import type { LaidSheet } from './engine/sheets.js';
import { preparedOf } from './engine/task.js';
import type { Filled, Room } from './layout.js';
import { roomShape } from './part-room.js';
import type { Turned } from './turns.js';

/** A cut part, how many, and the ways it may lie. */
interface Candidate {
  readonly cut: CutPart;
  readonly quantity: number;
  readonly ways: readonly Turned[];
}

/** Steps spent where fewer sheets might do, unless more are asked for: a few tenths of a second. */
const STEPS = 2;

const kindOf = ({ cut, quantity, ways }: Candidate, gap: Mm, smallest: Mm): Kind => ({
  shape: roomShape(cut.finished, gap, smallest),
  quantity,
  turns: ways.map(({ turn, corner, silhouette: { width, height } }) => ({
    angle: turn,
    mirrored: false,
    box: { minX: corner.x, minY: corner.y, maxX: corner.x + width, maxY: corner.y + height },
  })),
});

/** The pose in which a kind lies as in a given way; ways that look alike are one pose. */
function poseOf(p: Prepared, kind: number, way: Turned): number {
  const { poses } = p.tables;
  const from = p.posesFrom[kind]!;
  const mine = poses.slice(from, p.posesFrom[kind + 1]!);
  return (
    from +
    Math.max(
      0,
      mine.findIndex(q => q.turn.angle === way.turn),
    )
  );
}

const laidOut = (p: Prepared, filled: readonly Filled[]): LaidSheet[] =>
  filled.map(f => ({
    stock: 0,
    laid: f.laid.map(l => ({ kind: l.batch, pose: poseOf(p, l.batch, l.way), x: l.spot.x, y: l.spot.y })),
  }));

function filledOf(p: Prepared, sheet: LaidSheet, candidates: readonly Candidate[]): Filled {
  const laid = sheet.laid.map(l => {
    const way = candidates[l.kind]!.ways.find(w => w.turn === p.tables.poses[l.pose]!.turn.angle)!;
    return { batch: l.kind, way, spot: { x: l.x, y: l.y, waste: 0 } };
  });
  return { laid, used: Math.max(...laid.map(l => l.spot.x + l.way.silhouette.width)) };
}

/** A plain layout on fewer sheets, if the parts' area leaves hope and a short search finds the way; else as it is.
 * @param gap between finished outlines, mm @param steps to search, whole, 1 or more */
export function fewerSheets(
  candidates: readonly Candidate[],
  plain: readonly Filled[],
  room: Room,
  gap: Mm,
  steps: number = STEPS,
): readonly Filled[] {
  const total = candidates.reduce((sum, c) => sum + c.quantity * area(c.cut.finished), 0);
  if (plain.length <= Math.max(1, Math.ceil(total / (room.length * room.width)))) return plain;
  const smallest = Math.min(
    ...candidates.flatMap(c => c.ways.map(w => Math.min(w.silhouette.width, w.silhouette.height))),
  );
  const problem: Problem = {
    kinds: candidates.map(c => kindOf(c, gap, smallest)),
    stocks: [{ width: room.length, height: room.width, forbidden: [], price: 1 }],
  };
  const p = preparedOf(problem);
  const given = { sheets: laidOut(p, plain), left: [] };
  const found = runNow(searchSheets(problem, { kind: 'steps', steps }, 1, () => given));
  return found.sheets.length < plain.length ? found.sheets.map(s => filledOf(p, s, candidates)) : plain;
}
