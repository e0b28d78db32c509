import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../lib/drawings/drawing.js';
import { length, signedArea } from '../../lib/geometry/measure.js';
import { arcVertices, circle, type Outline, rectangle, vertex } from '../../lib/geometry/outline.js';
import { ORIGIN } from '../../lib/geometry/point.js';
import { writeSvg } from '../../lib/writers/svg.js';
import { pathData } from '../../lib/writers/svg-path.js';
import { pathArea, pathLength, readSvg } from '../readers/svg.js';

const drawing = (closed: readonly Outline[], title = 'Test'): Drawing => ({
  title,
  layers: [{ name: 'OUTSIDE', closed, open: [] }],
});

describe('arcs', () => {
  // SVG 2, "The elliptical arc curve commands": sweep flag 1 is the direction of growing angles, clockwise on the screen
  test('an anticlockwise eighth of a circle of radius 12 from the right', () => {
    const eighth = [
      vertex({ x: 12, y: 0 }, Math.tan(Math.PI / 16)),
      vertex({ x: 12 * Math.SQRT1_2, y: 12 * Math.SQRT1_2 }),
    ];
    expect(pathData(eighth, false)).toBe('M 12 0 A 12 12 0 0 0 8.485281374 -8.485281374');
  });

  test('turned the other way it has the other flag', () => {
    const eighth = [
      vertex({ x: 12, y: 0 }, -Math.tan(Math.PI / 16)),
      vertex({ x: 12 * Math.SQRT1_2, y: -12 * Math.SQRT1_2 }),
    ];
    expect(pathData(eighth, false)).toBe('M 12 0 A 12 12 0 0 1 8.485281374 8.485281374');
  });

  test('a half circle is two quarters, since its centre hangs on the last digit of its radius', () => {
    expect(pathData([vertex({ x: 1, y: 0 }, 1), vertex({ x: -1, y: 0 })], true)).toBe(
      'M 1 0 A 1 1 0 0 0 0 -1 A 1 1 0 0 0 -1 0 Z',
    );
  });

  test('an outside reader finds the area and length of discs cut into 2 to 9 arcs, wherever they lie', () => {
    const place = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 9 }),
        fc.double({ min: 1, max: 900, noNaN: true }),
        place,
        place,
        (n, r, x, y) => {
          const turn = (2 * Math.PI) / n;
          const disc = Array.from({ length: n }, (_, i) => arcVertices({ x, y }, r, i * turn, turn)).flat();
          const area = pathArea(pathData(disc, true));
          expect(Math.abs(area / (Math.PI * r * r) - 1)).toBeLessThan(1e-6);
          expect(Math.abs(pathLength(pathData(disc, true)) / (2 * Math.PI * r) - 1)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  test('and of star-shaped outlines of lines and arcs', () => {
    const corner = fc.record({
      r: fc.double({ min: 50, max: 100, noNaN: true }),
      bulge: fc.double({ min: -1, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 12 }), corners => {
        const outline = corners.map(({ r, bulge }, i) => {
          const angle = (i * 2 * Math.PI) / corners.length;
          return vertex({ x: r * Math.cos(angle), y: r * Math.sin(angle) }, Math.abs(bulge) < 0.1 ? 0 : bulge);
        });
        const data = pathData(outline, true);
        expect(Math.abs(pathArea(data) - signedArea(outline))).toBeLessThan(1e-6 * 100 * 100);
        expect(Math.abs(pathLength(data) / length(outline) - 1)).toBeLessThan(1e-5);
      }),
    );
  });
});

describe('the file', () => {
  test('is as large as the drawing, in mm, one unit a millimetre, y turned over', () => {
    const text = writeSvg(drawing([rectangle(-10, 5, 30, 25)]));
    expect(text).toContain('width="40mm" height="20mm" viewBox="-10 -25 40 20"');
    expect(text).toContain('<path d="M -10 -5 L 30 -5 L 30 -25 L -10 -25 Z"/>');
  });

  test('joins the lines of a layer that comes again', () => {
    const text = writeSvg({
      title: 't',
      layers: [circle(1), circle(2), circle(3)].map((c, i) => ({
        name: i === 1 ? 'OUTSIDE' : 'INSIDE',
        closed: [c],
        open: [],
      })),
    });
    expect(text.match(/<g id="\w+"/g)).toEqual(['<g id="INSIDE"', '<g id="OUTSIDE"']);
    expect(text.match(/ r="\d"/g)).toEqual([' r="1"', ' r="3"', ' r="2"']);
  });

  test('has a group a layer, circles as circles, an exact colour and nothing filled', () => {
    const text = writeSvg({
      title: 'Two',
      layers: [
        { name: 'OUTSIDE', closed: [circle(5)], open: [] },
        { name: 'SCORE', closed: [], open: [[vertex(ORIGIN), vertex({ x: 3, y: 4 })]] },
      ],
    });
    expect(text).toBe(
      `<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="-5 -5 10 10">
<title>Two</title>
<g id="OUTSIDE" fill="none" stroke="#0072b2" stroke-width="0.25">
<circle cx="0" cy="0" r="5"/>
</g>
<g id="SCORE" fill="none" stroke="#e69f00" stroke-width="0.25">
<path d="M 0 0 L 3 -4"/>
</g>
</svg>
`,
    );
    expect([...readSvg(text).keys()]).toEqual(['OUTSIDE', 'SCORE']);
  });

  test('escapes its title', () => {
    const text = writeSvg(drawing([circle(1)], `Tom & Ann's <"wheel">`));
    expect(text).toContain('<title>Tom &amp; Ann&#39;s &lt;&quot;wheel&quot;&gt;</title>');
  });

  test.each(['A\nB', 'A\u0000'])('refuses the title %j', title => {
    expect(() => writeSvg(drawing([circle(1)], title))).toThrow(/title of a drawing/);
  });

  test('refuses numbers that are not finite', () => {
    expect(() => writeSvg(drawing([rectangle(0, 0, Number.NaN, 1)]))).toThrow('a coordinate is NaN');
  });
});
