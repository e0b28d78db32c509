import type { Finding } from '../findings/finding.js';
import { distance } from '../geometry/point.js';
import type { Beside } from '../models/axes.js';
import type { Model } from '../models/model.js';
import { named, type Solid } from '../models/solids.js';
import { rounded, WITHIN } from './nearness.js';
import { joined, type Pair, setsOf } from './sets.js';
import { liesOn, liesPlainlyOn, meetsEdge } from './touching.js';

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
  const plain = joined(sides, (a, b) => liesPlainlyOn(a, b, fit) || liesPlainlyOn(b, a, fit));
  const flats = joined(plain, (a, b) => liesOn(a, b, fit) || liesOn(b, a, fit));
  const sets = joined(flats, (a, b) => meetsEdge(a, b, fit));
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
