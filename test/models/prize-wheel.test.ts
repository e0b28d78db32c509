import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { mating } from '../../lib/checks/mating.js';
import { Unusable } from '../../lib/findings/unusable.js';
import { area } from '../../lib/geometry/measure.js';
import { movePoint } from '../../lib/geometry/motion.js';
import type { Point } from '../../lib/geometry/point.js';
import type { Model } from '../../lib/models/model.js';
import { numberPlaces, sectorLines, sectorMiddles } from '../../lib/models/prize-wheel/sectors.js';
import { letGo, reachFor } from '../../lib/models/prize-wheel/swing.js';
import { prizeWheel } from '../../lib/models/prize-wheel.js';
import type { PrizeWheelOptions } from '../../lib/models/prize-wheel-options.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import type { Stock } from '../../lib/stock/stock.js';
import { degrees, toDegrees } from '../../lib/units/length.js';
import { near } from '../close.js';

const sheet = (name: string, thickness: number): Stock => ({
  name,
  kind: 'sheet',
  width: 1220,
  length: 2440,
  thickness,
  true: 0,
  margin: 5,
  species: 'birch plywood',
});
const stock = [sheet('birch', 18), sheet('leaf', 4), sheet('thin', 6)];

const fair: PrizeWheelOptions = {
  face: { diameter: 800, stock: 'birch' },
  sectors: { count: 12 },
  pegs: { circle: 760, diameter: 10, length: 40 },
  flapper: { stock: 'leaf' },
  hub: { diameter: 240, bore: { axle: 16 }, stock: 'birch' },
  plate: { stock: 'birch' },
  method: 'router',
};
const quarters: PrizeWheelOptions = { ...fair, face: { ...fair.face, segments: 4 } };

function built(options: PrizeWheelOptions): Model {
  const { value, findings } = prizeWheel(options, stock);
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
}
const findings = (options: PrizeWheelOptions): string[] =>
  prizeWheel(options, stock).findings.map(f => `${f.level} ${f.rule} ${f.where}`);
const figure = (model: Model, name: string): number => model.figures.find(f => f.name.includes(name))!.value;
const setting = (model: Model, name: string): number => model.settings.find(s => s.name.includes(name))!.value;
const facePart = (p: Part): boolean => p.kind === 'face-segment';

/** Features of the pieces of the face, where they are in the wheel. */
function onFace<T>(model: Model, of: (f: Feature, place: (p: Point) => Point) => T | undefined): T[] {
  return model.pieces.flatMap(piece => {
    const part = model.parts.find(p => p.id === piece.part)!;
    return facePart(part) ? part.features.flatMap(f => of(f, p => movePoint(p, piece)) ?? []) : [];
  });
}
const pegs = (model: Model): Point[] => onFace(model, (f, place) => (f.kind === 'drill' ? place(f.at) : undefined));
const numbers = (model: Model): string[] => onFace(model, f => (f.kind === 'label' && f.shows ? f.text : undefined));
/** Angle of a point from straight up, anticlockwise, degrees 0 to 360. */
const fromUp = ({ x, y }: Point): number => (toDegrees(Math.atan2(-x, y)) + 360) % 360;

describe('sectors', () => {
  const own = [40, 80, 240].map(degrees);

  test('lines: the first sector is split by straight up, the others follow clockwise', () => {
    const lines = sectorLines(own).map(toDegrees);
    [20, -20, -100].forEach((line, i) => {
      near(lines[i]!, line);
    });
    const middles = sectorMiddles(own).map(toDegrees);
    [0, -60, -220].forEach((middle, i) => {
      near(middles[i]!, middle);
    });
  });

  test('a number stands in the middle of its sector, beside a seam that runs there', () => {
    expect(numberPlaces(own, []).map(p => Math.round(toDegrees(p.at)))).toEqual([0, -60, -220]);
    const beside = numberPlaces(own, [0])[0]!;
    expect(Math.abs(toDegrees(beside.at))).toBeGreaterThan(5);
    expect(toDegrees(beside.half)).toBeLessThanOrEqual(12);
  });

  test('a drilled peg on every line, on the circle', () => {
    for (const options of [fair, quarters, { ...quarters, sectors: { angles: own } }]) {
      const model = built(options);
      const lines = 'angles' in options.sectors ? [20, 340, 260] : Array.from({ length: 12 }, (_, i) => 15 + 30 * i);
      const at = pegs(model);
      at.forEach(p => {
        near(Math.hypot(p.x, p.y), 380);
      });
      const found = at.map(fromUp).sort((a, b) => a - b);
      [...lines]
        .sort((a, b) => a - b)
        .forEach((line, i) => {
          near(found[i]!, line);
        });
      expect(found).toHaveLength(lines.length);
    }
  });

  test.each([1, 2, 3, 4, 5, 7])('every number is there once, in %s segments', segments => {
    const model = built({ ...fair, sectors: { count: 11 }, face: { ...fair.face, segments } });
    expect(numbers(model).sort()).toEqual(Array.from({ length: 11 }, (_, i) => `${i + 1}`).sort());
  });

  test('lines are scored from the hub to the edge, but for the peg holes', () => {
    const lines = onFace(built(fair), f => (f.kind === 'score' ? { line: f.line } : undefined));
    const length = lines.reduce((sum, { line: [a, b] }) => sum + Math.hypot(a!.x - b!.x, a!.y - b!.y), 0);
    // 399 - 120, less a hole of 9.95 mm and half a mm on either side of it
    near(length, 12 * (279 - 10.95));
    expect(lines).toHaveLength(24);
  });
});

