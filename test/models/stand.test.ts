import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { bounds } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import type { Model } from '../../lib/models/model.js';
import { standing } from '../../lib/models/stand/tipping.js';
import { stand } from '../../lib/models/stand.js';
import type { StandOptions } from '../../lib/models/stand-options.js';
import type { Stock } from '../../lib/stock/stock.js';
import { near } from '../close.js';

const sheet = (name: string, thickness: number): Stock => ({
  name,
  kind: 'sheet',
  width: 1220,
  length: 2440,
  thickness,
  true: 0,
  margin: 5,
  species: 'birch plywood',
});
const stock = [sheet('ply', 18), sheet('thin', 6)];

/** A stand for a helm of a metre across. */
const helm: StandOptions = {
  carries: { wheel: 'helm', diameter: 1000, weight: 8, depth: 60 },
  axle: { height: 900, bore: { bearing: '6202', seat: 'through' } },
  uprights: { stock: 'ply' },
  foot: { stock: 'ply' },
  method: 'router',
};
const post: StandOptions = { ...helm, kind: 'post' };

function built(options: StandOptions): Model {
  const { value, findings } = stand(options, stock);
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}
const findings = (options: StandOptions): string[] =>
  stand(options, stock).findings.map(f => `${f.level} ${f.rule} ${f.where}`);
const figure = (model: Model, name: string): number => model.figures.find(f => f.name === name)!.value;
const part = (model: Model, id: string) => model.parts.find(p => p.id === id)!;

describe('tipping', () => {
  const footing = { back: -400, front: 400, half: 250, axle: 900, top: 1400, push: 110 };
  const g = 9.80665;

  test('moment of the weight over the moment of the push, each way', () => {
    const s = standing([{ weight: 20, x: 0, y: 0, z: 100 }], footing, 0);
    near(s.forward, (20 * g * 300) / (110 * 1400));
    near(s.backward, (20 * g * 500) / (110 * 1400));
    near(s.sideways, (20 * g * 250) / (110 * 900));
  });

  test('the least whole kg of ballast brings every factor to 1.5', () => {
    const masses = [{ weight: 20, x: 0, y: 0, z: 0 }];
    const { ballast, ...factors } = standing(masses, footing);
    const least = (kg: number): number => {
      const { ballast: _, ...f } = standing(masses, footing, kg);
      return Math.min(...Object.values(f));
    };
    expect(Math.min(...Object.values(factors))).toBeGreaterThanOrEqual(1.5);
    expect(least(ballast - 1)).toBeLessThan(1.5);
  });

  test('the figures are those of the pieces where they stand', () => {
    // a wheel so heavy that the stand's own weight is nothing: its middle is the axle
    const model = built({
      ...post,
      carries: { ...post.carries, weight: 1000 },
      foot: { stock: 'ply', length: 800 },
      ballast: 0,
    });
    const foot = model.pieces.find(p => p.part === 'foot')!;
    const forward = foot.z + 400;
    const own = model.pieces.length > 0 ? figure(model, 'tipping factor, forward') : 0;
    expect(own).toBeGreaterThan((1000 * g * forward) / (110 * 1400));
    expect(own).toBeLessThan((1030 * g * (forward + 30)) / (110 * 1400));
  });

  test('feet nobody sized are as long as the wheel alone needs, or as the axle is high', () => {
    const light = built(helm);
    near(bounds(part(light, 'foot').region.outer).maxY * 2, 900);
    const heavy = built({ ...helm, carries: { ...helm.carries, weight: 80 } });
    const sized = (2 * 1.5 * 110 * 1400) / (80 * g);
    near(bounds(part(heavy, 'foot').region.outer).maxY * 2, Math.ceil(sized / 5) * 5);
  });

  test('with the ballast it asks for nothing is said; without it tips', () => {
    expect(findings(helm)).toEqual([]);
    const { ballast } = { ballast: figure(built(helm), 'ballast on the feet') };
    expect(ballast).toBeGreaterThan(10);
    expect(findings({ ...helm, ballast })).toEqual([]);
    expect(findings({ ...helm, ballast: 0.8 * ballast })).toEqual(['warn tipping foot.width']);
    expect(findings({ ...helm, ballast: 0 })).toEqual(['stop tipping foot.width']);
    expect(findings({ ...helm, ballast: 0, anchored: true })).toEqual([]);
  });

  test('a ballast the plan gives may be as heavy as it likes', () => {
    expect(findings({ ...helm, ballast: 400 })).toEqual([]);
  });

  test('feet too short for any ballast are refused', () => {
    expect(findings({ ...helm, foot: { stock: 'ply', width: 200 }, push: 400 })).toEqual(['stop tipping foot.width']);
  });
});

