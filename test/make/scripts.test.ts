import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, describe, expect, test } from 'vitest';
import type { Report } from '../../lib/papers/report.js';
import { judgeFolder, python } from '../judges/python.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const SCRIPTS = join(ROOT, 'samples/scripts');

/** Inside the project, so that its packages are found. */
const CACHE = join(ROOT, 'node_modules/.cache');
mkdirSync(CACHE, { recursive: true });
const folder = mkdtempSync(join(CACHE, 'scripts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A sample script run as its reader would run it, on the library as it stands. */
async function run(name: string): Promise<string> {
  const [outfile, out] = [join(folder, `${name}.mjs`), join(folder, `${name}-out`)];
  const alias = { rimwright: join(ROOT, 'lib/index.ts'), 'rimwright/node': join(ROOT, 'lib/node/index.ts') };
  const external = Object.keys(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).dependencies);
  await build({
    entryPoints: [join(SCRIPTS, name)],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    alias,
    external,
  });
  execFileSync(process.execPath, [outfile, out], { stdio: 'pipe' });
  return out;
}

describe.each(readdirSync(SCRIPTS))('samples/scripts/%s', name => {
  test('runs and writes a folder an outsider finds nothing wrong with', async () => {
    const out = await run(name);
    const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;
    expect(report.findings.filter(f => f.level === 'stop')).toEqual([]);
    expect(readdirSync(join(out, 'parts'))).toHaveLength(report.parts.length * 2);
    if (!python) return;
    expect(judgeFolder(out).output).toMatch(/^0 /m);
  });
});

test('the lantern window is cut through the front disc', async () => {
  const out = await run('lantern-window.ts');
  const text = readFileSync(join(out, 'parts/hub-disc-front.dxf'), 'utf8');
  expect(text).toContain('INSIDE');
});

test('the badge is cleared 2 mm deep into the name band, its glasses still circles', async () => {
  const out = await run('name-band.ts');
  const text = readFileSync(join(out, 'parts/name-band.dxf'), 'utf8');
  expect(text).toContain('POCKET_2');
  expect(text.match(/\nCIRCLE\n/g)).toHaveLength(4);
});
