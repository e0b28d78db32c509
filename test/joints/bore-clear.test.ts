import { expect, test } from 'vitest';
import { boreClear } from '../../lib/joints/bore-clear.js';
import { dowelled } from '../../lib/joints/dowel.js';
import { fingered } from '../../lib/joints/finger.js';
import { keyed } from '../../lib/joints/key.js';
import { scarfed } from '../../lib/joints/scarf.js';
import { plain, site } from './site.js';

const own = site();

test('beside the reach of a joint there is room', () => {
  const finger = fingered(plain(own), own, { count: 5, length: 20 });
  expect(boreClear(finger, { u: 265, v: 15 }, 4)).toBe(true);
  expect(boreClear(finger, { u: 265, v: 13 }, 4)).toBe(false);
});

test('in the middle of a wide finger there is, on its edges there is none', () => {
  const { glue: _, ...finger } = fingered(plain(own), own, { count: 3, length: 40 });
  // three fingers of 23 mm from 230 on, the middle one from 253 to 276
  expect(boreClear(finger, { u: 264.5, v: 0 }, 4)).toBe(true);
  expect(boreClear(finger, { u: 255, v: 0 }, 4)).toBe(false);
});

test('through halves that lie on each other there is, but not on their shoulders', () => {
  const scarf = scarfed(plain(own), own, { overlap: 0.2 });
  expect(boreClear(scarf, { u: 265, v: 0 }, 4)).toBe(true);
  expect(boreClear(scarf, { u: 265 * Math.cos(0.1), v: 265 * Math.sin(0.1) }, 4)).toBe(false);
});

test('in a key and in the hole of a dowel there is none', () => {
  expect(boreClear(keyed(plain(own), own, {}), { u: 265, v: 12 }, 2)).toBe(false);
  const dowels = dowelled(plain(own), own, { count: 2, diameter: 8 });
  expect(boreClear(dowels, { u: 247.5, v: 14 }, 2)).toBe(false);
  expect(boreClear(dowels, { u: 265, v: 14 }, 4)).toBe(true);
});
