import type { Finding } from '../findings/finding.js';
import { vertex } from '../geometry/outline.js';
import { add, dot, type Point, polar, scale } from '../geometry/point.js';
import type { Part, Score } from '../parts/part.js';
import { type Biscuit, biscuits, CUTTER_DIAMETER, slotLength } from '../stock/biscuits.js';
import type { Mm, Radians } from '../units/length.js';

/** A butt seam with one biscuit slot, cut from the seam into each felloe's end at mid-thickness, mid-band; lengths mm. */
export interface BiscuitSeam {
  readonly inner: Mm;
  readonly outer: Mm;
  readonly thickness: Mm;
  /** largest radius routed on the rim's edges; 0 for none */
  readonly edge: Mm;
  /** laps in the felloe: width wall to wall, pocket depth from the front, angles from the seam (into the felloe positive) */
  readonly laps: { readonly width: Mm; readonly depth: Mm; readonly at: readonly Radians[] };
}

/** Wood left between slot and lap, and past each end of the slot; common practice, no source. */
const FROM_LAP: Mm = 6;
const FROM_EDGE: Mm = 10;
/** Wood over and under a slot; common practice, no source: under it the biscuit shows through. */
const COVER: Mm = 3;

/** Least distance in plan from a lap's wall to the slot. The slot is a segment of the cutter's circle on the seam (along +x, felloe above). */
function fromLap(seam: BiscuitSeam, biscuit: Biscuit, angle: Radians): Mm {
  const middle = (seam.inner + seam.outer) / 2;
  const half = slotLength(biscuit.depth) / 2;
  const radius = CUTTER_DIAMETER / 2;
  // towards the spoke: the normal of the lap's nearer wall, pointing into the lap
  const normal: Point = { x: -Math.sin(angle), y: Math.cos(angle) };
  const center: Point = { x: middle, y: biscuit.depth - radius };
  const deepest = add(center, scale(normal, radius));
  const ends: Point[] = [
    { x: middle - half, y: 0 },
    { x: middle + half, y: 0 },
  ];
  const candidates = deepest.y >= 0 ? [deepest, ...ends] : ends;
  const wall = -seam.laps.width / 2;
  return wall - Math.max(...candidates.map(p => dot(p, normal)));
}

/** Height left between the slot's upper side and the floor of a lap pocket. */
const underLap = (seam: BiscuitSeam, biscuit: Biscuit): Mm =>
  seam.thickness - seam.laps.depth - (seam.thickness + biscuit.thickness) / 2;

interface Clearance {
  readonly what: string;
  readonly value: Mm;
  readonly limit: Mm;
}

function clearances(seam: BiscuitSeam, biscuit: Biscuit): Clearance[] {
  const ends = (seam.outer - seam.inner - slotLength(biscuit.depth)) / 2;
  const cover = (seam.thickness - biscuit.thickness) / 2;
  const under = underLap(seam, biscuit);
  const beside =
    seam.laps.depth === 0 ? [] : seam.laps.at.map(a => Math.max(under, fromLap(seam, biscuit, Math.abs(a))));
  return [
    { what: "from the slot's ends to the band's edges", value: ends, limit: FROM_EDGE + seam.edge },
    { what: 'over and under the slot', value: cover, limit: COVER },
    { what: 'from the slot to the nearest lap', value: Math.min(Infinity, ...beside), limit: FROM_LAP },
  ];
}

const fits = (seam: BiscuitSeam, biscuit: Biscuit): boolean => clearances(seam, biscuit).every(c => c.value >= c.limit);

/** What keeps a biscuit out of a seam; nothing when it fits. The message offers the largest size that does fit, or a butt seam. */
export function biscuitFindings(seam: BiscuitSeam, biscuit: Biscuit): Finding[] {
  const fitting = biscuits.filter(b => fits(seam, b)).at(-1);
  const instead = fitting ? `biscuit size ${fitting.size} fits` : 'no biscuit fits; allowed: joint: butt';
  return clearances(seam, biscuit)
    .filter(c => !(c.value >= c.limit))
    .map(c => ({
      level: 'stop',
      rule: 'biscuit-slot',
      where: 'rim.seam.size',
      message: `biscuit ${biscuit.size} leaves ${c.value.toFixed(2)} mm ${c.what}; at least ${c.limit.toFixed(2)} mm; ${instead}`,
      value: c.value,
      limit: c.limit,
    }));
}

/** A felloe with a mark at each seam for the middle of the slot, on its front face, where the plate joiner's line is held. */
export function markBiscuits(part: Part, inner: Mm, outer: Mm, sweep: Radians): Part {
  const middle = (inner + outer) / 2;
  const reach = Math.min(15, (outer - inner) / 4) / middle;
  const marks = [-1, 1].map((side): Score => {
    const seam = Math.PI / 2 + (side * sweep) / 2;
    const ends: [Point, Point] = [polar(middle, seam), polar(middle, seam - side * reach)];
    return { kind: 'score', face: 'front', line: ends.map(p => vertex(p)) };
  });
  return { ...part, features: [...part.features, ...marks] };
}
