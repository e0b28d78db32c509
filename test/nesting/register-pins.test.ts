import { describe, expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { sheetDrawing } from '../../lib/drawings/sheet-drawing.js';
import { distanceToSegment, encloses } from '../../lib/geometry/locate.js';
import { bounds } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import { annularSector, circle, rectangle, solid } from '../../lib/geometry/outline.js';
import { segments } from '../../lib/geometry/segment.js';
import { nestCuts as nest } from '../../lib/nesting/nest-cuts.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import type { Part } from '../../lib/parts/part.js';
import { finishSheet } from '../../lib/sheets/finish-sheet.js';
import type { Stock } from '../../lib/stock/stock.js';
import { near } from '../close.js';
import { lap, plate, QUARTER_INCH, SAW } from '../cutting/pieces.js';

const ply: Stock = { name: 'ply', kind: 'sheet', length: 1220, width: 610, thickness: 18, true: 0, margin: 5 };
const BOTH = [lap('front', 5, 30), lap('back', 5, 30)];
const worked = (length: number, width: number, over: Partial<Part> = {}): Part =>
  plate(solid(rectangle(0, 0, length, width)), { features: BOTH, ...over });

const sheets = (part: Part, quantity: number, stock: Stock = ply, bed?: { length: number; width: number }) =>
  nest([{ cut: cut(part, QUARTER_INCH, 'router').value, quantity }], [stock], {
    method: 'router',
    ...(bed && { bed }),
  });

/** least wood between a pin's hole and any cut, and between it and the sheet's edge */
function room(sheet: Sheet): { cuts: number; edge: number } {
  const cuts = sheet.placements.flatMap(p => p.cut.footprint.map(r => moveRegion(r, p.motion).outer));
  const { length, width, true: trued } = sheet.stock;
  const each = sheet.pins!.map(({ at, diameter }) => ({
    cuts: Math.min(
      ...cuts.map(o =>
        encloses(o, at) ? -1 : Math.min(...segments(o).map(s => distanceToSegment(s, at))) - diameter / 2,
      ),
    ),
    edge: Math.min(at.x, length - at.x, at.y - trued, width - trued - at.y) - diameter / 2,
  }));
  return { cuts: Math.min(...each.map(e => e.cuts)), edge: Math.min(...each.map(e => e.edge)) };
}

describe('a sheet worked on both faces', () => {
  test.each([
    ['a row of plates, moved along to make room before them', worked(200, 590), 4],
    ['plates that leave room above them', worked(500, 250), 2],
    ['a single small one', worked(100, 60), 1],
    ['ring segments', plate(solid(annularSector(200, 290, 0, 1.2)), { features: BOTH }), 12],
  ])('has two pins clear of every cut and of its edge: %s', (_, part, quantity) => {
    const { value, findings } = sheets(part, quantity);
    expect(findings.filter(f => f.rule === 'register-pins')).toEqual([]);
    for (const sheet of value) {
      const [a, b] = sheet.pins!;
      expect(sheet.pins).toHaveLength(2);
      near(a!.at.x + b!.at.x, ply.length);
      expect(b!.at.y).toBe(a!.at.y);
      expect(b!.at.x - a!.at.x).toBeGreaterThan(ply.length / 2);
      const { cuts, edge } = room(sheet);
      // half a pin of wood, less what places are rounded by
      expect(cuts).toBeGreaterThan(a!.diameter / 2 - 0.11);
      expect(edge).toBeGreaterThan(a!.diameter / 2 - 1e-9);
      for (const p of sheet.placements) {
        const box = bounds(moveRegion(p.cut.finished, p.motion).outer);
        expect(Math.min(box.minX, box.minY)).toBeGreaterThan(ply.margin - 1e-6);
        expect(box.maxX).toBeLessThan(ply.length - ply.margin + 1e-6);
      }
    }
  });

  test('has the same holes in both its files, each where the other one is once the sheet is turned over', () => {
    const [sheet] = sheets(worked(300, 200), 3).value;
    const layer = `DRILL_${sheet!.pins![0]!.diameter}`;
    const holes = (face: 'first' | 'second') =>
      sheetDrawing(finishSheet(sheet!, { method: 'router' }).value, face)
        .layers.find(l => l.name === layer)!
        .closed.map(bounds);
    expect(holes('first')).toHaveLength(2);
    const middle = (b: ReturnType<typeof bounds>) => (b.minX + b.maxX) / 2;
    const up = holes('first')
      .map(middle)
      .sort((p, q) => p - q);
    const down = holes('second')
      .map(middle)
      .sort((p, q) => p - q);
    for (const [i, x] of up.entries()) near(down[i]!, x);
    for (const x of up) near(up[0]! + up[1]! - x, ply.length - x);
  });

  test('that is full has a finding with a way out, and no pins', () => {
    const { value, findings } = sheets(worked(1205, 595), 1);
    expect(value[0]!.pins).toBeUndefined();
    expect(findings).toMatchObject([{ level: 'warn', rule: 'register-pins', where: 'stock.ply' }]);
    expect(findings[0]!.message).toContain('margin');
  });

  test('takes thinner pins where there is no room for thick ones', () => {
    const tight = { ...ply, margin: 12 };
    const { value } = sheets(worked(1190, 584), 1, tight);
    expect(value[0]!.pins![0]!.diameter).toBeLessThan(8);
    expect(room(value[0]!).cuts).toBeGreaterThan(1.5);
  });

  test('that is longer than the bed is to be cut down first, said once for all', () => {
    const { value, findings } = sheets(worked(500, 500), 4, ply, { length: 800, width: 620 });
    expect(value).toHaveLength(2);
    expect(value.every(s => s.pins === undefined)).toBe(true);
    expect(findings.filter(f => f.rule === 'register-pins')).toMatchObject([
      { where: 'stock.ply.length', value: 1220 },
    ]);
  });
});

describe('no pins', () => {
  test('on sheets worked on one face', () => {
    const { value, findings } = sheets(worked(300, 200, { features: [lap('front', 5, 30)] }), 3);
    expect(value[0]!.pins).toBeUndefined();
    expect(findings).toEqual([]);
  });

  test('by hand: a part is turned over by itself', () => {
    const part = cut(worked(300, 200), SAW, 'hand').value;
    const { value, findings } = nest([{ cut: part, quantity: 3 }], [ply], { method: 'hand' });
    expect(value[0]!.pins).toBeUndefined();
    expect(findings).toEqual([]);
  });
});

test('a laser cuts the hole smaller by its kerf', () => {
  const beam = { kind: 'laser', kerf: 0.2 } as const;
  const marked = plate(solid(circle(60)), {
    features: ['front', 'back'].map(face => ({
      kind: 'score' as const,
      face: face as 'front' | 'back',
      line: rectangle(-5, -5, 5, 5),
    })),
  });
  const { value } = nest([{ cut: cut(marked, beam, 'laser').value, quantity: 1 }], [ply], { method: 'laser' });
  near(value[0]!.pins![0]!.diameter, 8 - 0.2);
});
