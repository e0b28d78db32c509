import { describe, expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { type AccentPlaces, accentDrafts } from '../../lib/models/accents.js';
import type { AccentOptions } from '../../lib/models/accents-options.js';
import { helmWheel } from '../../lib/models/helm-wheel.js';
import { nameBand, withLetters, withText } from '../../lib/parts/name-band.js';
import type { Stock } from '../../lib/stock/stock.js';
import { near } from '../close.js';
import { ferry, ferryStock } from './ferry.js';

const thin: Stock = { name: 'thin', kind: 'sheet', length: 2440, width: 1220, thickness: 6, true: 0, margin: 5 };

/** A rim of 80 mm with eight crossings, its front at 20 mm. */
const places: AccentPlaces = {
  inner: 300,
  outer: 380,
  front: 20,
  crossings: Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4),
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
    // (5 + 1) letters x 0.95 x 30 mm on a circle of 340 mm: 28.8 degrees, and 4.2 for half a cap on either side
    expect(value.filter(d => d.part.kind === 'cap')).toHaveLength(7);
    expect(findings).toMatchObject([{ level: 'note', where: 'accents.caps' }]);
    const band = value.find(d => d.part.kind === 'name-band');
    near(area(band!.part.region), (((6 * 0.95 * 30) / 340) * (372 ** 2 - 308 ** 2)) / 2);
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
    ['stop accents.name.height', { name: { text: 'A'.repeat(40), height: 30, stock: 'thin' } }],
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
      withText(band, 'AB', { height: 20, place }).features.flatMap(f => (f.kind === 'label' ? [f] : []));
    const [a, b] = at('top');
    expect(a!.at.x).toBeLessThan(b!.at.x);
    near(a!.turn, -b!.turn);
    // at the bottom the band is turned half round: what is left there is right in its own frame
    const [c, d] = at('bottom');
    expect(c!.at.x).toBeGreaterThan(d!.at.x);
    near(Math.abs(c!.turn), Math.PI - (0.95 * 10) / 330, 1e-9);
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
