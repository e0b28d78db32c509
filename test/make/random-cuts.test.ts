import { describe, expect, test } from 'vitest';
import { readPlan } from '../../lib/plan/index.js';
import type { Plan } from '../../lib/plan/plan.js';
import { cutWidth } from '../../lib/stock/stock.js';
import { cutFaults } from '../judges/cut-faults.js';
import { readyToCut } from '../judges/ready-to-cut.js';
import { sweptPart } from '../judges/swept-part.js';
import { writtenSheets } from '../judges/written-sheets.js';
import { randomModels } from '../models/random-models.js';

/** Longer than a test takes on a machine busy with others. */
const BUSY = 300_000;

const random = (name: string, seed: number, method: 'router' | 'laser', over: object = {}): Plan =>
  readPlan(JSON.stringify({ ...randomModels[name]!(seed, method), ...over }));

/** Three by router, one of them relieved to the side, and one by laser. */
const drawn = (name: string): Plan[] => [
  ...[1, 2].map(seed => random(name, seed, 'router')),
  random(name, 4, 'router', { relief: 'side' }),
  random(name, 2, 'laser'),
];

describe('random plans; `npm run soak -- cut COUNT SEED` runs more', () => {
  test.each(Object.keys(randomModels).flatMap(name => drawn(name).map((plan, i) => ({ name, i, plan }))))(
    '$name $i',
    ({ plan }) => {
      expect(readyToCut(plan)?.faults ?? []).toEqual([]);
    },
    BUSY,
  );
});

test('without relief square corners do not go in: the judge sees it', () => {
  const { faults } = readyToCut(random('stand', 1, 'router', { relief: 'none' }))!;
  expect(faults.length).toBeGreaterThan(0);
  for (const fault of faults) expect(fault).toMatch(/ meet at height /);
});

test('a cutter 0.01 mm wider than the plan says: the judge sees it in every part', () => {
  const plan = random('stand', 1, 'router');
  const written = writtenSheets(plan)!;
  for (const on of written.sheets)
    for (const placement of on.sheet.placements) {
      const radius = cutWidth(placement.cut.cutter) / 2;
      const faults = (by: number) =>
        cutFaults(sweptPart(on, placement, radius + by), placement, radius, 'router', [], true);
      expect(faults(0)).toEqual([]);
      expect(faults(0.005).join()).toContain('wood missing');
      expect(faults(-0.005).join()).toContain('wood left over');
    }
});
