import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { make } from '../../lib/make.js';
import { pngOf } from '../../lib/node/index.js';
import { readPlan } from '../../lib/plan/index.js';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const DIST = new URL('../../dist/lib/', import.meta.url).href;
const names = ['ferry-helm.yaml', 'desk-helm-laser.yaml', 'pier-helm-hand.yaml'];

/** A digest of every file a plan makes, by path. */
async function digest(name: string): Promise<string> {
  const { files } = await make(readPlan(readFileSync(SAMPLES + name, 'utf8')), { png: pngOf });
  const hash = createHash('sha256');
  for (const [path, bytes] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) hash.update(path).update(bytes);
  return hash.digest('hex');
}

/** The same, worked out by another process from the built package. */
const SCRIPT = `
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
const { make, readPlan } = await import('${DIST}index.js');
const { pngOf } = await import('${DIST}node/index.js');
const { files } = await make(readPlan(readFileSync(process.argv[2], 'utf8')), { png: pngOf });
const hash = createHash('sha256');
for (const [path, bytes] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) hash.update(path).update(bytes);
console.log(hash.digest('hex'));
`;
const elsewhere = (node: string, name: string, env: Record<string, string> = {}): string =>
  execFileSync(node, ['--input-type=module', '-', SAMPLES + name], {
    input: SCRIPT,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  }).trim();

/** Other versions of Node to try, by path. */
const nodes = (process.env['RIMWRIGHT_NODES'] ?? '').split(':').filter(Boolean);
if (nodes.length === 0)
  console.warn('skipped: other versions of Node (set RIMWRIGHT_NODES to their paths, parted by colons)');

describe.each(names)('%s makes the same bytes', name => {
  let here = '';
  beforeAll(async () => {
    here = await digest(name);
  });

  test('twice in one process', async () => expect(await digest(name)).toBe(here));
  test('in another process, time zone and language', () => {
    const env = { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' };
    expect(elsewhere(process.execPath, name, env)).toBe(here);
  });
  test.each(nodes)('with %s', node => expect(elsewhere(node, name)).toBe(here));
});
