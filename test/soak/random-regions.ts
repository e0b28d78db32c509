import {
  arcVertices,
  circle,
  type Motion,
  moveRegion,
  type Outline,
  polar,
  type Region,
  rectangle,
  reverse,
  segments,
  solid,
  type Vertex,
  vertex,
} from '../../lib/geometry/index.js';

/** Numbers from 0 to 1 by seed: a counter through a mixing function (the finaliser of MurmurHash3, public domain). */
export function seeded(seed: number): () => number {
  let counter = Math.imul(seed, 0x9e3779b1) >>> 0;
  return () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let h = counter;
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
  };
}

type Random = () => number;
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const whole = (random: Random, from: number, to: number): number => from + Math.floor(random() * (to - from + 1));

const QUARTER = Math.tan(Math.PI / 8);

/** A star-shaped outline about a centre: vertices at growing angles, straight or bulged, some of them very flat. On a grid, so that edges line up, if `grid` > 0. */
function star(random: Random, n: number, radius: number, cx: number, cy: number, grid: number): Outline {
  const bulged = random();
  const depth = 0.2 + 0.6 * random();
  return Array.from({ length: n }, (_, i) => {
    const p = polar(radius * (1 - depth + depth * random()), (2 * Math.PI * (i + 0.6 * random())) / n, {
      x: cx,
      y: cy,
    });
    const bent = grid > 0 ? pick(random, [1, -1, QUARTER, -QUARTER]) : (random() - 0.5) * 1.6;
    const flat = random() < 0.04 ? pick(random, [1e-3, 1e-5, 1e-7]) : 1;
    const bend = random() < bulged ? 0 : bent * flat;
    const snap = (v: number): number => (grid > 0 ? Math.round(v / grid) * grid : v);
    return vertex({ x: snap(p.x), y: snap(p.y) }, bend);
  });
}

/** A plate with slots and rounded corners on a grid: parallel edges, equal widths, tangent arcs. */
function plate(random: Random): Outline {
  const w = whole(random, 4, 12) * 4;
  const h = whole(random, 4, 12) * 4;
  const r = pick(random, [0, 0, 1, 2, 4, 6]);
  if (r === 0) return rectangle(0, 0, w, h);
  const corner = (x: number, y: number, from: number): Vertex[] => {
    const [first] = arcVertices({ x, y }, r, from, Math.PI / 2);
    return [first!, vertex(polar(r, from + Math.PI / 2, { x, y }))];
  };
  return [
    ...corner(w - r, r, -Math.PI / 2),
    ...corner(w - r, h - r, 0),
    ...corner(r, h - r, Math.PI / 2),
    ...corner(r, r, Math.PI),
  ];
}

const disc = (x: number, y: number, r: number): Outline => [
  { x: x + r, y, bulge: 1 },
  { x: x - r, y, bulge: 1 },
];

/** A region of 4 to 60 vertices, lines and arcs, half of them with openings; not yet known to be valid: see fine-polygons.ts. */
export function randomRegion(random: Random): Region {
  const kind = random();
  const grid = kind < 0.7 ? 0 : 2;
  const outer = kind < 0.85 ? star(random, whole(random, 4, random() < 0.3 ? 60 : 20), 40, 0, 0, grid) : plate(random);
  const openings: Outline[] = [];
  if (random() < 0.5) {
    const count = whole(random, 1, 4);
    for (let i = 0; i < count; i++) {
      const c =
        grid > 0 || kind >= 0.85
          ? { x: whole(random, -6, 12) * 2, y: whole(random, -6, 12) * 2 }
          : polar(22 * random(), 2 * Math.PI * random());
      const r = grid > 0 || kind >= 0.85 ? whole(random, 1, 4) : 1 + 8 * random();
      openings.push(
        reverse(random() < 0.5 ? disc(c.x, c.y, r) : star(random, whole(random, 3, 8), r, c.x, c.y, grid > 0 ? 1 : 0)),
      );
    }
  }
  return { outer, openings };
}

/** A distance that makes features of such a region meet, collapse or split; on a grid often exactly. */
export function randomDistance(random: Random): number {
  const size = random() < 0.4 ? pick(random, [0.5, 1, 1.5, 2, 3, 4, 6]) : 12 * random() * random();
  return random() < 0.5 ? size : -size;
}

/** A region that has edges, arcs or vertices in common with another. */
function relativeOf(random: Random, a: Region): Region {
  const n = a.outer.length;
  switch (whole(random, 0, 4)) {
    case 0: {
      // some corners somewhere else, the rest of the edges the same
      const from = whole(random, 0, n - 1);
      const inward = 0.3 + 0.6 * random();
      return {
        outer: a.outer.map((v, i) => (i >= from ? v : { ...v, x: v.x * inward, y: v.y * inward })),
        openings: [],
      };
    }
    case 1:
      return moveRegion(a, { turn: 0, x: whole(random, -8, 8) * 2, y: whole(random, -8, 8) * 2 });
    case 2: {
      // a neighbour on the far side of some edges
      const count = whole(random, 1, Math.max(1, Math.floor(n / 3)));
      const along = reverse(a.outer).slice(0, count + 1);
      const out = along.map(v => ({ x: v.x * 1.5, y: v.y * 1.5, bulge: 0 }));
      return solid([...along.map((v, i) => (i === count ? { ...v, bulge: 0 } : v)), ...out.reverse()]);
    }
    case 3: {
      // the whole circle of one of its arcs
      const arcs = segments(a.outer)
        .filter(s => s.kind === 'arc')
        .filter(s => s.radius < 200);
      if (arcs.length === 0) return solid(a.outer);
      const arc = pick(random, arcs);
      return solid(circle(arc.radius, arc.center));
    }
    default:
      // every other corner
      return solid(a.outer.filter((_, i) => i % 2 === 0).map(v => (random() < 0.5 ? v : vertex(v))));
  }
}

const turned = (random: Random): Motion => ({
  mirrored: random() < 0.5,
  turn: 2 * Math.PI * random(),
  x: 20 * random(),
  y: 20 * random(),
});

/** Two regions; every third pair shares edges, arcs or vertices on purpose, half of those turned so that roundings come between. */
export function randomPair(random: Random): readonly [Region, Region] {
  const a = randomRegion(random);
  const moved = turned(random);
  if (random() < 2 / 3) return [a, moveRegion(randomRegion(random), moved)];
  const b = relativeOf(random, a);
  return random() < 0.5 ? [a, b] : [moveRegion(a, moved), moveRegion(b, moved)];
}
