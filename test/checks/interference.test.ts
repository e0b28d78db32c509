import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { withMates } from '../../lib/geometry/mates.js';
import { circle, reverse, solid } from '../../lib/geometry/outline.js';
import type { Model, Piece } from '../../lib/models/model.js';
import { inches } from '../../lib/units/length.js';
import { near } from '../close.js';
import { built, ferry, ferryWith } from '../models/ferry.js';
import { assembly, at, box, pocket, testPart } from './assemblies.js';

const block = testPart('block', box(0, 0, 40, 20));
const volume = (model: Model): number | string | undefined => interference(model)[0]?.value;

describe('lying pieces', () => {
  test('side by side, and one on the other, are disjoint', () => {
    const pieces = [at('block'), at('block', { x: 40 }), at('block', { z: 10 })];
    expect(interference(assembly([block], pieces))).toEqual([]);
  });

  test('two boxes that share 5 x 20 x 4 mm are told with place, area, heights and volume', () => {
    const [found, ...more] = interference(assembly([block], [at('block'), at('block', { x: 35, z: 6 })]));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: 'stop', rule: 'interference', where: 'block, block', limit: 0 });
    near(Number(found?.value), 400);
    expect(found?.message).toContain('piece 1 of 2');
    expect(found?.message).toContain('piece 2 of 2');
    expect(found?.message).toContain('at (37.5, 10) mm: 100 mm² from height 6 to 10 mm, 400 mm³');
  });

  test('turned pieces are compared where they are', () => {
    // the second lies the other way round, drawn back along the first until 37 of its 40 mm lie over it
    const pieces = [at('block', { turn: 1 }), { ...at('block', { turn: 1 + Math.PI }), ...along(1, 37, 20) }];
    near(Number(volume(assembly([block], pieces))), 37 * 20 * 10);
  });

  test('pairs that clash alike are told once, with their number', () => {
    const pieces = Array.from({ length: 6 }, (_, i) => at('block', { turn: i, ...along(i, 100, 0) }));
    const doubled = pieces.flatMap(p => [p, { ...p, z: 5 }]);
    const found = interference(assembly([block], doubled));
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain('6 pairs in all do');
  });

  test('half lapped bars share nothing; with their pockets on the same face they share the crossing', () => {
    const bar = testPart('bar', box(-50, -10, 50, 10), { features: [pocket('front', 5, box(-10, -10, 10, 10))] });
    const other = { ...bar, id: 'other', features: [pocket('back', 5, box(-10, -10, 10, 10))] };
    const crossing = [at('bar'), at('other', { turn: Math.PI / 2 })];
    expect(interference(assembly([bar, other], crossing))).toEqual([]);
    const same = [at('bar'), at('bar', { turn: Math.PI / 2 })];
    near(Number(volume(assembly([bar], same))), 20 * 20 * 5);
  });

  test('a pin in a hole shares nothing; one larger by 0.1 mm shares a ring', () => {
    const hole = { kind: 'drill', from: 'through', at: { x: 20, y: 10 }, diameter: 8, depth: 10 } as const;
    const plate = { ...block, features: [hole] };
    const pin = (r: number) => testPart('pin', solid(circle(r, { x: 20, y: 10 })));
    const pair = [at('block'), at('pin', { z: 2 })];
    expect(interference(assembly([plate, pin(4)], pair))).toEqual([]);
    near(Number(volume(assembly([plate, pin(4.1)], pair))), Math.PI * (4.1 * 4.1 - 16) * 8);
  });

  test('a press that is meant is let be, as far as it is meant', () => {
    const tagged = (radius: number) => withMates(circle(radius), 'plug', [0, 1]);
    const ring = testPart('ring', { outer: circle(50), openings: [reverse(tagged(20))] });
    const plug = testPart('plug', solid(tagged(20.05)));
    const pressed = (fit: number) => assembly([ring, plug], [at('ring'), at('plug')], { fits: { plug: fit } });
    expect(interference(pressed(-0.05))).toEqual([]);
    expect(interference(pressed(-0.02))).toHaveLength(1);
    near(Number(volume(pressed(0))), Math.PI * (20.05 * 20.05 - 400) * 10);
  });
});

const along = (turn: number, x: number, y: number): Pick<Piece, 'x' | 'y'> => ({
  x: Math.cos(turn) * x - Math.sin(turn) * y,
  y: Math.sin(turn) * x + Math.cos(turn) * y,
});

