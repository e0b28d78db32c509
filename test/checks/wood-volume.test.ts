import { describe, expect, test } from 'vitest';
import { woodVolume } from '../../lib/checks/wood-volume.js';
import { circle, type Outline, reverse, solid } from '../../lib/geometry/outline.js';
import type { Feature } from '../../lib/parts/part.js';
import { volumeBySections } from '../../lib/parts/section.js';
import { near } from '../close.js';
import { built, ferry, ferryWith } from '../models/ferry.js';
import { assembly, at, box, pocket, testPart } from './assemblies.js';

const plate = (...features: Feature[]) => testPart('plate', box(0, 0, 100, 60), { features });
const findings = (...features: Feature[]) => woodVolume(assembly([plate(...features)], [at('plate')]));
const hole = (x: number, from: 'front' | 'back' | 'through' = 'through', depth = 10): Feature => ({
  kind: 'drill',
  at: { x, y: 30 },
  diameter: 8,
  from,
  depth,
});

test('volume by sections is what a rule and a pocket calculator give', () => {
  const part = plate(pocket('front', 4, box(10, 10, 40, 50)), pocket('back', 3, box(60, 0, 80, 60)), hole(25));
  near(volumeBySections(part), 100 * 60 * 10 - 30 * 40 * 4 - 20 * 60 * 3 - Math.PI * 16 * 6);
});

describe('wood is conserved', () => {
  test('with pockets on both faces, also where they meet, and holes in their floors', () => {
    const seat = solid(circle(12, { x: 50, y: 30 }));
    expect(findings(pocket('front', 4, seat), pocket('back', 5, seat), hole(50))).toEqual([]);
    expect(findings(pocket('front', 4, box(0, 0, 30, 60)), hole(50), hole(70, 'back', 6))).toEqual([]);
  });

  test.each<[string, Feature[]]>([
    ['pockets overlap', [pocket('front', 4, box(10, 10, 40, 50)), pocket('front', 2, box(39, 10, 60, 50))]],
    ['pockets meet in the middle', [pocket('front', 6, box(10, 10, 40, 50)), pocket('back', 5, box(10, 10, 40, 50))]],
    ['a pocket leaves the part', [pocket('front', 4, box(90, 10, 101, 50))]],
    ['holes overlap', [hole(50), hole(57)]],
    ['a hole leaves the part', [hole(3)]],
    ['a pocket is deeper than the part is thick', [pocket('front', 11, box(10, 10, 40, 50))]],
  ])('%s', (_, features) => {
    const [found, ...more] = findings(...features);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: 'warn', rule: 'wood-volume', where: 'plate' });
    expect(Number(found?.value)).toBeGreaterThan(Number(found?.limit));
  });

  test('openings cross the outline, lie outside it, or cross each other', () => {
    const round = (x: number) => reverse(circle(8, { x, y: 30 }));
    const holed = (...openings: Outline[]) =>
      woodVolume(assembly([testPart('plate', { outer: box(0, 0, 100, 60).outer, openings })], [at('plate')]));
    expect(holed(round(20), round(50))).toEqual([]);
    for (const wrong of [holed(round(95)), holed(round(150)), holed(round(50), round(60))]) {
      expect(wrong).toHaveLength(1);
      expect(wrong[0]).toMatchObject({ level: 'warn', rule: 'wood-volume', where: 'plate' });
    }
  });

  test('in a bevelled part', () => {
    const stave = testPart('stave', box(-40, 0, 40, 300), {
      bevel: 0.3,
      features: [pocket('back', 3, box(-40, 20, 40, 40))],
    });
    expect(woodVolume(assembly([stave], [at('stave')]))).toEqual([]);
  });

  test('in a helm wheel of any method', () => {
    expect(woodVolume(built(ferry))).toEqual([]);
    const hub = { bore: { bearing: '6202', seat: 'shoulder' } } as const;
    expect(woodVolume(built(ferryWith({ hub, turns: 'bearing' })))).toEqual([]);
  });
});
