import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../lib/drawings/drawing.js';
import { drawingExtent } from '../../lib/drawings/extent.js';
import { partDrawing, sideDrawing } from '../../lib/drawings/part-drawing.js';
import { bounds, boundsOfAll, polylineBounds, signedArea } from '../../lib/geometry/measure.js';
import { circle, rectangle, reverse, solid, vertex } from '../../lib/geometry/outline.js';
import { partFaces } from '../../lib/parts/faces.js';
import type { Face, Feature, Part } from '../../lib/parts/part.js';
import { near } from '../close.js';

const part = (features: readonly Feature[]): Part => ({
  id: 'plate',
  kind: 'hub-disc',
  name: 'Plate',
  quantity: 1,
  stock: 'ply',
  thickness: 18,
  // off centre, so that a mirrored view differs
  region: { outer: rectangle(0, 0, 60, 40), openings: [reverse(circle(5, { x: 10, y: 10 }))] },
  features,
});

const pocket = (face: Face, depth = 6): Feature => {
  const area = solid(rectangle(40, 10, 60, 20));
  return { kind: 'pocket', face, depth, area, beyond: solid(rectangle(40, 10, 80, 20)) };
};
const drill = (from: Face | 'through'): Feature => ({
  kind: 'drill',
  from,
  at: { x: 30, y: 30 },
  diameter: 4,
  depth: 18,
});
const score = (face: Face): Feature => ({
  kind: 'score',
  face,
  line: [vertex({ x: 5, y: 20 }, 0.5), vertex({ x: 15, y: 20 })],
});
const label: Feature = { kind: 'label', text: 'F', at: { x: 20, y: 30 }, height: 6, turn: 0.3 };

const layer = (drawing: Drawing, name: string) => drawing.layers.find(l => l.name === name);
const names = (drawing: Drawing): string[] => drawing.layers.map(l => l.name);

describe('the first face', () => {
  test.each([
    ['nothing', [], 'front', undefined],
    ['lettering and a hole through', [label, drill('through')], 'front', undefined],
    ['a pocket in front', [pocket('front')], 'front', undefined],
    ['a pocket in the back', [pocket('back'), label, drill('through')], 'back', undefined],
    ['a blind hole from the back', [drill('back')], 'back', undefined],
    ['a mark on the back', [score('back')], 'back', undefined],
    ['a pocket in front, a mark on the back', [pocket('front'), score('back')], 'front', 'back'],
    ['a pocket in the back, a hole from the front', [pocket('back'), drill('front')], 'front', 'back'],
  ] as const)('%s', (_, features, first, second) => {
    expect(partFaces(part(features))).toEqual(second ? { first, second } : { first });
  });
});

describe('a part seen from the front', () => {
  const drawing = partDrawing(
    part([pocket('front'), pocket('front', 9), drill('through'), score('front'), label]),
    'front',
  );

  test('has its layers in order, the finished pocket and not what lies beyond the edge', () => {
    expect(names(drawing)).toEqual(['OUTSIDE', 'INSIDE', 'POCKET_6', 'POCKET_9', 'DRILL_4', 'SCORE', 'LABEL']);
    expect(drawingExtent(drawing)).toEqual({ minX: 0, minY: 0, maxX: 60, maxY: 40 });
    near(signedArea(layer(drawing, 'POCKET_6')!.closed[0]!), 200);
  });

  test('shows a pocket with an island as two outlines', () => {
    const area = { outer: rectangle(20, 20, 40, 40), openings: [reverse(circle(3, { x: 30, y: 30 }))] };
    const island = partDrawing(part([{ kind: 'pocket', face: 'front', depth: 6, area, beyond: area }]), 'front');
    expect(layer(island, 'POCKET_6')!.closed).toHaveLength(2);
  });
});

