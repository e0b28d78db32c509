import * as z from 'zod/mini';
import { type Issue, refuse, Unusable } from '../findings/unusable.js';
import { defaultCutters } from '../stock/cutters.js';
import type { Unit } from '../units/length.js';
import { contradictions } from './contradictions.js';
import { readDocument } from './document.js';
import { planIssues } from './issues.js';
import type { Plan } from './plan.js';
import { planFormat, UNBUILT_MODELS } from './plan-schema.js';
import type { Written } from './written.js';

type Format = z.output<ReturnType<typeof planFormat>>;

const written = (document: Written, field: string): string => document.fields.get(field) ?? 'missing';

/** A plan of another version or model has other keys: nothing else is worth saying about it. */
function refuseOtherFormats(document: Written): void {
  const { rimwright, model } = document.value as { readonly rimwright?: unknown; readonly model?: unknown };
  if (rimwright !== undefined && rimwright !== 1)
    refuse('rimwright', written(document, 'rimwright'), '1, the version of the plan format');
  if (typeof model === 'string' && UNBUILT_MODELS.includes(model))
    refuse('model', model, `helm-wheel (${model} is not built yet)`);
}

/** The unit of bare numbers; mm while the plan does not say, which is an issue of its own. */
const unitOf = (document: Written): Unit =>
  (document.value as { readonly units?: unknown }).units === 'in' ? 'in' : 'mm';

function toPlan(read: Format): Plan {
  const { title, units, model, method, cutter, bed, stock, copies, paper, rimwright: _, ...wheel } = read;
  return {
    title,
    units,
    model,
    wheel: { ...wheel, method },
    method,
    cutter: cutter ?? defaultCutters[method],
    ...(bed && { bed }),
    stock,
    copies: copies ?? 1,
    paper: paper ?? [units === 'in' ? 'letter' : 'a4'],
  };
}

/** Reads a plan, version 1, from YAML 1.2 or JSON: lengths become mm, angles radians, and what the format has a default for is filled in
 * (cutter by method, stock true 0 and margin 5 mm, 1 copy, letter or a4 by unit). Pure: no file is read.
 * @throws Unusable with every issue at once, each naming the field (`rim.band`), the value as written and what is allowed
 */
export function readPlan(text: string): Plan {
  if (typeof text !== 'string') refuse('plan', typeof text, 'the text of a plan');
  const document = readDocument(text);
  refuseOtherFormats(document);
  const read = z.safeParse(planFormat(unitOf(document)), document.value, { jitless: true });
  if (!read.success) throw new Unusable([...document.issues, ...planIssues(document, read.error.issues)]);
  const plan = toPlan(read.data);
  const against = contradictions(plan).map((c): Issue => ({ ...c, value: document.fields.get(c.field) ?? c.value }));
  if (document.issues.length + against.length > 0) throw new Unusable([...document.issues, ...against]);
  return plan;
}
