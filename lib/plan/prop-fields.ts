import * as z from 'zod/mini';
import type { Mm, Unit } from '../units/length.js';
import { choice, keys, length, text } from './fields.js';

// Fields that mean the same in every model.

/** Thickest of any part, mm. */
export const THICKEST: Mm = 300;
const LONGEST_NAME = 40;

/** Name of a stock; whether it is there is asked once all of them are read. */
export const stockName = () => text(LONGEST_NAME);

/** A part's thickness, where it is not its stock's. */
export const thickness = (unit: Unit) => z.exactOptional(length(unit, 0.2, THICKEST));

/** Clearance, mm: a press of 1 mm to a gap of 3 mm. */
export const clearance = (unit: Unit) => z.exactOptional(length(unit, -1, 3));

/** Faces of the prop. */
export const faces = () => choice(['front', 'back', 'both']);

/** A routed edge. */
export const edge = (unit: Unit) =>
  z.exactOptional(
    keys({
      shape: z.exactOptional(choice(['round', 'chamfer'])),
      radius: length(unit, 0.2, 50),
      faces: z.exactOptional(faces()),
    }),
  );
