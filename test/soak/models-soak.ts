import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Files, make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import type { Method } from '../../lib/stock/stock.js';
import { invalidOutlines } from '../judges/invalid-outlines.js';
import { overlaps } from '../judges/solids.js';
import { randomModels } from '../models/random-models.js';
import { isHand, serve, watched } from './watched.js';

/** Random plans of a model by each method, built and judged from outside: pieces as solids (clipper-lib), outlines, DXF audit and areas
 * (judge.py: ezdxf, shapely; many folders to a process). Arguments: model or `all`, count for each method, first seed.
 * RIMWRIGHT_METHOD: one method only; RIMWRIGHT_AUDIT=n: only every nth plan is audited, 0 none. */
const [model = 'all', count = '100', first = '1'] = process.argv.slice(2);
const METHODS = (process.env['RIMWRIGHT_METHOD']?.split(',') ?? ['router', 'laser', 'hand']) as Method[];
const AUDIT = Number(process.env['RIMWRIGHT_AUDIT'] ?? 1);
/** ms a plan may take */
const LIMIT = 120_000;
/** share of the plans that must build */
const LEAST = 0.99;
/** folders to a Python process */
const BATCH = 25;
const PYTHON = '/usr/bin/python3';

const models = model === 'all' ? Object.keys(randomModels) : [model];
const unknown = models.find(m => !(m in randomModels));
if (unknown !== undefined) throw new Error(`${unknown}: one of ${Object.keys(randomModels).join(', ')}, all`);

/** Runs of one model by one method, and the plans of each: job = run * PLANS + index. */
const runs = models.flatMap(name => METHODS.map(method => ({ name, method })));
const plans = Number(count);

interface Judged {
  /** rules and words of the findings that stopped it; empty where it was built */
  readonly refused: readonly string[];
  readonly wrong: readonly string[];
  /** where its files are written for the audit */
  readonly folder?: string;
}

function save(files: Files): string {
  const folder = mkdtempSync(join(tmpdir(), 'rimwright-soak-'));
  for (const [path, bytes] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  return folder;
}

const texts = (files: Files): Map<string, string> =>
  new Map([...files].flatMap(([path, bytes]) => (typeof bytes === 'string' ? [[path, bytes] as const] : [])));

async function judge(job: number): Promise<Judged> {
  const { name, method } = runs[Math.floor(job / plans)]!;
  const seed = Number(first) + (job % plans);
  const { files, findings, report } = await make(readPlan(JSON.stringify(randomModels[name]!(seed, method))));
  const stops = findings.filter(f => f.level === 'stop');
  const said = findings.filter(f => ['interference', 'mating', 'wood-volume'].includes(f.rule)).map(f => f.message);
  if (stops.length > 0 || !report) return { refused: stops.map(f => `${f.rule}: ${f.message}`), wrong: said };
  const shared = overlaps(texts(files), report).map(
    o => `pieces ${o.a} and ${o.b} share ${o.area.toFixed(2)} mm² at height ${o.z.toFixed(2)}`,
  );
  const crossed = invalidOutlines(files).map(path => `${path} crosses itself`);
  const wrong = [...said, ...shared, ...crossed];
  return { refused: [], wrong, ...(AUDIT > 0 && seed % AUDIT === 0 && { folder: save(files) }) };
}

/** What the audit finds wrong in folders; they are gone afterwards. */
function audit(folders: readonly string[]): Promise<string[]> {
  const script = fileURLToPath(new URL('../../judges/judge.py', import.meta.url));
  const args = ['-B', script, ...folders, '--only', 'files'];
  return new Promise((resolve, reject) => {
    execFile(PYTHON, args, { maxBuffer: 1e9 }, (error, out, err) => {
      for (const folder of folders) rmSync(folder, { recursive: true });
      if (error && error.code !== 1) reject(new Error(`${PYTHON}: ${err || out}`));
      else resolve(out.split('\n').filter(line => line !== '' && !/^\d+ wrong/.test(line)));
    });
  });
}

interface Tally {
  built: number;
  hung: number;
  died: number;
  wrong: number;
  slowest: { readonly ms: number; readonly seed: number };
  readonly refused: Map<string, number>;
}

async function watch(): Promise<void> {
  const tallies = runs.map(
    (): Tally => ({ built: 0, hung: 0, died: 0, wrong: 0, slowest: { ms: 0, seed: 0 }, refused: new Map() }),
  );
  let waiting: string[] = [];
  const audits: Promise<string[]>[] = [];
  const send = (): void => {
    if (waiting.length > 0) audits.push(audit(waiting));
    waiting = [];
  };
  const jobs = runs.flatMap((_, r) => Array.from({ length: plans }, (_, i) => r * plans + i));
  await watched<Judged>(jobs, LIMIT, (job, outcome) => {
    const { name, method } = runs[Math.floor(job / plans)]!;
    const tally = tallies[Math.floor(job / plans)]!;
    const at = `${name} ${method} seed ${Number(first) + (job % plans)}`;
    if (outcome.kind !== 'done') {
      tally[outcome.kind]++;
      console.log(`${at}: ${outcome.kind}${outcome.kind === 'died' ? ` ${outcome.message}` : ''}`);
      return;
    }
    const { refused, wrong, folder } = outcome.result;
    if (outcome.ms > tally.slowest.ms) tally.slowest = { ms: outcome.ms, seed: Number(first) + (job % plans) };
    for (const line of [...refused.map(r => `refused: ${r}`), ...wrong]) console.log(`${at}: ${line}`);
    if (wrong.length > 0) tally.wrong++;
    if (refused.length === 0 && wrong.length === 0) tally.built++;
    const rule = refused[0]?.split(':')[0];
    if (rule !== undefined) tally.refused.set(rule, (tally.refused.get(rule) ?? 0) + 1);
    if (folder !== undefined) waiting.push(folder);
    if (waiting.length >= BATCH) send();
  });
  send();
  const faults = (await Promise.all(audits)).flat();
  for (const line of faults) console.log(`audit: ${line}`);
  tallies.forEach((t, r) => {
    const { name, method } = runs[r]!;
    const refused = [...t.refused].map(([rule, n]) => `${rule} ${n}`).join(', ');
    console.log(
      `${name} ${method}: ${t.built} of ${plans} build; refused: ${refused || 'none'}; ${t.wrong} wrong, ${t.hung} hung, ${t.died} died; slowest ${(t.slowest.ms / 1000).toFixed(1)} s, seed ${t.slowest.seed}`,
    );
  });
  console.log(`audit: ${faults.length} faults${AUDIT === 1 ? '' : ` (every ${AUDIT}th plan)`}`);
  const short = tallies.some(t => t.built < LEAST * plans || t.wrong + t.hung + t.died > 0);
  process.exitCode = short || faults.length > 0 ? 1 : 0;
}

if (isHand()) serve(judge);
else await watch();
