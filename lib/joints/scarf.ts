import type { Finding } from '../findings/finding.js';
import { withMates } from '../geometry/mates.js';
import { annularSector, type Outline, solid } from '../geometry/outline.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import { type Mm, type Radians, toDegrees } from '../units/length.js';
import { butt } from './butt.js';
import { glued, seamFace } from './glue.js';
import { deg, type End, joinedEnds, mm, seamAngle, seamStop, square, withEnds } from './seam-ends.js';
import type { SeamJoint, SeamOptions, SeamPoint, SeamSetting, SeamSite } from './seam-joint.js';

// Half-depth overlap: over an angle the felloes lie on each other, each half as thick. A felloe's left end keeps its back half (pocket from
// the front), its right end its front half (pocket from the back), so that all felloes are alike. Each is longer by half the angle at
// either end. Shoulders are radial.

/** Overlap along the middle of the band, in thicknesses, where the plan does not say, and the least; common practice, no source. */
const OVERLAP = 4;
const LEAST_OVERLAP = 2;
/** Thinnest half that survives handling; common practice, no source. */
const LEAST_HALF: Mm = 3;
/** Wood left between the overlap and a lap's wall; common practice, no source. */
const WALL: Mm = 3;
/** Share of a felloe that both its scarfs may take. */
const MOST_OF_FELLOE = 0.8;
/** How far a pocket is carried past an open edge: more than any cutter's width. */
const PAST: Mm = 60;
const ROUNDING: Radians = 1e-9;

const middle = (site: SeamSite): Mm => (site.inner + site.outer) / 2;

/** The widest overlap that keeps clear of laps, whose walls are widest apart, by angle, at the rim's inner edge. */
function widest(site: SeamSite): Radians {
  const clear = site.laps
    .filter(lap => lap.depth > 0)
    .map(lap => 2 * (lap.apart - Math.asin(Math.min(1, lap.width / 2 / site.inner)) - WALL / site.inner));
  return Math.max(0, Math.min(MOST_OF_FELLOE * site.whole, ...clear));
}

/** Angle that so many thicknesses take up along the middle of the band. */
const along = (site: SeamSite, thicknesses: number): Radians => (thicknesses * site.thickness) / middle(site);

/** Angle over which two felloes lie on each other: the plan's; else four thicknesses along the middle of the band, less where laps and
 * what stands nearby ask for it, down to two; by laser, half a felloe, as far as layers can be staggered. */
export function scarfOverlap(site: SeamSite, options: SeamOptions): Radians {
  if (options.overlap !== undefined) return options.overlap;
  if (site.method === 'laser') return site.whole / 2;
  const room = 2 * Math.asin(Math.min(1, (site.room ?? Infinity) / site.outer));
  return Math.max(along(site, LEAST_OVERLAP), Math.min(along(site, OVERLAP), widest(site), room));
}

/** A laser scarfs a ring by its layers: their seams lie an overlap apart, so that each layer bridges the next one's seams. */
function unlayered(site: SeamSite, options: SeamOptions): Finding[] {
  if (site.method !== 'laser' || site.seamed >= 2) return [];
  const layers = site.seamed === site.layers ? 'there is one layer' : 'only one layer has seams';
  const why = `a laser cannot halve a layer, and ${layers}; allowed: more layers, whose staggered seams make the scarf, or joint: finger`;
  return [seamStop(site, options, { joint: 'scarf', option: 'joint', value: 'scarf', limit: 'finger', why })];
}

function thinHalves(site: SeamSite, options: SeamOptions): Finding[] {
  const least = 2 * LEAST_HALF;
  if (site.method === 'laser' || site.thickness >= least) return [];
  const why = `halves of ${mm(site.thickness)} are thinner than ${mm(LEAST_HALF)}; allowed: stock of at least ${mm(least)}, or joint: finger`;
  return [seamStop(site, options, { joint: 'scarf', option: 'joint', value: 'scarf', limit: least, why })];
}

