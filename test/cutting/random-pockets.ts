import type { ClearingOptions } from '../../lib/cutting/pass.js';
import { clearingPasses } from '../../lib/cutting/passes.js';
import { GeometryFailure } from '../../lib/geometry/failure.js';
import type { Outline, Region } from '../../lib/geometry/outline.js';
import { requirePlain } from '../../lib/geometry/plain.js';
import { clearedWrong } from '../judges/swept.js';
import { isPlain } from '../soak/fine-polygons.js';
import { randomRegion, seeded } from '../soak/random-regions.js';

/** A pocket and how it is cleared. */
export interface RandomPocket {
  readonly area: Region;
  readonly width: number;
  readonly grain: number;
  readonly options: ClearingOptions;
}

/** Slips thinner than the polygons of `isPlain` are fine; the soak of offsets holds such refusals against another library. */
function crossesItself(area: Region): boolean {
  try {
    requirePlain(area);
    return false;
  } catch (error) {
    if (error instanceof GeometryFailure && error.code === 'self-crossing') return true;
    throw error;
  }
}

/** Some pockets of 4 to 60 vertices, with islands and without, some too narrow for their cutter, from a first seed on. */
export function* randomPockets(first: number, count: number): Generator<RandomPocket & { readonly seed: number }> {
  for (let seed = first, made = 0; made < count; seed++) {
    const random = seeded(seed);
    const small = randomRegion(random);
    const width = 1.5 + 8 * random();
    const size = 0.5 + 1.5 * random();
    const options: ClearingOptions = { run: random() < 0.5 ? 'rings' : 'grain', stepover: 0.05 + 0.9 * random() };
    if (!isPlain(small, { chordError: 0.0005, units: 1e5 })) continue;
    const larger = (o: Outline): Outline => o.map(v => ({ x: v.x * size, y: v.y * size, bulge: v.bulge }));
    const area = { outer: larger(small.outer), openings: small.openings.map(larger) };
    if (crossesItself(area)) continue;
    made++;
    yield { seed, area, width, grain: 6 * random(), options };
  }
}

/** What the passes leave and take that they should not, mm². */
export const wrongIn = ({ area, width, grain, options }: RandomPocket): { left: number; outside: number } =>
  clearedWrong(area, clearingPasses(area, width, options, grain), width);
