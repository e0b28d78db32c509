import * as z from 'zod/mini';
import { GeometryFailure } from '../geometry/failure.js';
import { circle, type Outline, type Region, solid, vertex } from '../geometry/outline.js';
import { repair } from '../geometry/repair.js';
import type { Unit } from '../units/length.js';
import { amount, keys, length } from './fields.js';

const FAR = 30_000;
const MOST = 1000;

const CORNERS = `3 or more corners [x, y], at most ${MOST}, such as [[0, 0], [600, 0], [400, 300]]; a third number in a corner is the bulge of the edge after it, -1 to 1`;

/** A closed outline by its corners, either way round; becomes anticlockwise, mm. */
export function outline(unit: Unit) {
  const at = length(unit, -FAR, FAR);
  const corner = z.union([z.tuple([at, at]), z.tuple([at, at, amount(-1, 1)])], {
    error: 'a corner [x, y], or [x, y, bulge]',
  });
  const list = z
    .array(corner, { error: CORNERS })
    .check(z.minLength(2, { error: CORNERS }), z.maxLength(MOST, { error: CORNERS }));
  const plain = z.transform((corners: z.output<typeof list>, context): Outline => {
    try {
      return repair(solid(corners.map(([x, y, bulge = 0]) => vertex({ x, y }, bulge)))).outer;
    } catch (error) {
      if (!(error instanceof GeometryFailure)) throw error;
      context.issues.push({ code: 'custom', message: `${CORNERS}; here ${error.message}`, input: corners });
      return z.NEVER;
    }
  });
  return z.pipe(list, plain);
}

/** What of a piece of stock no part may lie on: knots by middle and diameter, splits and the like by outline; regions, mm. */
export function defects(unit: Unit) {
  const error = 'a list of { x, y, diameter } and of outlines [[x, y], ...], at most 1000';
  const at = length(unit, -FAR, FAR);
  const knot = keys({ x: at, y: at, diameter: length(unit, 0.1, FAR) });
  const one = z.union([knot, outline(unit)], { error: '{ x, y, diameter }, or an outline [[x, y], ...]' });
  const list = z.array(one, { error }).check(z.minLength(1, { error }), z.maxLength(MOST, { error }));
  const regions = z.transform((all: z.output<typeof list>): readonly Region[] =>
    all.map(d => solid('diameter' in d ? circle(d.diameter / 2, { x: d.x, y: d.y }) : d)),
  );
  return z.pipe(list, regions);
}
