import { describe, expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import { segments } from '../../lib/geometry/segment.js';
import { type HelmWheel, helmWheel } from '../../lib/models/helm-wheel.js';
import type { HelmWheelOptions } from '../../lib/models/helm-wheel-options.js';
import type { Drill, Part, Pocket, Score } from '../../lib/parts/part.js';
import { inches } from '../../lib/units/length.js';
import { near } from '../close.js';
import { built, ferry, ferryStock, ferryWith, part } from './ferry.js';

const OUTER = inches(15);
const INNER = inches(10.75);
const WIDTH = inches(1.25);
const pockets = (p: Part): Pocket[] => p.features.filter(f => f.kind === 'pocket');
const drills = (p: Part): Drill[] => p.features.filter(f => f.kind === 'drill');
const scores = (p: Part): Score[] => p.features.filter(f => f.kind === 'score');

/** Half of a strip of width w through a circle's middle: its rectangle and a circular segment (Machinery's Handbook, circular segment). */
const halfStrip = (w: number, r: number): number => {
  const angle = 2 * Math.asin(w / 2 / r);
  return w * Math.sqrt(r * r - (w * w) / 4) + (r * r * (angle - Math.sin(angle))) / 2;
};

describe('rim', () => {
  test('felloes times their quantity fill the annulus', () => {
    const felloe = part(built(ferry), 'felloe');
    near(felloe.quantity * area(felloe.region), Math.PI * (OUTER * OUTER - INNER * INNER));
  });

  test('a lap is the strip between the two arcs, by the circular-segment formula; its walls are parallel, spoke and clearance apart', () => {
    const laps = pockets(part(built(ferry), 'felloe'));
    expect(laps).toHaveLength(2);
    for (const lap of laps) {
      near(area(lap.area), halfStrip(WIDTH + 0.15, OUTER) - halfStrip(WIDTH + 0.15, INNER));
      near(lap.depth, inches(0.375));
      expect(lap.face).toBe('front');
    }
  });

  test.each([
    [5, 10, 18],
    [6, 10, 6],
    [8, 12, 7.5],
  ])(
    'between-spokes: %s felloes, %s spokes: seams lie %s degrees from the nearest spoke',
    (felloes, count, degrees) => {
      const wheel = built(ferryWith({ rim: { felloes }, spokes: { count } }));
      const seams = wheel.pieces
        .filter(p => p.part.startsWith('felloe'))
        .map(p => (p.turn * 180) / Math.PI - 180 / felloes);
      const apart = seams.map(a =>
        Math.abs(((((a + 180 / count) % (360 / count)) + 360 / count) % (360 / count)) - 180 / count),
      );
      near(Math.min(...apart), degrees);
    },
  );

  test('felloes that differ in their laps are parts of their own', () => {
    const kinds = built(ferryWith({ rim: { felloes: 4 } })).parts.filter(p => p.kind === 'felloe');
    expect(kinds.map(p => [p.id, p.quantity])).toEqual([
      ['felloe-a', 2],
      ['felloe-b', 2],
    ]);
  });

  test('under-spokes: each felloe has half a lap at either end', () => {
    const laps = pockets(part(built(ferryWith({ rim: { seam: { joint: 'butt', at: 'under-spokes' } } })), 'felloe'));
    const whole = halfStrip(WIDTH + 0.15, OUTER) - halfStrip(WIDTH + 0.15, INNER);
    expect(laps).toHaveLength(3);
    near(
      laps.reduce((sum, p) => sum + area(p.area), 0),
      2 * whole,
    );
  });

  test('stop marks lie half a spoke and the bit radius from the centre line, on both faces and both edges', () => {
    const radius = inches(0.25);
    const felloe = part(built(ferryWith({ edges: { rim: { radius, faces: 'both' } } })), 'felloe');
    const marks = scores(felloe);
    expect(marks).toHaveLength(16);
    for (const mark of marks) {
      const away = [18, -18]
        .map(d => (d * Math.PI) / 180)
        .flatMap(a => mark.line.map(p => Math.abs(p.x * Math.cos(a) + p.y * Math.sin(a))));
      near(Math.min(...away), WIDTH / 2 + radius);
    }
  });
});

describe('spokes', () => {
  test('the pocket lies between arcs half the clearance off the rim, at the back, half the thickness deep', () => {
    const [lap] = pockets(part(built(ferry), 'spoke'));
    near(area(lap!.area), halfStrip(WIDTH, OUTER + 0.075) - halfStrip(WIDTH, INNER - 0.075));
    expect(lap!.face).toBe('back');
    near(lap!.depth, inches(0.375));
  });

  test('clearance between neighbouring wedges is the fit', () => {
    const { region } = part(built(ferryWith({ fit: { ...ferry.fit, wedge: 0.4 } })), 'spoke');
    const flank = segments(region.outer).find(
      s =>
        s.kind === 'line' && Math.abs(Math.abs(Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x)) - Math.PI / 10) < 1e-9,
    );
    const far =
      flank && Math.abs(flank.from.x * Math.sin(Math.PI / 10) - Math.abs(flank.from.y) * Math.cos(Math.PI / 10));
    near(far ?? Number.NaN, 0.2);
  });

  test('tips reach the overall diameter', () => {
    near(bounds(part(built(ferry), 'spoke').region.outer).maxX, inches(20.5));
  });

  test('the wedges are cut back to clear the core plug round the shaft', () => {
    const wheel = built(ferry);
    const plug = asCircle(part(wheel, 'core-plug').region.outer);
    near(bounds(part(wheel, 'spoke').region.outer).minX, plug!.radius);
    expect(plug!.radius).toBeGreaterThan(15 / 2 + 4);
  });

  test('faces: 2 gives the second side its own outline and index marks on both', () => {
    const spoke = part(built(ferryWith({ spokes: { handle: { shape: 'turned', faces: 2 } } })), 'spoke');
    const box = bounds(spoke.side!.outline);
    near(box.maxY - box.minY, inches(0.75));
    expect(spoke.side!.marks.map(m => m[0]!.x)).toEqual(scores(spoke).map(m => m.line[0]!.x));
  });
});

