import * as z from 'zod/mini';
import { allowedNames } from '../findings/nearest.js';
import { type Issue, refuse, Unusable } from '../findings/unusable.js';
import { fieldName, type Path, type Written } from './written.js';

// A plan may name variants of itself: `variants: { large: { rim: { outside: 40 } } }`. Each is the plan with its own values laid over it.

type Plain = Readonly<Record<string, unknown>>;

const MOST_VARIANTS = 20;
/** How the plan itself is called among its variants. */
export const BASE = 'base';
/** Stands for the plan and all its variants. */
export const ALL = 'all';

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/i;
const isName = (n: string): boolean => n.length <= 40 && NAME.test(n) && n !== BASE && n !== ALL;

/** Keys whose value is one of several forms: a variant's stands in the plan's place. Other maps are laid over key by key. */
const WHOLE = ['cutter', 'bore'];

/** The key of a plan that holds its variants: by name, what differs. */
export function variants() {
  const names = `a name of letters, digits and hyphens, at most 40, not ${BASE} or ${ALL}`;
  const error = `by name the keys that differ, such as large: { rim: { outside: 40 } }, at most ${MOST_VARIANTS}`;
  const name = z.string().check(z.refine(isName, { error: names }));
  const few = (all: object): boolean => Object.keys(all).length <= MOST_VARIANTS;
  const alike = (all: object): boolean =>
    new Set(Object.keys(all).map(n => n.toLowerCase())).size === Object.keys(all).length;
  return z
    .record(name, z.record(z.string(), z.unknown(), { error }), { error })
    .check(z.refine(few, { error }), z.refine(alike, { error: 'names that differ by more than case' }));
}

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value laid over another: maps key by key, where nothing (`null`, `~`) takes a key away; anything else replaces. */
function laidOver(base: unknown, over: unknown, key = ''): unknown {
  if (!isPlain(base) || !isPlain(over) || WHOLE.includes(key)) return over;
  const merged: Record<string, unknown> = { ...base };
  for (const [own, value] of Object.entries(over)) {
    if (value === null) delete merged[own];
    else merged[own] = laidOver(merged[own], value, own);
  }
  return merged;
}

const own = (document: Written): Plain => {
  const { variants: all } = document.value as { readonly variants?: unknown };
  return isPlain(all) ? all : {};
};

/** Names of a document's variants, in the order written. */
export const namesIn = (document: Written): string[] => Object.keys(own(document));

/** What a variant writes for itself, by the field of the plan it stands for. */
function fieldsOf(document: Written, name: string): Map<string, string> {
  const from = `${fieldName(['variants', name] as Path)}.`;
  const mine = [...document.fields].filter(([field]) => field.startsWith(from));
  return new Map(mine.map(([field, text]) => [field.slice(from.length), text]));
}

/** A document as one of its variants has it. @param base the plan's values to lay it over; the document's own unless given
 * @throws Unusable naming the variants there are */
export function variantOf(document: Written, name: string, base = document.value): Written {
  const all = own(document);
  const over = all[name];
  if (!Object.hasOwn(all, name) || !isPlain(over))
    return refuse(
      'variant',
      name,
      Object.keys(all).length > 0 ? allowedNames(name, [BASE, ...Object.keys(all)]) : 'none: the plan has no variants',
    );
  for (const key of ['rimwright', 'model', 'variants'])
    if (key in over) refuse(`variants.${name}.${key}`, 'given', 'left out: a variant is a plan of the same model');
  const fields = new Map([...document.fields, ...fieldsOf(document, name)]);
  return { value: laidOver(base, over), fields, issues: document.issues };
}

/** Runs a reading of a variant; what is wrong with a value it wrote itself is said of the variant's own field. @throws Unusable */
export function saidOfVariant<T>(document: Written, name: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Unusable)) throw error;
    const mine = fieldsOf(document, name);
    const said = ({ field, ...rest }: Issue): Issue =>
      mine.has(field)
        ? { field: `variants.${name}.${field}`, ...rest }
        : { field: `${field} (variant ${name})`, ...rest };
    throw new Unusable(error.issues.map(said));
  }
}
