import { describe, expect, test } from 'vitest';
import { checkModel } from '../../lib/checks/index.js';
import { thinWalls } from '../../lib/cutting/checks/thin-wall.js';
import type { Finding } from '../../lib/findings/finding.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { cartWheel } from '../../lib/models/cart-wheel.js';
import type { CartWheelOptions } from '../../lib/models/cart-wheel-options.js';
import type { Model } from '../../lib/models/model.js';
import type { Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';

const stock = (name: string, thickness: number, kind: Stock['kind'] = 'sheet'): Stock => ({
  name,
  kind,
  width: 1220,
  length: 2440,
  thickness,
  true: 0,
  margin: 5,
});
const STOCK = [stock('plank', 19, 'board'), stock('batten', 19, 'board'), stock('ply', 19), stock('thin', 6)];

/** The fish cart's wheel. */
const fishCart: CartWheelOptions = {
  rim: { outside: 720, band: 64, stock: 'plank' },
  spokes: {
    count: 12,
    width: 36,
    taper: 8,
    tenon: { width: 22 },
    tongue: { width: 18, length: 36 },
    stock: 'batten',
  },
  nave: { diameter: 160, length: 133, bore: { bearing: '6202' }, stock: 'ply' },
  tyre: { thickness: 5 },
  cap: { diameter: 110, stock: 'ply' },
  method: 'router',
};

type Change = { readonly [K in keyof CartWheelOptions]?: Partial<CartWheelOptions[K]> | string };

/** The fish cart's wheel with some options changed, one level deep. */
function changed(change: Change, from = fishCart): CartWheelOptions {
  const rows = Object.entries(change).map(([key, value]) => {
    const own = from[key as keyof CartWheelOptions];
    return [key, typeof own === 'object' && typeof value === 'object' ? { ...own, ...value } : value];
  });
  return { ...from, ...Object.fromEntries(rows) } as CartWheelOptions;
}

const lasered = changed({
  rim: { stock: 'thin' },
  spokes: { stock: 'thin' },
  nave: { stock: 'thin', length: 54, bore: { bearing: '6202', seat: 'through' } },
  cap: { stock: 'thin' },
  method: 'laser',
});
const { tongue: _, ...plainSpokes } = fishCart.spokes;
const byHand: CartWheelOptions = { ...fishCart, spokes: plainSpokes, method: 'hand' };

function built(options: CartWheelOptions): Model {
  const { value, findings } = cartWheel(options, STOCK);
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}

const partsOf = (m: Model, kind: string): Part[] => m.parts.filter(p => p.kind === kind);
const count = (m: Model, kind: string): number => partsOf(m, kind).reduce((sum, p) => sum + p.quantity, 0);
const figure = (m: Model, name: string): number | undefined => m.figures.find(f => f.name.includes(name))?.value;
const stopsOf = (options: CartWheelOptions): Finding[] =>
  cartWheel(options, STOCK).findings.filter(f => f.level === 'stop');

describe('the fish cart by router', () => {
  const wheel = built(fishCart);

  test('two spokes a felloe, two layers, seams a spoke apart and half way between spokes', () => {
    expect(count(wheel, 'felloe')).toBe(12);
    const turns = (z: number): number[] =>
      wheel.pieces
        .filter(p => p.part.startsWith('felloe') && p.z === z)
        .map(p => Math.round(((p.turn * 180) / Math.PI) % 360));
    // a felloe's middle lies half way between its two spokes: its seams too
    for (const turn of [...turns(0), ...turns(19)]) expect(turn % 30).toBe(15);
    expect(turns(0).filter(t => turns(19).includes(t))).toEqual([]);
  });

  test('a tongue is captured between two pockets, each half as deep as it is thick', () => {
    const pockets = partsOf(wheel, 'felloe').flatMap(p => p.features.filter(f => f.kind === 'pocket'));
    expect(pockets.map(p => p.depth)).toEqual([9.5, 9.5, 9.5, 9.5]);
    expect(new Set(pockets.map(p => p.face))).toEqual(new Set(['front', 'back']));
    expect(bounds(partsOf(wheel, 'spoke')[0]!.region.outer).maxX).toBeCloseTo(332, 9);
  });

  test('seven discs, the middle one with mortises; bearings in the outermost', () => {
    expect(count(wheel, 'nave-disc')).toBe(7);
    const mortised = wheel.parts.find(p => p.id === 'nave-mortise')!;
    const zs = wheel.pieces.filter(p => p.part.startsWith('nave')).map(p => p.z);
    expect(zs.sort((a, b) => a - b)).toEqual([-47.5, -28.5, -9.5, 9.5, 28.5, 47.5, 66.5]);
    expect(wheel.pieces.find(p => p.part === mortised.id)?.z).toBe(9.5);
    const seats = partsOf(wheel, 'nave-disc').flatMap(p => p.features.filter(f => f.kind === 'pocket'));
    expect(seats.map(f => [f.face, f.depth])).toEqual([
      ['back', 11.5],
      ['front', 11.5],
    ]);
    expect(wheel.hardware.find(h => h.name === 'bearing 6202')?.quantity).toBe(2);
  });

  test('tyre, felloe and nave by closed formulas', () => {
    expect(figure(wheel, 'length of its strip')).toBeCloseTo(Math.PI * 725, 9);
    expect(figure(wheel, 'tyre, width')).toBe(38);
    expect(figure(wheel, 'over the tyre')).toBe(730);
    expect(figure(wheel, 'felloe, length')).toBeCloseTo(360, 9); // side of a hexagon: its circumradius
    expect(figure(wheel, 'felloe, width')).toBeCloseTo(360 - 148 * Math.sqrt(3), 9);
    expect(figure(wheel, 'nave, length')).toBe(133);
    expect(wheel.hardware.some(h => h.name.startsWith('strip, 5 mm thick, 38 mm wide, 2277.65 mm'))).toBe(true);
  });

  test('edges that meet another piece are tagged', () => {
    const mates = (kind: string): Set<string | undefined> =>
      new Set(partsOf(wheel, kind).flatMap(p => p.region.outer.map(v => v.mate)));
    expect(mates('spoke')).toEqual(new Set([undefined, 'mortise', 'tongue']));
    expect(mates('nave-disc')).toContain('mortise');
    expect(mates('felloe')).toContain('seam');
  });

  test('the wheel is told how to be put together, and passes every check', () => {
    expect(wheel.steps.join('\n')).toMatch(/feet into the mortises and tongues into their slots/);
    expect(checkModel(wheel).filter(f => f.level !== 'note')).toEqual([]);
  });
});

describe('by laser', () => {
  const wheel = built(lasered);

  test('three layers, the middle one cut through', () => {
    expect(count(wheel, 'felloe')).toBe(18);
    const features = wheel.parts.flatMap(p => p.features);
    expect(features.filter(f => f.kind === 'pocket')).toEqual([]);
    expect(features.filter(f => f.kind === 'drill' && f.from !== 'through')).toEqual([]);
    const byArea = partsOf(wheel, 'felloe').sort((a, b) => area(a.region) - area(b.region));
    expect(byArea.map(p => p.quantity)).toEqual([6, 12]);
    const middle = wheel.pieces.filter(p => p.part === byArea[0]!.id);
    expect(middle.map(p => p.z)).toEqual([6, 6, 6, 6, 6, 6]);
  });

  test('a bearing takes two whole discs of 6 mm', () => {
    const bores = partsOf(wheel, 'nave-disc').map(p => [bounds(p.region.openings[0]!).maxX * 2, p.quantity]);
    expect(bores.filter(([d]) => Math.abs(d! - 34.95) < 1e-9)).toEqual([[expect.closeTo(34.95, 9), 4]]);
  });

  test('spokes of three layers have their tongue on the middle one', () => {
    const thick = built(changed({ spokes: { thickness: 18 }, nave: { length: 66 } }, lasered));
    expect(count(thick, 'spoke')).toBe(36);
    expect(thick.parts.find(p => p.id === 'spoke-cheek')?.quantity).toBe(24);
    expect(checkModel(thick).filter(f => f.level === 'stop')).toEqual([]);
  });
});

describe('by hand', () => {
  const wheel = built(byHand);

  test('tongues are dowels, a third to a half of the thickness, half in each piece', () => {
    expect(wheel.hardware).toContainEqual(expect.objectContaining({ name: 'dowel, 8 mm, 48 mm long', quantity: 12 }));
    expect(wheel.settings).toContainEqual({ name: 'hole for a tongue, diameter', value: 8, unit: 'mm' });
    const spoke = partsOf(wheel, 'spoke')[0]!;
    expect(bounds(spoke.region.outer).maxX).toBeCloseTo(296, 9);
    expect(spoke.end?.holes).toHaveLength(1);
  });

  test('one layer of felloes, dowelled', () => {
    expect(count(wheel, 'felloe')).toBe(6);
    expect(wheel.hardware.some(h => /seam of the rim/.test(h.use))).toBe(true);
    expect(checkModel(wheel).filter(f => f.level === 'stop')).toEqual([]);
  });

  test('a thin rim is butted, with a warning', () => {
    const thin = changed({ rim: { stock: 'thin' }, spokes: { stock: 'thin' }, tyre: { thickness: 2 } }, byHand);
    expect(cartWheel(changed({ nave: { length: 44 } }, thin), STOCK).findings.map(f => f.rule)).toContain('nave-discs');
    const nave = { ...thin, nave: { ...thin.nave, stock: 'thin', length: 54, bore: 'none' as const } };
    expect(cartWheel(nave, STOCK).findings).toMatchObject([{ level: 'warn', rule: 'rim-seam' }]);
  });
});

test('foam and acrylic take neither screws nor dowels; foam has its own glue, and thick tongues', () => {
  const foam: Stock = { ...stock('foam', 19), species: 'extruded polystyrene' };
  const soft = { rim: { stock: 'foam' }, spokes: { stock: 'foam' }, nave: { stock: 'foam' }, cap: { stock: 'foam' } };
  const make = (o: CartWheelOptions) => cartWheel(o, [...STOCK, foam]);
  const names = make(changed(soft)).value!.hardware.map(h => h.name);
  expect(names).toContain('foam adhesive without solvents');
  expect(names.filter(name => /screw|wood glue/.test(name))).toEqual([]);
  const drilled = { ...soft, spokes: { stock: 'foam', tongue: { joint: 'drilled' as const } } };
  expect(make(changed(soft, byHand)).value).toBeDefined();
  expect(make(changed(drilled, byHand)).findings.map(f => [f.rule, f.where])).toContainEqual([
    'tongue-method',
    'spokes.tongue.joint',
  ]);
  const thin = changed({ ...soft, spokes: { stock: 'foam', tongue: { thickness: 8 } } });
  expect(make(thin).findings).toMatchObject([{ level: 'warn', rule: 'tongue-brittle', limit: 12 }]);
});

test('a cap on both faces; a hole where the axle comes out', () => {
  const holes = (o: CartWheelOptions): number[] =>
    built(o)
      .parts.filter(p => p.kind === 'hub-cap')
      .map(p => p.region.openings.length);
  expect(holes(changed({ cap: { faces: 'both' } }))).toEqual([1, 1]);
  expect(holes(changed({ cap: { faces: 'both', front: 'closed' } }))).toEqual([0, 1]);
  expect(holes(changed({ nave: { bore: { axle: 15 } }, turns: 'shaft', cap: { faces: 'both' } }))).toEqual([0, 1]);
  expect(holes(changed({ nave: { bore: 'none' }, cap: { faces: 'both' } }))).toEqual([0, 0]);
  expect(holes(changed({ cap: { faces: 'none' } }))).toEqual([]);
});

test('felloes by default: two spokes each where that makes three or more', () => {
  const felloes = (spokes: number): number => {
    const wheel = built(
      changed({ spokes: { count: spokes, width: 20, taper: 0, tenon: { width: 10 }, tongue: { width: 10 } } }),
    );
    return count(wheel, 'felloe') / 2;
  };
  expect([3, 4, 5, 6, 8, 14].map(felloes)).toEqual([3, 4, 5, 3, 4, 7]);
});

/** [what is asked for, rule, the plan's field, the limit where it is known by another way] */
const REFUSED: readonly (readonly [Change, string, string, number?])[] = [
  [{ rim: { felloes: 5 } }, 'felloe-share', 'rim.felloes'],
  // chord of 30 degrees on a radius of 80 mm, less 1 mm: 160 sin 15 deg = 41.41
  [{ spokes: { width: 45 } }, 'foot-crowding', 'spokes.width', 160 * 0.2588190451 - 1],
  [{ nave: { diameter: 590 } }, 'nave-rim', 'nave.diameter', 572],
  [{ spokes: { tenon: { width: 35 } } }, 'tenon-width', 'spokes.tenon.width', 34],
  [{ spokes: { tenon: { width: 22, length: 45 } } }, 'mortise-wall', 'spokes.tenon.length'],
  [
    { nave: { diameter: 100 }, spokes: { width: 24, taper: 0, tenon: { width: 22 } }, cap: { diameter: 60 } },
    'mortise-wall',
    'nave.diameter',
  ],
  [{ nave: { length: 120 } }, 'nave-discs', 'nave.length', 95],
  [{ spokes: { thickness: 14 }, nave: { stock: 'thin', length: 62 } }, 'nave-discs', 'spokes.thickness', 12],
  [{ turns: 'shaft' }, 'turning', 'turns'],
  [{ nave: { bore: 'none' }, turns: 'bearing' }, 'turning', 'turns'],
  [{ spokes: { tongue: { width: 27 } } }, 'tongue-width', 'spokes.tongue.width', 26],
  [{ spokes: { tongue: { width: 18, length: 60 } } }, 'tongue-length', 'spokes.tongue.length'],
  [{ rim: { band: 5 } }, 'rim-band', 'rim.band'],
  [{ rim: { seam: { at: 'under-spokes' } } }, 'tongue-seam', 'rim.seam.at'],
  [{ rim: { layers: 1 } }, 'tongue-layers', 'rim.layers'],
  [{ spokes: { tongue: { thickness: 20 } } }, 'tongue-thickness', 'spokes.tongue.thickness', 19],
  [{ tyre: { thickness: 2, width: 60 } }, 'tyre-width', 'tyre.width', 38],
  [{ cap: { diameter: 40 } }, 'hub-cap', 'cap.diameter', 34.95 + 12],
  [{ cap: { diameter: 200 } }, 'hub-cap', 'cap.diameter', 160],
  [{ edges: { rim: { radius: 12 } } }, 'edge-radius', 'edges.rim.radius', 9.5],
  [{ rim: { thickness: 30 } }, 'stock-thickness', 'rim.thickness', 38],
  [{ nave: { length: 57, stock: 'thin' }, spokes: { thickness: 18 } }, 'nave-discs', 'nave.length'],
];

test.each(REFUSED.map(([change, rule, where, limit]) => ({ change, rule, where, limit })))(
  '$change is stopped: $rule at $where',
  ({ change, rule, where, limit }) => {
    const found = stopsOf(changed(change)).find(f => f.rule === rule && f.where === where);
    expect(found?.message).toMatch(new RegExp(`^${where.replaceAll('.', '\\.')} is .+allowed: `));
    if (limit !== undefined) expect(found?.limit).toBeCloseTo(limit, 6);
  },
);

test.each<readonly [string, CartWheelOptions, string, string]>([
  [
    'drilled tongues',
    changed({ spokes: { tongue: { joint: 'drilled' } } }, lasered),
    'tongue-method',
    'spokes.tongue.joint',
  ],
  [
    'a seat that ends in a disc',
    changed({ nave: { bore: { bearing: '6202', seat: 'shoulder' } } }, lasered),
    'bearing-seat',
    'nave.bore.seat',
  ],
  ['two layers', changed({ rim: { layers: 2 }, nave: { length: 60 } }, lasered), 'tongue-layers', 'rim.layers'],
  ['half a sheet', changed({ rim: { thickness: 20 } }, lasered), 'laser-layers', 'rim.thickness'],
  ['a nave too short for its bearings', changed({ nave: { length: 18 } }, lasered), 'bearing-seat', 'nave.length'],
])('a laser is refused %s', (_, options, rule, where) => {
  expect(stopsOf(options).map(f => [f.rule, f.where])).toContainEqual([rule, where]);
});

test('limits allow what they say', () => {
  const width = 160 * Math.sin(Math.PI / 12) - 1;
  expect(stopsOf(changed({ spokes: { width, taper: 10 } }))).toEqual([]);
  expect(stopsOf(changed({ spokes: { width: width + 0.01, taper: 10 } }))).not.toEqual([]);
  const tenon = (length: number) => changed({ spokes: { tenon: { width: 22, length } } });
  const most = stopsOf(tenon(60)).find(f => f.rule === 'mortise-wall')!.limit as number;
  expect(stopsOf(tenon(most))).toEqual([]);
  const tongue = (length: number) => changed({ spokes: { tongue: { width: 18, length } } });
  const longest = stopsOf(tongue(64)).find(f => f.rule === 'tongue-length')!.limit as number;
  expect(stopsOf(tongue(longest))).toEqual([]);
});

test('numbers out of their ranges, and names nobody knows, are refused', () => {
  for (const change of [
    { rim: { outside: Number.NaN } },
    { rim: { band: 400 } },
    { rim: { stock: 'gold' } },
    { spokes: { count: 2 } },
    { spokes: { taper: 50 } },
    { nave: { bore: { axle: -4 } } },
    { nave: { bore: { bearing: '1' } } },
    { tyre: { thickness: 0 } },
    { fit: { tongue: Infinity } },
  ])
    expect(() => cartWheel(changed(change as Change), STOCK)).toThrow(Unusable);
});

// least.wall is 2 mm unless the plan says otherwise
test.each([8, 10, 12, 14])(
  'default fingers of a wheel of %i spokes leave walls of 2 mm beside tongues and pins',
  count => {
    for (const layers of [2, 4])
      for (const felloes of [count, count / 2]) {
        const rim = { layers, felloes, seam: { joint: 'finger' } } as const;
        const { value, findings } = cartWheel(changed({ rim, spokes: { count }, nave: { diameter: 220 } }), STOCK);
        expect(findings.filter(f => f.level === 'stop')).toEqual([]);
        const felloe = value!.parts.filter(p => p.id.startsWith('felloe'));
        expect(felloe.length).toBeGreaterThan(0);
        expect(felloe.flatMap(p => thinWalls(p, 2))).toEqual([]);
      }
  },
);
