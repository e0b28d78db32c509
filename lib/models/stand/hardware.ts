import { printMm } from '../../units/print-length.js';
import type { Hardware } from '../model.js';
import { halfGap, type StandSizes } from './sizes.js';

/** Past the outer face of an upright, for a collar or a nut; mm; common practice, no source. */
const PAST = 25;

/** Length of the axle: through everything it is carried by, and past it at both ends; behind a post, through the wheel's hub too. */
export function axleLength(s: StandSizes): number {
  const { thickness } = s.upright;
  if (s.kind === 'cheeks') return 2 * (halfGap(s) + thickness + PAST);
  return s.wheel.depth + s.clearance + 2 * thickness + 2 * PAST;
}

/** Everything bought for one stand. @param ballast kg */
export function standHardware(s: StandSizes, ballast: number): Hardware[] {
  const { axis } = s;
  const where = s.kind === 'cheeks' ? 'one in each cheek' : 'in the post and in its axle block';
  const bearings = axis.kind === 'bearing' ? [{ name: `bearing ${axis.bearing.name}`, quantity: 2, use: where }] : [];
  const diameter = axis.kind === 'axle' ? axis.diameter : axis.bearing.bore;
  return [
    ...bearings,
    { name: `shaft, ${printMm(diameter)}, ${printMm(axleLength(s))} long`, quantity: 1, use: 'carries the wheel' },
    { name: 'shaft collar', quantity: 2, use: 'keeps the shaft and the wheel in their places' },
    ...(s.anchored
      ? [{ name: 'anchor bolt', quantity: 4, use: 'through the feet into the floor, of a kind rated for that floor' }]
      : []),
    ...(ballast > 0 && !s.anchored
      ? [{ name: `ballast, ${ballast} kg`, quantity: 1, use: 'on the feet, tied down' }]
      : []),
  ];
}
