import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planSchema, readPlan, starterPlan } from '../../lib/plan/index.js';
import { changed, PLAN, wheelOf } from './valid-plan.js';

describe("the plan format's own example", () => {
  const plan = readPlan(PLAN);

  test('lengths are mm, exact where 25.4 x the inches is', () => {
    expect(wheelOf(plan).rim).toEqual({
      outside: 762,
      band: 107.95,
      felloes: 5,
      layers: 1,
      thickness: 19.05,
      seam: { joint: 'biscuit', size: '20', at: 'between-spokes' },
      stock: 'plank',
    });
    expect(wheelOf(plan).spokes).toEqual({
      count: 10,
      width: 31.75,
      overall: 1041.4,
      thickness: 19.05,
      handle: { shape: 'turned', faces: 1 },
      stock: 'batten',
    });
    expect(wheelOf(plan).hub).toEqual({
      diameter: 203.2,
      faces: 'both',
      bore: { bearing: '6202', seat: 'shoulder' },
      stock: 'ply',
    });
    expect(wheelOf(plan).trim).toEqual({
      faces: 'front',
      band: 50.8,
      segments: 5,
      plugs: { diameter: 9.525, each: 4 },
      stock: 'thin',
    });
    expect(wheelOf(plan).edges).toEqual({ rim: { shape: 'round', radius: 6.35, faces: 'both' } });
    expect(wheelOf(plan).fit).toEqual({ lap: 0.15, wedge: 0, bore: -0.05, plug: -0.02 });
    expect(plan).toMatchObject({
      title: 'Ferry helm',
      units: 'in',
      model: 'helm-wheel',
      method: 'router',
      copies: 1,
      paper: ['letter', 'a4'],
    });
    expect(wheelOf(plan)).toMatchObject({ method: 'router', turns: 'shaft' });
    expect(plan.cutter).toEqual({ kind: 'router', diameter: 6.35, reach: 25.4, pass: 6.35 });
    expect(plan.bed).toEqual({ width: 1219.2, length: 2438.4 });
  });

  test('stock keeps its order; what is left out is the default of the format', () => {
    expect(plan.stock.map(s => s.name)).toEqual(['plank', 'batten', 'ply', 'thin']);
    expect(plan.stock[0]).toEqual({
      name: 'plank',
      kind: 'board',
      width: 184.15,
      thickness: 19.05,
      length: 2438.4,
      count: 2,
      species: 'ponderosa pine',
      price: 14.2,
      true: 3.175,
      margin: 5,
    });
    expect(plan.stock[3]).toEqual({
      name: 'thin',
      kind: 'sheet',
      width: 1219.2,
      thickness: 12,
      length: 1219.2,
      count: 1,
      price: 26,
      true: 0,
      margin: 5,
    });
  });

  test('JSON is read as YAML is, tabs and all', () => {
    const json = {
      rimwright: 1,
      title: 'J',
      units: 'mm',
      model: 'helm-wheel',
      method: 'laser',
      rim: { outside: 300, band: '4cm', felloes: 5, thickness: 12, stock: 'ply' },
      spokes: { count: 5, width: 15, stock: 'ply' },
      hub: { diameter: 80, stock: 'ply' },
      stock: { ply: { kind: 'sheet', width: 600, length: 400, thickness: 6 } },
    };
    const read = readPlan(JSON.stringify(json, null, '\t'));
    expect(wheelOf(read).rim).toEqual({ outside: 300, band: 40, felloes: 5, thickness: 12, stock: 'ply' });
    expect(read).toMatchObject({ cutter: { kind: 'laser', kerf: 0.2 }, copies: 1, paper: ['a4'] });
    expect(Object.keys(read)).not.toContain('bed');
    expect(Object.keys(wheelOf(read))).not.toContain('trim');
  });
});

