import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkModel } from '../../lib/checks/index.js';
import type { Finding } from '../../lib/findings/finding.js';
import { buildProp } from '../../lib/models/index.js';
import type { Model } from '../../lib/models/model.js';
import { readPlan } from '../../lib/plan/index.js';
import { seeded } from '../models/random-plan.js';
import { type Falsified, falsified, KINDS, type Kind } from './falsified.js';

const SAMPLES = new URL('../../samples/', import.meta.url);
const RULES = ['interference', 'mating', 'wood-volume'];
/** Draws of each kind for each sample. */
const DRAWS = 3;

function sound(file: string): Model {
  const plan = readPlan(readFileSync(new URL(file, SAMPLES), 'utf8'));
  const { value } = buildProp(plan, plan.stock, plan.title);
  if (!value) throw new Error(`${file} does not build`);
  return value;
}

const found = (model: Model): Finding[] => checkModel(model).filter(f => RULES.includes(f.rule));

/** What is wrong with one part alone, or with a piece that is not there. */
const ALONE: readonly Kind[] = ['left out', 'pocket too deep', 'hole outside'];

/** Told with the part's name, and another's where there is another. */
const told = ({ kind, parts }: Falsified, { where, message }: Finding): boolean =>
  parts.some(id => message.includes(`(${id}`)) && (ALONE.includes(kind) || where.includes(', '));

describe.each(readdirSync(SAMPLES).filter(f => f.endsWith('.yaml')))('%s', file => {
  const model = sound(file);

  test('as it is, nothing is found', () => {
    expect(found(model)).toEqual([]);
  });

  test.each(KINDS)('%s: found, with both pieces, wherever it matters', kind => {
    const random = seeded(KINDS.indexOf(kind) + 1);
    for (let i = 0; i < DRAWS; i++) {
      const wrong = falsified(model, kind, random);
      if (!wrong || wrong.harmless !== undefined) continue;
      expect(
        found(wrong.model).some(f => told(wrong, f)),
        `${kind}: ${wrong.parts.join(', ')}`,
      ).toBe(true);
    }
  });
});
