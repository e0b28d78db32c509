import { polar } from '../../geometry/point.js';
import { mortised } from '../../joints/mortise.js';
import { naveDisc } from '../../parts/nave-disc.js';
import type { Face, Part } from '../../parts/part.js';
import type { Mm } from '../../units/length.js';
import type { Draft } from '../drafts.js';
import type { Lettering } from '../lettering.js';
import { pinned } from '../registration.js';
import { boreRadii, naveBore } from './bore.js';
import { navePins, spokeAngles } from './layout.js';
import { aboutMiddle, type CartSizes } from './sizes.js';

/** One disc of the nave: where it lies, and how far it is from the nearer end. */
interface Disc {
  readonly face: Face;
  readonly under: Mm;
  readonly z: Mm;
  readonly thickness: Mm;
  readonly mortised: boolean;
}

const whole = (layers: number): number => Math.max(1, Math.round(layers));

/** The discs of the nave, back to front. */
function discs(s: CartSizes): Disc[] {
  const { middle, sides } = s.nave;
  const { low, high } = aboutMiddle(s, middle.thickness);
  const count = whole(sides.layers);
  const inner = Array.from(
    { length: whole(middle.layers) },
    (_, i): Disc => ({
      face: 'front',
      under: sides.thickness,
      z: low + i * middle.each,
      thickness: middle.each,
      mortised: true,
    }),
  );
  const side = (face: Face): Disc[] =>
    Array.from({ length: count }, (_, i): Disc => {
      const near = face === 'back' ? i : count - 1 - i;
      const z = face === 'back' ? low - sides.thickness + i * sides.each : high + i * sides.each;
      return { face, under: near * sides.each, z, thickness: sides.each, mortised: false };
    });
  return [...side('back'), ...inner, ...side('front')];
}

function discOf(s: CartSizes, disc: Disc): Part {
  const plain = naveDisc({
    diameter: 2 * s.nave.radius,
    bore: naveBore(s),
    face: disc.face,
    // a seat never reaches the discs with mortises: the limits see to that
    under: disc.under,
    thickness: disc.thickness,
    stock: s.nave.stock.name,
    grained: s.nave.stock.kind === 'board',
    ...(disc.mortised && { id: 'nave-mortise', name: 'Nave disc with mortises' }),
  });
  const cut = disc.mortised ? mortised(plain, s.foot, spokeAngles(s)) : plain;
  const pins = navePins(s);
  return pins ? pinned(cut, pins.at, pins.diameter) : cut;
}

/** Lettering below the bore: half way to the edge, or to the mortises' bottoms. */
function letteringOn(s: CartSizes, disc: Disc): Lettering {
  const bore = boreRadii(s).end;
  const edge = disc.mortised ? s.nave.radius - s.foot.length : s.nave.radius;
  const middle = (bore + edge) / 2;
  const angle = -Math.PI / 2 + (s.spokes % 2 === 0 ? 0 : Math.PI / s.spokes);
  return { at: polar(middle, angle), height: Math.min(10, (edge - bore) / 3), length: middle };
}

/** Every disc of the nave, back to front. */
export const naveDrafts = (s: CartSizes): Draft[] =>
  discs(s).map(disc => ({ part: discOf(s, disc), turn: 0, z: disc.z, lettering: letteringOn(s, disc) }));
