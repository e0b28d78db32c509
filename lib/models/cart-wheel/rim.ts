import type { Finding, Outcome } from '../../findings/finding.js';
import { stops } from '../../findings/finding.js';
import { polar } from '../../geometry/point.js';
import { boredFelloe } from '../../joints/bored-tongue.js';
import { shareOf, slotted } from '../../joints/tongue.js';
import type { Part } from '../../parts/part.js';
import { dowelsFor } from '../../stock/dowels.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import type { Arc } from '../registration.js';
import { type RingLayout, ringLayout } from '../ring/layout.js';
import { type Crossing, type Ring, type RingOptions, type RingPlace, ring, seenFrom } from '../ring.js';
import { seamOffsets, spokeAngles } from './layout.js';
import { aboutMiddle, type CartSizes, tongueHalf } from './sizes.js';

/** A felloe's piece with what the spokes ask of it: slots for captured tongues, marks where drilled ones go in. */
function held(s: CartSizes, part: Part, place: RingPlace): Part {
  const { tongue } = s;
  const at = seenFrom(place, spokeAngles(s), 0);
  if (tongue.joint === 'drilled') return place.showing.includes('front') ? boredFelloe(part, tongue.bored, at) : part;
  const layer = { low: place.z, high: place.z + place.thickness };
  return slotted(part, tongue.slot, shareOf(layer, aboutMiddle(s, tongue.thickness)), at);
}

/** Room the tongues take in the rim. A bored hole is kept clear over the whole thickness. */
function tongueRoom(s: CartSizes): Crossing {
  const { tongue } = s;
  const at = spokeAngles(s);
  if (tongue.joint === 'drilled') return { at, width: tongue.bored.diameter, low: 0, high: s.rim.thickness };
  return { at, width: tongue.slot.width + tongue.slot.clearance, ...aboutMiddle(s, tongue.thickness) };
}

/** The rim as a ring of felloes, with seams of a joint. */
function rimOptions(s: CartSizes, joint: 'plan' | 'butt' | 'dowel'): RingOptions {
  const offsets = seamOffsets(s);
  return {
    inner: s.rim.inner,
    outer: s.rim.outer,
    pieces: s.felloes,
    first: s.seam.first,
    keep: s.spokes,
    layers: s.rim.layers,
    thickness: s.rim.thickness,
    stock: s.rim.stock,
    method: s.method,
    seam: joint === 'plan' ? s.seam.options : { ...s.seam.options, joint },
    clearance: s.fit.seam,
    edge: s.edges.rim?.radius ?? 0,
    slots: [tongueRoom(s)],
    ...(offsets && { offsets }),
    field: 'rim',
    features: (part, place) => held(s, part, place),
  };
}

/** Where the rim's pieces and seams lie. */
export const rimLayout = (s: CartSizes): RingLayout => ringLayout(rimOptions(s, 'plan'));

/** Lettering goes in the widest stretch of a piece between the tongues, where no pin is. */
function letteringOn(s: CartSizes, piece: Arc, pin: Mm): Lettering {
  const tongues = seenFrom(piece, spokeAngles(s), 0);
  const cuts = [-piece.sweep / 2, ...tongues, piece.sweep / 2];
  const gaps = cuts.slice(1).map((to, i) => ({ at: (to + cuts[i]!) / 2, width: to - cuts[i]! }));
  const clear = gaps.reduce((w, g) => (g.width > w.width + 1e-9 ? g : w));
  const band = s.rim.outer - s.rim.inner;
  const at = polar(s.rim.inner + band / 2, Math.PI / 2 + clear.at);
  const length = (pin > 0 ? 0.4 : 0.7) * (clear.width - tongueHalf(s)) * s.rim.inner;
  const height = Math.min(12, pin > 0 ? (0.4 * band - pin) / 2 : band / 6);
  return { at, height, length, turn: Math.atan2(-at.x, at.y) };
}

const lettered = (s: CartSizes, made: Ring): Draft[] => {
  const { pieces, layers } = made.layout;
  const pin = layers.length > 1 ? made.pins.diameter : 0;
  return made.drafts.map((draft, i) => {
    const piece = pieces[i];
    return piece ? { ...draft, lettering: letteringOn(s, piece, pin) } : draft;
  });
};

const made = (s: CartSizes, joint: 'plan' | 'butt' | 'dowel'): Outcome<Ring> => ring(rimOptions(s, joint));

const BUTTED: Finding = {
  level: 'warn',
  rule: 'rim-seam',
  where: 'rim.seam.joint',
  message:
    'rim.seam.joint is butt: the felloes have no room for dowels, and end grain holds little glue; allowed: as it is where the tyre holds the rim together, two layers or more, or another joint',
  value: 'butt',
};

/** The rim. Its seams are the plan's; where that leaves the joint to the builder, layers are butted and a rim of one layer is dowelled as far as
 * dowels find room. */
export function rimRing(s: CartSizes): Outcome<Ring & { readonly drafts: readonly Draft[] }> {
  const named = s.seam.options.joint !== undefined;
  const tryDowels = !named && Math.round(s.rim.layers) === 1 && dowelsFor(s.rim.thickness).length > 0;
  const first = made(s, named ? 'plan' : tryDowels ? 'dowel' : 'butt');
  const butted = !named && tryDowels && stops(first.findings);
  const found = butted ? made(s, 'butt') : first;
  const single = !named && Math.round(s.rim.layers) === 1 && (butted || !tryDowels);
  return {
    value: { ...found.value, drafts: lettered(s, found.value) },
    findings: [...found.findings, ...(single ? [BUTTED] : [])],
  };
}
