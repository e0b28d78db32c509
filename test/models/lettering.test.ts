import { describe, expect, test } from 'vitest';
import { circle, rectangle, solid } from '../../lib/geometry/outline.js';
import { gather } from '../../lib/models/drafts.js';
import { buildProp } from '../../lib/models/index.js';
import type { Model } from '../../lib/models/model.js';
import type { Label, Part } from '../../lib/parts/part.js';
import { piece } from '../../lib/parts/piece.js';
import { readPlan } from '../../lib/plan/index.js';
import { randomModels } from './random-models.js';

const options = { thickness: 6, stock: 'ply', grained: false };
const draft = (part: Part) => ({ part, turn: 0, z: 0 });
const plain = (id: string, region: Part['region']) => draft(piece('key', 'Key', { ...options, id }, { region }));
const marks = ({ features }: Part): Label[] => features.flatMap(f => (f.kind === 'label' && !f.shows ? [f] : []));

describe('lettering', () => {
  test('a part without a place of its own is lettered where there is most room, off its holes', () => {
    const hole = { kind: 'drill', at: { x: 20, y: 0 }, diameter: 12, from: 'through', depth: 6 } as const;
    const part = { ...plain('plate', solid(rectangle(0, -10, 60, 10))).part, features: [hole] };
    const [label] = marks(gather([draft(part)]).parts[0]!);
    expect(label).toMatchObject({ text: 'plate' });
    expect(label!.at.x).toBeGreaterThan(26);
  });

  test('a part too small for its id bears its number in the list, and its name says so', () => {
    const { parts } = gather([
      plain('plate', solid(rectangle(0, -10, 60, 10))),
      plain('a-key-with-a-long-name', solid(rectangle(-8, -5, 8, 5))),
    ]);
    expect(marks(parts[1]!).map(l => l.text)).toEqual(['2']);
    expect(parts[1]!.name).toBe('Key, marked 2');
  });

  test('one smaller still is left bare', () => {
    expect(marks(gather([plain('dot', solid(circle(1)))]).parts[0]!)).toEqual([]);
  });
});

/** A side or a diameter under this leaves no letter room to be read: mm. */
const SMALL = 14;

const wide = ({ region }: Part): number => {
  const [x, y] = [region.outer.map(v => v.x), region.outer.map(v => v.y)];
  return Math.min(Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y));
};

test.each(Object.entries(randomModels))('every part of a random %s is lettered', (_, random) => {
  for (const method of ['router', 'laser', 'hand'] as const)
    for (let seed = 1; seed <= 6; seed++) {
      const plan = readPlan(JSON.stringify(random(seed, method)));
      const model: Model | undefined = buildProp(plan, plan.stock, plan.title).value;
      const bare = (model?.parts ?? []).filter(
        p => wide(p) > SMALL && p.region.openings.length === 0 && marks(p).length === 0,
      );
      expect(bare.map(p => `${seed} ${method} ${p.id}`)).toEqual([]);
    }
});
