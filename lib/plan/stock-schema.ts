import * as z from 'zod/mini';
import { allowedNames, nearest } from '../findings/nearest.js';
import { findMaterial, materialNames } from '../stock/materials.js';
import type { Stock } from '../stock/stock.js';
import type { Unit } from '../units/length.js';
import { amount, choice, keys, length, text, whole } from './fields.js';

/** Kept free unless a stock says otherwise, mm; the plan format's default. */
const MARGIN = 5;
const MOST_STOCKS = 100;

/** Devices on one system or another: a file of that name cannot be kept. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const NAME = /^[a-z0-9][a-z0-9-]*$/i;
const NAMES =
  'a name of letters, digits and hyphens that starts with a letter or digit, at most 40, not a device such as con or lpt1';

/** A cutter: what kind, then how wide it cuts. */
export function cutter(unit: Unit) {
  const router = keys({
    kind: z.literal('router'),
    diameter: length(unit, 0.2, 60),
    reach: z.exactOptional(length(unit, 1, 200)),
    pass: z.exactOptional(length(unit, 0.1, 100)),
  });
  const laser = keys({ kind: z.literal('laser'), kerf: length(unit, 0.01, 2) });
  const saw = keys({ kind: z.literal('saw'), kerf: length(unit, 0.2, 10) });
  return z.discriminatedUnion('kind', [router, laser, saw], {
    error: 'router (with diameter, reach, pass), laser or saw (with kerf)',
  });
}

/** A wood or panel material, by which the stock is weighed. One the tables do not hold is kept as written (and weighed as something
 * assumed, as the report says); one that is nearly a known name is taken for a slip and refused. */
function species() {
  const known = z.transform((written: string, context): string => {
    const found = findMaterial(written);
    if (found) return found.name;
    if (nearest(written, materialNames) === undefined) return written;
    context.issues.push({
      code: 'custom',
      message: `${allowedNames(written, materialNames)}, or left out`,
      input: written,
    });
    return z.NEVER;
  });
  return z.pipe(text(60), known);
}

const entry = (unit: Unit) =>
  keys({
    kind: choice(['board', 'sheet']),
    width: length(unit, 5, 10_000),
    thickness: length(unit, 0.2, 300),
    length: length(unit, 20, 30_000),
    count: z.exactOptional(whole(1, 10_000)),
    species: z.exactOptional(species()),
    price: z.exactOptional(amount(0, 1_000_000)),
    true: z.exactOptional(length(unit, 0, 100)),
    margin: z.exactOptional(length(unit, 0, 500)),
    cutter: z.exactOptional(cutter(unit)),
  });

/** The stock a plan names, in the order written (names that are whole numbers first), with the format's defaults: nothing taken off to true it, 5 mm kept free. */
export function stock(unit: Unit) {
  const name = z.string().check(z.refine(n => n.length <= 40 && NAME.test(n) && !DEVICE.test(n), { error: NAMES }));
  const error = `at least one entry such as plank: { kind: board, width: 7-1/4, thickness: 3/4, length: 96 }, at most ${MOST_STOCKS}`;
  const entries = z.record(name, entry(unit), { error });
  const few = (all: object): boolean => Object.keys(all).length > 0 && Object.keys(all).length <= MOST_STOCKS;
  const list = z.transform((all: z.output<typeof entries>): readonly Stock[] =>
    Object.entries(all).map(([name, own]) => ({ name, true: 0, margin: MARGIN, ...own })),
  );
  return z.pipe(entries.check(z.refine(few, { error })), list);
}
