import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { mating } from '../../lib/checks/mating.js';
import { woodVolume } from '../../lib/checks/wood-volume.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveRegion } from '../../lib/geometry/motion.js';
import type { Model } from '../../lib/models/model.js';
import { widestMullion } from '../../lib/models/ring-frame/mullion-limits.js';
import { ringFrame } from '../../lib/models/ring-frame.js';
import type { RingFrameOptions } from '../../lib/models/ring-frame-options.js';
import type { Part, Pocket } from '../../lib/parts/part.js';
import { partVolume } from '../../lib/parts/volume.js';
import type { Stock } from '../../lib/stock/stock.js';
import { degrees } from '../../lib/units/length.js';

const sheet = (name: string, thickness: number): Stock => ({
  name,
  kind: 'sheet',
  width: 1220,
  length: 2440,
  thickness,
  true: 0,
  margin: 5,
});
const stock = [sheet('thick', 27), sheet('ply', 18), sheet('strip', 15), sheet('leaf', 6)];

/** Inner radius 230, rebate to 240. */
const PORTHOLE: RingFrameOptions = {
  ring: { outside: 600, band: 70, segments: 6, stock: 'thick' },
  rebate: { width: 10, depth: 6 },
  mullions: { upright: 1, level: 1, width: 24, stock: 'strip' },
  method: 'router',
};
const LASER: RingFrameOptions = {
  ...PORTHOLE,
  ring: { ...PORTHOLE.ring, stock: 'leaf', layers: 5 },
  mullions: { ...PORTHOLE.mullions!, thickness: 12, stock: 'leaf' },
  method: 'laser',
};
const ARCH: RingFrameOptions = {
  ring: { outside: 1500, band: 120, sweep: degrees(180), segments: 4, stock: 'ply' },
  legs: { height: 1200 },
  method: 'hand',
};

function built(options: RingFrameOptions): Model {
  const { value, findings } = ringFrame(options, stock);
  if (!value || findings.some(f => f.level === 'stop')) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}

const partsOf = (model: Model, kind: Part['kind']): { readonly part: Part; readonly z: number }[] =>
  model.pieces
    .map(piece => ({ part: model.parts.find(p => p.id === piece.part)!, z: piece.z }))
    .filter(({ part }) => part.kind === kind);
const pockets = (part: Part): Pocket[] => part.features.filter((f): f is Pocket => f.kind === 'pocket');
const figure = (model: Model, name: string): number => model.figures.find(f => f.name === name)!.value;
const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0);
const ring = (outer: number, inner: number): number => Math.PI * (outer * outer - inner * inner);

/** Half a disc's part within h of a line through its centre: h sqrt(R² - h²) + R² asin(h / R); plane geometry. */
const half = (h: number, R: number): number => h * Math.sqrt(R * R - h * h) + R * R * Math.asin(h / R);
/** A notch of half width h, from the ring's inner edge to where the bar ends. */
const notch = (h: number, inner: number, end: number): number => half(h, end) - half(h, inner);

