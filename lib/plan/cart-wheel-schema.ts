import * as z from 'zod/mini';
import type { Mm, Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { choice, keys, length, whole } from './fields.js';
import { hole } from './hole-schema.js';
import { clearance, edge, stockName, THICKEST, thickness } from './prop-fields.js';
import { seam } from './seam-schema.js';

/** Largest sizes, mm: a wheel of 6 m, and what could belong to it. */
const LARGEST: Mm = 6000;
const HALF: Mm = LARGEST / 2;

const width = (unit: Unit) => z.exactOptional(length(unit, 0.5, 500));

const rim = (unit: Unit) =>
  keys({
    outside: length(unit, 40, LARGEST),
    band: length(unit, 2, HALF),
    felloes: z.exactOptional(whole(3, 36)),
    layers: z.exactOptional(whole(1, 12)),
    thickness: thickness(unit),
    seam: z.exactOptional(seam(unit)),
    stock: stockName(),
  });

const tongue = (unit: Unit) =>
  keys({
    joint: z.exactOptional(choice(['captured', 'drilled'])),
    width: width(unit),
    length: width(unit),
    thickness: z.exactOptional(length(unit, 0.5, THICKEST)),
  });

const spokes = (unit: Unit) =>
  keys({
    count: whole(3, 36),
    width: length(unit, 1, 500),
    taper: z.exactOptional(length(unit, 0, 500)),
    thickness: thickness(unit),
    tenon: z.exactOptional(keys({ width: width(unit), length: width(unit) })),
    tongue: z.exactOptional(tongue(unit)),
    stock: stockName(),
  });

/** The hole in the middle: `none`, `{ axle }` or `{ bearing, seat }`. */
function bore(unit: Unit) {
  const error = 'none, { axle: 15mm } or { bearing: "6202", seat: shoulder }';
  return z.union([z.literal('none'), hole(unit, error)], { error });
}

const nave = (unit: Unit) =>
  keys({
    diameter: length(unit, 4, LARGEST),
    length: z.exactOptional(length(unit, 0.6, 2 * THICKEST)),
    bore: z.exactOptional(bore(unit)),
    stock: stockName(),
  });

/** `none`, or the strip's size. */
function tyre(unit: Unit) {
  const error = 'none or { thickness: 3mm, width: 40mm }';
  const strip = keys({ thickness: length(unit, 0.05, 50), width: z.exactOptional(length(unit, 0.5, THICKEST)) });
  return z.union([z.literal('none'), strip], { error });
}

const cap = (unit: Unit) =>
  keys({
    faces: z.exactOptional(choice(['front', 'back', 'both', 'none'])),
    diameter: z.exactOptional(length(unit, 4, LARGEST)),
    thickness: thickness(unit),
    front: z.exactOptional(choice(['open', 'closed'])),
    stock: stockName(),
  });

/** The keys of a plan that are a cart wheel's options. */
export const cartWheelShape = (unit: Unit) => ({
  rim: rim(unit),
  spokes: spokes(unit),
  nave: nave(unit),
  tyre: z.exactOptional(tyre(unit)),
  cap: z.exactOptional(cap(unit)),
  edges: z.exactOptional(keys({ rim: edge(unit), spokes: edge(unit), nave: edge(unit), cap: edge(unit) })),
  accents: z.exactOptional(accents(unit)),
  turns: z.exactOptional(choice(['shaft', 'bearing', 'fixed'])),
  fit: z.exactOptional(
    keys({ mortise: clearance(unit), tongue: clearance(unit), seam: clearance(unit), bore: clearance(unit) }),
  ),
});
