import { expect, test } from 'vitest';
import { area, difference, intersection, offset, type Region, repair, union } from '../../lib/geometry/index.js';
import {
  difference as apart,
  combine,
  fineOffset,
  finePaths,
  finePerimeter,
  isPlain,
  type Judge,
} from '../soak/fine-polygons.js';
import { randomDistance, randomPair, randomRegion, seeded } from '../soak/random-regions.js';

/** The first of the random cases that test/soak runs by the ten thousand. */
const JUDGE: Judge = { chordError: 0.001, units: 1e5 };

const plain = (region: Region): boolean => {
  try {
    return isPlain(region, JUDGE) && Boolean(repair(region));
  } catch {
    return false;
  }
};

test('150 random offsets', () => {
  for (let seed = 1, judged = 0; judged < 150; seed++) {
    const random = seeded(seed);
    const region = randomRegion(random);
    const by = randomDistance(random);
    if (!plain(region)) continue;
    judged++;
    const want = fineOffset(finePaths([region], JUDGE), by, JUDGE);
    const error = apart(finePaths(offset(region, by), JUDGE), want, JUDGE);
    expect(error, `seed ${seed} by ${by}`).toBeLessThan(4 * JUDGE.chordError * (finePerimeter(want, JUDGE) + 1));
  }
});

test('100 random pairs', () => {
  for (let seed = 1, judged = 0; judged < 100; seed++) {
    const [a, b] = randomPair(seeded(seed));
    if (!plain(a) || !plain(b)) continue;
    judged++;
    const [fineA, fineB] = [finePaths([a], JUDGE), finePaths([b], JUDGE)];
    const allowed = 4 * JUDGE.chordError * (finePerimeter(fineA, JUDGE) + finePerimeter(fineB, JUDGE));
    const results = { union: union([a, b]), difference: difference([a], [b]), intersection: intersection([a], [b]) };
    for (const name of ['union', 'difference', 'intersection'] as const) {
      const error = apart(finePaths(results[name], JUDGE), combine(fineA, fineB, name), JUDGE);
      expect(error, `seed ${seed} ${name}`).toBeLessThan(allowed);
    }
  }
});

test('two nearly straight arcs and their moved copies, once off by 3e-7 mm: areas add up', () => {
  const a: Region = {
    outer: [
      { x: 0, y: 0, bulge: 0 },
      { x: 40, y: 0, bulge: -0.2 },
      { x: 33, y: 21, bulge: -0.22 },
      { x: 13, y: 21, bulge: 0.000016482919454574586 },
      { x: -9, y: 24, bulge: 0 },
    ],
    openings: [],
  };
  const b: Region = { outer: a.outer.map(v => ({ ...v, x: v.x - 18.3, y: v.y + 1.9 })), openings: [] };
  const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
  expect(total(union([a, b])) + total(intersection([a], [b]))).toBeCloseTo(2 * area(a), 8);
});