describe('a porthole on a router', () => {
  const model = built(PORTHOLE);
  const felloes = partsOf(model, 'felloe').map(f => f.part);

  test('rebate and notches take the step of the ring between them, each to its depth', () => {
    const rebates = felloes.flatMap(pockets).filter(p => p.depth === 6);
    const notches = felloes.flatMap(pockets).filter(p => p.depth === 21);
    expect(notches).toHaveLength(4);
    for (const n of notches) expect(area(n.area)).toBeCloseTo(notch(12.1, 230, 240), 6);
    expect(sum([...rebates, ...notches].map(p => area(p.area)))).toBeCloseTo(ring(240, 230), 5);
    const wood = ring(300, 230) * 27 - ring(240, 230) * 6 - 4 * notch(12.1, 230, 240) * 15;
    expect(sum(felloes.map(partVolume))).toBeCloseTo(wood, 3);
  });

  test('bars end half the fit off their notches: 2 (inner + hold) - fit over all', () => {
    expect(figure(model, 'mullion, upright, 0 mm from the middle, long')).toBeCloseTo(2 * 240 - 0.2, 9);
    const bars = partsOf(model, 'mullion');
    expect(bars.map(b => b.z)).toEqual([6, 6]);
    for (const { part } of bars) expect(area(part.region)).toBeCloseTo(2 * half(12, 239.9), 6);
    expect(bars.map(b => pockets(b.part)[0]!.face)).toEqual(['back', 'front']);
  });

  test('the pane is 2 (inner + rebate) less its fit; a felloe needs a board of chord and sagitta', () => {
    expect(model.hardware.map(h => h.name)).toContain('pane, round, 478 mm');
    // radius 1, 60 degrees: chord 1.0000, height 0.13397 (Machinery's Handbook, segments of circles)
    expect(figure(model, 'board of a felloe, long')).toBeCloseTo(300 * 1, 9);
    expect(figure(model, 'board of a felloe, wide')).toBeCloseTo(70 + 230 * 0.13397, 2);
    const { minX, maxX, minY, maxY } = bounds(felloes[0]!.region.outer);
    expect([maxX - minX, maxY - minY]).toEqual([
      expect.closeTo(figure(model, 'board of a felloe, long'), 9),
      expect.closeTo(figure(model, 'board of a felloe, wide'), 9),
    ]);
  });

  test('seams keep as far from the bars as they can: 15 degrees, with four notches and six felloes', () => {
    const seams = model.pieces.filter(p => p.part.startsWith('felloe')).map(p => p.turn + Math.PI / 6);
    const quarter = Math.PI / 2;
    const apart = seams.map(seam => Math.abs(seam - quarter * Math.round(seam / quarter)));
    expect(Math.min(...apart)).toBeCloseTo(degrees(15), 9);
  });
});

describe('by laser', () => {
  const model = built(LASER);

  test('the back layer is narrower by the rebate, two layers are notched through, the others whole', () => {
    const at = (z: number): number =>
      sum(
        partsOf(model, 'felloe')
          .filter(f => f.z === z)
          .map(f => area(f.part.region)),
      );
    expect(at(0)).toBeCloseTo(ring(300, 240), 5);
    for (const z of [6, 12]) expect(at(z)).toBeCloseTo(ring(300, 230) - 4 * notch(12.1, 230, 240), 5);
    for (const z of [18, 24]) expect(at(z)).toBeCloseTo(ring(300, 230), 5);
    expect(model.parts.flatMap(pockets)).toEqual([]);
  });

  test('bars are layers: level ones run through behind, uprights in front', () => {
    const bars = partsOf(model, 'mullion').map(({ part, z }) => `${z} ${part.name.replace(/ [AB]$/, '')}`);
    expect(bars.sort()).toEqual([
      '12 Mullion, level, piece',
      '12 Mullion, level, piece',
      '12 Mullion, upright',
      '6 Mullion, level',
      '6 Mullion, upright, piece',
      '6 Mullion, upright, piece',
    ]);
    const behind = partsOf(model, 'mullion').filter(b => b.z === 6);
    const wood = 4 * half(12, 239.9) - 24.15 * 24;
    expect(sum(behind.map(b => area(b.part.region)))).toBeCloseTo(wood, 5);
  });
});

describe('an arch on legs', () => {
  const model = built(ARCH);
  const felloes = partsOf(model, 'felloe').map(f => f.part);

  test('is half a ring and two legs; over all it is as high as its radius and its legs', () => {
    expect(sum(felloes.map(p => area(p.region)))).toBeCloseTo(ring(750, 630) / 2 + 2 * 120 * 1200, 5);
    expect(figure(model, 'overall height')).toBe(1950);
    expect(figure(model, 'opening, wide')).toBeCloseTo(1260, 9);
  });

  test.each([110, 145, 180, 225])('of %d degrees stands on level feet, apart', sweep => {
    const legs = sweep > 180 ? { height: 300 } : { height: 800 };
    const arch = built({ ...ARCH, ring: { ...ARCH.ring, sweep: degrees(sweep) }, legs });
    const placed = arch.pieces.map(p => moveRegion(arch.parts.find(part => part.id === p.part)!.region, p));
    const all = placed.flatMap(r => [...r.outer]);
    const low = Math.min(...all.map(v => v.y));
    // two corners of each foot
    expect(all.filter(v => v.y < low + 1e-6)).toHaveLength(4);
    const high = Math.max(...placed.map(r => bounds(r.outer).maxY));
    expect(high - low).toBeCloseTo(figure(arch, 'overall height'), 6);
    const wide = Math.max(...placed.map(r => bounds(r.outer).maxX)) * 2;
    expect(wide).toBeCloseTo(figure(arch, 'overall width'), 6);
    expect([...interference(arch), ...mating(arch)]).toEqual([]);
  });

  test('its rebate runs down the legs: (R² - r²) pi / 2 + 2 width height', () => {
    const glazed = built({ ...ARCH, rebate: { width: 12, depth: 6 } });
    const cut = partsOf(glazed, 'felloe').flatMap(f => pockets(f.part));
    expect(sum(cut.map(p => area(p.area)))).toBeCloseTo(ring(642, 630) / 2 + 2 * 12 * 1200, 5);
    expect(glazed.hardware[0]!.name).toBe('pane, arched, 1282 mm wide, 1841 mm high, radius 641 mm');
  });
});

