import * as z from 'zod/mini';
import type { Mm, Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { axleBore } from './axle-schema.js';
import { choice, keys, length, whole } from './fields.js';
import { clearance, stockName, thickness } from './prop-fields.js';
import { plainSeam } from './seam-schema.js';

/** Largest sizes, mm: a reel of 3 m. */
const LARGEST: Mm = 3000;

const flange = (unit: Unit) =>
  keys({
    diameter: length(unit, 40, LARGEST),
    build: z.exactOptional(choice(['planks', 'segments'])),
    pieces: z.exactOptional(whole(2, 24)),
    layers: z.exactOptional(whole(1, 12)),
    seam: z.exactOptional(plainSeam(unit)),
    thickness: thickness(unit),
    stock: stockName(),
  });

const battens = (unit: Unit) =>
  keys({
    count: z.exactOptional(whole(2, 6)),
    width: z.exactOptional(length(unit, 3, 500)),
    thickness: thickness(unit),
    stock: z.exactOptional(stockName()),
  });

const core = (unit: Unit) =>
  keys({
    diameter: length(unit, 10, LARGEST),
    staves: whole(4, 48),
    length: length(unit, 5, LARGEST),
    thickness: thickness(unit),
    stock: stockName(),
  });

/** The keys of a plan that are a cable reel's options. */
export const cableReelShape = (unit: Unit) => ({
  flange: flange(unit),
  battens: z.exactOptional(battens(unit)),
  core: core(unit),
  rods: keys({ count: whole(2, 16), diameter: length(unit, 2, 60) }),
  bore: z.exactOptional(axleBore(unit)),
  accents: z.exactOptional(accents(unit)),
  fit: z.exactOptional(keys({ bore: clearance(unit), rod: clearance(unit), seam: clearance(unit) })),
});
