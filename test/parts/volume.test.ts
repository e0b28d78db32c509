import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { circle, rectangle, solid } from '../../lib/geometry/outline.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import { partVolume } from '../../lib/parts/volume.js';
import { near } from '../close.js';

const stave = (features: readonly Feature[] = [], bevel = Math.PI / 12): Part => ({
  id: 'stave',
  kind: 'felloe',
  name: 'Stave',
  quantity: 1,
  stock: 'plank',
  thickness: 18,
  region: solid(rectangle(-40, 0, 40, 300)),
  features,
  bevel,
});

test('a bevelled stave is a trapezium times its length', () => {
  // area of a trapezium, (wide + narrow) / 2 * height: Machinery's Handbook, "Areas and dimensions of plane figures"
  const narrow = 80 - 2 * 18 * Math.tan(Math.PI / 12);
  near(partVolume(stave()), ((80 + narrow) / 2) * 18 * 300);
});

test('twelve staves as wide as a side of a regular polygon are the ring between two polygons', () => {
  // area of a regular n-gon by its inradius, n r² tan(180 deg / n): Machinery's Handbook, "Regular polygons"
  const side = 80;
  const inradius = side / 2 / Math.tan(Math.PI / 12);
  const polygon = (r: number): number => 12 * r * r * Math.tan(Math.PI / 12);
  near(12 * partVolume(stave()), (polygon(inradius) - polygon(inradius - 18)) * 300);
});

test('a bevel steep enough to meet leaves a triangle', () => {
  const narrow = { ...stave([], 1.04), region: solid(rectangle(-20, 0, 20, 300)) };
  near(partVolume(narrow), ((40 * 20) / Math.tan(1.04) / 2) * 300);
});

test('a pocket on the back is as wide as the bevel leaves it there', () => {
  const area = solid(rectangle(-40, 100, 40, 150));
  const pocket: Feature = { kind: 'pocket', face: 'back', depth: 6, area, beyond: area };
  const slope = Math.tan(Math.PI / 12);
  const cleared = (80 - 2 * 15 * slope) * 6 * 50; // mean width at 15 mm under the front
  near(partVolume(stave([pocket])), partVolume(stave()) - cleared);
});

test('a hole through pockets on both faces takes what is left between them', () => {
  const area = solid(circle(10, { x: 0, y: 100 }));
  const pocket = (face: 'front' | 'back', depth: number): Feature => ({
    kind: 'pocket',
    face,
    depth,
    area,
    beyond: area,
  });
  const hole: Feature = { kind: 'drill', from: 'through', at: { x: 0, y: 100 }, diameter: 4, depth: 18 };
  const cleared = Math.PI * (100 * 9 + 4 * 9);
  near(partVolume(stave([pocket('front', 5), pocket('back', 4), hole])), partVolume(stave()) - cleared);
});

test.each([-0.1, 1.1, Number.NaN])('a bevel of %d rad is refused', bevel => {
  expect(() => partVolume(stave([], bevel))).toThrow(Unusable);
});
