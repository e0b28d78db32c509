import { describe, expect, test } from 'vitest';
import { checkModel } from '../../lib/checks/index.js';
import type { Outcome } from '../../lib/findings/finding.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { type AccentPlaces, accentDrafts, onRim } from '../../lib/models/accents.js';
import type { AccentOptions } from '../../lib/models/accents-options.js';
import { cableReel } from '../../lib/models/cable-reel.js';
import { cartWheel } from '../../lib/models/cart-wheel.js';
import { helmWheel } from '../../lib/models/helm-wheel.js';
import type { Model } from '../../lib/models/model.js';
import { prizeWheel } from '../../lib/models/prize-wheel.js';
import { ringFrame } from '../../lib/models/ring-frame.js';
import { stand } from '../../lib/models/stand.js';
import { waterWheel } from '../../lib/models/water-wheel.js';
import { nameBand, withLetters, withText } from '../../lib/parts/name-band.js';
import type { Stock } from '../../lib/stock/stock.js';
import { near } from '../close.js';
import { ferry, ferryStock } from './ferry.js';

const thin: Stock = { name: 'thin', kind: 'sheet', length: 2440, width: 1220, thickness: 6, true: 0, margin: 5 };

/** A rim of 80 mm with eight crossings, its front at 20 mm. */
const places: AccentPlaces = {
  ...onRim(
    { inner: 300, outer: 380, front: 20 },
    Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4),
  ),
  hub: { radius: 90, hole: 18, front: 40 },
};

const made = (o: AccentOptions) => accentDrafts(places, o, [thin]);
const stopsOf = (o: AccentOptions) => made(o).findings.map(f => `${f.level} ${f.where}`);

describe('accents', () => {
  test('a cap lies over every crossing, in the middle of the rim, on its front', () => {
    const { value, findings } = made({ caps: { diameter: 50, stock: 'thin' } });
    expect(findings).toEqual([]);
    expect(value).toHaveLength(8);
    for (const d of value) {
      near(Math.hypot(d.x ?? 0, d.y ?? 0), 340);
      expect(d.z).toBe(20);
      near(area(d.part.region), 625 * Math.PI);
    }
    // the second crossing, 45 degrees to the left of straight up
    near(value[1]?.x ?? 0, -340 * Math.SQRT1_2);
    near(value[1]?.y ?? 0, 340 * Math.SQRT1_2);
  });

  test('caps under the name band are left out, and that is said', () => {
    const { value, findings } = made({
      caps: { diameter: 50, stock: 'thin' },
      name: { text: 'FERRY', height: 30, stock: 'thin' },
    });
    // 92 wide where capitals are 21 high, and 30 mm free, on a circle of 340 mm: 27.2 degrees, and 4.2 for half a cap on either side
    expect(value.filter(d => d.part.kind === 'cap')).toHaveLength(7);
    expect(findings).toMatchObject([{ level: 'note', where: 'accents.caps' }]);
    const band = value.find(d => d.part.kind === 'name-band');
    near(area(band!.part.region), ((((92 / 21) * 30 + 30) / 340) * (372 ** 2 - 308 ** 2)) / 2);
    expect(band?.part.features).toHaveLength(5);
  });

  test('the ring lies on the front hub disc', () => {
    const { value } = made({ ring: { outside: 160, inside: 60, stock: 'thin' } });
    expect(value[0]).toMatchObject({ turn: 0, z: 40 });
    near(area(value[0]!.part.region), Math.PI * (80 ** 2 - 30 ** 2));
  });

  test.each<[string, AccentOptions]>([
    ['stop accents.caps.diameter', { caps: { diameter: 81, stock: 'thin' } }],
    ['stop accents.ring.outside', { ring: { outside: 181, inside: 60, stock: 'thin' } }],
    ['stop accents.ring.inside', { ring: { outside: 160, inside: 35, stock: 'thin' } }],
    ['stop accents.name.band', { name: { text: 'A', band: 81, stock: 'thin' } }],
    ['stop accents.name.height', { name: { text: 'A', height: 60, stock: 'thin' } }],
    ['stop accents.name.height', { name: { text: 'M'.repeat(40), height: 30, stock: 'thin' } }],
  ])('%s: it does not fit its place', (said, o) => {
    expect(stopsOf(o)).toEqual([said]);
  });

  test('a ring needs a front disc', () => {
    const { hub: _, ...rim } = places;
    const { findings } = accentDrafts(rim, { ring: { outside: 160, inside: 60, stock: 'thin' } }, [thin]);
    expect(findings).toMatchObject([{ level: 'stop', where: 'accents.ring' }]);
  });

  test('a helm wheel wears them on its trim and its hub', () => {
    const { value, findings } = helmWheel(
      {
        ...ferry,
        trim: { band: 50, segments: 5, stock: 'leaf' },
        accents: { caps: { diameter: 30, stock: 'leaf' }, ring: { outside: 150, inside: 60, stock: 'leaf' } },
      },
      ferryStock,
    );
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    const caps = value?.pieces.filter(p => p.part === 'cap') ?? [];
    expect(caps).toHaveLength(10);
    const trim = value?.parts.find(p => p.kind === 'trim-segment');
    expect(trim?.thickness).toBe(6.35);
    for (const c of caps) near(c.z, 19.05 + 6.35);
  });
});

