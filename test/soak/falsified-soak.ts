import { interference } from '../../lib/checks/interference.js';
import { mating } from '../../lib/checks/mating.js';
import { woodVolume } from '../../lib/checks/wood-volume.js';
import { stops } from '../../lib/findings/finding.js';
import { buildProp } from '../../lib/models/index.js';
import type { Model } from '../../lib/models/model.js';
import { readPlan } from '../../lib/plan/index.js';
import type { Method } from '../../lib/stock/stock.js';
import { falsified, KINDS } from '../checks/falsified.js';
import { randomModels } from '../models/random-models.js';
import { seeded } from '../models/random-plan.js';

/** Random plans of a model by each method, each as it is and with one thing made wrong, DRAWS times of each kind: nothing may be found in the
 * first, something in every other that matters. Arguments: model or `all`, count for each method, first seed, draws (4). */
const [model = 'all', count = '20', first = '1', draws = '4'] = process.argv.slice(2);
const METHODS: readonly Method[] = ['router', 'laser', 'hand'];

function built(name: string, seed: number, method: Method): Model | undefined {
  const plan = readPlan(JSON.stringify(randomModels[name]!(seed, method)));
  const { value, findings } = buildProp(plan, plan.stock, plan.title);
  return stops(findings) ? undefined : value;
}

const found = (m: Model): string[] => [interference, mating, woodVolume].flatMap(rule => rule(m)).map(f => f.message);

interface Tally {
  made: number;
  found: number;
  readonly harmless: Map<string, number>;
}

const tallies = new Map(KINDS.map(kind => [kind, { made: 0, found: 0, harmless: new Map() } as Tally]));
let sound = 0;
let wrong = 0;

function falsify(m: Model, at: string, seed: number): void {
  const random = seeded(seed);
  for (const kind of KINDS)
    for (let i = 0; i < Number(draws); i++) {
      const made = falsified(m, kind, random);
      const tally = tallies.get(kind)!;
      if (!made) continue;
      tally.made++;
      if (found(made.model).some(said => made.parts.some(id => said.includes(`(${id}`)))) tally.found++;
      else if (made.harmless !== undefined)
        tally.harmless.set(made.harmless, (tally.harmless.get(made.harmless) ?? 0) + 1);
      else console.log(`${at}: ${kind} not found: ${made.parts.join(', ')}`);
    }
}

for (const name of model === 'all' ? Object.keys(randomModels) : [model])
  for (const method of METHODS)
    for (let seed = Number(first); seed < Number(first) + Number(count); seed++) {
      const m = built(name, seed, method);
      if (!m) continue;
      const at = `${name} ${method} seed ${seed}`;
      const said = found(m);
      sound++;
      if (said.length > 0) wrong++;
      for (const message of said) console.log(`${at}: ${message}`);
      falsify(m, at, seed);
    }

let missed = 0;
for (const [kind, tally] of tallies) {
  const harmless = [...tally.harmless.values()].reduce((sum, n) => sum + n, 0);
  missed += tally.made - tally.found - harmless;
  console.log(`${kind}: ${tally.found} of ${tally.made} found; ${tally.made - tally.found - harmless} missed`);
  for (const [why, n] of tally.harmless) console.log(`  ${n} harmless: ${why}`);
}
console.log(`${wrong} of ${sound} sound models with findings; ${missed} faults missed`);
process.exitCode = wrong + missed > 0 ? 1 : 0;
