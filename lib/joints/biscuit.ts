import type { Finding } from '../findings/finding.js';
import { vertex } from '../geometry/outline.js';
import { add, dot, type Point, scale } from '../geometry/point.js';
import type { Part, Score } from '../parts/part.js';
import { type Biscuit, biscuit, biscuits, CUTTER_DIAMETER, slotLength } from '../stock/biscuits.js';
import type { Mm } from '../units/length.js';
import { butt } from './butt.js';
import { glued, seamFace, segmentArea } from './glue.js';
import { boxed, FROM_LAP, intoWood, joinedEnds, mm, onSeam, seamStop, square, woodOnly } from './seam-ends.js';
import type { SeamJoint, SeamLap, SeamOptions, SeamSite } from './seam-joint.js';

// A butt seam with biscuits at mid-thickness: a plate joiner's slot is a segment of its cutter's circle, cut from the seam into each end.

/** Wood left past each end of a slot; common practice, no source. */
const FROM_EDGE: Mm = 10;
/** Band to a biscuit where the plan does not say, one at least, and the most of them; common practice, no source: 150 to 200 mm apart. */
const BAND_EACH: Mm = 150;
const MOST = 12;
/** Wood between two slots of one seam; common practice, no source. */
const BETWEEN: Mm = 6;
/** Wood over and under a slot; common practice, no source: under it the biscuit shows through. */
const COVER: Mm = 3;

/** Middles of a seam's slots, from the wheel's centre: evenly over the band, closer where their length asks for it. */
export function slotMiddles(site: SeamSite, b: Biscuit, count: number): Mm[] {
  const pitch = Math.max((site.outer - site.inner) / count, slotLength(b.depth) + BETWEEN);
  const middle = (site.inner + site.outer) / 2;
  return Array.from({ length: count }, (_, i) => middle + (i - (count - 1) / 2) * pitch);
}

/** Least distance in plan from a lap's wall to a slot. The slot is a segment of the cutter's circle on the seam (along +x, felloe above). */
function fromLap(lap: SeamLap, b: Biscuit, middle: Mm): Mm {
  const half = slotLength(b.depth) / 2;
  const radius = CUTTER_DIAMETER / 2;
  // towards the spoke: the normal of the lap's nearer wall, pointing into the lap
  const normal: Point = { x: -Math.sin(lap.apart), y: Math.cos(lap.apart) };
  const deepest = add({ x: middle, y: b.depth - radius }, scale(normal, radius));
  const ends: Point[] = [
    { x: middle - half, y: 0 },
    { x: middle + half, y: 0 },
  ];
  const candidates = deepest.y >= 0 ? [deepest, ...ends] : ends;
  return -lap.width / 2 - Math.max(...candidates.map(p => dot(p, normal)));
}

/** Height left between a slot's side and the floor of a lap pocket. */
const underLap = (site: SeamSite, lap: SeamLap, b: Biscuit): Mm =>
  site.thickness - lap.depth - (site.thickness + b.thickness) / 2;

interface Clearance {
  readonly what: string;
  readonly value: Mm;
  readonly limit: Mm;
}

function clearances(site: SeamSite, b: Biscuit, count: number): Clearance[] {
  const middles = slotMiddles(site, b, count);
  const half = slotLength(b.depth) / 2;
  const beside = site.laps
    .filter(lap => lap.depth > 0)
    .flatMap(lap => middles.map(m => Math.max(underLap(site, lap, b), fromLap(lap, b, m))));
  return [
    { what: 'over and under the slot', value: (site.thickness - b.thickness) / 2, limit: COVER },
    {
      what: "from the slots' ends to the band's edges",
      value: Math.min(middles[0]! - half - site.inner, site.outer - middles.at(-1)! - half),
      limit: FROM_EDGE + site.edge,
    },
    { what: 'from the slot to the nearest lap', value: Math.min(Infinity, ...beside), limit: FROM_LAP },
  ];
}

/** Rounding: a limit met exactly is met. */
const ROUNDING: Mm = 1e-9;
const short = (c: Clearance): boolean => !(c.value >= c.limit - ROUNDING);

const fits = (site: SeamSite, b: Biscuit, count: number): boolean => !clearances(site, b, count).some(short);

/** A seam's biscuits: their size, and how many lie along the band. */
interface BiscuitSeam {
  readonly biscuit: Biscuit;
  readonly count: number;
}

