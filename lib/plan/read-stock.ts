import * as z from 'zod/mini';
import { refuse, Unusable } from '../findings/unusable.js';
import type { Stock } from '../stock/stock.js';
import type { Unit } from '../units/length.js';
import { readDocument } from './document.js';
import { planIssues } from './issues.js';
import { stock } from './stock-schema.js';

/** What of a file is about stock: the rest of a plan may stand beside it. */
const format = (unit: Unit) => z.object({ stock: stock(unit) });

/** The stock a plan names, or a file with nothing but `units` and `stock`, in the form of a plan's; mm.
 * @throws Unusable with every issue at once, each naming the field, the value as written and what is allowed */
export function readStock(text: string): readonly Stock[] {
  const document = readDocument(text);
  const { units = 'mm' } = document.value as { readonly units?: unknown };
  if (units !== 'mm' && units !== 'in') return refuse('units', document.fields.get('units'), 'mm, in');
  const read = z.safeParse(format(units), document.value, { jitless: true });
  if (!read.success) throw new Unusable([...document.issues, ...planIssues(document, read.error.issues)]);
  if (document.issues.length > 0) throw new Unusable(document.issues);
  return read.data.stock;
}