test('cutters by method: a 1/4 in bit, a kerf of 0.2 mm, a 1/8 in blade', () => {
  const without = PLAN.replace(/cutter: \{ kind.*\n/, '');
  expect(readPlan(without).cutter).toEqual({ kind: 'router', diameter: 6.35 });
  expect(readPlan(without.replace('method: router', 'method: laser')).cutter).toEqual({ kind: 'laser', kerf: 0.2 });
  expect(readPlan(without.replace('method: router', 'method: hand')).cutter).toEqual({ kind: 'saw', kerf: 3.175 });
});

test('seams, bores, profiles, faces that differ, a cutter of a stock', () => {
  expect(wheelOf(readPlan(changed('at: between-spokes', 'at: 18deg'))).rim.seam?.at).toEqual({ angle: Math.PI / 10 });
  expect(wheelOf(readPlan(changed('at: between-spokes', 'at: under-spokes'))).rim.seam?.at).toBe('under-spokes');
  expect(wheelOf(readPlan(changed('size: "20"', 'size: 10'))).rim.seam?.size).toBe('10');
  expect(wheelOf(readPlan(changed('{ bearing: "6202", seat: shoulder }', '{ bearing: 6202 }'))).hub.bore).toEqual({
    bearing: '6202',
  });
  expect(wheelOf(readPlan(changed('{ bearing: "6202", seat: shoulder }', '{ axle: 15mm }'))).hub.bore).toEqual({
    axle: 15,
  });
  expect(wheelOf(readPlan(changed('{ bearing: "6202", seat: shoulder }', 'none'))).hub.bore).toBe('none');
  const profile = wheelOf(readPlan(changed('shape: turned', 'profile: [[0, 5/8], [1, 3/8], [4, 1/2in], [5-1/2, 0]]')))
    .spokes.handle?.profile;
  expect(profile).toEqual([
    [0, 15.875],
    [25.4, 9.525],
    [101.6, 12.7],
    [139.7, 0],
  ]);
  const hub = wheelOf(
    readPlan(changed('  stock: ply\n', '  stock: ply\n  back: { diameter: 6, bore: none, stock: thin }\n')),
  ).hub;
  expect(hub.back).toEqual({ diameter: 152.4, bore: 'none', stock: 'thin' });
  const own = readPlan(changed('price: 34', 'cutter: { kind: router, diameter: 8mm }, margin: 1/2')).stock[2];
  expect(own).toMatchObject({ cutter: { kind: 'router', diameter: 8 }, margin: 12.7 });
});

test('anchors and aliases of YAML are written out', () => {
  const text = changed('plank: {', 'plank: &board {').replace(/batten: \{.*\}/, 'batten: *board');
  expect(readPlan(text).stock[1]).toEqual({ ...readPlan(PLAN).stock[0], name: 'batten' });
});

test('a plan in millimetres is the plan in inches', () => {
  const numbers: Record<string, string> = {
    'outside: 30': 'outside: 762',
    'overall: 41': 'overall: 1041.4',
    'diameter: 8\n': 'diameter: 203.2\n',
  };
  fc.assert(
    fc.property(fc.subarray(Object.keys(numbers)), keys => {
      const text = keys.reduce(
        (t, key) => t.replace(key, `${numbers[key]?.trimEnd()}mm${key.endsWith('\n') ? '\n' : ''}`),
        PLAN,
      );
      expect(readPlan(text)).toEqual(readPlan(PLAN));
    }),
    { numRuns: 10 },
  );
});

test('the starter plan is read as it is, and every line of it is a key, a remark or empty', () => {
  const plan = readPlan(starterPlan());
  expect(plan.title).toBe('Lantern Cove ferry helm');
  expect(wheelOf(plan).trim).toBeUndefined();
  const withTrim = readPlan(starterPlan().replace('# trim:', 'trim:'));
  expect(wheelOf(withTrim).trim).toMatchObject({ band: 50.8, segments: 5 });
  for (const line of starterPlan().split('\n')) expect(line).toMatch(/^$|^#|^ *[a-z]+:/);
});

test('the JSON Schema knows every key of the example and what each may hold', () => {
  const schema = planSchema();
  expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
  const models = schema['anyOf'] as { readonly title: string; readonly required: readonly string[] }[];
  const helmWheel = models.find(m => m.title === 'helm-wheel');
  const needed = ['rimwright', 'title', 'units', 'model', 'rim', 'spokes', 'hub', 'method', 'stock'];
  expect([...(helmWheel?.required ?? [])].sort()).toEqual([...needed].sort());
  expect(helmWheel).toMatchObject({
    additionalProperties: false,
    properties: {
      rim: {
        properties: {
          felloes: { type: 'integer', minimum: 3, maximum: 24 },
          band: { type: ['number', 'string'], description: expect.stringContaining('2 to 3000 mm') },
        },
      },
      stock: {
        additionalProperties: {
          anyOf: [
            { required: ['kind', 'thickness'], anyOf: [{ required: ['width', 'length'] }, { required: ['outline'] }] },
            { required: ['like'] },
          ],
        },
      },
    },
  });
  expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
});
