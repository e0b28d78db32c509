import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Kind } from '../../lib/nesting/engine/poses.js';
import type { Problem } from '../../lib/nesting/engine/prepared.js';
import { type Effort, runWith } from '../../lib/nesting/engine/rounds.js';
import { searchSheets } from '../../lib/nesting/engine/search-sheets.js';
import { searchStrip } from '../../lib/nesting/engine/search-strip.js';
import { preparedOf } from '../../lib/nesting/engine/task.js';
import { type NestThreads, nestClock, nestThreads } from '../../lib/node/nest-threads.js';

/** An instance in the schema `nesting-instance/1`; see test/data/nesting/README.md. */
interface Instance {
  readonly name: string;
  readonly problem: 'strip' | 'bin';
  readonly stripHeight?: number;
  readonly binWidth?: number;
  readonly binHeight?: number;
  readonly knownOptimalBins?: number;
  readonly parts: readonly {
    readonly id: string;
    readonly quantity: number;
    readonly allowedRotationsDeg: readonly number[] | 'any';
    readonly outline: readonly (readonly [number, number])[];
    readonly holes?: readonly (readonly (readonly [number, number])[])[];
  }[];
}

interface Placed {
  readonly id: string;
  readonly rotationDeg: number;
  readonly x: number;
  readonly y: number;
  readonly bin?: number;
}

interface Answer {
  readonly instance: string;
  readonly stripLength?: number;
  readonly placements: readonly Placed[];
}

/** Turns tried where any is allowed. */
const ANY = Array.from({ length: 24 }, (_, k) => 15 * k);

const ring = (points: readonly (readonly [number, number])[]) => points.map(([x, y]) => ({ x, y }));

function kindsOf(instance: Instance): Kind[] {
  return instance.parts.map(p => ({
    shape: { outline: ring(p.outline), openings: (p.holes ?? []).map(ring) },
    quantity: p.quantity,
    turns: (p.allowedRotationsDeg === 'any' ? ANY : p.allowedRotationsDeg).map(deg => ({
      angle: (deg * Math.PI) / 180,
      mirrored: false,
    })),
  }));
}

/** Area of the parts over the strip's or the sheets' area, percent. */
function density(instance: Instance, problem: Problem, answer: Answer): number {
  const { area } = preparedOf(problem);
  const total = problem.kinds.reduce((sum, k, i) => sum + k.quantity * area[i]!, 0);
  const bins = 1 + Math.max(...answer.placements.map(p => p.bin ?? 0));
  const room =
    instance.problem === 'strip'
      ? instance.stripHeight! * answer.stripLength!
      : instance.binWidth! * instance.binHeight! * bins;
  return (100 * total) / room;
}

function placed(instance: Instance, problem: Problem, kind: number, pose: number, x: number, y: number): Placed {
  const { turn, corner } = preparedOf(problem).tables.poses[pose]!;
  const rotationDeg = Math.round((turn.angle * 180e9) / Math.PI) / 1e9;
  return { id: instance.parts[kind]!.id, rotationDeg, x: x - corner.x, y: y - corner.y };
}

async function solve(instance: Instance, effort: Effort, seed: number, pool: NestThreads): Promise<[Problem, Answer]> {
  const kinds = kindsOf(instance);
  if (instance.problem === 'bin') {
    const stock = { width: instance.binWidth!, height: instance.binHeight!, forbidden: [], price: 1 };
    const problem = { kinds, stocks: [stock] };
    const layout = await runWith(searchSheets(problem, effort, seed), pool.run);
    const placements = layout.sheets.flatMap((s, bin) =>
      s.laid.map(l => ({ ...placed(instance, problem, l.kind, l.pose, l.x, l.y), bin })),
    );
    return [problem, { instance: instance.name, placements }];
  }
  const reach = (k: Kind): number => Math.max(...k.shape.outline.map(p => Math.abs(p.x) + Math.abs(p.y)));
  const width = kinds.reduce((sum, k) => sum + 2 * k.quantity * reach(k), 0);
  const problem = { kinds, stocks: [{ width, height: instance.stripHeight!, forbidden: [], price: 1 }] };
  const layout = await runWith(searchStrip(problem, effort, seed), pool.run);
  const shapes = kinds.flatMap((k, i) => Array.from({ length: k.quantity }, () => i));
  const placements = shapes.map((kind, i) =>
    placed(instance, problem, kind, layout.pose[i]!, layout.x[i]!, layout.y[i]!),
  );
  return [problem, { instance: instance.name, stripLength: layout.length, placements }];
}

