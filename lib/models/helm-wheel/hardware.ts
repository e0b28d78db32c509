import { screwLength } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import { gluesFor, shaftLock, takesScrews } from '../glues.js';
import { summed } from '../hardware.js';
import type { Hardware } from '../model.js';
import type { Ring } from '../ring.js';
import { coreSizes, SHORT_OF, screwCircle, shaftOf } from './core.js';
import { seatsBearing } from './hub.js';
import type { HelmPins } from './pins.js';
import type { HelmSizes } from './sizes.js';
import { plugScrew, UNDER_PLUG } from './trim.js';

const mm = (v: Mm): string => `${Math.round(v * 100) / 100} mm`;

/** Pins of the spokes' own layers; those of the rim are the ring's. */
function spokePins(s: HelmSizes, { diameter, inner, handle }: HelmPins): Hardware[] {
  const quantity = (inner.length + handle.length) * s.spokes;
  if (quantity === 0) return [];
  const name = `dowel pin, ${diameter} mm, ${mm(s.spoke.thickness)} long`;
  return [{ name, quantity, use: 'registers the layers of the spokes while the glue sets' }];
}

function hubScrews(s: HelmSizes): Hardware[] {
  const circle = screwCircle(s);
  if (!circle) return [];
  const into = circle.through
    ? 'through the spokes into the front hub disc'
    : 'through the back hub disc into the spokes';
  return [
    {
      name: `wood screw, ${circle.screw.name}, ${mm(circle.length)} long`,
      quantity: s.spokes,
      use: `one a spoke, from behind ${into}`,
    },
  ];
}

/** Trim screws stay short of the rim's far face, or of the screws that come from there. */
function trimScrews(s: HelmSizes): Hardware[] {
  const { trim } = s;
  if (!trim?.plugs) return [];
  const count = trim.plugs.each * trim.segments * trim.faces.length;
  const screw = plugScrew(trim.plugs.diameter);
  const holds = takesScrews(trim.stock, s.rim.stock);
  const length = holds ? screwLength(screw, UNDER_PLUG + (s.rim.thickness - SHORT_OF) / trim.faces.length) : undefined;
  const screws =
    length === undefined
      ? []
      : [{ name: `wood screw, ${screw.name}, ${mm(length)} long`, quantity: count, use: 'trim to rim, under a plug' }];
  return [
    ...screws,
    {
      name: `plug, ${mm(trim.plugs.diameter)}`,
      quantity: count,
      use: holds ? 'hides a trim screw' : 'in the trim, for looks',
    },
  ];
}

/** A shaft past the hub, for a collar and its bearing; common practice, no source. */
const PAST_HUB: Mm = 40;

/** The hub from face to face. */
const hubDepth = (s: HelmSizes): Mm => s.spoke.thickness + s.discs.reduce((sum, d) => sum + d.thickness, 0);

/** What locks a wheel to a shaft that turns it. */
export function lockOf(s: HelmSizes): Hardware | undefined {
  const { shaft, plug } = coreSizes(s);
  if (s.turns !== 'shaft' || shaft === 0) return undefined;
  return plug !== undefined && takesScrews(s.spoke.stock)
    ? shaftLock('locks the core plug to the shaft', s.spoke.stock)
    : shaftLock('locks the hub to the shaft', ...s.discs.map(d => d.stock));
}

function axis(s: HelmSizes): Hardware[] {
  const bearings = s.discs.filter(d => seatsBearing(s, d));
  const names = [...new Set(bearings.map(d => (d.axis.kind === 'bearing' ? d.axis.bearing.name : '')))];
  const list = names.map(name => ({
    name: `bearing ${name}`,
    quantity: bearings.filter(d => d.axis.kind === 'bearing' && d.axis.bearing.name === name).length,
    use: 'in the hub',
  }));
  const diameter = Math.max(0, ...s.discs.map(d => shaftOf(d.axis)));
  const shaft =
    diameter > 0
      ? [
          {
            name: `${s.turns === 'shaft' ? 'shaft' : 'axle'}, ${mm(diameter)}, ${mm(hubDepth(s) + 2 * PAST_HUB)} long`,
            quantity: 1,
            use: `through the hub, ${mm(PAST_HUB)} past it either way; longer where what carries it asks for it`,
          },
        ]
      : [];
  const lock = lockOf(s);
  return [...list, ...shaft, ...(lock ? [lock] : [])];
}

/** Everything bought for one wheel. */
export const helmHardware = (s: HelmSizes, rim: Ring, pins: HelmPins): Hardware[] =>
  summed([
    ...rim.hardware,
    ...spokePins(s, pins),
    ...hubScrews(s),
    ...trimScrews(s),
    ...axis(s),
    ...gluesFor([s.rim.stock, s.spoke.stock, ...s.discs.map(d => d.stock), ...(s.trim ? [s.trim.stock] : [])]),
  ]);
