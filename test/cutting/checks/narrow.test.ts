import { describe, expect, test } from 'vitest';
import { cut } from '../../../lib/cutting/cut.js';
import type { Finding } from '../../../lib/findings/finding.js';
import { withMates } from '../../../lib/geometry/mates.js';
import { offset } from '../../../lib/geometry/offset.js';
import { circle, type Outline, polygon, rectangle, reverse, solid } from '../../../lib/geometry/outline.js';
import type { Part } from '../../../lib/parts/part.js';
import { bar, lap, plate, QUARTER_INCH, well } from '../pieces.js';

const r = QUARTER_INCH.kind === 'router' ? QUARTER_INCH.diameter / 2 : 0;

const told = (part: Part): Finding[] => cut(part, QUARTER_INCH, 'router').findings.filter(f => f.level !== 'note');

/** A rectangle about the origin with its corners rounded. */
const rounded = (x: number, y: number, radius: number): Outline =>
  offset([solid(rectangle(radius - x, radius - y, x - radius, y - radius))], radius)[0]!.outer;

const opened = (opening: Outline): Part => plate({ outer: circle(60), openings: [reverse(opening)] });

const at = (finding: Finding | undefined): readonly number[] => {
  const { x, y } = finding!.place!.at;
  return [x, y].map(v => Number(v.toFixed(6)) + 0);
};

describe('an inside radius smaller than the cutter', () => {
  test('in an opening or a pocket is a warning with the radius and its place', () => {
    for (const part of [
      opened(rounded(20, 12, 2)),
      plate(solid(circle(60)), { features: [well(rounded(20, 12, 2))] }),
    ]) {
      const [finding, ...more] = told(part);
      expect(more).toEqual([]);
      expect(finding).toMatchObject({ level: 'warn', rule: 'tight-radius', where: 'plate', limit: r });
      expect(finding!.value).toBeCloseTo(2, 9);
      const corner = 2 - Math.SQRT2;
      const [x, y] = at(finding);
      expect(Math.abs(x!)).toBeCloseTo(20 - corner, 5);
      expect(Math.abs(y!)).toBeCloseTo(12 - corner, 5);
    }
  });

  test('as large as the cutter says nothing', () => {
    expect(told(opened(rounded(20, 12, r)))).toEqual([]);
    expect(told(opened(rounded(20, 12, r - 0.01)))).toEqual([]);
  });

  test('where another piece meets the arc is a stop', () => {
    const hole = rounded(20, 12, 2);
    const arcs = hole.flatMap((v, i) => (v.bulge === 0 ? [] : [i]));
    expect(told(opened(withMates(hole, 'tab', arcs)))).toMatchObject([{ level: 'stop', rule: 'tight-radius' }]);
  });
});

describe('what is narrower than the cutter is told where it is', () => {
  test('a slot, its ends round or square', () => {
    for (const slot of [rounded(20, 3, 2.9), rectangle(-20, -3, 20, 3), rounded(4, 3, 1)]) {
      const [finding, ...more] = told(opened(slot));
      expect(more).toEqual([]);
      expect(finding).toMatchObject({ level: 'stop', rule: 'narrow-opening', limit: 2 * r });
      expect(at(finding)).toEqual([0, 0]);
    }
  });

  test('the neck of an opening', () => {
    const neck = [
      [-30, -15],
      [-10, -15],
      [-10, -2],
      [10, -2],
      [10, -15],
      [30, -15],
      [30, 15],
      [10, 15],
      [10, 2],
      [-10, 2],
      [-10, 15],
      [-30, 15],
    ];
    const [finding] = told(opened(polygon(neck.map(([x, y]) => ({ x: x!, y: y! })))));
    expect(finding).toMatchObject({ rule: 'narrow-opening' });
    expect(at(finding)).toEqual([0, 0]);
  });

  test('but not a pocket just as wide', () => {
    expect(told(bar(lap('front', 40, 46.35)))).toEqual([]);
    expect(told(bar(lap('front', 40, 46.34)))).toMatchObject([{ rule: 'narrow-pocket' }]);
  });

  test('a lap, and a gap in the outline', () => {
    const [finding] = told(bar(lap('front', 40, 46)));
    expect(finding).toMatchObject({ rule: 'narrow-pocket', limit: 6.35 });
    expect(at(finding)).toEqual([43, 0]);
    const gap = [
      [0, 0],
      [100, 0],
      [100, 40],
      [53, 40],
      [53, 20],
      [47, 20],
      [47, 40],
      [0, 40],
    ];
    const [notch] = told(plate(solid(polygon(gap.map(([x, y]) => ({ x: x!, y: y! }))))));
    expect(notch).toMatchObject({ level: 'warn', rule: 'cutter-too-wide' });
    expect(at(notch)[0]).toBeCloseTo(50, 6);
  });
});

test('the note of inside corners is placed at one of them', () => {
  const [note] = cut(bar(well(rectangle(75, -5, 90, 5))), QUARTER_INCH, 'router').findings;
  expect(note).toMatchObject({ rule: 'inside-corner', place: { part: 'bar' } });
  expect([75, 90]).toContain(note!.place!.at.x);
  expect([-5, 5]).toContain(note!.place!.at.y);
});
