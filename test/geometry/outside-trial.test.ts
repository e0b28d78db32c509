import { describe, expect, test } from 'vitest';
import { union } from '../../lib/geometry/boolean.js';
import { arcsFromEllipse } from '../../lib/geometry/ellipse.js';
import { distanceToSegment, locate } from '../../lib/geometry/locate.js';
import { offset } from '../../lib/geometry/offset.js';
import { polygon, type Region, rectangle, solid } from '../../lib/geometry/outline.js';
import { polylineSegments } from '../../lib/geometry/segment.js';

/** Cases that somebody who tried the kernel from outside found wrong. */

const shape = (...points: readonly (readonly [number, number])[]): Region =>
  solid(polygon(points.map(([x, y]) => ({ x, y }))));

describe('a mitre past its limit takes nothing from the edges beside it', () => {
  test('inwards, at a notch', () => {
    const notched = shape([-50, -40], [50, -40], [50, 0], [1, 0], [0, -5], [-1, 0], [-50, 0]);
    const [inner] = offset(notched, -10, { join: 'mitre' });
    expect(locate(inner!, { x: 3.5, y: -7.5 })).toBe('outside');
  });
  test('outwards, at a spike', () => {
    const spiked = shape([-50, -20], [50, -20], [50, 0], [1, 0], [0, 5], [-1, 0], [-50, 0]);
    const [outer] = offset(spiked, 10, { join: 'mitre' });
    expect(locate(outer!, { x: 2, y: 8 })).toBe('inside');
  });
});

test.each([
  [100, 0.001, 0.1],
  [10, 0.005, 0.1],
  [10, 0.05, 0.1],
  [100, 0.005, 0.5],
  [10, 0.002, 0.01],
  [10, 0.02, 0.01],
  [50, 0.5, 0.01],
  [50, 3, 0.01],
])(
  'a whole ellipse, half axis %s and ratio %s, within %s: as near as it says, no arc past a half turn',
  (x, ratio, tolerance) => {
    const { line, deviation } = arcsFromEllipse(
      { center: { x: 0, y: 0 }, axis: { x, y: 0 }, ratio, start: 0, sweep: 2 * Math.PI },
      tolerance,
    );
    const edges = polylineSegments(line);
    const far = Array.from({ length: 2000 }, (_, i) => {
      const angle = (i * 2 * Math.PI) / 2000;
      const p = { x: x * Math.cos(angle), y: x * ratio * Math.sin(angle) };
      return Math.min(...edges.map(s => distanceToSegment(s, p)));
    });
    expect(Math.max(...far)).toBeLessThanOrEqual(deviation * (1 + 1e-5));
    expect(deviation).toBeLessThanOrEqual(tolerance);
    expect(Math.max(...line.map(v => Math.abs(v.bulge)))).toBeLessThanOrEqual(1);
  },
);

test.each([0, 1e6, 1e7, 1e8])('a bow tie is refused %s mm from the origin', away => {
  const bow = shape([away, away], [away + 10, away + 10], [away + 10, away], [away, away + 6]);
  expect(() => union([bow])).toThrow(expect.objectContaining({ code: 'self-crossing' }));
});

test('coordinates and distances past what digits allow are refused, not lost', () => {
  expect(() => union([solid(rectangle(1e12, 1e12, 1e12 + 10, 1e12 + 10))])).toThrow(/past 1000000000 mm/);
  expect(() => offset(solid(rectangle(0, 0, 10, 10)), 1e308)).toThrow(/by is 1e\+308/);
});
