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