describe('where thicknesses differ', () => {
  test.each([
    ['thick', 'batten', 0.375, 0.375],
    ['plank', 'thick', 0.375, 0.625],
  ])('rim %s, spokes %s: fronts flush, tongue half of the thinner', (rim, spokes, deep, cut) => {
    const wheel = built(ferryWith({ rim: { stock: rim }, spokes: { stock: spokes } }));
    const rimPart = part(wheel, 'felloe');
    const spokePart = part(wheel, 'spoke');
    near(pockets(rimPart)[0]!.depth, inches(deep));
    near(pockets(spokePart)[0]!.depth, inches(cut));
    const top = (id: string, thickness: number): number => wheel.pieces.find(p => p.part === id)!.z + thickness;
    near(top('felloe', rimPart.thickness), top('spoke', spokePart.thickness));
    near(spokePart.thickness - pockets(spokePart)[0]!.depth, pockets(rimPart)[0]!.depth);
  });
});

describe('hub', () => {
  // ISO 15: 6202 is 15 x 35 x 11 mm
  test('a shoulder seat: pocket as deep as the bearing is wide, a hole clear of the inner ring', () => {
    const wheel = built(ferryWith({ hub: { bore: { bearing: '6202', seat: 'shoulder' } }, turns: 'bearing' }));
    for (const id of ['hub-disc-front', 'hub-disc-back']) {
      const disc = part(wheel, id);
      const [seat] = pockets(disc);
      near(asCircle(seat!.area.outer)!.radius, (35 - 0.05) / 2);
      near(seat!.depth, 11);
      const hole = 2 * asCircle([...disc.region.openings[0]!])!.radius;
      expect(hole).toBeGreaterThan(15 + (35 - 15) / 2);
      expect(hole).toBeLessThan(35 - 5);
    }
  });

  test('a shaft: one seat at the back, a hole for the shaft in front, a plug and a locking screw', () => {
    const wheel = built(ferryWith({ hub: { bore: { bearing: '6202', seat: 'through' } } }));
    const bore = (id: string): number => 2 * asCircle([...part(wheel, id).region.openings[0]!])!.radius;
    near(bore('hub-disc-front'), 15 - 0.05);
    near(bore('hub-disc-back'), 35 - 0.05);
    near(bore('core-plug'), 15 - 0.05);
    expect(wheel.hardware.map(h => h.name)).toContain('locking screw');
  });

  test('fixed: no back disc', () => {
    const wheel = built(ferryWith({ hub: { faces: 'front' }, turns: 'fixed' }));
    expect(wheel.parts.filter(p => p.kind === 'hub-disc').map(p => p.id)).toEqual(['hub-disc-front']);
  });

  test('screws lie beyond the wedges, one a spoke', () => {
    const holes = drills(part(built(ferry), 'hub-disc-back'));
    expect(holes).toHaveLength(10);
    for (const { at } of holes) expect(Math.hypot(at.x, at.y)).toBeGreaterThan(WIDTH / 2 / Math.sin(Math.PI / 10));
  });
});

