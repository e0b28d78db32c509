import type { Solid } from '../models/solids.js';

/** Two pieces that touch, or hang on one bolt. */
export type Pair = readonly [Solid, Solid];

/** Pieces that hang together by pairs that do, largest set first. */
export function setsOf(all: readonly Solid[], pairs: readonly Pair[]): Solid[][] {
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
export function joined(sets: readonly Solid[][], touch: (a: Solid, b: Solid) => boolean): Solid[][] {
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
