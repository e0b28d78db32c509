import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { locate } from '../../lib/geometry/locate.js';
import { area } from '../../lib/geometry/measure.js';
import { movePoint } from '../../lib/geometry/motion.js';
import type { SeamOptions } from '../../lib/joints/seam-joint.js';
import { cableReel } from '../../lib/models/cable-reel.js';
import type { CableReelOptions } from '../../lib/models/cable-reel-options.js';
import type { Model } from '../../lib/models/model.js';
import type { Drill, Part } from '../../lib/parts/part.js';
import { staveSizes } from '../../lib/parts/stave.js';
import { partVolume } from '../../lib/parts/volume.js';
import type { Stock } from '../../lib/stock/stock.js';
import { degrees } from '../../lib/units/length.js';

const stock: readonly Stock[] = [
  { name: 'plank', kind: 'board', width: 200, length: 4000, thickness: 22, true: 0, margin: 5 },
  { name: 'sheet', kind: 'sheet', width: 1200, length: 2400, thickness: 6, true: 0, margin: 5 },
];

const REEL: CableReelOptions = {
  flange: { diameter: 720, pieces: 6, stock: 'plank' },
  battens: { width: 70, stock: 'plank' },
  core: { diameter: 360, staves: 12, length: 380, stock: 'plank' },
  rods: { count: 4, diameter: 10 },
  bore: { axle: 42 },
  method: 'router',
};

function built(options: CableReelOptions): Model {
  const { value, findings } = cableReel(options, stock);
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}

const kind = (model: Model, of: Part['kind']): Part[] => model.parts.filter(p => p.kind === of);
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const rulesOf = (options: CableReelOptions): string[] =>
  cableReel(options, stock).findings.map(f => `${f.level} ${f.rule}`);

describe('staves', () => {
  // regular polygon, Machinery's Handbook, "Areas and dimensions of plane figures": side = 2 r tan(180 deg / n) about an inscribed
  // circle of radius r, its mitre 180 deg / n. Eight sides about r = 12: side 9.94112550, mitre 22.5 deg.
  test('a core of eight sides, 24 mm across its flats', () => {
    const { outer, bevel } = staveSizes(24, 8, 3);
    expect(outer).toBeCloseTo(9.9411255, 7);
    expect(bevel).toBeCloseTo(degrees(22.5), 12);
  });

  test('six sides: across the flats 2 x 8.66025404 mm, side 10 mm (hexagon in a circle of 10 mm)', () => {
    expect(staveSizes(2 * 8.66025404, 6, 1).outer).toBeCloseTo(10, 7);
  });

  test('their sections fill the ring between two polygons, whatever their number', () => {
    for (const n of [4, 5, 7, 12, 31, 48]) {
      const { outer, inner } = staveSizes(300, n, 15);
      // area of a regular polygon: n r² tan(180 deg / n), r the inscribed circle's radius
      const ring = n * (150 * 150 - 135 * 135) * Math.tan(Math.PI / n);
      expect((n * (outer + inner) * 15) / 2).toBeCloseTo(ring, 6);
    }
  });

  test('a built reel holds that volume of staves', () => {
    const [stave, ...more] = kind(built(REEL), 'stave');
    expect(more).toEqual([]);
    expect(stave?.quantity).toBe(12);
    expect(stave?.bevel).toBeCloseTo(degrees(15), 12);
    const ring = 12 * (180 * 180 - 158 * 158) * Math.tan(degrees(15));
    expect(12 * partVolume(stave!)).toBeCloseTo(ring * 380, 3);
  });

  test('cut by laser they are square, as wide as the inner face, and the gap outside is 2 t sin(180 deg / n)', () => {
    const laser = built({ ...thin, method: 'laser' });
    const [stave] = kind(laser, 'stave');
    expect(stave?.bevel).toBeUndefined();
    expect(area(stave!.region)).toBeCloseTo((120 - 12) * Math.tan(degrees(18)) * 90, 6);
    // neighbours meet on the line between them: an outer corner lies t sin(18 deg) from it
    const [half, apothem] = [54 * Math.tan(degrees(18)), 60];
    const fromLine = apothem * Math.sin(degrees(18)) - half * Math.cos(degrees(18));
    expect(staveSizes(120, 10, 6).gap).toBeCloseTo(2 * fromLine, 9);
    expect(rulesOf({ ...thin, method: 'laser' })).toEqual(['warn stave-bevel']);
    expect(interference(laser)).toEqual([]);
  });
});

