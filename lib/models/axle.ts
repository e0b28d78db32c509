import type { Mm } from '../units/length.js';

/** The hole in a prop's middle: none, or for an axle of a diameter, mm. */
export type AxleBore = 'none' | { readonly axle: Mm };

/** Diameter of the axle; 0 for none. */
export const axleOf = (bore: AxleBore | undefined): Mm => (bore === undefined || bore === 'none' ? 0 : bore.axle);
