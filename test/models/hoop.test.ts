import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { makeModel } from '../../lib/make.js';
import { keys } from '../../lib/plan/fields.js';
import type { Shop } from '../../lib/plan/index.js';
import { near } from '../close.js';
import { overlaps } from '../judges/solids.js';
import { hoop, hoopShape } from './hoop.js';

const here = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');

const shop: Shop = {
  units: 'mm',
  method: 'router',
  cutter: { kind: 'router', diameter: 6 },
  copies: 1,
  stock: [{ name: 'ply', kind: 'sheet', length: 2440, width: 1220, thickness: 18, true: 0, margin: 5 }],
};

test('the worked example of a model in DEVELOPERS.md is this one', () => {
  const source = here('hoop.ts')
    .replace(/^import [\s\S]*?;\n/gm, '')
    .trim();
  const guide = here('../../DEVELOPERS.md');
  for (const block of source.split(/\n(?=\/\*\*|export interface)/)) expect(guide).toContain(block.trim());
});

test('its blocks print their imports in the order that lint asks for', () => {
  const blocks = [...here('../../DEVELOPERS.md').matchAll(/```ts\n(\/\/ lib\/[\s\S]*?)```/g)].map(m => m[1]!);
  expect(blocks).toHaveLength(2);
  for (const block of blocks) {
    const from = [...block.matchAll(/^import .* from '(.*)';$/gm)].map(m => m[1]!);
    const far = (path: string): number => (path.startsWith('../') ? 0 : 1);
    expect(from).toEqual([...from].sort((a, b) => far(a) - far(b) || (a < b ? -1 : 1)));
  }
});

test('it builds, closes to a full ring, and cuts', async () => {
  const read = z.parse(keys(hoopShape('mm')), { hoop: { outside: '90cm', band: 60, pieces: 6, stock: 'ply' } });
  const { files, report, findings } = await makeModel(hoop({ ...read, method: 'router' }, shop.stock), shop);
  expect(findings.filter(f => f.level === 'stop')).toEqual([]);
  const [felloe] = report!.parts;
  near(6 * felloe!.area, Math.PI * (450 ** 2 - 390 ** 2));
  const texts = new Map(
    [...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])),
  );
  expect(overlaps(texts, report!)).toEqual([]);
});

test('numbers out of range are refused by name', () => {
  const o = { hoop: { outside: 900, band: 445, pieces: 6, stock: 'ply' }, method: 'router' } as const;
  expect(() => hoop(o, shop.stock)).toThrow('hoop.band is 445; allowed: 10 to 440 mm');
});