describe('letters on a name band', () => {
  const band = nameBand({ inner: 300, outer: 360, sweep: 1, thickness: 6, stock: 'thin' });

  test('a text reads from left to right, upright at the top and at the bottom', () => {
    const at = (place: 'top' | 'bottom') =>
      withText(band, 'HH', { height: 20, place }).features.flatMap(f => (f.kind === 'label' ? [f] : []));
    const [a, b] = at('top');
    expect(a!.at.x).toBeLessThan(b!.at.x);
    near(a!.turn, -b!.turn);
    // at the bottom the band is turned half round: what is left there is right in its own frame
    const [c, d] = at('bottom');
    expect(c!.at.x).toBeGreaterThan(d!.at.x);
    // an H is 22 wide where capitals are 21 high
    near(Math.abs(c!.turn), Math.PI - ((22 / 21) * 10) / 330, 1e-9);
  });

  test('outlines of any font keep their area times the square of their scale, and stay where the text runs', () => {
    // a ring as an O, and a bar with a dot over it as an i: 20 mm high together
    const o = { outer: circle(10, { x: 10, y: 10 }), openings: [reverse(circle(6, { x: 10, y: 10 }))] };
    const i = [solid(rectangle(25, 0, 29, 14)), solid(circle(2, { x: 27, y: 18 }))];
    const part = withLetters(band, [o, ...i], { height: 30, depth: 2 });
    const pockets = part.features.flatMap(f => (f.kind === 'pocket' ? [f] : []));
    expect(pockets).toHaveLength(3);
    near(
      pockets.reduce((sum, p) => sum + area(p.area), 0),
      2.25 * (area(o) + i.reduce((sum, r) => sum + area(r), 0)),
    );
    // the bar and its dot stay in one line: turned back they have one middle
    const [bar, dot] = pockets.slice(1).map(p => {
      const angle = Math.atan2(p.area.outer[0]!.y, p.area.outer[0]!.x);
      return { angle, box: bounds(p.area.outer) };
    });
    expect(Math.abs(bar!.angle - dot!.angle)).toBeLessThan(0.03);
  });

  test('without a depth their outlines are marked; off the band they are refused', () => {
    const letter = solid(rectangle(0, 0, 10, 20));
    expect(withLetters(band, [letter], { height: 30 }).features).toMatchObject([{ kind: 'score', face: 'front' }]);
    expect(() => withLetters(band, [letter], { height: 80 })).toThrow(
      /height is 80 mm; allowed: letters that stay on the band/,
    );
    expect(() => withLetters(band, [], { height: 30 })).toThrow(/letters is none/);
  });
});

