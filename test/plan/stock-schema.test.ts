import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import { readPlan } from '../../lib/plan/read-plan.js';
import { readStock } from '../../lib/plan/read-stock.js';

/** A hand-made helm with its stock in the place of `STOCK`. */
const plan = (stock: string, method = 'hand'): string => `
rimwright: 1
title: Lantern helm
units: in
model: helm-wheel
rim: { outside: 30, band: 4, felloes: 6, seam: { joint: butt, at: under-spokes }, stock: plank }
spokes: { count: 6, width: 1-5/8, overall: 41, stock: plank }
hub: { diameter: 8, faces: front, stock: ply }
turns: fixed
method: ${method}
stock:
  plank: { kind: board, width: 7-1/4, thickness: 1-1/2, length: 96, true: 1/8, species: ponderosa pine, price: 14 }
  ply: { kind: sheet, width: 48, length: 96, thickness: 3/4 }
${stock.replace(/^/gm, '  ')}
`;

const IN = 25.4;
const inches = (n: number) => expect.closeTo(n * IN, 9);
const stockOf = (text: string, name: string, method?: string) =>
  readPlan(plan(text, method)).stock.find(s => s.name === name)!;
function issues(text: string, method?: string): string[] {
  try {
    readPlan(plan(text, method));
  } catch (error) {
    if (error instanceof Unusable) return error.message.split('\n');
    throw error;
  }
  return [];
}

describe('several kinds of the same stock', () => {
  test('what an entry that is like another does not say is as that one says, but count and price', () => {
    const long = stockOf('long: { like: plank, length: 120, price: 19 }', 'long');
    expect(long).toMatchObject({
      kind: 'board',
      like: 'plank',
      width: inches(7.25),
      length: inches(120),
      true: inches(1 / 8),
      margin: 5,
    });
    expect(long).toMatchObject({ thickness: inches(1.5), species: 'ponderosa pine', price: 19 });
    expect(stockOf('half: { like: ply, length: 48 }', 'half')).not.toHaveProperty('price');
    expect(long).not.toHaveProperty('count');
  });

  test('an outline becomes anticlockwise with its box from (0, 0), arcs and all; it is one piece, nothing is trued off it', () => {
    // clockwise, and a half disc of 3 in radius on the right: bulge -1
    const left = stockOf('left: { like: plank, outline: [[2, 1], [2, 7], [12, 7, -1], [12, 1]] }', 'left');
    expect(left).toMatchObject({ count: 1, true: 0, length: inches(13), width: inches(6) });
    expect(bounds(left.outline!.outer)).toMatchObject({ minX: 0, minY: 0 });
    expect(area(left.outline!)).toBeCloseTo((60 + (Math.PI * 9) / 2) * IN * IN, 6);
  });

  test('knots and splits are regions; on an outline they are in its own coordinates; such a piece is one of its kind', () => {
    const knots = 'defects: [{ x: 20mm, y: 3, diameter: 1/2 }, [[1, 1], [3, 1], [3, 1-1/8]]]';
    const board = stockOf(`knotty: { like: plank, ${knots} }`, 'knotty');
    expect(board.count).toBe(1);
    expect(asCircle(board.defects![0]!.outer)).toEqual({ center: { x: 20, y: inches(3) }, radius: inches(1 / 4) });
    expect(area(board.defects![1]!)).toBeCloseTo((IN * IN) / 8, 9);
    const left = stockOf(
      'left: { like: ply, outline: [[5, 5], [30, 5], [30, 20]], defects: [{ x: 28, y: 8, diameter: 1 }] }',
      'left',
    );
    expect(asCircle(left.defects![0]!.outer)!.center).toEqual({ x: inches(23), y: inches(3) });
    expect(stockOf(`many: { like: plank, count: 4, ${knots} }`, 'many').count).toBe(4);
  });

  test('grain, gap and layout', () => {
    const stock =
      'mdf: { kind: sheet, outline: [[0, 0], [30, 0], [0, 20]], thickness: 3/4, grain: none }\nripped: { kind: board, width: 5-1/2, length: 96, thickness: 3/4, gap: 1/8, layout: straight }';
    expect(stockOf(stock, 'mdf')).toMatchObject({ grain: 'none', length: inches(30) });
    expect(stockOf(stock, 'ripped')).toMatchObject({ gap: inches(1 / 8), layout: 'straight' });
  });

  test('a variant in other units keeps the sizes of outlines and defects', () => {
    const text = `${plan('left: { like: ply, outline: [[0, 0], [10, 0, 0.2], [10, 8]], defects: [{ x: 3, y: 1, diameter: 1 }] }')}
variants: { metric: { units: mm } }`;
    const [base, metric] = [readPlan(text), readPlan(text, 'metric')].map(p => p.stock.find(s => s.name === 'left'));
    expect(metric!.length).toBeCloseTo(base!.length, 9);
    expect(metric!.outline!.outer[1]!.bulge).toBe(base!.outline!.outer[1]!.bulge);
    expect(bounds(metric!.defects![0]!.outer).maxX).toBeCloseTo(3.5 * IN, 9);
  });
});

