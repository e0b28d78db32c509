import { describe, expect, test } from 'vitest';
import { compareLayers, drillLayer, layerColour, PALETTE, pocketLayer } from '../../lib/drawings/layers.js';

describe('names of layers', () => {
  test.each([
    [19.05, 'POCKET_19-05'],
    [9.525, 'POCKET_9-525'],
    [11, 'POCKET_11'],
    [25.4 / 64 / 2, 'POCKET_0-1984375'],
    [9.524999999999999, 'POCKET_9-525'],
    [100, 'POCKET_100'],
  ])('a pocket %f mm deep', (depth, name) => expect(pocketLayer(depth)).toBe(name));

  test('a hole of a quarter inch', () => expect(drillLayer(6.35)).toBe('DRILL_6-35'));

  test.each([0, -1, Number.NaN, Infinity, 1e-9])('%f mm is refused', v => {
    expect(() => pocketLayer(v)).toThrow(/a depth or diameter is/);
    expect(() => drillLayer(v)).toThrow(/a depth or diameter is/);
  });

  test('are listed as the contract does, pockets and holes by size', () => {
    const listed = [
      'OUTSIDE',
      'INSIDE',
      'POCKET_6',
      'POCKET_9-525',
      'POCKET_11',
      'DRILL_3',
      'DRILL_10',
      'SCORE',
      'LABEL',
      'STOCK',
    ];
    expect([...listed].reverse().sort(compareLayers)).toEqual(listed);
    expect(['ZZ', 'STOCK', 'AA'].sort(compareLayers)).toEqual(['STOCK', 'AA', 'ZZ']);
  });
});

describe('colours', () => {
  test('are the eight of Okabe and Ito', () => {
    // "Color Universal Design", Okabe and Ito, revised 2008: R, G, B of each colour
    const published = [
      [0, 0, 0],
      [230, 159, 0],
      [86, 180, 233],
      [0, 158, 115],
      [240, 228, 66],
      [0, 114, 178],
      [213, 94, 0],
      [204, 121, 167],
    ];
    expect(Object.values(PALETTE).map(c => [c.rgb >> 16, (c.rgb >> 8) & 255, c.rgb & 255])).toEqual(published);
  });

  test('what is cut through, cleared, drilled and scored differ, in both ways of writing them', () => {
    const names = ['OUTSIDE', 'INSIDE', 'POCKET_6', 'DRILL_6', 'SCORE', 'LABEL', 'STOCK'];
    expect(new Set(names.map(n => layerColour(n).rgb)).size).toBe(names.length);
    expect(new Set(names.map(n => layerColour(n).index)).size).toBe(names.length);
    expect(layerColour('POCKET_6')).toEqual(layerColour('POCKET_9-525'));
    expect(layerColour('MY-LAYER')).toEqual(PALETTE.black);
  });
});