/** A small reel of one sheet. */
const thin: CableReelOptions = {
  flange: { diameter: 240, pieces: 5, stock: 'sheet' },
  core: { diameter: 120, staves: 10, length: 90, stock: 'sheet' },
  rods: { count: 3, diameter: 5 },
  method: 'hand',
};

describe('flanges of planks', () => {
  test.each([2, 3, 6, 7, 11])('%i planks are the circle less its bore', pieces => {
    const reel = built({ ...REEL, flange: { ...REEL.flange, pieces } });
    const planks = kind(reel, 'plank');
    const total = sum(planks.map(p => p.quantity * area(p.region)));
    expect(total).toBeCloseTo(2 * Math.PI * (360 * 360 - 21.25 * 21.25), 4);
    expect(sum(planks.map(p => p.quantity))).toBe(2 * pieces);
    expect(interference(reel)).toEqual([]);
  });

  test('a bore wider than a plank leaves it in two pieces', () => {
    const reel = built({ ...REEL, flange: { ...REEL.flange, pieces: 9 }, bore: { axle: 110 } });
    expect(sum(kind(reel, 'plank').map(p => p.quantity))).toBe(2 * (9 + 1));
    expect(sum(kind(reel, 'plank').map(p => p.quantity * area(p.region)))).toBeCloseTo(
      2 * Math.PI * (360 * 360 - 55.25 * 55.25),
      4,
    );
  });

  test('rods line up through both flanges, clear of seams and staves', () => {
    const reel = built(REEL);
    const holes = reel.pieces.flatMap(piece => {
      const part = reel.parts.find(p => p.id === piece.part)!;
      if (part.kind !== 'plank') return [];
      return part.features
        .filter((f): f is Drill => f.kind === 'drill')
        .map(f => ({ ...movePoint(f.at, piece), diameter: f.diameter, part, at: f.at }));
    });
    expect(holes).toHaveLength(8);
    const places = new Set(holes.map(h => `${h.x.toFixed(6)} ${h.y.toFixed(6)}`));
    expect(places.size).toBe(4);
    for (const h of holes) {
      expect(h.diameter).toBe(10.5);
      expect(Math.hypot(h.x, h.y) + 5.25).toBeLessThanOrEqual(158);
      expect(locate(h.part.region, h.at)).toBe('inside');
      // seams at every 120 mm
      for (const y of [-240, -120, 0, 120, 240]) expect(Math.abs(h.y - y)).toBeGreaterThanOrEqual(5.25 + 3);
    }
  });

  test('battens lie on the outer faces, over every plank', () => {
    const reel = built(REEL);
    const battens = reel.pieces.filter(p => p.part.startsWith('batten'));
    expect(battens.map(b => b.z).sort((a, b) => a - b)).toEqual([-22, -22, 424, 424]);
    const part = kind(reel, 'batten')[0]!;
    // corners on a circle 3 mm inside the flange; the outermost planks begin 240 mm from the middle
    const [corner] = part.region.outer;
    const x = Math.abs(battens[0]!.x);
    expect(Math.hypot(Math.abs(corner!.x), x + 35)).toBeCloseTo(357, 9);
    expect(Math.abs(corner!.x)).toBeGreaterThanOrEqual(246);
    expect(part.features.filter(f => f.kind === 'drill').length).toBeGreaterThanOrEqual(6);
  });
});

