import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area } from '../../lib/geometry/measure.js';
import { rectangle, solid } from '../../lib/geometry/outline.js';
import { lapRim, lapSpoke } from '../../lib/joints/lap.js';
import { felloe } from '../../lib/parts/felloe.js';
import { type MatingEdge, matingCorners, matingEdges } from '../../lib/parts/mates.js';
import { piece } from '../../lib/parts/piece.js';
import { near } from '../close.js';

const board = { thickness: 19, stock: 'plank' };
const RING = { outer: 300, inner: 230, sweep: 0.6 };
const inPockets = (edges: readonly MatingEdge[]): MatingEdge[] => edges.filter(e => e.of.where === 'pocket');

/** Distance of an edge's ends from a line through the origin at an angle from +y. */
const offLine = ({ segment }: MatingEdge, angle: number): number[] =>
  [segment.from, segment.to].map(p => Math.abs(p.x * Math.cos(angle) + p.y * Math.sin(angle)));

test('walls of a rim pocket lie half the lap off the spoke, wherever a seam cuts it; nothing else of it is tagged', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.38, max: 0.38, noNaN: true }),
      fc.double({ min: 10, max: 60, noNaN: true }),
      (at, width) => {
        const part = lapRim(felloe({ ...board, ...RING }), { ...RING, width, depth: 9, at: [at] });
        const pockets = part.features.filter(f => f.kind === 'pocket');
        fc.pre(pockets.length > 0 && pockets.every(p => area(p.area) > 1));
        const walls = inPockets(matingEdges(part));
        for (const wall of walls) {
          expect(wall.mate).toBe('lap');
          for (const off of offLine(wall, at)) near(off, width / 2, 1e-6);
        }
        const whole = Math.abs(at) + Math.asin(width / 2 / RING.inner) <= RING.sweep / 2;
        if (whole) expect(walls).toHaveLength(2);
        else expect(walls.length).toBeGreaterThan(0);
        // every edge that lies on a wall is one of them
        for (const pocket of pockets)
          for (const [i, v] of pocket.area.outer.entries()) {
            const w = pocket.area.outer[(i + 1) % pocket.area.outer.length]!;
            const off = [v, w].map(p => Math.abs(p.x * Math.cos(at) + p.y * Math.sin(at)) - width / 2);
            if (v.bulge === 0 && off.every(d => Math.abs(d) < 1e-7)) expect(v.mate).toBe('lap');
          }
      },
    ),
  );
});

test('a pocket open from edge to edge has no corner in the wood; the felloe keeps its seams', () => {
  const part = lapRim(felloe({ ...board, ...RING }), { ...RING, width: 32, depth: 9, at: [0, 0.3] });
  expect(
    matingEdges(part)
      .filter(e => e.of.where === 'outer')
      .map(e => e.mate),
  ).toEqual(['seam', 'seam']);
  expect(matingCorners(part).filter(c => c.of.where === 'pocket')).toEqual([]);
});

test("a spoke's pocket is tagged along its two shoulders, which follow the rim", () => {
  const bar = piece('spoke', 'Spoke', board, { region: solid(rectangle(30, -16, 500, 16)) });
  const part = lapSpoke(bar, { inner: 230, outer: 300, width: 32, clearance: 0.2, depth: 9 });
  const shoulders = matingEdges(part);
  expect(shoulders.map(e => [e.mate, e.segment.kind === 'arc' && e.segment.radius])).toEqual([
    ['lap', expect.closeTo(300.1, 9)],
    ['lap', expect.closeTo(229.9, 9)],
  ]);
  expect(matingCorners(part)).toEqual([]);
});