describe('face', () => {
  test('segments with butt seams fill the ring', () => {
    const model = built(quarters);
    const pieces = model.pieces.flatMap(p => model.parts.filter(q => q.id === p.part && facePart(q)));
    const hole = 240 / 6;
    near(
      pieces.reduce((sum, p) => sum + area(p.region), 0),
      Math.PI * (400 * 400 - hole * hole),
    );
  });

  test.each([
    { joint: 'butt' },
    { joint: 'biscuit' },
    { joint: 'dowel' },
    { joint: 'finger' },
    { joint: 'key', length: 80, width: 60 },
  ] as const)('$joint seams keep clear of the pegs, the numbers and each other', seam => {
    const model = built({ ...quarters, face: { ...quarters.face, seam } });
    expect(interference(model)).toEqual([]);
    expect(mating(model)).toEqual([]);
    expect(pegs(model)).toHaveLength(12);
    expect(numbers(model)).toHaveLength(12);
  });

  test('fingers longer than the hole in the middle is wide are refused', () => {
    const small = { ...fair, face: { ...fair.face, segments: 3 }, hub: { ...fair.hub, diameter: 40 } };
    const fingered = (seam: object) =>
      findings({ ...small, face: { ...small.face, seam: { joint: 'finger', ...seam } } });
    expect(fingered({ length: 60 })).toContain('stop finger face.seam.length');
    expect(fingered({})).toEqual(['warn hub-small hub.diameter']);
    expect(findings(small)).toEqual(['warn hub-small hub.diameter']);
  });

  test('a key so wide that it meets pegs, or leaves numbers no room, is told', () => {
    const keyed = { ...quarters, face: { ...quarters.face, seam: { joint: 'key', width: 130 } } } as const;
    expect(findings(keyed)).toContain('warn number-room sectors');
    expect(
      findings({
        ...keyed,
        pegs: { ...fair.pegs, circle: 500 },
        sectors: { count: 24 },
        flapper: { stock: 'leaf', length: 200 },
      }),
    ).toContain('stop peg-seam face.segments');
  });

  test.each([
    [{ joint: 'finger' }, 5, 13],
    [{ joint: 'finger' }, 3, 20],
    [{ joint: 'scarf' }, 2, 9],
    [{ joint: 'dowel' }, 4, 11],
    [{ joint: 'biscuit' }, 4, 11],
    [{ joint: 'key' }, 5, 13],
  ] as const)('sizes left out of a %j get smaller beside pegs: %i segments, %i sectors', (seam, segments, count) => {
    const own = { ...quarters, face: { ...quarters.face, segments, seam }, sectors: { count } };
    const model = built(own);
    expect(interference(model)).toEqual([]);
    expect(mating(model)).toEqual([]);
    expect(pegs(model)).toHaveLength(count);
  });

  test('in layers they leave room for the seams to lie apart', () => {
    const face = { ...quarters.face, segments: 5, layers: 2, seam: { joint: 'finger' } } as const;
    const model = built({ ...quarters, face, sectors: { count: 13 }, pegs: { ...fair.pegs, length: 70 } });
    const turns = model.pieces.flatMap(p => (p.part.startsWith('face-segment') ? [toDegrees(p.turn)] : []));
    const off = Math.abs(turns[0]! - turns[5]!) % 72;
    expect(Math.min(off, 72 - off)).toBeGreaterThan(4);
  });

  test('a size the plan states that is in the way is offered; a joint as small as it goes is said to be', () => {
    const message = (seam: object, segments: number, count: number): string =>
      prizeWheel({ ...quarters, face: { ...quarters.face, segments, seam }, sectors: { count } }, stock).findings[0]!
        .message;
    expect(message({ joint: 'finger', length: 60 }, 5, 13)).toContain('allowed: a smaller face.seam.length, another');
    expect(message({ joint: 'scarf', overlap: degrees(20) }, 2, 9)).toContain('a smaller face.seam.overlap, another');
    expect(message({ joint: 'dowel', count: 2, depth: 40 }, 4, 11)).toContain('a smaller face.seam.depth, a smaller');
    const least = message({ joint: 'scarf' }, 5, 13);
    expect(least).toContain('however small a scarf joint is made; allowed: another number of segments');
  });

  test('layers have their seams apart, and pegs through all of them', () => {
    const model = built({
      ...quarters,
      face: { ...quarters.face, layers: 2, stock: 'thin' },
      pegs: { ...fair.pegs, length: 45 },
    });
    expect(pegs(model)).toHaveLength(24);
    expect(numbers(model)).toHaveLength(12);
    expect(model.pieces.filter(p => p.part.startsWith('face-segment')).map(p => p.z)).toEqual([0, 0, 0, 0, 6, 6, 6, 6]);
  });

  test('a seam the plan puts on a peg is refused', () => {
    const at = (deg: number): string[] =>
      findings({ ...quarters, face: { ...quarters.face, seam: { at: { angle: degrees(deg) } } } });
    expect(at(15)).toEqual(['stop peg-seam face.seam.at']);
    expect(at(30)).toEqual([]);
  });

  test('more seams than there is room for are refused', () => {
    expect(
      findings({
        ...fair,
        sectors: { count: 72 },
        pegs: { diameter: 8 },
        face: { ...fair.face, segments: 5, seam: { joint: 'finger' } },
      }),
    ).toContain('stop peg-seam face.segments');
  });
});

