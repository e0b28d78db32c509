import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { beside } from '../../lib/drawings/beside.js';
import { explodedLayers } from '../../lib/drawings/exploded-layers.js';
import { lyingPose, standingPose } from '../../lib/drawings/exploded-pose.js';
import type { Picture } from '../../lib/drawings/picture.js';
import { placedPieces } from '../../lib/drawings/placed.js';
import { seenAt, standingView } from '../../lib/drawings/view.js';
import { polylineBounds } from '../../lib/geometry/measure.js';
import { rectangle } from '../../lib/geometry/outline.js';
import { buildProp } from '../../lib/models/index.js';
import { readPlan } from '../../lib/plan/index.js';
import { near } from '../close.js';

const sample = (name: string) => {
  const plan = readPlan(readFileSync(new URL(`../../samples/${name}.yaml`, import.meta.url), 'utf8'));
  return buildProp(plan, plan.stock, plan.title).value!;
};

describe('a standing view', () => {
  const view = standingView(0.9, 0.4);

  test('has three directions of length 1, square to each other, up pointing up', () => {
    const { right, up, towards } = view;
    for (const d of [right, up, towards]) near(Math.hypot(d.x, d.y, d.z), 1);
    for (const [a, b] of [
      [right, up],
      [up, towards],
      [towards, right],
    ] as const)
      near(a.x * b.x + a.y * b.y + a.z * b.z, 0);
    near(seenAt(view, { x: 0, y: 1, z: 0 }).x, 0);
    expect(seenAt(view, { x: 0, y: 1, z: 0 }).y).toBeGreaterThan(0);
  });
});

describe('a stand taken apart', () => {
  const model = sample('ferry-stand');
  const layers = explodedLayers(placedPieces(model));
  const { shifts } = standingPose(layers);
  const shiftOf = (kind: string) => shifts.filter((_, i) => layers[i]!.pieces[0]!.placed.part.kind === kind);

  test('stands: cheeks and shelf are moved along the axle, the feet down', () => {
    expect(model.upright).toBe(true);
    const [back, front] = shiftOf('cheek');
    expect(front!.z).toBeGreaterThan(shiftOf('shelf')[0]!.z);
    expect(shiftOf('shelf')[0]!.z).toBeGreaterThan(back!.z);
    for (const s of [...shiftOf('cheek'), ...shiftOf('shelf')]) expect([s.x, s.y]).toEqual([0, 0]);
    expect(shiftOf('foot')[0]!.y).toBeLessThan(-100);
  });

  test('a wheel lies on its back, and every layer is lifted', () => {
    const wheel = sample('ferry-helm');
    const pose = lyingPose(explodedLayers(placedPieces(wheel)));
    expect(wheel.upright).toBeUndefined();
    expect(pose.shifts.every(s => s.x === 0 && s.y === 0)).toBe(true);
    for (const [i, s] of pose.shifts.entries()) expect(s.z).toBeGreaterThanOrEqual(pose.shifts[i - 1]?.z ?? 0);
  });

  test('felloes of one ring stay one layer, notched for a mullion or not; bars that cross are two', () => {
    const kinds = explodedLayers(placedPieces(sample('ferry-porthole'))).map(l => l.pieces[0]!.placed.part.kind);
    expect(kinds.sort()).toEqual(['felloe', 'mullion', 'mullion']);
  });
});

describe('pictures side by side', () => {
  const picture = (width: number, height: number): Picture => {
    const shape = { closed: [rectangle(-width / 4, 0, width / 4, height / 2)], open: [], paint: {} };
    const box = { minX: -width / 2, minY: -height / 2, maxX: width / 2, maxY: height / 2 };
    return { title: 'one', box, background: 0, groups: [{ name: 'prop', shapes: [shape] }] };
  };

  test('one stays as it is', () => {
    const one = picture(100, 50);
    expect(beside('all', [one])).toBe(one);
  });

  test('several keep their size, apart from each other, lower edges level, every group its own name', () => {
    const all = beside('all', [picture(100, 50), picture(60, 80), picture(40, 40)]);
    expect(all.groups.map(g => g.name)).toEqual(['prop-1', 'prop-2', 'prop-3']);
    const boxes = all.groups.map(g => polylineBounds(g.shapes[0]!.closed[0]!));
    expect(boxes.map(b => b.maxX - b.minX)).toEqual([50, 30, 20].map(n => expect.closeTo(n, 9)));
    for (const [i, b] of boxes.entries()) if (i > 0) expect(b.minX).toBeGreaterThan(boxes[i - 1]!.maxX);
    expect(all.box.maxX - all.box.minX).toBeCloseTo(100 + 60 + 40 + 2 * 3, 9);
    near(all.box.maxY - all.box.minY, 80);
  });
});
