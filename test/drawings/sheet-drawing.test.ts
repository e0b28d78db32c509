import { describe, expect, test } from 'vitest';
import type { FaceCuts } from '../../lib/cutting/cut-part.js';
import { drawingExtent } from '../../lib/drawings/extent.js';
import { sheetDrawing as drawn } from '../../lib/drawings/sheet-drawing.js';
import { bounds, boundsOfAll, polylineBounds } from '../../lib/geometry/measure.js';
import { rectangle, solid, vertex } from '../../lib/geometry/outline.js';
import type { Placement, Sheet } from '../../lib/nesting/sheet.js';
import type { Part } from '../../lib/parts/part.js';
import { finishSheet } from '../../lib/sheets/finish-sheet.js';
import { hasSecondFace, type SheetFace } from '../../lib/sheets/sheet-works.js';
import { near } from '../close.js';

const region = solid(rectangle(0, 0, 60, 40));
const part: Part = {
  id: 'plate',
  kind: 'hub-disc',
  name: 'Plate',
  quantity: 1,
  stock: 'ply',
  thickness: 18,
  region,
  features: [],
};

const cuts = (more: Partial<FaceCuts>): FaceCuts => ({
  face: 'front',
  outside: [],
  inside: [],
  pockets: [],
  drills: [],
  scores: [],
  labels: [],
  ...more,
});

const first = cuts({
  outside: [rectangle(-3, -3, 63, 43)],
  drills: [{ at: { x: 10, y: 5 }, diameter: 4 }],
  labels: [{ kind: 'label', text: 'F', at: { x: 30, y: 20 }, height: 6, turn: 0 }],
});
// the same hole seen from the back: x mirrored
const second = cuts({ face: 'back', drills: [{ at: { x: -10, y: 5 }, diameter: 4 }] });

const placed = (turn: number, x: number, y: number, both = true): Placement => ({
  cut: {
    part,
    cutter: { kind: 'router', diameter: 6 },
    first,
    ...(both && { second }),
    finished: region,
    footprint: [region],
  },
  motion: { turn, x, y },
});

const sheet = (placements: readonly Placement[]): Sheet => ({
  stock: { name: 'ply', kind: 'sheet', length: 1000, width: 500, thickness: 18, true: 0, margin: 5 },
  number: 2,
  placements,
  utilisation: 0.1,
});

const sheetDrawing = (s: Sheet, face: SheetFace) => drawn(finishSheet(s, { method: 'router' }).value, face);

const closed = (s: Sheet, face: 'first' | 'second', name: string) =>
  sheetDrawing(s, face).layers.find(l => l.name === name)?.closed ?? [];

describe('a sheet', () => {
  test('has the edge of the stock, and each part in its place', () => {
    const drawing = sheetDrawing(sheet([placed(0, 100, 50), placed(Math.PI / 2, 400, 50)]), 'first');
    const names = drawing.layers.map(l => l.name);
    expect(names).toEqual(['LABEL', 'DRILL_4', 'OUTSIDE', 'TAB', 'OUTSIDE', 'TAB', 'STOCK']);
    expect(drawingExtent(drawing)).toEqual({ minX: 0, minY: 0, maxX: 1000, maxY: 500 });
    const boxes = drawing.layers.filter(l => l.name === 'OUTSIDE').flatMap(l => l.closed.map(bounds));
    expect(boxes).toEqual([
      { minX: 97, minY: 47, maxX: 163, maxY: 93 },
      { minX: 357, minY: 47, maxX: 403, maxY: 113 },
    ]);
    expect(drawing.title).toBe('ply 2');
  });

  test('turns lettering with its part', () => {
    const upright = sheetDrawing(sheet([placed(0, 0, 0)]), 'first').layers.find(l => l.name === 'LABEL')!;
    const turned = sheetDrawing(sheet([placed(Math.PI / 2, 0, 0)]), 'first').layers.find(l => l.name === 'LABEL')!;
    const size = (b: ReturnType<typeof bounds>) => [b.maxX - b.minX, b.maxY - b.minY] as const;
    const [w, h] = size(boundsOfAll(upright.open.map(polylineBounds)));
    const [tw, th] = size(boundsOfAll(turned.open.map(polylineBounds)));
    near(w, th);
    near(h, tw);
  });
});

describe('the same sheet turned over', () => {
  test.each([0, 0.4, Math.PI / 2, 2.5, Math.PI])(
    'has a hole at length - x where the first face has it at x, whatever the turn (%f)',
    turn => {
      const s = sheet([placed(turn, 300, 200)]);
      const [up] = closed(s, 'first', 'DRILL_4').map(bounds);
      const [down] = closed(s, 'second', 'DRILL_4').map(bounds);
      near((down!.minX + down!.maxX) / 2, 1000 - (up!.minX + up!.maxX) / 2);
      near((down!.minY + down!.maxY) / 2, (up!.minY + up!.maxY) / 2);
    },
  );

  test('has no outer profile, but the stock; parts worked on one face are left out', () => {
    expect(hasSecondFace(sheet([placed(0, 100, 50, false)]))).toBe(false);
    const s = sheet([placed(0, 100, 50), placed(0, 300, 50, false)]);
    expect(hasSecondFace(s)).toBe(true);
    const drawing = sheetDrawing(s, 'second');
    expect(drawing.layers.map(l => l.name)).toEqual(['DRILL_4', 'STOCK']);
    expect(closed(s, 'second', 'DRILL_4')).toHaveLength(1);
    expect(drawing.title).toBe('ply 2, second face');
  });

  test('keeps marks on their side of the line they cross', () => {
    // a hook that is no mirror image of itself
    const hook = [vertex({ x: 0, y: 0 }), vertex({ x: -10, y: 0 }), vertex({ x: -10, y: 5 })];
    const p = placed(0.7, 300, 200);
    const s = sheet([{ ...p, cut: { ...p.cut, second: cuts({ face: 'back', scores: [hook] }) } }]);
    const [line] = sheetDrawing(s, 'second').layers.find(l => l.name === 'SCORE')!.open;
    const [a, b, c] = [line![0]!, line![1]!, line![2]!];
    const turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    // a mark may be run from its other end
    const begun = Math.hypot(b.x - a.x, b.y - a.y) > 7 ? 1 : -1;
    near(begun * turn, -50); // as in the hook itself: seen by the cutter, not mirrored again
  });
});
