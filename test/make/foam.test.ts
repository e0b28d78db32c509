import { describe, expect, test } from 'vitest';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { PAGED } from './paged-models.js';

/** A plan's own keys, model by model, all of one stock. */
const KEYS: Readonly<Record<string, string>> = {
  'helm-wheel': `rim: { outside: 700, band: 90, felloes: 5, seam: { joint: butt }, stock: s }
spokes: { count: 10, width: 32, overall: 960, stock: s }
hub: { diameter: 200, bore: { axle: 16 }, stock: s }
trim: { faces: front, band: 50, segments: 5, plugs: { diameter: 10, each: 2 }, stock: s }`,
  'cart-wheel': `rim: { outside: 600, band: 60, stock: s }
spokes: { count: 10, width: 34, stock: s }
nave: { diameter: 160, bore: { axle: 20 }, stock: s }
tyre: { thickness: 4 }
cap: { faces: both, diameter: 100, stock: s }
turns: shaft`,
  'ring-frame': `ring: { outside: 500, band: 70, sweep: 180deg, segments: 3, layers: 2, stock: s }
rebate: { width: 10, depth: 8 }
legs: { height: 300 }`,
  'prize-wheel': `face: { diameter: 600, stock: s }
sectors: { count: 12 }
flapper: { stock: s }
hub: { diameter: 200, bore: { axle: 16 }, stock: s }
plate: { stock: s }`,
  'water-wheel': `rim: { outside: 700, band: 90, felloes: 6, stock: s }
paddles: { count: 6, stock: s }
spokes: { count: 6, width: 45, stock: s }
hub: { diameter: 170, bore: { axle: 20 }, stock: s }
axle: { length: 200 }`,
  'cable-reel': `flange: { diameter: 500, stock: s }
core: { diameter: 240, staves: 10, length: 250, stock: s }
rods: { count: 4, diameter: 8 }`,
  stand: `carries: { wheel: prize, diameter: 600, weight: 0.5 }
axle: { height: 900, bore: { axle: 16 } }
uprights: { stock: s }
foot: { stock: s }
base: { stock: s }`,
};

const made = (model: string, keys: string, species: string) =>
  check(
    readPlan(`rimwright: 1
title: Of another stuff
units: mm
model: ${model}
${keys}
method: hand
stock: { s: { kind: sheet, width: 1250, length: 2500, thickness: 30, species: ${species} } }
`),
  );

test('every model with a page is tried in foam: give it a row of KEYS', () => {
  expect(Object.keys(KEYS).sort()).toEqual([...PAGED].sort());
});

describe.each(Object.entries(KEYS))('a %s', (model, keys) => {
  test('of foam: no screw, no dowel, no pin driven, no solvent, and how it is worked', () => {
    const { value, findings } = made(model, keys, 'foam');
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    expect(findings.map(f => f.rule)).toContain('brittle');
    expect(findings.map(f => f.rule)).not.toContain('wood-only');
    const bought = value!.hardware.map(h => h.name);
    expect(
      bought.filter(name => /wood screw|locking screw|panel pin|^dowel,|biscuit|contact glue|wood glue/.test(name)),
    ).toEqual([]);
    expect(bought).toContain('foam adhesive without solvents');
    const [care, ...steps] = value!.steps;
    expect(care).toMatch(/^Foam: .*no glue, filler or paint with solvents/);
    expect(steps.filter(s => /(?<!a board all over, and )\bscrews?\b(?! that board)/i.test(s))).toEqual([]);
  });

  test('of wood: how much glue, how long every screw', () => {
    const { value } = made(model, keys, 'birch plywood');
    expect(value!.hardware.find(h => h.name === 'wood glue')?.use).toMatch(/about \d+ g$/);
    const screws = value!.hardware.filter(h => h.name.startsWith('wood screw'));
    for (const { name } of screws) expect(name).toMatch(/\d mm long$/);
  });
});
