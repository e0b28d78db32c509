import { nest } from '../../lib/nesting/nest.js';
import { layoutFaults } from '../nesting/faults.js';
import { randomJob } from '../nesting/random-jobs.js';

/** Random jobs laid out and judged by an independent library. Arguments: count, first seed, steps. */
const count = Number(process.argv[2] ?? 500);
const first = Number(process.argv[3] ?? 1);
const steps = Number(process.argv[4] ?? 4);

let wrong = 0;
let laid = 0;
let left = 0;
let slowest = 0;
for (let seed = first; seed < first + count; seed++) {
  const { parts, stocks, gap } = randomJob(seed);
  const began = Date.now();
  const layout = nest(parts, stocks, { gap, steps });
  slowest = Math.max(slowest, Date.now() - began);
  laid += layout.pieces.reduce((sum, p) => sum + p.placements.length, 0);
  left += layout.unplaced.reduce((sum, u) => sum + u.quantity, 0);
  const faults = layoutFaults(parts, stocks, layout, gap);
  for (const fault of faults) console.log(`seed ${seed}: ${fault}`);
  if (faults.length > 0) wrong++;
}
console.log(
  `${count} jobs: ${laid} parts laid, ${left} without a place, ${wrong} layouts wrong; slowest ${slowest} ms`,
);
if (wrong > 0) process.exitCode = 1;
