import { screwLength } from '../../stock/screws.js';
import type { Mm } from '../../units/length.js';
import { gluesFor } from '../glues.js';
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
  const length = screwLength(screw, UNDER_PLUG + (s.rim.thickness - SHORT_OF) / trim.faces.length);
  const screws =
    length === undefined
      ? []
      : [{ name: `wood screw, ${screw.name}, ${mm(length)} long`, quantity: count, use: 'trim to rim, under a plug' }];
  return [...screws, { name: `plug, ${mm(trim.plugs.diameter)}`, quantity: count, use: 'hides a trim screw' }];
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
      ? [{ name: `${s.turns === 'shaft' ? 'shaft' : 'axle'}, ${mm(diameter)}`, quantity: 1, use: 'through the hub' }]
      : [];
  const lock =
    s.turns === 'shaft' && diameter > 0
      ? [
          {
            name: 'locking screw',
            quantity: 1,
            use: coreSizes(s).plug === undefined ? 'locks the hub to the shaft' : 'locks the core plug to the shaft',
          },
        ]
      : [];
  return [...list, ...shaft, ...lock];
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
