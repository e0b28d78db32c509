import type { Finding } from '../findings/finding.js';
import { distance } from '../geometry/point.js';
import type { Axis, Beside } from '../models/axes.js';
import { named } from '../models/solids.js';
import { NEAR, rounded, WITHIN } from './nearness.js';

/** Bores that differ by no more than this are for one bolt, mm. */
const ONE_BOLT = 1;

/** Whether two axes should have been one: two round ones; something round and an arc; a bore and a hole drilled in its size; holes drilled
 * in one size, as for a pin. */
function belong(a: Axis, b: Axis): boolean {
  switch ([a.kind, b.kind].sort().join()) {
    case 'round,round':
    case 'arc,round':
      return true;
    case 'drill,round':
      return Math.abs(a.bore - b.bore) <= ONE_BOLT;
    case 'drill,drill':
      return Math.abs(a.bore - b.bore) <= WITHIN;
    default:
      return false;
  }
}

function finding(stray: Axis, other: Axis, off: number): Finding {
  const place = ({ at }: Axis): string => `(${rounded(at.x)}, ${rounded(at.y)})`;
  return {
    level: 'warn',
    rule: 'mating',
    where: `${stray.of.piece.part}, ${other.of.piece.part}`,
    message: `${named(stray.of)} and ${named(other.of)} are round about ${place(stray)} and ${place(other)} mm, ${rounded(off)} mm off one axis; allowed: one axis, or axes more than ${NEAR} mm apart`,
    value: off,
    limit: WITHIN,
  };
}

/** Round edges and bores of different pieces that are nearly about one axis, and are not: the first of each two parts.
 * @param close axes no farther apart than NEAR */
export function offCentre(close: readonly Beside[]): Finding[] {
  const found = new Map<string, Finding>();
  const about = ({ at }: Axis): Beside[] =>
    close.filter(({ a, b, off }) => off <= WITHIN && (distance(a.at, at) <= WITHIN || distance(b.at, at) <= WITHIN));
  // a piece with another edge about that axis is on it
  const onAxis = (axis: Axis, { of }: Axis): boolean => about(axis).some(({ a, b }) => a.of === of || b.of === of);
  for (const { a, b, off } of close) {
    const key = [a.of.piece.part, b.of.piece.part].sort().join();
    if (off <= WITHIN || found.has(key) || !belong(a, b) || onAxis(a, b) || onAxis(b, a)) continue;
    // the stray is the one with less about its axis
    const [stray, other] = about(a).length <= about(b).length ? [a, b] : [b, a];
    found.set(key, finding(stray, other, off));
  }
  return [...found.values()];
}
