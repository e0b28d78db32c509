import { describe, expect, test } from 'vitest';
import { biscuited, slotMiddles } from '../../lib/joints/biscuit.js';
import { segmentArea } from '../../lib/joints/glue.js';
import { biscuit, slotLength } from '../../lib/stock/biscuits.js';
import { near } from '../close.js';
import { plain, site } from './site.js';

const wide = site({ inner: 200, outer: 360 });

// sizes printed by four makers, slot chord 2 sqrt(d (100 - d)) of a 100 mm cutter
test.each([
  ['0', 47, 15, 54.2586],
  ['10', 53, 19, 60],
  ['20', 56, 23, 65.6874],
])('size %s: %s x %s mm, its slot %s mm long', (size, length, width, slot) => {
  const b = biscuit(size);
  expect([b.length, b.width]).toEqual([length, width]);
  near(slotLength(b.depth), slot, 1e-4);
});

// circular segment, Machinery's Handbook: chord 21, height 6: area 89.2541484
test('area of a segment', () => near(segmentArea(21, 6), 89.2541484, 1e-8));

describe('several in a seam', () => {
  test('lie evenly over the band, 6 mm apart at least', () => {
    expect(slotMiddles(wide, biscuit('0'), 2)).toEqual([240, 320]);
    const [a, b] = slotMiddles(site({ inner: 200, outer: 330 }), biscuit('20'), 2);
    near(b! - a!, slotLength(12.3) + 6);
    near((a! + b!) / 2, 265);
  });

  test('each is marked at both ends and bought', () => {
    const { part, hardware, findings } = biscuited(plain(wide), wide, { size: '0', count: 2 });
    expect(findings).toEqual([]);
    expect(part.features).toHaveLength(4);
    expect(hardware).toEqual([{ name: 'biscuit, size 0', quantity: 2 }]);
  });
});

// from its ends to the edges 10 mm, slots 65.7, 60 and 54.3 mm long: bands of 86, 80 and 75 mm hold one
test.each([
  [86, '20'],
  [80, '10'],
  [75, '0'],
])('the largest that fits a band of %s mm is size %s', (band, size) => {
  const own = site({ inner: 300, outer: 300 + band });
  expect(biscuited(plain(own), own, {}).hardware).toEqual([{ name: `biscuit, size ${size}`, quantity: 1 }]);
});

test('a smaller one where there is little room beside the seam', () => {
  const own = (room: number) => site({ inner: 300, outer: 400, room });
  const bought = (room: number) => biscuited(plain(own(room)), own(room), {}).hardware[0]!.name;
  expect([13, 11, 9, 2].map(bought)).toEqual(['20', '10', '0', '0'].map(size => `biscuit, size ${size}`));
});

test.each([
  [{ count: 3 }, wide, 'count', /3; 3 biscuits of size 0 leave .* at least 10 mm .*; allowed: at most 2/],
  [{ count: 3, size: '20' }, wide, 'count', /allowed: at most 1/],
  [{ size: '20' }, site({ inner: 230, outer: 310 }), 'size', /20; .* from the slots' ends .*allowed: size: "10"/],
  [
    {},
    site({ inner: 200, outer: 360, thickness: 8 }),
    'joint',
    /biscuit, its size 0; .* over .*joint: finger, or butt/,
  ],
])('%j is refused', (options, own, where, message) => {
  const { findings, part } = biscuited(plain(own), own, options);
  expect(findings.map(f => [f.level, f.rule, f.where])).toEqual([['stop', 'biscuit-slot', `rim.seam.${where}`]]);
  expect(findings[0]!.message).toMatch(message);
  expect(part.features).toEqual([]);
});

// one for every 150 mm of the band: common practice, 150 to 200 mm apart
test.each([
  [149, 1],
  [299, 1],
  [300, 2],
  [470, 3],
])('a band of %s mm takes %s where the plan states no number', (band, count) => {
  const own = site({ inner: 300, outer: 300 + band });
  expect(biscuited(plain(own), own, {}).hardware).toEqual([{ name: 'biscuit, size 20', quantity: count }]);
  expect(biscuited(plain(own), own, { count: 1 }).hardware[0]!.quantity).toBe(1);
});

test('fewer where a wide routed edge leaves little of the band', () => {
  const own = site({ inner: 300, outer: 600, edge: 80 });
  expect(biscuited(plain(own), own, {}).hardware).toEqual([{ name: 'biscuit, size 20', quantity: 1 }]);
});
