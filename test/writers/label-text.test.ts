import { describe, expect, test } from 'vitest';
import type { Drawing, TextLine } from '../../lib/drawings/drawing.js';
import { drawingExtent } from '../../lib/drawings/extent.js';
import { boundsOfAll, polylineBounds } from '../../lib/geometry/measure.js';
import { letter, letteringWidth } from '../../lib/parts/lettering/lettering.js';
import { writeDxf } from '../../lib/writers/dxf.js';
import { writeSvg } from '../../lib/writers/svg.js';
import { near } from '../close.js';

const line: TextLine = { text: 'helm-8 Ø 4°', at: { x: 30, y: 40 }, height: 6, turn: Math.PI / 6 };
const drawn = (...texts: TextLine[]): Drawing => ({
  title: 'labels',
  layers: [{ name: 'LABEL', closed: [], open: [], texts }],
});

describe('labels as text', () => {
  test('a TEXT is centred where the lines are, as high, turned in degrees', () => {
    // DXF reference, TEXT: 72 = 1 centred along, 73 = 2 half way up, on the alignment point 11/21
    for (const version of ['2007', 'r12'] as const) {
      const text = writeDxf(drawn(line), { version });
      const entity = text.slice(text.indexOf('\nTEXT\n'));
      for (const group of ['40\n6', '50\n30', '72\n1', '11\n30', '21\n40', '73\n2'])
        expect(entity).toContain(`\n${group}\n`);
    }
  });

  test('the older release has control codes and numbers for what is not ASCII', () => {
    expect(writeDxf(drawn(line))).toContain('\n1\nhelm-8 Ø 4°\n');
    expect(writeDxf(drawn(line), { version: 'r12' })).toContain('\n1\nhelm-8 \\U+00D8 4%%d\n');
  });

  test('what would be read as a control code is not', () => {
    expect(writeDxf(drawn({ ...line, text: '^A 5%%d' }))).toContain('\n1\n^ A 5%%%%%%d\n');
  });

  test('an SVG text is as wide as the lines would be, turned the other way, for y points down', () => {
    const svg = writeSvg(drawn({ ...line, text: 'a<b' }));
    expect(svg).toContain('<text x="30" y="-37" transform="rotate(-30 30 -40)" ');
    expect(svg).toContain('>a&lt;b</text>');
    near(Number(/textLength="([^"]+)"/.exec(svg)![1]), letteringWidth('a<b', 6), 1e-8);
  });

  test("the drawing's extent is that of the lines, to the width of a round letter's corner", () => {
    const lines = boundsOfAll(letter(line.text, line.at, line.height, line.turn).map(polylineBounds));
    const { minX, maxX, minY, maxY } = drawingExtent(drawn(line));
    near(minX, lines.minX, 2);
    expect(minX).toBeLessThanOrEqual(lines.minX);
    expect(maxX).toBeGreaterThanOrEqual(lines.maxX);
    expect(minY).toBeLessThanOrEqual(lines.minY);
    expect(maxY).toBeGreaterThanOrEqual(lines.maxY);
    expect(maxX - minX - (lines.maxX - lines.minX)).toBeLessThan(line.height);
  });

  test('a text of several lines is refused', () => {
    expect(() => writeDxf(drawn({ ...line, text: 'a\nb' }))).toThrow(/LABEL/);
  });
});
