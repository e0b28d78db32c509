import { writeFileSync } from 'node:fs';
import { reportSchema } from '../papers/report-schema.js';
import { planSchema } from '../plan/plan-schema.js';

/** Writes the JSON Schemas of the plan and the report into the built package. The build runs this file.
 * @param into the folder the built lib/ lies in */
export function publishSchemas(into: URL): void {
  for (const [name, schema] of [
    ['plan', planSchema()],
    ['report', reportSchema],
  ] as const)
    writeFileSync(new URL(`${name}.schema.json`, into), `${JSON.stringify(schema, null, 2)}\n`);
}

if (process.argv[1] !== undefined && import.meta.url.endsWith('/dist/lib/node/publish-schemas.js'))
  publishSchemas(new URL('../../', import.meta.url));
