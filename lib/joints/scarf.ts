import type { Finding } from '../findings/finding.js';
import { withMates } from '../geometry/mates.js';
import { annularSector, type Outline, solid } from '../geometry/outline.js';
import type { Face, Part, Pocket } from '../parts/part.js';
import { type Mm, type Radians, toDegrees } from '../units/length.js';
import { butt } from './butt.js';
import { glued, seamFace } from './glue.js';
import { type End, joinedEnds, mm, seamAngle, seamStop, square, withEnds } from './seam-ends.js';
import type { SeamJoint, SeamOptions, SeamPoint, SeamSite } from './seam-joint.js';

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

/** Angle over which two felloes lie on each other: the plan's; else four thicknesses along the middle of the band, less where laps ask
 * for it, down to two; by laser, half a felloe, as far as layers can be staggered. */
export function scarfOverlap(site: SeamSite, options: SeamOptions): Radians {
  if (site.method === 'laser') return options.overlap ?? site.whole / 2;
  const along = (thicknesses: number): Radians => (thicknesses * site.thickness) / middle(site);
  return options.overlap ?? Math.max(along(LEAST_OVERLAP), Math.min(along(OVERLAP), widest(site)));
}

const deg = (a: Radians): number => Math.round(toDegrees(a) * 100) / 100;

function scarfFindings(site: SeamSite, overlap: Radians): Finding[] {
  if (site.method === 'laser') return laserFindings(site, overlap);
  const most = widest(site);
  return [
    ...(overlap > most + ROUNDING
      ? [
          seamStop(
            site,
            'scarf',
            'overlap',
            deg(overlap),
            deg(most),
            `the felloes may lie on each other over ${deg(most)} degrees before they meet a lap or the felloe's other end; allowed: at most that, another seam place, or joint: finger`,
          ),
        ]
      : []),
    ...(site.thickness / 2 < LEAST_HALF
      ? [
          seamStop(
            site,
            'scarf',
            'joint',
            'scarf',
            2 * LEAST_HALF,
            `halves of ${mm(site.thickness)} are thinner than ${LEAST_HALF} mm; allowed: stock of at least ${2 * LEAST_HALF} mm, or joint: finger`,
          ),
        ]
      : []),
  ];
}

/** A laser scarfs a ring by its layers: their seams lie an overlap apart, so that each layer bridges the next one's seams. */
function laserFindings(site: SeamSite, overlap: Radians): Finding[] {
  const most = site.whole / 2;
  if (site.seamed >= 2) {
    if (overlap <= most + ROUNDING) return [];
    return [
      seamStop(
        site,
        'scarf',
        'overlap',
        deg(overlap),
        deg(most),
        `staggered seams overlap by half a felloe at most; allowed: at most ${deg(most)} degrees`,
      ),
    ];
  }
  return [
    seamStop(
      site,
      'scarf',
      'joint',
      'scarf',
      'finger',
      `a laser cannot halve a layer, and ${site.seamed === site.layers ? 'there is one layer' : 'only one layer has seams'}; allowed: more layers, whose staggered seams make the scarf, or joint: finger`,
    ),
  ];
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

/** Felloes halved over each other. By laser in a ring of layers: see laserFindings. */
export const scarfed: SeamJoint = (felloe, site, options) => {
  const overlap = scarfOverlap(site, options);
  const findings = scarfFindings(site, overlap);
  const layered = site.method === 'laser';
  if (findings.length > 0) return { ...butt(felloe, site, options), findings };
  const floor = (overlap * (site.outer * site.outer - site.inner * site.inner)) / 2;
  return {
    part: layered ? felloe : halved(felloe, site, overlap),
    loose: [],
    hardware: [],
    settings: [
      { name: 'overlap of two felloes', value: toDegrees(overlap), unit: 'deg' },
      ...(layered ? [] : [{ name: 'depth of a scarf', value: site.thickness / 2, unit: 'mm' } as const]),
    ],
    steps: layered
      ? ['Glue each layer over the seams of the one behind it: together they make the scarfs.']
      : [
          'Halve the felloes at both ends, the left one from the front, the right one from the back; try the fit before glue.',
        ],
    findings,
    glue: glued([seamFace(site), { area: floor, long: true }]),
    reach: layered ? 0 : site.outer * Math.sin(overlap / 2),
    locks: false,
    lines: layered ? [square(site)] : [radial(site, overlap / 2), radial(site, -overlap / 2)],
  };
};
