import type { Box } from '../../geometry/measure.js';
import type { Mm } from '../../units/length.js';
import { halfGap, type StandSizes } from './sizes.js';

// Where things stand, from the axle at the origin: x to the right, y up, z to the front; mm.

/** Height of what uprights and feet stand on. */
export const ground = (s: StandSizes): Mm => -s.down;

/** Middles of the two feet from side to side: as far out as leaves their own thickness of wood beside the notches. */
export const footPlaces = (s: StandSizes): readonly [Mm, Mm] => {
  const at = s.upright.base / 2 - 1.5 * s.foot.thickness;
  return [-at, at];
};

/** Middle of the feet from back to front: under the wheel between two cheeks; half way from the wheel to a post. */
export const footMiddle = (s: StandSizes): Mm => (s.kind === 'cheeks' ? 0 : -(halfGap(s) + s.upright.thickness) / 2);

/** Middles of everything the feet are notched for, from back to front. */
export function footCrossings(s: StandSizes): readonly { readonly at: Mm; readonly thickness: Mm }[] {
  const upright = halfGap(s) + s.upright.thickness / 2;
  const { thickness } = s.upright;
  if (s.kind === 'cheeks') return [-upright, upright].map(at => ({ at, thickness }));
  return [
    { at: -upright, thickness },
    { at: railMiddle(s), thickness: s.foot.thickness },
  ];
}

/** Middle of the cross rail behind a post: at the end of the feet's level top. */
export const railMiddle = (s: StandSizes): Mm => footMiddle(s) - s.foot.length / 2 + s.foot.height + s.foot.thickness;

/** Tabs of a board, as it sees them itself, and where they go through an upright, as that sees them. */
export interface Tabs {
  readonly tabs: readonly Box[];
  readonly slots: readonly Box[];
}

/** The shelf on the feet between two cheeks. */
export const shelfSize = (s: StandSizes): { readonly length: Mm; readonly width: Mm; readonly top: Mm } => ({
  length: s.upright.base - 2 * s.foot.thickness,
  width: 2 * halfGap(s),
  top: ground(s) + s.foot.height + s.foot.thickness,
});

/** Two tabs at each side of the shelf, a sixth of the cheek wide, a quarter of it from its middle. */
export function shelfTabs(s: StandSizes): Tabs {
  const { width, top } = shelfSize(s);
  const { base, thickness } = s.upright;
  const half = base / 12;
  const across = [-base / 4, base / 4];
  const edge = width / 2;
  return {
    tabs: across.flatMap((x): Box[] => [
      { minX: x - half, maxX: x + half, minY: edge, maxY: edge + thickness },
      { minX: x - half, maxX: x + half, minY: -edge - thickness, maxY: -edge },
    ]),
    slots: across.map(x => ({ minX: x - half, maxX: x + half, minY: top - s.foot.thickness, maxY: top })),
  };
}

/** The rib behind a post: from the ground to under the axle block, back to the cross rail. */
export function ribSize(s: StandSizes): { readonly height: Mm; readonly bottom: Mm; readonly top: Mm } {
  const { thickness } = s.foot;
  const bottom = railMiddle(s) + thickness / 2;
  const back = -halfGap(s) - s.upright.thickness;
  const depth = back - bottom;
  return {
    height: s.down - s.upright.head - thickness,
    bottom: depth,
    top: Math.min(depth, Math.max(2 * thickness, depth / 4)),
  };
}

/** Two tabs of the rib through the post, an eighth of its height long. */
export function ribTabs(s: StandSizes): Tabs {
  const { height } = ribSize(s);
  const half = s.foot.thickness / 2;
  const up = [0.35, 0.75].map(share => ({ low: (share - 1 / 16) * height, high: (share + 1 / 16) * height }));
  return {
    tabs: up.map(({ low, high }) => ({ minX: low, maxX: high, minY: 0, maxY: s.upright.thickness })),
    slots: up.map(({ low, high }) => ({ minX: -half, maxX: half, minY: ground(s) + low, maxY: ground(s) + high })),
  };
}
