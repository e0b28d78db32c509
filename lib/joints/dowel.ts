import type { Finding } from '../findings/finding.js';
import { rectangle, vertex } from '../geometry/outline.js';
import type { EndView, Part, Score } from '../parts/part.js';
import { type Dowel, dowelHole, dowels, dowelsFor } from '../stock/dowels.js';
import type { Mm } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import { butt } from './butt.js';
import { glued, seamFace } from './glue.js';
import {
  boxed,
  FROM_LAP,
  freeLength,
  intoWood,
  joinedEnds,
  mm,
  onSeam,
  seamStop,
  square,
  woodOnly,
} from './seam-ends.js';
import type { SeamJoint, SeamOptions, SeamSite } from './seam-joint.js';

// A butt seam with dowels at mid-thickness, bored into each end square to the seam. Spread evenly: the middle of dowel j of n lies
// (j + 1/2) / n of the band from its inner edge, less what is routed off both edges.

/** Band to a dowel where the plan does not say: holes about 18 mm (3/4 in) from the edges. */
const BAND_EACH: Mm = 36;
/** Wood between a hole and the rim's curved edges; common practice, no source. */
const SHELL: Mm = 3;
/** Shallowest and deepest hole, in diameters; common practice, no source: dowels as sold go in deeper than the one, and a drill wanders
 * beyond the other. */
const LEAST_DEPTH = 1.5;
const MOST_DEPTH = 6;
/** Rounding of sizes, mm. */
const ROUNDING: Mm = 1e-6;

/** What a dowelled seam comes to. */
export interface DowelSeam {
  readonly dowel: Dowel;
  /** of the dowels bought */
  readonly length: Mm;
  readonly count: number;
  /** of each hole */
  readonly depth: Mm;
  /** middles, from the wheel's centre */
  readonly at: readonly Mm[];
}

const middles = (site: SeamSite, count: number): Mm[] =>
  Array.from(
    { length: count },
    (_, j) => site.inner + site.edge + ((j + 0.5) / count) * (site.outer - site.inner - 2 * site.edge),
  );

/** Wood beside a hole: as much as the dowel is thick, to the next hole and to the band's edges. */
const mostDowels = (site: SeamSite, d: Mm): number =>
  Math.floor((site.outer - site.inner - 2 * site.edge + ROUNDING) / (3 * d) + 1e-9);

/** How deep a hole may go: clear of laps (unless they pass over it), of the other end's holes, and of the rim's curved outer edge. */
function deepest(site: SeamSite, d: Mm, at: readonly Mm[]): Mm {
  const over = site.laps.filter(lap => site.thickness - lap.depth - (site.thickness + d) / 2 < FROM_LAP);
  const clear = { ...site, laps: over };
  return Math.min(
    ...at.map(u => {
      const across = u + d / 2;
      const edge = site.outer - SHELL;
      const shell = edge > across ? Math.sqrt(edge * edge - across * across) : 0;
      return Math.min(freeLength(clear, u - d / 2) - FROM_LAP, shell);
    }),
  );
}

/** Dowels to choose from: of the plan's diameter, or those a third to a half of the thickness, thick to thin. */
function dowelsToTry(site: SeamSite, diameter: Mm | undefined): Dowel[] {
  const suited = dowelsFor(site.thickness);
  if (diameter !== undefined) return suited.filter(d => Math.abs(d.diameter - diameter) < 0.05).slice(0, 1);
  return [...suited].sort((a, b) => b.diameter - a.diameter);
}

/** Numbers of dowels to choose from: the plan's, or by the band, then fewer, which lie farther from a narrow inner edge. */
function countsToTry(site: SeamSite, d: Mm, count: number | undefined): number[] {
  if (count !== undefined) return [count];
  const about = Math.min(mostDowels(site, d), Math.max(2, Math.floor((site.outer - site.inner) / BAND_EACH)));
  return Array.from({ length: Math.max(1, about) }, (_, i) => Math.max(1, about) - i);
}

/** Length of the dowels where the plan states no depth: the longest sold whose holes fit, within the room beside the seam where one does;
 * else one cut to what there is, to a millimetre, as long as that is worth it. */
function lengthFor(site: SeamSite, dowel: Dowel, most: Mm): Mm {
  const longest = (within: Mm): Mm | undefined =>
    [...dowel.lengths].sort((a, b) => b - a).find(l => dowelHole(l) <= within + ROUNDING);
  const room = Math.min(most, site.room ?? Infinity);
  const cut = (within: Mm): Mm | undefined => {
    const length = Math.floor(2 * (within - dowelHole(0)) + ROUNDING);
    return dowelHole(length) >= LEAST_DEPTH * dowel.diameter ? length : undefined;
  };
  return longest(room) ?? cut(room) ?? longest(most) ?? cut(most) ?? Math.min(...dowel.lengths);
}

/** Dowels of one kind and number, in holes of the plan's depth or as long as fit. */
function sized(site: SeamSite, dowel: Dowel, count: number, depth: Mm | undefined): DowelSeam {
  const at = middles(site, Math.max(1, count));
  const most = deepest(site, dowel.diameter, at);
  const length = depth === undefined ? lengthFor(site, dowel, most) : 2 * (depth - dowelHole(0));
  return { dowel, length, count, depth: dowelHole(length), at };
}

const refusal = (
  site: SeamSite,
  options: SeamOptions,
  option: keyof SeamOptions,
  value: number | string,
  limit: number | string,
  why: string,
): Finding => seamStop(site, options, { joint: 'dowel', option, value, limit, why });

