import { expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { halfLapped, lapPieces, spaced } from '../../lib/joints/cross-lap.js';
import { mullion } from '../../lib/parts/mullion.js';
import type { Pocket } from '../../lib/parts/part.js';

const bar = mullion({ reach: 300, off: 0, width: 20, thickness: 12, stock: 'strip' });
const lap = { at: [-100, 100], width: 20, clearance: 0.2 };

test('bars are spaced evenly: -R + 2 R (i + 1) / (n + 1)', () => {
  expect(spaced(1, 300)).toEqual([0]);
  expect(spaced(3, 300)).toEqual([-150, 0, 150]);
  expect(spaced(0, 300)).toEqual([]);
});

test('a halved bar has a pocket of half its thickness for each that crosses it, as wide as that and the fit', () => {
  const pockets = halfLapped(bar, lap, 'back').features as readonly Pocket[];
  expect(pockets.map(p => [p.kind, p.face, p.depth])).toEqual([
    ['pocket', 'back', 6],
    ['pocket', 'back', 6],
  ]);
  for (const p of pockets) expect(area(p.area)).toBeCloseTo(20.2 * 20, 9);
  // both bars' pockets together, without a fit, are the wood of one crossing
  const [one] = halfLapped(bar, { ...lap, clearance: 0 }, 'front').features as readonly Pocket[];
  expect(2 * one!.depth * area(one!.area)).toBeCloseTo(20 * 20 * 12, 9);
});

test('the pieces of a layer are the bar less the others and the fit; a press leaves none', () => {
  const pieces = lapPieces(bar, lap);
  expect(pieces).toHaveLength(3);
  const gaps = pieces.slice(1).map((p, i) => bounds(p.region.outer).minX - bounds(pieces[i]!.region.outer).maxX);
  for (const gap of gaps) expect(gap).toBeCloseTo(20.2, 9);
  const all = pieces.reduce((sum, p) => sum + area(p.region), 0);
  expect(all).toBeCloseTo(area(bar.region) - 2 * 20.2 * 20, 6);
  const pressed = lapPieces(bar, { ...lap, clearance: -0.2 });
  expect(bounds(pressed[1]!.region.outer).maxX - bounds(pressed[1]!.region.outer).minX).toBeCloseTo(180, 9);
});
