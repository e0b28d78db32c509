import { expect, test } from 'vitest';
import { dashes } from '../../lib/geometry/dashes.js';
import { segmentLength } from '../../lib/geometry/measure.js';
import { vertex } from '../../lib/geometry/outline.js';
import { polylineSegments } from '../../lib/geometry/segment.js';
import { near } from '../close.js';

test('a line of 25 in dashes of 5: three of them, one at each end', () => {
  const made = dashes([vertex({ x: 0, y: 0 }), vertex({ x: 25, y: 0 })], 5);
  expect(made.map(d => [d[0]!.x, d[1]!.x])).toEqual([
    [0, 5],
    [10, 15],
    [20, 25],
  ]);
});

test('dashes of an arc lie on it and are alike; a short edge is one dash', () => {
  const arc = [vertex({ x: 10, y: 0 }, 1), vertex({ x: -10, y: 0 }), vertex({ x: -10, y: -1 })];
  const made = dashes(arc, 2);
  expect(made.at(-1)).toEqual([vertex({ x: -10, y: 0 }), vertex({ x: -10, y: -1 })]);
  const bent = made.slice(0, -1);
  // half a circle of 31.4 mm: 15 stretches of 2.09, 8 of them drawn
  expect(bent).toHaveLength(8);
  for (const d of bent) {
    near(segmentLength(polylineSegments(d)[0]!), (10 * Math.PI) / 15);
    for (const v of d) near(Math.hypot(v.x, v.y), 10);
  }
});
