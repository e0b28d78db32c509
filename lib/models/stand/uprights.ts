import { notched, slotted } from '../../joints/tab.js';
import { type Bore, hubDisc } from '../../parts/hub-disc.js';
import type { Face } from '../../parts/part.js';
import { upright } from '../../parts/upright.js';
import { shoulderHole } from '../../stock/bearings.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { footPlaces, ribTabs, shelfTabs } from './layout.js';
import { halfGap, type StandSizes } from './sizes.js';

/** The hole for the axle or the seat of its bearing, sunk from a face. */
function boreOf(s: StandSizes, face: Face): Bore {
  const { axis, fit } = s;
  if (axis.kind === 'axle') return { kind: 'through', diameter: axis.diameter + fit.bore };
  const diameter = axis.bearing.outside + fit.bore;
  if (axis.seat === 'through') return { kind: 'through', diameter };
  return { kind: 'seat', diameter, depth: axis.bearing.width, face, shoulder: shoulderHole(axis.bearing) };
}

const grained = (s: StandSizes): boolean => s.upright.stock.kind === 'board';

/** An upright with a notch for each foot and slots for what is tabbed into it. @param z of its back face */
function uprightDraft(s: StandSizes, z: Mm, face: Face): Draft {
  const { base, head, skirt, thickness, stock } = s.upright;
  const kind = s.kind === 'cheeks' ? 'cheek' : 'post';
  const part = upright({
    kind,
    base,
    head,
    skirt,
    down: s.down,
    bore: boreOf(s, face),
    thickness,
    stock: stock.name,
    grained: grained(s),
    ...(kind === 'cheek' && { id: `cheek-${face}`, name: `Cheek, ${face}` }),
  });
  const feet = footPlaces(s).map(at => ({ at, thickness: s.foot.thickness }));
  const edge = { along: 'x', at: -s.down, into: s.foot.height / 2 } as const;
  const slots = s.kind === 'cheeks' ? shelfTabs(s).slots : ribTabs(s).slots;
  const length = Math.min(base, 2 * head);
  return {
    part: slotted(notched(part, edge, feet, s.fit.slot), slots, s.fit.slot),
    turn: 0,
    z,
    lettering: { at: { x: length / 4, y: -s.down * 0.45 }, height: Math.min(10, length / 6), length: length / 2 },
  };
}

/** The block behind a post that holds the axle a second time. */
function blockDraft(s: StandSizes): Draft {
  const { head, thickness, stock } = s.upright;
  const bore = boreOf(s, 'back');
  const part = hubDisc({
    diameter: 2 * head,
    bore,
    thickness,
    stock: stock.name,
    grained: grained(s),
    kind: 'axle-block',
    name: 'Axle block',
  });
  const hole = bore.kind === 'none' ? 0 : bore.diameter / 2;
  const middle = (hole + head) / 2;
  return {
    part,
    turn: 0,
    z: -halfGap(s) - 2 * thickness,
    lettering: { at: { x: 0, y: -middle }, height: Math.min(10, (head - hole) / 3), length: 1.2 * middle },
  };
}

/** Two cheeks, or a post with its axle block. */
export function uprightDrafts(s: StandSizes): Draft[] {
  const back = -halfGap(s) - s.upright.thickness;
  if (s.kind === 'post') return [uprightDraft(s, back, 'front'), blockDraft(s)];
  return [uprightDraft(s, halfGap(s), 'front'), uprightDraft(s, back, 'back')];
}