test.each([
  ['left: { like: plnak, length: 20 }', /^stock\.left\.like is plnak; allowed: plank, ply \(did you mean plank\?\)$/],
  ['left: { like: half }\nhalf: { like: ply }', /^stock\.left\.like is half; allowed: plank, ply$/],
  ['left: { like: left }', /^stock\.left\.like is left; allowed: plank, ply$/],
  [
    'left: { like: ply, widht: 3 }',
    /^stock\.left\.widht is not a key of the plan format; allowed: like, width, .*did you mean width/,
  ],
  ['left: { like: ply, thickness: 1/2 }', /^stock\.left\.thickness is not a key of the plan format; allowed: like/],
  ['left: { like: ply, kind: board }', /^stock\.left\.kind is not a key/],
  [
    'left: { kind: sheet, thickness: 1/2, length: 20 }',
    /^stock\.left\.width is missing; allowed: a length, or an outline/,
  ],
  [
    'left: { kind: sheet, thicknes: 1/2, thickness: 1/2, length: 20, width: 9 }',
    /^stock\.left\.thicknes is not a key.*did you mean thickness/,
  ],
  [
    'left: { kind: shet, thickness: 1/2, length: 20, width: 9 }',
    /^stock\.left\.kind is shet; allowed: board, sheet \(did you mean sheet\?\)/,
  ],
  [
    'left: { like: ply, outline: [[0, 0], [9, 0], [0, 9]], width: 4 }',
    /^stock\.left\.width is 4; allowed: left out beside an outline/,
  ],
  [
    'left: { like: ply, outline: [[0, 0], [9, 9], [9, 0], [0, 8]] }',
    /^stock\.left\.outline is .*; allowed: 3 or more corners .* here .* at \(/,
  ],
  [
    'left: { like: ply, outline: [[0, 0]] }',
    /^stock\.left\.outline is \[\[0, 0\]\]; allowed: 3 or more corners \[x, y\]/,
  ],
  [
    'left: { like: ply, outline: [[0, 0], [9], [0, 9]] }',
    /^stock\.left\.outline\[1\] is \[9\]; allowed: a corner \[x, y\], or \[x, y, bulge\]/,
  ],
  ['left: { like: ply, outline: [[0, 0], [9, 0, 2], [0, 9]] }', /^stock\.left\.outline\[1\]/],
  ['left: { like: ply, outline: left.dxf }', /^stock\.left\.outline is left\.dxf; allowed: 3 or more corners/],
  [
    'left: { like: ply, defects: [{ x: 3, y: 4 }] }',
    /^stock\.left\.defects\[0\]\.diameter is missing; allowed: a length/,
  ],
  [
    'left: { like: ply, defects: [{ x: 3, y: 4, diameter: 0 }] }',
    /^stock\.left\.defects\[0\]\.diameter is 0; allowed: /,
  ],
  [
    'left: { like: ply, defects: [knot] }',
    /^stock\.left\.defects\[0\] is knot; allowed: \{ x, y, diameter \}, or an outline/,
  ],
  ['left: { like: ply, defects: knot }', /^stock\.left\.defects is knot; allowed: a list/],
  [
    'left: { like: ply, defects: [{ x: 300, y: 4, diameter: 1 }] }',
    /^stock\.left\.defects\[0\] is .*; allowed: a place on it.*2438\.4 mm along/,
  ],
  ['left: { like: ply, grain: up }', /^stock\.left\.grain is up; allowed: along, across, none/],
  [
    'left: { kind: board, width: 5, length: 90, thickness: 1, gap: 1/16 }',
    /^stock\.left\.gap is 1\/16; allowed: at least the width of the cut, 1\/8 in/,
  ],
  [
    'left: { kind: board, width: 5, length: 90, thickness: 1, layout: ripped }',
    /^stock\.left\.layout is ripped; allowed: free, straight/,
  ],
  [
    'left: { kind: board, outline: [[0, 0], [9, 0], [0, 9]], thickness: 1, layout: straight }',
    /^stock\.left\.outline is .*; allowed: left out where layout is straight/,
  ],
])('%s is refused by field, value and what is allowed', (stock, message) => {
  expect(issues(stock)).toEqual([expect.stringMatching(message)]);
});

test('straight rips are for hand tools', () => {
  const stock = 'left: { kind: board, width: 5, length: 90, thickness: 1, layout: straight }';
  expect(issues(stock)).toEqual([]);
  expect(issues(stock, 'router')).toEqual([
    expect.stringMatching(/^stock\.left\.layout is straight; allowed: free, since method is router/),
  ]);
});

test('stock alone, or the stock of a plan, is read for other parts', () => {
  expect(readStock('units: in\nstock: { ply: { kind: sheet, width: 48, length: 96, thickness: 3/4 } }')).toMatchObject([
    { name: 'ply', width: inches(48) },
  ]);
  expect(readStock('stock: { ply: { kind: sheet, width: 480, length: 960, thickness: 18 } }')[0]!.width).toBe(480);
  expect(readStock(plan('')).map(s => s.name)).toEqual(['plank', 'ply']);
  expect(() => readStock('units: ells\nstock: {}')).toThrow('units is ells; allowed: mm, in');
  expect(() => readStock('parts: []')).toThrow(/^stock is missing; allowed: at least one entry/);
  expect(() => readStock('stock: { ply: { kind: sheet, width: 4 } }')).toThrow(
    /stock\.ply\.width is 4[\s\S]*stock\.ply\.thickness is missing/,
  );
});
