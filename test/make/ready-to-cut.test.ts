import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { readyToCut } from '../judges/ready-to-cut.js';
import { writtenSheets } from '../judges/written-sheets.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const plans = readdirSync(SAMPLES)
  .filter(name => name.endsWith('.yaml'))
  .map(name => ({ name, plan: readPlan(readFileSync(SAMPLES + name, 'utf8')) }))
  .filter(({ plan }) => plan.method !== 'hand');

/** Longer than a test takes on a machine busy with others. */
const BUSY = 300_000;

describe('what the cutter makes of the written sheets is the finished part, and goes together', () => {
  test.each(plans)(
    '$name',
    ({ plan }) => {
      const judged = readyToCut(plan)!;
      expect(judged.faults).toEqual([]);
      expect(judged.refused).toEqual([]);
      if (plan.method === 'router') expect(judged.gaps).toBeGreaterThan(10);
    },
    BUSY,
  );
});

test.each(['ferry-stand.yaml', 'ferry-helm.yaml'])(
  'what is judged of %s is what is written',
  async name => {
    const { plan } = plans.find(p => p.name === name)!;
    const { files, report } = await make(plan);
    const texts = writtenSheets(plan)!.sheets.flatMap(s => [s.first, ...(s.second === undefined ? [] : [s.second])]);
    const names = report!.sheets.flatMap(s => [s.file, ...(s.back === undefined ? [] : [s.back])]);
    expect(texts).toEqual(names.map(name => files.get(name)));
  },
  BUSY,
);
