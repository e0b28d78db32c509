import type { Finding } from '../findings/finding.js';
import { bulgeOf, type Outline, type Polyline, solid, type Vertex, vertex } from '../geometry/outline.js';
import { add, angleOf, type Point, polar, scale } from '../geometry/point.js';
import type { Part } from '../parts/part.js';
import { type Mm, type Radians, toDegrees, toInches } from '../units/length.js';
import { printMm } from '../units/print-length.js';
import type { SeamJointName, SeamOptions, SeamPoint, SeamSite } from './seam-joint.js';

// A seam's own frame: u along the seam from the wheel's centre, v across it, anticlockwise; mm. A felloe's left end has its wood at v < 0,
// its right end at v > 0.

const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;

/** Which end of a felloe: left is the anticlockwise one. */
export type End = 'left' | 'right';

/** The ends of a felloe that meet another. */
export const joinedEnds = (site: SeamSite): End[] => (['left', 'right'] as const).filter(end => site.ends[end]);

/** Angle of an end's seam in the felloe's frame, from +x. */
export const seamAngle = (site: SeamSite, end: End): Radians =>
  QUARTER + (end === 'left' ? site.sweep / 2 : -site.sweep / 2);

/** From a seam's frame to the felloe's. */
export const onSeam = (site: SeamSite, end: End, { u, v }: SeamPoint): Point =>
  add(polar(u, seamAngle(site, end)), scale(polar(1, seamAngle(site, end) + QUARTER), v));

/** The way into the wood at an end: the sign of v. */
export const intoWood = (end: End): 1 | -1 => (end === 'left' ? -1 : 1);

/** A straight radial end. */
export const square = (site: SeamSite): SeamPoint[] => [
  { u: site.outer, v: 0 },
  { u: site.inner, v: 0 },
];

/** A box about a stretch of the seam, closed. @param half across the seam, to either side */
export const boxed = (from: Mm, to: Mm, half: Mm): SeamPoint[] => [
  { u: from, v: -half },
  { u: to, v: -half },
  { u: to, v: half },
  { u: from, v: half },
  { u: from, v: -half },
];

/** An arc about the wheel's centre, without its end: in two where it is more than half a turn, as when half a ring is longer by a scarf. */
function arcTo(a: Point, b: Point, way: 1 | -1): Vertex[] {
  const between = way * (angleOf(b) - angleOf(a));
  const sweep = between - TURN * Math.floor(between / TURN);
  if (sweep <= Math.PI) return [vertex(a, bulgeOf(way * sweep))];
  const half = bulgeOf((way * sweep) / 2);
  return [vertex(a, half), vertex(polar(Math.hypot(a.x, a.y), angleOf(a) + (way * sweep) / 2), half)];
}

/** The outline of a felloe whose ends follow runs of the seams' frames, each from the outer edge to the inner one; straight where not given.
 * Edges of the ends are tagged. */
export function withEnds(
  felloe: Part,
  site: SeamSite,
  runs: { readonly left?: readonly SeamPoint[]; readonly right?: readonly SeamPoint[] },
): Part {
  const run = (end: End): SeamPoint[] => [...(runs[end] ?? square(site))];
  const mates = (end: End): (string | undefined)[] =>
    run(end).map(p => (site.ends[end] ? (p.mate ?? 'seam') : undefined));
  const left = run('left').map(p => onSeam(site, 'left', p));
  const right = run('right')
    .map(p => onSeam(site, 'right', p))
    .reverse();
  const leftMates = mates('left').slice(0, -1);
  const rightMates = mates('right').slice(0, -1).reverse();
  const edges = (points: readonly Point[], tags: readonly (string | undefined)[]): Polyline =>
    points.map((p, i) => vertex(p, 0, tags[i]));
  const outline: Outline = [
    ...arcTo(right.at(-1)!, left[0]!, 1),
    ...edges(left.slice(0, -1), leftMates),
    ...arcTo(left.at(-1)!, right[0]!, -1),
    ...edges(right.slice(0, -1), rightMates),
  ];
  return { ...felloe, region: solid(outline) };
}

/** Wood left between anything of a seam and a lap's wall; common practice, no source. */
export const FROM_LAP: Mm = 6;

/** How far the wood is free from the seam's line, square to it, at a distance from the wheel's centre: to the wall of the nearest lap, and
 * to the middle of a whole felloe, where the other seam's joint comes from. Negative under a lap. */
export function freeLength(site: SeamSite, u: Mm): Mm {
  const middle = site.whole < Math.PI ? u * Math.tan(site.whole / 2) : Infinity;
  const walls = site.laps
    .filter(lap => lap.depth > 0 && lap.apart < QUARTER)
    .map(lap => (u * Math.sin(lap.apart) - lap.width / 2) / Math.cos(lap.apart));
  return Math.min(middle, ...walls);
}

const rounded = (n: number): number => Math.round(n * 100) / 100;

/** A length as a message states it, for plans in either unit. */
export const mm = (value: Mm): string => `${printMm(value)} (${Math.round(toInches(value) * 1000) / 1000} in)`;

/** An angle in degrees, as far as a message states it. */
export const deg = (angle: Radians): number => rounded(toDegrees(angle));

/** What the numbers of an option are in. */
const STATED: Readonly<Partial<Record<keyof SeamOptions, (value: number) => string>>> = {
  diameter: mm,
  depth: mm,
  length: mm,
  width: mm,
  overlap: value => `${rounded(value)} deg`,
};

/** Why a seam cannot be made. */
export interface SeamLimit {
  readonly joint: SeamJointName;
  /** the joint's name unless given */
  readonly rule?: string;
  /** the option that is to blame, and what it is: as the plan says, or what was chosen for it */
  readonly option: keyof SeamOptions;
  readonly value: number | string;
  readonly limit: number | string;
  /** why, and what is allowed or to be chosen instead */
  readonly why: string;
}

/** A stop about a seam: at the option where the plan states it, at the joint where its size was chosen for the plan. */
export function seamStop(site: SeamSite, options: SeamOptions, found: SeamLimit): Finding {
  const { joint, option, value, limit, why } = found;
  const own = options[option] !== undefined || option === 'joint';
  const where = `${site.field}.${own ? option : 'joint'}`;
  const stated = typeof value === 'number' ? (STATED[option] ?? rounded)(value) : value;
  return {
    level: 'stop',
    rule: found.rule ?? joint,
    where,
    message: `${where} is ${own ? stated : `${joint}, its ${option} ${stated}`}; ${why}`,
    value: typeof value === 'number' ? rounded(value) : value,
    limit: typeof limit === 'number' ? rounded(limit) : limit,
  };
}

/** A stop where felloes are of something that a loose piece does not hold in. @param joint biscuit or dowel */
export function woodOnly(site: SeamSite, options: SeamOptions, joint: 'biscuit' | 'dowel'): Finding[] {
  const { traits } = site;
  if (!traits || traits.loosePieces) return [];
  const why = `a ${joint} does not hold in ${traits.family}; allowed: joints that are glued alone (finger, scarf, key, butt), or felloes of wood`;
  return [seamStop(site, options, { joint, rule: 'wood-only', option: 'joint', value: joint, limit: 'finger', why })];
}
