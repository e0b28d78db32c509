import type { Finding } from '../../findings/finding.js';
import type { CartSizes } from './sizes.js';

/** What keeps a wheel from having a shape: nothing can be built or drawn until it is mended. */
export type Limit = (s: CartSizes) => Finding[];

/** A stop about a number or a word that is no length. */
export const stopAt = (rule: string, where: string, value: number | string, limit: number | string, what: string) =>
  ({ level: 'stop', rule, where, message: `${where} is ${value}; ${what}`, value, limit }) satisfies Finding;
