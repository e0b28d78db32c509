import type { Mm, Radians } from '../../units/length.js';
import { type Arc, arcsBetween, holds, middleOf, PIN_SIZES, PIN_WALL, pinPairs } from '../registration.js';
import { wrap } from '../seams.js';
import type { RingLayout } from './layout.js';
import { INNER_PIN, type RingPins } from './pins.js';

/** A ring of several layers whose pins keep clear of more than seams. Lengths mm. */
export interface PinnedRing {
  readonly inner: Mm;
  readonly outer: Mm;
  readonly layout: RingLayout;
  /** how far from its line each seam is taken up */
  readonly reach: Mm;
  /** stretches of the ring that something else takes up, all across the band */
  readonly taken: readonly Arc[];
  /** things that hold a piece in register as two pins do, by their angles: a piece with one of them needs no pin */
  readonly holding: readonly Radians[];
  /** largest diameter there is room for beside other work; any unless given */
  readonly most?: Mm;
}

function pinsOf(ring: PinnedRing, diameter: Mm): RingPins {
  // the inner pin of a pair has the least room: angles are taken at its radius
  const radius = ring.inner + INNER_PIN * (ring.outer - ring.inner);
  const angle = (length: Mm): Radians => Math.asin(Math.min(1, length / radius));
  const margin = angle(diameter / 2 + PIN_WALL);
  const seams = ring.layout.seams
    .flat()
    .map((at): Arc => ({ from: at - angle(ring.reach), sweep: 2 * angle(ring.reach) }));
  const taken = [...seams, ...ring.taken];
  const lines = taken.flatMap(t => [t.from, t.from + t.sweep]);
  const isTaken = (a: Arc): boolean => taken.some(t => wrap(middleOf(a) - t.from) < t.sweep);
  const free = arcsBetween(lines.length > 0 ? lines : [0]).filter(a => a.sweep > 2 * margin && !isTaken(a));
  const { pieces } = ring.layout;
  const pairs = pinPairs(pieces, free, margin);
  const held = (piece: Arc): boolean => [...pairs.map(p => p.angle), ...ring.holding].some(a => holds(piece, a));
  return { diameter, pairs, unpinned: pieces.filter(piece => !held(piece)).length };
}

/** The largest pins that find room in every piece of a ring of several layers, at most a fifth of its band; none in a ring of one. */
export function clearPins(ring: PinnedRing): RingPins {
  if (ring.layout.layers.length === 1) return { diameter: PIN_SIZES[0]!, pairs: [], unpinned: 0 };
  const sizes = PIN_SIZES.filter(d => d <= (ring.outer - ring.inner) / 5 && d <= (ring.most ?? Infinity));
  const tried = (sizes.length > 0 ? sizes : PIN_SIZES.slice(-1)).map(d => pinsOf(ring, d));
  return tried.find(p => p.unpinned === 0) ?? tried.at(-1)!;
}
