import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intersection } from '../../lib/geometry/boolean.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { moveRegion, turning } from '../../lib/geometry/motion.js';
import { boredFelloe, boredSpoke, tongueDowel } from '../../lib/joints/bored-tongue.js';
import { cheeked, longestTongue, shareOf, slotEnd, slotReach, slotted, tongued } from '../../lib/joints/tongue.js';
import { cartSpoke } from '../../lib/parts/cart-spoke.js';
import { felloe } from '../../lib/parts/felloe.js';
import { partVolume } from '../../lib/parts/volume.js';

const wood = { thickness: 19, stock: 'plank' };
const joint = { inner: 296, width: 18, length: 36, clearance: 0.2 };
const piece = felloe({ ...wood, inner: 296, outer: 360, sweep: Math.PI / 3 });
const spoke = cartSpoke({ ...wood, nave: 80, rim: 296, width: 36, end: 28 });
const at = [-Math.PI / 12, Math.PI / 12];
const span = (low: number, high: number) => ({ low, high });

/** Area of a slot: the strip from the rim's inner edge to its end. */
function slotArea(): number {
  const half = 9.1;
  const edge = Math.sqrt(296 * 296 - half * half);
  const segment = 296 * 296 * Math.asin(half / 296) - half * edge;
  return 2 * half * (332.1 - edge) - segment;
}

test('what a tongue takes of a layer', () => {
  expect(shareOf(span(0, 10), span(5, 15))).toEqual({ kind: 'pocket', face: 'front', depth: 5 });
  expect(shareOf(span(10, 20), span(5, 15))).toEqual({ kind: 'pocket', face: 'back', depth: 5 });
  expect(shareOf(span(6, 12), span(6, 12))).toEqual({ kind: 'through' });
  expect(shareOf(span(0, 6), span(6, 12))).toEqual({ kind: 'none' });
  expect(shareOf(span(0, 20), span(5, 15))).toEqual({ kind: 'inside' });
});

test('shares of all layers come to the tongue', () => {
  const thickness = fc.double({ min: 0.5, max: 40, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 9 }), thickness, thickness, (count, ply, wanted) => {
      const whole = count * ply;
      const tongue = Math.min(wanted, whole);
      const shares = Array.from({ length: count }, (_, i) =>
        shareOf(span(i * ply, (i + 1) * ply), span((whole - tongue) / 2, (whole + tongue) / 2)),
      );
      fc.pre(shares.every(s => s.kind !== 'inside'));
      const sum = shares.reduce((n, s) => n + (s.kind === 'pocket' ? s.depth : s.kind === 'through' ? ply : 0), 0);
      expect(sum).toBeCloseTo(tongue, 4);
    }),
  );
});

test('two layers with pockets lose as much wood as the slot holds; a layer cut through loses it all', () => {
  const whole = partVolume(piece);
  const front = slotted(piece, joint, { kind: 'pocket', face: 'back', depth: 9.5 }, at);
  expect(whole - partVolume(front)).toBeCloseTo(2 * 9.5 * slotArea(), 4);
  const through = slotted(piece, joint, { kind: 'through' }, at);
  expect(area(piece.region) - area(through.region)).toBeCloseTo(2 * slotArea(), 6);
  expect(through.region.outer.filter(v => v.mate === 'tongue')).toHaveLength(6);
  expect(slotted(piece, joint, { kind: 'none' }, at)).toBe(piece);
  expect(() => slotted(piece, joint, { kind: 'inside' }, at)).toThrow(RangeError);
});

test('a tongue stays inside its slot and short of the outer edge', () => {
  const { region } = tongued(spoke, joint);
  expect(bounds(region.outer).maxX).toBeCloseTo(332, 12);
  const through = slotted(piece, joint, { kind: 'through' }, [0]).region;
  const up = moveRegion(region, turning(Math.PI / 2));
  expect(intersection([up], [through]).reduce((sum, r) => sum + area(r), 0)).toBeLessThan(1e-6);
  expect(slotEnd(joint)).toBeCloseTo(332.1, 12);
  expect(slotReach({ ...joint, length: longestTongue(joint, 350) })).toBeCloseTo(350, 9);
});

test('cheeks thin the tongue and nothing else', () => {
  const whole = tongued(spoke, joint);
  const thin = cheeked(whole, joint, 4);
  const half = 9;
  const edge = Math.sqrt(296 * 296 - half * half);
  const face = 2 * half * (332 - edge) - (296 * 296 * Math.asin(half / 296) - half * edge);
  expect(partVolume(whole) - partVolume(thin)).toBeCloseTo(2 * 4 * face, 5);
});

test('a drilled tongue is the thickest dowel that is a third to a half of the thickness', () => {
  // thirds and halves of 18 and 24 mm: 6 to 9, 8 to 12; of the table 8 mm and 12 mm
  expect(tongueDowel(18, 20)).toBe(8);
  expect(tongueDowel(24, 20)).toBe(12);
  expect(tongueDowel(24, 10)).toBe(10);
  // no dowel is sold for 6 mm
  expect(tongueDowel(6, 20)).toBeCloseTo(2.4, 12);
});

test('drilled tongues are marked where they go, and the end of the spoke shows the hole', () => {
  const bored = { inner: 296, diameter: 8, depth: 24 };
  const marked = boredFelloe(piece, bored, at);
  const ends = marked.features.flatMap(f => (f.kind === 'score' && f.line.length === 2 ? [f.line] : []));
  expect(ends).toHaveLength(4);
  const deep = ends.map(line => Math.hypot(line[1]!.x, line[1]!.y));
  expect(deep[0]).toBeCloseTo(320, 9);
  const { end } = boredSpoke(spoke, bored, 28);
  expect(end?.holes).toEqual([{ at: { x: 14, y: 9.5 }, diameter: 8 }]);
});
