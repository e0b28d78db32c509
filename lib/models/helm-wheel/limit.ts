import type { Finding } from '../../findings/finding.js';
import type { Mm } from '../../units/length.js';
import type { HelmSizes } from './sizes.js';

/** A stop without which a wheel has no shape at all: nothing can be built or drawn until it is mended. */
export type Limit = (s: HelmSizes) => Finding[];

/** A length as a message states it. */
export const stated = (mm: Mm): number => Math.round(mm * 1000) / 1000;

/** A stop about a field's length. @param what why, and what is allowed */
export const stop = (rule: string, where: string, value: Mm, limit: Mm, what: string): Finding => ({
  level: 'stop',
  rule,
  where,
  message: `${where} is ${stated(value)} mm; ${what}`,
  value,
  limit,
});

/** Below this nothing is worth offering, mm. */
const WORTH: Mm = 0.1;

/** The most a length may be, in words; what to change instead where there is no such length. @param instead of it, or besides */
export const upTo = (most: Mm, instead: string): string =>
  most >= WORTH ? `at most ${stated(most)} mm, or ${instead}` : instead;

/** A range of lengths in words; what to change instead where it is empty. */
export const fromTo = (least: Mm, most: Mm, instead: string): string =>
  most >= least && most >= WORTH ? `${stated(least)} to ${stated(most)} mm` : instead;
