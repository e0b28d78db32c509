import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { ringLayout } from '../../lib/models/ring/layout.js';
import { ring } from '../../lib/models/ring.js';
import type { RingOptions } from '../../lib/models/ring-options.js';
import { relative } from '../../lib/models/seams.js';
import type { Stock } from '../../lib/stock/stock.js';
import { degrees } from '../../lib/units/length.js';
import { near } from '../close.js';

const stock = (thickness: number, kind: Stock['kind'] = 'board'): Stock => ({
  name: 'plank',
  kind,
  width: 300,
  thickness,
  length: 2400,
  true: 0,
  margin: 5,
});

const options = (change: Partial<RingOptions> = {}): RingOptions => ({
  inner: 230,
  outer: 330,
  pieces: 8,
  stock: stock(19),
  method: 'router',
  field: 'rim',
  ...change,
});
const annulus = Math.PI * (330 * 330 - 230 * 230);
const woodIn = (o: RingOptions): number =>
  ring(o).value.drafts.reduce((sum, d) => sum + area(d.part.region) * d.part.thickness, 0);
const stops = (o: RingOptions): string[] =>
  ring(o)
    .findings.filter(f => f.level === 'stop')
    .map(f => `${f.where} ${f.message}`);

describe('a full ring', () => {
  test('its felloes fill the annulus', () => near(woodIn(options()), annulus * 19));

  test('of layers is as thick as its stock times their number', () => {
    const o = options({ layers: 3, stock: stock(9) });
    expect(ring(o).value.thickness).toBe(27);
    near(woodIn(o), annulus * 27);
  });

  test('says how much glue holds a seam', () => {
    expect(ring(options()).value.figures).toEqual([
      { name: 'seam glue area', value: 1900, unit: 'mm2' },
      { name: 'seam long-grain share', value: 0, unit: 'share' },
      { name: 'seam strength proxy', value: 0, unit: 'mm2' },
      { name: 'strength of the wood along the ring, at a seam', value: expect.closeTo(0.2644, 4), unit: 'share' },
    ]);
    const sheet = ring(options({ stock: stock(19, 'sheet'), seam: { joint: 'finger' } })).value.figures;
    const [area, share, proxy, ...more] = sheet.map(f => f.value);
    near(proxy!, area! * share!);
    expect(more).toEqual([]);
  });

  test('the saw is set to where the ends lie: half a felloe from its middle, and half an overlap more where it is scarfed', () => {
    const settings = (joint: 'finger' | 'scarf') =>
      ring(options({ seam: { joint, ...(joint === 'scarf' && { overlap: degrees(20) }) } })).value.settings;
    const angle = (joint: 'finger' | 'scarf', name: string) =>
      settings(joint).find(s => s.name.startsWith(name))!.value;
    near(angle('finger', 'seam angle'), 22.5);
    near(angle('scarf', 'seam angle'), 32.5);
    near(angle('scarf', 'shoulder of a scarf'), 12.5);
  });

  test('a key for every seam, of one layer', () => {
    const keys = ring(options({ layers: 2, stock: stock(12), seam: { joint: 'key' } })).value.drafts.filter(
      d => d.part.kind === 'key',
    );
    expect(keys).toHaveLength(8);
    for (const key of keys) near(Math.hypot(key.x!, key.y!), 280);
    for (const key of keys) near(key.z, 24 - 4);
  });
});