describe('balance', () => {
  const ply = 670e-9;
  const maple = 705.6e-9;

  test('equal sectors are balanced, in one piece or several', () => {
    for (const options of [fair, quarters, { ...fair, sectors: { count: 7 } }])
      expect(figure(built(options), 'off centre')).toBe(0);
  });

  test('uneven sectors: pegs less the wood they stand in, over everything that turns', () => {
    const angles = [30, 60, 270].map(degrees);
    const model = built({ ...fair, sectors: { angles } });
    const peg = (maple * Math.PI * 100 * 40) / 4;
    const wood = (ply * Math.PI * 9.95 * 9.95 * 18) / 4;
    const disc = ply * 18 * Math.PI;
    // face and hub: discs with the axle's hole, 16.2 in the face, 15.95 in the hub; six screw holes of 11/64 in
    const screws = 6 * ply * 18 * Math.PI * (((11 / 64) * 25.4) / 2) * (((11 / 64) * 25.4) / 2);
    const weight = disc * (160000 - 8.1 * 8.1) + disc * (14400 - 7.975 * 7.975) - screws + 3 * (peg - wood);
    near(figure(model, 'weight that turns'), weight);
    const lines = [15, -15, -75].map(degrees);
    const x = lines.reduce((sum, a) => sum - Math.sin(a), 0) * 380 * (peg - wood);
    const y = lines.reduce((sum, a) => sum + Math.cos(a), 0) * 380 * (peg - wood);
    near(figure(model, 'off centre'), Math.hypot(x, y) / weight);
    near(figure(model, 'heavy side'), fromUp({ x, y }));
    near(figure(model, 'counterweight'), Math.hypot(x, y) / 380);
    expect(findings({ ...fair, sectors: { angles } })).toContain('note balance sectors');
  });

  test('the counterweight goes opposite the heavy side', () => {
    const { findings: said } = prizeWheel({ ...fair, sectors: { angles: [30, 60, 270].map(degrees) } }, stock);
    // pegs at 15, -15 and -75: heavy to the right of the top, where sector 2 is; opposite lies sector 3
    expect(said.find(f => f.rule === 'balance')!.message).toMatch(/towards sector 2: .* behind sector 3,/);
  });
});

describe('flapper', () => {
  test.each([
    [385, 80, 5],
    [150, 40, 2],
  ])('pegs on %s mm, flapper %s mm: it is let go where the circles cross, law of cosines', (pegs, length, reach) => {
    const angle = letGo(pegs, length, reach);
    const pivot = pegs + length - reach;
    const [x, y] = [pegs * Math.sin(angle), pegs * Math.cos(angle)];
    near(Math.hypot(x, y - pivot), length);
    near(reachFor(pegs, length, angle), reach);
  });

  test('it hangs from its pivot on to the pegs, by its reach', () => {
    const model = built({ ...fair, flapper: { stock: 'leaf', reach: 4, length: 70 } });
    near(model.pieces.find(p => p.part === 'flapper')!.y, 380 + 5 + 70 - 4);
    near(setting(model, 'pivot'), 451);
  });

  test('by default it has dropped back before half of the least sector has passed', () => {
    for (const count of [2, 6, 12, 24, 40]) {
      const model = built({ ...fair, sectors: { count } });
      expect(setting(model, 'let the flapper go')).toBeLessThanOrEqual(180 / count);
    }
  });

  test('pegs stand out past it', () => {
    expect(findings({ ...fair, pegs: { ...fair.pegs, length: 26 } })).toEqual(['stop peg-length pegs.length']);
    expect(findings({ ...fair, pegs: { ...fair.pegs, length: 27 } })).toEqual([]);
  });
});

