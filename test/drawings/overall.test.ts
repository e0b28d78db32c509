import { describe, expect, test } from 'vitest';
import { roundRadius } from '../../lib/drawings/overall.js';
import { moveOutline, turning } from '../../lib/geometry/motion.js';
import { annularSector, circle, type Outline, rectangle } from '../../lib/geometry/outline.js';
import { segments } from '../../lib/geometry/segment.js';
import { near } from '../close.js';

const radius = (...outlines: readonly Outline[]): number | undefined => roundRadius(outlines.flatMap(segments));
/** so many bars from the middle out, the first up */
const bars = (count: number, width: number, length: number): Outline[] =>
  Array.from({ length: count }, (_, i) =>
    moveOutline(rectangle(-width / 2, 0, width / 2, length), turning((2 * Math.PI * i) / count)),
  );

describe('a prop is round', () => {
  test.each([3, 4, 5, 12])('by %i tips as far from the middle, however they point', count => {
    near(radius(...bars(count, 30, 400))!, 400);
  });

  test('by its rim, whether one piece or several, or one with tips within it', () => {
    near(radius(circle(250))!, 250);
    const ring = [0, 1, 2].map(i => annularSector(200, 300, (2 * Math.PI * i) / 3, (2 * Math.PI) / 3));
    near(radius(...ring, ...bars(5, 20, 280))!, 300);
  });
});

test.each<readonly [string, readonly Outline[]]>([
  ['a board', [rectangle(-200, -100, 200, 100)]],
  ['a square', [rectangle(-100, -100, 100, 100)]],
  ['two tips', bars(2, 30, 400)],
  ['half a ring', [annularSector(200, 300, 0, Math.PI)]],
  ['a wheel on a post', [circle(200), rectangle(-30, -600, 30, 0)]],
  ['a circle beside the middle', [circle(200, { x: 50, y: 0 })]],
])('%s is not', (_, outlines) => expect(radius(...outlines)).toBeUndefined());
