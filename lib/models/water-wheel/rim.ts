import type { Finding } from '../../findings/finding.js';
import { angleOf } from '../../geometry/point.js';
import { type Stretch, slotsAt, withSlots } from '../../joints/raked-slot.js';
import type { Mm, Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { type Arc, holds, middleOf } from '../registration.js';
import { clearPins } from '../ring/clear-pins.js';
import type { RingPins } from '../ring/pins.js';
import { type Ring, type RingOptions, ring } from '../ring.js';
import { relative, wrap } from '../seams.js';
import { type PaddlePlaces, paddleAngles, paddleBar, type RimSeams, rimRing } from './layout.js';
import { type WaterSizes, wheelHeight } from './sizes.js';

/** Stretches of the rim that slots take up, from corner to corner. */
function slotArcs(s: WaterSizes, tabs: readonly Stretch[], angles: readonly Radians[]): Arc[] {
  const corners = slotsAt(paddleBar(s), tabs, 0).flat();
  const seen = corners.map(p => relative(angleOf(p) - Math.PI / 2, 0));
  const [from, to] = [Math.min(...seen), Math.max(...seen)];
  return angles.map(a => ({ from: wrap(a + from), sweep: to - from }));
}

function pinsOf(s: WaterSizes, tabs: readonly Stretch[], seams: RimSeams, angles: readonly Radians[]): RingPins {
  const { inner, outer } = s;
  const { layout, reach } = seams;
  return clearPins({ inner, outer, layout, reach, taken: slotArcs(s, tabs, angles), holding: angles });
}

/** Both rims, back first, and one of them as a ring. */
export interface Rims {
  readonly drafts: readonly Draft[];
  readonly ring: Ring;
  readonly findings: readonly Finding[];
}

/** Both rims with a slot for every tab. */
export function rims(s: WaterSizes, tabs: readonly Stretch[], seams: RimSeams, places: PaddlePlaces): Rims {
  const angles = paddleAngles(s, places);
  const bar = paddleBar(s);
  const features: NonNullable<RingOptions['features']> = (part, place) => {
    const own = angles.filter(a => holds(place, a)).map(a => relative(a, middleOf(place)));
    own.sort((a, b) => a - b);
    return withSlots(
      part,
      own.flatMap(a => slotsAt(bar, tabs, a)),
    );
  };
  const { value, findings } = ring({ ...rimRing(s), features, pins: pinsOf(s, tabs, seams, angles) });
  const lettered = value.drafts.map(d => clearLettering(s, d, angles));
  const raise: Mm = wheelHeight(s) - s.rim.thickness;
  return { drafts: [...lettered, ...lettered.map(d => ({ ...d, z: d.z + raise }))], ring: value, findings };
}

/** Lettering in the widest stretch of a felloe between slots. */
function clearLettering(s: WaterSizes, draft: Draft, angles: readonly Radians[]): Draft {
  if (draft.part.kind !== 'felloe' || !draft.lettering) return draft;
  const sweep = (2 * Math.PI) / s.felloes;
  const seen = angles.map(a => relative(a, draft.turn)).filter(a => Math.abs(a) < sweep / 2);
  const cuts = [-sweep / 2, ...seen.sort((a, b) => a - b), sweep / 2];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, width: to - cuts[i]! }));
  const widest = gaps.reduce((w, g) => (g.width > w.width + 1e-9 ? g : w));
  const middle = (s.inner + s.outer) / 2;
  const at = { x: -middle * Math.sin(widest.at), y: middle * Math.cos(widest.at) };
  return {
    ...draft,
    lettering: { ...draft.lettering, at, length: 0.6 * widest.width * s.inner, turn: widest.at },
  };
}
