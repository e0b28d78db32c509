import type { Finding } from '../findings/finding.js';
import { distance } from '../geometry/point.js';
import type { Beside } from '../models/axes.js';
import { facingAt, gapsBetween } from '../models/facing.js';
import type { Model } from '../models/model.js';
import { apart, overlapOf } from '../models/overlap.js';
import { placingFrom } from '../models/placing.js';
import { named, near, type Solid } from '../models/solids.js';
import { unlessFailed } from '../models/unless-failed.js';
import { rounded, WITHIN } from './nearness.js';

/** How far pieces are pressed together beyond their fit, mm. */
const PRESS = 0.05;

type Pair = readonly [Solid, Solid];

/** Pieces that hang together by pairs that do, largest set first. */
function setsOf(all: readonly Solid[], pairs: readonly Pair[]): Solid[][] {
  const up = new Map<Solid, Solid>();
  const top = (s: Solid): Solid => {
    let found = s;
    for (let next = up.get(found); next; next = up.get(found)) found = next;
    if (found !== s) up.set(s, found);
    return found;
  };
  for (const [a, b] of pairs) {
    const [p, q] = [top(a), top(b)];
    if (p !== q) up.set(q, p);
  }
  const sets = new Map<Solid, Solid[]>();
  for (const s of all) {
    const set = sets.get(top(s));
    if (set) set.push(s);
    else sets.set(top(s), [s]);
  }
  return [...sets.values()].sort((a, b) => b.length - a.length);
}

/** Sets of which a piece of one touches one of the other, joined until none does. */
function joined(sets: readonly Solid[][], touch: (a: Solid, b: Solid) => boolean): Solid[][] {
  const left = [...sets];
  const done: Solid[][] = [];
  for (let set = left.shift(); set; set = left.shift()) {
    for (let i = 0; i < left.length; ) {
      const next = left[i]!;
      if (set.some(a => next.some(b => touch(a, b)))) {
        set.push(...next);
        left.splice(i, 1);
        i = 0;
      } else i++;
    }
    done.push(set);
  }
  return done.sort((a, b) => b.length - a.length);
}

/** Whether one piece lies flat on the other, within a fit. */
function liesOn(a: Solid, b: Solid, fit: number): boolean {
  const rise = b.piece.z - a.piece.z;
  const gaps = gapsBetween(a.form, b.form, rise, -WITHIN, fit + WITHIN);
  if (gaps.length === 0) return false;
  const at = placingFrom(a.piece, b.piece);
  return gaps.some(({ low, high }) => unlessFailed(() => facingAt(a.form, b.form, at, low, high)) !== undefined);
}

const meetsFlat = (a: Solid, b: Solid, fit: number): boolean =>
  near(a, b, fit + WITHIN) && (liesOn(a, b, fit) || liesOn(b, a, fit));

/** The four ways pieces are pressed to see whether their edges touch. */
const WAYS = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];

/** Whether two pieces touch edge to edge: pressed together a little they take the same room. */
function meetsEdge(a: Solid, b: Solid, by: number): boolean {
  if (!near(a, b, by)) return false;
  const at = placingFrom(a.piece, b.piece);
  return WAYS.some(w => {
    const pressed = { ...at, x: at.x + by * w.x, y: at.y + by * w.y };
    return !apart(a.form, b.form, pressed) && unlessFailed(() => overlapOf(a.form, b.form, pressed, 0)) !== undefined;
  });
}

function loose(group: readonly Solid[], rest: readonly Solid[]): Finding {
  const [first] = group;
  const away = (s: Solid): number => distance(first!.middle, s.middle);
  const nearest = rest.reduce((n, s) => (away(s) < away(n) ? s : n));
  const { x, y } = first!.middle;
  const others = group.length > 1 ? ` and ${group.length - 1} more that hang together` : '';
  return {
    level: 'warn',
    rule: 'mating',
    where: `${first!.piece.part}, ${nearest.piece.part}`,
    message: `${named(first!)}${others}, at (${rounded(x)}, ${rounded(y)}, ${rounded(first!.low)}) mm, touches none of the other pieces, and no bore of it is in line with theirs; the nearest is ${named(nearest)}; allowed: pieces that hang together`,
    value: group.length,
    limit: 0,
  };
}

/** Pieces that neither touch the rest of the prop nor have a bore in line with one of it: the first of each two parts.
 * @param met pieces whose tagged faces touch   @param close axes near each other */
export function held(model: Model, all: readonly Solid[], met: readonly Pair[], close: readonly Beside[]): Finding[] {
  const fit = Math.max(0, ...Object.values(model.fits ?? {}));
  const bolted = close.filter(({ a, b, off }) => off <= WITHIN && a.bore > 0 && b.bore > 0);
  const sides = setsOf(all, [...met, ...bolted.map(({ a, b }): Pair => [a.of, b.of])]);
  const flats = joined(sides, (a, b) => meetsFlat(a, b, fit));
  const sets = joined(flats, (a, b) => meetsEdge(a, b, fit + PRESS));
  const found = sets.slice(1).map(set => loose(set, sets[0]!));
  return found.filter(({ where }, i) => found.findIndex(f => f.where === where) === i);
}

/** Parts of which more or fewer pieces are in place than are cut. */
export function complete(model: Model): Finding[] {
  const placed = new Map<string, number>();
  for (const { part } of model.pieces) placed.set(part, (placed.get(part) ?? 0) + 1);
  return model.parts.flatMap(({ id, name, quantity }): Finding[] => {
    const there = placed.get(id) ?? 0;
    if (there === quantity) return [];
    const message = `${name} (${id}) is in place ${there} times; allowed: ${quantity}, as many as are cut`;
    return [{ level: 'warn', rule: 'mating', where: id, message, value: there, limit: quantity }];
  });
}
