import * as z from 'zod/mini';
import { papers } from '../stock/papers.js';
import type { Unit } from '../units/length.js';
import { choice, keys, length, named, notes, text, whole } from './fields.js';
import { helmWheelShape } from './helm-wheel-schema.js';
import { cutter, stock } from './stock-schema.js';

/** Models of the plan format that this version cannot build yet. */
export const UNBUILT_MODELS: readonly string[] = [
  'cart-wheel',
  'ring-frame',
  'prize-wheel',
  'water-wheel',
  'cable-reel',
];

function paper() {
  const error = 'a list such as [letter, a4], each once';
  const once = (names: readonly string[]): boolean => new Set(names).size === names.length;
  return z.array(named(papers.map(p => p.name)), { error }).check(z.minLength(1, { error }), z.refine(once, { error }));
}

/** The plan format, version 1, for a plan whose bare numbers are in `unit`. Reads to mm and radians. */
export const planFormat = (unit: Unit) =>
  keys({
    rimwright: z.literal(1, { error: '1, the version of the plan format' }),
    title: text(120),
    units: choice(['mm', 'in']),
    model: choice(['helm-wheel'], UNBUILT_MODELS),
    ...helmWheelShape(unit),
    cutter: z.exactOptional(cutter(unit)),
    bed: z.exactOptional(keys({ width: length(unit, 50, 30_000), length: length(unit, 50, 30_000) })),
    stock: stock(unit),
    copies: z.exactOptional(whole(1, 1000)),
    paper: z.exactOptional(paper()),
  });

/** JSON Schema (draft 2020-12) of the plan format, version 1: what a plan may hold, before the checks of one field against another. */
export function planSchema(): Readonly<Record<string, unknown>> {
  return { title: 'Rimwright plan, version 1', ...z.toJSONSchema(planFormat('mm'), { io: 'input', metadata: notes }) };
}
