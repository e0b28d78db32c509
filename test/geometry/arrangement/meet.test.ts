import { describe, expect, test } from 'vitest';
import { addArc, addLine, type Edges, edgeTable } from '../../../lib/geometry/arrangement/edges.js';
import { meet } from '../../../lib/geometry/arrangement/meet.js';

type Told = readonly [x: number, y: number, on: string];

function meetings(add: (e: Edges) => void): Told[] {
  const edges = edgeTable(2);
  add(edges);
  const told: Told[] = [];
  meet(edges, 0, 1, 1e-9, (x, y, onA, onB) => told.push([x, y, `${onA ? 'a' : ''}${onB ? 'b' : ''}`]));
  return told;
}

const line = (e: Edges, x0: number, y0: number, x1: number, y1: number): void => addLine(e, x0, y0, x1, y1, 1);
/** the upper half of a circle, anticlockwise */
const cap = (e: Edges, cx: number, cy: number, r: number): void => addArc(e, cx + r, cy, cx - r, cy, 1, cx, cy, r, 1);

describe('two lines', () => {
  test('cross', () => {
    expect(meetings(e => [line(e, 0, 0, 4, 4), line(e, 0, 4, 4, 0)])).toEqual([[2, 2, 'ab']]);
  });
  test('apart, though their carriers cross', () => {
    expect(meetings(e => [line(e, 0, 0, 1, 1), line(e, 0, 4, 4, 0)])).toEqual([]);
  });
  test('overlap: each is cut at the end of the other', () => {
    expect(meetings(e => [line(e, 0, 0, 4, 0), line(e, 6, 0, 1, 0)])).toEqual([
      [4, 0, 'b'],
      [1, 0, 'a'],
    ]);
  });
  test('end to end, or end on the other', () => {
    expect(meetings(e => [line(e, 0, 0, 4, 0), line(e, 4, 0, 5, 3)])).toEqual([]);
    expect(meetings(e => [line(e, 0, 0, 4, 0), line(e, 2, 0, 5, 3)])).toEqual([[2, 0, 'a']]);
  });
});

describe('line and arc', () => {
  test('cross twice', () => {
    const told = meetings(e => [line(e, -9, 3, 9, 3), cap(e, 0, 0, 5)]);
    expect(told).toHaveLength(2);
    expect(told.map(([x]) => Math.abs(x))).toEqual([4, 4]);
  });
  test('touch: one point', () => {
    expect(meetings(e => [line(e, -9, 5, 9, 5), cap(e, 0, 0, 5)])).toEqual([[0, 5, 'ab']]);
  });
  test('a line that is tangent at the end of the arc meets it there and nowhere else', () => {
    expect(meetings(e => [line(e, 5, -4, 5, 0), cap(e, 0, 0, 5)])).toEqual([]);
    expect(meetings(e => [line(e, 5, -4, 5, 4), cap(e, 0, 0, 5)])).toEqual([[5, 0, 'a']]);
  });
});

describe('two arcs', () => {
  test('cross once where their circles cross twice', () => {
    const told = meetings(e => [cap(e, 0, 0, 5), cap(e, 6, 0, 5)]);
    expect(told).toEqual([[3, 4, 'ab']]);
  });
  test('touch from outside and from inside', () => {
    expect(meetings(e => [addArc(e, 0, -5, 0, 5, 1, 0, 0, 5, 1), addArc(e, 8, 3, 8, -3, 1, 8, 0, 3, 1)])).toEqual([
      [5, 0, 'ab'],
    ]);
    expect(meetings(e => [cap(e, 0, 0, 5), cap(e, 0, 2, 3)])).toEqual([[0, 5, 'ab']]);
  });
  test('on one circle: cut at each other’s ends', () => {
    const told = meetings(e => [cap(e, 0, 0, 5), addArc(e, 3, 4, -5, 0, 1, 0, 0, 5, 1)]);
    expect(told).toEqual([[3, 4, 'a']]);
  });
  test('concentric: never', () => {
    expect(meetings(e => [cap(e, 0, 0, 5), cap(e, 0, 0, 4)])).toEqual([]);
  });
  test('very flat: the point lies on both to the last digits', () => {
    // chords of 20, sagitta 5e-5: radius a million; the two cross near (10, 2)
    const flat = (e: Edges, x0: number, y0: number, x1: number, y1: number): void => {
      const [dx, dy] = [x1 - x0, y1 - y0];
      const b = 5e-6;
      const h = (1 - b * b) / (4 * b);
      const r = (Math.hypot(dx, dy) * (1 + b * b)) / (4 * b);
      addArc(e, x0, y0, x1, y1, 1, (x0 + x1) / 2 - dy * h, (y0 + y1) / 2 + dx * h, r, 1);
    };
    const [told] = meetings(e => [flat(e, 0, 0, 20, 4), flat(e, 0, 4, 20, 0)]);
    // by symmetry on x = 10 but for the sagittas, which both push it the same way, down
    expect(told![0]).toBeCloseTo(10, 9);
    const chord = Math.hypot(20, 4);
    const sagitta = (5e-6 * chord) / 2;
    expect(told![1]).toBeCloseTo(2 - (sagitta * chord) / 20, 10);
  });
});
