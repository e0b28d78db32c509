import { notched, tabbed } from '../../joints/tab.js';
import type { PieceOptions } from '../../parts/piece.js';
import { standFoot } from '../../parts/stand-foot.js';
import { rib, standRail } from '../../parts/stand-rail.js';
import type { Draft } from '../drafts.js';
import {
  footCrossings,
  footMiddle,
  footPlaces,
  ground,
  railMiddle,
  ribSize,
  ribTabs,
  shelfSize,
  shelfTabs,
} from './layout.js';
import type { Board, StandSizes } from './sizes.js';

const QUARTER = Math.PI / 2;

const cutFrom = ({ thickness, stock }: Board): PieceOptions => ({
  thickness,
  stock: stock.name,
  grained: stock.kind === 'board',
});

/** The two feet, on edge from back to front, notched from above. */
function feetDrafts(s: StandSizes): Draft[] {
  const { length, height, thickness } = s.foot;
  const middle = footMiddle(s);
  const plain = standFoot({ ...cutFrom(s.foot), length, height, slope: height / 2 });
  const crossings = footCrossings(s).map(c => ({ ...c, at: c.at - middle }));
  const part = notched(plain, { along: 'y', at: height, into: -height / 2 }, crossings, s.fit.slot);
  return footPlaces(s).map(at => ({
    part,
    turn: QUARTER,
    x: at - thickness / 2,
    y: ground(s),
    z: middle,
    stands: true,
    lettering: { at: { x: height / 4, y: 0 }, height: Math.min(10, height / 4), length: length / 4, turn: QUARTER },
  }));
}

/** The shelf between two cheeks: lies on the feet, carries the ballast. */
function shelfDraft(s: StandSizes): Draft {
  const { length, width, top } = shelfSize(s);
  const plain = standRail({ ...cutFrom(s.foot), length, width, kind: 'shelf', name: 'Shelf' });
  return {
    part: tabbed(plain, shelfTabs(s).tabs, 'y'),
    turn: 0,
    y: top,
    z: 0,
    stands: true,
    lettering: { at: { x: 0, y: 0 }, height: Math.min(10, width / 4), length: length / 2 },
  };
}

/** The cross rail at the back of the feet, notched from below, and the rib from it to the post. */
function behindPost(s: StandSizes): Draft[] {
  const { height, thickness } = s.foot;
  const feet = footPlaces(s).map(at => ({ at, thickness }));
  const long = standRail({ ...cutFrom(s.foot), length: s.upright.base, width: height });
  const rail = notched(long, { along: 'x', at: -height / 2, into: height / 2 }, feet, s.fit.slot);
  const size = ribSize(s);
  return [
    {
      part: rail,
      turn: 0,
      y: ground(s) + height / 2,
      z: railMiddle(s) - thickness / 2,
      lettering: { at: { x: 0, y: 0 }, height: Math.min(10, height / 4), length: s.upright.base / 3 },
    },
    {
      part: tabbed(rib({ ...cutFrom(s.foot), ...size }), ribTabs(s).tabs, 'y'),
      turn: QUARTER,
      x: -thickness / 2,
      y: ground(s),
      z: -(s.wheel.depth / 2 + s.clearance + s.upright.thickness),
      stands: true,
      lettering: {
        at: { x: size.height / 6, y: -size.bottom / 3 },
        height: Math.min(10, size.bottom / 6),
        length: size.height / 5,
      },
    },
  ];
}

/** The plate under everything. */
function baseDrafts(s: StandSizes): Draft[] {
  if (!s.base) return [];
  const part = standRail({
    ...cutFrom(s.base),
    kind: 'base-plate',
    length: s.upright.base,
    width: s.foot.length,
    name: 'Base plate',
  });
  return [
    {
      part,
      turn: 0,
      y: ground(s),
      z: footMiddle(s),
      stands: true,
      lettering: { at: { x: 0, y: 0 }, height: 10, length: s.upright.base / 3 },
    },
  ];
}

/** Everything below the uprights. */
export const footDrafts = (s: StandSizes): Draft[] => [
  ...feetDrafts(s),
  ...(s.kind === 'cheeks' ? [shelfDraft(s)] : behindPost(s)),
  ...baseDrafts(s),
];
