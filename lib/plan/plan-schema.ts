import * as z from 'zod/mini';
import type { ModelName } from '../models/index.js';
import { papers } from '../stock/papers.js';
import type { Unit } from '../units/length.js';
import { clearing } from './clearing-schema.js';
import { choice, keys, length, named, notes, text, whole } from './fields.js';
import { finishes } from './finish-schema.js';
import { finishing } from './finishing-schema.js';
import { least } from './least-schema.js';
import { MODELS, modelShapes } from './model-shapes.js';
import { cutter, stock } from './stock-schema.js';
import { template } from './template-schema.js';
import { variants } from './variants.js';

function paper() {
  const error = 'a list such as [letter, a4], each once';
  const once = (names: readonly string[]): boolean => new Set(names).size === names.length;
  return z.array(named(papers.map(p => p.name)), { error }).check(z.minLength(1, { error }), z.refine(once, { error }));
}

/** The keys every plan has, whatever its model. */
const common = (unit: Unit) => ({
  rimwright: z.literal(1, { error: '1, the version of the plan format' }),
  title: text(120),
  units: choice(['mm', 'in']),
  method: choice(['hand', 'router', 'laser']),
  cutter: z.exactOptional(cutter(unit)),
  bed: z.exactOptional(keys({ width: length(unit, 50, 30_000), length: length(unit, 50, 30_000) })),
  relief: z.exactOptional(choice(['bisector', 'side', 'none'])),
  clearing: z.exactOptional(clearing()),
  least: z.exactOptional(least(unit)),
  labels: z.exactOptional(choice(['lines', 'text'])),
  template: z.exactOptional(template(unit)),
  stock: stock(unit),
  copies: z.exactOptional(whole(1, 1000)),
  paper: z.exactOptional(paper()),
  finish: z.exactOptional(finishes()),
  ...finishing(unit),
  variants: z.exactOptional(variants()),
});

/** What is read of the keys every plan has. */
export type CommonKeys = z.output<ReturnType<typeof commonFormat>>;
const commonFormat = (unit: Unit) => keys(common(unit));

/** The plan format, version 1, for a plan of a model whose bare numbers are in `unit`. Reads to mm and radians. */
export const planFormat = (unit: Unit, model: ModelName) =>
  keys({ ...common(unit), model: choice([model]), ...modelShapes[model](unit) });

/** What is asked of a plan whose model is not known: nothing but the name of one. */
export const modelName = () => choice(MODELS);

/** JSON Schema (draft 2020-12) of the plan format, version 1: what a plan may hold, model by model, before the checks of one field
 * against another. */
export function planSchema(): Readonly<Record<string, unknown>> {
  const anyOf = MODELS.map(model => {
    const { $schema: _, ...keys } = z.toJSONSchema(planFormat('mm', model), { io: 'input', metadata: notes });
    return { title: model, ...keys };
  });
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title: 'Rimwright plan, version 1', anyOf };
}
