import type { Finding } from '../../findings/finding.js';
import type { Mm } from '../../units/length.js';
import { stated } from '../helm-wheel/limit.js';
import { combined, type Mass } from '../mass.js';
import type { Figure } from '../model.js';

/** Standard gravity, m/s²: third General Conference on Weights and Measures, 1901. */
export const GRAVITY = 9.80665;
/** What a standing person pushes with the arms extended, N: upper limit for work, "Ergonomic Design for People at Work", 1986. */
export const PUSH = 110;
/** Moment that keeps the stand up over the one that tips it, at least; common practice, no source. */
export const SAFETY = 1.5;
/** More ballast than this on one stand is a foot too short; kg; common practice, no source. */
export const MOST_BALLAST = 250;

/** Where a stand may tip over, and what tips it: mm, N. */
export interface Footing {
  /** the feet's ends, and half the width at the floor */
  readonly back: Mm;
  readonly front: Mm;
  readonly half: Mm;
  /** the axle and the top of the wheel over the floor */
  readonly axle: Mm;
  readonly top: Mm;
  readonly push: number;
}

/** How a stand stands: the moment that holds it up over the moment that tips it, each way. */
export interface Standing {
  readonly forward: number;
  readonly backward: number;
  readonly sideways: number;
  /** in the middle of the feet, kg */
  readonly ballast: number;
}

/** Every way it can tip: how far its weight lies from the edge, how far ballast does, how high the push is. A push in the wheel's plane
 * turns the wheel, so there it acts at the axle; across it, at the top. */
function ways(mass: Mass, f: Footing) {
  const middle = (f.front - f.back) / 2;
  return {
    forward: { arm: f.front - mass.z, ballast: middle, height: f.top },
    backward: { arm: mass.z - f.back, ballast: middle, height: f.top },
    sideways: { arm: f.half - Math.abs(mass.x), ballast: f.half, height: f.axle },
  };
}

/** Factors against tipping: sum of m g a over F h, a the distance of each weight from the edge it tips over.
 * @param masses of everything that stands there  @param ballast kg in the middle of the feet; as much as it needs if left out */
export function standing(masses: readonly Mass[], f: Footing, ballast?: number): Standing {
  const mass = combined(masses);
  const all = ways(mass, f);
  const needed = Math.max(
    0,
    ...Object.values(all).map(w => ((SAFETY * f.push * w.height) / GRAVITY - mass.weight * w.arm) / w.ballast),
  );
  const kg = ballast ?? Math.ceil(needed - 1e-9);
  const factor = (w: { arm: Mm; ballast: Mm; height: Mm }): number =>
    (GRAVITY * (mass.weight * w.arm + kg * w.ballast)) / (f.push * w.height);
  return {
    forward: factor(all.forward),
    backward: factor(all.backward),
    sideways: factor(all.sideways),
    ballast: kg,
  };
}

/** The factors as figures. */
export const tippingFigures = (s: Standing): Figure[] => [
  { name: 'tipping factor, forward', value: s.forward, unit: 'factor' },
  { name: 'tipping factor, backward', value: s.backward, unit: 'factor' },
  { name: 'tipping factor, sideways', value: s.sideways, unit: 'factor' },
  { name: 'ballast on the feet', value: s.ballast, unit: 'kg' },
];

/** How a stand that is too easily tipped is mended. @param needed kg that would keep it up  @param given whether the plan says its ballast */
export function tippingFindings(s: Standing, needed: number, given: boolean): Finding[] {
  const least = Math.min(s.forward, s.backward, s.sideways);
  const where = s.sideways === least ? 'foot.width' : 'foot.length';
  const cure = `allowed: a longer or wider foot, ballast of ${Math.ceil(needed - 1e-9)} kg, or anchored: true`;
  const push = `a push at the top is resisted ${stated(least)} times over`;
  if (!given && s.ballast > MOST_BALLAST)
    return [
      {
        level: 'stop',
        rule: 'tipping',
        where,
        message: `the feet are so short that ${s.ballast} kg of ballast would have to hold them down, at most ${MOST_BALLAST} kg; allowed: a longer or wider foot, or anchored: true`,
        value: s.ballast,
        limit: MOST_BALLAST,
      },
    ];
  if (least >= SAFETY - 1e-9) return [];
  const level = least < 1 ? 'stop' : 'warn';
  const message = `${push}, at least ${SAFETY} times is wanted; ${cure}`;
  return [{ level, rule: 'tipping', where, message, value: least, limit: SAFETY }];
}
