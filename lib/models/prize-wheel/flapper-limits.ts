import type { Finding } from '../../findings/finding.js';
import { toDegrees } from '../../units/length.js';
import { stated, stop } from '../helm-wheel/limit.js';
import { AIR, type PrizeSizes } from './sizes.js';
import { leastPivot, letGo, pegReach } from './swing.js';

/** Pegs stand out past the flapper by this, at least; a reach under this hardly clicks; mm; common practice, no source. */
const PAST = 2;
const HARDLY = 1;

/** The flapper clears the face's edge, meets the pegs, and drops back between any two of them. */
export function flapperLimits(s: PrizeSizes): Finding[] {
  const { length, reach, head, tip, pivot, bolt, thickness } = s.flapper;
  const pegs = pegReach(s.pegs);
  const least = Math.min(...s.sectors);
  const off = letGo(pegs, length, reach);
  const shortest = Math.max(length + leastPivot({ face: s.face.radius, bolt }) - pivot, 1.5 * (head + tip), 2 * reach);
  const stickOut = s.face.thickness + AIR + thickness + PAST;
  const deg = (a: number): number => Number(toDegrees(a).toFixed(2));
  const jams = `pegs let the flapper go ${deg(off)} deg past the top, the least sector is ${deg(least)} deg`;
  return [
    ...(length < shortest - 1e-9
      ? [
          stop(
            'flapper-length',
            'flapper.length',
            length,
            shortest,
            `its bolt passes the edge of the face, its tip reaches the pegs; allowed: ${stated(shortest)} mm or more`,
          ),
        ]
      : []),
    ...(s.pegs.length < stickOut - 1e-9
      ? [
          stop(
            'peg-length',
            'pegs.length',
            s.pegs.length,
            stickOut,
            `the flapper swings past their ends; allowed: ${stated(stickOut)} mm or more`,
          ),
        ]
      : []),
    ...(off >= least
      ? [
          stop(
            'flapper-reach',
            'flapper.reach',
            reach,
            reach,
            `${jams}: the next one jams it; allowed: less reach, or a shorter flapper`,
          ),
        ]
      : off > least / 2 + 1e-9
        ? [
            {
              level: 'warn',
              rule: 'flapper-reach',
              where: 'flapper.reach',
              message: `${jams}: it has hardly dropped back when the next one comes; less reach`,
              value: reach,
            } as const,
          ]
        : []),
    ...(reach < HARDLY
      ? [
          {
            level: 'warn',
            rule: 'flapper-click',
            where: 'flapper.reach',
            message: `flapper.reach is ${stated(reach)} mm: it hardly touches the pegs; fewer sectors, a longer flapper or ${HARDLY} mm and more`,
            value: reach,
            limit: HARDLY,
          } as const,
        ]
      : []),
  ];
}