/** The option to blame where biscuits do not fit, and what to choose instead: fewer where that helps, else another size or joint. */
function blamed(site: SeamSite, options: SeamOptions, { biscuit: b, count }: BiscuitSeam) {
  const most = Array.from({ length: count - 1 }, (_, i) => count - 1 - i).find(n => fits(site, b, n));
  const fitting = biscuits.filter(other => fits(site, other, count)).at(-1);
  const sizes = fitting && `size: "${fitting.size}"`;
  const fewer = most !== undefined && `at most ${most}`;
  if (options.count !== undefined && fewer)
    return { option: 'count', value: count, limit: most, allowed: sizes ? `${fewer}, or ${sizes}` : fewer } as const;
  const limit = fitting?.size ?? 'none';
  return { option: 'size', value: b.size, limit, allowed: sizes ?? 'joint: finger, or butt' } as const;
}

/** What keeps biscuits out of a seam; nothing when they fit. */
export function biscuitFindings(site: SeamSite, options: SeamOptions, seam: BiscuitSeam): Finding[] {
  const { biscuit: b, count } = seam;
  const [found] = clearances(site, b, count).filter(short);
  if (!found) return [];
  const { option, value, limit, allowed } = blamed(site, options, seam);
  const which = count > 1 ? `${count} biscuits of size ${b.size} leave` : `a biscuit of size ${b.size} leaves`;
  const why = `${which} ${mm(Math.max(0, found.value))} ${found.what}, at least ${mm(found.limit)}; allowed: ${allowed}`;
  return [seamStop(site, options, { joint: 'biscuit', rule: 'biscuit-slot', option, value, limit, why })];
}

/** Marks on a felloe's front for the middle of every slot, where the plate joiner's line is held. */
function marked(felloe: Part, site: SeamSite, middles: readonly Mm[]): Part {
  const reach = Math.min(15, (site.outer - site.inner) / 4);
  const marks = joinedEnds(site).flatMap(end =>
    middles.map((u): Score => {
      const ends = [0, intoWood(end) * reach].map(v => onSeam(site, end, { u, v }));
      return { kind: 'score', face: 'front', line: ends.map(p => vertex(p)) };
    }),
  );
  return { ...felloe, features: [...felloe.features, ...marks] };
}

/** Numbers of biscuits to choose from: the plan's, or by the band, then fewer. */
function countsToTry({ inner, outer }: SeamSite, count: number | undefined): number[] {
  if (count !== undefined) return [count];
  const about = Math.max(1, Math.min(MOST, Math.floor((outer - inner) / BAND_EACH + ROUNDING)));
  return Array.from({ length: about }, (_, i) => about - i);
}

/** The plan's biscuits; of a size left out the largest that fits, within the room beside the seam where one does; of a number left out as
 * many as the band asks for and has room for. */
export function biscuitSeam(site: SeamSite, options: SeamOptions): BiscuitSeam {
  const { size } = options;
  const sizes = size === undefined ? [...biscuits].reverse() : [biscuit(size, `${site.field}.size`)];
  const counts = countsToTry(site, options.count);
  const tried = counts.flatMap(count => sizes.map((b): BiscuitSeam => ({ biscuit: b, count })));
  const fitting = tried.filter(seam => fits(site, seam.biscuit, seam.count));
  const near = fitting.find(seam => seam.biscuit.depth <= (site.room ?? Infinity));
  const smallest = fitting.filter(seam => seam.count === fitting[0]?.count).at(-1);
  return near ?? smallest ?? { biscuit: sizes.at(-1)!, count: counts.at(-1)! };
}

/** Biscuits, one or several in each seam, stacked along the band. Sizes: see the biscuits of the reference tables. */
export const biscuited: SeamJoint = (felloe, site, options) => {
  const seam = biscuitSeam(site, options);
  const { biscuit: b, count } = seam;
  const loose = woodOnly(site, options, 'biscuit');
  const findings = loose.length > 0 ? loose : biscuitFindings(site, options, seam);
  if (findings.length > 0) return { ...butt(felloe, site, options), findings };
  const middles = slotMiddles(site, b, count);
  const mouth = slotLength(b.depth) * b.thickness;
  return {
    part: marked(felloe, site, middles),
    loose: [],
    hardware: [{ name: `biscuit, size ${b.size}`, quantity: count }],
    settings: [{ name: 'depth of a biscuit slot', value: b.depth, unit: 'mm' }],
    steps: ['Cut the biscuit slots at the marks, at mid-thickness.'],
    joining: 'a biscuit with glue in every slot, then draw the felloes together over them',
    findings: [],
    glue: glued([seamFace(site, count * mouth), { area: count * 2 * segmentArea(b.length, b.width / 2), along: 1 }]),
    reach: b.depth,
    locks: true,
    lines: [
      square(site),
      ...middles.map(u => boxed(u - slotLength(b.depth) / 2, u + slotLength(b.depth) / 2, b.depth)),
    ],
  };
};