describe('hub and plate', () => {
  test('no two pieces take the same room', () => {
    for (const options of [fair, quarters, { ...fair, hub: { ...fair.hub, faces: 'both' } } as const])
      expect(interference(built(options))).toEqual([]);
  });

  test('on bearings: their seats in the hub, the axle locked in the plate', () => {
    const hub = { diameter: 240, faces: 'both', bore: { bearing: '6202', seat: 'through' }, stock: 'birch' } as const;
    const model = built({ ...fair, hub });
    const bore = (id: string): number => {
      const [hole] = model.parts.find(p => p.id === id)!.region.openings;
      return Math.abs(hole![0]!.x - hole![1]!.x);
    };
    near(bore('hub-disc-back'), 34.95);
    near(bore('hub-disc-front'), 34.95);
    near(bore('stand-plate'), 14.95);
    expect(model.hardware.find(h => h.name === 'bearing 6202')!.quantity).toBe(2);
    expect(findings({ ...fair, hub: { ...hub, faces: 'back' } })).toEqual(['note one-bearing hub.faces']);
  });

  test('on a shaft: its bearing in the plate', () => {
    const hub = { ...fair.hub, bore: { bearing: '6202', seat: 'shoulder' } } as const;
    const model = built({ ...fair, hub, turns: 'shaft' });
    expect(model.parts.find(p => p.id === 'stand-plate')!.features.find(f => f.kind === 'pocket')).toMatchObject({
      face: 'back',
      depth: 11,
    });
  });

  test('spacing of pegs by the chord', () => {
    near(setting(built(fair), 'between pegs'), 2 * 380 * Math.sin(Math.PI / 12));
  });
});

test.each([
  [{ pegs: { circle: 790, diameter: 10 } }, 'stop peg-edge pegs.circle'],
  [{ hub: { ...fair.hub, diameter: 700 } }, 'stop peg-hub hub.diameter'],
  [{ hub: { ...fair.hub, diameter: 20 } }, 'stop hub-bore hub.diameter'],
  [{ face: { ...fair.face, hole: 238 } }, 'stop hub-cover hub.diameter'],
  [{ face: { ...fair.face, hole: 10 } }, 'stop face-hole face.hole'],
  [{ face: { ...fair.face, thickness: 15 } }, 'stop stock-thickness face.thickness'],
  [{ face: { ...fair.face, thickness: 20 }, method: 'laser' }, 'stop laser-layers face.thickness'],
  [{ sectors: { count: 72 }, pegs: { diameter: 20 } }, 'stop peg-spacing pegs.diameter'],
  [{ flapper: { stock: 'leaf', length: 20 } }, 'stop flapper-length flapper.length'],
  [{ flapper: { stock: 'leaf', reach: 30, length: 120 }, sectors: { count: 36 } }, 'stop flapper-reach flapper.reach'],
  [{ plate: { stock: 'birch', width: 30 } }, 'stop plate-width plate.width'],
  [{ plate: { stock: 'birch', height: 400 } }, 'stop plate-height plate.height'],
  [{ edges: { face: { radius: 12 } } }, 'stop edge-radius edges.face.radius'],
  [
    { hub: { ...fair.hub, bore: { bearing: '6202', seat: 'shoulder' } }, method: 'laser' },
    'stop laser-pocket hub.bore.seat',
  ],
  [{ hub: { ...fair.hub, stock: 'thin', bore: { bearing: '6202' } } }, 'stop bearing-seat hub.thickness'],
] as const)('%j: %s', (change, said) => {
  expect(findings({ ...fair, ...change })).toContain(said);
});

test.each([
  { sectors: { count: 1 } },
  { sectors: { count: 6.5 } },
  { sectors: { angles: [1, 2, 3] } },
  { sectors: { angles: [Number.NaN, Math.PI] } },
  { face: { diameter: 800, stock: 'oak' } },
  { pegs: { species: 'cheese' } },
])('%j is not usable', change => {
  expect(() => prizeWheel({ ...fair, ...change }, stock)).toThrow(Unusable);
});
