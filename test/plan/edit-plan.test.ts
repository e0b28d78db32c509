import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import type { CouponRead } from '../../lib/models/read-coupon.js';
import { couponLines, intoPlan } from '../../lib/plan/coupon-lines.js';
import { editPlan } from '../../lib/plan/edit-plan.js';
import { readPlan } from '../../lib/plan/index.js';

const sample = (name: string): string => readFileSync(new URL(`../../samples/${name}.yaml`, import.meta.url), 'utf8');

const ferry = sample('ferry-helm');

/** Lines that differ, old and new. */
const changedLines = (before: string, after: string): [string, string][] => {
  const [a, b] = [before.split('\n'), after.split('\n')];
  expect(b).toHaveLength(a.length);
  return a.flatMap((line, i): [string, string][] => (line === b[i] ? [] : [[line, b[i]!]]));
};

const refusal = (work: () => unknown): string => {
  try {
    work();
  } catch (error) {
    if (error instanceof Unusable) return error.message;
    throw error;
  }
  return 'nothing refused';
};

describe('a plan with values written into it', () => {
  test('only the value changes: remarks, spaces and order stay', () => {
    expect(
      changedLines(
        ferry,
        editPlan(ferry, [
          { path: ['rim', 'outside'], value: '31in' },
          { path: ['copies'], value: 2 },
        ]),
      ),
    ).toEqual([
      ['  outside: 30                  # diameter', '  outside: 31in                  # diameter'],
      ['copies: 1', 'copies: 2'],
    ]);
  });

  test('keys it has not got are added where their map is: in braces, on a line, at the end', () => {
    const bare = ferry.replace(/^fit:.*\n/m, '').replace(/^cutter:.*\n/m, '');
    const edited = editPlan(bare, [
      { path: ['cutter', 'kind'], value: 'router' },
      { path: ['cutter', 'diameter'], value: '6.4mm' },
      { path: ['fit', 'lap'], value: '0.2mm' },
      { path: ['rim', 'thickness'], value: '19mm' },
    ]);
    expect(edited.endsWith('\ncutter: { kind: router, diameter: 6.4mm }\nfit: { lap: 0.2mm }\n')).toBe(true);
    expect(edited).toContain('  stock: plank\n  thickness: 19mm\nspokes:');
    expect(edited.replace(/\n(cutter|fit| {2}thickness): .*(?=\n)/g, '')).toBe(
      bare.replace(/\n(cutter|fit| {2}thickness): .*(?=\n)/g, ''),
    );
  });

  test('line breaks of Windows, no break at the end, JSON', () => {
    const windows = ferry.replace(/^copies:.*\n/m, '').replaceAll('\n', '\r\n');
    expect(editPlan(windows, [{ path: ['copies'], value: 2 }])).toBe(`${windows}copies: 2\r\n`);
    const ended = `${ferry.replace(/^copies:.*\n/m, '')}...\n`;
    expect(editPlan(ended, [{ path: ['copies'], value: 2 }])).toBe(ended.replace('...', 'copies: 2\n...'));
    const open = ferry.replace(/^copies:.*\n/m, '').trimEnd();
    expect(editPlan(open, [{ path: ['copies'], value: 2 }])).toBe(`${open}\ncopies: 2`);
    const json = JSON.stringify({ ...sampleData(), copies: undefined }, null, 2);
    const edited = editPlan(json, [
      { path: ['fit', 'lap'], value: '0.2mm' },
      { path: ['copies'], value: 3 },
    ]);
    expect(JSON.parse(edited)).toMatchObject({ fit: { lap: '0.2mm' }, copies: 3 });
  });

  test('what stands elsewhere by an alias is not written over', () => {
    const aliased = ferry.replace('fit: {', 'fit: &f {').replace('copies: 1', 'variants: { long: { fit: *f } }');
    expect(readPlan(aliased, 'long').title).toBe('Ferry helm');
    const change = [{ path: ['variants', 'long', 'fit', 'lap'], value: '0.2mm' }] as const;
    expect(refusal(() => editPlan(aliased, change))).toContain('variants.long.fit is *f');
  });

  test('a plan that could not be used afterwards is refused', () => {
    expect(refusal(() => editPlan(ferry, [{ path: ['fit', 'lap'], value: '9mm' }]))).toContain('fit.lap is 9mm');
    expect(refusal(() => editPlan('rimwright: 1', [{ path: ['copies'], value: 2 }]))).toContain('model');
  });

  test('any of its numbers, of any layout', () => {
    const paths = [
      ['rim', 'band'],
      ['fit', 'lap'],
      ['fit', 'seam'],
      ['cutter', 'diameter'],
      ['stock', 'ply', 'price'],
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...paths),
        fc.integer({ min: 10, max: 29 }),
        fc.constantFrom('', '\n# the end\n', '\n...\n'),
        (path, tenths, end) => {
          const value = path[2] === 'price' ? tenths / 10 : `${tenths / 10}mm`;
          const band = path[1] === 'band' ? `${80 + tenths}mm` : value;
          const plan = `# top\n${ferry.trimEnd()}${end}`;
          const edited = editPlan(plan, [{ path: [...path], value: band }]);
          expect(edited.replace(String(band), '')).not.toBe(edited);
          for (const remark of ['# top', '# diameter over the tips', ...(end.includes('#') ? ['# the end'] : [])])
            expect(edited).toContain(remark);
        },
      ),
      { numRuns: 25 },
    );
  }, 30_000);
});