describe('trim', () => {
  const trim = {
    faces: 'front',
    band: inches(2),
    segments: 5,
    plugs: { diameter: inches(3 / 8), each: 4 },
    stock: 'thin',
  } as const;

  test('seams lie 180 / lcm degrees from those of the rim', () => {
    const wheel = built(ferryWith({ trim }));
    const ends = (id: string, n: number): number[] =>
      wheel.pieces.filter(p => p.part === id).map(p => (p.turn * 180) / Math.PI - 180 / n);
    const apart = ends('trim-segment', 5).flatMap(a =>
      ends('felloe', 5).map(b => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180)),
    );
    near(Math.min(...apart), 36);
  });

  test('plugs leave 6 mm of wood and lie at (j + 1/2) / k of the segment where nothing is in the way', () => {
    const segment = part(
      built(ferryWith({ trim: { ...trim, plugs: { diameter: inches(3 / 8), each: 4 } } })),
      'trim-segment',
    );
    const bores = pockets(segment);
    near(bores[0]!.depth, inches(0.5) - 6);
    const degrees = bores
      .map(b => asCircle(b.area.outer)!.center)
      .map(c => (Math.atan2(c.x, c.y) * 180) / Math.PI)
      .sort((a, b) => a - b);
    near(degrees[0]! + degrees[3]!, 0);
    near(degrees[1]! + degrees[2]!, 0);
  });
});

describe('laser', () => {
  const laser = ferryWith({
    method: 'laser',
    rim: { stock: 'leaf', thickness: inches(0.75) },
    spokes: { stock: 'leaf' },
    hub: { faces: 'front', bore: 'none', stock: 'leaf' },
    turns: 'fixed',
  });

  test('three layers: whole spokes and loose felloes in front, whole felloes and spokes in two pieces behind', () => {
    const wheel = built(laser);
    const count = (prefix: string): number => wheel.pieces.filter(p => p.part.startsWith(prefix)).length;
    expect([count('felloe-loose'), count('felloe') - count('felloe-loose')]).toEqual([10, 10]);
    expect([count('spoke-inner'), count('spoke-handle'), count('spoke')]).toEqual([20, 20, 50]);
    expect(wheel.parts.flatMap(pockets)).toEqual([]);
  });

  test('every loose piece has two registration pins', () => {
    for (const p of built(laser).parts.filter(q => q.kind === 'felloe' || q.kind === 'spoke'))
      expect(drills(p).length, p.id).toBeGreaterThanOrEqual(2);
  });

  test('pins line up through every layer', () => {
    const wheel = built(laser);
    const places = new Map<string, number>();
    for (const piece of wheel.pieces)
      for (const { at } of drills(part(wheel, piece.part))) {
        const angle = Math.atan2(at.y, at.x) + piece.turn;
        const r = Math.hypot(at.x, at.y);
        const key = `${Math.round(1e4 * r * Math.cos(angle)) + 0},${Math.round(1e4 * r * Math.sin(angle)) + 0}`;
        places.set(key, (places.get(key) ?? 0) + 1);
      }
    expect([...new Set(places.values())]).toEqual([3]);
  });

  test.each([
    [0.625, '12.7 mm or 19.05 mm'],
    [0.25, '12.7 mm or 19.05 mm'],
    [1.1, '25.4 mm or 31.75 mm'],
  ])('a rim %s inches thick is refused with the two nearest right ones', (thick, allowed) => {
    const { findings, value } = helmWheel({ ...laser, rim: { ...laser.rim, thickness: inches(thick) } }, ferryStock);
    expect(value).toBeUndefined();
    const found = findings.find(f => f.where === 'rim.thickness');
    expect(found?.level).toBe('stop');
    expect(found?.message).toContain(allowed);
  });
});

