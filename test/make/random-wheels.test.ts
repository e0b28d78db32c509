import { expect, test } from 'vitest';
import { type Made, make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { readFlat } from '../judges/dxf-outlines.js';
import { crossesItself } from '../judges/simple.js';
import { overlaps } from '../judges/solids.js';
import { randomPlan } from '../models/random-plan.js';

/** Plans drawn, and the share of them that must build. */
const PLANS = Number(process.env['RIMWRIGHT_PLANS'] ?? 500);
const LEAST = 0.95;

const texts = (files: Made['files']): Map<string, string> =>
  new Map([...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])));

/** Names of written files that hold an outline which crosses or touches itself. */
const invalid = (files: ReadonlyMap<string, string>): string[] =>
  [...files]
    .filter(([path]) => path.endsWith('.dxf'))
    .filter(([, text]) => [...readFlat(text, 0.005)].some(([, outlines]) => outlines.some(crossesItself)))
    .map(([path]) => path);

test(`of ${PLANS} random plans at least ${100 * LEAST} % build; none has overlapping pieces or an invalid outline`, async () => {
  const refused: string[] = [];
  const wrong: string[] = [];
  for (let seed = 1; seed <= PLANS; seed++) {
    const { files, findings, report } = await make(readPlan(JSON.stringify(randomPlan(seed))));
    const stop = findings.find(f => f.level === 'stop');
    if (stop || !report) {
      refused.push(`${seed}: ${stop?.message}`);
      continue;
    }
    const written = texts(files);
    if (overlaps(written, report).length > 0) wrong.push(`${seed}: pieces overlap`);
    wrong.push(...invalid(written).map(path => `${seed}: ${path} crosses itself`));
  }
  console.log(`${PLANS - refused.length} of ${PLANS} build; refused:\n${refused.join('\n')}`);
  expect(wrong).toEqual([]);
  expect(refused.length).toBeLessThanOrEqual((1 - LEAST) * PLANS);
}, 900_000);
