import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { sheetDrawing } from '../../lib/drawings/sheet-drawing.js';
import { signedArea } from '../../lib/geometry/measure.js';
import { circle } from '../../lib/geometry/outline.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import { finishSheet } from '../../lib/sheets/finish-sheet.js';
import type { Feed } from '../../lib/sheets/finishing.js';
import type { Stock } from '../../lib/stock/stock.js';
import { bar, lap, QUARTER_INCH, well } from '../cutting/pieces.js';

const ply: Stock = { name: 'ply', kind: 'sheet', length: 300, width: 200, thickness: 10, true: 0, margin: 5 };

function clearLayers(run: 'rings' | 'grain' | undefined, feature = lap(), feed: Feed = 'conventional') {
  const piece = cut(bar(feature), QUARTER_INCH, 'router', run && { clearing: { run } }).value;
  const placements = [{ cut: piece, motion: { turn: 0, x: 50, y: 50 } }];
  const sheet: Sheet = { stock: ply, number: 1, placements, utilisation: 0.1 };
  const { layers } = sheetDrawing(finishSheet(sheet, { method: 'router', feed }).value, 'first');
  return layers.filter(l => /^(POCKET|CLEAR)_/.test(l.name));
}

test('a sheet file has the area to clear, and its passes where they are asked for, in the order they are cut', () => {
  expect(clearLayers(undefined).map(l => l.name)).toEqual(['POCKET_5']);
  expect(clearLayers('grain').map(l => [l.name, l.open.length, l.closed.length])).toEqual([
    ['POCKET_5', 0, 1],
    ['CLEAR_5', 1, 0],
    ['CLEAR_5', 0, 1],
  ]);
  const [, rings] = clearLayers('rings');
  const areas = rings!.closed.map(o => Math.abs(signedArea(o)));
  expect(areas.length).toBeGreaterThan(2);
  expect(areas).toEqual([...areas].sort((a, b) => a - b));
});

test('rings have the wall on the left; climbing, on the right, from the same places', () => {
  const seat = well(circle(9, { x: 50, y: 0 }));
  const [, against] = clearLayers('rings', seat);
  const [, along] = clearLayers('rings', seat, 'climb');
  expect(against!.closed.every(o => signedArea(o) < 0)).toBe(true);
  expect(along!.closed.every(o => signedArea(o) > 0)).toBe(true);
  expect(along!.closed.map(o => [o[0]!.x, o[0]!.y])).toEqual(against!.closed.map(o => [o[0]!.x, o[0]!.y]));
});
