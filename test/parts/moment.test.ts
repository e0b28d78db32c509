import { expect, test } from 'vitest';
import { circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { hubDisc } from '../../lib/parts/hub-disc.js';
import { bulk } from '../../lib/parts/moment.js';
import type { Part, Pocket } from '../../lib/parts/part.js';
import { standRail } from '../../lib/parts/stand-rail.js';
import { partVolume } from '../../lib/parts/volume.js';
import { near } from '../close.js';

const board = standRail({ thickness: 20, stock: 'ply', length: 200, width: 100 });
const pocket = (face: 'front' | 'back', depth: number, x0: number, x1: number): Pocket => {
  const area = solid(rectangle(x0, -50, x1, 50));
  return { kind: 'pocket', face, depth, area, beyond: area };
};

test('a plain board: its middle', () => {
  expect(bulk(board)).toEqual({ volume: 400_000, x: 0, y: 0, height: 10 });
});

test('a disc with a round opening off its middle: -e r² / (R² - r²)', () => {
  const [R, r, e] = [100, 30, 50];
  const part: Part = {
    ...board,
    region: { outer: circle(R), openings: [reverse(circle(r, { x: e, y: 0 }))] },
  };
  near(bulk(part).x, (-e * r * r) / (R * R - r * r));
  near(bulk(part).y, 0);
});

test('a drilled hole counts as an opening does', () => {
  const part: Part = {
    ...board,
    region: solid(circle(100)),
    features: [{ kind: 'drill', at: { x: 50, y: 0 }, diameter: 60, from: 'through', depth: 20 }],
  };
  near(bulk(part).x, (-50 * 900) / (10000 - 900));
});

test('half the board cut to half its thickness: an L, from either face', () => {
  // two blocks, 2 to 1 by volume: 100 x 100 x 20 at x -50 and 100 x 100 x 10 at x 50
  for (const [face, low] of [
    ['front', 5],
    ['back', 15],
  ] as const) {
    const { volume, x, height } = bulk({ ...board, features: [pocket(face, 10, 0, 100)] });
    near(volume, 300_000);
    near(x, (-50 * 2 + 50) / 3);
    near(height, (10 * 2 + low) / 3);
  }
});

test('where pockets and holes overlap the wood is taken once', () => {
  const hole = { kind: 'drill', at: { x: 50, y: 0 }, diameter: 40, from: 'through', depth: 20 } as const;
  const part: Part = { ...board, features: [pocket('front', 10, 0, 100), hole] };
  near(bulk(part).volume, 300_000 - Math.PI * 400 * 10);
  near(bulk(part).volume, partVolume(part));
});

test('a bearing seat: pocket and shoulder hole', () => {
  const bore = { kind: 'seat', diameter: 40, depth: 10, face: 'front', shoulder: 30 } as const;
  const { volume, height } = bulk(hubDisc({ diameter: 100, bore, thickness: 20, stock: 'ply' }));
  const [low, high] = [2500 - 225, 2500 - 400];
  near(volume, Math.PI * 10 * (low + high));
  near(height, (5 * low + 15 * high) / (low + high));
});
