import * as z from 'zod/mini';
import { type Issue, refuse, Unusable } from '../findings/unusable.js';
import type { ModelName, Prop } from '../models/index.js';
import { defaultCutters } from '../stock/cutters.js';
import type { Unit } from '../units/length.js';
import { contradictions } from './contradictions.js';
import { readDocument } from './document.js';
import { planIssues } from './issues.js';
import type { Plan } from './plan.js';
import { type CommonKeys, modelName, planFormat } from './plan-schema.js';
import { statedLengths } from './stated-lengths.js';
import { BASE, namesIn, saidOfVariant, variantOf } from './variants.js';
import type { Written } from './written.js';

const written = (document: Written, field: string): string => document.fields.get(field) ?? 'missing';

/** The model a plan names. A plan of another version or model has other keys: nothing else is worth saying about it. */
function modelOf(document: Written): ModelName {
  const { rimwright, model } = document.value as { readonly rimwright?: unknown; readonly model?: unknown };
  if (rimwright !== undefined && rimwright !== 1)
    refuse('rimwright', written(document, 'rimwright'), '1, the version of the plan format');
  const named = z.safeParse(modelName(), model, { jitless: true });
  if (!named.success)
    throw new Unusable([
      { field: 'model', value: written(document, 'model'), allowed: named.error.issues[0]!.message },
    ]);
  return named.data;
}

/** The unit of bare numbers; mm while the plan does not say, which is an issue of its own. */
const unitOf = (document: Written): Unit =>
  (document.value as { readonly units?: unknown }).units === 'in' ? 'in' : 'mm';

/** Keys of the shop that a plan may leave out, and that have no default here. */
const LEFT_OUT = ['bed', 'relief', 'clearing', 'least', 'feed', 'leads', 'tabs', 'labels', 'template'] as const;

type LeftOut = (typeof LEFT_OUT)[number];
const isLeftOut = (key: string): boolean => (LEFT_OUT as readonly string[]).includes(key);

/** What was read, parted in two by key. */
function parted(read: CommonKeys): {
  readonly shop: Pick<CommonKeys, LeftOut>;
  readonly rest: Omit<CommonKeys, LeftOut>;
} {
  const all = Object.entries(read);
  return {
    shop: Object.fromEntries(all.filter(([key]) => isLeftOut(key))),
    rest: Object.fromEntries(all.filter(([key]) => !isLeftOut(key))) as Omit<CommonKeys, LeftOut>,
  };
}

/** What was read: the prop's options (model-shapes.ts proves that the keys left are those), and the shop's side. */
function toPlan(name: ModelName, read: CommonKeys): Plan {
  const { shop, rest: said } = parted(read);
  const { rimwright: _, variants: __, title, units, method, cutter, stock, copies, finish, paper, ...rest } = said;
  const { model = name, ...options } = rest as { model?: ModelName };
  return {
    title,
    units,
    ...({ model, options: { ...options, method } } as Prop),
    method,
    cutter: cutter ?? defaultCutters[method],
    ...shop,
    stock,
    copies: copies ?? 1,
    finish: finish ?? {},
    paper: paper ?? [units === 'in' ? 'letter' : 'a4'],
  };
}

function readWritten(document: Written): Plan {
  const model = modelOf(document);
  const read = z.safeParse(planFormat(unitOf(document), model), document.value, { jitless: true });
  if (!read.success) throw new Unusable([...document.issues, ...planIssues(document, read.error.issues)]);
  const plan = toPlan(model, read.data);
  const against = contradictions(plan).map((c): Issue => ({ ...c, value: document.fields.get(c.field) ?? c.value }));
  if (document.issues.length + against.length > 0) throw new Unusable([...document.issues, ...against]);
  return plan;
}

/** A variant's own bare numbers are in its own units; those of the plan stay in the plan's. */
function readVariant(document: Written, name: string): Plan {
  const { variants: _, ...base } = document.value as { readonly variants?: unknown };
  const format = planFormat(unitOf(document), modelOf(document));
  const own = variantOf(document, name, statedLengths(format, base, unitOf(document)));
  return saidOfVariant(document, name, () => readWritten(own));
}

/** Reads a plan, version 1, from YAML 1.2 or JSON: lengths become mm, angles radians, and what the format has a default for is filled in
 * (cutter by method, stock true 0 and margin 5 mm, 1 copy, letter or a4 by unit). Pure: no file is read.
 * @param variant name of one of the plan's variants; the plan itself (`base`) unless given
 * @throws Unusable with every issue at once, each naming the field (`rim.band`), the value as written and what is allowed
 */
export function readPlan(text: string, variant: string = BASE): Plan {
  if (typeof text !== 'string') refuse('plan', typeof text, 'the text of a plan');
  const document = readDocument(text);
  const base = readWritten(document);
  if (variant !== BASE) return readVariant(document, variant);
  // a slip in a variant is told at once, not when it is made
  for (const name of namesIn(document)) readVariant(document, name);
  return base;
}

/** A plan and all its variants, by name, in the order written; the plan itself is `base` and comes first. @throws Unusable, as readPlan */
export function readVariants(text: string): ReadonlyMap<string, Plan> {
  if (typeof text !== 'string') refuse('plan', typeof text, 'the text of a plan');
  const document = readDocument(text);
  const base: [string, Plan] = [BASE, readWritten(document)];
  return new Map([base, ...namesIn(document).map((name): [string, Plan] => [name, readVariant(document, name)])]);
}
