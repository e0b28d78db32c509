import { describe, expect, test } from 'vitest';
import { area, bounds } from '../../lib/geometry/measure.js';
import { notched, slotted, tabbed } from '../../lib/joints/tab.js';
import { standRail } from '../../lib/parts/stand-rail.js';
import { near } from '../close.js';

const board = standRail({ thickness: 18, stock: 'ply', length: 400, width: 100 });

describe('tabs and slots', () => {
  const tab = { minX: -20, minY: 50, maxX: 20, maxY: 68 };

  test('a tab adds its own area past the edge, and its flanks meet the other board', () => {
    const part = tabbed(board, [tab], 'y');
    near(area(part.region), 400 * 100 + 40 * 18);
    expect(bounds(part.region.outer).maxY).toBe(68);
    expect(part.region.outer.filter(v => v.mate === 'slot')).toHaveLength(2);
  });

  test('a slot is the tab and half the clearance all round', () => {
    const part = slotted(board, [{ minX: -20, minY: -9, maxX: 20, maxY: 9 }], 0.4);
    near(area(part.region), 400 * 100 - 40.4 * 18.4);
    expect(part.region.openings).toHaveLength(1);
    expect(part.region.openings[0]!.every(v => v.mate === 'slot')).toBe(true);
  });

  test('a tab that touches nothing, or a slot right across, is refused', () => {
    expect(() => tabbed(board, [{ ...tab, minY: 60 }], 'y')).toThrow(RangeError);
    expect(() => slotted(board, [{ minX: -5, minY: -60, maxX: 5, maxY: 60 }], 0)).toThrow(RangeError);
  });
});

describe('notches', () => {
  test.each([
    { along: 'x', at: -50, into: 50 },
    { along: 'x', at: 50, into: -50 },
    { along: 'y', at: 200, into: -200 },
  ] as const)('from the edge at $at: half way through, with the clearance', edge => {
    const part = notched(board, edge, [{ at: 0, thickness: 18 }], 0.2);
    near(area(part.region), 400 * 100 - 18.2 * (Math.abs(edge.into) + 0.1));
    expect(part.region.outer.filter(v => v.mate === 'slot')).toHaveLength(3);
  });

  test('two boards that cross keep their height together, but for the clearance', () => {
    const [up, down] = [50, -50];
    const low = notched(board, { along: 'x', at: down, into: 50 }, [{ at: 0, thickness: 18 }], 0.2);
    const high = notched(board, { along: 'x', at: up, into: -50 }, [{ at: 0, thickness: 18 }], 0.2);
    near(area(low.region) + area(high.region), 2 * 400 * 100 - 18.2 * 100.2);
  });
});
