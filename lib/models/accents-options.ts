import type { NamePlace } from '../parts/name-band.js';
import type { Mm } from '../units/length.js';

interface AccentStock {
  /** the stock's if left out */
  readonly thickness?: Mm;
  /** name of a stock */
  readonly stock: string;
}

/** Flat parts laid on a wheel's front for looks. Lengths mm. */
export interface AccentOptions {
  /** discs over every crossing of a spoke and the rim */
  readonly caps?: AccentStock & { readonly diameter: Mm };
  /** a ring on the front hub disc, round its bore; diameters */
  readonly ring?: AccentStock & { readonly outside: Mm; readonly inside: Mm };
  /** a band on the rim that bears a name */
  readonly name?: AccentStock & {
    /** 1 to 40 characters */
    readonly text: string;
    /** of a capital; as large as the band takes unless given */
    readonly height?: Mm;
    /** radial width; four fifths of what it lies on unless given */
    readonly band?: Mm;
    /** top unless given */
    readonly at?: NamePlace;
  };
}
