import * as z from 'zod/mini';
import type { Mm, Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { amount, choice, keys, length } from './fields.js';
import { hole } from './hole-schema.js';
import { clearance, stockName, thickness } from './prop-fields.js';

/** Largest sizes, mm: a wheel of 6 m. */
const LARGEST: Mm = 6000;

const carries = (unit: Unit) =>
  keys({
    wheel: choice(['helm', 'prize']),
    diameter: length(unit, 40, LARGEST),
    weight: amount(0.01, 1000),
    depth: z.exactOptional(length(unit, 2, 1000)),
  });

const uprights = (unit: Unit) =>
  keys({ head: z.exactOptional(length(unit, 4, LARGEST)), thickness: thickness(unit), stock: stockName() });

const foot = (unit: Unit) =>
  keys({
    length: z.exactOptional(length(unit, 20, LARGEST)),
    width: z.exactOptional(length(unit, 20, LARGEST)),
    height: z.exactOptional(length(unit, 4, 1000)),
    thickness: thickness(unit),
    stock: stockName(),
  });

const yesOrNo = () => z.boolean({ error: 'true or false' });

/** The keys of a plan that are a stand's options. */
export const standShape = (unit: Unit) => ({
  carries: carries(unit),
  kind: z.exactOptional(choice(['cheeks', 'post'])),
  axle: keys({ height: length(unit, 20, LARGEST), bore: hole(unit) }),
  uprights: uprights(unit),
  foot: foot(unit),
  base: z.exactOptional(keys({ thickness: thickness(unit), stock: stockName() })),
  clearance: z.exactOptional(length(unit, 1, 500)),
  push: z.exactOptional(amount(1, 2000)),
  ballast: z.exactOptional(amount(0, 2000)),
  anchored: z.exactOptional(yesOrNo()),
  accents: z.exactOptional(accents(unit)),
  fit: z.exactOptional(keys({ slot: clearance(unit), bore: clearance(unit) })),
});
