import { mkdtempSync, rmSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Ring } from '../../lib/nesting/engine/polygon.js';
import type { Problem } from '../../lib/nesting/engine/prepared.js';
import { inline, runWith } from '../../lib/nesting/engine/rounds.js';
import { searchSheets } from '../../lib/nesting/engine/search-sheets.js';
import { searchStrip } from '../../lib/nesting/engine/search-strip.js';
import { nestClock, nestThreads } from '../../lib/node/nest-threads.js';

const folder = mkdtempSync(fileURLToPath(new URL('.run-', import.meta.url)));
const worker = pathToFileURL(`${folder}/nest-worker.mjs`);

beforeAll(async () => {
  const entry = fileURLToPath(new URL('../../lib/node/nest-worker.ts', import.meta.url));
  await build({
    entryPoints: [entry],
    outfile: fileURLToPath(worker),
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
});
afterAll(() => rmSync(folder, { recursive: true }));

const ring = (...points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => ({ x, y }));
const turns = [0, 1, 2, 3].map(k => ({ angle: (k * Math.PI) / 2, mirrored: false }));
const problem: Problem = {
  kinds: [
    { shape: { outline: ring([0, 0], [40, 0], [40, 25], [0, 25]), openings: [] }, quantity: 7, turns },
    { shape: { outline: ring([0, 0], [50, 0], [10, 35]), openings: [] }, quantity: 9, turns },
  ],
  stocks: [{ width: 5000, height: 100, forbidden: [], price: 1 }],
};

test('steps have the same layout inline and on 1, 2 and 4 threads', async () => {
  const effort = { kind: 'steps', steps: 100 } as const;
  const sheets: Problem = { ...problem, stocks: [{ width: 110, height: 100, forbidden: [], price: 1 }] };
  const strip = await runWith(searchStrip(problem, effort, 5), inline());
  const bins = await runWith(searchSheets(sheets, effort, 5), inline());
  for (const threads of [1, 2, 4]) {
    const pool = nestThreads(threads, worker);
    try {
      expect(await runWith(searchStrip(problem, effort, 5), pool.run)).toEqual(strip);
      expect(await runWith(searchSheets(sheets, effort, 5), pool.run)).toEqual(bins);
    } finally {
      await pool.close();
    }
  }
});

test('seconds are kept, and what was found is a layout', async () => {
  const pool = nestThreads(2, worker);
  const begun = nestClock();
  try {
    const layout = await runWith(
      searchStrip(problem, { kind: 'seconds', seconds: 2, threads: 2, clock: nestClock }, 1),
      pool.run,
    );
    expect(layout.length).toBeGreaterThan((7 * 1000 + 9 * 875) / 100);
    expect(layout.length).toBeLessThan(1.5 * ((7 * 1000 + 9 * 875) / 100));
  } finally {
    await pool.close();
  }
  expect(nestClock() - begun).toBeLessThan(8000);
});
