import * as z from 'zod/mini';
import { degrees, type Mm, type Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { angle, keys, length, whole } from './fields.js';
import { clearance, edge, stockName, THICKEST, thickness } from './prop-fields.js';
import { plainSeam } from './seam-schema.js';

/** Largest sizes, mm: a frame of 6 m, and what could belong to it. */
const LARGEST: Mm = 6000;
const HALF: Mm = LARGEST / 2;

const ring = (unit: Unit) =>
  keys({
    outside: length(unit, 40, LARGEST),
    band: length(unit, 2, HALF),
    sweep: z.exactOptional(angle(degrees(5), degrees(360))),
    segments: whole(1, 24),
    layers: z.exactOptional(whole(1, 12)),
    thickness: thickness(unit),
    seam: z.exactOptional(plainSeam(unit)),
    stock: stockName(),
  });

const mullions = (unit: Unit) =>
  keys({
    upright: z.exactOptional(whole(0, 5)),
    level: z.exactOptional(whole(0, 5)),
    width: length(unit, 1, 500),
    thickness: thickness(unit),
    stock: stockName(),
  });

/** The keys of a plan that are a ring frame's options. */
export const ringFrameShape = (unit: Unit) => ({
  ring: ring(unit),
  rebate: z.exactOptional(keys({ width: length(unit, 1, HALF), depth: length(unit, 0.5, THICKEST) })),
  mullions: z.exactOptional(mullions(unit)),
  legs: z.exactOptional(keys({ height: length(unit, 1, LARGEST) })),
  edges: z.exactOptional(keys({ ring: edge(unit) })),
  accents: z.exactOptional(accents(unit)),
  fit: z.exactOptional(
    keys({
      lap: clearance(unit),
      pane: z.exactOptional(length(unit, 0, 20)),
      seam: clearance(unit),
      mullion: clearance(unit),
    }),
  ),
});
