import { expect, test } from 'vitest';
import { checkPart } from '../../../lib/cutting/checks/index.js';
import { smallPart } from '../../../lib/cutting/checks/small-part.js';
import { circle, rectangle, reverse, solid } from '../../../lib/geometry/outline.js';
import { plate } from '../pieces.js';

test('a disc of 50 mm has less area than a square of 50, one of 57 has more; openings do not count', () => {
  const disc = (diameter: number) => plate({ outer: circle(diameter / 2), openings: [reverse(circle(5))] });
  const [finding, ...more] = smallPart(disc(50), 50, 'router');
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ level: 'note', rule: 'small-part', where: 'plate', limit: 50 });
  expect(finding!.value).toBeCloseTo(25 * Math.sqrt(Math.PI), 9);
  expect(finding!.place?.at.x).toBeCloseTo(0, 9);
  expect(smallPart(disc(57), 50, 'router')).toEqual([]);
  expect(smallPart(disc(50), 50, 'laser')).toMatchObject([{ level: 'note' }]);
});

test('what no part should fall below: 2 mm and 50 mm square unless a plan says; 0 asks for nothing', () => {
  const strip = plate({ outer: rectangle(0, 0, 40, 20), openings: [reverse(circle(9, { x: 20, y: 10 }))] });
  expect(checkPart(strip, 'router').map(f => [f.rule, f.limit])).toEqual([
    ['thin-wall', 2],
    ['small-part', 50],
  ]);
  expect(checkPart(strip, 'router', { wall: 0.9 }).map(f => f.rule)).toEqual(['small-part']);
  expect(checkPart(strip, 'router', { wall: 0, part: 0 })).toEqual([]);
  expect(checkPart(plate(solid(rectangle(0, 0, 60, 60))), 'hand')).toEqual([]);
});