describe('where the pieces stand', () => {
  test.each([
    ['cheeks', helm],
    ['post', post],
    ['cheeks on a base plate', { ...helm, base: { stock: 'thin' } }],
    ['post on a base plate', { ...post, base: { stock: 'ply' } }],
  ] as const)('%s: no two take the same room', (_, options) => {
    expect(interference(built(options))).toEqual([]);
  });

  test('two cheeks stand half the hub and the clearance off the wheel, front and back', () => {
    const { pieces } = built({ ...helm, clearance: 40 });
    expect(pieces.filter(p => p.part.startsWith('cheek')).map(p => [p.part, p.z])).toEqual([
      ['cheek-front', 70],
      ['cheek-back', -88],
    ]);
  });

  test('everything stands on the floor, the height of the axle below it; the base plate under it', () => {
    for (const base of [0, 6]) {
      const model = built({ ...helm, ...(base > 0 && { base: { stock: 'thin' } }) });
      expect(bounds(part(model, 'cheek-front').region.outer).minY).toBe(base - 900);
      expect(model.pieces.filter(p => p.part === 'foot').map(p => p.y)).toEqual([base - 900, base - 900]);
    }
  });

  test('the wheel turns clear of feet and shelf', () => {
    const least = 90 + 18 + 500 + 30;
    const at = (height: number): string[] =>
      findings({ ...helm, axle: { ...helm.axle, height }, foot: { stock: 'ply', height: 90 } });
    expect(at(least)).toEqual([]);
    expect(at(least - 1)).toEqual(['stop floor axle.height']);
  });

  test.each([helm, post, { ...helm, base: { stock: 'ply' } }])(
    'the height a stop allows builds, one a little lower does not: feet grow with it',
    options => {
      const at = (height: number) =>
        stand({ ...options, axle: { ...options.axle, height } }, stock).findings.find(f => f.rule === 'floor');
      for (const low of [300, 510]) {
        const allowed = at(low)?.limit as number;
        expect(allowed).toBeGreaterThan(low);
        expect(at(allowed)).toBeUndefined();
        expect(at(allowed - 0.1)).toMatchObject({ rule: 'floor' });
      }
    },
  );
});

describe('axle', () => {
  const bore = (options: StandOptions, id: string): number =>
    2 * part(built(options), id).region.openings.flatMap(o => asCircle(o) ?? [])[0]!.radius;

  test('a bearing through each cheek, pressed; an axle in a plain hole with air', () => {
    near(bore(helm, 'cheek-front'), 35 - 0.05);
    near(bore({ ...helm, axle: { height: 900, bore: { axle: 16 } } }, 'cheek-back'), 16.2);
  });

  test('shoulder seats are sunk from the outer faces', () => {
    const model = built({ ...helm, axle: { height: 900, bore: { bearing: '6202' } } });
    const faces = ['cheek-front', 'cheek-back'].map(
      id => part(model, id).features.find(f => f.kind === 'pocket')?.face,
    );
    expect(faces).toEqual(['front', 'back']);
  });

  test('a laser cuts no seat, a thin board has no room for one', () => {
    const shoulder = { height: 900, bore: { bearing: '6202', seat: 'shoulder' } } as const;
    expect(findings({ ...helm, axle: shoulder, method: 'laser' })).toEqual(['stop laser-pocket axle.bore.seat']);
    expect(findings({ ...helm, axle: shoulder, uprights: { stock: 'thin' } })).toContain(
      'stop bearing-seat uprights.thickness',
    );
  });
});

test.each([
  [{ uprights: { stock: 'ply', head: 38 } }, 'stop head uprights.head'],
  [{ uprights: { stock: 'ply', thickness: 15 } }, 'stop stock-thickness uprights.thickness'],
  [{ foot: { stock: 'ply', width: 150 } }, 'stop foot-width foot.width'],
  [{ foot: { stock: 'ply', length: 250 } }, 'stop foot-length foot.length'],
  [{ foot: { stock: 'ply', height: 10 } }, 'stop foot-height foot.height'],
  [{ clearance: 20 }, 'warn fingers clearance'],
] as const)('%j: %s', (change, said) => {
  expect(findings({ ...helm, ...change })).toContain(said);
});

test.each([
  { clearance: Number.NaN },
  { push: 0 },
  { ballast: -1 },
  { carries: { ...helm.carries, weight: -5 } },
  { uprights: { stock: 'oak' } },
  { axle: { height: 900, bore: { bearing: '9999' } } },
])('%j is not usable', change => {
  expect(() => stand({ ...helm, ...change }, stock)).toThrow(Unusable);
});

test("a prize wheel's plate is screwed to the stand, a helm has none", () => {
  const steps = (wheel: 'helm' | 'prize'): string =>
    built({ ...post, carries: { ...post.carries, wheel } }).steps.join(' ');
  expect(steps('prize')).toContain('its hub and the post, in the 30 mm there');
  expect(steps('helm')).not.toContain('plate');
});
