import { type Screw, screwLength, screws } from '../../stock/screws.js';
import { printMm } from '../../units/print-length.js';
import { takesScrews } from '../glues.js';
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

/** Screws through the base plate into feet and uprights. */
export interface BaseScrews {
  readonly screw: Screw;
  readonly length: number;
  readonly count: number;
}

/** The thickest screw, over the thickness of the board whose edge it goes into; how deep it goes, and how far apart screws are, mm; common
 * practice, no source. */
const THICKEST = 1 / 4;
const INTO_EDGE = 40;
const PITCH = 150;

/** None without a base plate, or where screws do not hold. */
export function baseScrews({ base, foot, upright, kind }: StandSizes): BaseScrews | undefined {
  if (!base || !takesScrews(base.stock, foot.stock, upright.stock)) return undefined;
  const thin = Math.min(foot.thickness, upright.thickness);
  const screw = screws.filter(x => x.gauge <= 8 && x.diameter <= THICKEST * thin).at(-1);
  const length = screw && screwLength(screw, base.thickness + INTO_EDGE);
  if (!screw || length === undefined || length <= base.thickness) return undefined;
  const along = (size: number): number => Math.max(2, Math.ceil(size / PITCH));
  const count = 2 * along(foot.length) + (kind === 'cheeks' ? 2 : 1) * along(upright.base);
  return { screw, length, count };
}

function baseHardware(s: StandSizes): Hardware[] {
  const driven = baseScrews(s);
  if (!driven) return [];
  const name = `wood screw, ${driven.screw.name}, ${printMm(driven.length)} long`;
  return [{ name, quantity: driven.count, use: 'from below through the base plate into feet and uprights' }];
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
    ...baseHardware(s),
    ...(s.anchored
      ? [{ name: 'anchor bolt', quantity: 4, use: 'through the feet into the floor, of a kind rated for that floor' }]
      : []),
    ...(ballast > 0 && !s.anchored
      ? [{ name: `ballast, ${ballast} kg`, quantity: 1, use: 'on the feet, tied down' }]
      : []),
  ];
}
