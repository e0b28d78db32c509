import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { asCircle } from '../../lib/geometry/outline.js';
import { segments } from '../../lib/geometry/segment.js';
import { flapper } from '../../lib/parts/flapper.js';
import { standFoot } from '../../lib/parts/stand-foot.js';
import { standPlate } from '../../lib/parts/stand-plate.js';
import { rib, standRail } from '../../lib/parts/stand-rail.js';
import { upright } from '../../lib/parts/upright.js';
import { near } from '../close.js';

const common = { thickness: 18, stock: 'ply' };

/** Lines and arcs of an outline that do not run on smoothly into each other, by the turn between them; degrees. */
function corners(part: { readonly region: { readonly outer: Parameters<typeof segments>[0] } }): number[] {
  const edges = segments(part.region.outer);
  const heading = (i: number, end: 0 | 1): number => {
    const s = edges[i]!;
    if (s.kind === 'line') return Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x);
    return s.start + end * s.sweep + (Math.sign(s.sweep) * Math.PI) / 2;
  };
  const turns = edges.map((_, i) => heading(i, 0) - heading((i + edges.length - 1) % edges.length, 1));
  return turns.map(t => (Math.atan2(Math.sin(t), Math.cos(t)) * 180) / Math.PI).filter(t => Math.abs(t) > 1e-6);
}

describe('upright', () => {
  const bore = { kind: 'through', diameter: 35 } as const;
  const [base, down, skirt, head] = [500, 1000, 150, 60];
  const cheek = upright({ ...common, kind: 'cheek', base, down, skirt, head, bore });

  test('area: rectangle, two tangent triangles to the axle, the triangle under it and the sector of the head', () => {
    // plane trigonometry: a tangent from a distance d to a circle of radius r is sqrt(d² - r²) long
    const low = down - skirt;
    const d = Math.hypot(base / 2, low);
    const tangent = Math.sqrt(d * d - head * head);
    const up = 2 * Math.PI - 2 * Math.acos(head / d) - 2 * Math.atan2(base / 2, low);
    const hole = (Math.PI * 35 * 35) / 4;
    near(area(cheek.region), base * skirt + head * tangent + (base / 2) * low + (up / 2) * head * head - hole);
  });

  test('its sides meet the head without a corner', () => {
    // two at the bottom, two at the skirt
    expect(corners(cheek)).toHaveLength(4);
  });

  test('a base as wide as the head gives straight sides', () => {
    const straight = upright({ ...common, kind: 'post', base: 2 * head, down, skirt, head, bore: { kind: 'none' } });
    near(area(straight.region), 2 * head * down + (Math.PI * head * head) / 2);
    expect(bounds(straight.region.outer)).toMatchObject({ minY: -down, maxY: head });
  });

  test('a seat is a pocket with its shoulder hole', () => {
    const seat = { kind: 'seat', diameter: 35, depth: 11, face: 'back', shoulder: 27 } as const;
    const part = upright({ ...common, kind: 'cheek', base, down, skirt, head, bore: seat });
    expect(part.features).toMatchObject([{ kind: 'pocket', face: 'back', depth: 11 }]);
    near(asCircle(part.region.openings[0]!)!.radius, 13.5);
  });

  test.each([{ skirt: 950 }, { head: 17 }, { base: 0 }])('refuses %j', change => {
    expect(() => upright({ ...common, kind: 'cheek', base, down, skirt, head, bore, ...change })).toThrow(Unusable);
  });
});

test('a foot: rectangle less two sloped corners, twice as long as high', () => {
  const foot = standFoot({ ...common, length: 900, height: 120, slope: 60 });
  near(area(foot.region), 900 * 120 - (2 * (60 * 120)) / 2);
  expect(foot.grain).toBe(Math.PI / 2);
  expect(() => standFoot({ ...common, length: 200, height: 120, slope: 60 })).toThrow(Unusable);
});

test('rail and rib: rectangle and trapezoid', () => {
  near(area(standRail({ ...common, length: 400, width: 90 }).region), 36000);
  near(area(rib({ ...common, height: 600, bottom: 300, top: 80 }).region), (600 * 380) / 2);
  expect(() => rib({ ...common, height: 600, bottom: 80, top: 300 })).toThrow(Unusable);
});

describe('flapper', () => {
  const [length, head, tip, bore] = [100, 15, 5, 8];
  const part = flapper({ ...common, length, head, tip, bore });

  test('area: hull of two circles, by external tangents', () => {
    const d = length - tip;
    const a = Math.acos((head - tip) / d);
    const t = Math.sqrt(d * d - (head - tip) * (head - tip));
    const hull = t * (head + tip) + (Math.PI - a) * head * head + a * tip * tip;
    near(area(part.region), hull);
    expect(part.features).toMatchObject([{ kind: 'drill', at: { x: 0, y: 0 }, diameter: bore, from: 'through' }]);
  });

  test('reaches from its head to its tip, without a corner', () => {
    expect(corners(part)).toEqual([]);
    const { minY, maxY } = bounds(part.region.outer);
    near(minY, -length);
    near(maxY, head);
  });

  test('round at both ends alike where the radii are one', () => {
    near(
      area(flapper({ ...common, length, head, tip: head, bore }).region),
      Math.PI * head * head + 2 * head * (length - head),
    );
  });

  test.each([{ tip: 20 }, { length: 18 }, { bore: 30 }])('refuses %j', change => {
    expect(() => flapper({ ...common, length, head, tip, bore, ...change })).toThrow(Unusable);
  });
});

test('a stand plate: rectangle less what its round corners leave', () => {
  const holes = [{ at: { x: 40, y: 300 }, diameter: 5 }];
  const bore = { kind: 'through', diameter: 12 } as const;
  const plate = standPlate({ ...common, width: 120, above: 400, below: 100, corner: 10, bore, holes });
  near(area(plate.region), 120 * 500 - (4 - Math.PI) * 100 - Math.PI * 36);
  expect(corners(plate)).toEqual([]);
  expect(bounds(plate.region.outer)).toMatchObject({ minX: -60, maxY: 400 });
  expect(plate.features).toHaveLength(1);
  expect(() => standPlate({ ...common, width: 120, above: 400, below: 5, corner: 10, bore, holes })).toThrow(Unusable);
});