describe('nothing takes the same room, no wood is lost', () => {
  const many = { upright: 3, level: 2, width: 18, stock: 'strip' };
  test.each<[string, RingFrameOptions]>([
    ['three by two bars', { ...PORTHOLE, mullions: many }],
    ['bars without a rebate', { ring: PORTHOLE.ring, mullions: many, method: 'hand' }],
    ['bars of one direction', { ...PORTHOLE, mullions: { level: 4, width: 18, stock: 'strip' } }],
    ['a fit that presses', { ...PORTHOLE, fit: { lap: -0.1, mullion: -0.1 } }],
    ['by laser', LASER],
    ['by laser, pressed', { ...LASER, fit: { lap: -0.1, mullion: -0.1 } }],
    ['by laser, three by two', { ...LASER, mullions: { ...many, thickness: 12, stock: 'leaf' } }],
    [
      'two layers, a rebate through one',
      {
        ...PORTHOLE,
        ring: { ...PORTHOLE.ring, stock: 'ply', layers: 2 },
        rebate: { width: 12, depth: 18 },
        mullions: { ...many, stock: 'leaf' },
      },
    ],
    ['fingers', { ...PORTHOLE, ring: { ...PORTHOLE.ring, seam: { joint: 'finger' } } }],
    ['scarfs', { ...PORTHOLE, ring: { ...PORTHOLE.ring, segments: 4, seam: { joint: 'scarf' } } }],
    ['a scarfed ring of two', { ...PORTHOLE, ring: { ...PORTHOLE.ring, segments: 2, seam: { joint: 'scarf' } } }],
    [
      'an arc of one felloe, layered',
      { ring: { ...ARCH.ring, sweep: degrees(100), segments: 1, layers: 3 }, method: 'hand' },
    ],
    [
      'a horseshoe, fingered layers',
      { ring: { ...ARCH.ring, sweep: degrees(350), layers: 2, seam: { joint: 'finger' } }, method: 'laser' },
    ],
  ])('%s', (_, options) => {
    const model = built(options);
    expect([...interference(model), ...woodVolume(model), ...mating(model)]).toEqual([]);
  });
});