describe('flanges of segments', () => {
  const round = { diameter: 720, build: 'segments', stock: 'plank' } as const;
  test.each<[string, Partial<CableReelOptions>]>([
    ['butted', { flange: { ...round, pieces: 8 } }],
    ['on biscuits', { flange: { ...round, pieces: 6, seam: { joint: 'biscuit' } } }],
    ['fingered', { flange: { ...round, pieces: 5, seam: { joint: 'finger' } }, method: 'hand' }],
    ['in two layers', { flange: { ...round, pieces: 7, layers: 2 } }],
    [
      'in layers by laser',
      {
        ...thin,
        flange: { ...thin.flange, build: 'segments', pieces: 6, thickness: 12 },
        bore: { axle: 20 },
        method: 'laser',
      },
    ],
  ])('%s', (_, change) => {
    const { battens: __, ...bare } = REEL;
    const options = { ...bare, ...change };
    const { value, findings } = cableReel(options, stock);
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    const reel = value!;
    expect(interference(reel)).toEqual([]);
    const [outer, bore] = [options.flange.diameter / 2, (options.bore as { axle: number }).axle / 2 + 0.25];
    const layers = options.flange.layers ?? (options.method === 'laser' ? 2 : 1);
    const total = sum(kind(reel, 'felloe').map(p => p.quantity * area(p.region)));
    // fingers leave their clearance open
    const ring = 2 * layers * Math.PI * (outer * outer - bore * bore);
    expect(total / ring).toBeGreaterThan(options.flange.seam?.joint === 'finger' ? 0.99 : 1 - 1e-9);
    expect(total / ring).toBeLessThan(1 + 1e-9);
    const rods = sum(
      reel.parts
        .filter(p => p.kind === 'felloe')
        .map(
          p =>
            p.quantity *
            p.features.filter(f => f.kind === 'drill' && f.diameter === options.rods.diameter + 0.5).length,
        ),
    );
    expect(rods).toBe(2 * layers * options.rods.count);
  });

  test.each(['butt', 'biscuit', 'dowel', 'finger', 'key', 'scarf'] as const)('on %s seams of sizes left out', joint => {
    const { battens: _, ...bare } = REEL;
    for (const [pieces, layers, method] of [
      [8, 1, 'router'],
      [12, 1, 'hand'],
      [5, 2, 'router'],
    ] as const) {
      const flange = { ...round, pieces, layers, seam: { joint } };
      const { value, findings } = cableReel({ ...bare, flange, method }, stock);
      expect(findings.filter(f => f.level !== 'note').map(f => f.message)).toEqual([]);
      expect(interference(value!)).toEqual([]);
    }
  });

  test('rods that find no place for the sake of a joint blame its size, or the joint', () => {
    const { battens: _, ...bare } = REEL;
    const said = (seam: SeamOptions, count: number): string[] =>
      cableReel(
        { ...bare, flange: { ...round, pieces: 6, seam }, rods: { count, diameter: 20 }, bore: { axle: 140 } },
        stock,
      )
        .findings.filter(f => f.level === 'stop')
        .map(f => f.message);
    // twelve rods, 15 degrees off the seams on a circle of 145.75 mm at most, 37.7 mm off their lines: less half a hole and its wall, 22.3 mm; a little more between two dowels
    const deep = { joint: 'dowel', count: 8, depth: 40 } as const;
    expect(said(deep, 6)).toEqual([]);
    expect(said(deep, 12)).toEqual([
      expect.stringMatching(/^flange.seam.depth is 40 mm; no circle of 12 rods .*allowed: at most 24 mm/),
    ]);
    expect(said({ ...deep, depth: 24 }, 12)).toEqual([]);
    expect(said({ joint: 'dowel' }, 12)).toEqual([]);
  });

  test('rods lie on the largest circle there is', () => {
    const { battens: _, ...bare } = REEL;
    const { value } = cableReel({ ...bare, flange: { ...round, pieces: 8 } }, stock);
    // inside the staves, 2 mm off them: 180 - 22 - 10.5 / 2 - 2
    expect(value!.settings.find(s => s.name.startsWith('radius of the rods'))?.value).toBeCloseTo(150.75, 9);
  });

  test('need a bore, and no battens', () => {
    const { bore: _, battens: __, ...bare } = REEL;
    expect(rulesOf({ ...bare, flange: round })).toEqual(['stop segment-tip']);
    expect(rulesOf({ ...REEL, flange: round })).toEqual(['stop flange-build']);
  });
});

describe('what cannot be built is a stop with a reason', () => {
  test.each<[string, Partial<CableReelOptions>]>([
    ['stop flange-overhang', { flange: { ...REEL.flange, diameter: 370 } }],
    ['stop stave-thickness', { core: { ...REEL.core, diameter: 44 } }],
    ['stop bore-core', { bore: { axle: 320 } }],
    [
      'stop plank-width',
      { flange: { ...REEL.flange, diameter: 180, pieces: 24 }, core: { ...REEL.core, diameter: 120 } },
    ],
    ['stop bore-seam', { bore: { axle: 239 } }],
    ['stop rod-place', { rods: { count: 4, diameter: 60 } }],
    ['stop batten-place', { battens: { width: 200, count: 6 } }],
    ['stop stock-thickness', { core: { ...REEL.core, thickness: 30 } }],
    ['stop flange-build', { flange: { ...REEL.flange, layers: 2 } }],
  ])('%s', (rule, change) => {
    const { value, findings } = cableReel({ ...REEL, ...change }, stock);
    expect(value).toBeUndefined();
    const rules = findings.map(f => `${f.level} ${f.rule}`);
    expect(rules).toContain(rule);
    for (const f of findings) expect(f.message).toMatch(/allowed: /);
  });
});
