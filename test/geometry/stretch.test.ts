import { describe, expect, test } from 'vitest';
import { distanceToSegment } from '../../lib/geometry/locate.js';
import { length, segmentLength, signedArea } from '../../lib/geometry/measure.js';
import { annularSector, circle, type Outline, rectangle } from '../../lib/geometry/outline.js';
import { polylineSegments, segments } from '../../lib/geometry/segment.js';
import { begunAt, stretch } from '../../lib/geometry/stretch.js';

const SHAPES: readonly (readonly [string, Outline])[] = [
  ['a rectangle', rectangle(0, 0, 30, 20)],
  ['a circle', circle(10, { x: 3, y: 4 })],
  ['a felloe', annularSector(200, 300, 0.3, 1.2)],
];

describe.each(SHAPES)('%s', (_, outline) => {
  const whole = length(outline);

  test.each([0, 0.25, 0.5, 0.999])('begun at a share of %d of any edge keeps its area and length', share => {
    outline.forEach((_, edge) => {
      const begun = begunAt(outline, edge, share);
      expect(begun).toHaveLength(outline.length + (share > 0 ? 1 : 0));
      expect(length(begun)).toBeCloseTo(whole, 9);
      expect(signedArea(begun)).toBeCloseTo(signedArea(outline), 7);
    });
  });

  test.each([
    [0, 0.1],
    [0.2, 0.21],
    [0.4, 0.9],
    [0.9, 1.3],
    [0, 1],
  ])('a stretch from %d to %d of its length is that long and lies on it', (from, to) => {
    const run = polylineSegments(stretch(outline, from * whole, to * whole));
    expect(run.reduce((sum, s) => sum + segmentLength(s), 0)).toBeCloseTo((to - from) * whole, 9);
    for (const s of run)
      expect(Math.min(...segments(outline).map(edge => distanceToSegment(edge, s.to)))).toBeLessThan(1e-9);
  });
});
