import { refuse } from '../../findings/unusable.js';
import { type Radians, toDegrees } from '../../units/length.js';
import { angle, type Bound, count, requireBounds, size } from '../bounds.js';
import type { PrizeWheelOptions, SectorOptions } from '../prize-wheel-options.js';

const TURN = 2 * Math.PI;
/** Fewest and most sectors, and the least angle of one: common practice, no source. */
export const LEAST_SECTORS = 2;
export const MOST_SECTORS = 72;
export const LEAST_ANGLE: Radians = Math.PI / 90;
/** Angles written in whole minutes may miss a full turn by their rounding. */
const ROUNDED: Radians = 1e-3;

/** Whether angles make a full turn, but for the rounding of whoever wrote them. */
export const fullTurn = (angles: readonly Radians[]): boolean =>
  Math.abs(angles.reduce((sum, a) => sum + a, 0) - TURN) < ROUNDED;

const sectorBounds = (sectors: SectorOptions): Bound[] =>
  'count' in sectors
    ? [count('sectors.count', sectors.count, LEAST_SECTORS, MOST_SECTORS)]
    : [
        count('sectors.angles', sectors.angles.length, LEAST_SECTORS, MOST_SECTORS),
        ...sectors.angles.map((a, i) => angle(`sectors.angles[${i}]`, a, LEAST_ANGLE, TURN)),
      ];

/** Every number a prize wheel is made of, with its documented range. */
function bounds({ face, sectors, pegs, flapper, hub, plate, edges, fit }: PrizeWheelOptions): Bound[] {
  return [
    size('face.diameter', face.diameter, 10),
    count('face.segments', face.segments, 1, 24),
    count('face.layers', face.layers, 1, 12),
    size('face.thickness', face.thickness),
    size('face.hole', face.hole, 0.5),
    ...sectorBounds(sectors),
    size('pegs.circle', pegs?.circle, 5),
    size('pegs.diameter', pegs?.diameter, 0.5),
    size('pegs.length', pegs?.length, 0.5),
    size('flapper.length', flapper.length, 1),
    size('flapper.reach', flapper.reach, 0.1),
    size('flapper.bolt', flapper.bolt, 0.5),
    size('flapper.thickness', flapper.thickness),
    size('hub.diameter', hub.diameter, 2),
    size('hub.thickness', hub.thickness),
    size('hub.bore.axle', 'axle' in hub.bore ? hub.bore.axle : undefined, 0.5),
    size('plate.width', plate.width, 5),
    size('plate.height', plate.height, 5),
    size('plate.thickness', plate.thickness),
    size('edges.face.radius', edges?.face?.radius),
    ...(['peg', 'bore', 'seam'] as const).map(joint => size(`fit.${joint}`, fit?.[joint], -10, 10)),
  ];
}

/** Refuses options whose numbers are out of their documented ranges, NaN among them, all at once; and sectors that make no full turn.
 * @throws Unusable */
export function requireUsable(options: PrizeWheelOptions): void {
  requireBounds(bounds(options));
  const { sectors } = options;
  if ('count' in sectors || fullTurn(sectors.angles)) return;
  const sum = sectors.angles.reduce((total, a) => total + a, 0);
  refuse('sectors.angles', `${Number(toDegrees(sum).toFixed(3))} deg in all`, '360 deg in all');
}
