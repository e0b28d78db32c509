import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { type Made, make } from '../../lib/make.js';
import { pngOf, saveSet } from '../../lib/node/index.js';
import { readPlan } from '../../lib/plan/index.js';
import { judgeFolder, python, WITHOUT_PYTHON } from '../judges/python.js';
import { overlaps } from '../judges/solids.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const read = (name: string): string => readFileSync(join(SAMPLES, name), 'utf8');
const names = readdirSync(SAMPLES).filter(name => name.endsWith('.yaml'));
const made = new Map<string, Promise<Made>>(names.map(n => [n, make(readPlan(read(n)), { png: pngOf })]));
const texts = (files: Made['files']): Map<string, string> =>
  new Map([...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])));

if (!python) console.warn(WITHOUT_PYTHON);

describe.each(names)('%s', name => {
  const folder = mkdtempSync(join(tmpdir(), 'rimwright-sample-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('can be built as it is', async () => {
    const { findings, files, report } = await made.get(name)!;
    expect(findings.filter(f => f.level === 'stop')).toEqual([]);
    const parts = report!.parts.flatMap(p => [`parts/${p.id}.dxf`, `parts/${p.id}.svg`]);
    const pictures = ['assembled', 'exploded'].flatMap(name => [`${name}.svg`, `${name}.png`]);
    for (const path of ['report.json', ...pictures, ...parts]) expect([...files.keys()]).toContain(path);
  });

  test('its written parts, put together, take no room twice', async () => {
    const { files, report } = await made.get(name)!;
    expect(overlaps(texts(files), report!)).toEqual([]);
  });

  test.runIf(python)('an outsider finds nothing wrong with the folder', async () => {
    await saveSet(join(folder, 'out'), (await made.get(name)!).files);
    const { status, output } = judgeFolder(join(folder, 'out'));
    expect(output).toMatch(/^0 /m);
    expect(status).toBe(0);
  });
});

test('the picture in the README is the one the ferry helm makes', async () => {
  const { files } = await made.get('ferry-helm.yaml')!;
  expect(read('ferry-helm.svg')).toBe(files.get('assembled.svg'));
});
