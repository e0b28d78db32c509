import { readPlan } from '../../lib/plan/index.js';
import { readyToCut } from '../judges/ready-to-cut.js';
import { randomModels } from '../models/random-models.js';
import { isHand, serve, watched } from './watched.js';

/** Random plans of every model, cut in simulation and put together: see test/judges/ready-to-cut.ts. Two of three by router, every sixth of
 * all relieved to the side; the third by laser. Arguments: how many plans, first seed. */
const [count = '300', first = '1'] = process.argv.slice(2);
/** ms a plan may take */
const LIMIT = 600_000;

const names = Object.keys(randomModels);

interface Judged {
  readonly built: boolean;
  readonly faults: readonly string[];
  readonly refused: number;
  readonly parts: number;
  readonly gaps: number;
}

const whatOf = (job: number) => ({
  name: names[job % names.length]!,
  seed: Number(first) + Math.floor(job / names.length),
  method: job % 3 === 2 ? ('laser' as const) : ('router' as const),
  relief: job % 6 === 1 ? 'side' : 'bisector',
});

async function judge(job: number): Promise<Judged> {
  const { name, seed, method, relief } = whatOf(job);
  const judged = readyToCut(readPlan(JSON.stringify({ ...randomModels[name]!(seed, method), relief })));
  if (!judged) return { built: false, faults: [], refused: 0, parts: 0, gaps: 0 };
  const { faults, refused, parts, gaps } = judged;
  return { built: true, faults, refused: refused.length, parts, gaps };
}

async function watch(): Promise<void> {
  const sum = { built: 0, faults: 0, refused: 0, parts: 0, gaps: 0, lost: 0 };
  const jobs = Array.from({ length: Number(count) }, (_, i) => i);
  await watched<Judged>(jobs, LIMIT, (job, outcome) => {
    const { name, seed, method, relief } = whatOf(job);
    const at = `${name} ${method} ${relief} seed ${seed}`;
    if (outcome.kind !== 'done') {
      sum.lost++;
      console.log(`${at}: ${outcome.kind}${outcome.kind === 'died' ? ` ${outcome.message}` : ''}`);
      return;
    }
    const { built, faults, refused, parts, gaps } = outcome.result;
    for (const fault of faults) console.log(`${at}: ${fault}`);
    sum.built += built ? 1 : 0;
    sum.faults += faults.length;
    sum.refused += refused;
    sum.parts += parts;
    sum.gaps += gaps;
  });
  console.log(
    `${sum.built} of ${count} plans built, ${sum.parts} parts swept, ${sum.gaps} gaps measured, ${sum.refused} parts too fine for the cutter; ${sum.faults} faults, ${sum.lost} lost`,
  );
  process.exitCode = sum.faults + sum.lost > 0 || sum.built < 0.9 * Number(count) ? 1 : 0;
}

if (isHand()) serve(judge);
else await watch();
