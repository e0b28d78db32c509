import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CAP_HEIGHT, GLYPHS } from '../../lib/drawings/alphabet.js';
import { letter, letteringWidth } from '../../lib/drawings/lettering.js';
import { boundsOfAll, polylineBounds } from '../../lib/geometry/measure.js';
import { movePolyline } from '../../lib/geometry/motion.js';
import { ORIGIN } from '../../lib/geometry/point.js';
import { polylineSegments } from '../../lib/geometry/segment.js';
import { near } from '../close.js';

const boxOf = (text: string, height = 12) => boundsOfAll(letter(text, ORIGIN, height, 0).map(polylineBounds));

describe('the alphabet', () => {
  const characters = Object.keys(GLYPHS).filter(c => c !== ' ');

  test('has capitals, digits, hyphen, point and slash', () => {
    for (const c of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-./') expect(characters).toContain(c);
  });

  test.each(characters)('%s stands within its height; its quarter turns are quarters, its strokes have length', c => {
    const lines = letter(c, ORIGIN, CAP_HEIGHT, 0);
    expect(lines.length).toBeGreaterThan(0);
    const box = boxOf(c);
    expect(box.minY).toBeGreaterThanOrEqual(-CAP_HEIGHT / 2 - 0.51);
    expect(box.maxY).toBeLessThanOrEqual(CAP_HEIGHT / 2 + 1e-9);
    for (const s of lines.flatMap(polylineSegments)) {
      const [dx, dy] = [Math.abs(s.to.x - s.from.x), Math.abs(s.to.y - s.from.y)];
      expect(dx + dy).toBeGreaterThan(0);
      // a quarter turn between axes spans as far across as up
      if (s.kind === 'arc' && Math.abs(s.sweep) < 3) near(dx, dy);
    }
  });

  test('no two glyphs are the same', () =>
    expect(new Set(Object.values(GLYPHS)).size).toBe(Object.keys(GLYPHS).length));
});

describe('a line of text', () => {
  test('is centred, as high as asked and as wide as told', () => {
    const box = boxOf('HELM-8', 10);
    near(box.minY, -5);
    near(box.maxY, 5);
    near(box.maxX - box.minX, letteringWidth('HELM-8', 10));
    near(box.minX, -box.maxX);
  });

  test('small letters are capitals, accents are left out, what is not in the alphabet is a box', () => {
    expect(letter('größe', ORIGIN, 5, 0)).toEqual(letter('GROSSE', ORIGIN, 5, 0));
    const box = letter('輪', ORIGIN, 12, 0);
    expect(box).toHaveLength(1);
    expect(box[0]).toHaveLength(5);
    expect(letter('', ORIGIN, 5, 0)).toEqual([]);
    expect(letter(' ', ORIGIN, 5, 0)).toEqual([]);
  });

  test('turned and moved is the same as lettered, then turned and moved', () => {
    const at = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        fc.stringMatching(/^[A-Z0-9 ./-]{1,12}$/),
        at,
        at,
        fc.double({ min: -4, max: 4, noNaN: true }),
        (text, x, y, turn) => {
          const placed = letter(text, { x, y }, 8, turn);
          const moved = letter(text, ORIGIN, 8, 0).map(l => movePolyline(l, { turn, x, y }));
          placed.flat().forEach((v, i) => {
            near(v.x, moved.flat()[i]!.x);
            near(v.y, moved.flat()[i]!.y);
            expect(v.bulge).toBe(moved.flat()[i]!.bulge);
          });
          expect(placed.length).toBe(moved.length);
        },
      ),
    );
  });
});
