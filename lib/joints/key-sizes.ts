import type { Finding } from '../findings/finding.js';
import { degrees, type Mm, type Radians } from '../units/length.js';
import { FROM_LAP, freeLength, mm, seamStop } from './seam-ends.js';
import type { SeamOptions, SeamSite } from './seam-joint.js';

// How large a double-dovetail key is. Of length K and width W at its ends, with flanks FLANK from its long axis: waist W - K tan(FLANK),
// area K (W + waist) / 2.

/** Between a flank and the key's long axis: common practice, no source. */
export const FLANK: Radians = degrees(10);
/** Width of a key's ends where the plan does not say, as a share of the band, and the most of it; its length over that; common practice, no
 * source. */
const WIDTH = 1 / 3;
const MOST_WIDTH: Mm = 60;
const LENGTH = 2;
/** The narrowest key chosen where there is little room, and the steps it gets narrower by. */
const LEAST_CHOSEN: Mm = 10;
const STEP = 0.95;
/** Depth of its pocket where the plan does not say, as a share of the thickness; common practice, no source. */
const DEPTH = 1 / 3;
/** Wood left beside a key, and under its pocket; common practice, no source. */
const FROM_EDGE: Mm = 10;
const UNDER: Mm = 3;
/** Narrowest key and waist, and shallowest pocket, that hold; common practice, no source. A key shorter than it is wide splits off. */
const LEAST_WIDTH: Mm = 5;
const LEAST_WAIST: Mm = 4;
const LEAST_DEPTH: Mm = 2;
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

const widest = (site: SeamSite): Mm => site.outer - site.inner - 2 * (FROM_EDGE + site.edge);

/** Depth of a key: the plan's, else a third of the thickness, and as thick as its material asks of a piece that is handled, up to half
 * the thickness; by laser its whole layer. */
function depthOf(site: SeamSite, options: SeamOptions): Mm {
  if (site.method === 'laser') return site.thickness;
  const weak = site.traits?.family === 'foam' ? site.traits.tongue : 0;
  const third = DEPTH * site.thickness;
  const most = Math.max(third, Math.min(weak, site.thickness / 2));
  const chosen = Math.max(LEAST_DEPTH, Math.min(most, site.thickness - UNDER));
  return Math.min(options.depth ?? chosen, site.thickness);
}

/** How long a key of a width may be before its waist is too narrow. */
const waistLength = (width: Mm): Mm => (width - LEAST_WAIST) / Math.tan(FLANK);

/** A key of a width: of the plan's length, else twice as long, or what its waist and the room beside it allow, no shorter than wide. */
function sized(site: SeamSite, options: SeamOptions, width: Mm): KeySeam {
  const depth = depthOf(site, options);
  const room = 2 * (site.room ?? Infinity) - Math.abs(site.clearance);
  const free = Math.min(2 * freeHalf(site, options, depth, width), room);
  const length = options.length ?? Math.max(width, Math.min(LENGTH * width, waistLength(width), free));
  return { length, width, depth, waist: width - length * Math.tan(FLANK) };
}

/** Widths to choose from where the plan does not say: a third of the band, then narrower ones. */
function widthsToTry(site: SeamSite): Mm[] {
  const first = Math.min(WIDTH * (site.outer - site.inner), MOST_WIDTH, Math.max(LEAST_WIDTH, widest(site)));
  const steps = Math.max(0, Math.floor(Math.log(first / LEAST_CHOSEN) / -Math.log(STEP)));
  return Array.from({ length: steps + 1 }, (_, i) => first * Math.exp(i * Math.log(STEP)));
}

/** A seam's key: the plan's sizes, else the widest of a third of the band that fits; twice as long or what laps leave, a third of the
 * thickness deep; cut through its whole layer by laser. */
export function keySeam(site: SeamSite, options: SeamOptions): KeySeam {
  if (options.width !== undefined) return sized(site, options, options.width);
  const tried = widthsToTry(site).map(width => sized(site, options, width));
  const fits = (key: KeySeam): boolean => lengthRange(site, options, key).length === 0;
  const near = tried.find(key => key.length / 2 <= (site.room ?? Infinity) && fits(key));
  return near ?? tried.find(fits) ?? tried[0]!;
}

export const isThrough = (site: SeamSite, key: KeySeam): boolean => key.depth > site.thickness - ROUNDING;

