import type { Point } from '../../geometry/point.js';
import { boredSpoke } from '../../joints/bored-tongue.js';
import { tenoned } from '../../joints/mortise.js';
import { cheeked, type Span, shareOf, tongued } from '../../joints/tongue.js';
import { cartSpoke } from '../../parts/cart-spoke.js';
import type { Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { pinned } from '../registration.js';
import { spokeAngles, spokePins } from './layout.js';
import { aboutMiddle, type CartSizes } from './sizes.js';

/** The layers of a spoke, back to front: one where it is solid. */
export function spokeSlabs(s: CartSizes): Span[] {
  const { low, high } = aboutMiddle(s, s.spoke.thickness);
  const count = Math.max(1, Math.round(s.spoke.layers));
  const each = (high - low) / count;
  return Array.from({ length: count }, (_, i) => ({ low: low + i * each, high: low + (i + 1) * each }));
}

/** A layer of a spoke without its foot: with its tongue as far as that runs through the layer. */
function outerEnd(s: CartSizes, blank: Part, slab: Span): Part {
  const { tongue } = s;
  if (tongue.joint === 'drilled') return boredSpoke(blank, tongue.bored, s.spoke.end);
  const share = shareOf(slab, aboutMiddle(s, tongue.thickness));
  if (share.kind === 'none') return { ...blank, id: 'spoke-cheek', name: 'Spoke, cheek layer' };
  const whole = tongued(blank, tongue.slot);
  return share.kind === 'through' ? whole : cheeked(whole, tongue.slot, (s.spoke.thickness - tongue.thickness) / 2);
}

function spokeOf(s: CartSizes, slab: Span): Part {
  const blank = cartSpoke({
    nave: s.nave.radius,
    rim: s.rim.inner,
    width: s.spoke.width,
    end: s.spoke.end,
    thickness: slab.high - slab.low,
    stock: s.spoke.stock.name,
    grained: s.spoke.stock.kind === 'board',
  });
  const pins = spokePins(s);
  const at = pins.at.map((x): Point => ({ x, y: 0 }));
  return pinned(tenoned(outerEnd(s, blank, slab), s.foot), at, pins.diameter);
}

/** Lettering half way along a spoke, between its pins. */
function letteringOn(s: CartSizes): Lettering {
  const length: Mm = s.rim.inner - s.nave.radius;
  return {
    at: { x: (s.rim.inner + s.nave.radius) / 2, y: 0 },
    height: Math.min(10, s.spoke.end / 3),
    length: 0.4 * length,
  };
}

/** Every piece of every spoke, layer by layer, back to front. */
export const spokeDrafts = (s: CartSizes): Draft[] =>
  spokeSlabs(s).flatMap(slab => {
    const part = spokeOf(s, slab);
    return spokeAngles(s).map(
      (angle): Draft => ({ part, turn: Math.PI / 2 + angle, z: slab.low, lettering: letteringOn(s) }),
    );
  });
