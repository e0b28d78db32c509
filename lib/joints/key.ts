import type { Finding } from '../findings/finding.js';
import { reverse, solid, vertex } from '../geometry/outline.js';
import type { Part, Pocket } from '../parts/part.js';
import { piece } from '../parts/piece.js';
import { degrees, type Mm, type Radians } from '../units/length.js';
import { butt } from './butt.js';
import { glued, seamFace } from './glue.js';
import {
  type End,
  FROM_LAP,
  freeLength,
  intoWood,
  joinedEnds,
  mm,
  onSeam,
  seamStop,
  square,
  withEnds,
} from './seam-ends.js';
import type { LoosePiece, SeamJoint, SeamOptions, SeamPoint, SeamSite } from './seam-joint.js';

// A double-dovetail key let into a face across the seam, its narrow waist on the seam's line, its grain across it.
// Of length K and width W at its ends, with flanks FLANK from its long axis: waist W - K tan(FLANK), area K (W + waist) / 2.

/** Between a flank and the key's long axis: common practice, no source. */
const FLANK: Radians = degrees(10);
/** Width of a key's ends where the plan does not say, as a share of the band, and its length over that; common practice, no source. */
const WIDTH = 1 / 3;
const LENGTH = 2;
/** Depth of its pocket where the plan does not say, as a share of the thickness; common practice, no source. */
const DEPTH = 1 / 3;
/** Wood left beside a key, and under its pocket; common practice, no source. */
const FROM_EDGE: Mm = 10;
const UNDER: Mm = 3;
/** Narrowest waist, and shallowest pocket, that hold; common practice, no source. */
const LEAST_WAIST: Mm = 4;
const LEAST_DEPTH: Mm = 2;
/** How far a pocket is carried past the seam: more than any cutter's width. */
const PAST: Mm = 60;
const ROUNDING: Mm = 1e-6;

/** A key's sizes; mm. */
export interface KeySeam {
  readonly length: Mm;
  readonly width: Mm;
  readonly waist: Mm;
  /** of the pocket and the key; the layer's thickness where it is cut through */
  readonly depth: Mm;
}

/** Area of a key's face, mm². Source: two trapezia, plane geometry. */
export const keyArea = ({ length, width, waist }: KeySeam): number => (length * (width + waist)) / 2;

/** How far a key may reach to either side of the seam, beside laps and over those from the other face. */
function freeHalf(site: SeamSite, options: SeamOptions, depth: Mm, width: Mm): Mm {
  const face = options.face ?? 'front';
  const met = site.laps.filter(lap => lap.face === face || site.thickness - lap.depth - depth < UNDER);
  return freeLength({ ...site, laps: met }, (site.inner + site.outer - width) / 2) - FROM_LAP;
}

/** A seam's key: the plan's sizes, else a third of the band wide, twice as long or what laps leave, a third of the thickness deep; cut
 * through its whole layer by laser. */
export function keySeam(site: SeamSite, options: SeamOptions): KeySeam {
  const depth =
    site.method === 'laser' ? site.thickness : Math.min(options.depth ?? DEPTH * site.thickness, site.thickness);
  const width = options.width ?? WIDTH * (site.outer - site.inner);
  const free = freeHalf(site, options, depth, width);
  const length = options.length ?? Math.min(LENGTH * width, Math.max(width, 2 * free));
  return { length, width, depth, waist: width - length * Math.tan(FLANK) };
}

const isThrough = (site: SeamSite, key: KeySeam): boolean => key.depth > site.thickness - ROUNDING;

/** A sheet is not planed: what to make thin keys of. */
const thinKey = (site: SeamSite, key: KeySeam): Finding => ({
  level: 'note',
  rule: 'key-stock',
  where: `${site.field}.depth`,
  message: `${site.field}.depth is ${mm(key.depth)}, thinner than the sheet the keys are cut from: cut them from a board planed to that, or let them stand proud and trim them flush`,
  value: key.depth,
  limit: site.thickness,
});

function keyFindings(site: SeamSite, options: SeamOptions, key: KeySeam): Finding[] {
  const widest = site.outer - site.inner - 2 * (FROM_EDGE + site.edge);
  const free = 2 * freeHalf(site, options, key.depth, key.width);
  const through = isThrough(site, key);
  const longest = Math.min(free, (key.width - LEAST_WAIST) / Math.tan(FLANK));
  return [
    ...(through && site.layers < 2
      ? [
          seamStop(
            site,
            'key',
            site.method === 'laser' ? 'joint' : 'depth',
            site.method === 'laser' ? 'key' : key.depth,
            site.thickness - UNDER,
            `a key as deep as the rim has no floor to be glued to; allowed: a rim of 2 layers or more, ${site.method === 'laser' ? 'joint: finger' : `or at most ${mm(site.thickness - UNDER)}`}`,
          ),
        ]
      : []),
    ...(!through && (key.depth < LEAST_DEPTH || key.depth > site.thickness - UNDER)
      ? [
          seamStop(
            site,
            'key',
            'depth',
            key.depth,
            site.thickness - UNDER,
            `a key needs ${LEAST_DEPTH} mm and leaves ${UNDER} mm of wood under it; allowed: ${LEAST_DEPTH} mm to ${mm(site.thickness - UNDER)}, or joint: finger`,
          ),
        ]
      : []),
    ...(key.width > widest + ROUNDING
      ? [
          seamStop(
            site,
            'key',
            'width',
            key.width,
            widest,
            `a key keeps ${mm(FROM_EDGE + site.edge)} from the band's edges; allowed: at most ${mm(widest)}, or joint: finger`,
          ),
        ]
      : []),
    ...(key.length > longest + ROUNDING
      ? [
          seamStop(
            site,
            'key',
            'length',
            key.length,
            longest,
            `a key may be ${mm(Math.max(0, longest))} long before it meets a lap or its waist is under ${LEAST_WAIST} mm; allowed: at most that, the other face, another seam place, or joint: butt`,
          ),
        ]
      : []),
    ...(through || site.grained ? [] : [thinKey(site, key)]),
  ];
}

