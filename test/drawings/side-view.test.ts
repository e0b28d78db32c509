import { describe, expect, test } from 'vitest';
import { bandsOf } from '../../lib/drawings/bands.js';
import { mannerOf } from '../../lib/drawings/front-view.js';
import { placedPieces } from '../../lib/drawings/placed.js';
import { isDeep, sideView } from '../../lib/drawings/side-view.js';
import { modelSlabs } from '../../lib/drawings/slabs.js';
import { area, boundsOfAll, polylineBounds } from '../../lib/geometry/measure.js';
import { polygon, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import type { Model, Piece } from '../../lib/models/model.js';
import type { Part } from '../../lib/parts/part.js';
import { piece } from '../../lib/parts/piece.js';
import { near } from '../close.js';

/** 60 wide, 100 high with a tab of 20 by 10 at each end */
const paddle = piece(
  'paddle',
  'Paddle',
  { thickness: 10, stock: 'ply' },
  {
    region: solid(
      polygon([
        { x: -10, y: -10 },
        { x: 10, y: -10 },
        { x: 10, y: 0 },
        { x: 30, y: 0 },
        { x: 30, y: 80 },
        { x: 10, y: 80 },
        { x: 10, y: 90 },
        { x: -10, y: 90 },
        { x: -10, y: 80 },
        { x: -30, y: 80 },
        { x: -30, y: 0 },
        { x: -10, y: 0 },
      ]),
    ),
  },
);
const cheek = piece(
  'cheek',
  'Cheek',
  { thickness: 10, stock: 'ply' },
  {
    region: { outer: rectangle(-20, -50, 20, 50), openings: [reverse(rectangle(-10, -10, 10, 0))] },
  },
);

const model = (parts: readonly Part[], pieces: readonly Piece[]): Model => ({
  name: 'trial',
  title: 'Trial',
  parts,
  pieces,
  hardware: [],
  settings: [],
  figures: [],
  steps: [],
});
const at = (part: string, z: number, stands = false): Piece => ({
  part,
  turn: 0,
  x: 0,
  y: 0,
  z,
  ...(stands && { stands }),
});

describe('a part that stands, cut at its shoulders', () => {
  test('is its tabs and its body, as large together as it was', () => {
    const bands = bandsOf(paddle);
    expect(bands).toHaveLength(3);
    near(
      bands.reduce((sum, b) => sum + area(b.region), 0),
      area(paddle.region),
    );
    expect(bands.map(b => area(b.region))).toEqual([200, 4800, 200]);
  });

  test('stays whole where its long edges lean or it has no shoulders', () => {
    const plain = piece(
      'paddle',
      'Paddle',
      { thickness: 10, stock: 'ply' },
      { region: solid(rectangle(0, 0, 10, 90)) },
    );
    expect(bandsOf(plain)).toEqual([plain]);
    expect(bandsOf({ ...paddle, bevel: 0.2 })).toHaveLength(1);
  });
});

describe('the side view', () => {
  // the paddle stands on the cheek, its lower tab in the cheek's slot; it reaches farther to the right than the cheek
  const prop = model([paddle, cheek], [at('cheek', -10), at('paddle', 0, true)]);
  const pieces = placedPieces(prop);
  const tones = (p: Part): number => (p.kind === 'paddle' ? 0xff0000 : 0x0000ff);
  const { shapes } = sideView(pieces, modelSlabs(prop), mannerOf(tones, 100), { x: 500, y: 7 });
  const blue = (fill: number | undefined): boolean => fill !== undefined && (fill & 0xff) > fill >> 16;

  test('shows the front to the left, from where it is put', () => {
    const box = boundsOfAll(shapes.flatMap(s => s.closed.map(polylineBounds)));
    near(box.minX, 500 - 90);
    near(box.maxX, 500 + 10);
    near(box.minY, 7 - 50);
    near(box.maxY, 7 + 50);
  });

  test('hides a tab in the piece it is in, and shows the rest of its piece before that', () => {
    const order = shapes.map(s => ({ blue: blue(s.paint.fill), box: boundsOfAll(s.closed.map(polylineBounds)) }));
    const last = order.findLastIndex(o => o.blue);
    const tab = order.findIndex(o => !o.blue && o.box.minX >= 500 - 1e-6);
    const body = order.findIndex(o => !o.blue && o.box.maxX - o.box.minX > 70);
    expect(tab).toBeLessThan(last);
    expect(body).toBeGreaterThan(last);
  });

  test('is drawn of what stands or is deep', () => {
    expect(isDeep(pieces, 20, 500)).toBe(true);
    expect(isDeep(placedPieces(model([cheek], [at('cheek', 0)])), 10, 50)).toBe(false);
    expect(isDeep(placedPieces(model([cheek], [at('cheek', 0), at('cheek', 60)])), 70, 50)).toBe(true);
  });
});
