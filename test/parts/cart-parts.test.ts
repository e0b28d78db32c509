import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { cartSpoke } from '../../lib/parts/cart-spoke.js';
import { felloe } from '../../lib/parts/felloe.js';
import { felloeBoard } from '../../lib/parts/felloe-board.js';
import { boreOfDisc, naveDisc } from '../../lib/parts/nave-disc.js';
import { tyreLength } from '../../lib/parts/tyre.js';

const wood = { thickness: 19, stock: 'ply' };

test("a tyre's strip is as long as its neutral line", () => {
  // pi (D + t): 720 mm and 5 mm, 725 x 3.14159265 = 2277.6547
  expect(tyreLength(720, 5)).toBeCloseTo(2277.6547, 3);
  // a strip without thickness is the rim's own circumference
  expect(tyreLength(100, 0)).toBeCloseTo(314.159265, 6);
});

test('a sixth of a rim is cut from a board as long as its radius: the hexagon in a circle (Euclid IV.15)', () => {
  const board = felloeBoard(296, 360, Math.PI / 3);
  expect(board.length).toBeCloseTo(360, 9);
  expect(board.width).toBeCloseTo(360 - (296 * Math.sqrt(3)) / 2, 9);
  // side of the regular octagon over its circumradius 0.76537, Machinery's Handbook, "Regular polygons"
  expect(felloeBoard(50, 100, Math.PI / 4).length).toBeCloseTo(76.537, 3);
});

test('a board is as large as the felloe', () => {
  const sweep = fc.double({ min: 0.1, max: 3.1, noNaN: true });
  fc.assert(
    fc.property(sweep, fc.double({ min: 10, max: 99, noNaN: true }), (angle, inner) => {
      const { outer } = felloe({ ...wood, inner, outer: 100, sweep: angle }).region;
      const { minX, maxX, minY, maxY } = bounds(outer);
      const board = felloeBoard(inner, 100, angle);
      expect(maxX - minX).toBeCloseTo(board.length, 9);
      expect(maxY - minY).toBeCloseTo(board.width, 9);
    }),
  );
});

test("a spoke's ends follow nave and rim", () => {
  const { region } = cartSpoke({ ...wood, nave: 80, rim: 290, width: 36, end: 28 });
  const box = bounds(region.outer);
  expect(box.maxX).toBeCloseTo(290, 9);
  expect(box.minX).toBeCloseTo(Math.sqrt(80 * 80 - 18 * 18), 9);
  // trapezium between the corners, and a circular segment more at the rim, one less at the nave
  const foot = Math.sqrt(80 * 80 - 18 * 18);
  const end = Math.sqrt(290 * 290 - 14 * 14);
  const segment = (r: number, half: number): number =>
    r * r * Math.asin(half / r) - half * Math.sqrt(r * r - half * half);
  expect(area(region)).toBeCloseTo(((36 + 28) / 2) * (end - foot) + segment(290, 14) - segment(80, 18), 6);
  expect(() => cartSpoke({ ...wood, nave: 80, rim: 80.5, width: 36, end: 28 })).toThrow(Unusable);
  expect(() => cartSpoke({ ...wood, nave: 80, rim: 82, width: 10, end: 160 })).toThrow(Unusable);
});

test("a bearing's seat takes whole discs, then a pocket of the one it ends in", () => {
  const bore = { kind: 'seats', diameter: 35, depth: 11.5, shoulder: 27 } as const;
  const six = (under: number) => boreOfDisc({ bore, face: 'front', under, thickness: 6 });
  expect(six(0)).toEqual({ kind: 'through', diameter: 35 });
  expect(six(6)).toEqual({ kind: 'seat', diameter: 35, depth: 5.5, face: 'front', shoulder: 27 });
  expect(six(12)).toEqual({ kind: 'through', diameter: 27 });
  expect(boreOfDisc({ bore: { ...bore, depth: 12 }, face: 'back', under: 6, thickness: 6 })).toEqual({
    kind: 'through',
    diameter: 35,
  });
  const part = naveDisc({ ...wood, diameter: 160, bore, face: 'back', under: 0 });
  expect(part.features).toMatchObject([{ kind: 'pocket', face: 'back', depth: 11.5 }]);
});
