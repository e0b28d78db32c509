import { PART_KINDS } from '../parts/part.js';

/** A piece of a JSON Schema, as far as the report needs it. */
export type JsonSchema = { readonly [key: string]: unknown };

const text: JsonSchema = { type: 'string' };
const name: JsonSchema = { type: 'string', pattern: '^[A-Za-z0-9-]+$' };
const number: JsonSchema = { type: 'number' };
const above0: JsonSchema = { type: 'number', exclusiveMinimum: 0 };
const notBelow0: JsonSchema = { type: 'number', minimum: 0 };
const count: JsonSchema = { type: 'integer', minimum: 1 };
const list = (items: JsonSchema): JsonSchema => ({ type: 'array', items });
const oneOf = (...values: readonly string[]): JsonSchema => ({ type: 'string', enum: values });

/** An object with these keys and no others; those in `optional` may be left out. */
const object = (required: Record<string, JsonSchema>, optional: Record<string, JsonSchema> = {}): JsonSchema => ({
  type: 'object',
  properties: { ...required, ...optional },
  required: Object.keys(required),
  additionalProperties: false,
});

const part = object(
  {
    id: name,
    kind: oneOf(...PART_KINDS),
    name: text,
    quantity: count,
    stock: name,
    thickness: { ...above0, description: 'mm' },
    area: { ...above0, description: 'finished outline less its through openings, mm²' },
    width: { ...above0, description: "of the outline in the part's own file, mm" },
    height: { ...above0, description: "of the outline in the part's own file, mm" },
  },
  {
    bevel: {
      ...above0,
      description: 'degrees its edges at least and greatest x lean in towards the back face, from square',
    },
    finish: object({ name: text }, { color: { type: 'string', pattern: '^#[0-9A-Fa-f]{6}$' }, coats: count }),
  },
);

const piece = object(
  {
    part: name,
    turn: { type: 'number', minimum: 0, exclusiveMaximum: 360, description: 'degrees anticlockwise, after mirroring' },
    x: { ...number, description: 'mm' },
    y: { ...number, description: 'mm' },
    z: { ...number, description: 'height of the lower face, mm; front is up' },
    flipped: { type: 'boolean', description: 'mirrored (x to -x) first: its file shows the back' },
  },
  {
    stands: {
      const: true,
      description:
        'stood up after mirroring, before turning: (x, y, height over the lower face) becomes (x, -height, y); z is then the height of y = 0',
    },
  },
);

const file = (ending: string): JsonSchema => ({ type: 'string', pattern: `^sheets/[0-9]{2,}-[A-Za-z0-9-]+${ending}$` });

const sheet = object(
  {
    file: file('\\.dxf'),
    picture: { type: 'string', pattern: '^layouts/[0-9]{2,}-[A-Za-z0-9-]+\\.svg$' },
    stock: name,
    parts: { ...list(name), description: 'the id of every piece cut from it' },
    utilisation: { type: 'number', minimum: 0, maximum: 1 },
  },
  {
    back: file('-back\\.dxf'),
    offcut: {
      type: 'array',
      items: { type: 'array', items: number, minItems: 3, maxItems: 3 },
      description:
        'outline of the largest piece a straight cut leaves whole: x, y in mm and the bulge of the edge after it',
    },
    copies: { ...list(text), description: 'the copy each of those pieces belongs to' },
    travel: { type: 'number', minimum: 0, description: "the tool's way without cutting, both faces, mm" },
    saved: { type: 'number', maximum: 1, description: 'share of that saved against the order of the parts' },
  },
);

const templates = object({
  file: { type: 'string', pattern: '^templates/[0-9]{2,}-[A-Za-z0-9-]+\\.dxf$' },
  stock: name,
  templates: { ...list(name), description: 'each is a file of its own too: templates/ID.dxf' },
  utilisation: { type: 'number', minimum: 0, maximum: 1 },
});

const passes = object(
  {
    part: name,
    work: oneOf('outside', 'inside', 'pocket', 'drill'),
    face: { ...oneOf('front', 'back'), description: 'it is cut from' },
    depth: { ...above0, description: 'mm' },
    passes: { ...count, description: 'to that depth' },
    each: { ...above0, description: 'depth of one pass, mm' },
  },
  { diameter: { ...above0, description: 'of a hole, mm' } },
);

const stock = object(
  { name, needed: { type: 'integer', minimum: 0 }, material: text, assumed: { type: 'boolean' } },
  { count: { type: 'integer', minimum: 0 }, price: notBelow0, cost: notBelow0 },
);

const layouts = object(
  { stock: name, free: { type: 'integer', minimum: 0, description: 'pieces of stock as parts lie densest' } },
  { straight: { type: 'integer', minimum: 0, description: 'pieces of stock in straight rips and crosscuts' } },
);

const finding = object(
  { level: oneOf('stop', 'warn', 'note'), rule: text, where: text, message: text },
  {
    value: { anyOf: [number, text] },
    limit: { anyOf: [number, text] },
    place: {
      ...object({ part: name, at: object({ x: number, y: number }) }),
      description: 'on the part, in its own frame, mm',
    },
  },
);

/** JSON Schema (2020-12) of report.json; published with the package as report.schema.json. */
export const reportSchema: JsonSchema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Rimwright report',
  description: 'Every number of a made prop. Lengths mm, areas mm², angles degrees, weight kg.',
  ...object(
    {
      rimwright: { const: 1, description: "version of the report's form" },
      title: text,
      units: { const: 'mm', description: 'of every length in the report' },
      planUnits: { ...oneOf('mm', 'in'), description: 'of bare numbers in the plan' },
      copies: count,
      parts: list(part),
      assembly: list(piece),
      sheets: list(sheet),
      passes: { ...list(passes), description: 'how deep a router goes at a time; empty where it is sawn or lasered' },
      stock: list(stock),
      findings: list(finding),
      hardware: list(object({ name: text, quantity: above0, use: text })),
      settings: list(object({ name: text, value: number, unit: oneOf('deg', 'mm') })),
      figures: list(object({ name: text, value: number, unit: oneOf('mm', 'mm2', 'deg', 'kg', 'share', 'factor') })),
      steps: list(text),
      weight: { ...notBelow0, description: 'of the parts of one prop, kg' },
      cost: { ...notBelow0, description: "of all boards and sheets that have a price, in the maker's own money" },
    },
    { layouts: list(layouts), templates: list(templates) },
  ),
};