function overlapRange(site: SeamSite, options: SeamOptions, overlap: Radians): Finding[] {
  const from = along(site, LEAST_OVERLAP);
  const to = site.method === 'laser' ? site.whole / 2 : widest(site);
  if (overlap >= from - ROUNDING && overlap <= to + ROUNDING) return [];
  const most =
    site.method === 'laser'
      ? 'staggered seams overlap by half a felloe at most'
      : `the felloes may lie on each other over ${deg(to)} degrees before they meet a lap or the felloe's other end`;
  const least = `less than ${LEAST_OVERLAP} thicknesses along the middle of the band hold little`;
  const allowed = from <= to ? `${deg(from)} to ${deg(to)} deg` : 'another seam place, or joint: finger';
  const why = `${most}, and ${least}, ${deg(from)} deg; allowed: ${allowed}`;
  const value = deg(overlap);
  return [seamStop(site, options, { joint: 'scarf', option: 'overlap', value, limit: deg(to), why })];
}

/** What keeps a ring from being scarfed. */
function scarfFindings(site: SeamSite, options: SeamOptions, overlap: Radians): Finding[] {
  const first = [...unlayered(site, options), ...thinHalves(site, options)];
  return first.length > 0 ? first : overlapRange(site, options, overlap);
}

/** The pocket that halves an end, carried on past it. */
function halving(site: SeamSite, end: End, overlap: Radians): Pocket {
  const face: Face = end === 'left' ? 'front' : 'back';
  const seam = seamAngle(site, end);
  const from = seam - overlap / 2;
  const past = Math.min(1, PAST / site.inner);
  const inside = Math.max(site.inner - PAST, site.inner / 2);
  // of a sector's edges, the radial one in the wood
  const shoulder = (sector: Outline) => solid(withMates(sector, 'scarf', [end === 'left' ? 3 : 1]));
  const run = annularSector(inside, site.outer + PAST, end === 'left' ? from : from - past, overlap + past);
  return {
    kind: 'pocket',
    face,
    depth: site.thickness / 2,
    area: shoulder(annularSector(site.inner, site.outer, from, overlap)),
    beyond: shoulder(run),
  };
}

/** A radial line past the seam's, in the seam's frame. */
const radial = (site: SeamSite, past: Radians): SeamPoint[] =>
  [site.outer, site.inner].map(r => ({ u: r * Math.cos(past), v: r * Math.sin(past), mate: 'scarf' }));

function halved(felloe: Part, site: SeamSite, overlap: Radians): Part {
  const ends = joinedEnds(site);
  const longer = withEnds(felloe, site, {
    ...(ends.includes('left') && { left: radial(site, overlap / 2) }),
    ...(ends.includes('right') && { right: radial(site, -overlap / 2) }),
  });
  return { ...longer, features: [...longer.features, ...ends.map(end => halving(site, end, overlap))] };
}

/** Where and how deep the ends are halved. */
const halvingSettings = (site: SeamSite, overlap: Radians): SeamSetting[] => [
  {
    name: 'shoulder of a scarf, from the middle of the felloe',
    value: toDegrees((site.sweep - overlap) / 2),
    unit: 'deg',
  },
  { name: 'depth of a scarf', value: site.thickness / 2, unit: 'mm' },
];

/** Felloes halved over each other. By laser in a ring of layers: see unlayered. */
export const scarfed: SeamJoint = (felloe, site, options) => {
  const overlap = scarfOverlap(site, options);
  const findings = scarfFindings(site, options, overlap);
  const layered = site.method === 'laser';
  if (findings.length > 0) return { ...butt(felloe, site, options), findings };
  const floor = (overlap * (site.outer * site.outer - site.inner * site.inner)) / 2;
  return {
    part: layered ? felloe : halved(felloe, site, overlap),
    loose: [],
    hardware: [],
    settings: [
      { name: 'overlap of two felloes', value: toDegrees(overlap), unit: 'deg' },
      ...(layered ? [] : halvingSettings(site, overlap)),
    ],
    steps: layered
      ? ['Glue each layer over the seams of the one behind it: together they make the scarfs.']
      : [
          `${site.method === 'router' ? 'The cut files halve' : 'Halve'} the felloes at both ends, the left one from the front, the right one from the back; try the fit before glue.`,
        ],
    findings,
    glue: glued([seamFace(site), { area: floor, along: 1 }]),
    past: layered ? 0 : overlap / 2,
    reach: layered ? 0 : site.outer * Math.sin(overlap / 2),
    locks: false,
    lines: layered ? [square(site)] : [radial(site, overlap / 2), radial(site, -overlap / 2)],
  };
};
