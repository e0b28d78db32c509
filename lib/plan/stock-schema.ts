import * as z from 'zod/mini';
import { allowedNames, nearest } from '../findings/nearest.js';
import { bounds } from '../geometry/measure.js';
import { moveRegion } from '../geometry/motion.js';
import type { Outline, Region } from '../geometry/outline.js';
import { findMaterial, materialNames } from '../stock/materials.js';
import type { Stock } from '../stock/stock.js';
import type { Unit } from '../units/length.js';
import { amount, choice, keys, length, notes, text, whole } from './fields.js';
import { defects, outline } from './outline-schema.js';

/** Kept free unless a stock says otherwise, mm; the plan format's default. */
const MARGIN = 5;
const MOST_STOCKS = 100;

/** Devices on one system or another: a file of that name cannot be kept. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const NAME = /^[a-z0-9][a-z0-9-]*$/i;
const NAMES =
  'a name of letters, digits and hyphens that starts with a letter or digit, at most 40, not a device such as con or lpt1';

export const router = (unit: Unit) =>
  keys({
    kind: z.literal('router'),
    diameter: length(unit, 0.2, 60),
    reach: z.exactOptional(length(unit, 1, 200)),
    pass: z.exactOptional(length(unit, 0.1, 100)),
  });

export const laser = (unit: Unit) => keys({ kind: z.literal('laser'), kerf: length(unit, 0.01, 2) });

/** A cutter: what kind, then how wide it cuts. */
export function cutter(unit: Unit) {
  const saw = keys({ kind: z.literal('saw'), kerf: length(unit, 0.2, 10) });
  return z.discriminatedUnion('kind', [router(unit), laser(unit), saw], {
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

/** What every entry may say of the pieces it is about. */
const pieces = (unit: Unit) => ({
  outline: z.exactOptional(outline(unit)),
  defects: z.exactOptional(defects(unit)),
  grain: z.exactOptional(choice(['along', 'across', 'none'])),
  count: z.exactOptional(whole(1, 10_000)),
  price: z.exactOptional(amount(0, 1_000_000)),
  true: z.exactOptional(length(unit, 0, 100)),
  margin: z.exactOptional(length(unit, 0, 500)),
});

/** A stock of its own. */
function own(unit: Unit) {
  const schema = keys({
    kind: choice(['board', 'sheet']),
    width: z.exactOptional(length(unit, 5, 10_000)),
    thickness: length(unit, 0.2, 300),
    length: z.exactOptional(length(unit, 20, 30_000)),
    species: z.exactOptional(species()),
    ...pieces(unit),
    gap: z.exactOptional(length(unit, 0, 500)),
    layout: z.exactOptional(choice(['free', 'straight'])),
    cutter: z.exactOptional(cutter(unit)),
  });
  // for the JSON Schema: what `misfits` says
  notes.add(schema, { anyOf: [{ required: ['width', 'length'] }, { required: ['outline'] }] } as never);
  return schema;
}

/** More of another stock: what it does not say is as that one says. */
const more = (unit: Unit) =>
  keys({
    like: text(40),
    width: z.exactOptional(length(unit, 5, 10_000)),
    length: z.exactOptional(length(unit, 20, 30_000)),
    ...pieces(unit),
  });

type Own = z.output<ReturnType<typeof own>>;
type More = z.output<ReturnType<typeof more>>;
type Entry = Own | More;

const isMore = (entry: Entry): entry is More => 'like' in entry;

/** What a piece of its own outline is: as large as that is, and nothing is trued off it; knots moved along with it. */
function ofOutline(
  outer: Outline,
  knots: readonly Region[],
): Pick<Stock, 'length' | 'width' | 'true' | 'outline' | 'defects'> {
  const { minX, minY, maxX, maxY } = bounds(outer);
  const toCorner = { turn: 0, x: -minX, y: -minY };
  return {
    length: maxX - minX,
    width: maxY - minY,
    true: 0,
    outline: moveRegion({ outer, openings: [] }, toCorner),
    ...(knots.length > 0 && { defects: knots.map(k => moveRegion(k, toCorner)) }),
  };
}

/** An entry with the format's defaults: nothing taken off to true it, 5 mm kept free; one piece of what has knots or an outline. */
function stockOf(name: string, entry: Entry, base: Own | undefined): Stock {
  const { outline: outer, defects: knots = [], ...rest } = entry;
  const { outline: _, defects: __, count: ___, price: ____, ...common } = base ?? ({} as Partial<Own>);
  const unique = outer !== undefined || knots.length > 0;
  const said = { true: 0, margin: MARGIN, ...common, ...(unique && { count: 1 }), ...rest } as Omit<Stock, 'name'>;
  if (outer) return { name, ...said, ...ofOutline(outer, knots) };
  return { name, ...said, ...(knots.length > 0 && { defects: knots }) };
}

/** What is wrong with an entry beside the others: each issue with the key it is about. */
function misfits(name: string, entry: Entry, all: Readonly<Record<string, Entry>>): [key: string, allowed: string][] {
  if (isMore(entry)) {
    const names = Object.keys(all).filter(n => !isMore(all[n]!));
    if (!names.includes(entry.like)) return [['like', allowedNames(entry.like, names) || 'another entry of stock']];
    if (all[name] === all[entry.like]) return [['like', 'another entry of stock']];
  }
  const sizes = (['width', 'length'] as const).filter(k => (entry[k] === undefined) !== (entry.outline !== undefined));
  const missing = isMore(entry) && entry.outline === undefined ? [] : sizes;
  return missing.map(k => [
    k,
    entry.outline ? 'left out beside an outline, which says it' : 'a length, or an outline instead of width and length',
  ]);
}

/** The stock a plan names, in the order written (names that are whole numbers first), entries that are like another filled in from it. */
export function stock(unit: Unit) {
  const name = z.string().check(z.refine(n => n.length <= 40 && NAME.test(n) && !DEVICE.test(n), { error: NAMES }));
  const error = `at least one entry such as plank: { kind: board, width: 7-1/4, thickness: 3/4, length: 96 }, at most ${MOST_STOCKS}`;
  const entry = z.union([own(unit), more(unit)], {
    error: 'an entry with kind, thickness, width and length, or with like',
  });
  const entries = z.record(name, entry, { error });
  const few = (all: object): boolean => Object.keys(all).length > 0 && Object.keys(all).length <= MOST_STOCKS;
  const list = z.transform((all: z.output<typeof entries>, context): readonly Stock[] => {
    const wrong = Object.entries(all).flatMap(([n, e]) =>
      misfits(n, e, all).map(([key, message]) => ({ code: 'custom' as const, path: [n, key], message, input: all })),
    );
    context.issues.push(...wrong);
    if (wrong.length > 0) return z.NEVER;
    return Object.entries(all).map(([n, e]) => stockOf(n, e, isMore(e) ? (all[e.like] as Own) : undefined));
  });
  return z.pipe(entries.check(z.refine(few, { error })), list);
}