const OPTIONS = {
  instance: { type: 'string' },
  all: { type: 'boolean', default: false },
  seconds: { type: 'string', default: '60' },
  effort: { type: 'string' },
  threads: { type: 'string', default: '2' },
  seed: { type: 'string', default: '1' },
  layout: { type: 'string' },
} as const;

/** Published figures beside ours; see test/data/nesting/README.md. */
interface Published {
  readonly name: string;
  readonly mean2025?: number;
  readonly mean2013?: number;
  readonly bins?: number;
}

async function runOne(file: string, effort: Effort, seed: number, pool: NestThreads, out?: string) {
  const instance = JSON.parse(readFileSync(file, 'utf8')) as Instance;
  const begun = nestClock();
  const [problem, answer] = await solve(instance, effort, seed, pool);
  const seconds = (nestClock() - begun) / 1000;
  if (out !== undefined) writeFileSync(out, `${JSON.stringify(answer)}\n`);
  return { instance, answer, percent: density(instance, problem, answer), seconds };
}

async function table(folder: string, effort: Effort, seed: number, pool: NestThreads, out?: string): Promise<void> {
  const published = JSON.parse(readFileSync(`${folder}/published.json`, 'utf8')) as readonly Published[];
  console.log('instance    ours   mean 2025   behind   mean 2013   seconds');
  const behind: number[] = [];
  for (const p of published) {
    const name = p.name.toLowerCase();
    const file = out === undefined ? undefined : `${out}/${name}.layout.json`;
    const { percent, answer, seconds } = await runOne(`${folder}/${name}.json`, effort, seed, pool, file);
    if (p.mean2025 === undefined) {
      const bins = 1 + Math.max(...answer.placements.map(q => q.bin ?? 0));
      console.log(`${p.name.padEnd(9)} ${bins} sheets; known optimum ${p.bins} (${seconds.toFixed(1)} s)`);
      continue;
    }
    behind.push(p.mean2025 - percent);
    const cells = [percent, p.mean2025, p.mean2025 - percent, p.mean2013 ?? Number.NaN].map(v => v.toFixed(2));
    console.log(
      `${p.name.padEnd(9)} ${cells[0]!.padStart(6)} ${cells[1]!.padStart(11)} ${cells[2]!.padStart(8)} ${cells[3]!.padStart(11)} ${seconds.toFixed(1).padStart(9)}`,
    );
    if (behind.length === 8)
      console.log(`mean behind 2025: ${(behind.reduce((a, b) => a + b, 0) / 8).toFixed(2)} points`);
  }
}

/** The nesting benchmark. @param folder where the open instances are */
export async function bench(args: readonly string[], folder: string): Promise<void> {
  const { values } = parseArgs({ args: [...args], options: OPTIONS });
  const pool = nestThreads(Number(values.threads));
  const effort: Effort =
    values.effort === undefined
      ? { kind: 'seconds', seconds: Number(values.seconds), threads: pool.threads, clock: nestClock }
      : { kind: 'steps', steps: Number(values.effort) };
  try {
    if (values.all) await table(folder, effort, Number(values.seed), pool, values.layout);
    else if (values.instance === undefined) throw new RangeError('--instance FILE or --all');
    else {
      const { instance, answer, percent, seconds } = await runOne(
        values.instance,
        effort,
        Number(values.seed),
        pool,
        values.layout,
      );
      const size =
        answer.stripLength === undefined
          ? `${1 + Math.max(...answer.placements.map(p => p.bin ?? 0))} sheets`
          : `length ${answer.stripLength.toFixed(6)}`;
      console.log(
        `${instance.name}: ${size}, density ${percent.toFixed(3)} %, ${seconds.toFixed(1)} s, ${pool.threads} threads, seed ${values.seed}`,
      );
    }
  } finally {
    await pool.close();
  }
}