describe('a part seen from the back', () => {
  const both = part([pocket('front'), pocket('back', 9), drill('through'), drill('front'), score('back'), label]);
  const back = partDrawing(both, 'back');

  test('is mirrored and holds what is made from there', () => {
    expect(names(back)).toEqual(['OUTSIDE', 'INSIDE', 'POCKET_9', 'DRILL_4', 'DRILL_6', 'SCORE']);
    expect(polylineBounds(layer(back, 'OUTSIDE')!.closed[0]!)).toEqual({ minX: -60, minY: 0, maxX: 0, maxY: 40 });
    expect(layer(back, 'DRILL_4')!.closed).toHaveLength(1);
    expect(back.title).toBe('Plate, back');
  });

  test('has two holes beside it for pins, the same as on the front once it is turned over about the line between them', () => {
    const middles = (face: 'front' | 'back') =>
      layer(partDrawing(both, face), 'DRILL_6')!.closed.map(o => {
        const { minX, maxX, minY, maxY } = bounds(o);
        return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
      });
    const [left, right] = middles('front');
    // 13 mm for the cutter, 2 mm of wood, half a pin
    near(left!.x, -18);
    near(right!.x, 60 + 18);
    expect([left!.y, right!.y]).toEqual([20, 20]);
    const line = (left!.x + right!.x) / 2;
    const turned = middles('front').map(({ x, y }) => ({ x: 2 * line - x, y }));
    // the frame is turned over too: from its own x = 0 to the line's
    const seen = middles('back').map(({ x, y }) => ({ x: x + 2 * line, y }));
    expect(seen.map(p => p.x).sort((a, b) => a - b)).toEqual(turned.map(p => p.x).sort((a, b) => a - b));
    expect(names(partDrawing(part([pocket('back')]), 'back'))).not.toContain('DRILL_6');
  });

  test('keeps outlines anticlockwise, openings clockwise, and turns arcs over', () => {
    expect(signedArea(layer(back, 'OUTSIDE')!.closed[0]!)).toBeCloseTo(2400, 9);
    expect(signedArea(layer(back, 'INSIDE')!.closed[0]!)).toBeCloseTo(-25 * Math.PI, 9);
    expect(layer(back, 'SCORE')!.open[0]).toEqual([vertex({ x: -5, y: 20 }, -0.5), vertex({ x: -15, y: 20 })]);
  });

  test('is lettered only where it lies up first, and then reads as it should: an F keeps its arms to the right of its stem', () => {
    expect(layer(back, 'LABEL')).toBeUndefined();
    const only = layer(partDrawing(part([pocket('back'), label]), 'back'), 'LABEL')!;
    const front = layer(partDrawing(part([label]), 'front'), 'LABEL')!;
    const middle = (lines: typeof front.open) => boundsOfAll(lines.map(polylineBounds));
    // the middle is mirrored, the turn about it too
    near(middle(only.open).minX + middle(only.open).maxX, -40, 0.2);
    const [stem, arm] = [only.open[0]!, only.open[1]!];
    // an F: down its stem, then its upper arm from the left; its turn is -0.3, so the foot lies below and left of the top
    expect(stem[1]!.x).toBeLessThan(stem[0]!.x);
    expect(stem[1]!.y).toBeLessThan(stem[0]!.y);
    expect(arm[1]!.x).toBeGreaterThan(arm[0]!.x);
  });
});

describe('the second side of a turned piece', () => {
  test('has its outline and its marks', () => {
    const side = { outline: rectangle(0, -9, 60, 9), marks: [[vertex({ x: 10, y: -9 }), vertex({ x: 10, y: 9 })]] };
    expect(names(sideDrawing({ ...part([]), side }))).toEqual(['OUTSIDE', 'SCORE']);
    expect(names(sideDrawing({ ...part([]), side: { ...side, marks: [] } }))).toEqual(['OUTSIDE']);
  });

  test('is nothing where there is none', () => expect(sideDrawing(part([])).layers).toEqual([]));
});
