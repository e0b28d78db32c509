import { GeometryFailure, offset, type Region } from '../../lib/geometry/index.js';
import {
  crosses,
  difference,
  fineOffset,
  fineOffsetByPieces,
  finePaths,
  finePerimeter,
  isPlain,
  type Judge,
} from './fine-polygons.js';
import { randomDistance, randomRegion, seeded } from './random-regions.js';

/** Offsets of random regions against the fine polygons of an independent library. Arguments: count, first seed. */
const JUDGE: Judge = { chordError: 0.0005, units: 1e5 };
/** sees outlines that cross by very little */
const SHARP: Judge = { chordError: 1e-6, units: 1e7 };
const count = Number(process.argv[2] ?? 1000);
let seed = Number(process.argv[3] ?? 1);

let judged = 0;
let wrong = 0;
let worst = 0;
const began = Date.now();
for (; judged < count; seed++) {
  const random = seeded(seed);
  const region: Region = randomRegion(random);
  const by = randomDistance(random);
  if (!isPlain(region, JUDGE)) continue;
  judged++;
  try {
    const got = finePaths(offset(region, by), JUDGE);
    const source = finePaths([region], JUDGE);
    const want = fineOffset(source, by, JUDGE);
    let error = difference(got, want, JUDGE);
    const allowed = 4 * JUDGE.chordError * (finePerimeter(want, JUDGE) + 1);
    if (error <= allowed) worst = Math.max(worst, error / allowed);
    if (error <= allowed) continue;
    // the judge's own offset has been seen to lose an opening: ask again by another road
    error = difference(got, fineOffsetByPieces(source, by, JUDGE), JUDGE);
    if (error <= allowed) {
      console.log(`seed ${seed} by ${by}: the judge took back its word`);
      continue;
    }
    console.log(`seed ${seed} by ${by}: ${error} mm² apart, ${allowed} allowed`);
  } catch (error) {
    if (
      error instanceof GeometryFailure &&
      error.code === 'self-crossing' &&
      (crosses(region) || !isPlain(region, SHARP))
    ) {
      judged--;
      continue;
    }
    console.log(`seed ${seed} by ${by}: ${String(error)}`);
  }
  wrong++;
}
console.log(
  `${wrong} wrong of ${judged}; worst ${worst.toFixed(3)} of what is allowed; ${((Date.now() - began) / 1000).toFixed(0)} s`,
);
process.exitCode = wrong > 0 ? 1 : 0;