describe('seams of neighbouring layers', () => {
  const layered = fc.record({
    pieces: fc.integer({ min: 3, max: 24 }),
    keep: fc.option(fc.integer({ min: 3, max: 36 }), { nil: undefined }),
    layers: fc.integer({ min: 2, max: 6 }),
    share: fc.double({ min: 0, max: 0.5, noNaN: true }),
  });

  test('keep the angle stated, whatever it is up to half a felloe', () => {
    fc.assert(
      fc.property(layered, ({ pieces, keep, layers, share }) => {
        const stagger = (share * 2 * Math.PI) / pieces;
        const o = options({ pieces, layers, seam: { stagger }, stock: stock(9), ...(keep !== undefined && { keep }) });
        const { seams } = ringLayout(o);
        seams.slice(1).forEach((own, i) => {
          for (const a of own)
            for (const b of seams[i]!) expect(Math.abs(relative(a, b))).toBeGreaterThanOrEqual(stagger - 1e-9);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('half a felloe is the most there is', () => {
    const found = stops(options({ layers: 2, seam: { stagger: degrees(23) } }));
    expect(found[0]).toMatch(/rim.seam.stagger is 23 deg; .* allowed: at most 22.5 deg, half a felloe/);
    expect(stops(options({ layers: 2, seam: { stagger: degrees(22.5) } }))).toEqual([]);
  });

  test('an eighth of a felloe unless stated', () => {
    const { seams } = ring(options({ layers: 4, keep: 11 })).value.layout;
    for (let i = 1; i < seams.length; i++)
      expect(Math.abs(relative(seams[i]![0]!, seams[i - 1]![0]!)) % degrees(45)).toBeGreaterThan(degrees(45) / 8);
  });

  test('by laser a scarf is the angle between them', () => {
    const o = options({
      method: 'laser',
      stock: stock(6, 'sheet'),
      thickness: 18,
      seam: { joint: 'scarf', overlap: degrees(10) },
    });
    expect(stops(o)).toEqual([]);
    const { seams } = ring(o).value.layout;
    near(Math.abs(relative(seams[1]![0]!, seams[0]![0]!)), degrees(10));
  });
});

describe('what crosses a ring', () => {
  const at = [0, 1, 2, 3, 4, 5].map(i => (i * Math.PI) / 3);
  const crossing = (low: number, high: number) => [{ at, width: 30, low, high }];

  test('leaves a pocket where it ends inside a layer, loose felloes where it takes a whole one', () => {
    const o = options({ layers: 2, stock: stock(12), keep: 6, pieces: 6, crossings: crossing(6, 24) });
    const { drafts } = ring(o).value;
    expect(drafts.filter(d => d.part.id === 'felloe-loose').map(d => d.z)).toEqual([12, 12, 12, 12, 12, 12]);
    const pockets = drafts.flatMap(d => d.part.features).filter(f => f.kind === 'pocket');
    expect(pockets.length).toBeGreaterThanOrEqual(6);
    for (const p of pockets) expect([p.face, p.depth]).toEqual(['front', 6]);
  });

  test('through the inside of a layer nothing passes; by laser nothing ends inside one', () => {
    expect(stops(options({ crossings: crossing(5, 10) }))[0]).toMatch(
      /rim.layers is 1; .* allowed: layers that end where it does/,
    );
    const laser = options({ method: 'laser', stock: stock(6, 'sheet'), thickness: 12, crossings: crossing(9, 12) });
    expect(stops(laser)[0]).toMatch(/a laser cuts through/);
  });
});

describe('an arc', () => {
  const arc = { from: -Math.PI / 2, sweep: Math.PI };

  test('is filled by its pieces, with a seam between every two', () => {
    const o = options({ arc, pieces: 4, seam: { joint: 'biscuit', size: '0' } });
    near(woodIn(o), (annulus * 19) / 2);
    const { value } = ring(o);
    expect(value.layout.seams[0]).toHaveLength(3);
    expect(value.hardware.find(h => h.name.startsWith('biscuit'))?.quantity).toBe(3);
  });

  test('in layers the staggered one begins and ends with half pieces', () => {
    const o = options({ arc, pieces: 4, layers: 2, stock: stock(12) });
    near(woodIn(o), (annulus * 24) / 2);
    const sweeps = ring(o).value.layout.pieces.map(p => Math.round((p.sweep * 1800) / Math.PI) / 10);
    expect(sweeps).toEqual([45, 45, 45, 45, 22.5, 45, 45, 45, 22.5]);
  });

  test('its outer ends are square whatever joins the others', () => {
    const { drafts } = ring(options({ arc, pieces: 2, seam: { joint: 'finger' } })).value;
    const tagged = drafts.map(d => d.part.region.outer.filter(v => v.mate === 'finger').length);
    expect(tagged[0]).toBe(tagged[1]);
    near(woodIn(options({ arc, pieces: 2, seam: { joint: 'finger' }, clearance: 0 })), (annulus * 19) / 2);
  });
});

describe('pins', () => {
  test('two or more in every piece of a ring of butted layers, clear of every seam', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 16 }), fc.integer({ min: 2, max: 4 }), (pieces, layers) => {
        const { value, findings } = ring(options({ pieces, layers, stock: stock(9) }));
        expect(findings).toEqual([]);
        for (const d of value.drafts)
          expect(d.part.features.filter(f => f.kind === 'drill').length).toBeGreaterThanOrEqual(2);
      }),
      { numRuns: 30 },
    );
  });
});

test('a laser needs whole layers of its sheet', () => {
  expect(stops(options({ method: 'laser', stock: stock(6, 'sheet'), thickness: 20 }))[0]).toMatch(
    /rim.thickness is 20 mm; .* allowed: 18 mm or 24 mm/,
  );
});
