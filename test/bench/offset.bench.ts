import {
  area,
  distanceToSegment,
  type Outline,
  offset,
  perimeter,
  pointOn,
  type Region,
  segments,
} from '../../lib/geometry/index.js';
import { entities } from '../geometry/shapes.js';
import { fineOffset, finePaths } from '../soak/fine-polygons.js';
import { seeded } from '../soak/random-regions.js';
import { least, most, print, type Row, race } from './race.js';
import { felloe, lobes, wheel } from './wheel-shapes.js';

const BY = 1.5875;
/** clipper-lib as a shop would use it: chords within 0.01 mm, whole numbers of 0.1 µm */
const SHOP = { chordError: 0.01, units: 1e4 };

const outlines = (regions: readonly Region[]): readonly Outline[] => regions.flatMap(r => [r.outer, ...r.openings]);

/** The largest difference from `by` of the distance between the result and the source, sampled along up to some 1,500 edges. */
function deviation(source: Region, result: readonly Region[], by: number): number {
  const from = outlines([source]).flatMap(segments);
  let worst = 0;
  const all = outlines(result).flatMap(segments);
  const every = Math.ceil(all.length / 1500);
  for (const s of all.filter((_, i) => i % every === 0)) {
    for (const share of [0, 0.21, 0.5, 0.83]) {
      const p = pointOn(s, share);
      const d = from.reduce((least, e) => {
        const reach = least + Math.max(1, Math.hypot(e.to.x - e.from.x, e.to.y - e.from.y)) * 2;
        return Math.hypot(e.from.x - p.x, e.from.y - p.y) > reach ? least : Math.min(least, distanceToSegment(e, p));
      }, 1e9);
      worst = Math.max(worst, Math.abs(d - Math.abs(by)));
    }
  }
  return worst;
}

/** All outlines of the wheel are smooth and none collapses: each area changes by P d and pi d², which an opening loses and the outside gains. */
const areaError = (smooth: Region, by: number): number =>
  Math.abs(
    offset(smooth, by).reduce((t, r) => t + area(r), 0) -
      (area(smooth) + perimeter(smooth) * by + Math.PI * by * by * (1 - smooth.openings.length)),
  );

interface Bars {
  readonly ratio: number;
  readonly entities?: number;
  readonly deviation: number;
}

function compare(name: string, region: Region, by: number, bars: Bars): Row[] {
  const paths = finePaths([region], SHOP);
  const times = race({ ours: () => offset(region, by), clipper: () => fineOffset(paths, by, SHOP) });
  const result = offset(region, by);
  const title = `${name} ${by > 0 ? 'out' : 'in'}`;
  return [
    most(
      `${title}: time over clipper-lib (${times['ours']?.toFixed(3)} ms)`,
      times['ours']! / times['clipper']!,
      bars.ratio,
    ),
    ...(bars.entities ? [most(`${title}: entities`, entities(result), bars.entities)] : []),
    most(`${title}: deviation, mm`, deviation(region, result, by), bars.deviation),
  ];
}

export function bench(seed: number): void {
  const random = seeded(seed);
  const piece = felloe(random);
  print('offset of a felloe', [
    ...compare('felloe', piece, BY, { ratio: 0.5, entities: 14, deviation: 1e-9 }),
    ...compare('felloe', piece, -BY, { ratio: 0.5, entities: 10, deviation: 1e-9 }),
  ]);
  const whole = wheel(random);
  // 57 holes and the outer outline are one entity each, a window has 8
  print('offset of a wheel of one piece', [
    ...compare('wheel', whole, BY, { ratio: 0.15, entities: 186, deviation: 1e-9 }),
    ...compare('wheel', whole, -BY, { ratio: 0.3, entities: 186, deviation: 1e-9 }),
    most('wheel out: area error, mm²', areaError(whole, BY), 1e-6),
    most('wheel in: area error, mm²', areaError(whole, -BY), 1e-6),
  ]);
  const [small, large] = [lobes(random, 1000), lobes(random, 10_000)];
  const growth = race({ small: () => offset(small, BY), large: () => offset(large, BY) }, 15, 25, least);
  print('offset of 10,000 lines', [
    ...compare('lines', large, BY, { ratio: 1, deviation: 1e-6 }),
    ...compare('lines', large, -BY, { ratio: 1, deviation: 1e-6 }),
    most('time of 10,000 over 1,000 lines', growth['large']! / growth['small']!, 12),
  ]);
}
