import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';

const head = 'rimwright: 1\ntitle: Steps\nunits: mm\n';
const ply = (thickness: number, species = 'birch plywood'): string =>
  `stock: { s: { kind: sheet, width: 1250, length: 2500, thickness: ${thickness}, species: ${species} } }\n`;
const made = (text: string) => {
  const { value, findings } = check(readPlan(text));
  if (!value) throw new Error(findings.map(f => f.message).join('\n'));
  return value;
};
/** Where the first step of each is; every one is there. */
const order = (steps: readonly string[], ...words: readonly RegExp[]): number[] =>
  words.map(word => {
    const at = steps.findIndex(s => word.test(s));
    expect(at, `${word} in\n${steps.join('\n')}`).toBeGreaterThanOrEqual(0);
    return at;
  });
const rising = (of: readonly number[]): void => expect(of).toEqual([...new Set(of)].sort((a, b) => a - b));

describe('what is cut is cut before anything is tried dry, and tried before it is glued', () => {
  test('a cart wheel by hand: every hole is drilled before a felloe is glued to a spoke; dowels go in first', () => {
    const { steps } = made(`${head}model: cart-wheel
rim: { outside: 600, band: 70, seam: { joint: dowel }, stock: s }
spokes: { count: 10, width: 34, stock: s }
nave: { diameter: 160, bore: { axle: 20 }, stock: s }
method: hand
${ply(30)}`);
    rising(
      order(
        steps,
        /^Drill the dowel holes/,
        /^Lay the wheel out dry/,
        /^Glue each felloe to its spokes/,
        /^Glue the felloes/,
      ),
    );
    const glued = steps.filter(s => /^Glue the felloes/.test(s));
    expect(glued[0]).toContain(
      'glue the dowels into the holes of one end of each first, then draw the felloes together',
    );
  });

  test('a helm scarfed by router: halved, turned over between the faces, then laid out dry', () => {
    const { steps } = made(`${head}model: helm-wheel
rim: { outside: 700, band: 90, felloes: 5, seam: { joint: scarf }, stock: s }
spokes: { count: 5, width: 32, overall: 960, stock: s }
hub: { diameter: 200, stock: s }
method: router
${ply(24)}`);
    rising(
      order(
        steps,
        /^Cut every piece/,
        /^Parts worked on both faces/,
        /half laps/,
        /halve the felloes/,
        /^Lay the wheel out dry/,
        /^Glue the felloes/,
      ),
    );
    expect(steps.find(s => s.startsWith('Parts worked'))).toMatch(
      /-back.*register pins.*turn it over.*the other file, which frees the parts/,
    );
  });

  test('by hand nothing is turned over on pins', () => {
    const plan = readFileSync(new URL('../../samples/pier-helm-hand.yaml', import.meta.url), 'utf8');
    expect(made(plan).steps.join(' ')).not.toContain('register pins');
  });
});

describe('what plastic is glued to', () => {
  const wheel = (species: string): string => `${head}model: prize-wheel
face: { diameter: 600, stock: s }
sectors: { count: 12 }
pegs: { diameter: 10 }
flapper: { stock: s }
plate: { stock: s }
hub: { diameter: 200, bore: { axle: 16 }, stock: s }
method: hand
${ply(18, species)}`;
  const epoxy = (species: string) => made(wheel(species)).hardware.find(h => h.name.startsWith('two-part epoxy'));

  test.each(['acrylic', 'foam'])('%s: an epoxy for flanges, pins and pegs', species => {
    expect(epoxy(species)?.use).toMatch(/peg/);
  });

  test('wood asks for none', () => expect(epoxy('birch plywood')).toBeUndefined());
});
