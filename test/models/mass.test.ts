import { expect, test } from 'vitest';
import { combined, pieceMass } from '../../lib/models/mass.js';
import { rib } from '../../lib/parts/stand-rail.js';
import { near } from '../close.js';

// a trapezoid 600 high, 300 and 100 wide: centroid at h (a + 2 b) / (3 (a + b)) over its wider side (Machinery's Handbook, trapezoid)
const part = rib({ thickness: 18, stock: 'ply', height: 600, bottom: 300, top: 100 });
const UP = (600 * (300 + 2 * 100)) / (3 * 400);
const BACK = (300 * 300 + 300 * 100 + 100 * 100) / (3 * 400);
const WEIGHT = (600 * 400 * 18 * 6e-7) / 2;

test('a lying piece: its middle turned and moved, half its thickness up', () => {
  const m = pieceMass({ part: 'rib', turn: Math.PI, x: 10, y: 20, z: 5 }, part, 6e-7);
  near(m.weight, WEIGHT);
  near(m.x, 10 - UP);
  near(m.y, 20 + BACK);
  near(m.z, 5 + 9);
});

test('a standing piece: what was up in its frame points to the front, its front looks to -y', () => {
  const still = pieceMass({ part: 'rib', turn: 0, x: 0, y: 0, z: 0, stands: true }, part, 6e-7);
  near(still.x, UP);
  near(still.y, -9);
  near(still.z, -BACK);
});

test('a standing piece turned a quarter: its x runs up', () => {
  const m = pieceMass({ part: 'rib', turn: Math.PI / 2, x: -9, y: -900, z: -70, stands: true }, part, 6e-7);
  near(m.x, 0);
  near(m.y, UP - 900);
  near(m.z, -70 - BACK);
});

test('several: weights together, at the common centre of mass', () => {
  const all = combined([
    { weight: 1, x: 0, y: 0, z: 4 },
    { weight: 3, x: 8, y: -4, z: 0 },
  ]);
  expect(all).toEqual({ weight: 4, x: 6, y: -3, z: 1 });
  expect(combined([])).toEqual({ weight: 0, x: 0, y: 0, z: 0 });
});
