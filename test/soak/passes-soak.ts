import { randomPockets, wrongIn } from '../cutting/random-pockets.js';

/** Random pockets cleared by rings and by strokes, judged by polygons of clipper-lib. Arguments: count, first seed. */
const count = Number(process.argv[2] ?? 300);
const first = Number(process.argv[3] ?? 1);

let wrong = 0;
for (const { seed, ...pocket } of randomPockets(first, count)) {
  const { left, outside } = wrongIn(pocket);
  if (left === 0 && outside === 0) continue;
  wrong++;
  console.log(`seed ${seed}: ${left} mm² left, ${outside} mm² outside`, pocket.width, pocket.options);
}
console.log(`${wrong} wrong of ${count} pockets`);
process.exitCode = wrong > 0 ? 1 : 0;
