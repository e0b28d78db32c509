import type { Finding } from '../findings/finding.js';
import { GeometryFailure } from '../geometry/failure.js';
import { movePoint } from '../geometry/motion.js';
import type { Model } from '../models/model.js';
import { apart, type Overlap, overlapOf, TOUCHING } from '../models/overlap.js';
import { placingFrom, placingKey } from '../models/placing.js';
import { named, near, type Solid, solids } from '../models/solids.js';
import type { Form } from '../parts/form.js';
import { mateFaces } from '../parts/mate-faces.js';
import type { Mm } from '../units/length.js';

/** Two pieces that take the same room, and how many pairs do in the same way. */
interface Clash {
  readonly a: Solid;
  readonly b: Solid;
  readonly overlap: Overlap | GeometryFailure;
  pairs: number;
}

/** How far a form may press into others: by the largest press of a joint it has edges of. A piece that runs through another's joint has
 * none of its own there, so either of two pieces answers for both. */
function pressOf({ part }: Form, fits: Model['fits'] = {}): Mm {
  if (Object.values(fits).every(fit => fit >= 0)) return 0;
  return mateFaces(part).reduce((press, { joint }) => Math.max(press, -(fits[joint] ?? 0)), 0);
}

function judged(a: Solid, b: Solid, fits: Model['fits']): Overlap | GeometryFailure | undefined {
  const press = Math.max(pressOf(a.form, fits), pressOf(b.form, fits));
  try {
    return overlapOf(a.form, b.form, placingFrom(a.piece, b.piece), press);
  } catch (error) {
    if (error instanceof GeometryFailure) return error;
    throw error;
  }
}

/** Pairs that clash; of pairs that lie alike only the first is worked out. */
function clashes(model: Model): Clash[] {
  const placed = solids(model);
  const known = new Map<string, Clash | undefined>();
  placed.forEach((a, i) => {
    for (const b of placed.slice(i + 1)) {
      if (!near(a, b, -TOUCHING)) continue;
      const at = placingFrom(a.piece, b.piece);
      if (apart(a.form, b.form, at)) continue;
      const key = [a.piece.part, a.form.stands, b.piece.part, b.form.stands, placingKey(at)].join();
      const same = known.get(key);
      if (same) same.pairs++;
      if (known.has(key)) continue;
      const overlap = judged(a, b, model.fits);
      known.set(key, overlap && { a, b, overlap, pairs: 1 });
    }
  });
  return [...known.values()].filter(c => c !== undefined);
}

const rounded = (n: number): number => Math.round(n * 1000) / 1000;

function finding({ a, b, overlap, pairs }: Clash): Finding {
  const where = `${a.piece.part}, ${b.piece.part}`;
  const both = `${named(a)} and ${named(b)}`;
  if (overlap instanceof GeometryFailure)
    return {
      level: 'warn',
      rule: 'interference',
      where,
      message: `${both} could not be compared: ${overlap.message}`,
    };
  const { x, y } = movePoint(overlap.at, a.piece);
  const from = rounded(overlap.low + a.piece.z);
  const to = rounded(overlap.high + a.piece.z);
  const others = pairs > 1 ? `; ${pairs} pairs in all do` : '';
  return {
    level: 'stop',
    rule: 'interference',
    where,
    message: `${both} take the same room at (${rounded(x)}, ${rounded(y)}) mm: ${rounded(overlap.area)} mm² from height ${from} to ${to} mm, ${rounded(overlap.volume)} mm³${others}; allowed: pieces that touch`,
    value: overlap.volume,
    limit: 0,
  };
}

/** Pieces of a prop that take the same room: a stop for each two that do, each way they do it told once. */
export const interference = (model: Model): Finding[] => clashes(model).map(finding);
