import { area, difference, GeometryFailure, intersection, type Region, union } from '../../lib/geometry/index.js';
import {
  difference as apart,
  combine,
  crosses,
  finePaths,
  finePerimeter,
  isPlain,
  type Judge,
} from './fine-polygons.js';
import { randomPair, seeded } from './random-regions.js';

/** Unions, differences and intersections of random pairs against the fine polygons of an independent library, and against each other.
 * Arguments: count, first seed. */
const JUDGE: Judge = { chordError: 0.0005, units: 1e5 };
/** sees outlines that cross by very little */
const SHARP: Judge = { chordError: 1e-6, units: 1e7 };
const count = Number(process.argv[2] ?? 1000);
let seed = Number(process.argv[3] ?? 1);

const OPERATIONS = {
  union: (a: Region, b: Region) => union([a, b]),
  difference: (a: Region, b: Region) => difference([a], [b]),
  intersection: (a: Region, b: Region) => intersection([a], [b]),
};

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);

/** What is wrong with the three results, if anything; the share of what is allowed otherwise. */
function judge(a: Region, b: Region): string | number {
  const [fineA, fineB] = [finePaths([a], JUDGE), finePaths([b], JUDGE)];
  const allowed = 4 * JUDGE.chordError * (finePerimeter(fineA, JUDGE) + finePerimeter(fineB, JUDGE));
  let worst = 0;
  const areas: Record<string, number> = {};
  for (const [name, operate] of Object.entries(OPERATIONS)) {
    const result = operate(a, b);
    areas[name] = total(result);
    const error = apart(finePaths(result, JUDGE), combine(fineA, fineB, name as keyof typeof OPERATIONS), JUDGE);
    if (!(error <= allowed)) return `${name}: ${error} mm² apart, ${allowed} allowed`;
    worst = Math.max(worst, error / allowed);
  }
  const sum = area(a) + area(b);
  const gap = Math.abs((areas['union'] ?? 0) + (areas['intersection'] ?? 0) - sum);
  const part = Math.abs((areas['difference'] ?? 0) + (areas['intersection'] ?? 0) - area(a));
  if (gap <= 1e-9 * sum && part <= 1e-9 * sum) return worst;
  // an outline that overlaps itself by a rounding counts that area twice, a result does not
  if (!isPlain(a, SHARP) || !isPlain(b, SHARP)) return worst;
  return `areas differ: union and intersection by ${gap}, difference and intersection by ${part}, of ${sum}`;
}

let judged = 0;
let wrong = 0;
let worst = 0;
const began = Date.now();
for (; judged < count; seed++) {
  const [a, b] = randomPair(seeded(seed));
  if (!isPlain(a, JUDGE) || !isPlain(b, JUDGE)) continue;
  judged++;
  try {
    const verdict = judge(a, b);
    if (typeof verdict === 'number') {
      worst = Math.max(worst, verdict);
      continue;
    }
    console.log(`seed ${seed}: ${verdict}`);
  } catch (error) {
    if (
      error instanceof GeometryFailure &&
      error.code === 'self-crossing' &&
      [a, b].some(r => crosses(r) || !isPlain(r, SHARP))
    ) {
      judged--;
      continue;
    }
    console.log(`seed ${seed}: ${String(error)}`);
  }
  wrong++;
}
console.log(
  `${wrong} wrong of ${judged}; worst ${worst.toFixed(3)} of what is allowed; ${((Date.now() - began) / 1000).toFixed(0)} s`,
);
process.exitCode = wrong > 0 ? 1 : 0;
