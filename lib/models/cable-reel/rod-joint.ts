import type { Finding } from '../../findings/finding.js';
import type { SeamOptions } from '../../joints/seam-joint.js';
import { toDegrees } from '../../units/length.js';
import { stated } from '../helm-wheel/limit.js';
import { fixings, rodSite } from './fixings.js';
import { segmentFlange } from './segments.js';
import type { ReelSizes } from './sizes.js';

// Where rods find no place through a flange of segments for the sake of how its segments are joined.

/** Sizes a joint may have, those that reach farthest first, and how a message states them. */
const SIZES = ['length', 'depth', 'overlap', 'width', 'diameter'] as const;

type Size = (typeof SIZES)[number];

const print = (size: Size, value: number): string =>
  size === 'overlap' ? `${stated(toDegrees(value))} deg` : `${stated(value)} mm`;

/** Steps in which the largest size that leaves room is looked for. */
const STEPS = 10;

const joined = (s: ReelSizes, seam: SeamOptions): ReelSizes => ({ ...s, flange: { ...s.flange, seam } });

/** Whether rods find a place through segments so joined, and the joint can be made. */
function passes(s: ReelSizes): boolean {
  const fixed = fixings(s);
  return typeof fixed === 'object' && !fixed.flange?.layers.some(l => l.joined.findings.some(f => f.level === 'stop'));
}

/** The largest value of a size, in tenths of what the plan says, that leaves rods a place; none where no smaller one does. */
function largest(s: ReelSizes, size: Size, value: number): number | undefined {
  const { seam } = s.flange;
  const shares = Array.from({ length: STEPS - 1 }, (_, i) => (STEPS - 1 - i) / STEPS);
  const share = shares.find(x => passes(joined(s, { ...seam, [size]: x * value })));
  return share === undefined ? undefined : share * value;
}

/** A stop that blames the segments' joint, or the size of it that the plan states, where rods would find a place beside butted segments. */
export function jointInTheWay(s: ReelSizes): Finding | undefined {
  const { build, seam } = s.flange;
  const { joint = 'butt' } = seam;
  if (build !== 'segments' || joint === 'butt') return undefined;
  if (!passes(joined(s, { ...seam, joint: 'butt' }))) return undefined;
  const { wall } = rodSite(s, segmentFlange(s));
  const why = `no circle of ${s.rods.count} rods keeps ${stated(wall)} mm of wood between every hole and the joints`;
  for (const size of SIZES) {
    const value = seam[size];
    const fits = value === undefined ? undefined : largest(s, size, value);
    if (value === undefined || fits === undefined) continue;
    const where = `flange.seam.${size}`;
    const message = `${where} is ${print(size, value)}; ${why}; allowed: at most ${print(size, fits)}, thinner or fewer rods, or joint: butt`;
    return { level: 'stop', rule: 'rod-place', where, message, value, limit: fits };
  }
  const where = 'flange.seam.joint';
  const message = `${where} is ${joint}; ${why}, however small they are made; allowed: butt, thinner or fewer rods, or another number of segments`;
  return { level: 'stop', rule: 'rod-place', where, message, value: joint, limit: 'butt' };
}
