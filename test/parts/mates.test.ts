import { expect, test } from 'vitest';
import { withMates } from '../../lib/geometry/mates.js';
import { rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import { distance } from '../../lib/geometry/point.js';
import { felloe, looseFelloe } from '../../lib/parts/felloe.js';
import { hasMates, type MatingCorner, matingCorners, matingEdges } from '../../lib/parts/mates.js';
import type { Part, Pocket } from '../../lib/parts/part.js';
import { piece } from '../../lib/parts/piece.js';
import { spoke, wedge } from '../../lib/parts/spoke.js';
import { trimSegment } from '../../lib/parts/trim-segment.js';
import { near } from '../close.js';

const board = { thickness: 19, stock: 'plank' };
const told = (part: Part): [string, number][] =>
  matingEdges(part).map(e => [e.mate, Math.round(distance(e.segment.from, e.segment.to) * 1e6) / 1e6]);

const plate = (openings: readonly ReturnType<typeof rectangle>[] = [], pockets: readonly Pocket[] = []): Part => ({
  ...piece('rail', 'Plate', board, { region: { outer: rectangle(0, 0, 100, 60), openings } }),
  features: pockets,
});

test('felloes and trim segments meet their neighbours at both ends, over the whole band', () => {
  const ring = { outer: 300, inner: 230, sweep: 0.6 };
  expect(told(felloe({ ...board, ...ring }))).toEqual([
    ['seam', 70],
    ['seam', 70],
  ]);
  expect(told(trimSegment({ ...board, ...ring }))).toEqual([
    ['seam', 70],
    ['seam', 70],
  ]);
});

test('a loose felloe meets a spoke where it has a lap, another felloe where it has none', () => {
  const ring = { ...board, outer: 300, inner: 230, between: 0.6 };
  const mates = (left: number, right: number) => matingEdges(looseFelloe({ ...ring, laps: { left, right } }));
  expect(mates(40, 40).map(e => e.mate)).toEqual(['lap', 'lap']);
  expect(mates(40, 0).map(e => [e.mate, e.segment.from.x < 0])).toEqual([
    ['lap', true],
    ['seam', false],
  ]);
});

test('a spoke meets its neighbours along both flanks of its wedge and nowhere else', () => {
  const o = { count: 10, width: 32, flat: 30 };
  const handle = [
    { x: 0, y: 16, bulge: 0 },
    { x: 100, y: 16, bulge: 0 },
  ];
  const part = spoke({ ...board, ...o, rim: 380, handle });
  const { angle, corner } = wedge(o);
  const edges = matingEdges(part);
  expect(edges.map(e => e.mate)).toEqual(['wedge', 'wedge']);
  for (const { segment } of edges) {
    const [a, b] = [segment.from, segment.to];
    near(Math.max(a.x, b.x), corner);
    near(Math.min(a.x, b.x), o.flat);
    near(Math.abs((a.y - b.y) / (a.x - b.x)), Math.tan(angle)); // both flanks lean half the apex from the axis
  }
});

const corners = (part: Part) =>
  matingCorners(part).map((c: MatingCorner) => [c.of.where, c.at.x, c.at.y, c.side, ...c.mates]);

test('corners: wood stands out at those of an outline, a hollow has its own inside', () => {
  const outer = withMates(rectangle(0, 0, 100, 60), 'seam', [1]);
  const opening = reverse(withMates(rectangle(20, 20, 40, 40), 'tenon', [0, 1, 2, 3]));
  const part = { ...plate(), region: { outer, openings: [opening] } };
  expect(corners(part)).toEqual([
    ['outer', 100, 0, 'outside', undefined, 'seam'],
    ['outer', 100, 60, 'outside', 'seam', undefined],
    ...opening.map(v => ['opening', v.x, v.y, 'inside', 'tenon', 'tenon']),
  ]);
  for (const c of matingCorners(part)) near(c.turn, Math.PI / 2);
});

test('a pocket has its corners where wood is on both sides of them, not where it is open', () => {
  const walls = [0, 1, 2];
  const pocket = (to: number): Pocket => ({
    kind: 'pocket',
    face: 'front',
    depth: 9,
    area: solid(withMates(rectangle(80, 20, 100, 40), 'lap', walls)),
    beyond: solid(withMates(rectangle(80, 20, to, 40), 'lap', walls)),
  });
  expect(corners(plate([], [pocket(100)])).map(c => c.slice(1, 4))).toEqual([
    [80, 20, 'inside'],
    [100, 20, 'inside'],
    [100, 40, 'inside'],
    [80, 40, 'inside'],
  ]);
  expect(corners(plate([], [pocket(160)]))).toEqual([
    ['pocket', 80, 20, 'inside', undefined, 'lap'],
    ['pocket', 80, 40, 'inside', 'lap', undefined],
  ]);
  expect(matingEdges(plate([], [pocket(160)])).map(e => e.of.where)).toEqual(['pocket', 'pocket', 'pocket']);
});

test('a smooth join is no corner, an outline without tags has none', () => {
  const straight = withMates(
    [...rectangle(0, 0, 50, 60).slice(0, 1), { x: 40, y: 0, bulge: 0 }, ...rectangle(0, 0, 50, 60).slice(1)],
    'lap',
    [0],
  );
  expect(corners({ ...plate(), region: solid(straight) })).toEqual([['outer', 0, 0, 'outside', undefined, 'lap']]);
  expect(corners(plate([reverse(rectangle(20, 20, 40, 40))]))).toEqual([]);
  expect(hasMates(solid(straight))).toBe(true);
  expect(
    hasMates({ outer: rectangle(0, 0, 9, 9), openings: [withMates(reverse(rectangle(2, 2, 4, 4)), 'lap', [0])] }),
  ).toBe(true);
  expect(hasMates(plate().region)).toBe(false);
});
