import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { partDrawing } from '../../lib/drawings/part-drawing.js';
import { bounds } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { check } from '../../lib/make.js';
import type { Model } from '../../lib/models/model.js';
import { type Report, report } from '../../lib/papers/report.js';
import { reportSchema } from '../../lib/papers/report-schema.js';
import { weighedAs, weight } from '../../lib/papers/weight.js';
import { partFaces } from '../../lib/parts/faces.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import { partVolume } from '../../lib/parts/volume.js';
import { readPlan } from '../../lib/plan/index.js';
import type { Stock } from '../../lib/stock/stock.js';
import { writeJson } from '../../lib/writers/json.js';
import { near } from '../close.js';

const plate = (features: readonly Feature[] = [], more: Partial<Part> = {}): Part => ({
  id: 'plate',
  kind: 'hub-disc',
  name: 'Plate',
  quantity: 2,
  stock: 'ply',
  thickness: 18,
  region: { outer: rectangle(0, 0, 60, 40), openings: [reverse(circle(5, { x: 10, y: 10 }))] },
  features,
  ...more,
});

const ply: Stock = {
  name: 'ply',
  kind: 'sheet',
  length: 1000,
  width: 500,
  thickness: 18,
  true: 0,
  margin: 5,
  price: 20,
  species: 'birch plywood',
};

const seat = solid(circle(8, { x: 30, y: 20 }));
const blind: Feature = { kind: 'pocket', face: 'back', depth: 6, area: seat, beyond: seat };

const model = (part: Part): Model => ({
  name: 'plates',
  title: 'Two plates',
  parts: [part],
  pieces: [
    { part: 'plate', turn: 0, x: 1, y: 2, z: 3 },
    { part: 'plate', turn: -Math.PI / 2, x: 0, y: 0, z: 0 },
  ],
  hardware: [],
  settings: [],
  figures: [],
  steps: [],
});

const shop = { units: 'in', copies: 1, cutter: { kind: 'router', diameter: 6, pass: 5 }, stock: [ply] } as const;

describe('a part in the report', () => {
  test('has the area of its outline less its openings, and the size of its own file', () => {
    const [row] = report(model(plate()), shop, [], []).parts;
    near(row?.area ?? 0, 60 * 40 - 25 * Math.PI);
    expect(row).toMatchObject({ id: 'plate', kind: 'hub-disc', quantity: 2, thickness: 18, width: 60, height: 40 });
  });
});

describe('the assembly', () => {
  test('tells degrees from 0 up to 360', () => {
    expect(report(model(plate()), shop, [], []).assembly).toEqual([
      { part: 'plate', turn: 0, x: 1, y: 2, z: 3, flipped: false },
      { part: 'plate', turn: 270, x: 0, y: 0, z: 0, flipped: false },
    ]);
  });

  test("puts each file's outline where the piece is, a back-face file flipped first", () => {
    for (const part of [plate(), plate([blind])]) {
      const file = partDrawing(part, partFaces(part).first);
      const outline = file.layers.find(l => l.name === 'OUTSIDE')!.closed[0]!;
      const told = report(model(part), shop, [], []);
      told.assembly.forEach((piece, i) => {
        const at = model(part).pieces[i]!;
        const motion = { mirrored: piece.flipped, turn: (piece.turn * Math.PI) / 180, x: piece.x, y: piece.y };
        const seen = bounds(moveRegion(solid(outline), motion).outer);
        const real = bounds(moveRegion(part.region, { turn: at.turn, x: at.x, y: at.y }).outer);
        for (const key of ['minX', 'minY', 'maxX', 'maxY'] as const) near(seen[key], real[key]);
      });
      expect(told.assembly[0]?.flipped).toBe(part.features.length > 0);
    }
  });
});

