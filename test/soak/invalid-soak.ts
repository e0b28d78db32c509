import { Unusable } from '../../lib/findings/unusable.js';
import { make } from '../../lib/make.js';
import { readPlan } from '../../lib/plan/index.js';
import { damagedPlan } from '../models/damaged-plan.js';
import { randomModels } from '../models/random-models.js';
import { isHand, serve, watched } from './watched.js';

/** Plans damaged in one to four places: each must be refused as Unusable, stopped by a finding, or built, and soon.
 * Arguments: model or `all`, count, first seed. */
const [model = 'all', count = '1000', first = '1'] = process.argv.slice(2);
/** ms a plan may take */
const LIMIT = 60_000;

const models = model === 'all' ? Object.keys(randomModels) : [model];
const unknown = models.find(m => !(m in randomModels));
if (unknown !== undefined) throw new Error(`${unknown}: one of ${Object.keys(randomModels).join(', ')}, all`);
const plans = Number(count);

type Verdict = 'unusable' | 'stopped' | 'built' | 'numberless';

const textOf = (job: number): string => damagedPlan(models[Math.floor(job / plans)]!, Number(first) + (job % plans));

async function judge(job: number): Promise<Verdict> {
  try {
    const { files, findings, report } = await make(readPlan(textOf(job)));
    if (/\bNaN\b|Infinity|undefined|allowed: (at most|\d[\d.]* to) (-|0 mm)/.test(JSON.stringify(findings)))
      return 'numberless';
    if (findings.some(f => f.level === 'stop')) return 'stopped';
    if (!report || files.size === 0) throw new Error('neither files nor a stop');
    return 'built';
  } catch (error) {
    if (error instanceof Unusable) return 'unusable';
    throw error;
  }
}

async function watch(): Promise<void> {
  const tallies = models.map(() => new Map<string, number>());
  const slowest = models.map(() => ({ ms: 0, seed: 0 }));
  const jobs = models.flatMap((_, m) => Array.from({ length: plans }, (_, i) => m * plans + i));
  await watched<Verdict>(jobs, LIMIT, (job, outcome) => {
    const m = Math.floor(job / plans);
    const what = outcome.kind === 'done' ? outcome.result : outcome.kind;
    tallies[m]!.set(what, (tallies[m]!.get(what) ?? 0) + 1);
    if (outcome.kind === 'done' && outcome.ms > slowest[m]!.ms)
      slowest[m] = { ms: outcome.ms, seed: Number(first) + (job % plans) };
    if (outcome.kind === 'done' && what !== 'numberless') return;
    console.log(`${models[m]} seed ${Number(first) + (job % plans)}: ${what}`);
    if (outcome.kind === 'died') console.log(outcome.message.split('\n').slice(0, 6).join('\n'));
    console.log(textOf(job));
  });
  models.forEach((name, m) => {
    const told = [...tallies[m]!].map(([what, n]) => `${n} ${what}`).join(', ');
    console.log(`${name}: ${told}; slowest ${(slowest[m]!.ms / 1000).toFixed(1)} s, seed ${slowest[m]!.seed}`);
  });
  const bad = tallies.some(t => ['died', 'hung', 'numberless'].some(what => t.has(what)));
  process.exitCode = bad ? 1 : 0;
}

if (isHand()) serve(judge);
else await watch();
