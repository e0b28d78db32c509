import type { Mm } from '../units/length.js';
import { type Bore, hubDisc } from './hub-disc.js';
import type { Face, Part } from './part.js';
import type { PieceOptions } from './piece.js';

/** What a nave is bored for: nothing, one hole from end to end, or a bearing's seat in each end with a smaller hole between; mm. */
export type NaveBore =
  | { readonly kind: 'none' }
  | { readonly kind: 'plain'; readonly diameter: Mm }
  | { readonly kind: 'seats'; readonly diameter: Mm; readonly depth: Mm; readonly shoulder: Mm };

export interface NaveDiscOptions extends PieceOptions {
  /** of the nave */
  readonly diameter: Mm;
  readonly bore: NaveBore;
  /** the end of the nave it is nearer to */
  readonly face: Face;
  /** from that end of the nave to the disc's nearer face, mm; 0 for an end disc */
  readonly under: Mm;
}

/** Depths closer than this are one: discs are stacked by multiplication, which rounds. */
const SAME_DEPTH: Mm = 1e-6;

/** What a nave's bore is in one of its discs: a seat takes whole discs as far as it goes, and a pocket of the last one where it ends in it. */
export function boreOfDisc(o: Pick<NaveDiscOptions, 'bore' | 'face' | 'under' | 'thickness'>): Bore {
  const { bore, under, thickness } = o;
  if (bore.kind === 'none') return bore;
  if (bore.kind === 'plain') return { kind: 'through', diameter: bore.diameter };
  const depth = bore.depth - under;
  if (depth < SAME_DEPTH) return { kind: 'through', diameter: bore.shoulder };
  if (depth > thickness - SAME_DEPTH) return { kind: 'through', diameter: bore.diameter };
  return { kind: 'seat', diameter: bore.diameter, depth, face: o.face, shoulder: bore.shoulder };
}

/** One of the discs a nave is glued up from, about the origin, with its share of the bore. The discs with mortises get them from
 * `mortised`. @throws Unusable when the bore is wider than the nave */
export const naveDisc = (o: NaveDiscOptions): Part =>
  hubDisc({ id: 'nave-disc', name: 'Nave disc', ...o, bore: boreOfDisc(o), kind: 'nave-disc' });