describe('standing pieces', () => {
  // a tab 20 wide and 10 high on a paddle 60 wide, 5 thick; the disc's slot lies under its front, y -5 to 0
  const tabbed = testPart(
    'paddle',
    solid([
      ...[
        [-10, 0],
        [10, 0],
        [10, 10],
        [30, 10],
        [30, 80],
        [-30, 80],
        [-30, 10],
        [-10, 10],
      ].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 })),
    ]),
    { thickness: 5 },
  );
  const slotted = (wide: number) =>
    testPart('disc', { outer: circle(100), openings: [reverse([...box(-wide / 2, -5, wide / 2, 0).outer])] });

  test('a tab through its slot shares nothing, at any turn', () => {
    for (const turn of [0, 0.3, 2]) {
      const pieces = [at('disc', { turn }), at('paddle', { turn, stands: true })];
      expect(interference(assembly([slotted(20), tabbed], pieces))).toEqual([]);
    }
  });

  test('a slot too short by 2 mm, and a paddle let in by 1 mm, share what they must', () => {
    const pieces = [at('disc'), at('paddle', { stands: true })];
    near(Number(volume(assembly([slotted(18), tabbed], pieces))), 2 * 5 * 10);
    const low = [at('disc'), at('paddle', { stands: true, z: -1 })];
    near(Number(volume(assembly([slotted(20), tabbed], low))), 40 * 5 * 1);
  });

  test('a pocket in a standing piece takes a shelf', () => {
    const cheek = testPart('cheek', box(0, 0, 50, 100), { features: [pocket('front', 4, box(10, 40, 50, 52))] });
    const shelf = testPart('shelf', box(10, -40, 50, -6), { thickness: 12 });
    const pair = (z: number) => assembly([cheek, shelf], [at('cheek', { stands: true }), at('shelf', { z })]);
    expect(interference(pair(40))).toEqual([]);
    near(Number(volume(pair(41))), 40 * 4 * 1);
  });

  test('a round standing piece through a plate with a round notch is looked at by heights', () => {
    const wheel = testPart('wheel', solid(circle(30)), { thickness: 6 });
    const plate = testPart('plate', box(-50, -50, 50, 50), { thickness: 8 });
    const found = volume(assembly([wheel, plate], [at('wheel', { stands: true, z: 30 }), at('plate')]));
    // a segment 8 mm high of a circle of radius 30 (Machinery's Handbook, "Areas and dimensions of plane figures"), 6 thick
    const segment = 900 * Math.acos(22 / 30) - 22 * Math.sqrt(900 - 22 * 22);
    near(Number(found), 6 * segment, 0.02);
  });

  const n = 12;
  const staves = (width: number, bevel = Math.PI / n): Model => {
    const stave = testPart('stave', box(-width / 2, 0, width / 2, 300), { thickness: 18, bevel });
    const inradius = 80 / 2 / Math.tan(Math.PI / n);
    return assembly(
      [stave],
      // its front looks outwards: down before it is turned, at the inradius
      Array.from({ length: n }, (_, i) => {
        const turn = (i * 2 * Math.PI) / n;
        return at('stave', { stands: true, turn, ...along(turn, 0, 18 - inradius) });
      }),
    );
  };

  test('a ring of 12 bevelled staves is disjoint; square ones, and wider ones, are not', () => {
    expect(interference(staves(80))).toEqual([]);
    const [square] = interference(staves(80, 0));
    expect(square?.message).toContain('pairs in all do');
    expect(interference(staves(80.2))[0]?.message).toContain('from height 0 to 300 mm');
  });

  test('bevelled parts lying side by side touch in front; 1 mm nearer they share a strip that narrows', () => {
    const slat = testPart('slat', box(-20, 0, 20, 100), { bevel: 0.02 });
    expect(interference(assembly([slat], [at('slat'), at('slat', { x: 40 })]))).toEqual([]);
    const mean = 1 - 10 * Math.tan(0.02);
    near(Number(volume(assembly([slat], [at('slat'), at('slat', { x: 39 })]))), 100 * 10 * mean);
  });
});

describe('a helm wheel', () => {
  test('the ferry helm is disjoint, with a tight wedge too', () => {
    expect(interference(built(ferry))).toEqual([]);
    expect(interference(built(ferryWith({ fit: { wedge: 0.2, lap: 0 } })))).toEqual([]);
  });

  test.each(['router', 'laser', 'hand'] as const)(
    'pressed laps and wedges are let be by %s, moved pieces are not',
    method => {
      const sheet = method === 'laser' ? { thickness: inches(0.75), stock: 'leaf' } : {};
      const rim = { ...ferry.rim, ...sheet };
      const spokes = { ...ferry.spokes, ...sheet };
      const wheel = built({ ...ferry, method, rim, spokes, fit: { lap: -0.1, wedge: -0.05 } });
      expect(interference(wheel)).toEqual([]);
      expect(interference({ ...wheel, fits: {} }).length).toBeGreaterThan(1);
      const [first, ...others] = wheel.pieces;
      expect(interference({ ...wheel, pieces: [{ ...first!, x: first!.x + 0.3 }, ...others] }).length).toBeGreaterThan(
        0,
      );
    },
  );

  test('a spoke moved by 1 mm is found, against felloe and neighbour, by name', () => {
    const wheel = built(ferry);
    const spoke = wheel.pieces.findIndex(p => p.part === 'spoke');
    const moved = wheel.pieces.map((p, i) => (i === spoke ? { ...p, x: p.x + 1 } : p));
    const found = interference({ ...wheel, pieces: moved });
    const messages = found.map(f => f.message);
    expect(messages.some(m => m.includes('(spoke, piece 1 of 10)') && m.includes('(felloe'))).toBe(true);
    expect(messages.some(m => m.includes('(spoke, piece 1 of 10) and Spoke (spoke, piece'))).toBe(true);
    expect(found.every(f => f.level === 'stop')).toBe(true);
  });
});
