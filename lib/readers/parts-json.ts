import * as z from 'zod/mini';
import { type Issue, Unusable } from '../findings/unusable.js';
import type { Outline, Region } from '../geometry/outline.js';
import { repair } from '../geometry/repair.js';
import { degrees, type Radians } from '../units/length.js';

const outline = z
  .array(
    z.union([
      z.tuple([z.number(), z.number()]),
      z.tuple([z.number(), z.number(), z.number().check(z.minimum(-1), z.maximum(1))]),
    ]),
  )
  .check(z.minLength(2));
const angle = z.number().check(z.minimum(-360), z.maximum(360));
const name = z.string().check(z.regex(/^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$/));

const KEYS = {
  id: name,
  quantity: z.exactOptional(z.number().check(z.int(), z.minimum(1), z.maximum(100_000))),
  outline,
  openings: z.exactOptional(z.array(outline)),
  turns: z.exactOptional(z.union([z.enum(['free', 'half', 'none']), z.number().check(z.minimum(1), z.maximum(360))])),
  grain: z.exactOptional(
    z.strictObject({
      direction: z.exactOptional(angle),
      rule: z.exactOptional(z.enum(['along', 'across', 'any'])),
      within: z.exactOptional(z.number().check(z.minimum(0), z.maximum(90))),
    }),
  ),
  mirrored: z.exactOptional(z.boolean()),
  stock: z.exactOptional(z.array(z.string()).check(z.minLength(1))),
};
const file = z.strictObject({ parts: z.array(z.strictObject(KEYS)).check(z.minLength(1)) });

/** What is allowed under each key. */
const ALLOWED: Readonly<Record<string, string>> = {
  parts: 'a list of at least one part',
  id: 'a name of letters, digits and hyphens',
  quantity: 'a whole number, 1 to 100000',
  outline: '2 or more corners [x, y] or [x, y, bulge], bulge -1 to 1, in mm',
  openings: 'a list of outlines [[x, y], ...]',
  turns: 'free, half, none or a step in degrees, 1 to 360',
  grain: '{ direction: degrees, rule: along, across or any, within: degrees }',
  mirrored: 'true or false',
  stock: 'a list of names of stock',
};

/** A part read from a file. */
export interface ReadPart {
  readonly id: string;
  readonly quantity: number;
  readonly region: Region;
  /** what of the way it may lie the file says */
  readonly turns?: 'free' | 'half' | 'none' | { readonly step: Radians };
  readonly grain?: {
    readonly direction: Radians;
    readonly rule: 'along' | 'across' | 'any';
    readonly within?: Radians;
  };
  readonly mirrored?: boolean;
  readonly stock?: readonly string[];
}

const outlineOf = (corners: z.output<typeof outline>): Outline => corners.map(([x, y, bulge = 0]) => ({ x, y, bulge }));

/** What stands at a path of the file, short enough for a message. */
function shown(data: unknown, path: readonly PropertyKey[]): string {
  const value = path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | undefined)?.[key], data);
  const text = JSON.stringify(value) ?? 'missing';
  return text.length <= 60 ? text : `${text.slice(0, 57)}...`;
}

function issueOf(data: unknown, { path, code, ...more }: z.core.$ZodIssue): Issue {
  const field = path
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : `${i > 0 ? '.' : ''}${String(step)}`))
    .join('');
  if (code === 'unrecognized_keys') {
    const known =
      path.length === 0 ? ['parts'] : path.at(-1) === 'grain' ? ['direction', 'rule', 'within'] : Object.keys(KEYS);
    const { keys } = more as { readonly keys: readonly string[] };
    return { field: field || 'the file', value: `with the key ${keys.join(', ')}`, allowed: known.join(', ') };
  }
  const key = path.findLast(step => typeof step === 'string' && step in ALLOWED);
  return { field: field || 'the file', value: shown(data, path), allowed: ALLOWED[String(key ?? 'parts')]! };
}

function partOf(p: z.output<typeof file>['parts'][number]): ReadPart {
  const region = repair({ outer: outlineOf(p.outline), openings: (p.openings ?? []).map(outlineOf) });
  const { turns, grain, mirrored, stock } = p;
  return {
    id: p.id,
    quantity: p.quantity ?? 1,
    region,
    ...(turns !== undefined && { turns: typeof turns === 'number' ? { step: degrees(turns) } : turns }),
    ...(grain && {
      grain: {
        direction: degrees(grain.direction ?? 0),
        rule: grain.rule ?? 'along',
        ...(grain.within !== undefined && { within: degrees(grain.within) }),
      },
    }),
    ...(mirrored !== undefined && { mirrored }),
    ...(stock && { stock }),
  };
}

/** Parts from JSON: `{ "parts": [{ "id", "quantity", "outline": [[x, y], [x, y, bulge], ...], "openings": [...], "turns", "grain", "mirrored",
 * "stock" }] }`, mm and degrees, y up; all but id and outline may be left out.
 * @throws Unusable naming each field; GeometryFailure for outlines that cross */
export function readPartsJson(text: string): ReadPart[] {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new Unusable([{ field: 'the file', value: 'not JSON', allowed: '{ "parts": [...] }' }]);
  }
  const found = file.safeParse(data);
  if (!found.success) throw new Unusable(found.error.issues.map(i => issueOf(data, i)));
  return found.data.parts.map(partOf);
}
