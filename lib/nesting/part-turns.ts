import { asCircle } from '../geometry/outline.js';
import type { Point } from '../geometry/point.js';
import { segments } from '../geometry/segment.js';
import type { Radians } from '../units/length.js';
import type { GrainRule, NestPart, NestStock } from './job.js';

/** A way a part may lie, before it is known on which stock. */
export interface Lie {
  readonly angle: Radians;
  readonly mirrored: boolean;
}

const TURN = 2 * Math.PI;
/** Where any turn is allowed, these steps are tried, from the longest straight edge and from the part's own frame. */
const FREE_STEPS = 12;
const NEAR = 1e-9;

const folded = (angle: Radians, period: Radians): Radians => ((angle % period) + period) % period;

/** How far a direction is off another, forwards or backwards alike. */
function off(a: Radians, b: Radians): Radians {
  const d = folded(a - b, Math.PI);
  return Math.min(d, Math.PI - d);
}

/** The direction the rule wants in the stock's frame; undefined where there is nothing to keep to. */
function wanted(rule: GrainRule | undefined, stock: NestStock): Radians | undefined {
  const grain = stock.grain ?? 'along';
  if (!rule || rule.rule === 'any' || grain === 'none') return undefined;
  return (grain === 'along') === (rule.rule === 'along') ? 0 : Math.PI / 2;
}

function longestEdge(part: NestPart): Radians {
  let longest = 0;
  let angle = 0;
  for (const s of segments(part.region.outer)) {
    const dx = s.to.x - s.from.x;
    const dy = s.to.y - s.from.y;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (s.kind !== 'line' || length <= longest * (1 + 1e-9)) continue;
    longest = length;
    angle = Math.atan2(dy, dx);
  }
  return angle;
}

const stepped = (from: Radians, step: Radians): Radians[] =>
  Array.from({ length: Math.max(1, Math.round(TURN / step)) }, (_, k) => from + k * step);

/** Turns to try for a part that may be turned freely. */
function freeTurns(part: NestPart, mirrored: boolean): Radians[] {
  const edge = longestEdge(part);
  const own = stepped(0, Math.PI / 2);
  return [...own, ...stepped(mirrored ? edge - Math.PI : -edge, TURN / FREE_STEPS)];
}

/** Turns that bring a direction of the part to the wanted one, and a little to either side where that is allowed. */
function grainTurns(rule: GrainRule, target: Radians, mirrored: boolean): Radians[] {
  const seen = mirrored ? Math.PI - rule.direction : rule.direction;
  const within = rule.within ?? 0;
  const sway = within > 0 ? [0, -within, within, -within / 2, within / 2] : [0];
  return sway.flatMap(w => [target - seen + w, target - seen + w + Math.PI]);
}

function turnsOn(part: NestPart, stock: NestStock, mirrored: boolean): Radians[] {
  const turns = part.turns ?? 'free';
  const target = wanted(part.grain, stock);
  if (turns === 'free')
    return part.grain && target !== undefined ? grainTurns(part.grain, target, mirrored) : freeTurns(part, mirrored);
  const all = turns === 'none' ? [0] : turns === 'half' ? [0, Math.PI] : stepped(0, turns.step);
  if (!part.grain || target === undefined) return all;
  const seen = mirrored ? Math.PI - part.grain.direction : part.grain.direction;
  const { within = 0 } = part.grain;
  return all.filter(a => off(seen + a, target) <= within + NEAR);
}

/** Whether a part is of concentric circles, so that every turn looks alike. */
function isRound(part: NestPart): boolean {
  const circles = [part.region.outer, ...part.region.openings].map(asCircle);
  const [first] = circles;
  const apart = (c: Point): number => Math.abs(c.x - first!.center.x) + Math.abs(c.y - first!.center.y);
  return circles.every(c => c !== undefined && apart(c.center) < NEAR);
}

/** Ways a part may lie on a stock, each once, from 0 up to a full turn. */
export function liesOn(part: NestPart, stock: NestStock): Lie[] {
  const lies: Lie[] = [];
  const once = isRound(part);
  for (const mirrored of part.mirrored ? [false, true] : [false])
    for (const turn of turnsOn(part, stock, mirrored)) {
      if (once && lies.length > 0) return lies;
      // -0 and a hair below a full turn are 0
      const angle = folded(turn + NEAR, TURN) < 2 * NEAR ? 0 : folded(turn, TURN);
      if (!lies.some(l => l.mirrored === mirrored && Math.abs(l.angle - angle) < NEAR)) lies.push({ angle, mirrored });
    }
  return lies;
}
