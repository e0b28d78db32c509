import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { findingMarks } from '../../lib/drawings/finding-marks.js';
import { sheetPicture } from '../../lib/drawings/nested-picture.js';
import type { Finding } from '../../lib/findings/finding.js';
import { bounds, boundsOfAll } from '../../lib/geometry/measure.js';
import type { Sheet } from '../../lib/nesting/sheet.js';
import type { Stock } from '../../lib/stock/stock.js';
import { writePicture } from '../../lib/writers/picture.js';
import { bar, lap, QUARTER_INCH } from '../cutting/pieces.js';

const ply: Stock = { name: 'ply', kind: 'sheet', length: 300, width: 200, thickness: 10, true: 0, margin: 5 };

const sheetOf = (face: 'front' | 'back'): Sheet => {
  const piece = cut(bar(lap(face)), QUARTER_INCH, 'router').value;
  const at = (y: number) => ({ cut: piece, motion: { turn: Math.PI / 2, x: 150, y } });
  return { stock: ply, number: 1, placements: [at(50), at(80)], utilisation: 0.1 };
};

const found = (rule: string, x: number, part = 'bar'): Finding => ({
  level: 'warn',
  rule,
  where: part,
  message: rule,
  value: 1.234,
  place: { part, at: { x, y: 4 } },
});

const FINDINGS: readonly Finding[] = [
  { level: 'note', rule: 'no-place', where: 'bar', message: 'nowhere' },
  found('thin-wall', 30),
  found('small-part', 0, 'another'),
  found('tight-radius', 60),
];

const rounded = ({ x, y }: { x: number; y: number }) => [x, y].map(v => Number(v.toFixed(9)) + 0);

test('findings with a place keep their numbers on every sheet, and stand on the first piece of their part', () => {
  const marks = findingMarks(sheetOf('front'), FINDINGS);
  expect(marks.map(m => [m.number, m.text])).toEqual([
    [1, 'thin wall 1.23 mm'],
    [3, 'tight radius 1.23 mm'],
  ]);
  // a quarter turn takes (30, 4) to (-4, 30)
  expect(marks.map(m => rounded(m.at))).toEqual([
    [146, 80],
    [146, 110],
  ]);
});

test('on a part that lies with its back up they are seen mirrored', () => {
  const [mark] = findingMarks(sheetOf('back'), FINDINGS);
  expect(rounded(mark!.at)).toEqual([146, 20]);
});

test('the picture of a sheet has a ring and a number for each, and says what they are', () => {
  const picture = sheetPicture(sheetOf('front'), FINDINGS);
  const rings = picture.groups.find(g => g.name === 'findings')!.shapes.flatMap(s => s.closed);
  expect(rings).toHaveLength(4);
  const { minX, maxX, minY, maxY } = boundsOfAll(rings.slice(0, 1).map(bounds));
  expect([(minX + maxX) / 2, (minY + maxY) / 2].map(v => Number(v.toFixed(9)))).toEqual([146, 80]);
  expect(writePicture(picture)).not.toBe(writePicture(sheetPicture(sheetOf('front'))));
  expect(sheetPicture(sheetOf('front')).groups.map(g => g.name)).not.toContain('findings');
});