describe('what cannot be built is a stop with a reason', () => {
  const ringOf = (change: Partial<RingFrameOptions['ring']>): Partial<RingFrameOptions> => ({
    ring: { ...PORTHOLE.ring, ...change },
  });
  const bars = (change: Partial<NonNullable<RingFrameOptions['mullions']>>): Partial<RingFrameOptions> => ({
    mullions: { ...PORTHOLE.mullions!, ...change },
  });
  test.each<[string, Partial<RingFrameOptions>, RingFrameOptions]>([
    ['ring-segments', ringOf({ segments: 1 }), PORTHOLE],
    ['rebate-width', { rebate: { width: 40, depth: 6 } }, PORTHOLE],
    ['rebate-pins', { ...ringOf({ layers: 2 }), rebate: { width: 20, depth: 6 } }, PORTHOLE],
    ['rebate-depth', { rebate: { width: 10, depth: 25 } }, PORTHOLE],
    ['rebate-layers', { rebate: { width: 10, depth: 8 } }, LASER],
    ['rebate-seam', { ring: { ...LASER.ring, seam: { joint: 'finger' } } }, LASER],
    [
      'rebate-seam',
      { ...ringOf({ seam: { joint: 'scarf' } }), rebate: { width: 10, depth: 12 }, ...bars({ stock: 'leaf' }) },
      PORTHOLE,
    ],
    [
      'layer-rest',
      { ...ringOf({ layers: 2, stock: 'ply' }), rebate: { width: 10, depth: 17 }, ...bars({ stock: 'leaf' }) },
      PORTHOLE,
    ],
    ['mullion-ring', ringOf({ sweep: degrees(200) }), PORTHOLE],
    ['mullion-count', bars({ upright: 0, level: 0 }), PORTHOLE],
    ['mullion-width', bars({ upright: 5, level: 5, width: 60 }), PORTHOLE],
    ['mullion-depth', bars({ stock: 'thick' }), PORTHOLE],
    ['mullion-hold', { rebate: { width: 2, depth: 6 } }, PORTHOLE],
    ['mullion-layers', { mullions: { ...LASER.mullions!, thickness: 15, stock: 'strip' } }, LASER],
    ['laser-laps', { mullions: { ...LASER.mullions!, thickness: 6 } }, LASER],
    ['mullion-fit', { fit: { lap: -5 } }, PORTHOLE],
    ['stock-thickness', bars({ thickness: 10 }), PORTHOLE],
    ['edge-radius', { edges: { ring: { radius: 8 } } }, PORTHOLE],
    ['ring-gap', ringOf({ sweep: degrees(359.9) }), PORTHOLE],
    ['leg-ring', { legs: { height: 100 } }, PORTHOLE],
    ['leg-lean', { ring: { ...ARCH.ring, sweep: degrees(60) } }, ARCH],
    ['leg-height', { ring: { ...ARCH.ring, sweep: degrees(260) } }, ARCH],
  ])('%s', (rule, change, base) => {
    const { value, findings } = ringFrame({ ...base, ...change }, stock);
    expect(value).toBeUndefined();
    expect(findings.filter(f => f.level === 'stop').map(f => f.rule)).toContain(rule);
    for (const f of findings) expect(f.message).toMatch(/allowed/);
  });

  test('an arc may be as wide as the stop says, and as small as 5 degrees', () => {
    const arc = (sweep: number, segments = 6): RingFrameOptions => ({
      ring: { ...PORTHOLE.ring, segments, sweep: degrees(sweep) },
      rebate: PORTHOLE.rebate!,
      method: 'router',
    });
    const most = ringFrame(arc(359.9), stock).findings.find(f => f.rule === 'ring-gap')?.limit as number;
    expect(most).toBeGreaterThan(359.7);
    expect(interference(built(arc(most)))).toEqual([]);
    for (const segments of [1, 2]) expect(interference(built(arc(5, segments)))).toEqual([]);
    expect(() => ringFrame(arc(4), stock)).toThrow('ring.sweep');
  });

  test('the width offered instead is the widest that builds', () => {
    const most = widestMullion({ inner: 230, fit: { lap: 0.15, pane: 2, mullion: 0.2 } }, 3, 3);
    const width = (w: number) => ringFrame({ ...PORTHOLE, ...bars({ upright: 3, level: 3, width: w }) }, stock);
    expect(width(most - 0.01).value && interference(width(most - 0.01).value!)).toEqual([]);
    expect(width(most + 0.01).findings.map(f => f.rule)).toContain('mullion-width');
    // the crossing's outer corner, (a + w / 2) sqrt(2) from the centre, a = R / 2
    expect((115 + (most + 0.2) / 2) * Math.SQRT2).toBeLessThanOrEqual(229 + 1e-9);
  });

  test('fingers longer than the opening is wide are refused', () => {
    const small = { outside: 270, band: 131, segments: 2, seam: { joint: 'finger' }, stock: 'leaf' } as const;
    const { findings } = ringFrame({ ring: small, method: 'hand' }, stock);
    expect(findings.map(f => [f.level, f.rule])).toContainEqual(['stop', 'finger']);
  });

  test('a seam in a notch is warned of', () => {
    const { findings } = ringFrame({ ...PORTHOLE, ...ringOf({ segments: 4, seam: { at: { angle: 0 } } }) }, stock);
    expect(findings.map(f => [f.level, f.rule])).toContainEqual(['warn', 'seam-notch']);
  });
});
