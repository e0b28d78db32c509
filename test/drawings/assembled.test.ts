import { describe, expect, test } from 'vitest';
import { assembledPicture } from '../../lib/drawings/assembled.js';
import { frontedPieces } from '../../lib/drawings/front-view.js';
import { overall } from '../../lib/drawings/overall.js';
import { distinctEdges, placedPieces } from '../../lib/drawings/placed.js';
import { modelSlabs } from '../../lib/drawings/slabs.js';
import { INK, PLUG_TONE } from '../../lib/drawings/wood.js';
import { boundsOfAll, polylineBounds, signedArea } from '../../lib/geometry/measure.js';
import { type Outline, rectangle } from '../../lib/geometry/outline.js';
import { inches } from '../../lib/units/length.js';
import { writePicture } from '../../lib/writers/picture.js';
import { near } from '../close.js';
import { built, ferry, ferryWith } from '../models/ferry.js';

const plain = built(ferry);
const trimmed = built(
  ferryWith({
    trim: { faces: 'front', band: inches(2), segments: 5, stock: 'thin', plugs: { diameter: inches(3 / 8), each: 4 } },
  }),
);
const groups = (wheel = trimmed) => new Map(assembledPicture(wheel).groups.map(g => [g.name, g.shapes]));

describe('the assembled picture', () => {
  test('reaches as far as the tips: 41 in over them', () => {
    near(2 * overall(placedPieces(plain)).radius!, 41 * 25.4);
    const { box } = assembledPicture(plain);
    near(box.maxX - box.minX, 41 * 25.4 * 1.25);
  });

  test('of an odd number of spokes tells the diameter over the tips all the same', () => {
    const seven = built(ferryWith({ spokes: { count: 7 }, hub: { diameter: inches(9) } }));
    near(2 * overall(placedPieces(seven)).radius!, 41 * 25.4);
  });

  test('paints what lies in front over what lies behind: the rim and the spokes lapped into it, trim and disc over both', () => {
    const main = Math.max(...placedPieces(plain).map(p => p.high)) - inches(0.75);
    for (const p of placedPieces(trimmed)) {
      const front = ['trim-segment', 'hub-disc'].includes(p.part.kind) && p.low > 0;
      expect(p.low >= main - 1e-9).toBe(front);
    }
    expect([...groups().keys()]).toEqual([
      'extent',
      'ground',
      'prop',
      'laid-on',
      'hidden',
      'legend',
      'dimension',
      'title',
    ]);
  });

  test('leaves out of a felloe what is lapped into it: faces of the rim add up to its area', () => {
    const felloes = frontedPieces(placedPieces(plain), modelSlabs(plain)).filter(p => p.part.kind === 'felloe');
    const seen = felloes.flatMap(p => p.faces).flatMap(f => f.outlines);
    const whole = felloes.flatMap(p => p.outlines);
    const total = (outlines: readonly Outline[]) => outlines.reduce((sum, o) => sum + signedArea(o), 0);
    near(total(seen), total(whole), 1e-6);
    expect(felloes.flatMap(p => p.faces).some(f => f.sort === 'floor')).toBe(true);
  });

  test('has a shape for every piece and a plug in every counterbore', () => {
    const laidOn = groups().get('laid-on')!;
    const plugs = laidOn.filter(s => s.paint.fill === PLUG_TONE).flatMap(s => s.closed);
    expect(plugs).toHaveLength(5 * 4);
    // a shadow, five trim segments, a front disc
    expect(laidOn.filter(s => s.paint.fill !== PLUG_TONE)).toHaveLength(1 + 5 + 1);
  });

  test('dashes each seam once, where two felloes meet', () => {
    const [hidden] = groups(plain).get('hidden')!;
    expect(hidden!.paint.dashes?.length).toBe(2);
    const radial = hidden!.open.filter(line => {
      const [a, b] = [line[0]!, line[1]!];
      const [ra, rb] = [Math.hypot(a.x, a.y), Math.hypot(b.x, b.y)].sort((x, y) => x - y);
      return Math.abs(ra! - inches(15 - 4.25)) < 1e-6 && Math.abs(rb! - inches(15)) < 1e-6;
    });
    expect(radial).toHaveLength(5);
  });

  test('is the same bytes twice and has no text element and no font', () => {
    const text = writePicture(assembledPicture(trimmed));
    expect(writePicture(assembledPicture(trimmed))).toBe(text);
    expect(text).not.toMatch(/<text|font|style=/);
    expect(text).toContain('<title>Helm wheel</title>');
  });

  test('keeps its title inside the picture, however long', () => {
    const long = {
      ...plain,
      title: 'The long and winding title of a helm that sailed round the Horn twice before breakfast',
    };
    const picture = assembledPicture(long);
    const lettering = picture.groups.find(g => g.name === 'title')!.shapes.flatMap(s => s.open);
    const box = boundsOfAll(lettering.map(polylineBounds));
    expect(box.minX).toBeGreaterThan(picture.box.minX);
    expect(box.maxX).toBeLessThan(picture.box.maxX);
  });
});

test('edges that two outlines share are one', () => {
  const two = distinctEdges([rectangle(0, 0, 10, 10), rectangle(10, 0, 20, 10)]);
  expect(two).toHaveLength(7);
});

test('a picture is written in its own order, with what each shape is painted with', () => {
  const text = writePicture({
    title: 'A & B',
    box: { minX: -1, minY: -2, maxX: 3, maxY: 2 },
    background: 0xffffff,
    groups: [
      {
        name: 'one',
        shapes: [
          { closed: [rectangle(0, 0, 1, 1)], open: [], paint: { fill: INK, opacity: 0.5 } },
          {
            closed: [],
            open: [rectangle(0, 0, 1, 1).slice(0, 2)],
            paint: { stroke: 0xff, width: 0.25, dashes: [1, 0.5] },
          },
        ],
      },
    ],
  });
  expect(text).toBe(`<svg xmlns="http://www.w3.org/2000/svg" width="4mm" height="4mm" viewBox="-1 -2 4 4">
<title>A &amp; B</title>
<path d="M -1 2 L 3 2 L 3 -2 L -1 -2 Z" fill="#ffffff"/>
<g id="one" stroke-linecap="round" stroke-linejoin="round">
<path d="M 0 0 L 1 0 L 1 -1 L 0 -1 Z" fill="#4a3524" opacity="0.5"/>
<path d="M 0 0 L 1 0" fill="none" stroke="#0000ff" stroke-width="0.25" stroke-dasharray="1 0.5"/>
</g>
</svg>
`);
});
