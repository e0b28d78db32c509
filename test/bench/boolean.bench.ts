import maker from 'makerjs';
import {
  area,
  asCircle,
  difference,
  type Outline,
  type Region,
  segments,
  signedArea,
  union,
} from '../../lib/geometry/index.js';
import { entities, sector } from '../geometry/shapes.js';
import { combine, finePaths, makerPath } from '../soak/fine-polygons.js';
import { seeded } from '../soak/random-regions.js';
import { most, print, type Row, race } from './race.js';
import { drillings, felloe, spokedWheel } from './wheel-shapes.js';

/** clipper-lib as a shop would use it: chords within 0.01 mm, whole numbers of 0.1 µm */
const SHOP = { chordError: 0.01, units: 1e4 };

const total = (regions: readonly Region[]): number => regions.reduce((t, r) => t + area(r), 0);

function makerModel(regions: readonly Region[]): maker.IModel {
  const model = (o: Outline): maker.IModel => {
    const disc = asCircle(o);
    if (disc) return { paths: { c: new maker.paths.Circle([disc.center.x, disc.center.y], disc.radius) } };
    return { paths: Object.fromEntries(segments(o).map((s, i) => [`s${i}`, makerPath(s)])) };
  };
  const outlines = regions.flatMap(r => [r.outer, ...r.openings]);
  return { models: Object.fromEntries(outlines.map((o, i) => [`o${i}`, model(o)])) };
}

/** Area of a disc of radius r whose centre is on a circle of radius R, inside it. Source: lens, CRC Concise Encyclopedia of Mathematics. */
function lens(R: number, r: number, d: number): number {
  const a = r * r * Math.acos((d * d + r * r - R * R) / (2 * d * r));
  const b = R * R * Math.acos((d * d + R * R - r * r) / (2 * d * R));
  return a + b - Math.sqrt((-d + r + R) * (d + r - R) * (d - r + R) * (d + r + R)) / 2;
}

function drilled(seed: number): Row[] {
  const random = seeded(seed);
  const piece = felloe(random);
  const discs = drillings(random);
  const [a, b] = [finePaths([piece], SHOP), finePaths(discs, SHOP)];
  const times = race({
    ours: () => difference([piece], discs),
    clipper: () => combine(a, b, 'difference'),
    maker: () => maker.model.combine(makerModel([piece]), makerModel(discs), false, true, true, false),
  });
  const result = difference([piece], discs);
  const radius = asCircle(discs[0]!.outer)!.radius;
  const rim = Math.hypot(piece.outer[4]!.x, piece.outer[4]!.y);
  const exact = area(piece) - 30 * Math.PI * radius * radius - 10 * lens(rim, radius, 305);
  return [
    most(
      `felloe less 40 discs: time over clipper-lib (${times['ours']!.toFixed(3)} ms)`,
      times['ours']! / times['clipper']!,
      2,
    ),
    most('felloe less 40 discs: time over makerjs', times['ours']! / times['maker']!, 1),
    most('felloe less 40 discs: entities', entities(result), 58),
    most('felloe less 40 discs: area error, mm²', Math.abs(total(result) - exact), 1e-6),
  ];
}

function spoked(seed: number): Row[] {
  const parts = spokedWheel(seeded(seed));
  const paths = finePaths(parts, SHOP);
  const times = race({ ours: () => union(parts), clipper: () => combine(paths, [], 'union') });
  const slow = race(
    {
      ours: () => union(parts),
      maker: () =>
        parts
          .slice(1)
          .reduce<maker.IModel>((m, p) => maker.model.combineUnion(m, makerModel([p])), makerModel(parts.slice(0, 1))),
    },
    3,
  );
  const result = union(parts);
  return [
    most(
      `16 spokes, rim and hub: time over clipper-lib (${times['ours']!.toFixed(3)} ms)`,
      times['ours']! / times['clipper']!,
      3,
    ),
    most('16 spokes, rim and hub: time over makerjs', slow['ours']! / slow['maker']!, 0.1),
    most('16 spokes, rim and hub: entities', entities(result), 66),
  ];
}

function ringOfFelloes(): Row[] {
  const felloes = Array.from({ length: 8 }, (_, i) => sector(235, 305, (i * Math.PI) / 4, ((i + 1) * Math.PI) / 4));
  const result = union(felloes);
  const radii = result.flatMap(r => [r.outer, ...r.openings]).map(o => asCircle(o)?.radius ?? Number.NaN);
  return [
    most('8 touching felloes: outlines', result.flatMap(r => [r.outer, ...r.openings]).length, 2),
    most('8 touching felloes: entities', entities(result), 2),
    most('8 touching felloes: radius error, mm', Math.max(Math.abs(radii[0]! - 305), Math.abs(radii[1]! - 235)), 1e-9),
    most('8 touching felloes: area error, mm²', Math.abs(signedArea(result[0]!.outer) - Math.PI * 305 ** 2), 1e-6),
  ];
}

export function bench(seed: number): void {
  print('differences', drilled(seed));
  print('unions', spoked(seed));
  print('shared edges', ringOfFelloes());
}
