import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { readPlan, readVariants } from '../../lib/plan/index.js';
import { PLAN, wheelOf } from './valid-plan.js';

/** The example with variants of its own, written below it. */
const withVariants = (lines: string): string => `${PLAN}\nvariants:\n${lines}`;

const PLANS = withVariants(`  large: { title: Large helm, rim: { outside: 40 }, spokes: { overall: 52 }, trim: ~ }
  metric: { units: mm, rim: { outside: 762 }, paper: [a4] }
  lasered:
    method: laser
    rim: { thickness: 18mm, seam: { joint: butt } }
    spokes: { stock: ply }
    edges: ~
    cutter: { kind: laser, kerf: 0.2mm }
    hub: { bore: { axle: 15mm } }
`);

function refusal(text: string, variant?: string): string {
  try {
    readPlan(text, variant);
  } catch (error) {
    if (error instanceof Unusable) return error.message;
    throw error;
  }
  return 'read';
}

describe('variants of a plan', () => {
  test('the plan itself is read as if it had none', () => {
    expect(readPlan(PLANS)).toEqual(readPlan(PLAN));
  });

  test('keys laid over the plan, key by key; nothing takes a key away', () => {
    const large = readPlan(PLANS, 'large');
    const base = wheelOf(readPlan(PLAN));
    const wheel = wheelOf(large);
    expect(large.title).toBe('Large helm');
    expect(wheel.rim).toEqual({ ...base.rim, outside: 40 * 25.4 });
    expect(wheel.spokes).toEqual({ ...base.spokes, overall: 52 * 25.4 });
    expect(wheel.trim).toBeUndefined();
    expect(wheel.hub).toEqual(base.hub);
  });

  test('in other units the sizes stay the same, bare numbers of its own are in its own', () => {
    const metric = readPlan(PLANS, 'metric');
    const base = readPlan(PLAN);
    expect(metric.units).toBe('mm');
    expect(metric.paper).toEqual(['a4']);
    expect(wheelOf(metric)).toEqual(wheelOf(base));
    expect(metric.stock).toEqual(base.stock);
    expect(metric.cutter).toEqual(base.cutter);
    expect(metric.bed).toEqual(base.bed);
  });

  test('a cutter and a bore are one of several forms: they stand in the place of the plan’s', () => {
    const lasered = readPlan(PLANS, 'lasered');
    expect(lasered.cutter).toEqual({ kind: 'laser', kerf: 0.2 });
    expect(wheelOf(lasered).hub.bore).toEqual({ axle: 15 });
    expect(wheelOf(lasered)).not.toHaveProperty('edges');
  });

  test('all of them, the plan itself first, in the order written', () => {
    const all = readVariants(PLANS);
    expect([...all.keys()]).toEqual(['base', 'large', 'metric', 'lasered']);
    for (const [name, plan] of all) expect(plan).toEqual(readPlan(PLANS, name));
  });

  test.each([
    ['huge', /^variant is huge; allowed: .*base, large, metric, lasered/],
    ['larg', /did you mean large\?/],
    ['__proto__', /^variant is __proto__/],
  ])('a variant named %s is not there', (name, message) => {
    expect(refusal(PLANS, name)).toMatch(message);
  });

  test.each([
    ['  bad: { rim: { outside: no } }', /^variants\.bad\.rim\.outside is no; allowed:/],
    ['  bad: { rim: { bnad: 3 } }', /^variants\.bad\.rim\.bnad is not a key of the plan format; .*did you mean band/],
    ['  bad: { rim: { band: 20 } }', /^variants\.bad\.rim\.band is 20; allowed: less than half of rim\.outside/],
    ['  bad: { spokes: ~ }', /^variants\.bad\.spokes is ~; allowed: count, width/],
    ['  bad: { model: cart-wheel }', /^variants\.bad\.model is given; allowed: left out/],
    ['  bad: { variants: {} }', /^variants\.bad\.variants is given; allowed: left out/],
    ['  bad: { stock: { plank: { width: 1mm } } }', /^variants\.bad\.stock\.plank\.width is 1mm; allowed:/],
  ])('%s is refused by the name of its own field', (lines, message) => {
    expect(refusal(withVariants(lines), 'bad')).toMatch(message);
  });

  test.each([
    [
      '  base: {}',
      /^variants\.base is named base; allowed: a name of letters, digits and hyphens, at most 40, not base or all/,
    ],
    ['  ../x: {}', /named \.\.\/x/],
    ['  a: 3', /^variants\.a is 3; allowed: by name the keys that differ/],
    ['  a: {}\n  A: {}', /names that differ by more than case/],
  ])('%s is no list of variants', (lines, message) => {
    expect(refusal(withVariants(lines))).toMatch(message);
  });
});