describe('accents of every model', () => {
  const ply: Stock = { name: 'ply', kind: 'sheet', length: 2440, width: 1220, thickness: 18, true: 0, margin: 5 };
  const stock = [ply, thin];
  const caps = { diameter: 30, stock: 'thin' } as const;
  const name = { text: 'FERRY', stock: 'thin' } as const;
  const method = 'router' as const;
  const disc = (outside: number, inside: number) => ({ outside, inside, stock: 'thin' });

  const cart = { rim: { outside: 600, band: 60, stock: 'ply' }, spokes: { count: 10, width: 34, stock: 'ply' } };
  const nave = { diameter: 160, bore: { axle: 20 }, stock: 'ply' };
  const mill = {
    rim: { outside: 700, band: 90, felloes: 6, stock: 'ply' },
    paddles: { count: 12, stock: 'ply' },
    spokes: { count: 6, width: 45, stock: 'ply' },
    hub: { diameter: 170, bore: { axle: 20 }, stock: 'ply' },
    axle: { length: 200 },
    method,
  };
  const fair = {
    face: { diameter: 600, stock: 'ply' },
    sectors: { count: 12 },
    flapper: { stock: 'thin' },
    hub: { diameter: 200, bore: { axle: 16 }, stock: 'ply' },
    plate: { stock: 'ply' },
    method,
  };
  const window = {
    ring: { outside: 500, band: 70, segments: 6, layers: 2, stock: 'ply' },
    mullions: { upright: 1, level: 1, width: 24, stock: 'ply' },
    method,
  };
  const arch = { ring: { outside: 900, band: 90, sweep: Math.PI, segments: 4, stock: 'ply' }, method };
  const reel = {
    flange: { diameter: 500, build: 'segments', stock: 'ply' },
    core: { diameter: 240, staves: 10, length: 250, stock: 'ply' },
    rods: { count: 4, diameter: 8 },
    bore: { axle: 30 },
    method,
  } as const;
  const easel = {
    carries: { wheel: 'prize', diameter: 600, weight: 5 },
    axle: { height: 900, bore: { axle: 16 } },
    uprights: { stock: 'ply' },
    foot: { stock: 'ply' },
    method,
  } as const;

  test.each<[string, Outcome<Model | undefined>, Readonly<Record<string, number>>]>([
    [
      'cart wheel',
      cartWheel({ ...cart, nave, method, accents: { caps, name, ring: disc(120, 60) } }, stock),
      { cap: 9, 'name-band': 1, 'accent-ring': 1 },
    ],
    [
      'water wheel',
      waterWheel({ ...mill, accents: { caps, ring: disc(120, 60) } }, stock),
      { cap: 6, 'accent-ring': 1 },
    ],
    [
      'prize wheel',
      prizeWheel({ ...fair, accents: { name, ring: disc(120, 60) } }, stock),
      { 'name-band': 1, 'accent-ring': 1 },
    ],
    ['window', ringFrame({ ...window, accents: { caps, name } }, stock), { cap: 3, 'name-band': 1 }],
    ['arch', ringFrame({ ...arch, accents: { name } }, stock), { 'name-band': 1 }],
    [
      'reel',
      cableReel({ ...reel, accents: { name, ring: disc(60, 40) } }, stock),
      { 'name-band': 1, 'accent-ring': 1 },
    ],
  ])('a %s has them, each where nothing else is', (_, { value, findings }, counts) => {
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    const model = value!;
    for (const [kind, count] of Object.entries(counts))
      expect(model.parts.filter(p => p.kind === kind).reduce((sum, p) => sum + p.quantity, 0)).toBe(count);
    expect(checkModel(model).filter(f => f.level === 'stop')).toEqual([]);
    expect(model.steps.join(' ')).toContain('Glue the accents on last');
  });

  test.each<[string, Outcome<Model | undefined>]>([
    ['caps', prizeWheel({ ...fair, accents: { caps } }, stock)],
    ['name', waterWheel({ ...mill, accents: { name } }, stock)],
    ['ring', ringFrame({ ...window, accents: { ring: disc(120, 60) } }, stock)],
    ['caps', stand({ ...easel, accents: { caps } }, stock)],
  ])('%s where there is no place for them: a stop that says which models have one', (accent, { findings }) => {
    const found = findings.filter(f => f.level === 'stop');
    expect(found).toMatchObject([{ rule: 'accent-place', where: `accents.${accent}` }]);
    expect(found[0]!.message).toMatch(/allowed: left out, or one of .*helm-wheel/);
  });

  test('an arc has no bottom for a name', () => {
    const { findings } = ringFrame({ ...arch, accents: { name: { ...name, at: 'bottom' } } }, stock);
    expect(findings.filter(f => f.level === 'stop')).toMatchObject([{ where: 'accents.name.at', limit: 'top' }]);
  });
});
