import type { Finding } from '../findings/finding.js';
import type { Mm, Radians } from '../units/length.js';
import { freeLength, mm, seamStop } from './seam-ends.js';
import type { SeamOptions, SeamSite } from './seam-joint.js';

// How many fingers a seam has, how wide and how long. Of n fingers of length L in a band from Ri to Ro each is
// p = (sqrt(Ro² - L²/4) - Ri) / n wide: counted to where the rim's outer edge is over the fingers' tips, so that the outermost one is at
// least p wide all along it.

/** Narrowest finger that survives handling, and that common cutters get between; common practice, no source. */
const LEAST_PITCH: Mm = 6;
/** Finger width where the plan does not say: as thick as the felloe, at least this; common practice, no source. */
const COMMON_PITCH: Mm = 12;
/** Length of a finger over its width: where the plan does not say; the least, below which a butt holds as well; and the most, above which
 * it breaks off in handling. Common practice, no source. */
const LENGTH = 1.5;
const LEAST_LENGTH = 0.75;
const MOST_LENGTH = 4;
/** Wood left between a finger and a lap's wall, and between fingers of a felloe's two ends; common practice, no source. */
const WALL: Mm = 3;
const ROUNDING: Mm = 1e-6;
/** A felloe with grain whose ends lie farther than this off its middle has short grain in its fingers. */
const STEEP: Radians = Math.PI / 4;

/** What a fingered seam comes to; mm. */
export interface FingerSeam {
  readonly count: number;
  readonly pitch: Mm;
  /** of a finger, tip to root */
  readonly length: Mm;
}

/** Width of each of n fingers; 0 where they are too long for the band. Source: closed formula above. */
export const fingerPitch = (inner: Mm, outer: Mm, count: number, length: Mm): Mm =>
  Math.max(0, Math.sqrt(Math.max(0, outer * outer - (length * length) / 4)) - inner) / count;

/** How long a finger may be for the felloe's sake: its innermost finger, one width from the inner edge, hangs by what both ends leave. */
function longestInFelloe(site: SeamSite, count: number): Mm {
  const bare = { ...site, laps: [] };
  const beside = (pitch: Mm): Mm => 2 * (freeLength(bare, site.inner + pitch) - WALL);
  const wide = beside((site.outer - site.inner) / count);
  // as long as that, fingers are narrower; shorter ones are not
  return Math.min(wide, beside(fingerPitch(site.inner, site.outer, count, Math.max(0, wide))));
}

/** How long a finger may be: half of it to each side, clear of a lap's wall, or all under one, and within the felloe. */
function longest(site: SeamSite, count: number): Mm {
  const under = site.laps.filter(lap => lap.depth > 0 && lap.apart < ROUNDING);
  const beside = { ...site, whole: Math.PI, laps: site.laps.filter(lap => !under.includes(lap)) };
  // half a finger past the wheel's centre line would miss the inner edge
  const free = [freeLength(beside, site.inner), site.inner, ...under.map(lap => lap.width / 2)];
  return Math.max(0, Math.min(2 * (Math.min(...free) - WALL), longestInFelloe(site, count)));
}

/** Fingers of a number, as long as the plan says; else as laps and what stands nearby allow, down to the least. */
function sized(site: SeamSite, options: SeamOptions, count: number): FingerSeam {
  const about = (site.outer - site.inner) / count;
  const room = 2 * (site.room ?? Infinity) - Math.abs(site.clearance);
  const most = Math.min(LENGTH * about, longest(site, count), room);
  const length = options.length ?? Math.max(LEAST_LENGTH * about, most);
  return { count, length, pitch: fingerPitch(site.inner, site.outer, count, length) };
}

/** Numbers of fingers to try where the plan does not say: about as wide as the felloe is thick, then narrower, then wider ones. Odd
 * numbers, so that both outermost fingers belong to one felloe; two at last. */
function counts({ inner, outer, thickness }: SeamSite): number[] {
  const band = outer - inner;
  const odd = (about: number): number => Math.max(3, about % 2 === 1 ? about : about - 1);
  const first = odd(Math.floor(band / Math.max(thickness, COMMON_PITCH)));
  const last = odd(Math.floor(band / LEAST_PITCH));
  const every = (from: number, to: number): number[] =>
    Array.from({ length: Math.max(0, (to - from) / 2 + 1) }, (_, i) => from + 2 * i);
  return [...every(first, last), ...every(3, first - 2).reverse(), 2];
}

/** A seam's fingers: of the plan's number, else of the first that fits. */
export function fingerSeam(site: SeamSite, options: SeamOptions): FingerSeam {
  if (options.count !== undefined) return sized(site, options, options.count);
  const tried = counts(site).map(count => sized(site, options, count));
  const fits = (f: FingerSeam): boolean => limits(site, options, f).length === 0;
  const near = tried.find(f => f.length / 2 <= (site.room ?? Infinity) && fits(f));
  return near ?? tried.find(fits) ?? tried[0]!;
}

/** What keeps fingers from being cut. */
function limits(site: SeamSite, options: SeamOptions, { count, pitch, length }: FingerSeam): Finding[] {
  const band = site.outer - site.inner;
  const reach = longest(site, count);
  const from = LEAST_LENGTH * pitch;
  const to = Math.min(reach, MOST_LENGTH * pitch);
  const found: Finding[] = [];
  if (count < 2 || !(pitch >= LEAST_PITCH)) {
    const most = Math.floor(band / LEAST_PITCH);
    const allowed = most >= 2 ? `2 to ${most}, shorter fingers, or joint: scarf` : 'joint: scarf, or butt';
    const why = `a seam has 2 fingers or more, each at least ${mm(LEAST_PITCH)} wide: these would be ${mm(pitch)}; allowed: ${allowed}`;
    found.push(seamStop(site, options, { joint: 'finger', option: 'count', value: count, limit: most, why }));
  } else if (!(length >= from - ROUNDING && length <= to + ROUNDING)) {
    const room = reach < MOST_LENGTH * pitch ? ` before they meet a lap or those of the felloe's other end` : '';
    const why =
      to < from
        ? `fingers ${mm(pitch)} wide are at least ${mm(from)} long, and may be ${mm(to)}${room}; allowed: another seam place, or joint: butt`
        : `fingers ${mm(pitch)} wide may be ${mm(from)} to ${mm(to)} long${room}; allowed: that, or another seam place`;
    found.push(seamStop(site, options, { joint: 'finger', option: 'length', value: length, limit: to, why }));
  }
  return found;
}

/** A warning where the grain runs across the fingers. */
function shortGrain(site: SeamSite): Finding[] {
  if (!site.grained || site.sweep / 2 <= STEEP + ROUNDING) return [];
  const message = `${site.field}.joint is finger: in felloes of more than a quarter turn the grain runs across the fingers, which snap; choose scarf, or 4 felloes or more`;
  return [{ level: 'warn', rule: 'short-grain', where: `${site.field}.joint`, message }];
}

/** What fingers come up against. */
export const fingerFindings = (site: SeamSite, options: SeamOptions, fingers: FingerSeam): Finding[] => [
  ...limits(site, options, fingers),
  ...shortGrain(site),
];
