import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { polygon, solid } from '../../lib/geometry/outline.js';
import type { NestLayout, NestPart, NestStock } from '../../lib/nesting/job.js';
import type { NestReport } from '../../lib/papers/nest-report.js';
import type { Report } from '../../lib/papers/report.js';
import { layoutFaults } from '../nesting/faults.js';

// A real program is sent a real SIGINT: only a process of its own shows what Ctrl-C comes to.

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const programme = mkdtempSync(at('.run-'));
const root = mkdtempSync(join(tmpdir(), 'rimwright-interrupt-'));
let out = '';
let count = 0;

beforeAll(async () => {
  await build({
    entryPoints: { rimwright: at('../../bin/rimwright.ts'), 'nest-worker': at('../../lib/node/nest-worker.ts') },
    outdir: programme,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  });
});
beforeEach(() => {
  out = join(root, `out-${++count}`);
});
afterAll(() => {
  rmSync(programme, { recursive: true });
  rmSync(root, { recursive: true });
});

interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly seconds: number;
  readonly said: string;
}

function ended(child: ChildProcess): Promise<Ended> {
  const begun = Date.now();
  let said = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    said += String(chunk);
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    said += String(chunk);
  });
  return new Promise(resolve => {
    child.on('exit', (code, signal) => resolve({ code, signal, seconds: (Date.now() - begun) / 1000, said }));
  });
}

const start = (...argv: string[]): ChildProcess =>
  spawn(process.execPath, [join(programme, 'rimwright.js'), ...argv, '--out', out], { stdio: 'pipe' });

const wait = (seconds: number): Promise<void> => new Promise(resolve => setTimeout(resolve, 1000 * seconds));

/** An hour's search, stopped after some seconds. */
async function stopped(...argv: string[]): Promise<Ended> {
  const child = start(...argv, '--seconds', '3600', '--threads', '2');
  const end = ended(child);
  await wait(8);
  child.kill('SIGINT');
  return end;
}

const SHAPES = [
  [0, 0, 300, 0, 300, 60, 60, 60, 60, 240, 0, 240],
  [0, 0, 200, 40, 260, 180, 90, 230, -40, 110],
  [0, 0, 420, 0, 420, 35, 0, 35],
];
const parts: NestPart[] = SHAPES.map((xy, k) => {
  const points = Array.from({ length: xy.length / 2 }, (_, i) => ({ x: xy[2 * i]!, y: xy[2 * i + 1]! }));
  return { id: `part-${k + 1}`, quantity: 12, region: solid(polygon(points)) };
});
const stock: NestStock = { kind: 'sheet', name: 'ply', length: 1220, width: 610, margin: 5, price: 26 };

test('nest: Ctrl-C ends an hour of search within seconds, with exit code 0 and a whole, valid layout', async () => {
  const file = join(root, 'parts.json');
  const listed = parts.map(p => ({ id: p.id, quantity: p.quantity, outline: p.region.outer.map(v => [v.x, v.y]) }));
  writeFileSync(file, JSON.stringify({ parts: listed }));
  const end = await stopped('nest', file, '--stock', 'ply=610x1220@26', '--gap', '4');
  expect(end).toMatchObject({ code: 0, signal: null });
  expect(end.seconds).toBeLessThan(60);
  const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as NestReport;
  const files = report.sheets.flatMap(s => [
    s.file,
    s.file.replace('.dxf', '.svg'),
    s.picture,
    s.picture.replace('.svg', '.png'),
  ]);
  for (const f of files) expect(existsSync(join(out, f))).toBe(true);
  const layout: NestLayout = {
    pieces: report.sheets.map((s, i) => ({
      stock: s.stock,
      number: i + 1,
      utilisation: s.utilisation,
      placements: s.placements.map(({ part, turn, x, y, flipped }) => ({
        part,
        motion: { mirrored: flipped, turn: (turn * Math.PI) / 180, x, y },
      })),
    })),
    unplaced: report.unplaced,
    cost: report.cost,
    utilisation: report.utilisation,
    findings: [],
  };
  expect(layoutFaults(parts, [stock], layout, 4)).toEqual([]);
  expect(end.said).toContain('36 parts on');
}, 120_000);

test('make: Ctrl-C keeps the best layout, and everything is written', async () => {
  const plan = at('../../samples/ferry-helm.yaml');
  const end = await stopped('make', plan);
  expect(end).toMatchObject({ code: 0, signal: null });
  expect(end.seconds).toBeLessThan(60);
  const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;
  const laid = report.sheets.flatMap(s => s.parts);
  for (const part of report.parts) expect(laid.filter(id => id === part.id)).toHaveLength(part.quantity);
  expect(report.stock.filter(s => s.needed > 0).map(s => [s.name, s.needed])).toEqual([
    ['plank', 1],
    ['batten', 2],
    ['ply', 1],
    ['thin', 1],
  ]);
  for (const s of report.sheets) expect(existsSync(join(out, s.file)) && existsSync(join(out, s.picture))).toBe(true);
}, 120_000);

test('a short make has no such ear: Ctrl-C ends it as any program, and leaves nothing half written', async () => {
  const child = start('make', at('../../samples/ferry-helm.yaml'));
  const end = ended(child);
  await wait(0.15);
  child.kill('SIGINT');
  const { code, signal } = await end;
  // on a quick machine it may be done before
  if (code === 0) expect(existsSync(join(out, 'report.json'))).toBe(true);
  else expect([signal, existsSync(out)]).toEqual(['SIGINT', false]);
}, 60_000);

test('steps in threads: the same files with one thread or two, in a pipe without a bar', async () => {
  const made = async (threads: string): Promise<string> => {
    const end = await ended(
      start('make', at('../../samples/pier-helm-hand.yaml'), '--effort', '120', '--threads', threads),
    );
    expect(end.code).toBe(0);
    expect(end.said).not.toContain('nesting');
    const report = readFileSync(join(out, 'report.json'), 'utf8');
    return report + (JSON.parse(report) as Report).sheets.map(s => readFileSync(join(out, s.file), 'utf8')).join('');
  };
  expect(await made('2')).toBe(await made('1'));
}, 120_000);

test.each([
  [['--seconds', '0'], /--seconds is 0; allowed: a number, 1 to 86400/],
  [['--seconds', 'long'], /--seconds is long/],
  [['--effort', '0'], /--effort is 0; allowed: a whole number, 1 to/],
  [['--threads', '1.5'], /--threads is 1\.5; allowed: a whole number, 1 to 64/],
  [['--seconds', '5', '--seconds', '6'], /--seconds is given 2 times/],
])('make %j is refused with exit code 2, and nothing is written', async (words, message) => {
  const { code, said } = await ended(start('make', at('../../samples/ferry-helm.yaml'), ...words));
  expect([code, said, existsSync(out)]).toEqual([2, expect.stringMatching(message), false]);
});
