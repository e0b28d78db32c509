import { expect, test } from 'vitest';
import { type Made, make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { invalidOutlines } from '../judges/invalid-outlines.js';
import { overlaps } from '../judges/solids.js';
import { randomRingFrame } from '../models/random-ring-frame.js';

/** Plans drawn for each method, and the share of them that must build. */
const PLANS = Number(process.env['RIMWRIGHT_PLANS'] ?? 16);
const LEAST = 0.99;
/** One in so many is put together by an outside judge too. */
const JUDGED = 5;

const texts = (files: Made['files']): Map<string, string> =>
  new Map([...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])));

const METHODS = ['router', 'laser', 'hand'] as const;

test.each(METHODS)(
  `of ${PLANS} random ring frames by %s nearly all build; none has overlapping pieces or an invalid outline`,
  async method => {
    const wrong: string[] = [];
    const refused: string[] = [];
    for (let seed = 1; seed <= PLANS; seed++) {
      const { files, findings, report } = await make(readPlan(JSON.stringify(randomRingFrame(seed, method))));
      const solid = findings.filter(f => f.rule === 'interference' || f.rule === 'mating');
      wrong.push(...solid.map(f => `${seed}: ${f.message}`));
      refused.push(...findings.filter(f => f.level === 'stop').map(f => `${seed}: ${f.message}`));
      if (seed % JUDGED === 0 && report && files.size > 0)
        wrong.push(...overlaps(texts(files), report).map(o => `${seed}: an outsider finds ${JSON.stringify(o)}`));
      wrong.push(...invalidOutlines(files).map(path => `${seed}: ${path} crosses itself`));
    }
    expect(wrong).toEqual([]);
    expect(refused.length, refused.join('\n')).toBeLessThanOrEqual((1 - LEAST) * PLANS);
  },
  3_600_000,
);
