import { describe, expect, test } from 'vitest';
import { interference } from '../../lib/checks/interference.js';
import { mating } from '../../lib/checks/mating.js';
import { withMates } from '../../lib/geometry/mates.js';
import { annularSector, circle, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import type { Model } from '../../lib/models/model.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import { assembly, at, box, pocket, testPart } from './assemblies.js';

const felloe = testPart('felloe', solid(withMates(annularSector(300, 400, 0, Math.PI / 3), 'seam', [1, 3])));
const ring = (turns: readonly number[]) =>
  assembly(
    [felloe],
    turns.map(turn => at('felloe', { turn: (turn * Math.PI) / 3 })),
  );

describe('seams', () => {
  test('a whole ring of felloes touches; a ring with one left out has two bare faces, told once', () => {
    expect(mating(ring([0, 1, 2, 3, 4, 5]))).toEqual([]);
    const [found, ...more] = mating(ring([0, 1, 2, 3, 4]));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: 'warn', rule: 'mating', where: 'felloe, felloe', value: 'seam' });
    expect(found?.message).toContain('piece 1 of 5');
    expect(found?.message).toContain('at (350, 0, 5) mm; none is within 5 mm, the next is Felloe (felloe, piece ');
  });

  test('seams with more room than their fit do not touch', () => {
    const apart = { ...ring([0, 1, 2, 3, 4, 5]) };
    const pieces = apart.pieces.map(p => ({
      ...p,
      x: 0.2 * Math.cos(p.turn + Math.PI / 6),
      y: 0.2 * Math.sin(p.turn + Math.PI / 6),
    }));
    // each felloe moved 0.2 mm out opens its seams by 2 * 0.2 sin(30 deg) = 0.2 mm
    const seams = (model: Model) => mating(model).filter(f => f.value === 'seam');
    const [found, ...more] = seams({ ...apart, pieces });
    expect(more).toEqual([]);
    expect(found?.where).toBe('felloe, felloe');
    expect(found?.message).toContain('Felloe (felloe, piece 2 of 6) is 0.2 mm off');
    expect(seams({ ...apart, pieces, fits: { seam: 0.15 } })).toHaveLength(1);
    expect(seams({ ...apart, pieces, fits: { seam: 0.2 } })).toEqual([]);
    expect(seams({ ...apart, pieces: apart.pieces.map((p, i) => ({ ...p, z: i % 2 ? 10 : 0 })) })).toHaveLength(1);
  });
});

/** A bar with a pocket across it, its walls (left and right of the crossing bar) tagged. */
const bar = (id: string, face: 'front' | 'back', wide: number): Part => {
  const walls = solid(withMates(rectangle(-wide / 2, -10, wide / 2, 10), 'lap', [1, 3]));
  return testPart(id, box(-50, -10, 50, 10), { features: [pocket(face, 5, walls)] });
};

describe('laps', () => {
  const crossed = (wide: number, lap: number) =>
    assembly([bar('bar', 'front', wide), bar('other', 'back', wide)], [at('bar'), at('other', { turn: Math.PI / 2 })], {
      fits: { lap },
    });

  test('walls of pockets touch the bar between them within the fit', () => {
    expect(mating(crossed(20, 0))).toEqual([]);
    expect(mating(crossed(20.4, 0.4))).toEqual([]);
    expect(mating(crossed(20.4, 0.1))).toHaveLength(2);
  });

  test('a pressed lap may overlap by its press, other pieces may not', () => {
    expect(interference(crossed(19.9, -0.1))).toEqual([]);
    expect(mating(crossed(19.9, -0.1))).toEqual([]);
    expect(interference(crossed(19.7, -0.1))).toHaveLength(1);
    const untagged = assembly(
      ['front', 'back'].map((face, i) =>
        testPart(`bar-${i}`, box(-50, -10, 50, 10), {
          features: [pocket(face as 'front', 5, box(-9.95, -10, 9.95, 10))] as Feature[],
        }),
      ),
      [at('bar-0'), at('bar-1', { turn: Math.PI / 2 })],
      { fits: { lap: -0.1 } },
    );
    expect(interference(untagged)).toHaveLength(1);
  });
});

describe('standing pieces', () => {
  const paddle = testPart('paddle', solid(withMates(rectangle(-10, -10, 10, 50), 'slot', [1, 3])), { thickness: 5 });
  const disc = (wide: number) => {
    const slot = reverse(withMates(rectangle(-wide / 2, -5, wide / 2, 0), 'slot', [0, 1, 2, 3]));
    return testPart('disc', { outer: circle(100), openings: [slot] });
  };
  const pair = (wide: number, slot: number, turn = 0.4) =>
    assembly([disc(wide), paddle], [at('disc', { turn }), at('paddle', { turn, stands: true, z: 5 })], {
      fits: { slot },
    });

  test('a tab touches its slot from inside and the slot the tab', () => {
    expect(mating(pair(20, 0))).toEqual([]);
    expect(mating(pair(20.2, 0.2))).toEqual([]);
    const [tab, slot] = mating(pair(22, 0.2));
    expect([tab?.where, slot?.where]).toEqual(['disc, paddle', 'paddle, disc']);
  });

  test('the sides of bevelled staves meet all the way round', () => {
    const n = 8;
    const stave = testPart('stave', solid(withMates(rectangle(-30, 0, 30, 200), 'stave', [1, 3])), {
      thickness: 15,
      bevel: Math.PI / n,
    });
    const inradius = 30 / Math.tan(Math.PI / n);
    const staves = (out: number, bevel = Math.PI / n) =>
      assembly(
        [{ ...stave, bevel }],
        Array.from({ length: n }, (_, i) => {
          const turn = (2 * Math.PI * i) / n;
          const r = inradius - 15 + out;
          return at('stave', { stands: true, turn, x: r * Math.sin(turn), y: -r * Math.cos(turn) });
        }),
      );
    expect(mating(staves(0))).toEqual([]);
    expect(interference(staves(0))).toEqual([]);
    expect(mating(staves(0.1))).toHaveLength(1);
    expect(mating(staves(0, Math.PI / n + 0.05))).toHaveLength(1);
  });
});
