import { describe, expect, test } from 'vitest';
import { type Assembled, overlaps } from './solids.js';

type Vertex = readonly [x: number, y: number, bulge?: number];

/** The shortest DXF that holds closed outlines by layer. */
function dxf(layers: Readonly<Record<string, readonly (readonly Vertex[])[]>>): string {
  const lines: (string | number)[] = [0, 'SECTION', 2, 'ENTITIES'];
  for (const [layer, outlines] of Object.entries(layers))
    for (const outline of outlines) {
      lines.push(0, 'LWPOLYLINE', 8, layer, 90, outline.length, 70, 1);
      for (const [x, y, bulge = 0] of outline) lines.push(10, x, 20, y, 42, bulge);
    }
  return [...lines, 0, 'ENDSEC', 0, 'EOF', ''].join('\n');
}

const box = (x0: number, y0: number, x1: number, y1: number): Vertex[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
const disc = (r: number, x = 0, y = 0): Vertex[] => [
  [x + r, y, 1],
  [x - r, y, 1],
];

const files = new Map([
  ['parts/bar.dxf', dxf({ OUTSIDE: [box(-50, -10, 50, 10)], POCKET_5: [box(-10, -10, 10, 10)] })],
  ['parts/ring.dxf', dxf({ OUTSIDE: [disc(300)], INSIDE: [disc(100)] })],
  ['parts/core.dxf', dxf({ OUTSIDE: [disc(100)] })],
  ['parts/slab.dxf', dxf({ OUTSIDE: [box(-30, -30, 30, 30)], POCKET_4: [disc(12)] })],
  ['parts/slab-back.dxf', dxf({ 'POCKET_4-5': [disc(8, -15)] })],
  ['parts/peg.dxf', dxf({ OUTSIDE: [disc(8)] })],
]);
const parts = [
  { id: 'bar', thickness: 10 },
  { id: 'ring', thickness: 6 },
  { id: 'core', thickness: 6 },
  { id: 'slab', thickness: 12 },
  { id: 'peg', thickness: 4.5 },
];
type Entry = Assembled['assembly'][number];
const at = (part: string, over: Partial<Entry> = {}): Entry => ({
  part,
  turn: 0,
  x: 0,
  y: 0,
  z: 0,
  flipped: false,
  ...over,
});
const judge = (...assembly: Entry[]) => overlaps(files, { parts, assembly });

test('two bars half lapped share nothing; moved a twentieth of a millimetre they share two walls of 20 x 0.05 mm', () => {
  expect(judge(at('bar'), at('bar', { turn: 90, flipped: true }))).toEqual([]);
  const [found, ...more] = judge(at('bar'), at('bar', { turn: 90, flipped: true, x: 0.05 }));
  expect(more).toEqual([]);
  expect(found).toMatchObject({ a: 0, b: 1, area: 1 });
});

test('a bar that is not turned over shares its lap with the other', () => {
  const [found] = judge(at('bar'), at('bar', { turn: 90 }));
  expect(found?.area).toBeCloseTo(400, 6);
  expect(found?.z).toBeCloseTo(2.5, 9);
});

test('a core fits its ring at any turn, though the polygons that stand for their arcs cross; a core lifted halfway still does', () => {
  for (const turn of [0, 0.1, 17, 33.3, 90])
    expect(judge(at('ring'), at('core', { turn, z: turn > 20 ? 3 : 0 }))).toEqual([]);
});

test('a core 0.02 mm off centre does not fit its ring', () => {
  // two crescents, the overlapping one d * 2r = 0.02 * 200 mm² to first order
  const [found] = judge(at('ring'), at('core', { x: 0.02 }));
  expect(found?.area).toBeGreaterThan(3);
  expect(found?.area).toBeLessThan(5);
});

test('a pocket on the back is mirrored: the peg fits at +15, not at -15', () => {
  expect(judge(at('slab'), at('peg', { x: 15 }))).toEqual([]);
  expect(judge(at('slab'), at('peg', { x: -15 }))).toHaveLength(1);
});

test('a slab turned over takes the peg from above', () => {
  expect(judge(at('slab', { flipped: true }), at('peg', { x: -15, z: 7.5 }))).toEqual([]);
  expect(judge(at('slab', { flipped: true }), at('peg', { x: -15, z: 7.4 }))).toHaveLength(1);
});

test('pieces on top of each other touch and do not overlap', () => {
  expect(judge(at('ring'), at('core'), at('slab', { z: 6 }), at('peg', { z: 18 }))).toEqual([]);
});

describe('standing pieces', () => {
  const shelves = new Map([
    // a tab 20 wide and 10 high under a paddle 60 wide, its back at y = 0 once it stands, its front at -5
    [
      'parts/paddle.dxf',
      dxf({
        OUTSIDE: [
          [
            [-10, 0],
            [10, 0],
            [10, 10],
            [30, 10],
            [30, 80],
            [-30, 80],
            [-30, 10],
            [-10, 10],
          ],
        ],
      }),
    ],
    ['parts/disc.dxf', dxf({ OUTSIDE: [disc(100)], INSIDE: [box(-10, -5, 10, 0)] })],
    ['parts/cheek.dxf', dxf({ OUTSIDE: [box(0, 0, 50, 100)], POCKET_4: [box(10, 40, 50, 52)] })],
    ['parts/shelf.dxf', dxf({ OUTSIDE: [box(0, 0, 40, 34)] })],
    ['parts/stave.dxf', dxf({ OUTSIDE: [box(-40, 0, 40, 300)] })],
  ]);
  const sizes = [
    { id: 'paddle', thickness: 5 },
    { id: 'disc', thickness: 10 },
    { id: 'cheek', thickness: 10 },
    { id: 'shelf', thickness: 12 },
    { id: 'stave', thickness: 18, bevel: 15 },
  ];
  const stood = (part: string, over: Partial<Entry> = {}): Entry => at(part, { ...over, stands: true });
  const judged = (assembly: Entry[], bevel = 15) =>
    overlaps(shelves, { parts: sizes.map(p => (p.bevel ? { ...p, bevel } : p)), assembly });

  test('a tab fits its slot at any turn; let in by a tenth it overlaps by both shoulders', () => {
    for (const turn of [0, 30, 200]) expect(judged([at('disc', { turn }), stood('paddle', { turn })])).toEqual([]);
    const [found] = judged([at('disc'), stood('paddle', { z: -0.1 })]);
    expect(found?.area).toBeCloseTo(40 * 5, 3);
    expect(found?.z).toBeCloseTo(9.95, 6);
    expect(judged([at('disc'), stood('paddle', { y: 0.1 })])).toHaveLength(1);
  });

  test('a pocket in a standing piece takes a shelf, seen on either face', () => {
    const shelf = (y: number, z = 40) => at('shelf', { x: 10, y, z });
    expect(judged([stood('cheek'), shelf(-40)])).toEqual([]);
    expect(judged([stood('cheek'), shelf(-40, 41)])).toHaveLength(1);
    expect(judged([stood('cheek'), shelf(-4)])).toHaveLength(1);
    // its file shows the back: mirrored, the pocket opens to +y
    const turned = stood('cheek', { flipped: true, x: 60 });
    expect(judged([turned, shelf(-4)])).toEqual([]);
    expect(judged([turned, shelf(-40)])).toHaveLength(1);
  });

  test('twelve staves bevelled by 15 degrees close a ring; by 14 they do not fit', () => {
    const inradius = 40 / Math.tan(Math.PI / 12) - 18;
    const ring = Array.from({ length: 12 }, (_, i) => {
      const turn = (Math.PI * i) / 6;
      return stood('stave', { turn: 30 * i, x: inradius * Math.sin(turn), y: -inradius * Math.cos(turn) });
    });
    expect(judged(ring)).toEqual([]);
    expect(judged(ring, 14)).toHaveLength(12);
  });

  test('lying staves lean in towards their backs, whichever face their file shows', () => {
    const side = (over: Partial<Entry>) => judged([at('stave'), at('stave', over)]);
    expect(side({ x: 80 })).toEqual([]);
    expect(side({ x: 79 })).toHaveLength(1);
    // a strip at the front's height 1 mm wide, at the back's none: half a slab under the front it is nearly that
    expect(side({ x: 79 })[0]?.area).toBeGreaterThan(200);
    expect(side({ x: 79, flipped: true })[0]?.area).toBeGreaterThan(200);
  });
});

test('an island in a pocket stays standing', () => {
  const tray = new Map([
    ['parts/tray.dxf', dxf({ OUTSIDE: [box(-50, -50, 50, 50)], POCKET_5: [disc(40), disc(20)] })],
    ['parts/lid.dxf', dxf({ OUTSIDE: [disc(40)], INSIDE: [disc(20)] })],
    ['parts/plug.dxf', dxf({ OUTSIDE: [disc(15)] })],
  ]);
  const trays = ['tray', 'lid', 'plug'].map(id => ({ id, thickness: 10 }));
  const judged = (part: string) => overlaps(tray, { parts: trays, assembly: [at('tray'), at(part, { z: 5 })] });
  expect(judged('lid')).toEqual([]);
  expect(judged('plug')).toHaveLength(1);
});

test('a file that is not there is an error', () => {
  expect(() => overlaps(new Map(), { parts, assembly: [] })).toThrow('parts/bar.dxf');
});
