import { readPlan } from '../../lib/plan/index.js';
import { wrongInPlan } from '../cutting/plan-pockets.js';
import { randomPockets, wrongIn } from '../cutting/random-pockets.js';
import { randomModels } from '../models/random-models.js';

/** Pockets cleared by rings and by strokes, judged by polygons of clipper-lib. Arguments: `pockets` (random outlines), a model or `all` (random
 * plans); count, first seed. */
const [what = 'pockets', count = '300', first = '1'] = process.argv.slice(2);

function* outlines(): Generator<string> {
  for (const { seed, ...pocket } of randomPockets(Number(first), Number(count))) {
    const { left, outside } = wrongIn(pocket);
    if (left === 0 && outside === 0) continue;
    const { width, options } = pocket;
    yield `seed ${seed}: ${left} mm² left, ${outside} mm² outside; ${JSON.stringify({ width, ...options })}`;
  }
  console.log(`${count} pockets`);
}

function* plans(): Generator<string> {
  const models = what === 'all' ? Object.keys(randomModels) : [what];
  let pockets = 0;
  for (let i = 0; i < Number(count); i++) {
    const seed = Number(first) + i;
    const model = models[i % models.length]!;
    const plan = readPlan(JSON.stringify(randomModels[model]!(seed, 'router')));
    const stepover = 0.1 + ((seed * 7) % 17) / 20;
    const found = wrongInPlan(plan, { run: seed % 2 === 0 ? 'rings' : 'grain', stepover });
    pockets += found.pockets;
    yield* found.wrong.map(line => `${model} seed ${seed}, stepover ${stepover}: ${line}`);
  }
  console.log(`${count} plans, ${pockets} pockets`);
}

let wrong = 0;
for (const line of what === 'pockets' ? outlines() : plans()) {
  wrong++;
  console.log(line);
}
console.log(`${wrong} wrong`);
process.exitCode = wrong > 0 ? 1 : 0;
