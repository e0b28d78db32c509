import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { annularSector, type Outline, rectangle, solid } from '../../lib/geometry/outline.js';
import { overhang } from '../../lib/nesting/bed.js';
import { nestCuts } from '../../lib/nesting/nest-cuts.js';
import type { Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';

const ply: Stock = { name: 'ply', kind: 'sheet', length: 2440, width: 1220, thickness: 18, true: 0, margin: 5 };
const bit = { kind: 'router', diameter: 6 } as const;

const part = (outer: Outline, more: Partial<Part> = {}): Part => ({
  id: 'plate',
  kind: 'hub-disc',
  name: 'Plate',
  quantity: 1,
  stock: 'ply',
  thickness: 18,
  region: solid(outer),
  features: [],
  ...more,
});

const found = (p: Part, length: number, width: number, stock = ply) =>
  nestCuts([{ cut: cut(p, bit, 'router').value, quantity: 1 }], [stock], {
    method: 'router',
    bed: { length, width },
  }).findings.filter(f => f.level === 'stop');

test('a part too long and too wide is told both', () => {
  const [finding] = found(part(rectangle(0, 0, 900, 500)), 600, 400);
  expect(finding).toMatchObject({ rule: 'bed-too-small', where: 'bed.length', value: 600, limit: 906 });
  expect(finding!.message).toContain('needs at least 906 mm and bed.width of at least 506 mm');
});

test('a part that fits aslant only is told at which angle', () => {
  // a strip of 700 x 20 on a bed of 600 x 450: its diagonal is 750. 706 cos a + 26 sin a <= 600 from 34 degrees on
  const [finding] = found(part(rectangle(0, 0, 700, 20)), 600, 450);
  expect(finding!.message).toContain('or its blank cut out first and laid at 34°');
  expect(found(part(rectangle(0, 0, 700, 400)), 600, 450)[0]!.message).not.toContain('laid at');
});

test('a piece of a ring is told how many it takes', () => {
  // 2 R sin(180°/n) + 6 <= 600 for R = 600: n of 7 makes 520.7 + 6, n of 6 makes 606
  const felloe = part(annularSector(500, 600, Math.PI / 2 - Math.PI / 5, (2 * Math.PI) / 5), {
    kind: 'felloe',
    grain: 0,
  });
  const [finding] = found(felloe, 600, 450);
  expect(finding!.message).toContain('or 7 felloes to the ring');
  expect(found({ ...felloe, kind: 'hub-disc' }, 600, 450)[0]!.message).not.toContain('felloes');
});

test('so is one too long for its stock', () => {
  const felloe = part(annularSector(500, 600, Math.PI / 2 - Math.PI / 5, (2 * Math.PI) / 5), {
    kind: 'felloe',
    grain: 0,
  });
  const [finding] = found(felloe, 3000, 3000, { ...ply, length: 560 });
  expect(finding).toMatchObject({ rule: 'stock-too-small', where: 'stock.ply.length' });
  expect(finding!.message).toContain('or 7 felloes to the ring');
});

test('stock over the bed is a warning naming the side that is too long, and to what it is to be cut down', () => {
  expect(overhang(ply, { length: 2500, width: 1300 })).toEqual([]);
  expect(overhang(ply, { length: 1300, width: 2500 })).toEqual([]);
  expect(overhang(ply, { length: 2500, width: 1000 })).toMatchObject([
    { level: 'warn', where: 'stock.ply.width', value: 1220, limit: 1000 },
  ]);
  const [finding] = overhang(ply, { length: 1000, width: 1300 });
  expect(finding).toMatchObject({ where: 'stock.ply.length', value: 2440, limit: 1300 });
  expect(finding!.message).toContain('cut it down between parts to 1300 mm or less');
});