function depthRange(site: SeamSite, options: SeamOptions, key: KeySeam): Finding[] {
  const through = isThrough(site, key);
  const most = site.thickness - UNDER;
  const stop = (option: 'joint' | 'depth', value: number | string, why: string): Finding[] => [
    seamStop(site, options, { joint: 'key', option, value, limit: most, why }),
  ];
  if (through && site.layers < 2) {
    const why = 'a key as deep as the rim has no floor to be glued to; allowed: a rim of 2 layers or more';
    return site.method === 'laser'
      ? stop('joint', 'key', `${why}, or joint: finger`)
      : stop('depth', key.depth, `${why}, or at most ${mm(most)}`);
  }
  if (through || (key.depth >= LEAST_DEPTH - ROUNDING && key.depth <= most + ROUNDING)) return [];
  const allowed = most >= LEAST_DEPTH ? `${mm(LEAST_DEPTH)} to ${mm(most)}` : `thicker stock`;
  return stop(
    'depth',
    key.depth,
    `a key needs ${mm(LEAST_DEPTH)} and leaves ${mm(UNDER)} of wood under it; allowed: ${allowed}, or joint: finger`,
  );
}

function widthRange(site: SeamSite, options: SeamOptions, { width }: KeySeam): Finding[] {
  const most = widest(site);
  if (width >= LEAST_WIDTH - ROUNDING && width <= most + ROUNDING) return [];
  const allowed = most >= LEAST_WIDTH ? `${mm(LEAST_WIDTH)} to ${mm(most)}` : 'a wider band';
  const why = `a key keeps ${mm(FROM_EDGE + site.edge)} from the band's edges and is ${mm(LEAST_WIDTH)} wide at least; allowed: ${allowed}, or joint: finger`;
  return [seamStop(site, options, { joint: 'key', option: 'width', value: width, limit: most, why })];
}

function lengthRange(site: SeamSite, options: SeamOptions, key: KeySeam): Finding[] {
  const free = 2 * freeHalf(site, options, key.depth, key.width);
  const most = Math.min(free, waistLength(key.width));
  if (key.length >= key.width - ROUNDING && key.length <= most + ROUNDING) return [];
  const range = `a key ${mm(key.width)} wide is no shorter than that and may be ${mm(Math.max(0, most))} long before it meets a lap or its waist is under ${mm(LEAST_WAIST)}`;
  const allowed =
    most >= key.width
      ? `${mm(key.width)} to ${mm(most)}`
      : 'a narrower key, the other face, another seam place, or joint: butt';
  const why = `${range}; allowed: ${allowed}`;
  return [seamStop(site, options, { joint: 'key', option: 'length', value: key.length, limit: most, why })];
}

/** Of width and length; how long a key may be hangs on its width. */
function faceFindings(site: SeamSite, options: SeamOptions, key: KeySeam): Finding[] {
  const wide = widthRange(site, options, key);
  return wide.length > 0 ? wide : lengthRange(site, options, key);
}

/** A sheet is not planed: what to make thin keys of. */
const thinKey = (site: SeamSite, key: KeySeam): Finding => ({
  level: 'note',
  rule: 'key-stock',
  where: `${site.field}.depth`,
  message: `${site.field}.depth is ${mm(key.depth)}, thinner than the sheet the keys are cut from: cut them from a board planed to that, or let them stand proud and trim them flush`,
  value: key.depth,
  limit: site.thickness,
});

/** A laser cuts keys through their layer, whatever depth the plan states. */
function throughNote(site: SeamSite, { depth }: SeamOptions): Finding[] {
  if (site.method !== 'laser' || depth === undefined || Math.abs(depth - site.thickness) < ROUNDING) return [];
  const where = `${site.field}.depth`;
  const message = `${where} is ${mm(depth)}; a laser cuts keys through their whole layer, ${mm(site.thickness)}, and has no use for it; allowed: left out, or method: router`;
  return [{ level: 'note', rule: 'seam-option', where, message, value: depth, limit: site.thickness }];
}

/** What a key comes up against. */
export const keyFindings = (site: SeamSite, options: SeamOptions, key: KeySeam): Finding[] => [
  ...depthRange(site, options, key),
  ...faceFindings(site, options, key),
  ...(isThrough(site, key) || site.grained ? [] : [thinKey(site, key)]),
  ...throughNote(site, options),
];
