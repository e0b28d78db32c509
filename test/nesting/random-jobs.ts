import { annularSector, circle, polygon, type Region, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import type { NestPart, NestStock, Turns } from '../../lib/nesting/job.js';
import { seeded } from '../soak/random-regions.js';

/** A job made by chance. */
export interface RandomJob {
  readonly parts: readonly NestPart[];
  readonly stocks: readonly NestStock[];
  readonly gap: number;
}

type Random = () => number;
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const between = (random: Random, from: number, to: number): number => from + random() * (to - from);

function ell(w: number, h: number, t: number): Region {
  return solid(
    polygon([
      { x: 0, y: 0 },
      { x: w, y: 0 },
      { x: w, y: t },
      { x: t, y: t },
      { x: t, y: h },
      { x: 0, y: h },
    ]),
  );
}

function blob(random: Random): Region {
  const n = 4 + Math.floor(random() * 5);
  const points = Array.from({ length: n }, (_, i) => {
    const r = between(random, 25, 90);
    const a = (2 * Math.PI * (i + 0.5 * random())) / n;
    return { x: r * Math.cos(a), y: r * Math.sin(a) };
  });
  return solid(polygon(points));
}

function shape(random: Random): Region {
  switch (Math.floor(random() * 6)) {
    case 0:
      return solid(rectangle(0, 0, between(random, 20, 260), between(random, 15, 90)));
    case 1:
      return solid(circle(between(random, 12, 70), { x: 10, y: -4 }));
    case 2: {
      const r = between(random, 60, 130);
      return { outer: circle(r), openings: [reverse(circle(between(random, 20, r - 12)))] };
    }
    case 3:
      return ell(between(random, 60, 200), between(random, 60, 160), between(random, 15, 40));
    case 4: {
      const inner = between(random, 60, 200);
      return solid(annularSector(inner, inner + between(random, 20, 60), 0.2, between(random, 0.4, 1.6)));
    }
    default:
      return blob(random);
  }
}

function part(random: Random, k: number, stocks: readonly NestStock[]): NestPart {
  const turns = pick<Turns>(random, ['free', 'half', 'none', { step: Math.PI / 2 }, { step: Math.PI / 6 }]);
  const rule = pick(random, ['along', 'across', 'any'] as const);
  const grained = random() < 0.4;
  return {
    id: `p${k}`,
    region: shape(random),
    quantity: 1 + Math.floor(random() * 5),
    ...(random() < 0.8 && { turns }),
    ...(grained && {
      grain: { direction: pick(random, [0, Math.PI / 2, 0.3]), rule, ...(random() < 0.3 && { within: 0.2 }) },
    }),
    ...(random() < 0.3 && { mirrored: true }),
    ...(random() < 0.2 && { stock: [pick(random, stocks).name] }),
  };
}

const offcutOutline = (random: Random): Region => {
  const w = between(random, 300, 600);
  const h = between(random, 250, 500);
  return random() < 0.5
    ? ell(w, h, between(random, 120, 220))
    : solid(
        polygon([
          { x: 20, y: 0 },
          { x: w, y: 30 },
          { x: w - 60, y: h },
          { x: w / 2, y: h - 80 },
          { x: 0, y: h - 20 },
        ]),
      );
};

function stock(random: Random, k: number): NestStock {
  const defect = (): Region =>
    solid(circle(between(random, 8, 30), { x: between(random, 0, 700), y: between(random, 0, 300) }));
  const any = {
    name: `s${k}`,
    margin: pick(random, [0, 3, 8]),
    grain: pick(random, ['along', 'across', 'none'] as const),
    ...(random() < 0.4 && { defects: [defect(), defect()] }),
    ...(random() < 0.3 && { count: 1 + Math.floor(random() * 2) }),
    ...(random() < 0.5 && { price: between(random, 5, 50) }),
  };
  const kind = random();
  if (kind < 0.3) return { ...any, kind: 'offcut', outline: offcutOutline(random) };
  const size = { length: between(random, 500, 1300), width: between(random, 300, 700) };
  return kind < 0.5
    ? { ...any, ...size, kind: 'board', true: pick(random, [0, 3.2]) }
    : { ...any, ...size, kind: 'sheet' };
}

/** A job of 1 to 6 kinds of part on 1 to 3 kinds of stock: holes, defects, grain, offcuts, counts and prices among them. */
export function randomJob(seed: number): RandomJob {
  const random = seeded(seed);
  const stocks = Array.from({ length: 1 + Math.floor(random() * 3) }, (_, k) => stock(random, k));
  const parts = Array.from({ length: 1 + Math.floor(random() * 6) }, (_, k) => part(random, k, stocks));
  return { parts, stocks, gap: pick(random, [0, 0.2, 4, 7.35]) };
}
