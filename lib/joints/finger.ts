import type { Finding } from '../findings/finding.js';
import type { Mm } from '../units/length.js';
import { butt } from './butt.js';
import { alongIsLong, glued, seamFace } from './glue.js';
import { freeLength, joinedEnds, mm, seamStop, withEnds } from './seam-ends.js';
import type { SeamJoint, SeamOptions, SeamPoint, SeamSite } from './seam-joint.js';

// Fingers cut through the thickness: seen from the front the seam runs to and fro, half a finger's length to either side of its line. Both
// ends of a felloe follow the same run, so that all felloes are alike and one's left end fills the next one's right end.
// n fingers of length L in a band from Ri to Ro have the pitch p = (sqrt(Ro² - L²/4) - Ri) / n: counted to where the rim's outer edge is
// over the fingers' tips, so that the outermost finger is at least p wide all along it.

/** Narrowest finger that survives handling, and that common cutters get between; common practice, no source. */
const LEAST_PITCH: Mm = 6;
/** Finger width where the plan does not say: as thick as the felloe, at least this; common practice, no source. */
const COMMON_PITCH: Mm = 12;
/** Length of a finger over its width where the plan does not say, and the least; common practice, no source. */
const LENGTH = 1.5;
const LEAST_LENGTH = 0.75;
/** Wood left between a finger and a lap's wall; common practice, no source. */
const WALL: Mm = 3;
const ROUNDING: Mm = 1e-6;

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

/** An odd number, so that both outermost fingers belong to one felloe, of fingers about as wide as the felloe is thick; three at least. */
function countFor({ inner, outer, thickness }: SeamSite): number {
  const about = Math.floor((outer - inner) / Math.max(thickness, COMMON_PITCH));
  return Math.max(3, about % 2 === 1 ? about : about - 1);
}

/** How long a finger may be: half of it to each side, clear of a lap's wall, or all under one, and within the felloe. */
function longest(site: SeamSite): Mm {
  const under = site.laps.filter(lap => lap.depth > 0 && lap.apart < ROUNDING);
  const beside = { ...site, laps: site.laps.filter(lap => !under.includes(lap)) };
  // half a finger past the wheel's centre line would miss the inner edge
  const free = [freeLength(beside, site.inner), site.inner, ...under.map(lap => lap.width / 2)];
  return Math.max(0, 2 * (Math.min(...free) - WALL));
}

/** A seam's fingers. Where the plan leaves count or length out they are as long as laps allow, down to the least. */
export function fingerSeam(site: SeamSite, options: SeamOptions): FingerSeam {
  const count = options.count ?? countFor(site);
  const about = (site.outer - site.inner) / count;
  const length = options.length ?? Math.max(LEAST_LENGTH * about, Math.min(LENGTH * about, longest(site)));
  return { count, length, pitch: fingerPitch(site.inner, site.outer, count, length) };
}

function fingerFindings(site: SeamSite, { count, pitch, length }: FingerSeam): Finding[] {
  const most = Math.floor((site.outer - site.inner) / LEAST_PITCH);
  const short = site.grained && !alongIsLong(site);
  const reach = longest(site);
  return [
    ...(count < 2 || !(pitch >= LEAST_PITCH)
      ? [
          seamStop(
            site,
            'finger',
            'count',
            count,
            most,
            `fingers would be ${mm(pitch)} wide, at least ${LEAST_PITCH} mm; allowed: 2 to ${Math.max(2, most)}, or joint: scarf`,
          ),
        ]
      : []),
    ...(length > reach + ROUNDING
      ? [
          seamStop(
            site,
            'finger',
            'length',
            length,
            reach,
            `fingers may be ${mm(reach)} long before they meet a lap or the felloe's other end; allowed: at most that, another seam place, or joint: butt`,
          ),
        ]
      : []),
    ...(short
      ? [
          {
            level: 'warn',
            rule: 'short-grain',
            where: `${site.field}.joint`,
            message: `${site.field}.joint is finger: in felloes of more than a quarter turn the grain runs across the fingers, which snap; choose scarf, or 4 felloes or more`,
          } as const,
        ]
      : []),
  ];
}

/** The seam's line from the outer edge to the inner one, moved by half the clearance into the wood on one side: v < 0 for a left end.
 * @param wood the side its wood is on */
export function fingerRun(site: SeamSite, f: FingerSeam, wood: 1 | -1): SeamPoint[] {
  const off = (wood * site.clearance) / 2;
  const side = (j: number): Mm => (j % 2 === 0 ? f.length / 2 : -f.length / 2) + off;
  const at = (u: Mm, v: Mm): SeamPoint => ({ u, v, mate: 'finger' });
  const onEdge = (radius: Mm, v: Mm): SeamPoint => at(Math.sqrt(radius * radius - v * v), v);
  const steps = Array.from({ length: f.count - 1 }, (_, i): SeamPoint[] => {
    // between fingers j + 1 (outside) and j; the left felloe's are those at even j, and narrower by the clearance
    const j = f.count - 2 - i;
    const own = (j % 2 === 0) === wood < 0;
    const u = site.inner + (j + 1) * f.pitch + ((own ? -1 : 1) * site.clearance) / 2;
    return [at(u, side(j + 1)), at(u, side(j))];
  });
  return [onEdge(site.outer, side(f.count - 1)), ...steps.flat(), onEdge(site.inner, side(0))];
}

/** Fingers along the seam, cut through: for every method. */
export const fingered: SeamJoint = (felloe, site, options) => {
  const seam = fingerSeam(site, options);
  const findings = fingerFindings(site, seam);
  if (findings.some(f => f.level === 'stop')) return { ...butt(felloe, site, options), findings };
  const ends = joinedEnds(site);
  const flanks = (seam.count - 1) * seam.length * site.thickness;
  return {
    part: withEnds(felloe, site, {
      ...(ends.includes('left') && { left: fingerRun(site, seam, -1) }),
      ...(ends.includes('right') && { right: fingerRun(site, seam, 1) }),
    }),
    loose: [],
    hardware: [],
    settings: [
      { name: 'width of a finger', value: seam.pitch, unit: 'mm' },
      { name: 'length of a finger', value: seam.length, unit: 'mm' },
    ],
    steps: [
      'Try the fingers of every seam dry; ease them until they go in under hand pressure. Lower the felloes into each other face down.',
    ],
    findings,
    glue: glued([seamFace(site), { area: flanks, long: alongIsLong(site) }]),
    reach: seam.length / 2 + Math.abs(site.clearance) / 2,
    locks: true,
    lines: [fingerRun(site, seam, -1), fingerRun(site, seam, 1)],
  };
};
