import type { Finding } from '../../findings/finding.js';
import { scale } from '../../geometry/point.js';
import { barNotched } from '../../joints/bar-notch.js';
import { rebated } from '../../joints/rebate.js';
import { isThrough } from '../../joints/recess.js';
import { type Leg, withLeg } from '../../parts/leg.js';
import type { Part } from '../../parts/part.js';
import type { Radians } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import { middleOf } from '../registration.js';
import { clearPins } from '../ring/clear-pins.js';
import { ringReach } from '../ring/joined.js';
import { ringLayout } from '../ring/layout.js';
import { besideRebate, type RingPins } from '../ring/pins.js';
import { type Ring, type RingOptions, type RingPlace, ring } from '../ring.js';
import { relative } from '../seams.js';
import { barEnds, barNotch, notchArcs } from './bars.js';
import { arcOf, frameRing } from './ring-seams.js';
import { type FrameSizes, notchDepth } from './sizes.js';

const SAME: Radians = 1e-9;

/** The legs of a felloe: of an arch's end pieces, at that end. */
export function legsOf(s: FrameSizes, place: Pick<RingPlace, 'from' | 'sweep'>): Leg[] {
  if (s.legs === 0) return [];
  const { from, sweep } = arcOf(s);
  const leg = (end: Leg['end']): Leg => ({
    inner: s.inner,
    outer: s.outer,
    end,
    sweep: place.sweep,
    arch: s.sweep,
    height: s.legs,
  });
  return [
    ...(Math.abs(place.from - from) < SAME ? [leg('right')] : []),
    ...(Math.abs(place.from + place.sweep - from - sweep) < SAME ? [leg('left')] : []),
  ];
}

/** A felloe with its notches, as far as they reach into its layer. Where the rebate takes the layer whole nothing holds a mullion. */
function notchedFelloe(s: FrameSizes, part: Part, place: RingPlace): Part {
  if (isThrough(s.rebate.depth - place.z, place.thickness)) return part;
  const arcs = notchArcs(s);
  const middle = middleOf(place);
  return barEnds(s).reduce((made, end, i) => {
    const { sweep } = arcs[i]!;
    if (Math.abs(relative(middleOf(arcs[i]!), middle)) > (place.sweep + sweep) / 2) return made;
    return barNotched(made, barNotch(s), { ...end, turn: end.turn - middle }, notchDepth(s) - place.z);
  }, part);
}

function rebatedFelloe(s: FrameSizes, part: Part, place: RingPlace, legs: readonly Leg[]): Part {
  const depth = s.rebate.depth - place.z;
  if (s.rebate.width === 0 || depth <= 0) return part;
  const crossed = isThrough(depth, place.thickness) ? [] : notchArcs(s).map(a => middleOf(a) - middleOf(place));
  return rebated(part, { inner: s.inner, width: s.rebate.width, depth, crossed, legs });
}

const features =
  (s: FrameSizes): NonNullable<RingOptions['features']> =>
  (part, place) => {
    const legs = legsOf(s, place);
    const legged = legs.reduce(withLeg, part);
    return rebatedFelloe(s, notchedFelloe(s, legged, place), place, legs);
  };

/** Pins clear of notches too; the ring's own without any, or in one layer. */
function framePins(s: FrameSizes, o: RingOptions): RingPins | undefined {
  const layout = ringLayout(o);
  if (layout.layers.length === 1 || !s.mullions) return undefined;
  const { inner, outer } = s;
  const most = besideRebate(outer - inner, s.rebate.width);
  return clearPins({ inner, outer, layout, reach: ringReach(o, layout), taken: notchArcs(s), holding: [], most });
}

/** Lettering on what rebate and notches leave of the band. */
function lettered(s: FrameSizes, draft: Draft): Draft {
  const { lettering } = draft;
  if (draft.part.kind !== 'felloe' || !lettering) return draft;
  const low = s.inner + Math.max(s.rebate.width, s.mullions ? s.hold : 0);
  const share = (low + s.outer) / (s.inner + s.outer);
  const height = Math.min(lettering.height, (s.outer - low) / 4);
  return { ...draft, lettering: { ...lettering, at: scale(lettering.at, share), height } };
}

/** The ring as it goes into the frame. */
export interface FrameRing {
  readonly ring: Ring;
  readonly drafts: readonly Draft[];
  readonly findings: readonly Finding[];
}

/** Every felloe with its rebate, notches and legs. */
export function frameFelloes(s: FrameSizes): FrameRing {
  const o = frameRing(s);
  const pins = framePins(s, o);
  const { value, findings } = ring({ ...o, features: features(s), ...(pins && { pins }) });
  return { ring: value, drafts: value.drafts.map(d => lettered(s, d)), findings };
}
