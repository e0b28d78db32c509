import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, test } from 'vitest';
import { distanceToSegment } from '../../lib/geometry/locate.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import { polylineSegments, segments } from '../../lib/geometry/segment.js';
import { readSvg } from '../../lib/readers/svg.js';

const drawing = (inner: string, root = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<?xml version="1.0"?><!-- <rect width="9" height="9"/> --><svg xmlns="http://www.w3.org/2000/svg" ${root}>${inner}</svg>`;
const only = (inner: string, root?: string) => {
  const { regions } = readSvg(drawing(inner, root));
  expect(regions).toHaveLength(1);
  return regions[0]!;
};
const box = (inner: string, root?: string) => {
  const { minX, minY, maxX, maxY } = bounds(only(inner, root).outer);
  return [minX, -maxY, maxX, -minY].map(v => Math.round(v * 1e6) / 1e6 + 0);
};
const SQUARE = '<rect x="10" y="20" width="30" height="15"/>';

describe('size: width, height, viewBox (SVG 2, 8)', () => {
  test.each([
    ['width="100mm" height="100mm" viewBox="0 0 100 100"', [10, 20, 40, 35]],
    ['width="10cm" height="10cm" viewBox="0 0 50 50"', [20, 40, 80, 70]],
    ['width="4in" height="4in" viewBox="0 0 96 96"', [10, 20, 40, 35].map(v => (v * 101.6) / 96)],
    ['width="200mm" viewBox="10 20 100 100"', [0, 0, 60, 30]],
    // twice as wide as the box wants: xMidYMid meet leaves 50 mm on either side
    ['width="200mm" height="100mm" viewBox="0 0 100 100"', [60, 20, 90, 35]],
    ['width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMinYMid meet"', [10, 20, 40, 35]],
    ['width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMin slice"', [20, 40, 80, 70]],
    ['width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"', [20, 20, 80, 35]],
  ])('%s', (root, expected) => {
    expect(box(SQUARE, root)).toEqual(expected.map(v => Math.round(v * 1e6) / 1e6));
    expect(readSvg(drawing(SQUARE, root)).sizeAssumed).toBe(false);
  });

  test.each(['', 'viewBox="0 0 100 100"', 'width="100px" height="100px"', 'width="100%"'])(
    'without a size in the real world, %j, 96 units are an inch, and that is told',
    root => {
      expect(box(SQUARE, root)).toEqual([10, 20, 40, 35].map(v => Math.round((v * 25.4e6) / 96) / 1e6));
      expect(readSvg(drawing(SQUARE, root)).sizeAssumed).toBe(true);
    },
  );
});

describe('transforms (CSS Transforms 1, 8)', () => {
  test.each([
    ['translate(5)', [15, 20, 45, 35]],
    ['translate(5,-6)', [15, 14, 45, 29]],
    ['scale(2)', [20, 40, 80, 70]],
    ['scale(2 1)', [20, 20, 80, 35]],
    ['rotate(90)', [-35, 10, -20, 40]],
    ['rotate(90 10 20)', [-5, 20, 10, 50]],
    ['rotate(90,10,20)translate(1 2)', [-7, 21, 8, 51]],
    ['matrix(0 1 -1 0 3 4)', [-32, 14, -17, 44]],
    ['skewX(45)', [30, 20, 75, 35]],
    ['skewY(45)', [10, 30, 40, 75]],
    ['scale(-1,1)', [-40, 20, -10, 35]],
    ['translate(1 1) scale(2) ', [21, 41, 81, 71]],
    ['none', [10, 20, 40, 35]],
  ])('%s', (transform, expected) => {
    expect(box(`<rect x="10" y="20" width="30" height="15" transform="${transform}"/>`)).toEqual(expected);
    expect(box(`<g transform="${transform}"><g>${SQUARE}</g></g>`)).toEqual(expected);
  });

  test.each(['rotate(1 2)', 'turn(3)', 'scale(a)', 'translate(1', 'matrix(1 2 3)', 'rotate(4) x'])(
    '%s is refused',
    transform => {
      expect(() => readSvg(drawing(`<g transform="${transform}">${SQUARE}</g>`))).toThrow(
        /transform is .*; allowed: a list of matrix/,
      );
    },
  );

  test('groups in groups multiply from the outside in', () => {
    const nested = `<g transform="translate(10 0)"><g transform="rotate(90)"><g transform="scale(2)">${SQUARE}</g></g></g>`;
    expect(box(nested)).toEqual([-60, 20, -30, 80]);
    expect(box(`<g transform="translate(10 0) rotate(90) scale(2)">${SQUARE}</g>`)).toEqual([-60, 20, -30, 80]);
  });

  test('a circle turned, moved, mirrored and scaled evenly stays a true circle', () => {
    const circle = asCircle(
      only('<circle cx="3" cy="4" r="10" transform="translate(50 50) rotate(33) scale(-2 2)"/>').outer,
    )!;
    expect(circle.radius).toBeCloseTo(20, 9);
    const [c, s] = [Math.cos((33 * Math.PI) / 180), Math.sin((33 * Math.PI) / 180)];
    expect(circle.center.x).toBeCloseTo(50 - 6 * c - 8 * s, 9);
    expect(circle.center.y).toBeCloseTo(-(50 - 6 * s + 8 * c), 9);
  });

  // the area of an image is the area times the determinant
  test('a circle scaled unevenly or skewed is the ellipse it becomes', () => {
    expect(area(only('<circle cx="50" cy="50" r="10" transform="scale(1.5 .5)"/>'))).toBeCloseTo(Math.PI * 75, 0);
    expect(area(only('<circle cx="50" cy="50" r="10" transform="skewX(30)"/>'))).toBeCloseTo(Math.PI * 100, 0);
  });

  test('any path under any map: the judge’s points, mapped, lie on what was read', () => {
    const number = fc.integer({ min: -40, max: 40 }).map(n => n / 10);
    fc.assert(
      fc.property(fc.tuple(number, number, number, number), fc.integer({ min: 0, max: 3 }), ([a, b, c, d], flags) => {
        fc.pre(Math.abs(a * d - b * c) > 0.3);
        const path = `M10 10a15 9 30 ${flags >> 1} ${flags & 1} 12 6q5 9 10 0s4 4 9 -3`;
        const { open, regions } = readSvg(drawing(`<path d="${path}" transform="matrix(${a} ${b} ${c} ${d} 5 6)"/>`));
        const edges = [...open.flatMap(polylineSegments), ...regions.flatMap(r => segments(r.outer))];
        const judge = new svgPathProperties(path);
        for (let k = 0; k <= 60; k++) {
          const p = judge.getPointAtLength((judge.getTotalLength() * k) / 60);
          const q = { x: a * p.x + c * p.y + 5, y: -(b * p.x + d * p.y + 6) };
          expect(Math.min(...edges.map(s => distanceToSegment(s, q)))).toBeLessThan(0.02);
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('shapes and structure', () => {
  test.each([
    ['<rect width="40" height="20" rx="5"/>', 800 - (4 - Math.PI) * 25],
    // larger than half a side: half a side
    ['<rect width="40" height="20" rx="99" ry="99"/>', Math.PI * 200],
    ['<ellipse cx="50" cy="50" rx="20" ry="10"/>', Math.PI * 200],
    ['<polygon points="0,0 30,0 30,40"/>', 600],
    ['<polyline points="0 0 30 0 30 40 0 0"/>', 600],
    ['<line x1="0" y1="0" x2="30" y2="0"/><path d="M30 0V40L0 0"/>', 600],
    ["<path d='M0 0H30V40Z' style='fill:none'/>", 600],
    ['<a><rect width="1in" height="10mm"/></a>', (96 * 96) / 2.54],
  ])('%s', (inner, expected) => {
    expect(Math.abs(area(only(inner)) - expected)).toBeLessThan(0.3);
  });

  test('use of a shape, a group and a symbol with a view box of its own', () => {
    const defs = `<defs><g id="pair">${SQUARE}</g><symbol id="s" viewBox="0 0 10 10"><rect width="10" height="5"/></symbol></defs>`;
    expect(box(`${defs}<use href="#pair" x="5" y="6" transform="scale(2)"/>`)).toEqual([30, 52, 90, 82]);
    expect(box(`${defs}<use xlink:href="#s" x="10" y="10" width="40" height="40"/>`)).toEqual([10, 10, 50, 30]);
    expect(box(`<svg x="10" y="10" width="50" height="50" viewBox="0 0 100 100">${SQUARE}</svg>`)).toEqual([
      15, 20, 30, 27.5,
    ]);
  });

  test.each([
    ['<text x="1">A</text>', 'text: no outline'],
    ['<image href="a.png"/><image href="b.png"/>', 'image: no outline (2 times)'],
    ['<g style="display: none">x<rect width="3" height="3"/></g>', 'g: not displayed'],
    ['<rect visibility="hidden" width="3" height="3"/>', 'rect: hidden'],
    ['<rect width="3" height="3" style="transform:rotate(3deg)"/>', 'rect: moved by its style, which is not read'],
    ['<g transform="scale(0)"><rect width="3" height="3"/></g>', 'g: a transform that leaves no area'],
    ['<style>rect { display: none }</style>', 'style: not read'],
    ['<use href="#away"/>', 'use of #away: not in the file'],
  ])('%s is left out and told', (inner, told) => {
    const read = readSvg(drawing(`${SQUARE}${inner}`));
    expect(read.regions).toHaveLength(1);
    expect(read.skipped).toEqual([told]);
  });

  test('a clipped shape is read whole, and that is told', () => {
    expect(readSvg(drawing('<g clip-path="url(#c)"><rect width="3" height="3"/></g>')).skipped).toEqual([
      'g with a clip-path: read whole',
    ]);
  });

  test.each([
    ['<svg><g></svg>', /<\/svg> where g is open/],
    ['<svg><g>', /g without an end/],
    ['plain words', /without an element/],
    ['<html/>', /an element html/],
    ['<svg viewBox="0 0 0 5"/>', /svg.viewBox is 0 0 0 5/],
    ['<svg width="wide"/>', /svg.width is wide/],
    ['<svg><rect width="50%" height="2"/></svg>', /rect.width is 50%/],
    ['<svg><polygon points="1 2 3"/></svg>', /polygon.points is 1 2 3/],
    ['<svg><path d="L 1 1"/></svg>', /M or m first/],
    ['<svg><g id="a"><use href="#a"/></g></svg>', /elements that use each other/],
  ])('%s is refused', (text, message) => {
    expect(() => readSvg(text)).toThrow(message);
  });

  test('every use doubling the one before it is stopped, not waited for', () => {
    const levels = Array.from(
      { length: 40 },
      (_, k) => `<g id="l${k + 1}"><use href="#l${k}"/><use href="#l${k}"/></g>`,
    );
    expect(() =>
      readSvg(drawing(`<defs><rect id="l0" width="2" height="2"/>${levels.join('')}</defs><use href="#l40"/>`)),
    ).toThrow(/more than 100000 shapes/);
  });
});
