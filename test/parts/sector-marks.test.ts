import { expect, test } from 'vitest';
import { circle, solid } from '../../lib/geometry/outline.js';
import { crowdedHoles } from '../../lib/parts/crowded-holes.js';
import { hubDisc } from '../../lib/parts/hub-disc.js';
import type { Drill, Part, Score } from '../../lib/parts/part.js';
import { sectorMarked } from '../../lib/parts/sector-marks.js';
import { near } from '../close.js';

const disc = hubDisc({ diameter: 200, bore: { kind: 'through', diameter: 20 }, thickness: 10, stock: 'ply' });
const hole = (x: number, y: number, diameter = 8): Drill => ({
  kind: 'drill',
  at: { x, y },
  diameter,
  from: 'through',
  depth: 10,
});
const holed = (...holes: Drill[]): Part => ({ ...disc, features: holes });
const scores = (p: Part): Score[] => p.features.filter(f => f.kind === 'score');
/** From where to where each mark runs, by distance from the middle. */
const spans = (p: Part): number[][] => scores(p).map(s => s.line.map(v => Math.hypot(v.x, v.y)));

test('a radius is scored from one distance to another, at its angle from straight up', () => {
  const marked = sectorMarked(disc, { at: [0, Math.PI / 2], from: 30, to: 90 });
  const [up, left] = scores(marked);
  near(up!.line[0]!.y, 30);
  near(up!.line[1]!.y, 90);
  near(left!.line[1]!.x, -90);
});

test('as far as there is wood: from the bore to the edge', () => {
  const [[from, to] = []] = spans(sectorMarked(disc, { at: [0.3], from: 0, to: 500 }));
  near(from!, 10);
  near(to!, 100);
});

test('a hole, a pocket of the front and half a mm beside them are left out; a pocket of the back is not', () => {
  const area = solid(circle(5, { x: 0, y: 40 }));
  const pocket = (face: 'front' | 'back') => ({ kind: 'pocket', face, depth: 3, area, beyond: area }) as const;
  const part = { ...disc, features: [hole(0, 80), pocket('front')] };
  const found = spans(sectorMarked(part, { at: [0], from: 20, to: 95 })).flat();
  [20, 34.5, 45.5, 75.5, 84.5, 95].forEach((at, i) => {
    near(found[i]!, at);
  });
  expect(spans(sectorMarked({ ...disc, features: [pocket('back')] }, { at: [0], from: 20, to: 95 }))).toHaveLength(1);
});

test('a hole off the line does not break it', () => {
  expect(spans(sectorMarked(holed(hole(6, 50)), { at: [0], from: 20, to: 95 }))).toHaveLength(1);
  expect(spans(sectorMarked(holed(hole(3, 50)), { at: [0], from: 20, to: 95 }))).toHaveLength(2);
});

test('holes too near to an edge or a pocket, and those off the part, are told', () => {
  const area = solid(circle(10, { x: -50, y: 0 }));
  const part: Part = {
    ...holed(hole(90, 0), hole(93, 0), hole(0, 5), hole(-50, 0), hole(-50, 16), hole(300, 0)),
  };
  const pocketed: Part = {
    ...part,
    features: [...part.features, { kind: 'pocket', face: 'front', depth: 2, area, beyond: area }],
  };
  expect(crowdedHoles(pocketed, 4).map(h => h.at.x)).toEqual([93, 0, -50, -50, 300]);
  expect(crowdedHoles(pocketed, 2).map(h => h.at.x)).toEqual([0, -50, 300]);
});
