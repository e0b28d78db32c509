import {
  area,
  GeometryFailure,
  type Motion,
  moveRegion,
  type Outline,
  offset,
  perimeter,
  type Region,
  reverse,
} from '../../lib/geometry/index.js';
import { isPlain, type Judge } from './fine-polygons.js';
import { randomDistance, randomRegion, seeded } from './random-regions.js';

/** Offsets of random regions again from every start vertex, run backwards, mirrored, turned, and scaled by 1/100 and 100: the same area and
 * the same number of regions and vertices each time. Arguments: count, first seed. */
const JUDGE: Judge = { chordError: 0.0005, units: 1e5 };
const count = Number(process.argv[2] ?? 500);
let seed = Number(process.argv[3] ?? 1);

interface Variant {
  readonly name: string;
  readonly region: Region;
  readonly scale: number;
}

const from = (o: Outline, k: number): Outline => [...o.slice(k), ...o.slice(0, k)];
const every = (r: Region, change: (o: Outline) => Outline): Region => ({
  outer: change(r.outer),
  openings: r.openings.map(change),
});
const larger = (r: Region, k: number): Region =>
  every(r, o => o.map(v => ({ x: v.x * k, y: v.y * k, bulge: v.bulge })));

function variantsOf(region: Region, random: () => number): Variant[] {
  const motion: Motion = { turn: 2 * Math.PI * random(), x: 0, y: 0 };
  return [
    ...region.outer.map((_, k) => ({
      name: `start ${k}`,
      region: every(region, o => from(o, k % o.length)),
      scale: 1,
    })),
    { name: 'backwards', region: every(region, reverse), scale: 1 },
    { name: 'mirrored', region: moveRegion(region, { ...motion, turn: 0, mirrored: true }), scale: 1 },
    { name: 'turned', region: moveRegion(region, motion), scale: 1 },
    { name: 'scaled 1/100', region: larger(region, 0.01), scale: 0.01 },
    { name: 'scaled 100', region: larger(region, 100), scale: 100 },
  ];
}

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);
const around = (regions: readonly Region[]): number => regions.reduce((t, r) => t + perimeter(r), 0);

let judged = 0;
let variants = 0;
let wrong = 0;
let worst = 0;
for (; judged < count; seed++) {
  const random = seeded(seed);
  const region = randomRegion(random);
  const by = randomDistance(random);
  if (!isPlain(region, JUDGE)) continue;
  let want: Region[];
  try {
    want = offset(region, by);
  } catch (error) {
    if (error instanceof GeometryFailure && error.code === 'self-crossing') continue; // judged in the offset soak
    throw error;
  }
  judged++;
  for (const v of variantsOf(region, random)) {
    variants++;
    try {
      const got = offset(v.region, by * v.scale);
      const apart = Math.abs(total(got) / v.scale / v.scale - total(want));
      const allowed = 1e-7 * (1 + around(want));
      worst = Math.max(worst, apart / allowed);
      if (apart <= allowed && got.length === want.length) continue;
      console.log(`seed ${seed} by ${by} ${v.name}: ${apart} mm² apart, ${got.length} regions for ${want.length}`);
    } catch (error) {
      console.log(`seed ${seed} by ${by} ${v.name}: ${String(error)}`);
    }
    wrong++;
  }
}
console.log(`${wrong} wrong of ${variants} variants of ${judged}; worst ${worst.toFixed(3)} of what is allowed`);
process.exitCode = wrong > 0 ? 1 : 0;
