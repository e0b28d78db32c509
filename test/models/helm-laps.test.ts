import { describe, expect, test } from 'vitest';
import { checkModel } from '../../lib/checks/index.js';
import { SEAM_JOINTS } from '../../lib/joints/seam-joint.js';
import { helmWheel } from '../../lib/models/helm-wheel.js';
import type { HelmWheelOptions } from '../../lib/models/helm-wheel-options.js';
import { inches } from '../../lib/units/length.js';
import { near } from '../close.js';
import { built, ferryStock, ferryWith } from './ferry.js';

const fixed = { hub: { faces: 'front', bore: 'none', stock: 'leaf' }, turns: 'fixed' } as const;
const count = (o: HelmWheelOptions, prefix: string): number =>
  built(o).pieces.filter(p => p.part === prefix || p.part.startsWith(`${prefix}-`)).length;
const depths = (o: HelmWheelOptions): number[] =>
  built(o).parts.flatMap(p => p.features.flatMap(f => (f.kind === 'pocket' && p.kind !== 'hub-disc' ? [f.depth] : [])));
const stops = (o: HelmWheelOptions): string[] => {
  const { value, findings } = helmWheel(o, ferryStock);
  const all = [...findings, ...(value ? checkModel(value) : [])];
  return all.filter(f => f.level === 'stop' || f.rule === 'interference').map(f => `${f.rule} ${f.message}`);
};

const laps: Readonly<Record<string, HelmWheelOptions>> = {
  'router half': ferryWith({}),
  'hand half': ferryWith({ method: 'hand' }),
  'router half in layers': ferryWith({ rim: { layers: 3, stock: 'leaf' } }),
  'router layered': ferryWith({ rim: { layers: 3, stock: 'leaf' }, spokes: { stock: 'leaf', lap: 'layered' } }),
  'router bridle': ferryWith({ rim: { layers: 4, stock: 'leaf' }, spokes: { stock: 'thin', lap: 'bridle' } }),
  'hand bridle': ferryWith({
    method: 'hand',
    rim: { layers: 3, stock: 'leaf' },
    spokes: { stock: 'leaf', lap: 'bridle' },
  }),
  'laser half': ferryWith({
    method: 'laser',
    rim: { stock: 'leaf', thickness: inches(1) },
    spokes: { stock: 'leaf' },
    ...fixed,
  }),
  'laser bridle': ferryWith({
    method: 'laser',
    rim: { stock: 'leaf', thickness: inches(1) },
    spokes: { stock: 'leaf', lap: 'bridle', thickness: inches(1 / 2) },
    ...fixed,
  }),
};

describe.each(Object.entries(laps))('%s', (name, options) => {
  test.each(SEAM_JOINTS)(
    'with %s seams it is built without two pieces in one place, or says what to choose instead',
    joint => {
      const found = stops({ ...options, rim: { ...options.rim, seam: { joint } } });
      for (const stop of found) expect(stop).toMatch(/^(biscuit-slot|dowel|key|scarf) .*(allowed|fits)/);
      if (!name.includes('layer') && !name.includes('bridle') && !name.includes('laser')) expect(found).toEqual([]);
    },
  );
});

describe('bridle', () => {
  const o = laps['router bridle']!;

  test('spokes pass whole, without pockets, through the two middle layers of four', () => {
    const wheel = built(o);
    expect([count(o, 'spoke'), depths(o)]).toEqual([10, []]);
    const spoke = wheel.pieces.find(p => p.part.startsWith('spoke'));
    near(spoke!.z, inches(1 / 4));
    const loose = wheel.pieces.filter(p => p.part.startsWith('felloe-loose'));
    expect(loose).toHaveLength(20);
    expect([...new Set(loose.map(p => Math.round(p.z * 1e6) / 1e6))]).toEqual([inches(1 / 4), inches(1 / 2)]);
  });

  test('the hub lies on the spokes, between the rim layers', () => {
    const wheel = built(o);
    near(wheel.pieces.find(p => p.part === 'hub-disc-front')!.z, inches(3 / 4));
    near(wheel.pieces.find(p => p.part === 'hub-disc-back')!.z, inches(1 / 4) - inches(3 / 4));
  });

  test('the rings in front go on last', () => {
    expect(built(o).steps.join(' ')).toMatch(/then glue on the rings in front/);
  });

  test.each<[string, HelmWheelOptions, RegExp]>([
    ['one layer', ferryWith({ spokes: { lap: 'bridle' } }), /rim.layers is 1; .* allowed: 3 or more, or lap: half/],
    [
      'spokes thicker than the middle layer',
      ferryWith({ rim: { layers: 3, stock: 'leaf' }, spokes: { stock: 'thin', lap: 'bridle' } }),
      /spokes.thickness is 12.7 mm; .* allowed: 6.35 mm/,
    ],
    [
      'a fraction of a layer',
      ferryWith({ rim: { layers: 5, stock: 'leaf' }, spokes: { stock: 'batten', thickness: 10, lap: 'bridle' } }),
      /spokes.thickness is 10 mm; .* allowed: 6.35 mm, 12.7 mm, 19.05 mm/,
    ],
  ])('%s is refused', (_, options, message) => {
    const { value, findings } = helmWheel(options, ferryStock);
    expect(value).toBeUndefined();
    expect(findings.map(f => f.message).join('\n')).toMatch(message);
  });
});

describe('layered, cut by router', () => {
  const o = laps['router layered']!;

  test('is built as a laser builds it: no pockets, whole spokes in front, spokes in two pieces behind', () => {
    expect(depths(o)).toEqual([]);
    expect([count(o, 'felloe-loose'), count(o, 'spoke-inner'), count(o, 'spoke-handle')]).toEqual([10, 20, 20]);
  });

  test('a rim of one layer is refused with the right ones', () => {
    const { findings } = helmWheel(ferryWith({ spokes: { lap: 'layered' } }), ferryStock);
    expect(findings[0]?.message).toMatch(/spokes.lap: layered .* two or more; allowed: 38.1 mm or 57.15 mm/);
  });
});

test('a half lap that ends between two layers is cut through them; one that ends inside a layer leaves a pocket there', () => {
  expect(depths(ferryWith({ rim: { layers: 2, stock: 'leaf' }, spokes: { stock: 'thin' } }))).toEqual([inches(1 / 4)]);
  const [rim, ...others] = [...new Set(depths(laps['router half in layers']!).map(d => Math.round(d * 1e6) / 1e6))];
  near(rim!, inches(3 / 8) - inches(1 / 4));
  expect(others).toEqual([inches(3 / 8)]);
});

test('every pin of a bridled wheel goes through every layer it meets', () => {
  const wheel = built(laps['laser bridle']!);
  const holes = wheel.pieces.flatMap(piece => {
    const part = wheel.parts.find(p => p.id === piece.part)!;
    return part.features.flatMap(f => {
      if (f.kind !== 'drill' || part.kind === 'spoke') return [];
      const angle = Math.atan2(f.at.y, f.at.x) + piece.turn;
      const r = Math.hypot(f.at.x, f.at.y);
      return [`${Math.round(1e3 * r * Math.cos(angle)) + 0},${Math.round(1e3 * r * Math.sin(angle)) + 0}`];
    });
  });
  const through = new Map<string, number>();
  for (const hole of holes) through.set(hole, (through.get(hole) ?? 0) + 1);
  // where a spoke runs through, its two layers have the hole instead of the loose felloes
  for (const layers of through.values()) expect([2, 4]).toContain(layers);
});