test('how deep a router goes at a time is told part by part, by the cutter of its stock', () => {
  const worked = plate([blind]);
  expect(report(model(worked), shop, [], []).passes).toContainEqual({
    part: 'plate',
    work: 'pocket',
    face: 'back',
    depth: 6,
    passes: 2,
    each: 3,
  });
  const own = { ...shop, stock: [{ ...ply, cutter: { kind: 'router', diameter: 8, pass: 6 } }] } as const;
  expect(report(model(worked), own, [], []).passes.map(p => p.passes)).toContain(1);
  expect(report(model(worked), { ...shop, cutter: { kind: 'laser', kerf: 0.2 } }, [], []).passes).toEqual([]);
});

test('a bevel is told in degrees, and only where there is one', () => {
  expect(report(model(plate([], { bevel: Math.PI / 12 })), shop, [], []).parts[0]?.bevel).toBe(15);
  expect(report(model(plate()), shop, [], []).parts[0]).not.toHaveProperty('bevel');
});

describe('weight', () => {
  test('is volume by density, less pockets and holes, each hole once', () => {
    const through: Feature = { kind: 'drill', from: 'through', at: { x: 30, y: 20 }, diameter: 4, depth: 18 };
    const expected = (60 * 40 - 25 * Math.PI) * 18 - 64 * Math.PI * 6 - 4 * Math.PI * 12;
    near(partVolume(plate([blind, through])), expected);
    // birch plywood 670 kg/m3; see lib/stock/materials.ts for its source
    near(weight([plate([blind, through])], [ply]), (2 * expected * 670) / 1e9);
  });

  test('tells what is only assumed', () => {
    const { species: _, ...unnamed } = ply;
    expect(weighedAs(ply)).toEqual({ material: 'birch plywood', assumed: false });
    expect(weighedAs(unnamed)).toEqual({ material: 'softwood plywood', assumed: true });
    expect(weighedAs({ ...unnamed, kind: 'board', species: 'unobtainium' })).toMatchObject({ assumed: true });
  });
});

describe('the schema', () => {
  const valid = new Ajv2020({ strict: true }).compile<Report>(reportSchema);
  const samples = fileURLToPath(new URL('../../samples/', import.meta.url));
  const plans = readdirSync(samples).filter(f => f.endsWith('.yaml'));

  test.each(plans)('holds for the report of %s', name => {
    const { value } = check(readPlan(readFileSync(`${samples}${name}`, 'utf8')));
    const read: unknown = JSON.parse(writeJson(value));
    expect(valid(read), JSON.stringify(valid.errors)).toBe(true);
    const told = value!;
    expect(told.assembly).toHaveLength(told.parts.reduce((n, p) => n + p.quantity, 0));
    const cut = told.sheets.flatMap(s => s.parts);
    for (const p of told.parts) expect(cut.filter(id => id === p.id)).toHaveLength(p.quantity * told.copies);
    const pieces = [...told.sheets, ...(told.templates ?? [])];
    for (const s of told.stock) expect(pieces.filter(x => x.stock === s.name)).toHaveLength(s.needed);
    near(
      told.cost,
      told.stock.reduce((sum, s) => sum + s.needed * (s.price ?? 0), 0),
    );
    expect(told.weight).toBeGreaterThan(0.1);
  });

  test.each([
    ['an unknown key', (r: Record<string, unknown>) => ({ ...r, colour: 1 })],
    ['a missing one', ({ cost: _, ...r }: Record<string, unknown>) => r],
    [
      'a turn of 360',
      (r: Record<string, unknown>) => ({
        ...r,
        assembly: [{ part: 'a', turn: 360, x: 0, y: 0, z: 0, flipped: false }],
      }),
    ],
    [
      'a file elsewhere',
      (r: Record<string, unknown>) => ({ ...r, sheets: [{ file: '../x.dxf', stock: 'a', parts: [], utilisation: 0 }] }),
    ],
    ['text for a number', (r: Record<string, unknown>) => ({ ...r, weight: '3 kg' })],
  ])('refuses %s', (_, change) => {
    const good = JSON.parse(writeJson(report(model(plate()), shop, [], []))) as Record<string, unknown>;
    expect(valid(good)).toBe(true);
    expect(valid(change(good))).toBe(false);
  });
});
