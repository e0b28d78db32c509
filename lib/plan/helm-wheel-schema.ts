import * as z from 'zod/mini';
import type { Mm, Unit } from '../units/length.js';
import { accents } from './accents-schema.js';
import { choice, keys, length, whole } from './fields.js';
import { hole } from './hole-schema.js';
import { clearance, edge, faces, stockName, thickness } from './prop-fields.js';
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

/** Points of a handle's own outline, each further from the rim than the one before. */
function profile(unit: Unit) {
  const error = 'a list of 2 to 200 pairs [distance past the rim, half width], distances growing';
  const pair = z.tuple([length(unit, 0, HALF), length(unit, 0, HALF)], { error });
  const grows = (points: readonly (readonly [Mm, Mm])[]): boolean =>
    points.every(([distance], i) => i === 0 || distance > (points[i - 1]?.[0] ?? Infinity));
  return z
    .array(pair, { error })
    .check(z.minLength(2, { error }), z.maxLength(200, { error }), z.refine(grows, { error }));
}

/** 1 or 2 sides of a handle. */
const sides = () => z.literal([1, 2], { error: '1 or 2' });

const spokes = (unit: Unit) =>
  keys({
    count: whole(3, 36),
    width: length(unit, 1, 500),
    overall: z.exactOptional(length(unit, 40, 2 * LARGEST)),
    thickness: thickness(unit),
    lap: z.exactOptional(choice(['half', 'layered', 'bridle'])),
    handle: z.exactOptional(
      keys({
        shape: z.exactOptional(choice(['plain', 'tapered', 'turned'])),
        profile: z.exactOptional(profile(unit)),
        faces: z.exactOptional(sides()),
      }),
    ),
    stock: stockName(),
  });

/** The hole in the middle: `none`, `{ axle }` or `{ bearing, seat }`. */
function bore(unit: Unit) {
  const error = 'none, { axle: 15mm } or { bearing: "6202", seat: shoulder }';
  return z.union([z.literal('none'), hole(unit, error)], { error });
}

/** What may differ from face to face. */
const disc = (unit: Unit) => ({
  diameter: length(unit, 4, LARGEST),
  bore: z.exactOptional(bore(unit)),
  thickness: thickness(unit),
  stock: stockName(),
});

function hub(unit: Unit) {
  const own = () => {
    const { diameter, stock, ...rest } = disc(unit);
    return z.exactOptional(keys({ diameter: z.exactOptional(diameter), ...rest, stock: z.exactOptional(stock) }));
  };
  return keys({ ...disc(unit), faces: z.exactOptional(faces()), front: own(), back: own() });
}

const trim = (unit: Unit) =>
  keys({
    faces: z.exactOptional(faces()),
    band: length(unit, 1, HALF),
    segments: whole(3, 24),
    thickness: thickness(unit),
    plugs: z.exactOptional(keys({ diameter: length(unit, 3, 50), each: whole(1, 12) })),
    stock: stockName(),
  });

/** The keys of a plan that are a helm wheel's options. */
export const helmWheelShape = (unit: Unit) => ({
  rim: rim(unit),
  spokes: spokes(unit),
  hub: hub(unit),
  trim: z.exactOptional(trim(unit)),
  edges: z.exactOptional(keys({ rim: edge(unit), trim: edge(unit), hub: edge(unit) })),
  accents: z.exactOptional(accents(unit)),
  turns: z.exactOptional(choice(['shaft', 'bearing', 'fixed'])),
  fit: z.exactOptional(
    keys({
      lap: clearance(unit),
      wedge: clearance(unit),
      bore: clearance(unit),
      plug: clearance(unit),
      seam: clearance(unit),
    }),
  ),
});
