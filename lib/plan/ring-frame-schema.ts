import * as z from 'zod/mini';
import { degrees, type Mm, type Unit } from '../units/length.js';
import { angle, choice, keys, length, text, whole } from './fields.js';
import { plainSeam } from './seam-schema.js';

/** Largest sizes, mm: a frame of 6 m, and what could belong to it. */
const LARGEST: Mm = 6000;
const HALF: Mm = LARGEST / 2;
const THICKEST: Mm = 300;
const LONGEST_NAME = 40;

/** Name of a stock; whether it is there is asked once all of them are read. */
const stockName = () => text(LONGEST_NAME);
const thickness = (unit: Unit) => z.exactOptional(length(unit, 0.2, THICKEST));

/** Clearance, mm: a press of 1 mm to a gap of 3 mm. */
const clearance = (unit: Unit) => z.exactOptional(length(unit, -1, 3));

const ring = (unit: Unit) =>
  keys({
    outside: length(unit, 40, LARGEST),
    band: length(unit, 2, HALF),
    sweep: z.exactOptional(angle(degrees(20), degrees(360))),
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

const edge = (unit: Unit) =>
  keys({
    shape: z.exactOptional(choice(['round', 'chamfer'])),
    radius: length(unit, 0.2, 50),
    faces: z.exactOptional(choice(['front', 'back', 'both'])),
  });

/** The keys of a plan that are a ring frame's options. */
export const ringFrameShape = (unit: Unit) => ({
  ring: ring(unit),
  rebate: z.exactOptional(keys({ width: length(unit, 1, HALF), depth: length(unit, 0.5, THICKEST) })),
  mullions: z.exactOptional(mullions(unit)),
  legs: z.exactOptional(keys({ height: length(unit, 1, LARGEST) })),
  edges: z.exactOptional(keys({ ring: z.exactOptional(edge(unit)) })),
  fit: z.exactOptional(
    keys({
      lap: clearance(unit),
      pane: z.exactOptional(length(unit, 0, 20)),
      seam: clearance(unit),
      mullion: clearance(unit),
    }),
  ),
});
