import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { assembledPicture } from '../../lib/drawings/assembled.js';
import { explodedPicture } from '../../lib/drawings/exploded.js';
import { coupon } from '../../lib/models/coupon.js';
import { buildProp } from '../../lib/models/index.js';
import { readPlan } from '../../lib/plan/index.js';
import { writePicture } from '../../lib/writers/picture.js';
import { PAGED } from './paged-models.js';

/** The sample that a model's page shows. */
const SHOWN: Readonly<Record<string, string>> = {
  'helm-wheel': 'ferry-helm',
  'cart-wheel': 'fish-cart-wheel',
  'ring-frame': 'ferry-porthole',
  'prize-wheel': 'fair-tombola',
  'water-wheel': 'ferry-mill',
  'cable-reel': 'quay-reel',
  stand: 'ferry-stand',
};

const path = (file: string): string => fileURLToPath(new URL(`../../${file}`, import.meta.url));

test('every page of a model shows a sample: give it a row of SHOWN', () => {
  expect(Object.keys(SHOWN).sort()).toEqual([...PAGED].sort());
});

/** Pictures of the pages are what the samples make; `npm run pictures` writes them anew. */
describe.each(Object.entries(SHOWN))('the page of %s', (name, sample) => {
  const plan = readPlan(readFileSync(path(`samples/${sample}.yaml`), 'utf8'));
  const model = buildProp(plan, plan.stock, plan.title).value!;
  const page = readFileSync(path(`lib/models/${name}.md`), 'utf8');
  // the README shows this one too
  const assembled = name === 'helm-wheel' ? 'samples/ferry-helm.svg' : `lib/models/${name}.svg`;
  const exploded = `lib/models/${name}-exploded.svg`;

  test('shows the prop assembled', async () => {
    expect(page).toContain(`](${assembled.replace(/^lib\/models\//, '').replace(/^samples/, '../../samples')})`);
    await expect(writePicture(assembledPicture(model))).toMatchFileSnapshot(path(assembled));
  });

  test('shows it exploded', async () => {
    expect(page).toContain(`](${name}-exploded.svg)`);
    await expect(writePicture(explodedPicture(model))).toMatchFileSnapshot(path(exploded));
  });
});

test('the page of the coupon shows one for a laser', async () => {
  const { model } = coupon({ method: 'laser', cutter: { kind: 'laser', kerf: 0.2 }, thickness: 6 });
  expect(readFileSync(path('lib/models/coupon.md'), 'utf8')).toContain('](coupon.svg)');
  await expect(writePicture(assembledPicture(model))).toMatchFileSnapshot(path('lib/models/coupon.svg'));
});