test('a rim of glued-up layers staggers its seams', () => {
  const wheel = built(ferryWith({ rim: { layers: 2, stock: 'leaf' }, spokes: { stock: 'thin' } }));
  const turns = (z: number): number[] =>
    wheel.pieces.filter(p => p.part.startsWith('felloe') && Math.abs(p.z - z) < 1e-6).map(p => p.turn);
  expect(turns(0)).toHaveLength(5);
  expect(turns(inches(0.25)).length).toBeGreaterThanOrEqual(5);
});

describe('trim over a rim of layers', () => {
  const trim = {
    faces: 'both',
    band: inches(2),
    segments: 5,
    plugs: { diameter: inches(3 / 8), each: 2 },
    stock: 'thin',
  } as const;
  const ends = (wheel: HelmWheel, prefix: string, pieces: number): number[] =>
    wheel.pieces.filter(p => p.part.startsWith(prefix)).map(p => p.turn - Math.PI / pieces);

  test.each([2, 3])('no seam over a seam of any of %s layers', layers => {
    const wheel = built(ferryWith({ rim: { layers, stock: 'leaf' }, spokes: { stock: 'thin' }, trim }));
    const whole = ends(wheel, 'felloe', 5).filter((_, i) => !wheel.pieces[i]!.part.startsWith('felloe-loose'));
    const apart = ends(wheel, 'trim', 5).flatMap(a =>
      whole.map(b => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)))),
    );
    expect(Math.min(...apart)).toBeGreaterThan(0.05);
  });

  test('screws from both faces do not meet', () => {
    const wheel = built(ferryWith({ trim }));
    const screw = wheel.hardware.find(h => h.use.startsWith('trim to rim'));
    const length = Number(/([\d.]+) mm long/.exec(screw?.name ?? '')?.[1]);
    expect(2 * (length - 6)).toBeLessThan(inches(0.75));
  });
});

test('hub screws bite two diameters or are left out', () => {
  const thin = ferryWith({ hub: { faces: 'front', stock: 'leaf' }, turns: 'fixed' });
  expect(built(thin).hardware.filter(h => h.name.startsWith('wood screw'))).toEqual([]);
  const held = built(ferry).hardware.find(h => h.use.includes('front hub disc'));
  expect(Number(/([\d.]+) mm long/.exec(held?.name ?? '')?.[1])).toBeGreaterThan(2 * inches(0.75) + 8);
});

test.each<[string, HelmWheelOptions, RegExp]>([
  ['two felloes', ferryWith({ rim: { felloes: 2 } }), /rim.felloes is 2; allowed: a whole number, 3 to 24/],
  ['no number', ferryWith({ rim: { band: Number.NaN } }), /rim.band is NaN; allowed: 0.1 to 380.9 mm/],
  ['a band past the middle', ferryWith({ rim: { band: 500 } }), /rim.band is 500; allowed/],
  ['half a spoke', ferryWith({ spokes: { count: 2.5 } }), /spokes.count is 2.5; allowed: a whole number, 3 to 36/],
])('%s is refused, naming field, value and range', (_, options, message) => {
  expect(() => helmWheel(options, ferryStock)).toThrow(message);
});
