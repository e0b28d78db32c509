import { barsApart, fromRay, type RakedBar, type Stretch, slotsAt, tabRoom, tabsIn } from '../../joints/raked-slot.js';
import { traitsOf } from '../../stock/traits.js';
import type { Mm, Radians } from '../../units/length.js';
import { layerSeamed } from '../ring/joined.js';
import { type RingLayout, ringLayout } from '../ring/layout.js';
import type { RingOptions } from '../ring.js';
import { gapsFor, ringOfSeams, wrap } from '../seams.js';
import type { WaterSizes } from './sizes.js';

/** Wood round a slot: half the paddle's thickness, within limits, and what the rim's material needs; common practice, no source. */
const LEAST_WALL: Mm = 3;
const MOST_WALL: Mm = 8;
export const slotWall = ({ paddles, rim }: WaterSizes): Mm =>
  Math.max(traitsOf(rim.stock).tongue, Math.min(MOST_WALL, Math.max(LEAST_WALL, paddles.thickness / 2)));

/** A paddle as the rims see it. */
export const paddleBar = (s: WaterSizes): RakedBar => ({
  inner: s.inner,
  outer: s.outer,
  rake: s.paddles.rake,
  thickness: s.paddles.thickness,
  depth: s.paddles.depth,
  clearance: s.fit.slot,
  wall: slotWall(s),
});

/** Tabs along the paddle; none where they find no room in the band. */
export const paddleTabs = (s: WaterSizes): readonly Stretch[] | undefined =>
  tabsIn(tabRoom(paddleBar(s)), s.paddles.tabs, paddleBar(s));

/** A rim as a ring, before anything is cut into it. */
export const rimRing = (s: WaterSizes): RingOptions => ({
  inner: s.inner,
  outer: s.outer,
  pieces: s.felloes,
  first: s.firstSeam,
  keep: s.spokes.count,
  ...(s.rim.layers !== undefined && { layers: s.rim.layers }),
  thickness: s.rim.thickness,
  stock: s.rim.stock,
  method: s.method,
  seam: s.seam,
  ...(s.fit.seam !== undefined && { clearance: s.fit.seam }),
  field: 'rim',
});

/** Angles of the spokes' middle lines, the first at 0. */
export const spokeAngles = (s: WaterSizes): Radians[] => ringOfSeams(s.spokes.count, 0);

/** Where a rim's seams lie, and how far a seam's joint reaches from its line, mm. */
export interface RimSeams {
  readonly layout: RingLayout;
  readonly at: readonly Radians[];
  readonly reach: Mm;
}

export function rimSeams(s: WaterSizes): RimSeams {
  const o = rimRing(s);
  const layout = ringLayout(o);
  const reach = Math.max(0, ...layerSeamed(o, layout).map(l => l.joined.reach));
  return { layout, at: layout.seams.flat(), reach };
}

/** Where the paddles stand: the first one's angle, and what its slots keep clear of seams' lines and of the spokes' edges. */
export interface PaddlePlaces {
  readonly first: Radians;
  readonly fromSeams: Mm;
  readonly fromSpokes: Mm;
}

/** First angles tried, beside the middles of the gaps between all lines. */
const TRIED = 120;

/** Lines as the nearest two of evenly spaced paddles see them. */
function seen(lines: readonly Radians[], step: Radians, first: Radians): Radians[] {
  const folded = lines.map(a => Math.round((wrap(a - first) % step) * 1e9) / 1e9);
  return [...new Set(folded)].flatMap(a => [a, a - step]);
}

/** The first paddle's angle at which every slot is as far as it need be from seams, then as clear of the spokes, then as far from seams
 * as can be. @param count of paddles */
export function paddlePlaces(s: WaterSizes, tabs: readonly Stretch[], seams: RimSeams, count: number): PaddlePlaces {
  const step = (2 * Math.PI) / count;
  const slots = slotsAt(paddleBar(s), tabs, 0);
  const need = slotWall(s) + seams.reach;
  const spokes = spokeAngles(s);
  const place = (first: Radians): PaddlePlaces => {
    const clear = (lines: readonly Radians[], strip: Mm): Mm =>
      Math.min(Infinity, ...seen(lines, step, first).flatMap(a => slots.map(slot => fromRay(slot, a, strip))));
    return { first, fromSeams: clear(seams.at, 0), fromSpokes: clear(spokes, s.spokes.width / 2) };
  };
  const even = Array.from({ length: TRIED }, (_, i) => (i * step) / TRIED);
  const gaps = [...gapsFor(count, [...seams.at, ...spokes]), ...gapsFor(count, seams.at)].map(g => g.middle);
  const score = (p: PaddlePlaces): number[] => [
    Math.min(p.fromSeams, need),
    Math.min(p.fromSpokes, slotWall(s)),
    Math.min(p.fromSeams, s.outer),
  ];
  const better = (a: PaddlePlaces, b: PaddlePlaces): boolean => {
    const [x, y] = [score(a), score(b)];
    const at = x.findIndex((v, i) => Math.abs(v - y[i]!) > 1e-6);
    return at >= 0 && x[at]! > y[at]!;
  };
  return [...gaps, ...even].map(place).reduce((best, p) => (better(p, best) ? p : best));
}

/** Whether slots placed so keep their wood to every seam. */
export const clearOfSeams = (s: WaterSizes, seams: RimSeams, places: PaddlePlaces): boolean =>
  places.fromSeams >= slotWall(s) + seams.reach - 1e-6;

export const paddleAngles = (s: WaterSizes, { first }: PaddlePlaces): Radians[] => ringOfSeams(s.paddles.count, first);

/** Air between neighbouring paddles; common practice, no source. */
const AIR: Mm = 2;

/** Whether neighbouring paddles keep apart. */
export const paddlesApart = (s: WaterSizes): boolean =>
  barsApart(paddleBar(s), 0, (2 * Math.PI) / s.paddles.count, AIR);