function unsuited(site: SeamSite, options: SeamOptions): Finding {
  const names = dowelsFor(site.thickness).map(d => d.name);
  const why = `in ${mm(site.thickness)} a dowel is a third to a half as thick, ${mm(site.thickness / 3)} to ${mm(site.thickness / 2)}`;
  const allowed =
    names.length > 0 ? names.join(', ') : `none of ${dowels[0]!.name} to ${dowels.at(-1)!.name}; joint: finger`;
  return refusal(
    site,
    options,
    'diameter',
    options.diameter ?? 'left out',
    site.thickness / 2,
    `${why}; allowed: ${allowed}`,
  );
}

/** What keeps dowels out of a seam. */
function limits(site: SeamSite, options: SeamOptions, { dowel, count, depth, at }: DowelSeam): Finding[] {
  const d = dowel.diameter;
  const room = mostDowels(site, d);
  if (count < 1 || count > room) {
    const allowed = room > 0 ? `1 to ${room}` : 'no dowel fits; joint: butt';
    const why = `each ${dowel.name} dowel takes ${mm(3 * d)} of the band; allowed: ${allowed}`;
    return [refusal(site, options, 'count', count, room, why)];
  }
  const from = LEAST_DEPTH * d;
  const free = deepest(site, d, at);
  const to = Math.min(free, MOST_DEPTH * d);
  if (depth >= from - ROUNDING && depth <= to + ROUNDING) return [];
  const meets = to === free ? " before it meets a lap, the rim's edge or the other end's holes" : '';
  const most = `${mm(Math.max(0, to))} deep${meets}`;
  const fits = to >= from;
  const why = fits
    ? `a hole for a ${dowel.name} dowel is ${mm(from)} to ${most}; allowed: that`
    : `a hole for a ${dowel.name} dowel may go ${most}, and is ${mm(from)} deep at least; allowed: another seam place, or joint: butt`;
  return [refusal(site, options, 'depth', depth, to, why)];
}

/** A seam's dowels, and what keeps them out of it: of those that may be chosen the first that fit. */
export function dowelSeam(
  site: SeamSite,
  options: SeamOptions,
): { readonly seam?: DowelSeam; readonly findings: Finding[] } {
  if (site.method === 'laser') {
    const why =
      'a laser cuts through the face and cannot bore into an edge; allowed: finger, scarf or key in a rim of layers, butt';
    return { findings: [refusal(site, options, 'joint', 'dowel', 'finger', why)] };
  }
  const loose = woodOnly(site, options, 'dowel');
  if (loose.length > 0) return { findings: loose };
  const tried = dowelsToTry(site, options.diameter).flatMap(dowel =>
    countsToTry(site, dowel.diameter, options.count).map(count => sized(site, dowel, count, options.depth)),
  );
  const fits = (seam: DowelSeam): boolean => limits(site, options, seam).length === 0;
  const near = tried.find(seam => seam.depth <= (site.room ?? Infinity) && fits(seam));
  const seam = near ?? tried.find(fits) ?? tried[0];
  return seam ? { seam, findings: limits(site, options, seam) } : { findings: [unsuited(site, options)] };
}

/** The seam's face to drill by: x from the rim's inner edge out, y from the back. */
function endView(site: SeamSite, { at, dowel }: DowelSeam): EndView {
  return {
    outline: rectangle(0, 0, site.outer - site.inner, site.thickness),
    holes: at.map(u => ({ at: { x: u - site.inner, y: site.thickness / 2 }, diameter: dowel.diameter })),
  };
}

/** Marks on the front, over every hole, to carry over the edge. */
function marked(felloe: Part, site: SeamSite, seam: DowelSeam): Part {
  const marks = joinedEnds(site).flatMap(end =>
    seam.at.map(
      (u): Score => ({
        kind: 'score',
        face: 'front',
        line: [0, intoWood(end) * Math.min(15, seam.depth)].map(v => vertex(onSeam(site, end, { u, v }))),
      }),
    ),
  );
  return { ...felloe, features: [...felloe.features, ...marks], end: endView(site, seam) };
}

/** Dowels in each seam, drilled by the template of the felloe's end. Diameter a third to a half of the thickness, count and spacing by the
 * band, depth half a dowel and a little for the glue: common practice, see dowels of the reference tables. */
export const dowelled: SeamJoint = (felloe, site, options) => {
  const { seam, findings } = dowelSeam(site, options);
  if (!seam || findings.length > 0) return { ...butt(felloe, site, options), findings };
  const { dowel, count, depth, length } = seam;
  const d = dowel.diameter;
  return {
    part: joinedEnds(site).length > 0 ? marked(felloe, site, seam) : felloe,
    loose: [],
    hardware: [{ name: `dowel, ${printMm(d)}, ${printMm(length)} long`, quantity: count }],
    settings: [{ name: 'depth of a dowel hole', value: depth, unit: 'mm' }],
    steps: [
      `Drill the dowel holes ${printMm(depth)} deep, square to each seam, through the template of the felloe's end, at mid-thickness.`,
    ],
    joining: 'glue the dowels into the holes of one end of each first, then draw the felloes together over them',
    findings: [],
    glue: glued([
      seamFace(site, (count * Math.PI * d * d) / 4),
      { area: (count * Math.PI * d * length) / 2, along: 1 },
    ]),
    reach: depth,
    locks: true,
    lines: [square(site), ...seam.at.map(u => boxed(u - d / 2, u + d / 2, depth))],
  };
};
