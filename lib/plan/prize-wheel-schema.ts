import * as z from 'zod/mini';
import { fullTurn, LEAST_ANGLE, LEAST_SECTORS, MOST_SECTORS } from '../models/prize-wheel/usable.js';
import type { SectorOptions } from '../models/prize-wheel-options.js';
import { materialNames } from '../stock/materials.js';
import { degrees, type Mm, type Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { angle, choice, keys, length, named, whole } from './fields.js';
import { hole } from './hole-schema.js';
import { clearance, edge, stockName, thickness } from './prop-fields.js';
import { plainSeam } from './seam-schema.js';

/** Largest sizes, mm: a wheel of 4 m. */
const LARGEST: Mm = 4000;

const face = (unit: Unit) =>
  keys({
    diameter: length(unit, 40, LARGEST),
    segments: z.exactOptional(whole(1, 24)),
    layers: z.exactOptional(whole(1, 12)),
    thickness: thickness(unit),
    seam: z.exactOptional(plainSeam(unit)),
    hole: z.exactOptional(length(unit, 1, LARGEST)),
    stock: stockName(),
  });

/** `{ count }`, or `{ angles }` that make a full turn. */
function sectors() {
  const list = `a list of ${LEAST_SECTORS} to ${MOST_SECTORS} angles such as [40deg, 80deg, 240deg], 360deg in all`;
  const error = '{ count: 12 } or { angles: [40deg, 80deg, 240deg] }';
  const angles = z
    .array(angle(LEAST_ANGLE, degrees(360)), { error: list })
    .check(
      z.minLength(LEAST_SECTORS, { error: list }),
      z.maxLength(MOST_SECTORS, { error: list }),
      z.refine(fullTurn, { error: list }),
    );
  const either = keys({ count: z.exactOptional(whole(LEAST_SECTORS, MOST_SECTORS)), angles: z.exactOptional(angles) });
  const toSectors = z.transform((written: z.output<typeof either>, context): SectorOptions => {
    const { count, angles: own } = written;
    if (count !== undefined && own === undefined) return { count };
    if (own !== undefined && count === undefined) return { angles: own };
    context.issues.push({ code: 'custom', message: error, input: written });
    return z.NEVER;
  });
  return z.pipe(either, toSectors);
}

const pegs = (unit: Unit) =>
  keys({
    circle: z.exactOptional(length(unit, 10, LARGEST)),
    diameter: z.exactOptional(length(unit, 1, 60)),
    length: z.exactOptional(length(unit, 2, 500)),
    species: z.exactOptional(named(materialNames)),
  });

const flapper = (unit: Unit) =>
  keys({
    length: z.exactOptional(length(unit, 5, 1000)),
    reach: z.exactOptional(length(unit, 0.2, 100)),
    bolt: z.exactOptional(length(unit, 1, 30)),
    thickness: thickness(unit),
    stock: stockName(),
  });

const hub = (unit: Unit) =>
  keys({
    diameter: length(unit, 8, LARGEST),
    faces: z.exactOptional(choice(['back', 'both'])),
    bore: hole(unit),
    thickness: thickness(unit),
    stock: stockName(),
  });

const plate = (unit: Unit) =>
  keys({
    width: z.exactOptional(length(unit, 10, LARGEST)),
    height: z.exactOptional(length(unit, 10, 2 * LARGEST)),
    thickness: thickness(unit),
    stock: stockName(),
  });

/** The keys of a plan that are a prize wheel's options. */
export const prizeWheelShape = (unit: Unit) => ({
  face: face(unit),
  sectors: sectors(),
  pegs: z.exactOptional(pegs(unit)),
  flapper: flapper(unit),
  hub: hub(unit),
  plate: plate(unit),
  edges: z.exactOptional(keys({ face: edge(unit) })),
  accents: z.exactOptional(accents(unit)),
  turns: z.exactOptional(choice(['shaft', 'bearing', 'fixed'])),
  fit: z.exactOptional(keys({ peg: clearance(unit), bore: clearance(unit), seam: clearance(unit) })),
});
