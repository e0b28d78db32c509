import type { Mm } from '../units/length.js';
import type { Model } from './model.js';
import { apart, overlapOf, type Placing } from './overlap.js';
import { placingFrom, placingKey } from './placing.js';
import { type Solid, solids } from './solids.js';
import { unlessFailed } from './unless-failed.js';

/** Pieces are pressed into each other by this much to see how much of their faces touch. */
const PRESS: Mm = 0.05;

/** Two kinds of part that lie face on face, and the area they cover of each other in the whole prop, mm². */
export interface Contact {
  readonly a: string;
  readonly b: string;
  readonly area: number;
}

function covered(a: Solid, b: Solid, at: Placing): number {
  const pressed = [PRESS, -PRESS].map(by => ({ ...at, rise: at.rise + by }));
  return pressed.reduce((sum, placing) => {
    if (apart(a.form, b.form, placing)) return sum;
    return sum + (unlessFailed(() => overlapOf(a.form, b.form, placing, 0))?.volume ?? 0) / PRESS;
  }, 0);
}

/** Where pieces of different parts lie face on face, one over the other: what glue joins and no brush reaches once they are together.
 * Each pair of parts once, those that touch only. Edges that meet are not counted (see matingEdges). */
export function contacts(model: Model): Contact[] {
  const placed = solids(model);
  const known = new Map<string, number>();
  const found = new Map<string, Contact>();
  placed.forEach((a, i) => {
    for (const b of placed.slice(i + 1)) {
      const at = placingFrom(a.piece, b.piece);
      const key = [a.piece.part, a.form.stands, b.piece.part, b.form.stands, placingKey(at)].join();
      const area = known.get(key) ?? covered(a, b, at);
      known.set(key, area);
      if (area <= 0 || a.piece.part === b.piece.part) continue;
      const pair = `${a.piece.part} ${b.piece.part}`;
      found.set(pair, { a: a.piece.part, b: b.piece.part, area: area + (found.get(pair)?.area ?? 0) });
    }
  });
  return [...found.values()];
}
