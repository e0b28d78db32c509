import { expect, test } from 'vitest';
import { cut } from '../../lib/cutting/cut.js';
import { lapRim } from '../../lib/joints/lap.js';
import { felloe } from '../../lib/parts/felloe.js';

const board = { thickness: 19, stock: 'plank' };
const router = { kind: 'router', diameter: 6.35, reach: 25 } as const;

/** A felloe of 60 degrees whose one lap, 30 mm wide, is cut by its seam: the spoke lies `off` radians outside it. */
function cutBySeam(off: number) {
  const part = felloe({ ...board, outer: 300, inner: 220, sweep: Math.PI / 3 });
  return lapRim(part, { inner: 220, outer: 300, width: 30, depth: 9.5, sweep: Math.PI / 3, at: [Math.PI / 6 + off] });
}

test.each([0.005, 0.03, 0.045])(
  'a lap cut by a seam %s rad off the spoke is open to the cutter from that side, however narrow',
  off => {
    const part = cutBySeam(off);
    expect(part.features.filter(f => f.kind === 'pocket')).toHaveLength(1);
    expect(cut(part, router, 'router').findings.filter(f => f.level === 'stop')).toEqual([]);
  },
);

test('a lap narrower than the cutter is still refused', () => {
  const part = felloe({ ...board, outer: 300, inner: 220, sweep: Math.PI / 3 });
  const lapped = lapRim(part, { inner: 220, outer: 300, width: 5, depth: 9.5, sweep: Math.PI / 3, at: [0] });
  const found = cut(lapped, router, 'router').findings.find(f => f.rule === 'narrow-pocket');
  expect(found).toMatchObject({ level: 'stop', limit: 6.35 });
  expect(found?.value).toBeCloseTo(5, 1);
});
