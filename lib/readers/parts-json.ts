import * as z from 'zod/mini';
import { type Issue, Unusable } from '../findings/unusable.js';
import type { Outline, Region } from '../geometry/outline.js';
import { repair } from '../geometry/repair.js';

const corner = z.union([
  z.tuple([z.number(), z.number()]),
  z.tuple([z.number(), z.number(), z.number().check(z.minimum(-1), z.maximum(1))]),
]);
const outline = z.array(corner).check(z.minLength(2));
const part = z.strictObject({
  id: z.string().check(z.regex(/^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$/)),
  quantity: z.exactOptional(z.number().check(z.int(), z.minimum(1), z.maximum(100_000))),
  outline,
  openings: z.exactOptional(z.array(outline)),
});
const file = z.strictObject({ parts: z.array(part).check(z.minLength(1)) });

/** A part read from a file. */
export interface ReadPart {
  readonly id: string;
  readonly quantity: number;
  readonly region: Region;
}

const outlineOf = (corners: z.output<typeof outline>): Outline => corners.map(([x, y, bulge = 0]) => ({ x, y, bulge }));

const issueOf = (i: { readonly path: readonly PropertyKey[]; readonly message: string }): Issue => ({
  field: i.path.length > 0 ? i.path.map(String).join('.') : 'the file',
  value: 'not as it should be',
  allowed: `{ "parts": [{ "id", "quantity", "outline": [[x, y, bulge], ...], "openings": [...] }] } in mm (${i.message})`,
});

/** Parts from JSON: `{ "parts": [{ "id", "quantity", "outline": [[x, y], [x, y, bulge], ...], "openings": [...] }] }`, mm, y up.
 * @throws Unusable naming each field; GeometryFailure for outlines that cross */
export function readPartsJson(text: string): ReadPart[] {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new Unusable([{ field: 'the file', value: 'not JSON', allowed: '{ "parts": [...] }' }]);
  }
  const found = file.safeParse(data);
  if (!found.success) throw new Unusable(found.error.issues.map(issueOf));
  return found.data.parts.map(p => {
    const region = repair({ outer: outlineOf(p.outline), openings: (p.openings ?? []).map(outlineOf) });
    return { id: p.id, quantity: p.quantity ?? 1, region };
  });
}