function sampleData(): object {
  return {
    rimwright: 1,
    title: 'Ferry helm',
    units: 'in',
    model: 'helm-wheel',
    rim: { outside: 30, band: '4-1/4', felloes: 5, seam: { joint: 'butt', at: 'between-spokes' }, stock: 'plank' },
    spokes: { count: 10, width: '1-1/4', overall: 41, handle: { shape: 'plain' }, stock: 'plank' },
    hub: { diameter: 8, stock: 'plank' },
    method: 'router',
    stock: { plank: { kind: 'board', width: '7-1/4', thickness: '3/4', length: 96 } },
  };
}

const READ: CouponRead = {
  cutter: { kind: 'router', diameter: 6.38 },
  fits: [{ fit: 'lap', value: 0.21, step: 'S4', clearance: 0.15 }],
};

describe('what a coupon tells', () => {
  test('as lines to paste', () => {
    expect(couponLines(READ)).toEqual(['cutter: { kind: router, diameter: 6.38mm }', 'fit: { lap: 0.21mm }']);
  });

  test('into a plan: its cutter and its fits, and nothing else', () => {
    const { text } = intoPlan(ferry, READ);
    expect(changedLines(ferry, text).map(([, after]) => after)).toEqual([
      'cutter: { kind: router, diameter: 6.38mm, reach: 1, pass: 1/4 }',
      'fit: { lap: 0.21mm, wedge: 0mm, bore: -0.05mm, plug: -0.02mm }',
    ]);
    expect(readPlan(text).cutter).toMatchObject({ diameter: 6.38, reach: 25.4 });
  });

  test("as a stock's own cutter", () => {
    const { text } = intoPlan(ferry, { ...READ, fits: [] }, 'thin');
    expect(changedLines(ferry, text)[0]![1]).toContain('cutter: { kind: router, diameter: 6.38mm } }');
    expect(readPlan(text).stock.find(s => s.name === 'thin')?.cutter).toEqual(READ.cutter);
  });

  test('under the name a model has for that kind of joint', () => {
    const { fields } = intoPlan(sample('ferry-stand'), { fits: READ.fits });
    expect(fields).toEqual([{ path: ['fit', 'slot'], value: '0.21mm' }]);
  });

  test('another kind of cutter, a stock or a fit the plan has not got are refused', () => {
    expect(refusal(() => intoPlan(ferry, { ...READ, cutter: { kind: 'laser', kerf: 0.2 } }))).toBe(
      'cutter.kind is router; allowed: laser: what the coupon was cut with',
    );
    expect(refusal(() => intoPlan(ferry, READ, 'oak'))).toBe('stock is oak; allowed: plank, batten, ply, thin');
    const plug = [{ fit: 'wedge', value: 0.1, step: 'loose', clearance: 0 }] as const;
    expect(refusal(() => intoPlan(sample('ferry-stand'), { fits: plug }))).toBe(
      'fit.wedge is 0.1mm; allowed: in a stand: fit.slot, fit.bore',
    );
  });
});
