import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { area, bounds } from '../../lib/geometry/measure.js';
import { make } from '../../lib/make.js';
import { saveSet } from '../../lib/node/index.js';
import { readPlan } from '../../lib/plan/index.js';
import { readDxf } from '../../lib/readers/dxf.js';
import { near } from '../close.js';
import { judgeFolder, python, WITHOUT_PYTHON } from '../judges/python.js';

if (!python) console.warn(WITHOUT_PYTHON);
const folder = mkdtempSync(join(tmpdir(), 'rimwright-templates-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PLAN = readFileSync(new URL('../../samples/pier-helm-hand.yaml', import.meta.url), 'utf8');
const made = await make(readPlan(PLAN));
const drawn = (path: string, layers: string[]) => readDxf(String(made.files.get(path)), { layers });

describe('templates of the pier helm', () => {
  test('there is one of each part, the second side of the handles too, all on sheets of hardboard', () => {
    const ids = made.report!.parts.map(p => p.id);
    for (const id of [...ids, 'spoke-side']) expect([...made.files.keys()]).toContain(`templates/${id}.dxf`);
    const listed = made.report!.templates!.flatMap(t => t.templates);
    expect([...listed].sort()).toEqual([...ids, 'spoke-side'].sort());
    expect(made.report!.templates!.map(t => t.file)).toEqual(['templates/01-hardboard.dxf']);
    expect(made.files.has('templates/01-hardboard.svg')).toBe(true);
    expect(made.report!.stock.find(s => s.name === 'hardboard')?.needed).toBe(1);
  });

  test('an outline to trace is the part, less its notches; on the sheet it is larger by the kerf', async () => {
    const [part, template, sheet] = await Promise.all([
      drawn('parts/felloe.dxf', ['OUTSIDE']),
      drawn('templates/felloe.dxf', ['OUTSIDE']),
      drawn('templates/01-hardboard.dxf', ['OUTSIDE']),
    ]);
    const [whole, notched] = [part.regions[0]!, template.regions[0]!];
    near(bounds(notched.outer).maxX, bounds(whole.outer).maxX);
    // two lap lines, a notch at each end
    near(area(notched), area(whole) - 4 * 4.5, 1e-4);
    const cut = sheet.regions.map(area).find(a => Math.abs(a - area(notched)) < 200)!;
    expect(cut).toBeGreaterThan(area(notched));
  });

  test('they are left out where no more than cut files are asked for, and where the plan does not ask', async () => {
    const only = await make(readPlan(PLAN), {}, { only: 'cut' });
    expect([...only.files.keys()].some(f => f.startsWith('templates/'))).toBe(false);
    const without = await make(readPlan(PLAN.replace(/^template:.*$/m, '')));
    expect([...without.files.keys()].some(f => f.startsWith('templates/'))).toBe(false);
    expect(without.report!.templates).toBeUndefined();
  });

  test.runIf(python)(
    'an outsider finds nothing wrong; the folder may be written again',
    async () => {
      await saveSet(join(folder, 'out'), made.files);
      await saveSet(join(folder, 'out'), made.files);
      const { status, output } = judgeFolder(join(folder, 'out'), ['files', 'sheets']);
      expect(output).toMatch(/^0 /m);
      expect(status).toBe(0);
    },
    60_000,
  );
});

test('a stock that is not there, a saw, and another method are refused by name', () => {
  const issue = (text: string): string => {
    try {
      readPlan(text);
    } catch (error) {
      if (error instanceof Unusable) return error.message;
    }
    return '';
  };
  expect(issue(PLAN.replace('template: { stock: hardboard', 'template: { stock: masonite'))).toContain(
    'template.stock is masonite',
  );
  expect(issue(PLAN.replace('{ kind: laser, kerf: 0.2mm } }', '{ kind: saw, kerf: 1/16 } }'))).toContain(
    'template.cutter',
  );
  const lasered = PLAN.replace('method: hand', 'method: laser').replace(
    'kind: saw, kerf: 1/16',
    'kind: laser, kerf: 0.2mm',
  );
  expect(issue(lasered)).toContain('left out, since method is laser');
});
