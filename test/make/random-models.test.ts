import { expect, test } from 'vitest';
import { type Made, make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { invalidOutlines } from '../judges/invalid-outlines.js';
import { overlaps } from '../judges/solids.js';
import { randomModels } from '../models/random-models.js';

/** Plans drawn for each model and method; `npm run soak -- models` draws thousands. Helm wheels have a test of their own. */
const PLANS: Readonly<Record<string, number>> = {
  'cart-wheel': 20,
  'water-wheel': 24,
  'cable-reel': 30,
  'prize-wheel': 30,
  'ring-frame': 16,
  stand: 40,
};

/** The share of them that must build. */
const LEAST = 0.99;
/** One in so many is put together by an outside judge too. */
const JUDGED = 5;

const texts = (files: Made['files']): Map<string, string> =>
  new Map([...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])));

const cases = Object.entries(PLANS).flatMap(([model, plans]) =>
  (['router', 'laser', 'hand'] as const).map(method => ({ model, method, plans })),
);

test('every model is drawn', () => {
  expect([...Object.keys(PLANS), 'helm-wheel'].sort()).toEqual(Object.keys(randomModels).sort());
});

test.each(cases)(
  'of $plans random $model plans by $method nearly all build; none has overlapping pieces or an invalid outline',
  async ({ model, method, plans }) => {
    const wrong: string[] = [];
    const refused: string[] = [];
    for (let seed = 1; seed <= plans; seed++) {
      const { files, findings, report } = await make(readPlan(JSON.stringify(randomModels[model]!(seed, method))));
      const solid = findings.filter(f => f.rule === 'interference' || f.rule === 'mating');
      wrong.push(...solid.map(f => `${seed}: ${f.message}`));
      refused.push(...findings.filter(f => f.level === 'stop').map(f => `${seed}: ${f.message}`));
      if (seed % JUDGED === 0 && report && files.size > 0)
        wrong.push(...overlaps(texts(files), report).map(o => `${seed}: an outsider finds ${JSON.stringify(o)}`));
      wrong.push(...invalidOutlines(files).map(path => `${seed}: ${path} crosses itself`));
    }
    expect(wrong).toEqual([]);
    expect(refused.length, refused.join('\n')).toBeLessThanOrEqual((1 - LEAST) * plans);
  },
  3_600_000,
);
