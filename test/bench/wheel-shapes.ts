import {
  type Outline,
  type Point,
  polar,
  type Region,
  reverse,
  type Vertex,
  vertex,
} from '../../lib/geometry/index.js';

/** Shapes every bench shares, each with its measures moved a little by a random number, so that no figure hangs on one shape. */
export type Random = () => number;

const nudge = (random: Random, value: number): number => value * (1 + 0.004 * (random() - 0.5));

/** An anticlockwise circle from a random place on it. */
const turnedCircle = (center: Point, radius: number, from: number): Outline => [
  vertex(polar(radius, from, center), 1),
  vertex(polar(radius, from + Math.PI, center), 1),
];

const arcFrom = (center: Point, radius: number, from: number, to: number): Vertex =>
  vertex(polar(radius, from, center), Math.tan((to - from) / 4));

const angle = (center: Point, p: Point): number => Math.atan2(p.y - center.y, p.x - center.x);

/** A felloe: 45 degrees of a ring about 305 by 235, with a lap notch 12 wide half way down each end: 8 lines and 2 arcs. */
export function felloe(random: Random): Region {
  const outer = nudge(random, 305);
  const inner = nudge(random, 235);
  const middle = (outer + inner) / 2;
  const width = nudge(random, 12);
  const half = Math.PI / 8;
  const at = (end: number, radius: number, across: number): Point => ({
    x: radius * Math.cos(end) - across * Math.sin(end),
    y: radius * Math.sin(end) + across * Math.cos(end),
  });
  const d = at(-half, Math.sqrt(outer * outer - width * width), width);
  const e = at(half, outer, 0);
  const h = at(half, Math.sqrt(inner * inner - width * width), -width);
  const a = at(-half, inner, 0);
  const origin = { x: 0, y: 0 };
  return {
    outer: [
      vertex(a),
      vertex(at(-half, middle, 0)),
      vertex(at(-half, middle, width)),
      vertex(d, Math.tan((half - angle(origin, d)) / 4)),
      vertex(e),
      vertex(at(half, middle, 0)),
      vertex(at(half, middle, -width)),
      vertex(h, Math.tan((-half - angle(origin, h)) / 4)),
    ],
    openings: [],
  };
}

/** The opening between two spokes, clockwise: two arcs about the wheel's centre, two lines, four round corners. */
function window(from: number, to: number, hub: number, rim: number, spoke: number, r: number): Outline {
  const d = spoke / 2 + r;
  const out = Math.asin(d / (rim - r));
  const inn = Math.asin(d / (hub + r));
  const origin = { x: 0, y: 0 };
  const corner = (radius: number, at: number): Point => polar(radius, at);
  const [a, b, c, e] = [
    corner(rim - r, from + out),
    corner(rim - r, to - out),
    corner(hub + r, to - inn),
    corner(hub + r, from + inn),
  ];
  const right = Math.PI / 2;
  return reverse([
    arcFrom(origin, rim, from + out, to - out),
    arcFrom(b, r, to - out, to + right),
    vertex(polar(r, to + right, b)),
    arcFrom(c, r, to + right, to - inn + Math.PI),
    arcFrom(origin, hub, to - inn, from + inn),
    arcFrom(e, r, from + inn + Math.PI, from - right + 2 * Math.PI),
    vertex(polar(r, from - right, e)),
    arcFrom(a, r, from - right, from + out),
  ]);
}

/** A wheel in one piece: 16 windows, 57 round holes: 32 lines and 212 arcs. */
export function wheel(random: Random): Region {
  const step = Math.PI / 8;
  const hub = nudge(random, 90);
  const rim = nudge(random, 235);
  const spoke = nudge(random, 18);
  const r = nudge(random, 6);
  const holes = (count: number, circle: number, radius: number, shift: number): Outline[] =>
    Array.from({ length: count }, (_, i) =>
      reverse(turnedCircle(polar(circle, ((i + shift) * 2 * Math.PI) / count), nudge(random, radius), random())),
    );
  return {
    outer: turnedCircle({ x: 0, y: 0 }, nudge(random, 305), 0),
    openings: [
      ...Array.from({ length: 16 }, (_, i) => window(i * step, (i + 1) * step, hub, rim, spoke, r)),
      ...holes(32, 290, 4, 0.5),
      ...holes(16, 160, 3, 0),
      ...holes(8, 60, 5, 0.5),
      ...holes(1, 0, 25, 0),
    ],
  };
}

/** A lobed outline of short lines, each vertex moved by up to 0.05 mm. */
export function lobes(random: Random, count: number): Region {
  const radius = nudge(random, 250);
  const lobe = nudge(random, 40);
  const outer = Array.from({ length: count }, (_, i) => {
    const at = (2 * Math.PI * i) / count;
    return vertex(polar(radius + lobe * Math.sin(50 * at) + 0.1 * (random() - 0.5), at));
  });
  return { outer, openings: [] };
}

/** 30 discs inside a felloe and 10 across its outer arc. */
export function drillings(random: Random): Region[] {
  const r = nudge(random, 4);
  const inside = Array.from({ length: 30 }, (_, i) =>
    polar(i % 2 ? 255 : 285, ((-18 + ((i >> 1) * 36) / 14) * Math.PI) / 180),
  );
  const across = Array.from({ length: 10 }, (_, i) => polar(305, ((-16 + (i * 32) / 9) * Math.PI) / 180));
  return [...inside, ...across].map(c => ({ outer: turnedCircle(c, r, random()), openings: [] }));
}

/** 16 spokes, a rim and a hub disc that overlap to make a wheel. */
export function spokedWheel(random: Random): Region[] {
  const width = nudge(random, 9);
  const spokes = Array.from({ length: 16 }, (_, i): Region => {
    const a = (i * Math.PI) / 8;
    const at = (x: number, y: number): Vertex =>
      vertex({ x: x * Math.cos(a) - y * Math.sin(a), y: x * Math.sin(a) + y * Math.cos(a) });
    return { outer: [at(20, -width), at(270, -width), at(270, width), at(20, width)], openings: [] };
  });
  const origin = { x: 0, y: 0 };
  const rim: Region = {
    outer: turnedCircle(origin, nudge(random, 305), random()),
    openings: [reverse(turnedCircle(origin, nudge(random, 235), random()))],
  };
  return [...spokes, rim, { outer: turnedCircle(origin, nudge(random, 90), random()), openings: [] }];
}
