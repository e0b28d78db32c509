import * as z from 'zod/mini';
import { degrees, type Mm, type Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { axleBore } from './axle-schema.js';
import { angle, keys, length, whole } from './fields.js';
import { clearance, stockName, thickness } from './prop-fields.js';
import { seam } from './seam-schema.js';

/** Largest sizes, mm: a wheel of 6 m, and what could belong to it. */
const LARGEST: Mm = 6000;
const HALF: Mm = LARGEST / 2;

const rim = (unit: Unit) =>
  keys({
    outside: length(unit, 40, LARGEST),
    band: length(unit, 2, HALF),
    felloes: whole(3, 24),
    layers: z.exactOptional(whole(1, 12)),
    thickness: thickness(unit),
    seam: z.exactOptional(seam(unit)),
    stock: stockName(),
  });

const paddles = (unit: Unit) =>
  keys({
    count: whole(3, 60),
    rake: z.exactOptional(angle(degrees(-45), degrees(45))),
    depth: z.exactOptional(length(unit, 2, HALF)),
    tabs: z.exactOptional(keys({ count: z.exactOptional(whole(1, 3)), width: z.exactOptional(length(unit, 1, 500)) })),
    thickness: thickness(unit),
    stock: stockName(),
  });

/** The keys of a plan that are a water wheel's options. */
export const waterWheelShape = (unit: Unit) => ({
  rim: rim(unit),
  paddles: paddles(unit),
  spokes: keys({ count: whole(3, 24), width: length(unit, 1, 500), thickness: thickness(unit), stock: stockName() }),
  hub: keys({
    diameter: length(unit, 4, LARGEST),
    bore: z.exactOptional(axleBore(unit)),
    thickness: thickness(unit),
    stock: stockName(),
  }),
  axle: keys({ length: length(unit, 2, LARGEST) }),
  accents: z.exactOptional(accents(unit)),
  fit: z.exactOptional(
    keys({ slot: clearance(unit), wedge: clearance(unit), bore: clearance(unit), seam: clearance(unit) }),
  ),
});
