import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { make } from '../../lib/make.js';
import { saveSet } from '../../lib/node/index.js';
import { readPlan } from '../../lib/plan/index.js';
import { readDxf } from '../../lib/readers/dxf.js';
import { judgeFolder, python, WITHOUT_PYTHON } from '../judges/python.js';

if (!python) console.warn(WITHOUT_PYTHON);
const folder = mkdtempSync(join(tmpdir(), 'rimwright-files-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PLAN = readFileSync(new URL('../../samples/ferry-helm.yaml', import.meta.url), 'utf8');
const made = await make(readPlan(PLAN), {}, { only: 'cut' });
const older = await make(readPlan(`${PLAN}\nlabels: text\n`), {}, { only: 'cut', dxf: 'r12', units: 'in' });

test.runIf(python)(
  'an outsider finds nothing wrong with older files in inches, labels as text',
  async () => {
    await saveSet(join(folder, 'older'), older.files);
    const { status, output } = judgeFolder(join(folder, 'older'));
    expect(output).toMatch(/^0 /m);
    expect(status).toBe(0);
  },
  60_000,
);

test('they hold the outlines of the files there are otherwise', async () => {
  const paths = [...made.files.keys()].filter(p => p.endsWith('.dxf'));
  expect([...older.files.keys()]).toEqual([...made.files.keys()]);
  for (const path of paths) {
    const layers = ['OUTSIDE', 'INSIDE'];
    const [ours, theirs] = await Promise.all([made, older].map(m => readDxf(String(m.files.get(path)), { layers })));
    const corners = (d: typeof ours) => d!.regions.flatMap(r => [r.outer, ...r.openings]).flat();
    expect(corners(theirs)).toHaveLength(corners(ours).length);
    corners(ours).forEach((v, i) => {
      expect(Math.abs(v.x - corners(theirs)[i]!.x)).toBeLessThan(1e-7);
      expect(Math.abs(v.y - corners(theirs)[i]!.y)).toBeLessThan(1e-7);
      expect(Math.abs(v.bulge - corners(theirs)[i]!.bulge)).toBeLessThan(1e-7);
    });
  }
});

test('the plan asks for text, the option for lines: the option is heard', async () => {
  const lines = await make(readPlan(`${PLAN}\nlabels: text\n`), {}, { only: 'cut', labels: 'lines' });
  expect(lines.files.get('parts/spoke.dxf')).toBe(made.files.get('parts/spoke.dxf'));
  expect(String(older.files.get('parts/spoke.dxf'))).toContain('\nTEXT\n');
});