/** Half a key's outline at one end, moved out by half the clearance on its three walls: from the seam outside in. */
function halfRun(site: SeamSite, key: KeySeam, end: End): SeamPoint[] {
  const middle = (site.inner + site.outer) / 2;
  const out = site.clearance / 2;
  const flank = out / Math.cos(FLANK);
  const far = key.length / 2 + out;
  const at = (v: Mm): Mm => key.waist / 2 + flank + v * Math.tan(FLANK);
  const way = intoWood(end);
  return [
    { u: middle + at(0), v: 0, mate: 'key' },
    { u: middle + at(far), v: way * far, mate: 'key' },
    { u: middle - at(far), v: way * far, mate: 'key' },
    { u: middle - at(0), v: 0 },
  ];
}

/** All of the pockets' outline, closed. */
function outlineRun(site: SeamSite, key: KeySeam): SeamPoint[] {
  const left = halfRun(site, key, 'left');
  return [...left, ...halfRun(site, key, 'right').reverse().slice(1)];
}

function pocketAt(site: SeamSite, key: KeySeam, options: SeamOptions, end: End): Pocket {
  const run = halfRun(site, key, end);
  const past = -intoWood(end) * PAST;
  const [first, last] = [run[0]!, run.at(-1)!];
  // clockwise at a left end
  const closed = (of: readonly SeamPoint[]) => {
    const outline = of.map(p => vertex(onSeam(site, end, p), 0, p.mate));
    return solid(end === 'left' ? reverse(outline) : outline);
  };
  return {
    kind: 'pocket',
    face: options.face ?? 'front',
    depth: key.depth,
    area: closed(run),
    beyond: closed([{ u: first.u, v: past }, ...run, { u: last.u, v: past }]),
  };
}

/** Felloe with half a pocket at each seam, or cut through where the key is as deep as its layer. */
function letIn(felloe: Part, site: SeamSite, key: KeySeam, options: SeamOptions): Part {
  const ends = joinedEnds(site);
  if (!isThrough(site, key))
    return { ...felloe, features: [...felloe.features, ...ends.map(end => pocketAt(site, key, options, end))] };
  const run = (end: End): SeamPoint[] => [{ u: site.outer, v: 0 }, ...halfRun(site, key, end), { u: site.inner, v: 0 }];
  return withEnds(felloe, site, {
    ...(ends.includes('left') && { left: run('left') }),
    ...(ends.includes('right') && { right: run('right') }),
  });
}

/** The key: long axis along x, its middle at the origin, its grain along it. */
export function keyPart(key: KeySeam, stock: string, grained: boolean): Part {
  const [x, w, n] = [key.length / 2, key.width / 2, key.waist / 2];
  const corners = [
    { x: -x, y: -w },
    { x: 0, y: -n },
    { x, y: -w },
    { x, y: w },
    { x: 0, y: n },
    { x: -x, y: w },
  ];
  const region = solid(corners.map(p => vertex(p, 0, 'key')));
  return piece('key', 'Key', { thickness: key.depth, stock, grained }, { region });
}

function loose(felloe: Part, site: SeamSite, key: KeySeam, options: SeamOptions): LoosePiece {
  const part = keyPart(key, felloe.stock, site.grained);
  const z = options.face === 'back' ? 0 : site.thickness - key.depth;
  return { part, at: { x: 0, y: (site.inner + site.outer) / 2 }, z };
}

/** A key across each seam. Cut from the felloes' own stock, planed to the pocket's depth. */
export const keyed: SeamJoint = (felloe, site, options) => {
  const key = keySeam(site, options);
  const findings = keyFindings(site, options, key);
  if (findings.some(f => f.level === 'stop')) return { ...butt(felloe, site, options), findings };
  const slope = key.length / 2 / Math.cos(FLANK);
  const walls = (2 * slope + key.width) * key.depth;
  const floor = isThrough(site, key) && site.layers < 2 ? 0 : keyArea(key) / 2;
  return {
    part: letIn(felloe, site, key, options),
    loose: [loose(felloe, site, key, options)],
    hardware: [],
    settings: isThrough(site, key) ? [] : [{ name: 'depth of a key, and of its pocket', value: key.depth, unit: 'mm' }],
    steps: [
      ...(isThrough(site, key)
        ? []
        : [
            'Plane the stock of the keys to the depth of their pockets, or let them stand proud and plane them flush once the glue is dry.',
          ]),
    ],
    after: ['Glue each key into its pocket, across the seam.'],
    findings,
    glue: glued([seamFace(site, key.waist * key.depth), { area: floor, long: true }, { area: walls, long: false }]),
    reach: key.length / 2 + Math.abs(site.clearance) / 2,
    locks: false,
    lines: [square(site), outlineRun(site, key)],
  };
};
