import { describe, expect, test } from 'vitest';
import { explodedPicture } from '../../lib/drawings/exploded.js';
import { explodedLayers } from '../../lib/drawings/exploded-layers.js';
import { partWord } from '../../lib/drawings/kind-words.js';
import { anchors, leaders } from '../../lib/drawings/leaders.js';
import type { PictureShape } from '../../lib/drawings/picture.js';
import { placedPieces } from '../../lib/drawings/placed.js';
import { intersection } from '../../lib/geometry/boolean.js';
import { area, boundsOfAll, polylineBounds } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { rectangle } from '../../lib/geometry/outline.js';
import { PART_KINDS, type PartKind } from '../../lib/parts/part.js';
import { inches } from '../../lib/units/length.js';
import { writePicture } from '../../lib/writers/picture.js';
import { built, ferryWith } from '../models/ferry.js';

const wheel = built(
  ferryWith({
    trim: { faces: 'front', band: inches(2), segments: 5, stock: 'thin', plugs: { diameter: inches(3 / 8), each: 4 } },
  }),
);
const scarfed = built(ferryWith({ rim: { seam: { joint: 'scarf' } } }));
const layers = explodedLayers(placedPieces(wheel));
const kinds = layers.map(l => l.pieces[0]!.placed.part.kind);

describe('layers', () => {
  test('hold every piece once, of one kind each, from the rear: what is lapped in after what it is lapped into', () => {
    expect(layers.flatMap(l => l.pieces)).toHaveLength(wheel.pieces.length);
    for (const l of layers) expect(new Set(l.pieces.map(s => s.placed.part.kind)).size).toBe(1);
    expect(kinds[0]).toBe('hub-disc');
    expect(kinds.indexOf('felloe')).toBeLessThan(kinds.indexOf('spoke'));
    expect(kinds.indexOf('spoke')).toBeLessThan(kinds.indexOf('trim-segment'));
  });

  test.each([
    ['lie beside each other', layers],
    ['are scarfed', explodedLayers(placedPieces(scarfed))],
  ])('move pieces that %s apart: they overlap nowhere, and the middle stays where it was', (_, all) => {
    for (const { pieces } of all) {
      const moved = pieces.map(({ placed: { part, piece }, by }) =>
        moveRegion(part.region, { turn: piece.turn, x: piece.x + by.x, y: piece.y + by.y }),
      );
      const shared = moved.flatMap((a, i) => moved.slice(i + 1).flatMap(b => intersection([a], [b])));
      expect(shared.reduce((sum, r) => sum + area(r), 0)).toBeLessThan(1e-6);
      const drift = pieces.reduce((sum, s) => ({ x: sum.x + s.by.x, y: sum.y + s.by.y }), { x: 0, y: 0 });
      expect(Math.hypot(drift.x, drift.y)).toBeLessThan(2);
    }
  });
});

describe('the exploded picture', () => {
  const picture = explodedPicture(wheel);

  test('paints layer over layer, names every one, and is the same bytes twice', () => {
    expect(picture.groups.map(g => g.name)).toEqual([
      'axis',
      ...layers.map((_, i) => `layer-${i + 1}`),
      'labels',
      'title',
    ]);
    const dots = picture.groups.find(g => g.name === 'labels')!.shapes.filter(s => s.closed.length > 0);
    expect(dots).toHaveLength(layers.length);
    expect(writePicture(explodedPicture(wheel))).toBe(writePicture(picture));
    expect(writePicture(picture)).not.toMatch(/<text|font|style=/);
  });

  test('keeps everything inside its box', () => {
    const all = picture.groups.flatMap(g => g.shapes).flatMap(s => [...s.closed, ...s.open]);
    const extent = boundsOfAll(all.map(polylineBounds));
    expect(extent.minX).toBeGreaterThan(picture.box.minX);
    expect(extent.minY).toBeGreaterThan(picture.box.minY);
    expect(extent.maxX).toBeLessThan(picture.box.maxX);
    expect(extent.maxY).toBeLessThan(picture.box.maxY);
  });
});

describe('leaders', () => {
  const box = (x0: number, y0: number, x1: number, y1: number): PictureShape => ({
    closed: [rectangle(x0, y0, x1, y1)],
    open: [],
    paint: {},
  });

  test('begin where nothing painted later covers what they name', () => {
    const [under, over] = anchors([[box(0, 0, 10, 10)], [box(5, -5, 20, 20)]]);
    expect(under!.x).toBe(0);
    expect(over!.x).toBe(20);
    const [hidden] = anchors([[box(0, 0, 10, 10)], [box(-5, -5, 20, 20)]]);
    expect(hidden!.x).toBe(10);
  });

  test('lead to names that stand clear of each other in the order of what they name', () => {
    const names = [3, 1, 2, 1.5].map(y => ({ text: `AT ${y}`, at: { x: 0, y } }));
    const ys = leaders(names, 50, 4)
      .filter(s => s.closed.length === 0 && s.open.length === 1 && s.open[0]!.length === 3)
      .map(s => s.open[0]![2]!.y);
    expect(ys).toHaveLength(4);
    const sorted = [ys[1]!, ys[3]!, ys[2]!, ys[0]!];
    for (const [i, y] of sorted.slice(1).entries()) expect(y - sorted[i]!).toBeGreaterThanOrEqual(1.9 * 4 - 1e-9);
  });
});

test('every kind of part has its word', () => {
  const word = (kind: PartKind): string => partWord({ kind, id: kind });
  for (const kind of PART_KINDS) expect(word(kind)).toMatch(/^[a-z]+( [a-z]+)*$/);
  expect(word('hub-disc')).toBe('hub disc');
  expect(partWord({ kind: 'felloe', id: 'segment-loose' })).toBe('segment');
  expect(new Set(PART_KINDS.map(word)).size).toBe(PART_KINDS.length);
});
