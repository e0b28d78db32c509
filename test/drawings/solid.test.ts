import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slabsOf } from '../../lib/drawings/slabs.js';
import { solidOf } from '../../lib/drawings/solid.js';
import { solidShapes } from '../../lib/drawings/solid-shapes.js';
import { benchView, FROM_RIGHT, seenPiece, type View } from '../../lib/drawings/view.js';
import { shaded } from '../../lib/drawings/wood.js';
import { area, signedArea } from '../../lib/geometry/measure.js';
import { circle, type Region, rectangle, reverse, solid } from '../../lib/geometry/outline.js';
import type { Piece } from '../../lib/models/model.js';
import type { Feature, Part } from '../../lib/parts/part.js';
import { piece } from '../../lib/parts/piece.js';
import { near } from '../close.js';

const part = (region: Region, features: readonly Feature[] = [], thickness = 20): Part =>
  piece('hub-disc', 'Piece', { thickness, stock: 'ply' }, { region, features });

const at = (turn = 0, stands = false): Piece => ({
  part: 'hub-disc',
  turn,
  x: 30,
  y: -40,
  z: 5,
  ...(stands && { stands }),
});

const STILL = { x: 0, y: 0, z: 0 };
const shapes = (p: Part, where: Piece, view: View) =>
  solidShapes(solidOf(p, slabsOf(p), 0.01), seenPiece(view, where, STILL), { tone: 0xffffff, line: 1 });
/** all that is painted, mm² of the picture; a face seen from its back runs the other way */
const painted = (p: Part, where: Piece, view: View): number =>
  shapes(p, where, view).reduce((sum, s) => sum + Math.abs(s.closed.reduce((a, o) => a + signedArea(o), 0)), 0);

const pocket = (face: 'front' | 'back', depth: number, x0: number, x1: number): Feature => {
  const of = solid(rectangle(x0, 0, x1, 60));
  return { kind: 'pocket', face, depth, area: of, beyond: of };
};

describe('slabs', () => {
  const plate = solid(rectangle(0, 0, 100, 60));

  test('hold the wood there is: plate less pockets on both faces, one through the other', () => {
    const slabs = slabsOf(
      part(plate, [pocket('front', 8, 0, 30), pocket('back', 15, 20, 50), pocket('front', 3, 60, 80)]),
    );
    const volume = slabs.reduce((sum, s) => sum + s.wood.reduce((a, r) => a + area(r), 0) * (s.high - s.low), 0);
    // front 8 deep and back 15 deep meet over 10 mm, 3 mm of height counted twice
    near(volume, 60 * (100 * 20 - 30 * 8 - 30 * 15 - 20 * 3 + 10 * 3));
  });

  test('show to the front as much as the plate has, less what is open right through', () => {
    const slabs = slabsOf(part(plate, [pocket('front', 8, 0, 30), pocket('back', 15, 20, 50)]));
    const total = (of: 'above' | 'below') => slabs.flatMap(s => s[of]).reduce((sum, r) => sum + area(r), 0);
    near(total('above'), 60 * (100 - 10));
    near(total('below'), 60 * (100 - 10));
  });
});

describe('a solid seen from any side', () => {
  const angles = fc.double({ min: -3, max: 3, noNaN: true });
  const elevations = fc.double({ min: 0.1, max: 1.4, noNaN: true });

  test('a box covers what its three sides do: the sum of each side times the cosine to it', () => {
    const box = part(solid(rectangle(-50, -30, 50, 30)));
    fc.assert(
      fc.property(angles, angles, elevations, fc.boolean(), (turn, viewTurn, elevation, stands) => {
        const view = benchView(viewTurn, elevation);
        const { towards } = seenPiece(view, at(turn, stands), STILL).view;
        const [x, y, z] = [towards.x, towards.y, towards.z].map(Math.abs);
        const sides = 60 * 20 * x! + 100 * 20 * y! + 100 * 60 * z!;
        // corners are rounded to 0.01 mm, along 1,500 mm of edges
        expect(Math.abs(painted(box, at(turn, stands), view) - sides)).toBeLessThan(20);
      }),
    );
  });

  test('a disc is an ellipse over a band as wide as the disc', () => {
    const disc = part(solid(circle(100)));
    fc.assert(
      fc.property(elevations, elevation => {
        const [s, c] = [Math.sin(elevation), Math.cos(elevation)];
        near(painted(disc, at(), benchView(0.3, elevation)), Math.PI * 100 * 100 * s + 200 * 20 * c, 1e-3);
      }),
    );
  });

  test('a face looks the same with its pockets: floors are as large as what they leave open', () => {
    const view = benchView(0.4, 0.6);
    const plate = part(solid(rectangle(0, 0, 100, 60)), [pocket('front', 8, 0, 30), pocket('front', 3, 60, 80)]);
    const level = shapes(part(solid(rectangle(0, 0, 100, 60))), at(0.7), view).at(-1)!;
    const tones = [level.paint.fill!, shaded(level.paint.fill!, 0.86)];
    const faces = shapes(plate, at(0.7), view).filter(
      s => s.paint.stroke !== s.paint.fill && tones.includes(s.paint.fill!),
    );
    const total = (list: typeof faces) =>
      list.reduce((sum, s) => sum + s.closed.reduce((a, o) => a + signedArea(o), 0), 0);
    expect(faces).toHaveLength(3);
    near(total(faces), total([level]), 1e-3);
  });

  test('a hole shows its far wall, and what is painted last is the face round it', () => {
    const ring = part({ outer: circle(100), openings: [reverse(circle(60))] });
    const list = shapes(ring, at(), benchView(0, 0.6));
    expect(list.at(-1)!.closed).toHaveLength(2);
    // outer near wall, inner far wall, face
    expect(list).toHaveLength(3);
  });

  test('from its edge there are walls only: a stave that leans is as wide as its front', () => {
    const stave = { ...part(solid(rectangle(-40, 0, 40, 300))), bevel: Math.PI / 6 };
    const list = shapes(stave, at(Math.PI / 2, true), FROM_RIGHT);
    // its front looks to +x: the view is the front itself
    near(
      list.at(-1)!.closed.reduce((a, o) => a + signedArea(o), 0),
      80 * 300,
      1e-6,
    );
    const end = shapes(stave, at(0, true), benchView(0, Math.PI / 2));
    // from above, its end: a trapezium
    near(
      end.at(-1)!.closed.reduce((a, o) => a + signedArea(o), 0),
      20 * (80 - 20 * Math.tan(Math.PI / 6)),
      1e-3,
    );
  });
});
