import type { Mm, Radians } from '../../units/length.js';
import { type Arc, middleOf } from '../registration.js';
import { layerCount } from '../ring/layers.js';
import type { RingOptions } from '../ring-options.js';
import { gapsFor, relative, ringOfSeams } from '../seams.js';
import { notchArcs } from './bars.js';
import { type FrameSizes, notchDepth } from './sizes.js';

/** Least angle between seams of neighbouring layers where the plan does not say, as a share of a felloe's; as rings have it. */
const STAGGER = 1 / 8;
const ROUNDING: Radians = 1e-9;

/** Least angle from any seam of a layer to the edge of a notch; below 0 in one. */
export const fromNotches = (s: FrameSizes, first: Radians): Radians =>
  Math.min(
    Infinity,
    ...notchArcs(s).flatMap(arc =>
      ringOfSeams(s.segments, first).map(seam => Math.abs(relative(middleOf(arc), seam)) - arc.sweep / 2),
    ),
  );

/** First seams as good as any: the middles of the stretches between notches, widest first. */
const clearSeams = (s: FrameSizes): Radians[] => gapsFor(s.segments, notchArcs(s).map(middleOf)).map(g => g.middle);

/** The first seam of the layers between: as far from notches as the least angle to the seams behind and before it leaves. */
function otherSeam(s: FrameSizes, first: Radians, sweep: Radians): Radians {
  const least = s.seam.stagger ?? STAGGER * sweep;
  const apart = (a: Radians): Radians => {
    const off = Math.abs(a - first) % sweep;
    return Math.min(off, sweep - off);
  };
  const ways = [...clearSeams(s), first + least, first - least].filter(a => apart(a) >= least - ROUNDING);
  return ways.reduce((best, a) => (fromNotches(s, a) > fromNotches(s, best) + ROUNDING ? a : best), first + sweep / 2);
}

/** Where the seams of a full ring with notches lie: as far from them as can be. Elsewhere the ring's own choice, or the plan's. */
function seamPlaces(s: FrameSizes, layers: number): Pick<RingOptions, 'first' | 'offsets'> {
  const at = typeof s.seam.at === 'object' ? s.seam.at.angle : undefined;
  if (!s.full) return {};
  if (!s.mullions) return at !== undefined ? { first: at } : {};
  const first = at ?? clearSeams(s)[0]!;
  // a laser's scarf is the stagger of its layers
  if (layers === 1 || (s.method === 'laser' && s.seam.joint === 'scarf')) return { first };
  const other = otherSeam(s, first, (2 * Math.PI) / s.segments);
  return { first, offsets: Array.from({ length: layers }, (_, j) => (j % 2 === 0 ? first : other)) };
}

/** What notches take, as seams see it: as wide, square to their middle line, as they are by angle. */
const slotsFor = (s: FrameSizes): NonNullable<RingOptions['slots']> =>
  notchArcs(s).map(arc => ({
    at: [middleOf(arc)],
    width: 2 * s.inner * Math.sin(arc.sweep / 2),
    low: 0,
    high: notchDepth(s),
  }));

/** The stretch an arc covers, symmetric about straight up. */
export const arcOf = ({ sweep }: FrameSizes): Arc => ({ from: -sweep / 2, sweep });

/** What the ring's edges lose to a rebate or a routed edge, whichever is wider, mm. */
const edgeOf = ({ rebate, edge }: FrameSizes): Mm => Math.max(rebate.width, edge?.radius ?? 0);

/** The frame's ring as if nothing were let into it. */
export function plainRing(s: FrameSizes): RingOptions {
  const { layers } = s.ring;
  return {
    inner: s.inner,
    outer: s.outer,
    pieces: s.segments,
    ...(!s.full && { arc: arcOf(s) }),
    ...(layers !== undefined && { layers }),
    thickness: s.ring.thickness,
    stock: s.ring.stock,
    method: s.method,
    seam: s.seam,
    ...(s.fit.seam !== undefined && { clearance: s.fit.seam }),
    edge: edgeOf(s),
    rebate: s.rebate.width,
    field: 'ring',
  };
}

/** The frame's ring, its seams as far from notches as can be, before anything is cut into it. */
export function frameRing(s: FrameSizes): RingOptions {
  const plain = plainRing(s);
  return { ...plain, slots: slotsFor(s), ...seamPlaces(s, Math.max(1, Math.round(layerCount(plain)))) };
}
